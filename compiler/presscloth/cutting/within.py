"""Find a rectangle that lies inside an outline: where its like find no room, the outlines find none."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

Drawn = tuple[float, float]

_LEVELS = 10  # heights between which rectangles are tried


def widest_within(points: Sequence[Drawn]) -> tuple[float, float, float, float]:
    """A large upright rectangle inside a simple polygon: left, top, right, bottom; all 0 where none is found.

    No edge of the polygon runs through it, and its middle lies inside, so that all of it does (geometry).
    """
    heights = sorted({y for _, y in points})
    every = max(1, -(-len(heights) // _LEVELS))
    levels = [*heights[::every], heights[-1]]
    best, most = (0.0, 0.0, 0.0, 0.0), 0.0
    for number, low in enumerate(levels):
        for high in levels[number + 1 :]:
            for left, right in _gaps(points, low, high):
                area = (right - left) * (high - low)
                if area > most and _inside(points, (left + right) / 2, (low + high) / 2):
                    best, most = (left, low, right, high), area
    return best


def _gaps(points: Sequence[Drawn], low: float, high: float) -> Iterator[Drawn]:
    """From where to where no edge runs between two heights."""
    taken = sorted(
        stretch
        for one, other in pairwise([*points, points[0]])
        if (stretch := _across(one, other, low, high)) is not None
    )
    end = taken[0][1] if taken else 0.0
    for left, right in taken[1:]:
        if left > end:
            yield end, left
        end = max(end, right)


def _across(one: Drawn, other: Drawn, low: float, high: float) -> Drawn | None:
    """From where to where an edge runs between two heights; None where it does not come between them."""
    (x, y), (next_x, next_y) = sorted((one, other), key=lambda point: point[1])
    if next_y <= low or y >= high:
        return None
    if y == next_y:
        return min(x, next_x), max(x, next_x)
    slope = (next_x - x) / (next_y - y)
    ends = x + (max(low, y) - y) * slope, x + (min(high, next_y) - y) * slope
    return min(ends), max(ends)


def _inside(points: Sequence[Drawn], x: float, y: float) -> bool:
    """Whether a point lies within: a line from it crosses the outline an odd number of times."""
    crossings = 0
    for (x1, y1), (x2, y2) in pairwise([*points, points[0]]):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) * (x2 - x1) / (y2 - y1):
            crossings += 1
    return crossings % 2 == 1
