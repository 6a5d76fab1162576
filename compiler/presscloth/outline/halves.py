"""The part of a closed line that lies on one side of an upright or a level line."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

Point = tuple[float, float]


def beside(points: Sequence[Point], axis: float, *, across: bool, beyond: bool) -> tuple[Point, ...]:
    """What lies right of a line or below it (`beyond`), or on its other side (Sutherland, Hodgman)."""
    at = 0 if across else 1
    sign = 1 if beyond else -1
    found: list[Point] = []
    for one, other in pairwise([*points, points[0]]):
        near, far = sign * (one[at] - axis), sign * (other[at] - axis)
        if near >= 0:
            found.append(one)
        if (near < 0) != (far < 0):
            found.append(_on_axis(_between(one, other, near / (near - far)), axis, at))
    return tuple(found)


def _on_axis(point: Point, axis: float, at: int) -> Point:
    return (axis, point[1]) if at == 0 else (point[0], axis)


def _between(one: Point, other: Point, part: float) -> Point:
    return one[0] + part * (other[0] - one[0]), one[1] + part * (other[1] - one[1])
