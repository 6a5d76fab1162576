"""Which lengths a layout can have: sums of the extents of pieces that stand one behind the other."""

from __future__ import annotations

from collections.abc import Sequence
from math import gcd

from presscloth.cutting.parts import Part


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
            for _ in range(min(part.quantity, limit // min(ways))):
                longer = sums
                for extent in ways:
                    longer |= sums << (extent // self._grain)
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
