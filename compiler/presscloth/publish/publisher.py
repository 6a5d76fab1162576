"""Transform `site/publisher.yaml` into a Publisher.

The file is read strictly: an unknown key, a key twice or a value of the wrong sort is a problem at
its place, and the default stands instead. Without a file, or without a key, the default stands.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from presscloth.handout.tree import Publisher
from presscloth.measure import System
from presscloth.printing.paper import PAPERS
from presscloth.printing.theme import DEFAULT, theme_names
from presscloth.problems import Problems
from presscloth.publish.entries import Entry, entries
from presscloth.publish.publisher_problems import (
    KEYS,
    PublisherFileUnreadable,
    PublisherKeyUnknown,
    PublisherValueWrong,
    ThemeUnknown,
)
from presscloth.recipe.words import nearest
from presscloth.source import Source, Span
from presscloth.tongue import has_words, languages

FILE = "publisher.yaml"

NOBODY = Publisher(
    name="Sew-along recipes", address="", papers=tuple(PAPERS), systems=(), theme=DEFAULT, about=""
)
SYSTEMS = {system.value: system for system in System}


def publisher_of(site: Path, problems: Problems, own_themes: Path | None = None) -> Publisher:
    """Read the publisher's file of a site's folder; the defaults where there is none."""
    file = site / FILE
    if not file.is_file():
        return NOBODY
    source = Source(str(file), file.read_text(encoding="utf-8-sig", errors="replace"))
    return read_publisher(source, problems, own_themes)


def read_publisher(source: Source, problems: Problems, own_themes: Path | None = None) -> Publisher:
    """Read a publisher's file. Every entry that is wrong is reported, and its default stands."""
    publisher = NOBODY
    seen: dict[str, Span] = {}
    for entry in entries(source, problems):
        if entry.key not in KEYS:
            meant = nearest(entry.key, KEYS)
            problems.add(PublisherKeyUnknown(span=entry.key_span, key=entry.key, meant=meant))
        elif entry.key in seen:
            problems.add(
                PublisherFileUnreadable(span=entry.key_span, why=f"it has the key {entry.key} twice")
            )
        else:
            seen[entry.key] = entry.key_span
            publisher = _with(publisher, entry, problems, own_themes)
    return publisher


def _with(publisher: Publisher, entry: Entry, problems: Problems, own_themes: Path | None) -> Publisher:
    match entry.key:
        case "papers":
            papers = _choice(entry, tuple(PAPERS), "A4, Letter, or both: [A4, Letter]", problems)
            return replace(publisher, papers=papers or publisher.papers)
        case "systems":
            systems = _choice(
                entry, tuple(SYSTEMS), "metric, imperial, or both, the leading one first", problems
            )
            return replace(publisher, systems=tuple(SYSTEMS[name] for name in systems))
        case "theme":
            return replace(publisher, theme=_theme(entry, problems, own_themes) or publisher.theme)
        case "cut in strips":
            strips = _yes(entry, problems)
            return replace(publisher, workshop=replace(publisher.workshop, strips=strips))
        case "straightened":
            straightened = _yes(entry, problems)
            return replace(publisher, workshop=replace(publisher.workshop, straightened=straightened))
        case "name":
            return replace(publisher, name=_text(entry, "a name on one line", problems) or publisher.name)
        case "language":
            language = _text(entry, "a language that has words", problems)
            if language and not has_words(language):
                problems.add(_wrong(entry, language, f"a language that has words: {', '.join(languages())}"))
                return publisher
            return replace(publisher, language=language or publisher.language)
        case "address":
            address = _text(entry, "an address that begins with https://", problems)
            if address and not address.startswith(("https://", "http://")):
                problems.add(_wrong(entry, address, "an address that begins with https://"))
                return publisher
            return replace(publisher, address=address)
        case _:
            return replace(publisher, about=_text(entry, "a text on one line", problems))


def _theme(entry: Entry, problems: Problems, own_themes: Path | None) -> str:
    name = _text(entry, "the name of one theme", problems)
    known = theme_names(own_themes)
    if name and name not in known:
        problems.add(ThemeUnknown(span=entry.span, theme=name, known=known))
        return ""
    return name


def _yes(entry: Entry, problems: Problems) -> bool:
    """Whether an entry says yes; no, and reported, where it says neither yes nor no."""
    word = entry.values[0][0].strip().casefold() if entry.single else ""
    if word not in ("yes", "no"):
        problems.add(_wrong(entry, entry.span.text, "yes or no"))
    return word == "yes"


def _text(entry: Entry, wanted: str, problems: Problems) -> str:
    """The one value of an entry; empty, and reported, where it is none or a list."""
    if entry.single and entry.values[0][0].strip():
        return " ".join(entry.values[0][0].split())
    problems.add(_wrong(entry, entry.span.text, wanted))
    return ""


def _choice(entry: Entry, among: tuple[str, ...], wanted: str, problems: Problems) -> tuple[str, ...]:
    """Values out of a few, each once and in the order of the file."""
    folded = {name.casefold(): name for name in among}
    chosen: list[str] = []
    for value, span in entry.values:
        name = folded.get(value.strip().casefold())
        if name is None or name in chosen:
            problems.add(PublisherValueWrong(span=span, key=entry.key, value=value, wanted=wanted))
        else:
            chosen.append(name)
    if not entry.values:
        problems.add(_wrong(entry, entry.span.text, wanted))
    return tuple(chosen)


def _wrong(entry: Entry, value: str, wanted: str) -> PublisherValueWrong:
    return PublisherValueWrong(span=entry.span, key=entry.key, value=value, wanted=wanted)
