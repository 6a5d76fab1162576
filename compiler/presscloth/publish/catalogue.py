"""The catalogue: what the site's first page says of each recipe, and keeps of it between two runs."""

from __future__ import annotations

import json
from dataclasses import asdict, fields
from itertools import groupby
from pathlib import Path

from presscloth.frozen import dataclass
from presscloth.handout.tree import Booklet, Publisher
from presscloth.printing.html import StandingLink
from presscloth.printing.names import month
from presscloth.printing.theme import Theme, environment

ENTRY_FILE = "entry.json"


@dataclass(frozen=True, slots=True)
class CatalogueEntry:
    slug: str
    title: str
    release: str
    version: str
    summary: str
    craft: str
    sizes: tuple[str, ...]
    draft: bool


def entry_of(booklet: Booklet) -> CatalogueEntry:
    first = booklet.first
    sizes = () if first.only_size else tuple(handout.size for handout in booklet.handouts)
    return CatalogueEntry(
        slug=first.slug,
        title=first.title,
        release=first.release,
        version=first.version,
        summary=first.summary,
        craft=first.craft,
        sizes=sizes,
        draft=first.draft,
    )


def write_entry(entry: CatalogueEntry) -> str:
    return json.dumps(asdict(entry), ensure_ascii=False, indent=1) + "\n"


def read_entry(folder: Path) -> CatalogueEntry | None:
    """The entry that an earlier run left with a recipe's pages; None where there is no sound one."""
    try:
        read = json.loads((folder / ENTRY_FILE).read_text(encoding="utf-8"))
        entry = CatalogueEntry(**{field.name: read[field.name] for field in fields(CatalogueEntry)})
        sound = entry.slug == folder.name and isinstance(entry.sizes, list)
        return CatalogueEntry(**{**asdict(entry), "sizes": tuple(entry.sizes)}) if sound else None
    except (OSError, ValueError, KeyError, TypeError):
        return None


def catalogue_html(
    entries: tuple[CatalogueEntry, ...],
    theme: Theme,
    publisher: Publisher,
    standing: tuple[StandingLink, ...],
) -> str:
    """The first page: recipes by month of release, the newest first, within a month by title."""
    by_title = sorted(entries, key=lambda entry: (entry.title.casefold(), entry.slug))
    newest = sorted(by_title, key=lambda entry: entry.release, reverse=True)
    months = [(month(release), tuple(held)) for release, held in groupby(newest, lambda entry: entry.release)]
    return environment(theme).get_template("catalogue.html").render(
        months=months,
        publisher=publisher,
        standing=standing,
        language="en",
        here="index",
        up="",
    )  # fmt: skip
