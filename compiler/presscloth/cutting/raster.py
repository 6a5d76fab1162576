"""Outlines as cells of a raster, always covering the true shape.

A shape touches a cell if any of its inside lies in the cell's inside. Shapes whose cells do not meet
do not overlap, so what is laid out by cells is sound; a little room is given away.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from presscloth.cutting.outlines import Point

Cells = tuple[tuple[tuple[int, int], ...], ...]
"""Per row of cells the stretches that are touched: (first cell, cell after the last)."""


def cells(points: Sequence[Point], size: int) -> Cells:
    """The cells of this size that an outline touches; its box begins at (0, 0)."""
    heights = {y for _, y in points}
    top = max(heights)
    rows = []
    for low in range(0, top, size):
        high = min(low + size, top)
        levels = sorted({low, high, *(y for y in heights if low < y < high)})
        stretches: list[tuple[int, int]] = []
        for bottom, ceiling in pairwise(levels):
            stretches.extend(_stretches(points, bottom, ceiling, size))
        rows.append(_joined(stretches))
    return tuple(rows)


def _stretches(points: Sequence[Point], low: int, high: int, size: int) -> list[tuple[int, int]]:
    """The cells touched between two heights between which no corner lies: trapezia, left to right."""
    crossing = []
    for (x, y), (next_x, next_y) in pairwise([*points, points[0]]):
        if min(y, next_y) <= low and max(y, next_y) >= high:
            slope = Fraction(next_x - x, next_y - y)
            crossing.append((x + (low - y) * slope, x + (high - y) * slope))
    crossing.sort(key=lambda ends: ends[0] + ends[1])
    found = []
    for left, right in zip(crossing[::2], crossing[1::2], strict=True):
        first, last = min(left) / size, max(right) / size
        found.append((first.numerator // first.denominator, -(-last.numerator // last.denominator)))
    return found


def _joined(stretches: Sequence[tuple[int, int]]) -> tuple[tuple[int, int], ...]:
    """Stretches in order, those that meet made one."""
    joined: list[tuple[int, int]] = []
    for first, end in sorted(stretches):
        if joined and first <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(end, joined[-1][1]))
        else:
            joined.append((first, end))
    return tuple(joined)


class Cloth:
    """Rows of cells across the cloth, as bits: 1 is taken. Grows along the cloth as needed."""

    def __init__(self) -> None:
        self._rows: list[int] = []

    def lowest(self, shape: Cells, places: int, start: int) -> Point:
        """The place nearest to the cut end, then farthest to the left, where the shape is free.

        Its first column is one of the first `places`; its first row is looked for from `start` on.
        """
        y = start
        while True:
            free = (1 << places) - 1
            for taken, stretches in zip(self._rows[y : y + len(shape)], shape, strict=False):
                for first, end in stretches:
                    free &= ~_smeared(taken >> first, end - first)
                if not free:
                    break
            if free:
                return (free & -free).bit_length() - 1, y
            y += 1

    def lay(self, shape: Cells, x: int, y: int) -> None:
        self._rows.extend([0] * (y + len(shape) - len(self._rows)))
        for row, stretches in enumerate(shape, y):
            for first, end in stretches:
                self._rows[row] |= ((1 << (end - first)) - 1) << (x + first)


def _smeared(taken: int, length: int) -> int:
    """Where a stretch of this length would meet a taken cell, by its first cell."""
    covered = 1
    while covered < length:
        step = min(covered, length - covered)
        taken |= taken >> step
        covered += step
    return taken
