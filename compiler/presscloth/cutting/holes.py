"""Lay small pieces into the holes that are left between large ones.

The free cloth is one whole number with a bit for every unit square, row after row, so that a piece is
tried at all places at once. Every small piece goes as near to the cut end as it can.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import gcd

from presscloth.cutting.parts import Part, Placed, end_of, lies_of
from presscloth.frozen import dataclass

_SMALL = 8  # a piece of an area this many times less than the largest is a small one
_SHARE = 5  # of the area that the small ones have together at most: holes hold no more
_FEW = 12  # kinds of parts; where there are more, pieces of every size fill the holes anyway
_MOST_SQUARES = 60_000  # of the unit: with more of them, each step takes too long
_PIECES_AT_ONCE = 2  # are laid into holes with the work of laying one in order
_SQUARES_AT_ONCE = 2_000  # are looked at, for one way of lying, with that work


@dataclass(frozen=True, slots=True)
class Filled:
    """The area of the small pieces that find no hole, the places of the others, and the work it took."""

    missing: int
    placed: tuple[Placed, ...]
    work: int


class Holes:
    """The small ones among the parts, for the holes between the `large` ones; parts by their numbers."""

    def __init__(self, parts: Sequence[Part], width: int) -> None:
        largest = max(part.width * part.height for part in parts)
        small = [n for n, part in enumerate(parts) if part.width * part.height * _SMALL <= largest]
        small.sort(key=lambda n: -parts[n].width * parts[n].height)
        area = sum(part.area for part in parts)
        if len(parts) > _FEW or sum(parts[n].area for n in small) * _SHARE > area:
            small = []
        self._parts = parts
        self._small = small
        self.large = tuple(n for n in range(len(parts)) if n not in self._small)
        self.area = sum(parts[n].area for n in self._small)
        self._unit = gcd(*(extent for part in parts for extent in (part.width, part.height)))
        # One square more than the cloth has, never free, so that no piece runs over into the next row.
        self._row = width // self._unit + 1
        self._blocks: dict[tuple[int, int], int] = {}
        self._known: dict[tuple[int, tuple[Placed, ...]], Filled] = {}

    def worth_filling(self, length: int) -> bool:
        """Whether there are small parts, and not too many squares to look at."""
        return bool(self._small) and length // self._unit * self._row <= _MOST_SQUARES

    def fill(self, length: int, large: Sequence[Placed]) -> Filled:
        """Lay the small pieces around the large ones, one way first, then the other if some are left."""
        key = (length, tuple(sorted(large, key=lambda piece: (piece.x, piece.y))))
        if key in self._known:
            return self._known[key]
        free = self._free(length, large)
        best = self._laid(free, turned_first=False)
        if best.missing:
            turned = self._laid(free, turned_first=True)
            best = replace(min(best, turned, key=lambda filled: filled.missing), work=best.work + turned.work)
        self._known[key] = replace(best, work=1)
        return best

    def _free(self, length: int, large: Sequence[Placed]) -> int:
        """The squares that no large piece lies on."""
        taken, unit = 0, self._unit
        for piece in large:
            right, top = end_of(self._parts[piece.part], piece)
            # A piece at the right selvedge may lie on parts of squares, which are taken then.
            wide = -(-right // unit) - piece.x // unit
            taken |= self._block(wide * unit, top - piece.y) << self._square(piece.x, piece.y)
        return self._block((self._row - 1) * self._unit, length) & ~taken

    def _laid(self, free: int, *, turned_first: bool) -> Filled:
        missing, placed, work = 0, list[Placed](), 0
        for number in self._small:
            part = self._parts[number]
            left = part.quantity
            for wide, high in sorted(lies_of(part), reverse=turned_first):
                spots = self._spots(free, wide, high, left)
                left -= len(spots)
                work += free.bit_length() // _SQUARES_AT_ONCE
                for x, y in spots:
                    free &= ~(self._block(wide, high) << self._square(x, y))
                    placed.append(Placed(number, x, y, wide != part.width))
            missing += left * part.width * part.height
        return Filled(missing, tuple(placed), work + len(placed) // _PIECES_AT_ONCE)

    def _spots(self, free: int, wide: int, high: int, count: int) -> list[tuple[int, int]]:
        """Up to `count` places for a piece, none on another."""
        starts = _following(_following(free, wide // self._unit, 1), high // self._unit, self._row)
        # Wherever another would begin on this one, or end on it.
        near = self._block(2 * wide - self._unit, 2 * high - self._unit)
        back = self._square(wide - self._unit, high - self._unit)
        spots: list[tuple[int, int]] = []
        while starts and len(spots) < count:
            at = (starts & -starts).bit_length() - 1
            starts &= ~(near << at >> back)
            spots.append((at % self._row * self._unit, at // self._row * self._unit))
        return spots

    def _square(self, x: int, y: int) -> int:
        return y // self._unit * self._row + x // self._unit

    def _block(self, wide: int, high: int) -> int:
        """The squares of a piece at the first corner."""
        if (wide, high) not in self._blocks:
            block, row = 0, (1 << wide // self._unit) - 1
            for y in range(high // self._unit):
                block |= row << y * self._row
            self._blocks[wide, high] = block
        return self._blocks[wide, high]


def _following(free: int, count: int, step: int) -> int:
    """Where so many free squares follow each other, `step` apart."""
    have = 1
    while have < count:
        more = min(have, count - have)
        free &= free >> more * step
        have += more
    return free
