"""Look for a free layout within a given length, by trying one order of pieces after another.

A small crowd of searchers shares the work: each fills the cloth along or across, in big or in small
batches, by one rule, and keeps changing its own order of lies wherever that leaves less area over.
Which of them finds the layout depends on the parts, and no single one is best for all.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import product

from presscloth.cutting.chance import Chance
from presscloth.cutting.holes import Holes
from presscloth.cutting.parts import Layout, Part, Placed, end_of
from presscloth.cutting.purse import Purse
from presscloth.cutting.rows import fill_rows
from presscloth.cutting.skyline import Rule, Spot, fill
from presscloth.cutting.stock import Stock, even, halved, stock_of, whole

_MOST_BATCHES = 60  # more would cost time and find little: many equal pieces lie in rows anyway
_PATIENCE = 800  # tries without any gain before a searcher starts again from another order
_PATIENCE_AHEAD = 100  # the same for those that go ahead of the crowd: another start is another chance
_RULES = (Rule.SNUG, Rule.EXACT, Rule.ORDER)
_AHEAD = 2  # of what is left goes into each searcher that promises most, before the crowd has its turn
_SINGLY = 24  # so few pieces are laid one by one only
_SEEDS = 1000  # between those of one crowd and of the next
_LOOKS = 6  # for two lies that differ
_FIXED_COST = 5  # what a try costs besides its pieces, in pieces


class _Searcher:
    """One way of filling, with the best order that it has found for the present target."""

    def __init__(
        self,
        parts: Sequence[Part],
        rule: Rule,
        sizes: Sequence[int],
        sideways: bool,
        seed: int,
        *,
        patience: int = _PATIENCE,
        holes: Holes | None = None,
    ) -> None:
        """With batches of `sizes`, and only the large parts where there are `holes` for the others."""
        self._holes = holes
        self._numbers = holes.large if holes else tuple(range(len(parts)))
        laid = [parts[number] for number in self._numbers]
        self._stock: Stock = stock_of(laid, [sizes[number] for number in self._numbers], sideways=sideways)
        self._small_area = holes.area if holes else 0
        self._patience = patience
        self._rule = rule
        self._cost = _cost(rule, among_equal=len(self._stock.count) > len(laid))
        self._sideways = sideways
        self._chance = Chance(seed)
        self._starts = 0
        self._order: list[int] = []
        self._stale = 0
        self.left_over = 0
        self._spots: list[list[Spot]] = []
        self._in_holes: tuple[Placed, ...] = ()
        self._used: set[int] = set()
        self._missing: set[int] = set()

    def aim(self, width: int, length: int, sheets: int) -> None:
        """Take a new target; the order found for an earlier one is kept as the start."""
        self._sheets = sheets
        self._width, self._length = (length, width) if self._sideways else (width, length)
        stock = self._stock
        fitting = [
            lie
            for lie in range(len(stock.batch))
            if stock.across[lie] <= self._width and stock.along[lie] <= self._length
        ]
        kept = [lie for lie in self._order if lie in fitting]
        self._fitting = fitting
        self._order = kept if len(kept) == len(fitting) else []
        self.left_over = self._all + 1

    @property
    def _all(self) -> int:
        """The area of all pieces."""
        return self._stock.area + self._small_area

    def search(self, purse: Purse, share: int) -> None:
        """Spend `share` on better orders; stop as soon as nothing is left over."""
        goal = purse.left - share
        while purse.left > goal:
            order = self._next_order()
            missing, spots = self._fill(order)
            purse.left -= sum(len(sheet) + _FIXED_COST for sheet in spots) * self._cost // 2
            left_over, in_holes = missing + self._small_area, tuple[Placed, ...]()
            if self._holes and not missing:
                filled = self._holes.fill(self._length, self._placed(spots[0]))
                left_over, in_holes = filled.missing, filled.placed
                purse.left -= filled.work
            self._stale += 1
            if left_over <= self.left_over:
                if left_over < self.left_over:
                    self._stale = 0
                self.left_over, self._order = left_over, order
                self._spots, self._in_holes = spots, in_holes
                self._look_at(spots)
            if not left_over:
                return

    def _look_at(self, spots: Sequence[Sequence[Spot]]) -> None:
        """Note which lies the kept order uses, and which are those of pieces that it leaves over."""
        laid = Counter(lie for sheet in spots for lie, _, _ in sheet)
        self._used = set(laid)
        self._missing = {
            lie
            for lies, count in zip(self._stock.lies, self._stock.count, strict=True)
            if sum(laid[lie] for lie in lies) < count
            for lie in lies
        }

    def _next_order(self) -> list[int]:
        """The kept order at first, then one with two lies swapped or one moved; sometimes a new start."""
        if not self._order or self._stale > self._patience:
            self.left_over = self._all + 1
            self._stale = 0
            self._starts += 1
            return sorted(self._fitting, key=self._size)
        if self.left_over > self._all:
            return self._order
        order = self._order[:]
        one, other = self._two_places(order)
        if self._chance.below(2):
            order[one], order[other] = order[other], order[one]
        else:
            order.insert(other, order.pop(one))
        return order

    def _two_places(self, order: Sequence[int]) -> tuple[int, int]:
        """Two places in the order to change: now and then a piece that was left over comes forward.

        Else one of the lies should be in use, and they should differ: to swap others changes nothing.
        """
        across, along, chance = self._stock.across, self._stock.along, self._chance
        behind = [place for place, lie in enumerate(order) if lie in self._missing]
        if behind and not chance.below(3):
            one = behind[chance.below(len(behind))]
            return one, chance.below(one + 1)
        one = other = 0
        for _ in range(_LOOKS):
            one, other = chance.below(len(order)), chance.below(len(order))
            first, second = order[one], order[other]
            differ = across[first] != across[second] or along[first] != along[second]
            if differ and (first in self._used or second in self._used):
                break
        return one, other

    def _size(self, lie: int) -> int:
        """Large lies first; each start has another notion of large."""
        across, along = self._stock.across[lie], self._stock.along[lie]
        match self._starts % 4:
            case 1:
                return -across * along
            case 2:
                return -across
            case 3:
                return -along
            case _:
                return -across - along

    def _fill(self, order: Sequence[int]) -> tuple[int, list[list[Spot]]]:
        """Fill one sheet after another: the area of the pieces left over, and the spots on each sheet.

        As soon as it is certain that more is left over than from the best order, the filling ends, and
        the area is some number above that: what is wasted beyond the spare area of all sheets is
        missing for pieces.
        """
        stock = self._stock
        left = list(stock.count)
        sheet = self._width * self._length
        fewest = max(0, self.left_over - self._small_area)
        spare = self._sheets * sheet - stock.area + fewest
        spots: list[list[Spot]] = []
        while len(spots) < self._sheets and any(left):
            if self._rule is Rule.ROW:
                laid, wasted = fill_rows(stock, self._width, self._length, order, left, spare)
            else:
                laid, wasted = fill(stock, self._width, self._length, order, self._rule, left, spare)
            spots.append(laid)
            if wasted > spare:
                return fewest + wasted - spare, spots
            spare -= wasted
        missing = 0
        for lies, count in zip(stock.lies, left, strict=True):
            if count:
                missing += count * stock.across[lies[0]] * stock.along[lies[0]]
        return missing, spots

    def layouts(self, parts: Sequence[Part], width: int) -> tuple[Layout, ...]:
        """The pieces that the best order places, on each sheet."""
        sheets = [[*self._placed(spots), *self._in_holes] for spots in self._spots]
        return tuple(settled(parts, width, placed) for placed in sheets)

    def _placed(self, spots: Sequence[Spot]) -> list[Placed]:
        stock = self._stock
        return [
            Placed(
                self._numbers[stock.part[stock.batch[lie]]],
                along if self._sideways else across,
                across if self._sideways else along,
                stock.turned[lie],
            )
            for lie, across, along in spots
        ]


def _cost(rule: Rule, *, among_equal: bool) -> int:
    """What laying a piece costs, in halves of laying one by order: measured, and the same everywhere."""
    match rule:
        case Rule.ORDER:
            return 2
        case Rule.EXACT | Rule.SNUG:
            return 3 if among_equal else 2
        case Rule.ROW:
            return 12


class Search:
    """The crowd, over one set of parts on one width."""

    def __init__(self, parts: Sequence[Part], width: int, seed: int = 0) -> None:
        """Another `seed` gives other random numbers, to see how much is owed to them."""
        self._seed = _SEEDS * seed
        pieces = sum(part.quantity for part in parts)
        few_each = even(parts, min(pieces, _MOST_BATCHES))
        singly = [(rule, few_each) for rule in _RULES]
        together = [(rule, whole(parts)) for rule in _RULES]
        rows = (Rule.ROW, whole(parts))
        if pieces <= _SINGLY:
            kinds = [rows, *singly]
        elif pieces > len(parts):
            kinds = [*singly, *together, rows]
        else:
            kinds = [*together, rows]
        self._parts = parts
        self._width = width
        self._crowd = [
            _Searcher(parts, rule, sizes, sideways, self._seed + number)
            for number, ((rule, sizes), sideways) in enumerate(product(kinds, (False, True)))
        ]
        self._holes = Holes(parts, width)
        self._around_holes = self._forerunners([2 for _ in parts], (False,), self._holes)
        # Few pieces, some of them equal: half of a kind one way and half the other is worth a try of its own.
        halves = len(parts) < pieces <= _SINGLY
        self._in_halves = self._forerunners(halved(parts), (True, False), None) if halves else []
        self._share = 30 * (pieces + _FIXED_COST)

    def _forerunners(
        self, sizes: Sequence[int], sides: Sequence[bool], holes: Holes | None
    ) -> list[_Searcher]:
        """Searchers that go ahead of the crowd, with more of the means and less patience."""
        rules = (Rule.ORDER, Rule.EXACT) if holes else (Rule.ORDER,)
        return [
            _Searcher(self._parts, rule, sizes, sideways, seed, patience=_PATIENCE_AHEAD, holes=holes)
            for seed, (rule, sideways) in enumerate(product(rules, sides), self._seed)
        ]

    def within(self, length: int, purse: Purse, sheets: int = 1) -> tuple[Layout, ...] | None:
        """Layouts on so many sheets, none longer than `length`, if found before the purse is empty."""
        with_holes = sheets == 1 and self._holes.worth_filling(length)
        ahead = self._around_holes if with_holes else self._in_halves
        for searcher in ahead:
            searcher.aim(self._width, length, sheets)
            searcher.search(purse, purse.left // _AHEAD)
            if not searcher.left_over:
                return searcher.layouts(self._parts, self._width)
        for searcher in self._crowd:
            searcher.aim(self._width, length, sheets)
        while purse.left > 0:
            active, share = self._crowd, self._share
            while active:
                for searcher in active:
                    searcher.search(purse, min(share, purse.left))
                    if not searcher.left_over:
                        return searcher.layouts(self._parts, self._width)
                # The better half goes on with twice the means, until a single one has had its turn.
                active = sorted(active, key=lambda searcher: searcher.left_over)[: len(active) // 2]
                share *= 2
        return None


def first_try(parts: Sequence[Part], width: int, length: int, sheets: int) -> tuple[Layout, ...]:
    """The layouts of the first order that comes to mind, on more than enough cloth."""
    searcher = _Searcher(parts, Rule.SNUG, whole(parts), False, 0)
    searcher.aim(width, length, sheets)
    searcher.search(Purse(1), 1)
    return searcher.layouts(parts, width)


def settled(parts: Sequence[Part], width: int, placed: Sequence[Placed]) -> Layout:
    """Push every piece towards the cut end as far as it goes, the nearest ones first."""
    rest: list[Placed] = []
    taken: list[tuple[int, int, int]] = []  # from x to x, up to y
    for piece in sorted(placed, key=lambda piece: (piece.y, piece.x)):
        right, top = end_of(parts[piece.part], piece)
        y = max((end for start, stop, end in taken if start < right and stop > piece.x), default=0)
        rest.append(Placed(piece.part, piece.x, y, piece.turned))
        taken.append((piece.x, right, y + top - piece.y))
    return Layout(width, max((end for _, _, end in taken), default=0), tuple(rest))
