"""Which choices are tried: the ends of every range, and the values that a reader would type."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import islice, product

from presscloth.choices.offers import take
from presscloth.frozen import dataclass
from presscloth.handout.choosing import Choice, Offer
from presscloth.measure import Kind, System

MOST_VALUES = 100
"""So many values of one range are tried at most, in each system."""

MOST_TOGETHER = 400
"""So many choices of several measures at once are tried at most."""

BETWEEN = (Fraction(1, 2), Fraction(1, 3), Fraction(2, 3))
"""Parts of a step: where values that lie on no grid are tried."""


@dataclass(frozen=True, slots=True)
class Axis:
    """The range of one measure in one system; all other measures keep the recipe's own values."""

    own: Choice
    place: int
    offer: Offer
    system: System

    def at(self, value: Fraction) -> Choice:
        """The choice in which the measure has a value."""
        return (*self.own[: self.place], take(self.offer, self.system, value), *self.own[self.place + 1 :])

    def reaches(self, value: Fraction) -> bool:
        return self.offer.least[self.system] <= value <= self.offer.most[self.system]

    def values(self) -> Iterator[Fraction]:
        """Values on the grid of the system and between, the coarse ones first."""
        least, most = self.offer.least[self.system], self.offer.most[self.system]
        step = self.offer.step(self.system)
        while (most - least) / step > MOST_VALUES:
            step *= 2
        count = (most - least) // step
        for number in sorted(range(count + 1), key=lambda n: (n % 8 != 0, n % 2 != 0, n)):
            value = least + number * step
            yield value
            for part in BETWEEN if self.offer.kind is not Kind.NUMBER and number % 4 == 0 else ():
                if value + part * step < most:
                    yield value + part * step


def axes(offered: Sequence[Offer], systems: Sequence[System]) -> tuple[Axis, ...]:
    """Every range in every system."""
    own = own_choice(offered, systems)
    return tuple(Axis(own, place, offer, s) for place, offer in enumerate(offered) for s in systems)


def own_choice(offered: Sequence[Offer], systems: Sequence[System]) -> Choice:
    """The recipe's own values."""
    return tuple(take(offer, systems[0], offer.own[systems[0]]) for offer in offered)


def tried(offered: Sequence[Offer], systems: Sequence[System]) -> Iterator[Choice]:
    """The choices that are tried: the recipe's own, then all ends together and each range by itself."""
    yield own_choice(offered, systems)
    for system in systems:
        ends = ([take(offer, system, end[system]) for end in (offer.least, offer.most)] for offer in offered)
        yield from islice(product(*ends), MOST_TOGETHER)
    for axis in axes(offered, systems):
        yield from map(axis.at, axis.values())


def together(telling: Sequence[Choice]) -> Iterator[Choice]:
    """Every value that told something with every one of the other choices, few enough to be tried."""
    each = [dict.fromkeys(taken) for taken in zip(*telling, strict=True)]
    if len(each) > 1:
        yield from islice(product(*each), MOST_TOGETHER)
