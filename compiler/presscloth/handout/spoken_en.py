"""Measures as they are spoken in English (common practice, no source)."""

from __future__ import annotations

from collections.abc import Mapping

from presscloth.handout.number_words import Number

UNITS: Mapping[str, tuple[str, str]] = {
    "mm": ("millimetre", "millimetres"),
    "cm": ("centimetre", "centimetres"),
    "m": ("metre", "metres"),
    "in": ("inch", "inches"),
    "ft": ("foot", "feet"),
    "yd": ("yard", "yards"),
    "cm²": ("square centimetre", "square centimetres"),
    "in²": ("square inch", "square inches"),
    "g": ("gram", "grams"),
    "kg": ("kilogram", "kilograms"),
    "oz": ("ounce", "ounces"),
    "lb": ("pound", "pounds"),
    "%": ("per cent", "per cent"),
    "°": ("degree", "degrees"),
    "″": ("inch", "inches"),
}

_SMALL = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen "
    "sixteen seventeen eighteen nineteen"
).split()
_TENS = "_ _ twenty thirty forty fifty sixty seventy eighty ninety".split()
_PARTS = {
    2: ("half", "halves"),
    3: ("third", "thirds"),
    4: ("quarter", "quarters"),
    8: ("eighth", "eighths"),
    16: ("sixteenth", "sixteenths"),
    32: ("thirty-second", "thirty-seconds"),
    64: ("sixty-fourth", "sixty-fourths"),
}


def measure(number: Number, unit: str) -> str:
    """A number with its unit, or alone where the unit is empty."""
    said = _measure(number, unit)
    return f"minus {said}" if number.minus else said


def _measure(number: Number, unit: str) -> str:
    one, several = UNITS.get(unit, ("", ""))
    if number.fraction and not number.whole:
        return _part_of(number.fraction, one)
    said = whole(number.whole)
    if number.fraction:
        said += f" and {_part(number.fraction)}"
    elif number.decimals:
        said += f" point {' '.join(_SMALL[int(digit)] for digit in number.decimals)}"
    return f"{said} {one if number.one else several}".rstrip()


def _part_of(fraction: tuple[int, int], unit: str) -> str:
    """`half an inch`, `three eighths of an inch`; `a half`, `three eighths` of nothing in particular."""
    if not unit:
        return _part(fraction)
    if fraction == (1, 2):
        return f"half {_a(unit)}"
    return f"{_part(fraction)} of {_a(unit)}"


def _part(fraction: tuple[int, int]) -> str:
    """`a quarter`, `an eighth`, `three eighths`."""
    top, bottom = fraction
    if bottom not in _PARTS:
        return f"{whole(top)} over {whole(bottom)}"
    one, several = _PARTS[bottom]
    return _a(one) if top == 1 else f"{whole(top)} {several}"


def _a(word: str) -> str:
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"


def whole(n: int) -> str:
    """A whole number up to 999,999: `one hundred and five`."""
    if n < 20:
        return _SMALL[n]
    if n < 100:
        tens, ones = divmod(n, 10)
        return f"{_TENS[tens]}-{_SMALL[ones]}" if ones else _TENS[tens]
    if n < 1000:
        hundreds, rest = divmod(n, 100)
        said = f"{_SMALL[hundreds]} hundred"
        return f"{said} and {whole(rest)}" if rest else said
    thousands, rest = divmod(n, 1000)
    said = f"{whole(thousands)} thousand"
    if not rest:
        return said
    return f"{said} and {whole(rest)}" if rest < 100 else f"{said} {whole(rest)}"
