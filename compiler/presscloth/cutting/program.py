"""The linear program of column generation: the least cost of columns that cover every demand.

The simplex method in its revised form, on floats that are added in a fixed order and never with
`sum`, whose rounding depends on the Python. Its answers guide searches; what is called a proof is
reckoned again in integers from its prices.
"""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.frozen import dataclass

_TINY = 1e-7


@dataclass(frozen=True, slots=True)
class Chooser:
    """`quantity` pieces, each of which adds one of `lies`, (row, how much), to what is demanded."""

    quantity: int
    lies: tuple[tuple[int, float], ...]


@dataclass(frozen=True, slots=True)
class Column:
    """What one unit covers of each demand, and what it costs."""

    counts: tuple[int, ...]
    cost: float


class Program:
    """Rows: one per demand, covered by columns, and one per chooser, split among its lies.

    The basis is kept as its dense inverse. `_column` names what is basic in a row: a column, or None
    for a split or a surplus, which cost nothing.
    """

    def __init__(
        self, demand: Sequence[float], singles: Sequence[Column], choosers: Sequence[Chooser]
    ) -> None:
        """`singles[i]` covers demand i alone; with them alone the program starts."""
        self._choosers = choosers
        self._demands = len(demand)
        rows = self._demands + len(choosers)
        self._inverse = [[0.0] * rows for _ in range(rows)]
        self._amount = [0.0] * rows
        self._column: list[Column | None] = [*singles, *[None] * len(choosers)]
        for row, single in enumerate(singles):
            self._inverse[row][row] = 1.0 / single.counts[row]
            self._amount[row] = demand[row] / single.counts[row]
        for row, chooser in enumerate(choosers, self._demands):
            size, gain = min(chooser.lies, key=lambda lie: lie[1] * self._inverse[lie[0]][lie[0]])
            entry = gain * self._inverse[size][size]
            self._inverse[row][row] = 1.0
            self._inverse[size][row] = entry
            self._amount[row] = float(chooser.quantity)
            self._amount[size] += chooser.quantity * entry

    def prices(self) -> list[float]:
        """The worth of one more unit of each row."""
        prices = [0.0] * len(self._inverse)
        for column, row in zip(self._column, self._inverse, strict=True):
            if column is not None:
                cost = column.cost
                prices = [price + cost * entry for price, entry in zip(prices, row, strict=True)]
        return prices

    def mend(self, prices: Sequence[float]) -> bool:
        """Bring in the surplus or the split that promises most; False when none promises anything."""
        best = -_TINY
        entering: dict[int, float] = {}
        for row, price in enumerate(prices):
            if price < best:
                best, entering = price, {row: -1.0}
        for row, chooser in enumerate(self._choosers, self._demands):
            for size, gain in chooser.lies:
                promise = gain * prices[size] - prices[row]
                if promise < best:
                    best, entering = promise, {row: 1.0, size: -gain}
        return bool(entering) and self._enter(entering, None)

    def take(self, column: Column) -> bool:
        """Bring in a column; False when that is not possible."""
        entries = {row: float(count) for row, count in enumerate(column.counts) if count}
        return self._enter(entries, column)

    def _enter(self, entries: dict[int, float], column: Column | None) -> bool:
        change = []
        for row in self._inverse:
            total = 0.0
            for at, entry in entries.items():
                total += row[at] * entry
            change.append(total)
        leaving, least = -1, 0.0
        for at, step in enumerate(change):
            if step > _TINY:
                ratio = self._amount[at] / step
                if leaving < 0 or ratio < least:
                    leaving, least = at, ratio
        if leaving < 0:
            return False
        pivoted = [entry / change[leaving] for entry in self._inverse[leaving]]
        for at, step in enumerate(change):
            if at != leaving and step:
                self._inverse[at] = [
                    entry - step * out for entry, out in zip(self._inverse[at], pivoted, strict=True)
                ]
                self._amount[at] = max(0.0, self._amount[at] - step * least)
        self._inverse[leaving], self._amount[leaving] = pivoted, least
        self._column[leaving] = column
        return True

    def used(self) -> list[tuple[Column, float]]:
        """The columns in use, and how much of each."""
        pairs = zip(self._column, self._amount, strict=True)
        return [(column, amount) for column, amount in pairs if column is not None and amount > _TINY]


def as_weights(prices: Sequence[float], one: int) -> list[int]:
    """Prices as whole numbers, `one` for 1; none is below 0."""
    return [max(0, int(price * one + 0.5)) for price in prices]
