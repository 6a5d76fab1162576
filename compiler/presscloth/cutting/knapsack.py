"""The most valuable pieces that stand side by side within one extent of cloth."""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.frozen import dataclass

_MOST_NODES = 4000


@dataclass(frozen=True, slots=True)
class Filling:
    """How many of each size, and their value; no filling at all is worth more than `ceiling`."""

    counts: tuple[int, ...]
    value: int
    ceiling: int


def best_filling(sizes: Sequence[int], values: Sequence[int], most: Sequence[int], room: int) -> Filling:
    """Branch and bound over sizes by value per length, in whole numbers.

    `most[i]` pieces of `sizes[i]` can be had. When the search grows too long, the best filling found
    so far is given with a ceiling that is still certain.
    """
    kinds = [i for i in range(len(sizes)) if values[i] > 0 and most[i] > 0 and sizes[i] <= room]
    # Cross-multiplied into one integer key: values over sizes, without a quotient.
    scale = 1 << 64
    kinds.sort(key=lambda i: -(values[i] * scale // sizes[i]))
    search = _Search([sizes[i] for i in kinds], [values[i] for i in kinds], [most[i] for i in kinds])
    search.visit(0, room, 0)
    counts = [0] * len(sizes)
    for i, count in zip(kinds, search.best_counts, strict=True):
        counts[i] = count
    ceiling = search.best
    if search.nodes > _MOST_NODES:
        ceiling = max(values[i] * room // sizes[i] for i in kinds)
    return Filling(tuple(counts), search.best, ceiling)


class _Search:
    def __init__(self, sizes: list[int], values: list[int], most: list[int]) -> None:
        self._sizes = sizes
        self._values = values
        self._most = most
        self._counts = [0] * len(sizes)
        self.best = 0
        self.best_counts = [0] * len(sizes)
        self.nodes = 0

    def visit(self, at: int, room: int, value: int) -> None:
        self.nodes += 1
        if value > self.best:
            self.best = value
            self.best_counts = self._counts[:]
        if at == len(self._sizes) or self.nodes > _MOST_NODES:
            return
        size, worth = self._sizes[at], self._values[at]
        if (value - self.best) * size + room * worth <= 0:
            return
        for count in range(min(self._most[at], room // size), -1, -1):
            self._counts[at] = count
            self.visit(at + 1, room - count * size, value + count * worth)
        self._counts[at] = 0
