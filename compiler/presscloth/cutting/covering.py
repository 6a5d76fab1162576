"""Choose strips that hold every piece and are short in all.

First a search in depth over good strips, then repairs: a few strips are taken apart and their pieces
cut anew (after P. Shaw, "Using constraint programming and local search methods to solve vehicle
routing problems", 1998, from memory), as long as the purse lasts. Some good strips are best at no
prices at all, hence the random values and the random caps on how many of a part a strip may take.
"""

from __future__ import annotations

from collections.abc import Sequence
from operator import sub

from presscloth.cutting.chance import Chance
from presscloth.cutting.purse import Purse
from presscloth.cutting.strips import Strip, Strips, worth_of

_NODE_COST, _HEIGHT_COST = 10, 3  # what choosing one strip costs, and per height, in pieces laid
_BRANCHES = 6  # strips tried for one piece in the first search
_BRANCHES_ANEW = 2
_NODES_ANEW = 20
_MOST_TAKEN_APART = 5
_ONE = 1 << 20


def cover(strips: Strips, purse: Purse, goal: int) -> tuple[Strip, ...]:
    """Strips for all pieces; the search ends at a length of `goal` or less."""
    chosen: list[Strip] = []
    rest = strips.quantities
    # Many equal strips need no search: all but the last one or two of each that the program uses stay.
    for strip, amount in strips.used:
        for _ in range(int(amount) - 1):
            counts = _smaller(strip.counts, rest)
            if any(counts):
                chosen.append(strips.trimmed(counts))
                rest = _less(rest, counts)
    goal -= length_of(chosen)
    first = _Choice(strips, purse, None)
    found = first.least(rest, purse.left // 4, goal, None)
    return (*chosen, *_mended(strips, found, purse, goal))


def _mended(strips: Strips, found: tuple[Strip, ...], purse: Purse, goal: int) -> tuple[Strip, ...]:
    """Take a few strips apart and cut their pieces anew; keep what is no longer than before."""
    chance = Chance(2)
    choice = _Choice(strips, purse, chance)
    while purse.left > 0 and length_of(found) > goal:
        purse.left -= choice.cost
        kept = list(found)
        count = min(len(kept), 2 + chance.below(_MOST_TAKEN_APART - 1))
        apart = [kept.pop(chance.below(len(kept))) for _ in range(count)]
        pieces = tuple(sum(column) for column in zip(*(strip.counts for strip in apart), strict=True))
        share = min(purse.left, _NODES_ANEW * choice.cost)
        anew = choice.least(pieces, share, goal - length_of(kept), length_of(apart) + 1)
        if anew:
            found = (*kept, *anew)
    return found


class _Choice:
    """Depth first: the piece that needs the highest strip gets one, the best filled ones first."""

    def __init__(self, strips: Strips, purse: Purse, chance: Chance | None) -> None:
        """With `chance`, values and caps are drawn anew for every strip that is chosen."""
        self._strips = strips
        self._purse = purse
        self._chance = chance
        self.cost = _NODE_COST + _HEIGHT_COST * len(strips.heights)
        self._branches = _BRANCHES if chance is None else _BRANCHES_ANEW
        self._by_part = [
            [strip for strip in strips.pool if strip.counts[number]] for number in range(len(strips.prices))
        ]

    def least(self, pieces: tuple[int, ...], share: int, goal: int, below: int | None) -> tuple[Strip, ...]:
        """Strips for the pieces, shorter in all than `below`; none when there are none to be found.

        Ends at a length of `goal` or less, or when the share of the purse is spent; without `below`
        something is found in any case.
        """
        self._stop_at, self._goal, self._limit = self._purse.left - share, goal, below
        self._best: tuple[Strip, ...] = ()
        self._visit(pieces, 0, ())
        return self._best

    def _visit(self, rest: tuple[int, ...], length: int, chosen: tuple[Strip, ...]) -> None:
        """Choose strips for the `rest`; `length` is that of the strips chosen so far."""
        if not any(rest):
            self._limit, self._best = length, chosen
            return
        reach = self._strips.reach
        tallest = max(range(len(rest)), key=lambda number: reach[number] if rest[number] else 0)
        for strip in self._useful(tallest, rest):
            if self._limit is not None and (self._purse.left <= self._stop_at or self._limit <= self._goal):
                return
            self._purse.left -= self.cost
            after = _less(rest, strip.counts)
            total = length + strip.height
            if self._limit is None or total + self._strips.least_for(after) < self._limit:
                self._visit(after, total, (*chosen, strip))

    def _useful(self, part: int, rest: tuple[int, ...]) -> list[Strip]:
        """Strips that hold the part and nothing that is not wanted, the best filled ones first."""
        strips = self._strips
        values, most = self._values(), self._caps(rest)
        useful: dict[Strip, None] = {}
        for counts in dict.fromkeys(_smaller(strip.counts, rest) for strip in self._by_part[part]):
            useful[strips.trimmed(counts)] = None
        besides = [
            min(cap, count - (number == part))
            for number, (cap, count) in enumerate(zip(most, rest, strict=True))
        ]
        for strip in strips.around(part, besides, values):
            useful[strip] = None
        ranked = sorted(useful, key=lambda strip: -(worth_of(values, strip.counts) * _ONE // strip.height))
        return ranked[: self._branches]

    def _values(self) -> Sequence[int]:
        """What the parts are worth for filling a strip: their prices; or these or their areas, shaken."""
        if self._chance is None:
            return self._strips.prices
        basis = (self._strips.prices, self._strips.areas)[self._chance.below(2)]
        return [value * (70 + self._chance.below(61)) for value in basis]

    def _caps(self, rest: tuple[int, ...]) -> Sequence[int]:
        if self._chance is None:
            return rest
        return [1 + self._chance.below(quantity) for quantity in self._strips.quantities]


def length_of(strips: Sequence[Strip]) -> int:
    return sum(strip.height for strip in strips)


def _less(counts: tuple[int, ...], taken: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(map(sub, counts, taken))


def _smaller(counts: tuple[int, ...], others: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(map(min, counts, others))
