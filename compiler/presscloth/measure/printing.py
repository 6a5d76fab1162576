"""Printing: what of a quantity stands on the page, in each system.

A stated value prints as it is stated. Everything computed is rounded to what a tape measure, a
ruler or a shop's scale can show (common practice, no source, for all grids below), and the value
that was printed comes back with its text, so that the paper can be proved as well.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import partial
from typing import assert_never

from presscloth.frozen import dataclass
from presscloth.measure.followed import Followed, by, worded
from presscloth.measure.numerals import decimal_text, decimals, fraction_text, number_text
from presscloth.measure.quantity import Kind, Quantity, System
from presscloth.measure.rounding import half_up, settled, slack, up
from presscloth.measure.units import UNITS


@dataclass(frozen=True, slots=True)
class Printed:
    """A printed value in mm, in, mm², in², g or oz, and its text with an ordinary space."""

    value: Fraction
    text: str


# Rounds a value to a step.
_Rounding = Callable[[Fraction, Fraction], Fraction]

_TENTH = Fraction(1, 10)
_QUARTER = Fraction(1, 4)
_EIGHTH = Fraction(1, 8)
_SIXTEENTH = Fraction(1, 16)

# Where a printed value may stand midway between two: a rooted value near such a place stands on it.
_MIDWAY = {System.METRIC: Fraction(1, 20), System.IMPERIAL: Fraction(1, 32)}


def printed(q: Quantity, system: System, *, cut: bool = False, bought: bool = False) -> Printed:
    """Write a quantity in one system.

    `cut` marks a cut size: one that holds a physical value is rounded up, so that the cloth
    suffices. `bought` marks what is asked for in a shop: rounded up, in metres from 2 m, in yards
    and their eighths. (A zip is asked for by its length in inches and is not printed as bought.)
    """
    stated = q.stated[system] if q.stated else None
    if stated is not None:
        return Printed(q[system], stated)
    if q[system].__class__ is Followed:
        how = f"{q.kind.value} {system.value} {q.physical} {q.rooted} {cut} {bought}"
        return Printed(by(printed_value, q[system], how), worded(printed_text, q[system], how))
    match q.kind:
        case Kind.NUMBER:
            return _number(q[system])
        case Kind.LENGTH:
            return _length(q, system, cut=cut, bought=bought)
        case Kind.AREA:
            return _area(q[system], system, bought=bought)
        case Kind.WEIGHT:
            return _weight(q[system], system, bought=bought)
        case _:
            assert_never(q.kind)


def printed_value(value: Fraction, how: str) -> Fraction:
    """The printed value of what is followed; `how` says in one word each what `printed` is told."""
    return _as_said(value, how).value


def printed_text(value: Fraction, how: str) -> str:
    """The text of what is followed."""
    return _as_said(value, how).text


def _as_said(value: Fraction, how: str) -> Printed:
    kind, system, *flags = how.split()
    physical, rooted, cut, bought = (flag == "True" for flag in flags)
    quantity = Quantity(Kind(kind), value, value, physical=physical, rooted=rooted)
    return printed(quantity, System(system), cut=cut, bought=bought)


def _length(q: Quantity, system: System, *, cut: bool, bought: bool) -> Printed:
    metric = system is System.METRIC
    rounded_up = partial(up, slack=slack(q[system], Kind.LENGTH, system, rooted=q.rooted))
    if bought:
        return _bought_metric(q.metric, rounded_up) if metric else _bought_imperial(q.imperial, rounded_up)
    if q.physical and cut:
        value = rounded_up(q[system], Fraction(1) if metric else _SIXTEENTH)
    elif q.physical:
        value = half_up(_true(q, system), _TENTH if metric else _SIXTEENTH)
    elif metric:
        value = _to_the_millimetre(_true(q, system))
    else:
        value = _to_the_eighth(_true(q, system))
    return _in_millimetres(value) if metric else Printed(value, f"{fraction_text(value)} in")


def _true(q: Quantity, system: System) -> Fraction:
    """The value without the noise of a root, where that would tip it to the wrong side."""
    if not q.rooted:
        return q[system]
    return settled(q[system], _MIDWAY[system], slack(q[system], q.kind, system, rooted=True))


def _to_the_millimetre(value: Fraction) -> Fraction:
    """Half-up to 1 mm, but a value on the half millimetre keeps it."""
    return value if value.denominator <= 2 else half_up(value, Fraction(1))


def _to_the_eighth(value: Fraction) -> Fraction:
    """Half-up to 1/8 in, below 1 in to 1/16; a value on the sixteenth keeps it."""
    if 16 % value.denominator == 0:
        return value
    return half_up(value, _SIXTEENTH if abs(value) < 1 else _EIGHTH)


def _in_millimetres(value: Fraction) -> Printed:
    """Millimetres below 1 cm, else centimetres."""
    if abs(value) < 10:
        return Printed(value, f"{decimal_text(value, 1)} mm")
    return Printed(value, f"{decimal_text(value / 10, 2)} cm")


def _bought_metric(value: Fraction, rounded_up: _Rounding) -> Printed:
    value = rounded_up(value, Fraction(10))
    if value < 2000:
        return Printed(value, f"{decimal_text(value / 10, 0)} cm")
    return Printed(value, f"{decimal_text(value / 1000, 2)} m")


def _bought_imperial(value: Fraction, rounded_up: _Rounding) -> Printed:
    yard = UNITS["yd"].factor
    value = rounded_up(value, yard / 8)
    return Printed(value, f"{fraction_text(value / yard)} yd")


def _area(value: Fraction, system: System, *, bought: bool) -> Printed:
    """To 0.1 cm² and 1/8 in²."""
    rounding = up if bought else half_up
    if system is System.METRIC:
        value = rounding(value, Fraction(10))
        return Printed(value, f"{decimal_text(value / 100, 1)} cm²")
    value = rounding(value, _EIGHTH)
    return Printed(value, f"{fraction_text(value)} in²")


def _weight(value: Fraction, system: System, *, bought: bool) -> Printed:
    """Grams, from 1000 g kilograms; quarter ounces, from 16 oz whole ones, as parts of a pound."""
    rounding = up if bought else half_up
    if system is System.METRIC:
        value = rounding(value, Fraction(5 if bought else 1))
        if abs(value) < 1000:
            return Printed(value, f"{decimal_text(value, 0)} g")
        return Printed(value, f"{decimal_text(value / 1000, 3)} kg")
    pound = UNITS["lb"].factor
    ounces = rounding(value, _QUARTER)
    if abs(ounces) < pound:
        return Printed(ounces, f"{fraction_text(ounces)} oz")
    value = rounding(value, Fraction(1))
    return Printed(value, f"{fraction_text(value / pound)} lb")


def _number(value: Fraction) -> Printed:
    """A number as it is; one that neither the fractions of a ruler nor four decimals can write, to two."""
    digits = decimals(value)
    if value.denominator not in {1, 2, 3, 4, 8, 16} and (digits is None or digits > 4):
        value = half_up(value, Fraction(1, 100))
    return Printed(value, number_text(value))
