"""Measures as they are spoken in German (common practice, no source)."""

from __future__ import annotations

from collections.abc import Mapping

from presscloth.handout.number_words import Number

UNITS: Mapping[str, tuple[str, str, str]] = {
    "mm": ("ein", "Millimeter", "Millimeter"),
    "cm": ("ein", "Zentimeter", "Zentimeter"),
    "m": ("ein", "Meter", "Meter"),
    "Zoll": ("ein", "Zoll", "Zoll"),
    "in": ("ein", "Zoll", "Zoll"),
    "Fuß": ("ein", "Fuß", "Fuß"),
    "Yard": ("ein", "Yard", "Yards"),
    "Yards": ("ein", "Yard", "Yards"),
    "yd": ("ein", "Yard", "Yards"),
    "cm²": ("ein", "Quadratzentimeter", "Quadratzentimeter"),
    "Quadratzoll": ("ein", "Quadratzoll", "Quadratzoll"),
    "g": ("ein", "Gramm", "Gramm"),
    "kg": ("ein", "Kilogramm", "Kilogramm"),
    "oz": ("eine", "Unze", "Unzen"),
    "lb": ("ein", "englisches Pfund", "englische Pfund"),
    "%": ("ein", "Prozent", "Prozent"),
    "°": ("ein", "Grad", "Grad"),
}
"""By the unit as it is printed: the word for one, and the unit in the singular and the plural."""

_SMALL = (
    "null eins zwei drei vier fünf sechs sieben acht neun zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn "
    "siebzehn achtzehn neunzehn"
).split()
_TENS = "_ _ zwanzig dreißig vierzig fünfzig sechzig siebzig achtzig neunzig".split()
_HALF = {"Unze": "eine halbe", "Yard": "ein halbes", "Gramm": "ein halbes", "Kilogramm": "ein halbes"}
_HALF |= {"Grad": "ein halber", "Prozent": "ein halbes", "englisches Pfund": "ein halbes"}
_PARTS = {
    3: "drittel",
    4: "viertel",
    8: "achtel",
    16: "sechzehntel",
    32: "zweiunddreißigstel",
    64: "vierundsechzigstel",
}


def measure(number: Number, unit: str) -> str:
    """A number with its unit, or alone where the unit is empty."""
    said = _measure(number, unit)
    return f"minus {said}" if number.minus else said


def _measure(number: Number, unit: str) -> str:
    one, singular, plural = UNITS.get(unit, ("eins", "", ""))
    if number.one:
        return f"{one} {singular}".rstrip()
    if number.fraction and not number.whole:
        return f"{_part(number.fraction, singular)} {singular}".rstrip()
    if number.fraction == (1, 2):
        said = f"{_within(number.whole)}einhalb"
    elif number.fraction:
        said = f"{_within(number.whole)} und {_part(number.fraction, '')}"
    elif number.decimals:
        said = f"{whole(number.whole)} Komma {' '.join(_SMALL[int(digit)] for digit in number.decimals)}"
    else:
        said = whole(number.whole)
    return f"{said} {plural}".rstrip()


def _part(fraction: tuple[int, int], unit: str) -> str:
    """`ein halber`, `ein viertel`, `drei achtel`; without a unit `ein halb`."""
    top, bottom = fraction
    if fraction == (1, 2):
        return _HALF.get(unit, "ein halber") if unit else "ein halb"
    if bottom not in _PARTS:
        return f"{whole(top)} durch {whole(bottom)}"
    return f"{'ein' if top == 1 else whole(top)} {_PARTS[bottom]}"


def whole(n: int) -> str:
    """A whole number up to 999.999: `hundertfünf` is spoken `einhundertfünf`."""
    if n < 20:
        return _SMALL[n]
    if n < 100:
        tens, ones = divmod(n, 10)
        return f"{_within(ones)}und{_TENS[tens]}" if ones else _TENS[tens]
    if n < 1000:
        hundreds, rest = divmod(n, 100)
        return f"{_within(hundreds)}hundert{whole(rest) if rest else ''}"
    thousands, rest = divmod(n, 1000)
    return f"{_within(thousands)}tausend{whole(rest) if rest else ''}"


def _within(n: int) -> str:
    """A number as the front of a longer word: `ein` for one."""
    said = whole(n)
    return said[:-1] if said.endswith("eins") else said
