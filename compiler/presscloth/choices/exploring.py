"""Going through the range of every choice until each value that a reader would type has its way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import islice, pairwise

from presscloth.choices.offers import offers
from presscloth.choices.reckoned import Reach, Reckoned
from presscloth.choices.tracing import Tracer, reaches, variables
from presscloth.choices.trying import Axis, axes, together, tried
from presscloth.handout.build import tongue_in
from presscloth.handout.choosing import Choice, DrawnWay, Followable, Offer, Way
from presscloth.handout.tree import Handout, Publisher
from presscloth.measure.following import Chosen, Form, Guard
from presscloth.measure.rounding import half_up
from presscloth.proof.size import WorkedSize
from presscloth.tongue import speaking
from presscloth.translation.tree import Translation

MOST_TRACES = 60
"""So often is a size worked out at most; a page says so where it cannot follow."""

MOST_AT_EDGES = 400
"""So many choices are tried at most where one way gives over to another."""

HALVINGS = 6
"""So often is the gap between two choices halved to find where that is: to a 64th of a step."""

Held = tuple[int | None, ...]
"""The number of the way that holds for a choice, and for each drawing of it the way in which it is drawn."""


def follow(
    size: WorkedSize, handout: Handout, publisher: Publisher, translation: Translation | None = None
) -> Followable | None:
    """Transform a sound size into what its page needs to follow the reader; None where nothing is chosen.

    `handout` is the one of the recipe's own values, in the language of the `translation` if there is one.
    """
    with speaking(tongue_in(size.edition.recipe, translation)):
        offered = offers(size)
    if not offered:
        return None
    return _Explorer(offered, Tracer(size, offered, handout, publisher, translation)).explored()


class _Explorer:
    def __init__(self, offered: tuple[Offer, ...], tracer: Tracer) -> None:
        self._systems = tracer.size.edition.recipe.front.systems
        self._offers = offered
        self._axes = axes(offered, self._systems)
        self._tracer = tracer
        self._following = tracer.now
        self._ways: list[Way] = []
        self._traces = 0
        self._held: dict[Choice, Held] = {}

    def explored(self) -> Followable:
        telling = [choice for choice in tried(self._offers, self._systems) if self._tells(choice)]
        telling += [choice for choice in self._at_turning_points() if self._tells(choice)]
        for choice in together(telling):
            self._tells(choice)
        for choice in islice(self._at_edges(), MOST_AT_EDGES):
            self._tells(choice)
        name = self._tracer.size.edition.size.name
        return Followable(name, self._offers, self._following, tuple(self._ways))

    def _at_turning_points(self) -> Iterator[Choice]:
        """Choices at and beside the values at which a guard of one measure alone turns."""
        axes = {(axis.place, axis.system.value): axis for axis in self._axes}
        turning = dict.fromkeys(point for way in self._ways for point in self._turning_points(way.guards))
        for where, value in turning:
            if (axis := axes.get(where)) is not None:
                step = axis.offer.step(axis.system)
                nearest = half_up(value, step)
                near = (value, nearest, nearest - step, nearest + step)
                yield from map(axis.at, filter(axis.reaches, near))

    def _turning_points(self, guards: Sequence[Guard]) -> Iterator[tuple[tuple[int, str], Fraction]]:
        for guard in guards:
            match guard.difference:
                case Form(constant=constant, terms=((node, factor),)):
                    chosen = self._following.nodes[node]
                    if isinstance(chosen, Chosen):
                        yield (chosen.choice, chosen.system), -constant / factor
                case _:
                    pass

    def _at_edges(self) -> Iterator[Choice]:
        """Choices ever closer to where one way gives over to another: between them there may be a third."""
        for axis in self._axes:
            for low, high in pairwise((value, axis.at(value)) for value in sorted(axis.values())):
                yield from self._halved(axis, low, high, HALVINGS)

    def _halved(
        self, axis: Axis, low: tuple[Fraction, Choice], high: tuple[Fraction, Choice], times: int
    ) -> Iterator[Choice]:
        """Choices between two that are held otherwise, each end a value with its choice."""
        if times == 0 or self._held.get(low[1]) == self._held.get(high[1]):
            return
        value = (low[0] + high[0]) / 2
        middle = value, axis.at(value)
        yield middle[1]
        yield from self._halved(axis, low, middle, times - 1)
        yield from self._halved(axis, middle, high, times - 1)

    def _tells(self, choice: Choice) -> bool:
        """Whether a choice is reckoned in a way that was not known yet; the way is taken up."""
        if choice in self._held or self._traces >= MOST_TRACES:
            return False
        held = self._holding(choice)
        if told := None in held:
            self._take_up(self._trace(choice))
            held = self._holding(choice)
        self._held[choice] = held
        return told

    def _holding(self, choice: Choice) -> Held:
        now = Reckoned(self._following, variables(choice))
        way = _first(now, [way.guards for way in self._ways])
        if way is None:
            return (None,)
        drawn = (_first(now, [each.guards for each in ways]) for ways in _drawn_ways(self._ways[way]))
        return (way, *drawn)

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


def _first(now: Reckoned, ways: Sequence[Sequence[Guard]]) -> int | None:
    """The number of the first way that holds."""
    return next((place for place, guards in enumerate(ways) if now.holds(guards)), None)


def _drawn_ways(way: Way) -> Iterator[tuple[DrawnWay, ...]]:
    if way.handout is not None:
        yield way.pieces
        yield from way.steps


def _together(known: tuple[DrawnWay, ...], new: tuple[DrawnWay, ...]) -> tuple[DrawnWay, ...]:
    held = {frozenset(each.guards) for each in known}
    return (*known, *(each for each in new if frozenset(each.guards) not in held))
