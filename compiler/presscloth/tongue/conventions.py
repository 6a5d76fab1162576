"""How a language writes numbers, units and months: from the CLDR, by Babel.

English is written down here, so that no English handout waits for a library to load.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from presscloth.frozen import dataclass


@dataclass(frozen=True)
class Conventions:
    """`units` gives for each unit, as `measure` prints it, its word for one and for several.

    `name` is what the language calls itself, as a name that stands alone.
    """

    name: str
    decimal: str
    thousands: str
    units: Mapping[str, tuple[str, str]]
    months: tuple[str, ...]


ENGLISH_WAYS = Conventions(
    name="English",
    decimal=".",
    thousands="",
    units={},
    months=(
        "January", "February", "March", "April", "May", "June",
        "July", "August", "September", "October", "November", "December",
    ),
)  # fmt: skip

SIGNS = ("mm", "cm", "m", "in", "ft", "yd", "g", "kg", "oz", "lb")
"""Units as `measure` prints them."""

CLDR_UNITS = {"in": "length-inch", "ft": "length-foot", "yd": "length-yard"}
"""Units that have a word in a language's workrooms. Metric symbols are the same everywhere (ISO 80000-1);
ounces and pounds keep their signs too, since a German `Pfund` is 500 g (common practice, no source)."""

_SQUARE = {"in": "area-square-inch"}


@cache
def conventions_of(language: str) -> Conventions:
    """The ways of a language by its tag; those of English where the CLDR does not know it.

    Units are taken in CLDR's long form, the words of speech and books (`7 Zoll`, not `7 in`).
    """
    from babel import Locale, UnknownLocaleError
    from babel.numbers import get_decimal_symbol, get_group_symbol

    try:
        locale = Locale.parse(language, sep="-")
    except (UnknownLocaleError, ValueError):
        return ENGLISH_WAYS
    words = {unit: _unit(name, locale) for unit, name in CLDR_UNITS.items()}
    words |= {f"{unit}²": _unit(name, locale) for unit, name in _SQUARE.items()}
    months = locale.months["stand-alone"]["wide"]
    name = locale.language_name or language
    return Conventions(
        name=name[:1].upper() + name[1:],
        decimal=get_decimal_symbol(locale),
        thousands=get_group_symbol(locale),
        units={unit: pair for unit, pair in words.items() if pair is not None},
        months=tuple(months[number] for number in range(1, 13)),
    )


def _unit(name: str, locale: object) -> tuple[str, str] | None:
    """The word for one and for several, as CLDR's long pattern has it; None where it has none."""
    from babel.core import Locale
    from babel.units import format_unit

    assert isinstance(locale, Locale)
    one, several = (format_unit(number, name, length="long", locale=locale) for number in (1, 2))
    if name in one or name in several:
        return None  # Babel falls back on the name of the unit
    return one.removeprefix("1").strip(" \N{NO-BREAK SPACE}"), several.removeprefix("2").strip(
        " \N{NO-BREAK SPACE}"
    )
