"""Which lengths a layout can have: sums of the extents of pieces that stand one behind the other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import gcd

from presscloth.cutting.parts import Part

_MANY = 200  # equal pieces, beyond which adding them one by one takes longer than it is worth


class Lengths:
    """The lengths up to `limit` that some pieces of `parts` add up to, either way they may lie.

    A layout pushed towards the cut end ends with a piece that stands on a piece that stands on … the
    cut end (N. Christofides, C. Whitlock, "An algorithm for two-dimensional cutting problems",
    Operations Research 25 (1977), from memory), so no other length is ever needed.
    """

    def __init__(self, parts: Sequence[Part], limit: int) -> None:
        extents = [part.height for part in parts]
        extents += [part.width for part in parts if part.turnable]
        self._grain = gcd(*extents)
        cap = limit // self._grain
        sums = 1
        for part in parts:
            ways = {part.height, part.width} if part.turnable else {part.height}
            for copies in _copies(min(part.quantity, limit // min(ways))):
                longer = sums
                for extent in ways:
                    # One piece lies one way or the other; of many at once, some lie each way.
                    before = sums if copies == 1 else longer
                    longer |= before << (copies * extent // self._grain)
                longer &= (1 << (cap + 1)) - 1
                if longer == sums:
                    break
                sums = longer
        self._sums = sums

    def up_to(self, length: int) -> int:
        """The greatest of the lengths that is no more than `length`."""
        below = self._sums & ((1 << (length // self._grain + 1)) - 1)
        return (below.bit_length() - 1) * self._grain

    def from_(self, length: int) -> int:
        """The least of the lengths that is `length` or more; `length` itself if there is none."""
        cells = -(-length // self._grain)
        rest = self._sums >> cells
        if not rest:
            return length
        return (cells + (rest & -rest).bit_length() - 1) * self._grain


def _copies(quantity: int) -> Iterator[int]:
    """Portions of a quantity that make up every number up to it: 1, 1, … or for very many 1, 2, 4, …

    Portions of many allow a few sums of two extents that no pieces have, which only weakens a bound.
    """
    if quantity <= _MANY:
        yield from (1 for _ in range(quantity))
        return
    portion = 1
    while quantity:
        yield min(portion, quantity)
        quantity -= min(portion, quantity)
        portion *= 2
