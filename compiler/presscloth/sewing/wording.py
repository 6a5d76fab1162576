"""How lengths and numbers of things are said in what this room reports."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from presscloth.measure import Quantity, System, decimal_text, fraction_text, printed
from presscloth.measure.followed import Followed, worded

_RULER = frozenset({1, 2, 4, 8, 16, 32, 64})


def said(q: Quantity, systems: Sequence[System]) -> str:
    """`21 cm (8 1/4 in)`: a length in the systems that matter, the author's first."""
    first, *others = (printed(q.computed(), system).text for system in systems)
    return f"{first} ({others[0]})" if others else first


def difference(one: Quantity, other: Quantity, systems: Sequence[System]) -> str:
    """By how much two lengths differ, finely enough to be seen: `5 mm (3/16 in)`, `0.3 mm`."""
    first, *others = (_fine(abs(one[system] - other[system]), system) for system in systems)
    return f"{first} ({others[0]})" if others else first


def _fine(value: Fraction, system: System) -> str:
    if value.__class__ is Followed:
        return worded(fine_text, value, system.value)
    return fine_text(value, system.value)


def fine_text(value: Fraction, system: str) -> str:
    """`0.3 mm`, `3/16 in`: a difference in a system, as finely as it must be told."""
    if System(system) is System.METRIC:
        return f"{decimal_text(value, 2)} mm" if value < 10 else f"{decimal_text(value / 10, 2)} cm"
    if value.denominator in _RULER:
        return f"{fraction_text(value)} in"
    return f"{decimal_text(value, 3)} in"


def several(count: int, name: str) -> str:
    """``2 `strip` ``: a number of things by their name."""
    return f"{count} `{name}`"


def listed(words: Iterable[str], last: str = "and") -> str:
    """`a, b and c`."""
    each = tuple(words)
    if len(each) < 2:
        return "".join(each)
    return f"{', '.join(each[:-1])} {last} {each[-1]}"
