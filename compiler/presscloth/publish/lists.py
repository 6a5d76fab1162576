"""The catalogue's order, and its lists by month, craft, skill and project."""

from __future__ import annotations

from collections.abc import Callable
from itertools import groupby

from presscloth.frozen import dataclass
from presscloth.printing.names import month, slugs
from presscloth.publish.entry import CatalogueEntry

CRAFTS, SKILLS, PROJECTS = "crafts", "skills", "projects"
KINDS = (CRAFTS, SKILLS, PROJECTS)
"""Each kind of list has a folder of this name in the site."""


@dataclass(frozen=True, slots=True)
class CatalogueList:
    """The recipes of one craft, skill or project: its name, its file, and the recipes in their order."""

    name: str
    file: str
    entries: tuple[CatalogueEntry, ...]


def in_order(entries: tuple[CatalogueEntry, ...]) -> tuple[CatalogueEntry, ...]:
    """The newest month first, within a month by title."""
    by_title = sorted(entries, key=lambda entry: (entry.title.casefold(), entry.slug))
    return tuple(sorted(by_title, key=lambda entry: entry.release, reverse=True))


def one_of_each(entries: tuple[CatalogueEntry, ...], language: str) -> tuple[CatalogueEntry, ...]:
    """Each recipe once: in a language if it is published in it, else in its own."""
    chosen: dict[str, CatalogueEntry] = {}
    for entry in entries:
        other = chosen.get(entry.recipe)
        if other is None or _nearness(entry, language) > _nearness(other, language):
            chosen[entry.recipe] = entry
    return tuple(entry for entry in entries if chosen[entry.recipe] is entry)


def _nearness(entry: CatalogueEntry, language: str) -> tuple[bool, bool, bool]:
    """How well a version suits a language: the same, the same but for the region, else the recipe's own."""
    same = entry.language.casefold() == language.casefold()
    alike = entry.language.split("-")[0].casefold() == language.split("-")[0].casefold()
    return same, alike, entry.slug == entry.recipe


def others_of(entry: CatalogueEntry, entries: tuple[CatalogueEntry, ...]) -> tuple[CatalogueEntry, ...]:
    """The same recipe in other languages."""
    return tuple(each for each in entries if each.recipe == entry.recipe and each.slug != entry.slug)


def in_language(entry: CatalogueEntry, entries: tuple[CatalogueEntry, ...], language: str) -> CatalogueEntry:
    """A recipe in a language, or as it is where it is not published in that."""
    return next((each for each in others_of(entry, entries) if each.language == language), entry)


def by_month(entries: tuple[CatalogueEntry, ...]) -> tuple[tuple[str, tuple[CatalogueEntry, ...]], ...]:
    """Entries in their order, month by month."""
    return tuple(
        (month(release), tuple(held)) for release, held in groupby(entries, lambda entry: entry.release)
    )


def by_craft(entries: tuple[CatalogueEntry, ...]) -> tuple[CatalogueList, ...]:
    return _lists(CRAFTS, entries, lambda entry: entry.crafts)


def by_skill(entries: tuple[CatalogueEntry, ...]) -> tuple[CatalogueList, ...]:
    return _lists(SKILLS, entries, lambda entry: entry.skills)


def by_project(entries: tuple[CatalogueEntry, ...]) -> tuple[CatalogueList, ...]:
    """The longer projects, the parts of each by week."""
    found = _lists(PROJECTS, entries, lambda entry: (entry.part_of,) if entry.part_of and entry.week else ())
    return tuple(
        CatalogueList(
            each.name, each.file, tuple(sorted(each.entries, key=lambda entry: (entry.week, entry.slug)))
        )
        for each in found
    )


def _lists(
    kind: str,
    entries: tuple[CatalogueEntry, ...],
    names_of: Callable[[CatalogueEntry], tuple[str, ...]],
) -> tuple[CatalogueList, ...]:
    """A list for each name, by name; of two spellings that differ by capitals alone the first counts."""
    spelt: dict[str, str] = {}
    held: dict[str, list[CatalogueEntry]] = {}
    for entry in entries:
        for key, name in {_key(name): name for name in reversed(names_of(entry))}.items():
            spelt.setdefault(key, name)
            held.setdefault(key, []).append(entry)
    keys = sorted(held)
    return tuple(
        CatalogueList(spelt[key], f"{kind}/{file}.html", tuple(held[key]))
        for key, file in zip(keys, slugs(tuple(keys)), strict=True)
    )


def _key(name: str) -> str:
    return " ".join(name.casefold().split())
