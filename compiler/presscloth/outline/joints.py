"""The cutting line around a seam line: each stretch moved outwards, and what happens at the corners."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import hypot

Sample = tuple[float, float, float, float]
"""A point and the direction outwards there, all in mm."""

Point = tuple[float, float]

MITRE_LIMIT = 4.0
BLUNTED = 3.0
_STRAIGHT_ON = 1e-9


def joined(sides: Sequence[tuple[Sequence[Sample], float]]) -> tuple[Point, ...]:
    """Stretches that follow each other clockwise, each with its allowance, as one closed line."""
    moved = [[(x + a * across, y + a * down) for x, y, across, down in line] for line, a in sides]
    corners: list[list[Point]] = []
    for number, (line, allowance) in enumerate(sides):
        after = (number + 1) % len(sides)
        following, next_allowance = sides[after]
        corners.append(_corner(moved, number, after, line[-1], following[0], allowance, next_allowance))
    points: list[Point] = []
    for side, corner in zip(moved, corners, strict=True):
        points += [*side, *corner]
    return tuple(_each_once(points))


def _corner(
    moved: list[list[Point]],
    number: int,
    after: int,
    last: Sample,
    first: Sample,
    allowance: float,
    next_allowance: float,
) -> list[Point]:
    """What lies between two stretches; where they meet in a hollow corner, both are cut back in place."""
    # Clockwise, a direction outwards turned by a quarter clockwise is the direction onwards.
    on, then = (-last[3], last[2]), (-first[3], first[2])
    turn = on[0] * then[1] - on[1] * then[0]
    ahead = on[0] * then[0] + on[1] * then[1]
    if abs(turn) < _STRAIGHT_ON and ahead > 0:
        return []
    if turn < 0:
        return _cut_back(moved, number, after)
    widest = max(allowance, next_allowance)
    one, other = moved[number][-1], moved[after][0]
    if widest == 0:
        return []
    if turn > _STRAIGHT_ON:
        reach = ((other[0] - one[0]) * then[1] - (other[1] - one[1]) * then[0]) / turn
        point = (one[0] + reach * on[0], one[1] + reach * on[1])
        if hypot(point[0] - last[0], point[1] - last[1]) <= MITRE_LIMIT * widest:
            return [point]
    far = BLUNTED * widest
    return [
        (one[0] + far * on[0], one[1] + far * on[1]),
        (other[0] - far * then[0], other[1] - far * then[1]),
    ]


def _cut_back(moved: list[list[Point]], number: int, after: int) -> list[Point]:
    """Cut two lines back to where they cross, seen from the corner; as they are where they do not."""
    line, following = moved[number], moved[after]
    for end in range(len(line) - 1, 0, -1):
        for start in range(len(following) - 1):
            point = crossing(line[end - 1], line[end], following[start], following[start + 1])
            if point is not None:
                line[end:] = [point]
                following[: start + 1] = [point]
                return []
    return []


def crossing(a: Point, b: Point, c: Point, d: Point) -> Point | None:
    """Where two straight lines between points cross."""
    turn = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
    if turn == 0:
        return None
    along = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / turn
    across = ((c[0] - a[0]) * (b[1] - a[1]) - (c[1] - a[1]) * (b[0] - a[0])) / turn
    if 0 <= along <= 1 and 0 <= across <= 1:
        return a[0] + along * (b[0] - a[0]), a[1] + along * (b[1] - a[1])
    return None


def _each_once(points: Sequence[Point]) -> list[Point]:
    """Points without those that lie on the one before."""
    return [point for before, point in pairwise([points[-1], *points]) if not _same(before, point)]


def _same(one: Point, other: Point) -> bool:
    return abs(one[0] - other[0]) < 1e-9 and abs(one[1] - other[1]) < 1e-9


def crosses_itself(points: Sequence[Point]) -> tuple[int, int] | None:
    """Two sides of a closed line that cross or touch, by the numbers of their first points.

    Sides are taken from left to right, and each is held against those that begin before it ends.
    """
    count = len(points)
    sides = [(points[i], points[(i + 1) % count]) for i in range(count)]
    order = sorted(range(count), key=lambda i: min(sides[i][0][0], sides[i][1][0]))
    for place, i in enumerate(order):
        a, b = sides[i]
        far, low, high = max(a[0], b[0]), min(a[1], b[1]), max(a[1], b[1])
        for j in order[place + 1 :]:
            c, d = sides[j]
            if min(c[0], d[0]) > far:
                break
            if max(c[1], d[1]) < low or min(c[1], d[1]) > high or (i - j) % count in (1, count - 1):
                continue
            if crossing(a, b, c, d) is not None:
                return min(i, j), max(i, j)
    return None
