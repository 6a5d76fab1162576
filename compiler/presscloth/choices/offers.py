"""What the reader may choose in a size, and what a typed value means in both systems."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from presscloth.handout.choosing import Offer, Taken
from presscloth.measure import UNITS, Kind, Quantity, System, carried_over, convert
from presscloth.proof.size import WorkedSize
from presscloth.recipe.expression import Expression, Measured
from presscloth.recipe.naming import definitions
from presscloth.recipe.prose import plain
from presscloth.tongue import named

UNIT_OF: Mapping[tuple[Kind, System], str] = {
    (Kind.LENGTH, System.METRIC): "cm",
    (Kind.LENGTH, System.IMPERIAL): "in",
    (Kind.WEIGHT, System.METRIC): "g",
    (Kind.WEIGHT, System.IMPERIAL): "oz",
    (Kind.NUMBER, System.METRIC): "",
    (Kind.NUMBER, System.IMPERIAL): "",
}
"""The units in which a reader types what is not stated in another."""


def offers(size: WorkedSize) -> tuple[Offer, ...]:
    """What the reader may choose in a size, in the order of the recipe; an area cannot be typed."""
    return tuple(offer for offer in _offers(size) if offer.kind is not Kind.AREA)


def _offers(size: WorkedSize) -> Iterator[Offer]:
    for definition in definitions((size.edition.size,), size.edition.recipe.measures):
        if definition.choice is None:
            continue
        own = size.value(definition.expression, None)
        least, most = (size.value(end, None) for end in definition.choice)
        if isinstance(own, Quantity) and isinstance(least, Quantity) and isinstance(most, Quantity):
            yield Offer(
                name=definition.name.text,
                label=named(definition.name.text),
                note=named(" ".join(plain(definition.note).split())),
                own=own,
                least=least,
                most=most,
                about=definition.about,
                units={system: _unit(definition.expression, own.kind, system) for system in System},
            )


def _unit(expression: Expression, kind: Kind, system: System) -> str:
    """The author's unit of a system, where the value is stated in that system."""
    if isinstance(expression, Measured):
        for value in (expression.first, expression.second):
            if value is not None and UNITS[value.unit].system is system and UNITS[value.unit].kind is kind:
                return value.unit
    return UNIT_OF.get((kind, system), "")


def take(offer: Offer, system: System, value: Fraction) -> Taken:
    """What a value typed in one system (mm, in, g, oz, a number) is in both.

    The recipe's own value and the ends of the range are pairs. Anything else is carried over like a
    single value that an author states, and stays within the range there too.
    """
    for pair in (offer.own, offer.least, offer.most):
        if value == pair[system]:
            return Taken(pair.metric, pair.imperial, tuple(System))
    there = system.other
    carried = _carried(offer, system, value)
    within = min(max(carried, offer.least[there]), offer.most[there])
    metric, imperial = (value, within) if system is System.METRIC else (within, value)
    return Taken(metric, imperial, (system,) if within == carried else tuple(System))


def _carried(offer: Offer, system: System, value: Fraction) -> Fraction:
    if offer.kind is Kind.NUMBER:
        return value
    unit = offer.units[system]
    carried = carried_over(value / UNITS[unit].factor, unit, span=offer.own.origins[0])
    if isinstance(carried, Quantity):
        return carried[system.other]
    return convert(value, offer.kind, system.other)  # so small that nothing would be left of it
