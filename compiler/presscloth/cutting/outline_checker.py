"""Check a layout of outlines again, exactly: shares no code with the engine."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
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
    boxes = {piece: _box(points) for piece, points in shapes}
    for (one, points), (other, others) in combinations(shapes, 2):
        if _boxes_meet(boxes[one], boxes[other]) and overlap(points, others):
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
    box, other_box = _box(one), _box(other)
    if not _boxes_meet(box, other_box):
        return False
    lowest, highest = max(box[1], other_box[1]), min(box[3], other_box[3])
    levels = {Fraction(y) for y in (lowest, highest, *(y for _, y in (*one, *other) if lowest < y < highest))}
    others = list(_reaching(other, lowest, highest))
    for side in _reaching(one, lowest, highest):
        levels.update(level for against in others if (level := _crossing(side, against)) is not None)
    for low, high in pairwise(sorted(levels)):
        middle = (low + high) / 2
        for left, right in _stretches(one, middle):
            for other_left, other_right in _stretches(other, middle):
                if left < other_right and other_left < right:
                    return True
    return False


def _box(points: Sequence[Point]) -> tuple[int, int, int, int]:
    """Left, lowest, right and highest."""
    across, along = [x for x, _ in points], [y for _, y in points]
    return min(across), min(along), max(across), max(along)


def _boxes_meet(one: tuple[int, int, int, int], other: tuple[int, int, int, int]) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _reaching(points: Sequence[Point], low: int, high: int) -> Iterator[tuple[Point, Point]]:
    """The sides that come between two heights."""
    for one, other in pairwise([*points, points[0]]):
        if min(one[1], other[1]) < high and max(one[1], other[1]) > low:
            yield one, other


def _crossing(one: tuple[Point, Point], other: tuple[Point, Point]) -> Fraction | None:
    """The height at which two sides cross, if they are not parallel and do."""
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = other
    turn = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    along = (cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)
    across = (cx - ax) * (by - ay) - (cy - ay) * (bx - ax)
    if turn < 0:
        turn, along, across = -turn, -along, -across
    if turn == 0 or not 0 <= along <= turn or not 0 <= across <= turn:
        return None
    return ay + Fraction(along, turn) * (by - ay)


def _stretches(points: Sequence[Point], level: Fraction) -> list[tuple[Fraction, Fraction]]:
    """The parts of a line across at this height, through no corner, that lie inside."""
    hits = sorted(
        x + (level - y) * Fraction(next_x - x, next_y - y)
        for (x, y), (next_x, next_y) in pairwise([*points, points[0]])
        if min(y, next_y) < level < max(y, next_y)
    )
    return list(zip(hits[::2], hits[1::2], strict=True))
