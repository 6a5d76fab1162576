"""A translation as it was read, and as it was held against its recipe."""

from __future__ import annotations

from collections.abc import Mapping

from presscloth.frozen import dataclass
from presscloth.measure import System
from presscloth.recipe.prose import Inline
from presscloth.source import Passage, Source, Span


@dataclass(frozen=True, slots=True)
class Entry:
    """A paragraph of the recipe, folded to one line, and its translation; None where there is none yet.

    `before` is the paragraph that was translated, where the recipe has changed since; else empty.
    """

    original: str
    before: str
    text: Passage | None
    span: Span


@dataclass(frozen=True, slots=True)
class NameEntry:
    """A name of the recipe's and what it is called; empty where nothing stands there yet."""

    name: str
    called: str
    span: Span


@dataclass(frozen=True, slots=True)
class TranslationText:
    """A file as it was read.

    `leading` is the system that leads in this language, None to follow the recipe. `put_by` is what
    stands under `No longer in the recipe`, as it is, and `unread` what means nothing.
    """

    source: Source
    language: str
    leading: System | None
    names: tuple[NameEntry, ...]
    entries: tuple[Entry, ...]
    head: str
    put_by: str
    unread: tuple[Span, ...]


Place = tuple[int, int]
"""Where a run of prose begins and ends in the recipe's source."""


@dataclass(frozen=True, slots=True)
class Translation:
    """What a recipe says in another language.

    `names` are names and facts by the recipe's own words; `runs` the translated runs of prose by their
    place in the recipe, with the recipe's own measures in them. What has none is printed as it is.
    """

    language: str
    leading: System | None
    names: Mapping[str, str]
    runs: Mapping[Place, tuple[Inline, ...]]


def place_of(of: tuple[Inline, ...]) -> Place:
    """The place of a run that holds something."""
    return of[0].span.start, of[-1].span.end
