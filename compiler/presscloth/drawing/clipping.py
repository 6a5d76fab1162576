"""Lines cut off at the edge of a sheet, and outlines at their fold."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from presscloth.frozen import dataclass

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Frame:
    """A rectangle: its upper left corner, its width and its height."""

    x: float
    y: float
    width: float
    height: float

    def holds(self, x: float, y: float) -> bool:
        return self.x <= x <= self.x + self.width and self.y <= y <= self.y + self.height

    def meets(self, other: Frame) -> bool:
        apart_across = self.x + self.width <= other.x or other.x + other.width <= self.x
        apart_down = self.y + self.height <= other.y or other.y + other.height <= self.y
        return not (apart_across or apart_down)


def clipped(points: Sequence[Point], frame: Frame) -> Iterator[tuple[Point, ...]]:
    """What of a run of straight lines lies in a frame: the runs that are left, in their order."""
    run: list[Point] = []
    for one, other in pairwise(points):
        part = _part(one, other, frame)
        if part is None:
            if len(run) > 1:
                yield tuple(run)
            run = []
            continue
        if not run or run[-1] != part[0]:
            if len(run) > 1:
                yield tuple(run)
            run = [part[0]]
        run.append(part[1])
    if len(run) > 1:
        yield tuple(run)


def _part(one: Point, other: Point, frame: Frame) -> tuple[Point, Point] | None:
    """The part of a straight line in a frame (Liang and Barsky)."""
    across, down = other[0] - one[0], other[1] - one[1]
    first, last = 0.0, 1.0
    for step, room in (
        (-across, one[0] - frame.x),
        (across, frame.x + frame.width - one[0]),
        (-down, one[1] - frame.y),
        (down, frame.y + frame.height - one[1]),
    ):
        if step == 0:
            if room < 0:
                return None
            continue
        if step < 0:
            first = max(first, room / step)
        else:
            last = min(last, room / step)
    if first >= last:
        return None
    return _along(one, other, first), _along(one, other, last)


def _along(one: Point, other: Point, part: float) -> Point:
    """A point on the way; the ends themselves stay as they are."""
    if part in (0.0, 1.0):
        return other if part else one
    return one[0] + part * (other[0] - one[0]), one[1] + part * (other[1] - one[1])


def inside(point: Point, points: Sequence[Point]) -> bool:
    """Whether a point lies in an outline: a line to its right then crosses it an odd number of times."""
    x, y = point
    hits = 0
    for (ax, ay), (bx, by) in pairwise([*points, points[0]]):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            hits += 1
    return hits % 2 == 1
