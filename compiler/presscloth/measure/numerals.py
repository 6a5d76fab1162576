"""Writing numbers as the trade does: `1 1/2`, `21.25`."""

from __future__ import annotations

from fractions import Fraction

from presscloth.measure.followed import Followed, worded
from presscloth.measure.quantity import System
from presscloth.measure.units import UNITS

# The parts of an inch, a yard or a pound that a ruler or a shop knows.
_TRADE_PARTS = frozenset({1, 2, 3, 4, 8, 16, 32, 64})


def fraction_text(value: Fraction) -> str:
    """`1 1/2`, `5/8`, `3`, `-1/4`: whole ones and a fraction in lowest terms."""
    if value.__class__ is Followed:
        return worded(fraction_text, value)
    sign = "-" if value < 0 else ""
    whole, over = divmod(abs(value.numerator), value.denominator)
    if not over:
        return f"{sign}{whole}"
    part = f"{over}/{value.denominator}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def decimal_text(value: Fraction, digits: int) -> str:
    """`21.25`: half-up to so many digits after the point, without noughts at the end."""
    if value.__class__ is Followed:
        return worded(decimal_text, value, digits)
    tens = 10**digits
    # Half-up, in whole numbers: as many tenths, hundredths and so on as lie nearest.
    scaled = (2 * abs(value.numerator) * tens + value.denominator) // (2 * value.denominator)
    sign = "-" if value < 0 and scaled else ""
    whole, rest = divmod(scaled, tens)
    tail = f"{rest:0{digits}d}".rstrip("0") if rest else ""
    return f"{sign}{whole}.{tail}" if tail else f"{sign}{whole}"


def decimals(value: Fraction) -> int | None:
    """How many digits after the point write the value exactly; None where no number does."""
    rest = value.denominator
    twos = fives = 0
    while rest % 2 == 0:
        rest, twos = rest // 2, twos + 1
    while rest % 5 == 0:
        rest, fives = rest // 5, fives + 1
    return max(twos, fives) if rest == 1 else None


def measure_text(value: Fraction, unit: str) -> str:
    """A value in a unit, tidied and exact: `7.5 cm`, `1 1/2 in`, `1/3 yd`.

    Metric is written in decimals, imperial in the fractions of a ruler; whatever cannot be written
    so is written the other way.
    """
    if value.__class__ is Followed:
        return worded(measure_text, value, unit)
    digits = decimals(value)
    ruled = UNITS[unit].system is System.IMPERIAL and value.denominator in _TRADE_PARTS
    if ruled or digits is None:
        return f"{fraction_text(value)} {unit}"
    return f"{decimal_text(value, digits)} {unit}"


def number_text(value: Fraction) -> str:
    """A plain number, as exactly as it can be written: `12`, `2 1/2`, `0.85`."""
    if value.__class__ is Followed:
        return worded(number_text, value)
    digits = decimals(value)
    if value.denominator in _TRADE_PARTS or digits is None:
        return fraction_text(value)
    return decimal_text(value, digits)
