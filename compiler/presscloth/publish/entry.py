"""What the catalogue knows of a recipe, and keeps of it between two runs."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict
from pathlib import Path

from presscloth.frozen import dataclass
from presscloth.handout.tree import Booklet, Handout
from presscloth.printing.likeness import likeness
from presscloth.printing.plain import plain, plain_blocks
from presscloth.publish.words import words_of

ENTRY_FILE = "entry.json"


@dataclass(frozen=True, slots=True)
class CatalogueEntry:
    """A recipe in the catalogue. `words` are those of its steps and notes, folded, each once, in order.

    `sizes` is empty where there is only one; `craft` is as it is typed. `drawn` says that a drawing
    of it lies beside its page. `languages` are all languages in which the recipe is published, its own
    first, each with its short name; empty where there is only one.
    """

    slug: str
    title: str
    release: str
    version: str
    summary: str
    craft: str
    sizes: tuple[str, ...]
    draft: bool
    revised: str = ""
    language: str = "en"
    skills: tuple[str, ...] = ()
    part_of: str = ""
    week: int = 0
    materials: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    drawn: bool = False
    languages: tuple[tuple[str, str], ...] = ()

    @property
    def recipe(self) -> str:
        """The short name that all versions of a recipe in several languages share: that of its own."""
        return self.languages[0][1] if self.languages else self.slug

    @property
    def crafts(self) -> tuple[str, ...]:
        """A recipe may belong to several crafts, with commas between."""
        return tuple(word.strip() for word in self.craft.split(",") if word.strip())


def entry_of(booklet: Booklet) -> CatalogueEntry:
    first = booklet.first
    sizes = () if first.only_size else tuple(handout.size for handout in booklet.handouts)
    every = booklet.handouts
    return CatalogueEntry(
        slug=first.slug,
        title=first.title,
        release=first.release,
        version=first.version,
        summary=first.summary,
        craft=first.craft,
        sizes=sizes,
        draft=first.draft,
        revised=first.revised,
        language=first.language,
        skills=first.skills,
        part_of=first.part_of,
        week=first.week,
        materials=tuple(dict.fromkeys(line.name for handout in every for line in handout.materials)),
        tools=tuple(dict.fromkeys(plain(tool) for handout in every for tool in handout.tools)),
        words=tuple(
            sorted({word for handout in every for text in _prose(handout) for word in words_of(text)})
        ),
        drawn=likeness(booklet) is not None,
        languages=first.languages,
    )


def _prose(handout: Handout) -> Iterator[str]:
    """What the steps and notes of a size say, without measures, which nobody searches for."""
    for stage in handout.stages:
        yield plain(stage.title, measures=False)
        for step in stage.steps:
            yield from plain_blocks(step.content, measures=False)
    for section in handout.notes:
        yield plain(section.title, measures=False)
        yield from plain_blocks(section.content, measures=False)


def write_entry(entry: CatalogueEntry) -> str:
    return json.dumps(asdict(entry), ensure_ascii=False, indent=1) + "\n"


def read_entry(folder: Path) -> CatalogueEntry | None:
    """The entry that an earlier run left with a recipe's pages; None where there is no sound one.

    What an older run did not know yet is empty.
    """
    try:
        read = json.loads((folder / ENTRY_FILE).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return None
    if not isinstance(read, dict) or read.get("slug") != folder.name or not _text(read, "title"):
        return None
    week = read.get("week")
    return CatalogueEntry(
        slug=folder.name,
        title=_text(read, "title"),
        release=_text(read, "release"),
        version=_text(read, "version"),
        summary=_text(read, "summary"),
        craft=_text(read, "craft"),
        sizes=_texts(read, "sizes"),
        draft=read.get("draft") is True,
        revised=_text(read, "revised"),
        language=_text(read, "language") or "en",
        skills=_texts(read, "skills"),
        part_of=_text(read, "part_of"),
        week=week if isinstance(week, int) else 0,
        materials=_texts(read, "materials"),
        tools=_texts(read, "tools"),
        words=_texts(read, "words"),
        drawn=read.get("drawn") is True,
        languages=_pairs(read, "languages"),
    )


def _text(read: Mapping[str, object], name: str) -> str:
    value = read.get(name)
    return value if isinstance(value, str) else ""


def _texts(read: Mapping[str, object], name: str) -> tuple[str, ...]:
    value = read.get(name)
    return tuple(each for each in value if isinstance(each, str)) if isinstance(value, list) else ()


def _pairs(read: Mapping[str, object], name: str) -> tuple[tuple[str, str], ...]:
    value = read.get(name)
    pairs = (
        [each for each in value if isinstance(each, list) and len(each) == 2]
        if isinstance(value, list)
        else []
    )
    return tuple((str(one), str(other)) for one, other in pairs)
