"""Units of length and weight: their names, their spellings, and how the two systems convert.

The factors are pint's work: `worked_out` derives them from `DEFINITIONS`, and a test holds the
table below against it. The table stands here so that no compile waits for a library to load for
the sake of eleven numbers. Nothing that an author wrote ever reaches pint.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from presscloth.frozen import dataclass
from presscloth.measure.quantity import Kind, System


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit; `factor` is its size in mm, in, g or oz, whichever is of its system and kind."""

    name: str
    kind: Kind
    system: System
    factor: Fraction


@dataclass(frozen=True, slots=True)
class UnitTable:
    """All units by name, and for each kind how many of the metric unit make one imperial."""

    units: Mapping[str, Unit]
    ratios: Mapping[Kind, Fraction]


# NIST SP 811, Appendix B.8: the inch and the pound are defined by these numbers exactly.
DEFINITIONS = (
    "mm = [length]",
    "cm = 10 * mm",
    "m = 100 * cm",
    "in = 25.4 * mm",
    "ft = 12 * in",
    "yd = 3 * ft",
    "g = [mass]",
    "kg = 1000 * g",
    "lb = 453.59237 * g",
    "oz = lb / 16",
)

_BASES = {
    (System.METRIC, Kind.LENGTH): "mm",
    (System.METRIC, Kind.WEIGHT): "g",
    (System.IMPERIAL, Kind.LENGTH): "in",
    (System.IMPERIAL, Kind.WEIGHT): "oz",
}


def _unit(name: str, kind: Kind, system: System, factor: int) -> tuple[str, Unit]:
    return name, Unit(name, kind, system, Fraction(factor))


UNITS: Mapping[str, Unit] = MappingProxyType(
    dict(
        (
            _unit("mm", Kind.LENGTH, System.METRIC, 1),
            _unit("cm", Kind.LENGTH, System.METRIC, 10),
            _unit("m", Kind.LENGTH, System.METRIC, 1000),
            _unit("in", Kind.LENGTH, System.IMPERIAL, 1),
            _unit("ft", Kind.LENGTH, System.IMPERIAL, 12),
            _unit("yd", Kind.LENGTH, System.IMPERIAL, 36),
            _unit("g", Kind.WEIGHT, System.METRIC, 1),
            _unit("kg", Kind.WEIGHT, System.METRIC, 1000),
            _unit("oz", Kind.WEIGHT, System.IMPERIAL, 1),
            _unit("lb", Kind.WEIGHT, System.IMPERIAL, 16),
        )
    )
)

RATIOS: Mapping[Kind, Fraction] = MappingProxyType(
    {
        Kind.NUMBER: Fraction(1),
        Kind.LENGTH: Fraction(127, 5),
        Kind.AREA: Fraction(127, 5) ** 2,
        Kind.WEIGHT: Fraction(45_359_237, 1_600_000),
    }
)

# Every spelling that an author may use, each unit's own name among them.
SPELLINGS: Mapping[str, str] = MappingProxyType(
    {name: name for name in UNITS}
    | {"inch": "in", "inches": "in", "″": "in", '"': "in", "yard": "yd", "yards": "yd"}
)

# What people write instead, in small letters; a hint then names the right one.
_MISSPELT: Mapping[str, tuple[str, ...]] = {
    "mm": ("mms", "millimetre", "millimetres", "millimeter", "millimeters"),
    "cm": ("cms", "centimetre", "centimetres", "centimeter", "centimeters"),
    "m": ("metre", "metres", "meter", "meters", "mtr", "mtrs"),
    "in": ("ins", "inchs", "''", "”", "“", "′′"),
    "ft": ("fts", "foot", "feet", "'", "′", "’"),
    "yd": ("yds", "yrd", "yrds"),
    "g": ("gm", "gms", "gr", "gram", "grams", "gramme", "grammes"),
    "kg": ("kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"),
    "oz": ("ozs", "ounce", "ounces"),
    "lb": ("lbs", "pound", "pounds"),
}


def nearest_unit(text: str) -> str | None:
    """The unit that somebody who wrote this probably meant: `centimetres`, `CM`, `in.` or `metrs`."""
    word = text.strip().rstrip(".").lower()
    meant = dict(SPELLINGS) | {wrong: name for name, wrongs in _MISSPELT.items() for wrong in wrongs}
    if word in meant:
        return meant[word]
    # Two or three letters resemble too much; a long word with a slip in it does not.
    from difflib import get_close_matches

    long_words = [spelling for spelling in meant if len(spelling) > 3]
    close = get_close_matches(word, long_words, n=1, cutoff=0.8)
    return meant[close[0]] if close else None


def convert(value: Fraction, kind: Kind, to: System) -> Fraction:
    """The same amount in the other system, exactly: mm and in, mm² and in², g and oz."""
    ratio = RATIOS[kind]
    return value * ratio if to is System.METRIC else value / ratio


def worked_out() -> UnitTable:
    """Derive the table of units from `DEFINITIONS` with pint: factors from its conversions, kinds
    from its dimensions. Loads pint, which takes longer than most recipes take to check."""
    from pint import UnitRegistry

    registry: UnitRegistry[Fraction] = UnitRegistry(None, non_int_type=Fraction)
    registry.load_definitions(DEFINITIONS)
    kinds = {"[length]": Kind.LENGTH, "[mass]": Kind.WEIGHT}

    def ratio(one: str, other: str) -> Fraction:
        return Fraction(registry.Quantity(Fraction(1), one).to(other).magnitude)

    def unit(name: str, system: System) -> Unit:
        (dimension,) = registry.get_dimensionality(name)
        kind = kinds[dimension]
        return Unit(name, kind, system, ratio(name, _BASES[system, kind]))

    systems = {name: unit.system for name, unit in UNITS.items()}
    return UnitTable(
        units={name: unit(name, system) for name, system in systems.items()},
        ratios={
            Kind.NUMBER: Fraction(1),
            Kind.LENGTH: ratio("in", "mm"),
            Kind.AREA: ratio("in**2", "mm**2"),
            Kind.WEIGHT: ratio("oz", "g"),
        },
    )
