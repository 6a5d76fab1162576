"""Check a layout of outlines again, exactly: shares no code with the engine."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations, pairwise

from presscloth.cutting.checker import AgainstGrain, NoSuchPart, Outside, Overlap, WrongCount
from presscloth.cutting.outlines import Outline, OutlineLayout, PlacedOutline, Point

OutlineFault = Outside | Overlap | WrongCount | NoSuchPart | AgainstGrain


def check_outlines(
    parts: Sequence[Outline], layout: OutlineLayout, *, length: int
) -> tuple[OutlineFault, ...]:
    """Everything that is wrong with a layout on a cloth of this length; a piece is named by its place."""
    faults: list[OutlineFault] = []
    laid = Counter(placed.part for placed in layout.placed)
    for number, part in enumerate(parts):
        if laid[number] != part.quantity:
            faults.append(WrongCount(number, part.quantity, laid[number]))
    shapes: list[tuple[int, list[Point]]] = []
    for piece, placed in enumerate(layout.placed):
        if not 0 <= placed.part < len(parts):
            faults.append(NoSuchPart(piece))
            continue
        if placed.angle not in parts[placed.part].angles:
            faults.append(AgainstGrain(piece))
        points = _where(parts[placed.part], placed)
        if not all(0 <= x <= layout.width and 0 <= y <= length for x, y in points):
            faults.append(Outside(piece))
        shapes.append((piece, points))
    for (one, points), (other, others) in combinations(shapes, 2):
        if overlap(points, others):
            faults.append(Overlap(one, other))
    return tuple(faults)


def _where(part: Outline, placed: PlacedOutline) -> list[Point]:
    """The corners of a piece on the cloth: turned about (0, 0), then moved by its box."""
    cosine, sine = {0: (1, 0), 90: (0, 1), 180: (-1, 0), 270: (0, -1)}[placed.angle]
    points = [(cosine * x - sine * y, sine * x + cosine * y) for x, y in part.points]
    left, low = min(x for x, _ in points), min(y for _, y in points)
    return [(x - left + placed.x, y - low + placed.y) for x, y in points]


def overlap(one: Sequence[Point], other: Sequence[Point]) -> bool:
    """Whether the insides of two simple polygons meet; edges and corners may touch.

    The plane is cut into bands at every corner and every crossing of two sides. Within a band no sides
    cross, so the stretches that a line through its middle has in both polygons tell for the whole band.
    """
    if not _boxes_meet(one, other):
        return False
    levels: set[Fraction] = {Fraction(y) for _, y in (*one, *other)}
    for side in pairwise([*one, one[0]]):
        for against in pairwise([*other, other[0]]):
            level = _crossing(side, against)
            if level is not None:
                levels.add(level)
    for low, high in pairwise(sorted(levels)):
        middle = (low + high) / 2
        for left, right in _stretches(one, middle):
            for other_left, other_right in _stretches(other, middle):
                if left < other_right and other_left < right:
                    return True
    return False


def _boxes_meet(one: Sequence[Point], other: Sequence[Point]) -> bool:
    return all(
        min(point[axis] for point in one) < max(point[axis] for point in other)
        and min(point[axis] for point in other) < max(point[axis] for point in one)
        for axis in (0, 1)
    )


def _crossing(one: tuple[Point, Point], other: tuple[Point, Point]) -> Fraction | None:
    """The height at which two sides cross, if they are not parallel and do."""
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = other
    turn = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if turn == 0:
        return None
    along = Fraction((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx), turn)
    across = Fraction((cx - ax) * (by - ay) - (cy - ay) * (bx - ax), turn)
    if 0 <= along <= 1 and 0 <= across <= 1:
        return ay + along * (by - ay)
    return None


def _stretches(points: Sequence[Point], level: Fraction) -> list[tuple[Fraction, Fraction]]:
    """The parts of a line across at this height, through no corner, that lie inside."""
    hits = sorted(
        x + (level - y) * Fraction(next_x - x, next_y - y)
        for (x, y), (next_x, next_y) in pairwise([*points, points[0]])
        if min(y, next_y) < level < max(y, next_y)
    )
    return list(zip(hits[::2], hits[1::2], strict=True))
