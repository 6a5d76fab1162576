"""Transform a piece's outline into the polygon by which it is laid out: it covers what is cut."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil, floor, hypot

from presscloth.cutting.outlines import Point
from presscloth.cutting.within import widest_within
from presscloth.measure import Kind, System, convert
from presscloth.outline import Contour, Drafted, cutting_line
from presscloth.outline.flattening import box
from presscloth.outline.halves import beside

CLOSE = 0.2
"""mm; how near the polygon keeps to the cutting line, half of it inside, all of it outside."""

_PER_MM = 80


def covering(outline: Drafted, system: System, width: int, height: int) -> tuple[Point, ...]:
    """A polygon around the cutting line, in 1/80 mm, inside the box in which the piece is cut.

    No point of the piece lies outside it, and none of its own more than 0.4 mm from the piece, corners
    and the rounding of the box apart.
    """
    left, top, _, _ = box(cutting_line(outline[system], system, CLOSE))
    line = cutting_line(_grown(outline[system], system), system, CLOSE)
    line = beside(line, left, across=True, beyond=True)
    line = beside(line, left + width / _PER_MM, across=True, beyond=False)
    line = beside(line, top, across=False, beyond=True)
    line = beside(line, top + height / _PER_MM, across=False, beyond=False)
    points: list[Point] = []
    for x, y in line:
        point = round((x - left) * _PER_MM), round((y - top) * _PER_MM)
        if not points or point != points[-1]:
            points.append(point)
    return tuple(points[1:] if points[0] == points[-1] else points)


def least_area(outline: Drafted, system: System) -> int:
    """An area, in units squared, that the piece is not smaller than."""
    points = cutting_line(outline[system], system, CLOSE)
    after = (*points[1:], points[0])
    area = sum(x * ny - nx * y for (x, y), (nx, ny) in zip(points, after, strict=True)) / 2
    around = sum(hypot(nx - x, ny - y) for (x, y), (nx, ny) in zip(points, after, strict=True))
    return floor(max(0.0, area - around * CLOSE) * _PER_MM * _PER_MM)


def rectangle_within(points: Sequence[Point]) -> tuple[int, int]:
    """Width and height of an upright rectangle inside a piece that `covering` gave these points; or 0."""
    left, top, right, bottom = widest_within(points)
    return _less(right - left), _less(bottom - top)


def least_extent(outline: Drafted, system: System) -> tuple[int, int]:
    """Width and height, in units, that the box around the piece is not smaller than."""
    left, top, right, bottom = box(cutting_line(outline[system], system, CLOSE))
    return _less((right - left) * _PER_MM), _less((bottom - top) * _PER_MM)


def _less(side: float) -> int:
    """A side, in units, less what the polygon may lie outside of the piece at both ends."""
    return max(0, floor(side - 5 * CLOSE * _PER_MM) - 1)


def _grown(contour: Contour, system: System) -> Contour:
    """The contour with all allowances wider by as much as straight lines may leave a curve."""
    more = Fraction(ceil(CLOSE * 1000) + 10, 1000)
    if system is System.IMPERIAL:
        more = convert(more, Kind.LENGTH, System.IMPERIAL)
    edges = tuple(replace(edge, allowance=edge.allowance + more) for edge in contour.edges)
    return Contour(edges, contour.drawn, contour.fold)
