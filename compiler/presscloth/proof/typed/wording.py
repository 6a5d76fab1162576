"""How an author would write a typed measure in braces."""

from __future__ import annotations

from fractions import Fraction

from presscloth.proof.typed.tree import Nearness, Typed, Value
from presscloth.proof.typed.units import METRIC

_RULED = frozenset({1, 2, 3, 4, 8, 16, 32, 64})
_MOST_DIGITS = 6


def suggestion(typed: Typed) -> str:
    """`{1.25 cm (1/2 in)}`, `{2 cm} to {3 cm}`, `{20 cm (8 in)} by {30 cm (12 in)}`, `{4 cm, about}`."""
    how = ", about" if typed.nearness is Nearness.ABOUT else ""
    return " by ".join(_braced(values, how) for values in typed.measures)


def _braced(values: tuple[Value, ...], how: str) -> str:
    low = _pair(tuple(_text(value.low, value.unit) for value in values))
    high = _pair(tuple(_text(value.high, value.unit) for value in values))
    return f"{{{low}{how}}}" if low == high else f"{{{low}{how}}} to {{{high}{how}}}"


def _pair(texts: tuple[str, ...]) -> str:
    first, *second = texts
    return f"{first} ({second[0]})" if second else first


def _text(value: Fraction, unit: str) -> str:
    """Metric in decimals, imperial in the fractions of a ruler, each the other way where it must be."""
    ruled = unit not in METRIC and value.denominator in _RULED
    digits = next((digits for digits in range(_MOST_DIGITS + 1) if 10**digits % value.denominator == 0), None)
    number = _fraction(value) if ruled or digits is None else _decimal(value, digits)
    return f"{number} {unit}"


def _decimal(value: Fraction, digits: int) -> str:
    """`1.25`, to so many digits after the point, which write it exactly."""
    whole, rest = divmod(int(value * 10**digits), 10**digits)
    return f"{whole}.{rest:0{digits}d}" if digits else str(whole)


def _fraction(value: Fraction) -> str:
    """`1 1/2`, `5/8`, `3`."""
    whole, over = divmod(value.numerator, value.denominator)
    if not over:
        return str(whole)
    part = f"{over}/{value.denominator}"
    return f"{whole} {part}" if whole else part
