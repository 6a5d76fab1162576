"""Amounts: numbers with their units, ranges of them, and lengths one by the other."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.proof.typed.numbers import ARTICLES, HYPHENS, Number, number_at
from presscloth.proof.typed.tokens import Text
from presscloth.proof.typed.tree import Value
from presscloth.proof.typed.units import (
    AFTER_A_LENGTH,
    COMPOUNDS,
    METRIC,
    WEIGHTS,
    Unit,
    long_unit_at,
    unit_at,
)

_TIMES = frozenset({"x", "×", "✕", "*", "by"})
_MOST_SIDES = 4
_COMPOUNDED = frozenset(large for large, _ in COMPOUNDS)
# `ten stitches an inch` is a rate.
_PER = frozenset({"stitches", "threads", "rows", "once", "twice"})
_LONG = frozenset({"long", "wide", "high", "deep", "apart", "away", "from"})


@dataclass(frozen=True, slots=True)
class Amount:
    """One or several values in a row, and the index after them; `sure` as in `Unit`."""

    values: tuple[Value, ...]
    after: int
    sure: bool

    @property
    def metric(self) -> bool:
        return self.values[0].unit in METRIC

    @property
    def weight(self) -> bool:
        return self.values[0].unit in WEIGHTS

    def claims_the_same_as(self, other: Amount) -> bool:
        """Whether one can be the other in the other system."""
        alike = self.weight == other.weight and len(self.values) == len(other.values)
        return alike and self.metric != other.metric


def amount_at(text: Text, index: int) -> Amount | None:
    """The longest amount that begins at a token: `20 x 30 cm`, `2-3 cm`, `1' 6"`, `half an inch`."""
    number = number_at(text, index)
    if number is None:
        return _article(text, index)
    unit = _unit_after(text, number)
    between = text.word_before(index) == "between"
    longer = _sides(text, number, unit) or _range(text, number, unit, between=between)
    if longer is not None:
        return longer
    return _single(text, number, unit) if unit else _article(text, index)


def _single(text: Text, number: Number, unit: Unit) -> Amount:
    amount = _amount(unit, number.value, number.value)
    return _compound(text, amount) or _and_a_part(text, amount, number)


def _measured(text: Text, index: int) -> tuple[Number, Unit] | None:
    number = number_at(text, index)
    unit = _unit_after(text, number) if number else None
    return (number, unit) if number and unit else None


def _unit_after(text: Text, number: Number) -> Unit | None:
    """The unit, also after `half an`, `3/8 of an`."""
    at = number.after
    if number.fraction and text.word(at) == "of" and text.word(at + 1) in ARTICLES:
        return unit_at(text, at + 2, number)
    if number.fraction and text.word(at) in ARTICLES:
        return unit_at(text, at + 1, number)
    return unit_at(text, at, number) if text[at].near else None


def _amount(unit: Unit, low: Fraction, high: Fraction) -> Amount:
    return Amount((Value(unit.name, min(low, high), max(low, high)),), unit.after, unit.sure)


def _compound(text: Text, first: Amount) -> Amount | None:
    """`1' 6"`, `2 lb 4 oz`, `1 m 20 cm`: told in the smaller unit."""
    (large,) = first.values
    if large.unit not in _COMPOUNDED or not text[first.after].near:
        return None
    measured = _measured(text, first.after)
    if measured is None:
        return None
    number, unit = measured
    factor = COMPOUNDS.get((large.unit, unit.name))
    if factor is None or number.value >= factor:
        return None
    together = large.low * factor + number.value
    return _amount(replace(unit, sure=True), together, together)


def _and_a_part(text: Text, amount: Amount, number: Number) -> Amount:
    """`an inch and a half`, `two inches and a quarter`; `an inch and a quarter turn` is an inch."""
    if number.fraction or text.word(amount.after) != "and":
        return amount
    part = number_at(text, amount.after + 1)
    if part is None or not (part.words and part.fraction and part.value < 1):
        return amount
    followed = text.word(part.after)
    if text.word(amount.after + 1) == "half" or (followed and followed not in AFTER_A_LENGTH):
        return amount
    (value,) = amount.values
    sum_of_both = value.low + part.value
    return Amount((Value(value.unit, sum_of_both, sum_of_both),), part.after, amount.sure)


def _one(text: Text, index: int) -> tuple[Number, Unit] | None:
    unit = long_unit_at(text, index + 1) if text[index].lower in ARTICLES else None
    return (Number(Fraction(1), index + 1), unit) if unit else None


def _article(text: Text, index: int) -> Amount | None:
    """`an inch`, `a yard and a half`, `an inch or two`; `ten stitches an inch` is none, `an inch long` is."""
    measured = _one(text, index)
    if measured is None:
        return None
    one, unit = measured
    if text.word_before(index) in _PER and text.word(unit.after) not in _LONG:
        return None
    amount = _amount(unit, one.value, one.value)
    if text.word(unit.after) == "or" and text.word(unit.after + 1) == "two":
        return replace(_amount(unit, Fraction(1), Fraction(2)), after=unit.after + 2)
    return _compound(text, amount) or _and_a_part(text, amount, one)


def _range(text: Text, low: Number, own: Unit | None, *, between: bool) -> Amount | None:
    """`2-3 cm`, `1/4 to 1/2 inch`, `two or three inches`, `2 cm to 3 cm`."""
    at = _between(text, own.after if own else low.after, between=between)
    measured = _measured(text, at) or _one(text, at) if at is not None else None
    if measured is None or at is None:
        return None
    high, unit = measured
    if own is not None and (own.name != unit.name or text.word(at - 1) == "or"):
        return None
    return _amount(unit, low.value, high.value)


def _between(text: Text, index: int, *, between: bool) -> int | None:
    """The index after what stands between the two ends of a range."""
    if text.sign(index) in HYPHENS or text.word(index) in {"to", "or"}:
        return index + 1
    return index + 1 if between and text.word(index) == "and" else None


def _sides(text: Text, first: Number, unit: Unit | None) -> Amount | None:
    """`20 x 30 cm`, `8" by 12"`, `20 × 15 × 8 cm`: a number without a unit has that of the next."""
    sides = [(first, unit)]
    while len(sides) < _MOST_SIDES:
        number, own = sides[-1]
        following = _after_times(text, own.after if own else number.after)
        if following is None:
            break
        sides.append((following, _unit_after(text, following)))
    last = sides[-1][1]
    if len(sides) < 2 or last is None:
        return None
    unit, values = last, []
    for number, own in reversed(sides):
        unit = own or unit
        values.append(Value(unit.name, number.value, number.value))
    return Amount(tuple(reversed(values)), last.after, sure=True)


def _after_times(text: Text, index: int) -> Number | None:
    """The number after `x`, `×` or `by`."""
    times = text.word(index) in _TIMES or text.sign(index) in _TIMES
    return number_at(text, index + 1) if times else None
