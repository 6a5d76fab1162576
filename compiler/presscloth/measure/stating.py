"""Stated values: pairs that must agree, and single values that are carried over.

The tolerances and the grids are common practice in the trade (no source), fixed by the language
reference.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.measure.numerals import decimal_text, measure_text
from presscloth.measure.quantity import Kind, Quantity, Stated, System
from presscloth.measure.rounding import half_up
from presscloth.measure.units import UNITS, convert
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Disagreement:
    """A stated pair whose two values are too far apart.

    `metric` and `imperial` are in mm and in, or g and oz; `apart` is in mm or g, `share` is that
    as a part of the larger. `imperial_for_metric` is the imperial value that goes with the metric
    one as stated (`10 cm` is `4 in`), in the coarsest of whole, half, quarter, eighth and sixteenth
    that agrees; `metric_for_imperial` goes the other way (`3 in` is `7.6 cm`). Each is None where the
    stated value is too small for any.
    """

    kind: Kind
    metric: Fraction
    imperial: Fraction
    stated: Stated
    about: bool
    apart: Fraction
    share: Fraction
    imperial_for_metric: str | None
    metric_for_imperial: str | None

    @property
    def apart_text(self) -> str:
        """`24.2 mm`"""
        return f"{decimal_text(self.apart, 1)} {_BASE_UNITS[self.kind]}"

    @property
    def share_text(self) -> str:
        """`32 %`, below a tenth `4.8 %`"""
        return f"{decimal_text(self.share * 100, 1 if self.share < Fraction(1, 10) else 0)} %"

    @property
    def suggestions(self) -> tuple[str, ...]:
        """The pairs that would agree: `7.5 cm (3 in)`, `5.1 cm (2 in)`, metric first."""
        pairs = (
            (self.stated.metric, self.imperial_for_metric),
            (self.metric_for_imperial, self.stated.imperial),
        )
        return tuple(f"{metric} ({imperial})" for metric, imperial in pairs if metric and imperial)


@dataclass(frozen=True, slots=True)
class Vanishes:
    """A single value so small that nothing of it is left in the other system; `exactly` keeps it.

    `grid` is the step to which it would be rounded there.
    """

    stated: str
    to: System
    grid: str


_BASE_UNITS = {Kind.LENGTH: "mm", Kind.WEIGHT: "g"}
_CENTIMETRE = Fraction(10)
_INCH_PARTS = tuple(Fraction(1, parts) for parts in (1, 2, 4, 8, 16))


def apart(metric: Fraction, imperial: Fraction, kind: Kind) -> tuple[Fraction, Fraction]:
    """How far two values are from each other, in the metric unit and as a part of the larger."""
    converted = convert(imperial, kind, System.METRIC)
    difference = abs(metric - converted)
    larger = max(abs(metric), abs(converted))
    return difference, difference / larger if larger else Fraction(0)


def _agree(metric: Fraction, imperial: Fraction, kind: Kind, *, about: bool) -> bool:
    difference, share = apart(metric, imperial, kind)
    if not metric or not imperial:
        return not difference
    if about and share <= Fraction(6, 100):
        return True
    if kind is Kind.WEIGHT:
        return share <= Fraction(5, 100)
    if metric % 5 == 0 and share <= Fraction(25, 1000):
        return True
    small = metric < 25 and imperial < 1
    return difference <= (Fraction(1) if small else Fraction(16, 10))


def agreement(metric: Fraction, imperial: Fraction, kind: Kind, *, about: bool) -> Disagreement | None:
    """Hold the two values of a pair (mm and in, or g and oz) against each other.

    They agree within the widest of these that applies: 1 mm below 2.5 cm (1 in), 1.6 mm as soon as
    one of them reaches that, 2.5 % of the larger where the metric value is a whole or half
    centimetre, 6 % for what is about; weights within 5 %. Nothing agrees with nothing alone.
    """
    metric_unit = _BASE_UNITS[kind] if kind is Kind.WEIGHT or metric < _CENTIMETRE else "cm"
    imperial_unit = "oz" if kind is Kind.WEIGHT else "in"
    stated = Stated(
        measure_text(metric / UNITS[metric_unit].factor, metric_unit),
        measure_text(imperial, imperial_unit),
    )
    return _held(metric, imperial, kind, stated, about=about, in_mm=False)


def _held(
    metric: Fraction, imperial: Fraction, kind: Kind, stated: Stated, *, about: bool, in_mm: bool
) -> Disagreement | None:
    if _agree(metric, imperial, kind, about=about):
        return None
    difference, share = apart(metric, imperial, kind)
    return Disagreement(
        kind=kind,
        metric=metric,
        imperial=imperial,
        stated=stated,
        about=about,
        apart=difference,
        share=share,
        imperial_for_metric=_imperial_for(metric, kind, about=about),
        metric_for_imperial=_metric_for(imperial, kind, about=about, in_mm=in_mm),
    )


def _imperial_for(metric: Fraction, kind: Kind, *, about: bool) -> str | None:
    """The coarsest value in inches or ounces that agrees with a metric one."""
    exact = convert(metric, kind, System.IMPERIAL)
    for part in _INCH_PARTS:
        imperial = half_up(exact, part)
        if _agree(metric, imperial, kind, about=about):
            return measure_text(imperial, "oz" if kind is Kind.WEIGHT else "in")
    return None


def _metric_for(imperial: Fraction, kind: Kind, *, about: bool, in_mm: bool) -> str | None:
    """The value to the millimetre (5 g, 1 g) that agrees with an imperial one."""
    exact = convert(imperial, kind, System.METRIC)
    for step in (Fraction(5), Fraction(1)) if kind is Kind.WEIGHT else (Fraction(1),):
        metric = half_up(exact, step)
        if _agree(metric, imperial, kind, about=about):
            if kind is Kind.LENGTH and metric >= _CENTIMETRE and not in_mm:
                return measure_text(metric / 10, "cm")
            return measure_text(metric, _BASE_UNITS[kind])
    return None


def stated_pair(
    metric_value: Fraction,
    metric_unit: str,
    imperial_value: Fraction,
    imperial_unit: str,
    *,
    about: bool = False,
    span: Span,
) -> Quantity | Disagreement:
    """Take `1.25 cm (1/2 in)`, in either order, as one quantity whose two values must agree.

    The units are one of each system, both of lengths or both of weights; whoever reads the text
    has seen to that.
    """
    q = _pair(metric_value, metric_unit, imperial_value, imperial_unit, span)
    assert q.stated is not None
    disagreement = _held(q.metric, q.imperial, q.kind, q.stated, about=about, in_mm=metric_unit == "mm")
    return disagreement or replace(q, about=about)


def stated_step(
    metric_value: Fraction, metric_unit: str, imperial_value: Fraction, imperial_unit: str, *, span: Span
) -> Quantity:
    """Take a pair as a step (`round up(x to 1 cm (1/2 in))`, `Sold by`): its two values need not agree."""
    return _pair(metric_value, metric_unit, imperial_value, imperial_unit, span)


def _pair(
    metric_value: Fraction, metric_unit: str, imperial_value: Fraction, imperial_unit: str, span: Span
) -> Quantity:
    first, second = UNITS[metric_unit], UNITS[imperial_unit]
    if (first.system, second.system) != (System.METRIC, System.IMPERIAL) or first.kind is not second.kind:
        raise ValueError(f"{metric_unit} and {imperial_unit} make no pair")
    return Quantity(
        first.kind,
        metric_value * first.factor,
        imperial_value * second.factor,
        stated=Stated(measure_text(metric_value, metric_unit), measure_text(imperial_value, imperial_unit)),
        origins=(span,),
    )


def carried_over(
    value: Fraction, unit: str, *, exactly: bool = False, about: bool = False, span: Span
) -> Quantity | Vanishes:
    """Take a single value over into the other system.

    It is converted exactly, then rounded half-up to 1 mm, or to 1/8 in (1/16 in below 1 in), a
    weight to 5 g or 1/4 oz. What is stated as `exactly` is a physical thing and is never rounded.
    """
    stated = UNITS[unit]
    there = stated.system.other
    own = value * stated.factor
    converted = convert(own, stated.kind, there)
    text = measure_text(value, unit)
    if not exactly:
        step = _carrying_step(converted, stated.kind, there)
        exact, converted = converted, half_up(converted, step)
        if exact and not converted:
            base = _BASE_UNITS[stated.kind] if there is System.METRIC else _imperial_unit(stated.kind)
            return Vanishes(text, there, measure_text(step, base))
    metric = stated.system is System.METRIC
    return Quantity(
        stated.kind,
        metric=own if metric else converted,
        imperial=converted if metric else own,
        about=about,
        physical=exactly,
        stated=Stated(text, None) if metric else Stated(None, text),
        origins=(span,),
    )


def _carrying_step(converted: Fraction, kind: Kind, system: System) -> Fraction:
    if kind is Kind.WEIGHT:
        return Fraction(5) if system is System.METRIC else Fraction(1, 4)
    if system is System.METRIC:
        return Fraction(1)
    return Fraction(1, 16) if abs(converted) < 1 else Fraction(1, 8)


def _imperial_unit(kind: Kind) -> str:
    return "oz" if kind is Kind.WEIGHT else "in"
