"""Measures as they are spoken: `1 1/4 in` as `one and a quarter inches`, `3.2 cm` as `three point two
centimetres`.

A presenter reads them aloud. They are made from the text that is printed, so that what is heard is what
stands on the page. The words of a language stand in a file of its own, `spoken_en.py`, `spoken_de.py`; in a
language that has none, measures stay as they are printed. How measures are spoken is common practice, no
source.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache

from presscloth.frozen import dataclass
from presscloth.handout import spoken_de, spoken_en
from presscloth.handout.number_words import MOST, Number
from presscloth.handout.tree import Amount
from presscloth.tongue import say


@dataclass(frozen=True, slots=True)
class Speech:
    """How a language speaks: its units as printed, a measure, the words in a range and between sides."""

    units: tuple[str, ...]
    decimal: str
    thousands: str
    measure: Callable[[Number, str], str]
    to: str
    by: str


SPEECHES: Mapping[str, Speech] = {
    "en": Speech(tuple(spoken_en.UNITS), ".", ",", spoken_en.measure, "to", "by"),
    "de": Speech(tuple(spoken_de.UNITS), ",", ".", spoken_de.measure, "bis", "mal"),
}


def spoken_amount(amount: Amount, language: str) -> str:
    """An amount in all its systems: `one inch or two point five centimetres`."""
    leading, *others = (spoken(text, language) for text, _ in amount.texts)
    for other in others:
        leading = say("{leading} or {other}", leading=leading, other=other)
    return f"{amount.before} {leading}" if amount.before else leading


def spoken(text: str, language: str) -> str:
    """Every number in a text in words, with its unit where it has one."""
    return _said(text, language, bare=True)


def spoken_measures(text: str, language: str) -> str:
    """The same for measures alone; numbers without a unit (`step 3`) stay."""
    return _said(text, language, bare=False)


def _said(text: str, language: str, *, bare: bool) -> str:
    speech = SPEECHES.get(language.lower().split("-")[0])
    if speech is None:
        return text

    def in_words(found: re.Match[str]) -> str:
        unit = found["unit"] or ""
        last = _number(found["last"], speech)
        first = _number(found["first"], speech) if found["first"] else None
        whole = (number for number in (first, last) if number is not None)
        if (not unit and not bare) or any(number.whole > MOST for number in whole):
            return found[0]
        said = speech.measure(last, unit)
        return f"{speech.measure(first, '')} {speech.to} {said}" if first else said

    said = _pattern(language.lower().split("-")[0]).sub(in_words, text)
    return said.replace(" × ", f" {speech.by} ")


@cache
def _pattern(language: str) -> re.Pattern[str]:
    """A measure as it is printed, or a range of two: `2–3 cm`, `1 1/2 to 2 in`."""
    speech = SPEECHES[language]
    decimal, thousands = re.escape(speech.decimal), re.escape(speech.thousands)
    whole = rf"\d{{1,3}}(?:{thousands}\d{{3}})+"
    number = rf"[-−]?(?:{whole}|\d+ \d+/\d+|\d+/\d+|\d+(?:{decimal}\d+)?)(?![\d/]|{decimal}\d)"
    units = "|".join(re.escape(unit) for unit in sorted(speech.units, key=len, reverse=True))
    return re.compile(
        rf"(?<![\w.,/:–-])(?:(?P<first>{number})(?: ?– ?| {speech.to} ))?(?P<last>{number})"
        rf"(?:[ \u00a0]?(?P<unit>{units})(?!\w))?(?![\w:])"
    )


def _number(text: str, speech: Speech) -> Number:
    minus, text = text[0] in "-−", text.lstrip("-−")
    if "/" in text:
        whole, _, parts = text.rpartition(" ")
        top, bottom = parts.split("/")
        return Number(minus, int(whole or 0), (int(top), int(bottom)))
    whole, _, decimals = text.partition(speech.decimal)
    return Number(minus, int(whole.replace(speech.thousands, "")), None, decimals)
