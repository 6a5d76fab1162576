"""The lines of an outline as points that can be drawn: seam line, cutting line, notches, box.

From here on coordinates are floats of millimetres, good to far less than the 0.05 mm that a template
promises: a line of points leaves its curve by no more than `CLOSE`.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import acos, atan2, ceil, cos, hypot, pi, sin, sqrt

from presscloth.measure import Kind, System, convert
from presscloth.measure.remembering import remembered
from presscloth.outline.joints import Sample, joined
from presscloth.outline.shape import Contour, Traced
from presscloth.outline.stretches import Arc, Cubic, Point, Straight, Stretch

CLOSE = 0.01

LEAST_PART = 1e-5
MOST = 2000
"""A line leaves an arc by a hundred thousandth of its radius at the most; so many steps has a curve: what is
metres wide is no template, and must not take for ever."""

Drawn = tuple[float, float]


def in_mm(point: Point, system: System) -> Drawn:
    factor = 1.0 if system is System.METRIC else _INCH
    return float(point[0]) * factor, float(point[1]) * factor


_INCH = float(convert(Fraction(1), Kind.LENGTH, System.METRIC))


def seam_line(edge: Traced, system: System, close: float = CLOSE) -> tuple[Drawn, ...]:
    """The stitch line of an edge."""
    points: list[Drawn] = []
    for stretch in edge.stretches:
        line = [(x, y) for x, y, _, _ in samples(stretch, system, close)]
        points += line[1:] if points else line
    return tuple(points)


@remembered(64)
def cutting_line(contour: Contour, system: System, close: float = CLOSE) -> tuple[Drawn, ...]:
    """The closed line on which the piece is cut: outside the seam line by each edge's allowance.

    Corners are mitred: the cutting lines of two edges go on until they meet (common practice). A
    point sharper than that would reach beyond four allowances is blunted.
    """
    factor = 1.0 if system is System.METRIC else _INCH
    sides = [
        (samples(stretch, system, close), float(edge.allowance) * factor)
        for edge in contour.edges
        for stretch in edge.stretches
    ]
    return joined(sides)


def box(points: Sequence[Drawn]) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of the box around points."""
    across, down = [x for x, _ in points], [y for _, y in points]
    return min(across), min(down), max(across), max(down)


def thinned(points: Sequence[Drawn], close: float) -> tuple[Drawn, ...]:
    """A line with as few of its points as keep within `close` of all others (Ramer, Douglas, Peucker)."""
    if len(points) < 3:
        return tuple(points)
    (x, y), (far_x, far_y) = points[0], points[-1]
    long = hypot(far_x - x, far_y - y)

    def away(point: Drawn) -> float:
        if long == 0:
            return hypot(point[0] - x, point[1] - y)
        return abs((far_x - x) * (point[1] - y) - (far_y - y) * (point[0] - x)) / long

    farthest = max(range(1, len(points) - 1), key=lambda i: away(points[i]))
    if away(points[farthest]) <= close:
        return points[0], points[-1]
    return (*thinned(points[: farthest + 1], close), *thinned(points[farthest:], close)[1:])


def notch(edge: Traced, along: float, system: System) -> tuple[Drawn, Drawn]:
    """Where a notch lies on the seam line, and where it meets the cutting line; `along` in mm or in."""
    factor = 1.0 if system is System.METRIC else _INCH
    left = along * factor
    last: Sample | None = None
    for stretch in edge.stretches:
        line = samples(stretch, system, CLOSE)
        for one, other in pairwise(line):
            step = hypot(other[0] - one[0], other[1] - one[1])
            if left <= step:
                return _outwards(one, other, left / step, float(edge.allowance) * factor)
            left -= step
            last = other
    assert last is not None
    return _outwards(last, last, 0.0, float(edge.allowance) * factor)


def _outwards(one: Sample, other: Sample, part: float, allowance: float) -> tuple[Drawn, Drawn]:
    x, y, across, down = ((1 - part) * a + part * b for a, b in zip(one, other, strict=True))
    return (x, y), (x + across * allowance, y + down * allowance)


def samples(stretch: Stretch, system: System, close: float) -> list[Sample]:
    """Points along a stretch, each with the direction outwards there, as a step of 1 mm."""
    match stretch:
        case Straight(start=start, end=end):
            (x, y), (far_x, far_y) = in_mm(start, system), in_mm(end, system)
            long = hypot(far_x - x, far_y - y)
            across, down = (far_y - y) / long, (x - far_x) / long
            return [(x, y, across, down), (far_x, far_y, across, down)]
        case Arc():
            return _arc(stretch, system, close)
        case Cubic():
            return _cubic(stretch, system, close)


def _arc(arc: Arc, system: System, close: float) -> list[Sample]:
    """Steps as long as `close` allows, and the points farthest left, right, up and down."""
    (x, y), (cx, cy), (far_x, far_y) = (in_mm(p, system) for p in (arc.start, arc.centre, arc.end))
    radius = hypot(x - cx, y - cy)
    first, last = atan2(y - cy, x - cx), atan2(far_y - cy, far_x - cx)
    # On the page y runs downwards, so that angles grow clockwise.
    if arc.clockwise and last <= first:
        last += 2 * pi
    if not arc.clockwise and last >= first:
        last -= 2 * pi
    part = max(close / radius, LEAST_PART)
    number = max(1, ceil(abs(last - first) / (2 * acos(max(0.0, 1 - part)))))
    angles = [first + (last - first) * i / number for i in range(number + 1)]
    low, high = min(first, last), max(first, last)
    quarters = [q * pi / 2 for q in range(-8, 9) if low < q * pi / 2 < high]
    angles = sorted({*angles, *quarters}, reverse=last < first)
    outwards = 1 if arc.clockwise else -1
    line = [
        (cx + radius * cos(a), cy + radius * sin(a), outwards * cos(a), outwards * sin(a)) for a in angles
    ]
    line[0], line[-1] = (x, y, *line[0][2:]), (far_x, far_y, *line[-1][2:])
    return line


def _cubic(cubic: Cubic, system: System, close: float) -> list[Sample]:
    points = [in_mm(p, system) for p in (cubic.start, cubic.first, cubic.last, cubic.end)]
    bent = max(
        hypot(a[0] - 2 * b[0] + c[0], a[1] - 2 * b[1] + c[1])
        for a, b, c in zip(points, points[1:], points[2:], strict=False)
    )
    number = min(MOST, max(1, ceil(sqrt(6 * bent / (8 * close)))))
    places = {i / number for i in range(number + 1)}
    for axis in (0, 1):
        places.update(_turning([point[axis] for point in points]))
    line: list[Sample] = []
    for t in sorted(places):
        x, y = (_at([p[axis] for p in points], t) for axis in (0, 1))
        dx, dy = (_slope([p[axis] for p in points], t) for axis in (0, 1))
        speed = hypot(dx, dy)
        line.append((x, y, dy / speed, -dx / speed))
    line[0] = (*points[0], *line[0][2:])
    line[-1] = (*points[3], *line[-1][2:])
    return line


def _at(along: Sequence[float], t: float) -> float:
    a, b, c, d = along
    left = 1 - t
    return left**3 * a + 3 * left**2 * t * b + 3 * left * t**2 * c + t**3 * d


def _slope(along: Sequence[float], t: float) -> float:
    a, b, c, d = along
    left = 1 - t
    return 3 * (left**2 * (b - a) + 2 * left * t * (c - b) + t**2 * (d - c))


def _turning(along: Sequence[float]) -> list[float]:
    """Where a coordinate is farthest: the roots of its slope between 0 and 1."""
    a, b, c, d = along
    square, line, rest = d - 3 * c + 3 * b - a, 2 * (c - 2 * b + a), b - a
    if abs(square) < 1e-12:
        roots = [-rest / line] if abs(line) > 1e-12 else []
    else:
        under = line * line - 4 * square * rest
        roots = [(-line + sign * sqrt(under)) / (2 * square) for sign in (1, -1)] if under >= 0 else []
    return [t for t in roots if 0 < t < 1]
