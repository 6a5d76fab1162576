"""How long a recipe takes, from an author's words to a duration that machines read."""

from __future__ import annotations

import re
from fractions import Fraction

from presscloth.tongue import ENGLISH, say_as, speaking, spoken

_NUMBER = r"\d{1,3}"


def duration(time: str) -> str:
    """`5 hours` as `PT5H` (ISO 8601, 5.5.2.2); empty where the words say no hours or minutes alone.

    They are read in the language of the moment, else as English.
    """
    found = _read(time.strip())
    if found is None:
        with speaking(ENGLISH):
            found = _read(time.strip())
    if found is None:
        return ""
    hours, left = divmod(found, 60)
    return "PT" + (f"{hours}H" if hours else "") + (f"{left}M" if left or not hours else "")


def _read(time: str) -> int | None:
    """How many minutes the words say in the language of the moment."""
    found = re.fullmatch(_pattern(), time, re.IGNORECASE)
    if found is None or not (found["hours"] or found["minutes"]):
        return None
    return int(_hours(found["hours"] or "0") * 60) + int(found["minutes"] or 0)


def _pattern() -> str:
    hours, minutes, about, both = (
        "|".join(re.escape(word) for word in words.split(" / "))
        for words in (
            say_as("time taken", "hours / hour / h"),
            say_as("time taken", "minutes / minute / min"),
            say_as("time taken", "about"),
            say_as("time taken", "and"),
        )
    )
    decimal = re.escape(spoken().ways.decimal)
    number = rf"{_NUMBER}(?:{decimal}\d| 1/2)?|\d{{0,3}} ?½"
    return (
        rf"(?:(?:{about}) )?(?:(?P<hours>{number}) ?(?:{hours}))?"
        rf"(?:,? (?:(?:{both}) )?)?(?:(?P<minutes>{_NUMBER}) ?(?:{minutes}))?"
    )


def _hours(written: str) -> Fraction:
    whole = written.replace("½", " 1/2").replace(spoken().ways.decimal, ".").strip()
    if whole.endswith("1/2"):
        return Fraction(whole.removesuffix("1/2").strip() or "0") + Fraction(1, 2)
    return Fraction(whole)
