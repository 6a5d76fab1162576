"""A language that says nothing but where words come from.

Each message stands between ⟦ and ⟧, what an author wrote between ⟪ and ⟫. What a handout in it says
outside of both, measures and keys apart, is a word that no catalogue knows.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

import pytest

from presscloth.measure import SPELLINGS
from presscloth.recipe.prose import Code, Emphasis, Inline, Link, Picture, Words
from presscloth.recipe.tree import Recipe
from presscloth.tongue import tongue
from presscloth.tongue.conventions import ENGLISH_WAYS
from presscloth.tongue.tongue import Catalogue, Plural
from presscloth.translation.tree import Translation, place_of
from presscloth.translation.wanted import every_run, names, paragraphs

LANGUAGE = "qaa"
"""A tag for private use (ISO 639-2)."""


class Wrapped(Mapping[tuple[str, str], tuple[str, ...]]):
    """Every message is known, and is itself between brackets."""

    def __getitem__(self, key: tuple[str, str]) -> tuple[str, ...]:
        return (f"⟦{key[1]}⟧", f"⟦{key[1]}⟧")

    def __iter__(self) -> Iterator[tuple[str, str]]:
        return iter(())

    def __len__(self) -> int:
        return 0


def speak_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let the language be known as long as a test runs."""
    known = tongue._held, tongue.catalogue
    monkeypatch.setattr(tongue, "_held", lambda tag: LANGUAGE if tag == LANGUAGE else known[0](tag))
    made = Catalogue(LANGUAGE, Wrapped(), Plural("n != 1"))
    monkeypatch.setattr(tongue, "catalogue", lambda name: made if name == LANGUAGE else known[1](name))
    ways = replace(ENGLISH_WAYS, months=tuple(f"⟦{month}⟧" for month in ENGLISH_WAYS.months))
    ours = tongue.conventions_of
    monkeypatch.setattr(tongue, "conventions_of", lambda tag: ways if tag == LANGUAGE else ours(tag))


def translation_of(recipe: Recipe) -> Translation:
    """All that an author wrote, between its brackets."""
    facts = [each.text for each in paragraphs(recipe) if not each.of]
    called = {name: f"⟪{name}⟫" for name in (*facts, *(each.text for each in names(recipe)))}
    runs = {place_of(of): tuple(map(_marked, of)) for of in every_run(recipe)}
    return Translation(LANGUAGE, None, called, runs)


def _marked(inline: Inline) -> Inline:
    match inline:
        case Words(text=text) | Code(text=text):
            return replace(inline, text=f"⟪{text}⟫")
        case Emphasis(of=of) | Link(of=of):
            return replace(inline, of=tuple(map(_marked, of)))
        case Picture(alt=alt):
            return replace(inline, alt=tuple(map(_marked, alt)))
        case _:
            return inline


_INNERMOST = re.compile(r"⟦[^⟦⟧⟪⟫]*⟧|⟪[^⟦⟧⟪⟫]*⟫")
_UNIT = "|".join(sorted((re.escape(unit) for unit in SPELLINGS if unit.isalpha()), key=len, reverse=True))
_MEASURE = re.compile(rf"\d[\d/.,\s]*(?:{_UNIT})[²³]?(?![a-z])")
_ADDRESS = re.compile(r"https?://[^\s)⟧⟫]+")
_KEYS = re.compile(r"\b[A-Za-z](?:/[A-Z])*\b|\bA4\b")  # of materials, and of marks in a drawing
_WORD = re.compile(r"[^\W\d_]+")


def untold(text: str) -> tuple[str, ...]:
    """The words of a text that stand outside of all brackets, keys and measures apart."""
    text, before = _ADDRESS.sub(" ", text), ""
    while before != text:
        before, text = text, _INNERMOST.sub(" ", text)
    return tuple(_WORD.findall(_KEYS.sub(" ", _MEASURE.sub(" ", text))))
