"""Where on a sheet there is room for something: a raster of what is taken, and sums over it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate, pairwise
from math import ceil, hypot

from presscloth.drawing.clipping import Frame, Point

CELL = 4.0


class Room:
    """The cells of a frame, 4 mm wide; a line takes every cell that it touches."""

    def __init__(self, frame: Frame) -> None:
        self._frame = frame
        self._across, self._down = ceil(frame.width / CELL), ceil(frame.height / CELL)
        self._taken = [[0] * self._across for _ in range(self._down)]
        self._sums: list[list[int]] | None = None

    def take_line(self, points: Sequence[Point]) -> None:
        for one, other in pairwise(points):
            steps = max(1, ceil(hypot(other[0] - one[0], other[1] - one[1]) / (CELL / 2)))
            for i in range(steps + 1):
                x, y = (a + (b - a) * i / steps for a, b in zip(one, other, strict=True))
                self._take(int((x - self._frame.x) // CELL), int((y - self._frame.y) // CELL))

    def take_box(self, box: Frame) -> None:
        left, top = int((box.x - self._frame.x) // CELL), int((box.y - self._frame.y) // CELL)
        for row in range(top, top + ceil(box.height / CELL) + 1):
            for column in range(left, left + ceil(box.width / CELL) + 1):
                self._take(column, row)

    def _take(self, column: int, row: int) -> None:
        if 0 <= column < self._across and 0 <= row < self._down:
            self._taken[row][column] = 1
            self._sums = None

    def places(self, width: float, height: float) -> Iterator[tuple[int, float, float]]:
        """Every place for a box: how many cells of it are taken already, and its upper left corner."""
        if self._sums is None:
            self._sums = _summed(self._taken)
        wide, high = ceil(width / CELL) + 1, ceil(height / CELL) + 1
        at = [self._frame.x + (column + 0.5) * CELL for column in range(self._across - wide + 1)]
        for row in range(self._down - high + 1):
            above, below = self._sums[row], self._sums[row + high]
            y = self._frame.y + (row + 0.5) * CELL
            for column, x in enumerate(at):
                end = column + wide
                yield below[end] - above[end] - below[column] + above[column], x, y


def _summed(cells: Sequence[Sequence[int]]) -> list[list[int]]:
    """For each corner of the raster, how many cells above and left of it are taken."""
    sums = [[0] * (len(cells[0]) + 1)]
    for row in cells:
        along = [0, *accumulate(row)]
        sums.append([above + here for above, here in zip(sums[-1], along, strict=True)])
    return sums
