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

    def copy(self) -> Room:
        """The same room, in which other things may be put from now on."""
        other = Room(self._frame)
        other._taken = [row.copy() for row in self._taken]
        return other

    def take_line(self, points: Sequence[Point]) -> None:
        left, top = self._frame.x, self._frame.y
        for one, other in pairwise(points):
            if self._passes_by(one, other):
                continue
            (x, y), across, down = one, other[0] - one[0], other[1] - one[1]
            steps = max(1, ceil(hypot(across, down) / (CELL / 2)))
            for i in range(steps + 1):
                column = int((x + across * i / steps - left) // CELL)
                row = int((y + down * i / steps - top) // CELL)
                self._take(column, row)

    def _passes_by(self, one: Point, other: Point) -> bool:
        """Whether both ends of a straight line lie beyond the same side of the frame."""
        frame = self._frame
        return (
            (one[0] < frame.x and other[0] < frame.x)
            or (one[1] < frame.y and other[1] < frame.y)
            or (one[0] > frame.x + frame.width and other[0] > frame.x + frame.width)
            or (one[1] > frame.y + frame.height and other[1] > frame.y + frame.height)
        )

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
        for row in range(self._rows(height)):
            y = self._y(row)
            for column, taken in enumerate(self._taken_along(row, width, height)):
                yield taken, self._x(column), y

    def lowest(self, width: float, height: float) -> Frame:
        """Where the least is taken; of such places the lowest, and of those the one farthest to the right."""
        rows = [self._taken_along(row, width, height) for row in range(self._rows(height))]
        row = min(reversed(range(len(rows))), key=lambda row: min(rows[row]))
        column = min(reversed(range(len(rows[row]))), key=rows[row].__getitem__)
        return Frame(self._x(column), self._y(row), width, height)

    def _x(self, column: int) -> float:
        return self._frame.x + (column + 0.5) * CELL

    def _y(self, row: int) -> float:
        return self._frame.y + (row + 0.5) * CELL

    def _rows(self, height: float) -> int:
        """In how many rows a box may begin."""
        return self._down - ceil(height / CELL)

    def _taken_along(self, row: int, width: float, height: float) -> list[int]:
        """How many cells are taken of a box that begins in a row, for each column in which it may begin."""
        if self._sums is None:
            self._sums = _summed(self._taken)
        wide, high = ceil(width / CELL) + 1, ceil(height / CELL) + 1
        above, below = self._sums[row], self._sums[row + high]
        upright = [low - up for low, up in zip(below, above, strict=True)]
        return [right - left for left, right in zip(upright, upright[wide:], strict=False)]


def _summed(cells: Sequence[Sequence[int]]) -> list[list[int]]:
    """For each corner of the raster, how many cells above and left of it are taken."""
    sums = [[0] * (len(cells[0]) + 1)]
    for row in cells:
        along = [0, *accumulate(row)]
        sums.append([above + here for above, here in zip(sums[-1], along, strict=True)])
    return sums
