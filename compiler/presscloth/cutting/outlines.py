"""Pieces of any outline: a simple polygon in whole numbers, and the angles at which it may lie.

A circle is given as a polygon around it (`around_circle`), so that what is laid out always covers what
is cut. As for rectangles, x runs across the cloth and y along it.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from presscloth.frozen import dataclass

Point = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Outline:
    """`quantity` equal pieces; `angles` are quarter turns against the clock: some of 0, 90, 180, 270."""

    name: str
    points: tuple[Point, ...]
    quantity: int
    angles: tuple[int, ...] = (0,)


@dataclass(frozen=True, slots=True)
class PlacedOutline:
    """One piece: the number of its outline, its angle, and where the box around it begins."""

    part: int
    x: int
    y: int
    angle: int


@dataclass(frozen=True, slots=True)
class OutlineLayout:
    """Pieces on one length of cloth; `length` is where the last of them ends."""

    width: int
    length: int
    placed: tuple[PlacedOutline, ...]


@dataclass(frozen=True, slots=True)
class OutlineCut:
    """As `Cut`, for outlines."""

    layout: OutlineLayout
    need: int
    bought: int
    bound: int
    proved: bool


def turned(points: Sequence[Point], angle: int) -> tuple[Point, ...]:
    """The outline at an angle, moved so that the box around it begins at (0, 0)."""
    match angle:
        case 0:
            moved = [(x, y) for x, y in points]
        case 90:
            moved = [(-y, x) for x, y in points]
        case 180:
            moved = [(-x, -y) for x, y in points]
        case 270:
            moved = [(y, -x) for x, y in points]
        case _:
            raise ValueError(f"{angle} is not a quarter turn")
    left, low = min(x for x, _ in moved), min(y for _, y in moved)
    return tuple((x - left, y - low) for x, y in moved)


def extent(points: Sequence[Point]) -> Point:
    """Width and height of the box around an outline that begins at (0, 0)."""
    return max(x for x, _ in points), max(y for _, y in points)


def twice_area(points: Sequence[Point]) -> int:
    """Twice the area within an outline: the shoelace formula."""
    around = [*points, points[0]]
    return abs(sum(x * next_y - next_x * y for (x, y), (next_x, next_y) in pairwise(around)))


def around_circle(diameter: int) -> tuple[Point, ...]:
    """The polygon of 16 sides that touch a circle; never inside it, by rounding outwards.

    Its corners lie at the circle's radius over cos 11.25°, in the directions 11.25°, 33.75° and so on.
    """
    one = 2_000_000  # twice the radius of a circle; the corners of its first quarter, rounded up:
    corners = [(1_000_000, 198_913), (847_760, 566_455), (566_455, 847_760), (198_913, 1_000_000)]
    quarter = [(-(-x * diameter // one), -(-y * diameter // one)) for x, y in corners]
    half = [*quarter, *((-x, y) for x, y in reversed(quarter))]
    return turned([*half, *((-x, -y) for x, y in half)], 0)
