"""Going through the range of every choice until each value that a reader would type has its way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import islice, product

from presscloth.choices.offers import offers, take
from presscloth.choices.reckoned import Reach, Reckoned
from presscloth.choices.tracing import Tracer, reaches, tongue, variables
from presscloth.handout.choosing import Choice, DrawnWay, Followable, Offer, Way
from presscloth.handout.tree import Handout, Publisher
from presscloth.measure import Kind, System
from presscloth.measure.following import Chosen, Form, Guard
from presscloth.measure.rounding import half_up
from presscloth.proof.size import WorkedSize
from presscloth.tongue import speaking
from presscloth.translation.tree import Translation

MOST_TRACES = 60
"""So often is a size worked out at most; a page says so where it cannot follow."""

MOST_VALUES = 100
"""So many values of one range are tried at most, in each system."""

MOST_TOGETHER = 400
"""So many choices of several measures at once are tried at most."""

GRIDS = {
    (Kind.LENGTH, System.METRIC): Fraction(1),
    (Kind.LENGTH, System.IMPERIAL): Fraction(1, 8),
    (Kind.WEIGHT, System.METRIC): Fraction(5),
    (Kind.WEIGHT, System.IMPERIAL): Fraction(1, 4),
    (Kind.NUMBER, System.METRIC): Fraction(1),
    (Kind.NUMBER, System.IMPERIAL): Fraction(1),
}
"""The steps in which a reader types: mm, 1/8 in, 5 g, 1/4 oz, whole numbers."""

SYSTEMS = {system.value for system in System}

BETWEEN = (Fraction(1, 2), Fraction(1, 3), Fraction(2, 3))
"""Parts of a step: where values that lie on no grid are tried."""


def follow(
    size: WorkedSize, handout: Handout, publisher: Publisher, translation: Translation | None = None
) -> Followable | None:
    """Transform a sound size into what its page needs to follow the reader; None where nothing is chosen.

    `handout` is the one of the recipe's own values, in the language of the `translation` if there is one.
    """
    with speaking(tongue(size, translation)):
        offered = offers(size)
    if not offered:
        return None
    return _Explorer(offered, Tracer(size, offered, handout, publisher, translation)).explored()


class _Explorer:
    def __init__(self, offered: tuple[Offer, ...], tracer: Tracer) -> None:
        self._systems = tracer.size.edition.recipe.front.systems
        self._offers = offered
        self._tracer = tracer
        self._following = tracer.now
        self._ways: list[Way] = []
        self._traces = 0

    def explored(self) -> Followable:
        telling = [choice for choice in tried(self._offers, self._systems) if self._tells(choice)]
        telling += [choice for choice in self._at_turning_points() if self._tells(choice)]
        for choice in together(telling):
            self._tells(choice)
        name = self._tracer.size.edition.size.name
        return Followable(name, self._offers, self._following, tuple(self._ways), self._traces < MOST_TRACES)

    def _at_turning_points(self) -> Iterator[Choice]:
        """Choices at and beside the values at which a guard of one measure alone turns."""
        own = next(tried(self._offers, self._systems))
        turning = dict.fromkeys(point for way in self._ways for point in self._turning_points(way.guards))
        for (place, system), value in turning:
            offer, step = self._offers[place], GRIDS[self._offers[place].kind, system]
            nearest = half_up(value, step)
            for near in (value, nearest, nearest - step, nearest + step):
                if system in self._systems and offer.least[system] <= near <= offer.most[system]:
                    yield (*own[:place], take(offer, system, near), *own[place + 1 :])

    def _turning_points(self, guards: Sequence[Guard]) -> Iterator[tuple[tuple[int, System], Fraction]]:
        for guard in guards:
            match guard.difference:
                case Form(constant=constant, terms=((node, factor),)):
                    chosen = self._following.nodes[node]
                    if isinstance(chosen, Chosen) and chosen.system in SYSTEMS:
                        yield (chosen.choice, System(chosen.system)), -constant / factor
                case _:
                    pass

    def _tells(self, choice: Choice) -> bool:
        """Whether a choice is reckoned in a way that was not known yet; the way is taken up."""
        if self._traces >= MOST_TRACES or self._is_covered(choice):
            return False
        self._take_up(self._trace(choice))
        return True

    def _is_covered(self, choice: Choice) -> bool:
        now = Reckoned(self._following, variables(choice))
        for way in self._ways:
            if now.holds(way.guards):
                return all(any(now.holds(each.guards) for each in ways) for ways in _drawn_ways(way))
        return False

    def _trace(self, choice: Choice) -> Way:
        self._traces += 1
        way = self._tracer.trace(choice)
        reach = Reach(self._following, reaches(self._offers))

        def needed(guards: Sequence[Guard]) -> tuple[Guard, ...]:
            return tuple(guard for guard in guards if not reach.always(guard))

        def drawn(ways: Sequence[DrawnWay]) -> tuple[DrawnWay, ...]:
            return tuple(replace(each, guards=needed(each.guards)) for each in ways)

        return replace(
            way, guards=needed(way.guards), pieces=drawn(way.pieces), steps=tuple(map(drawn, way.steps))
        )

    def _take_up(self, found: Way) -> None:
        """Add a way, or to one that is there already the drawings that it has not."""
        for place, way in enumerate(self._ways):
            if set(way.guards) == set(found.guards) and len(way.steps) == len(found.steps):
                both = zip(way.steps, found.steps, strict=True)
                self._ways[place] = replace(
                    way,
                    pieces=_together(way.pieces, found.pieces),
                    steps=tuple(_together(one, other) for one, other in both),
                )
                return
        self._ways.append(found)


def _drawn_ways(way: Way) -> Iterator[tuple[DrawnWay, ...]]:
    if way.handout is not None:
        yield way.pieces
        yield from way.steps


def _together(known: tuple[DrawnWay, ...], new: tuple[DrawnWay, ...]) -> tuple[DrawnWay, ...]:
    held = {frozenset(each.guards) for each in known}
    return (*known, *(each for each in new if frozenset(each.guards) not in held))


def tried(offered: Sequence[Offer], systems: Sequence[System]) -> Iterator[Choice]:
    """The choices that are tried: the recipe's own, then each range by itself and all ends together."""
    leading = systems[0]
    own = tuple(take(offer, leading, offer.own[leading]) for offer in offered)
    yield own
    for system in systems:
        yield tuple(take(offer, system, offer.least[system]) for offer in offered)
        yield tuple(take(offer, system, offer.most[system]) for offer in offered)
    for place, offer in enumerate(offered):
        for system in systems:
            for value in values(offer, system):
                yield (*own[:place], take(offer, system, value), *own[place + 1 :])


def together(telling: Sequence[Choice]) -> Iterator[Choice]:
    """Every value that told something with every one of the other choices, few enough to be tried."""
    each = [dict.fromkeys(taken) for taken in zip(*telling, strict=True)]
    if len(each) > 1:
        yield from islice(product(*each), MOST_TOGETHER)


def values(offer: Offer, system: System) -> Iterator[Fraction]:
    """Values of a range on the grid of a system and between, the coarse ones first."""
    least, most = offer.least[system], offer.most[system]
    step = GRIDS[offer.kind, system]
    while (most - least) / step > MOST_VALUES:
        step *= 2
    count = (most - least) // step
    order = sorted(range(count + 1), key=lambda n: (n % 8 != 0, n % 2 != 0, n))
    for number in order:
        value = least + number * step
        yield value
        for part in BETWEEN if offer.kind is not Kind.NUMBER and number % 4 == 0 else ():
            if value + part * step < most:
                yield value + part * step
