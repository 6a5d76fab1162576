"""The language of the moment, and the few words by which everything else asks it.

A handout is built and written by many small functions that have nothing to do with languages; the one
that begins it opens its language, and all that it calls speak that. Nothing else is kept here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar

from presscloth.tongue.tongue import ENGLISH, Tongue, Value

_SPOKEN: ContextVar[Tongue] = ContextVar("spoken", default=ENGLISH)


def spoken() -> Tongue:
    """The tongue of the handout or page that is being made."""
    return _SPOKEN.get()


@contextmanager
def speaking(tongue: Tongue) -> Iterator[Tongue]:
    """Everything inside speaks this language."""
    before = _SPOKEN.set(tongue)
    try:
        yield tongue
    finally:
        _SPOKEN.reset(before)


def say(message: str, /, **values: Value) -> str:
    """A message in the language of the moment, with its values."""
    return _SPOKEN.get().say(message, **values)


def say_as(context: str, message: str, /, **values: Value) -> str:
    """The same for a message that is translated by its place: `say_as("column", "Cut")`."""
    return _SPOKEN.get().say_as(context, message, **values)


def many(one: str, several: str, n: int, /, **values: Value) -> str:
    """A message by number: `many("{n} strip", "{n} strips", 3)`."""
    return _SPOKEN.get().many(one, several, n, **values)


def counted_number(text: str) -> str:
    """A number as `measure` prints it, in the way of the language: `2.5`, in German `2,5`."""
    return _SPOKEN.get().number(text)


def measured(text: str) -> str:
    """Measures as `measure` prints them, in the way of the language: `7 1/2 in`, in German `7 1/2 Zoll`."""
    return _SPOKEN.get().measured(text)


def unbroken(text: str) -> str:
    """A text, in the language of the moment, in which no line ends within a measure."""
    return _SPOKEN.get().unbroken(text)


def named(name: str) -> str:
    """An author's name of a piece, size, material or sewn thing, where a translation has another."""
    return _SPOKEN.get().named(name)


def listed(words: Sequence[str]) -> str:
    """`A`, `A and B`, `A, B and C`"""
    return _SPOKEN.get().listed(words)


def month(year: int, number: int) -> str:
    """`May 2027`"""
    return _SPOKEN.get().month(year, number)
