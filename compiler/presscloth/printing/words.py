"""How templates ask for words: the tongue's own functions, with markup among the values left as it is."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from markupsafe import Markup, escape

from presscloth import tongue
from presscloth.handout.wording import system_word
from presscloth.printing.names import day, month


def say(message: str, /, **values: str | int) -> Markup:
    """A message; every value is escaped but what is markup already."""
    return _filled(tongue.say(message), values)


def say_as(context: str, message: str, /, **values: str | int) -> Markup:
    return _filled(tongue.say_as(context, message), values)


def many(one: str, several: str, n: int, /, **values: str | int) -> Markup:
    return _filled(tongue.spoken().form(one, several, n), {"n": n, **values})


def _filled(words: str, values: Mapping[str, str | int]) -> Markup:
    return escape(words).format(**values) if values else escape(words)


def begun(words: str) -> str:
    """Words as they begin a sentence: the first letter large, the others as they are."""
    return words[:1].upper() + words[1:]


def page_number() -> Markup:
    """`Page 3 of 14` as a style sheet puts it together (CSS Generated Content for Paged Media)."""
    counters = {"page": "counter(page)", "pages": "counter(pages)"}
    said = tongue.say("Page {page} of {pages}", page="\0page\0", pages="\0pages\0")
    parts = (counters.get(part, f'"{_in_css(part)}"') for part in said.split("\0") if part)
    return Markup(" ".join(parts))


def _in_css(words: str) -> str:
    return "".join(sign if sign.isalnum() or sign == " " else f"\\{ord(sign):06x}" for sign in words)


WORDS: Mapping[str, Callable[..., object]] = {
    "say": say,
    "say_as": say_as,
    "many": many,
    "listed": tongue.listed,
    "named": tongue.named,
    "month": month,
    "day": day,
    "system_word": system_word,
    "begun": begun,
    "language_name": tongue.language_name,
    "page_number": page_number,
}
"""What every template can call."""
