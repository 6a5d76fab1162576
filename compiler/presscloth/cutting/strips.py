"""Cut as with ruler and rotary cutter: full-width strips off the roll first, then each strip across.

A strip is as high as the tallest piece in it; the pieces lie side by side, lower ones are trimmed.
The least length is a covering problem: choose strips so that every piece is in one of them
(two-stage guillotine cutting: P. C. Gilmore, R. E. Gomory, Operations Research 13 (1965), from
memory). Column generation gives a price for each part, and with it a bound and good strips to start
from; `covering` chooses among strips.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from operator import mul

from presscloth.cutting.chance import Chance
from presscloth.cutting.knapsack import best_filling
from presscloth.cutting.parts import Layout, Part, Placed, lies_of
from presscloth.cutting.program import Column, Program, as_weights
from presscloth.frozen import dataclass

_ONE = 1 << 20  # the worth of one unit of length, as prices are rounded to integers
_MOST_PIVOTS = 200
_SHAKES = 40  # times that strips are looked for at prices a little wrong


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip: its height, and how many pieces of each part it holds."""

    height: int
    counts: tuple[int, ...]


class Strips:
    """Everything about one set of parts cut in strips of one width, none higher than `highest`.

    Every part must have a lie that fits into such a strip.
    """

    def __init__(self, parts: Sequence[Part], width: int, highest: int | None = None) -> None:
        self._parts = parts
        self.width = width
        self._lies = [
            [lie for lie in lies_of(part) if lie[0] <= width and (highest is None or lie[1] <= highest)]
            for part in parts
        ]
        self.quantities = tuple(part.quantity for part in parts)
        self.heights = sorted({height for lies in self._lies for _, height in lies})
        # Of two lies that fit into a strip the narrower one is never worse.
        self._widths = {
            height: [self._narrowest(lies, height) for lies in self._lies] for height in self.heights
        }
        self.reach = [min(high for _, high in lies) for lies in self._lies]
        self.areas = [part.width * part.height for part in parts]
        self._lowest: dict[tuple[int, ...], Strip] = {}
        self.pool: dict[Strip, None] = {}
        self._solve()
        self._widen_pool()

    def _narrowest(self, lies: Sequence[tuple[int, int]], height: int) -> int:
        """The least width of a lie within a strip of this height; too wide if there is none."""
        widths = [wide for wide, high in lies if high <= height]
        return min(widths, default=self.width + 1)

    def _solve(self) -> None:
        """Column generation: prices of the parts, strips worth using, and how much of each."""
        program = Program([float(quantity) for quantity in self.quantities], self._singles(), ())
        for _ in range(_MOST_PIVOTS):
            prices = program.prices()
            if program.mend(prices):
                continue
            strip = self._best_strip(as_weights(prices, _ONE), self.quantities)
            if strip is None or not program.take(Column(strip.counts, float(strip.height))):
                break
        self.prices = as_weights(program.prices(), _ONE)
        self.used = [(self.trimmed(column.counts), amount) for column, amount in program.used()]
        self.pool.update(dict.fromkeys(strip for strip, _ in self.used))
        # No strip is worth more than `worth` of its height, in prices; 1 if they are perfect.
        self._worth = max(
            Fraction(self._filling(height, self.prices, self.quantities)[1], height * _ONE)
            for height in self.heights
        )

    def _widen_pool(self) -> None:
        """More strips to start from, best at prices that are up to a quarter wrong."""
        chance = Chance(1)
        for _ in range(_SHAKES):
            prices = [price * (75 + chance.below(51)) for price in self.prices]
            for height in self.heights:
                counts, _ = self._filling(height, prices, self.quantities)
                if any(counts):
                    self.pool[self.trimmed(counts)] = None

    def _singles(self) -> list[Column]:
        """Per part a strip of it alone."""
        columns = []
        for number, part in enumerate(self._parts):
            wide, high = min(
                self._lies[number],
                key=lambda lie: Fraction(lie[1], self.width // lie[0]),
            )
            count = min(part.quantity, self.width // wide)
            counts = tuple(count if i == number else 0 for i in range(len(self._parts)))
            columns.append(Column(counts, float(high)))
        return columns

    def _filling(
        self, height: int, prices: Sequence[int], most: Sequence[int]
    ) -> tuple[tuple[int, ...], int]:
        """The most valuable strip of this height, and a value that none exceeds."""
        filling = best_filling(self._widths[height], prices, most, self.width)
        return filling.counts, filling.ceiling

    def _best_strip(self, prices: Sequence[int], most: Sequence[int]) -> Strip | None:
        """The strip whose value exceeds its height most, if any does."""
        best, gain = None, 0
        for height in self.heights:
            counts, _ = self._filling(height, prices, most)
            if not any(counts):
                continue
            strip = self.trimmed(counts)
            self.pool[strip] = None
            value = worth_of(prices, counts) - strip.height * _ONE - sum(counts)
            if value > gain:
                best, gain = strip, value
        return best

    def widths_at(self, height: int) -> Sequence[int]:
        """Per part its width in a strip of this height; more than the cloth's if it is too high."""
        return self._widths[height]

    def trimmed(self, counts: tuple[int, ...]) -> Strip:
        """The lowest strip that holds these pieces, which must fit side by side."""
        known = self._lowest.get(counts)
        if known is None:
            height = next(high for high in self.heights if worth_of(self._widths[high], counts) <= self.width)
            known = self._lowest[counts] = Strip(height, counts)
        return known

    def around(self, part: int, most: Sequence[int], values: Sequence[int]) -> Iterator[Strip]:
        """Per height a strip with one piece of the part, filled up with what is worth most.

        `most` is how many of each part there may be besides, `values` says what they are worth.
        """
        for height in self.heights:
            widths = self._widths[height]
            room = self.width - widths[part]
            if room >= 0:
                filling = best_filling(widths, values, most, room)
                counts = [count + (number == part) for number, count in enumerate(filling.counts)]
                yield self.trimmed(tuple(counts))

    def least_for(self, counts: Sequence[int]) -> int:
        """No strips for these pieces are shorter: their prices over the worth of a strip, exactly."""
        pieces = worth_of(self.prices, counts) * self._worth.denominator
        return -(-pieces // (_ONE * self._worth.numerator))

    def bound(self) -> int:
        """No strips for all pieces are shorter."""
        return self.least_for(self.quantities)

    def layout(self, strips: Sequence[Strip]) -> Layout:
        """The strips one after another, highest first, in each the highest piece first."""
        placed: list[Placed] = []
        y = 0
        for strip in sorted(strips, key=lambda strip: (-strip.height, strip.counts)):
            x = 0
            pieces = []
            for number, count in enumerate(strip.counts):
                if count:
                    wide, high = min(lie for lie in self._lies[number] if lie[1] <= strip.height)
                    pieces.extend([(-high, number, wide)] * count)
            for _, number, wide in sorted(pieces):
                placed.append(Placed(number, x, y, wide != self._parts[number].width))
                x += wide
            y += strip.height
        return Layout(self.width, y, tuple(placed))


def worth_of(prices: Sequence[int], counts: Sequence[int]) -> int:
    """So many pieces at these prices."""
    return sum(map(mul, prices, counts))
