"""The bar relaxation: the pieces are sawn into bars, and the bars fill the cloth's width.

Cut every piece across into bars of its own width and no height to speak of. However a layout looks,
any line across it meets bars that stand side by side, a *filling* of the width. The least length of
cloth that holds all bars is a linear program over fillings, solved by column generation
(P. C. Gilmore, R. E. Gomory, Operations Research 9 (1961); as a bound for rectangles: G. Scheithauer,
"LP-based bounds for the container and multi-container loading problem", Int. Trans. Opl. Res. 6
(1999); from memory). Its prices are weights for the widths, and prove bounds elsewhere, in integers.
"""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.cutting.knapsack import best_filling
from presscloth.cutting.program import Chooser, Column, Program, as_weights
from presscloth.frozen import dataclass

_ONE = 1 << 20  # the worth of a whole filling, as prices are rounded to integers
_MOST_ROWS = 40
_MOST_PIVOTS = 200


@dataclass(frozen=True, slots=True)
class Bars:
    """Integer weights for the sizes, and fillings (counts by size) with the length each is used."""

    weights: tuple[int, ...]
    fillings: tuple[tuple[tuple[int, ...], float], ...]


def solve_bars(
    sizes: Sequence[int], most: Sequence[int], choosers: Sequence[Chooser], room: int
) -> Bars | None:
    """The least length of fillings of `room` for all pieces, or None if that is too much work.

    A chooser's row is the number of a size, its gain how long the piece is in that lie. Each size
    must fit into the room; at most `most[i]` bars of `sizes[i]` can stand side by side.
    """
    demand = [0.0] * len(sizes)
    for chooser in choosers:
        if len(chooser.lies) == 1:
            size, gain = chooser.lies[0]
            demand[size] += chooser.quantity * gain
    free = [chooser for chooser in choosers if len(chooser.lies) > 1]
    if len(sizes) + len(free) > _MOST_ROWS:
        return None
    program = Program(demand, _singles(sizes, most, room), free)
    for _ in range(_MOST_PIVOTS):
        prices = program.prices()
        if program.mend(prices):
            continue
        weights = as_weights(prices[: len(sizes)], _ONE)
        filling = best_filling(sizes, weights, most, room)
        # Each weight may be half a unit off, so a filling within that of a whole one gains nothing.
        if filling.value <= _ONE + sum(filling.counts) or not program.take(Column(filling.counts, 1.0)):
            break
    weights = as_weights(program.prices()[: len(sizes)], _ONE)
    used = tuple((column.counts, amount) for column, amount in program.used())
    return Bars(tuple(weights), used)


def _singles(sizes: Sequence[int], most: Sequence[int], room: int) -> list[Column]:
    """Per size the filling of that size alone."""
    columns = []
    for number, size in enumerate(sizes):
        count = min(most[number], room // size)
        columns.append(Column(tuple(count if i == number else 0 for i in range(len(sizes))), 1.0))
    return columns
