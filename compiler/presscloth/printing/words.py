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


WORDS: Mapping[str, Callable[..., object]] = {
    "say": say,
    "say_as": say_as,
    "many": many,
    "listed": tongue.listed,
    "named": tongue.named,
    "month": month,
    "day": day,
    "system_word": system_word,
}
"""What every template can call."""
