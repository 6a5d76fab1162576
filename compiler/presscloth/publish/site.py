"""Booklets to a site: a page and PDFs for each recipe, the standing pages, the catalogue.

`recipe_files`, `pdf_files`, `site_files` and `theme_files` say which files there are.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterable
from pathlib import Path

from presscloth.frozen import dataclass
from presscloth.handout.tree import Booklet, Publisher
from presscloth.printing.theme import open_theme
from presscloth.publish.addresses import is_address, why_no_address
from presscloth.publish.entry import CatalogueEntry, entry_of, read_entry
from presscloth.publish.lists import in_order
from presscloth.publish.parts import linked_pages
from presscloth.publish.pdf_files import Progress, printed, sizes_to_print
from presscloth.publish.recipe_files import RECIPE_FILES, File, RecipeToWrite
from presscloth.publish.site_files import SITE_FILES, SiteToWrite
from presscloth.publish.standing import standing_links, standing_pages
from presscloth.publish.swap import PublishRefused, staged
from presscloth.publish.theme_files import theme_files


@dataclass(frozen=True, slots=True)
class Written:
    """What was published: the folder, its files by their names within it, in order.

    `kept` are the recipes whose earlier pages stay; `absent` those that have none to keep.
    """

    folder: Path
    files: tuple[str, ...]
    kept: tuple[str, ...]
    absent: tuple[str, ...]


def publish(
    booklets: tuple[Booklet, ...],
    kept: tuple[str, ...],
    publisher: Publisher,
    site_folder: Path,
    *,
    standing: Path | None = None,
    own_themes: Path | None = None,
    workers: int | None = None,
    progress: Progress | None = None,
) -> Written:
    """Write a whole site and let it take the place of the one in `site_folder`.

    `kept` are the slugs of recipes whose earlier pages stay as they are. `standing` is a folder of
    standing pages (those shipped where there is none), `own_themes` one of themes. PDFs are printed
    by `workers` processes, as many as the machine has processors; `progress` is told after each
    size: how many are done, of how many, and which. Without papers no PDF is printed.

    The same booklets give the same bytes, from any folder. Raises `PublishRefused`, and
    `PrintingRefused` or `ThemeError` from printing; the published site is then as it was.
    """
    _check_slugs(booklets, kept)
    theme = open_theme(publisher.theme, own_themes)
    pages = standing_pages(standing, publisher.language)
    with staged(site_folder) as staging:
        carried = _carry(kept, site_folder, staging)
        _write(staging / "theme", theme_files(theme))
        for booklet in booklets:
            links = standing_links(pages, booklet.first.language)
            _write_recipe(RecipeToWrite(booklet, theme, publisher, links), staging)
        _write(staging, printed(sizes_to_print(booklets, publisher, own_themes), workers, progress))
        site = SiteToWrite(in_order((*map(entry_of, booklets), *carried)), theme, publisher, pages)
        for files in SITE_FILES:
            _write(staging, files(site))
        _write(staging, linked_pages(site.entries, publisher.language, theme, staging))
        written = tuple(
            sorted(file.relative_to(staging).as_posix() for file in staging.rglob("*") if file.is_file())
        )
    held = tuple(entry.slug for entry in carried)
    return Written(site_folder, written, held, tuple(name for name in kept if name not in held))


def _check_slugs(booklets: tuple[Booklet, ...], kept: tuple[str, ...]) -> None:
    seen: list[str] = []
    for name in (*(booklet.first.slug for booklet in booklets), *kept):
        if not is_address(name):
            raise PublishRefused(why_no_address(name))
        if name.casefold() in seen:
            raise PublishRefused(f"two recipes are called `{name}`: rename the folder of one")
        seen.append(name.casefold())


def _carry(kept: tuple[str, ...], site: Path, staging: Path) -> tuple[CatalogueEntry, ...]:
    """Take over the earlier pages of recipes, as they are, and what the catalogue says of them."""
    entries = []
    for name in kept:
        entry = read_entry(site / name)
        if entry is not None:
            shutil.copytree(site / name, staging / name)
            entries.append(entry)
    return tuple(entries)


def _write_recipe(recipe: RecipeToWrite, staging: Path) -> None:
    for files in RECIPE_FILES:
        _write(staging / recipe.booklet.first.slug, files(recipe))


def _write(folder: Path, files: Iterable[File]) -> None:
    for name, content in files:
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(content.encode("utf-8") if isinstance(content, str) else content)
