"""Booklets to a site: a page and PDFs for each recipe, the standing pages, the catalogue."""

from __future__ import annotations

import multiprocessing
import os
import re
import shutil
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from pathlib import Path, PurePosixPath

from presscloth.frozen import dataclass
from presscloth.handout.tree import Booklet, Handout, Image, Publisher
from presscloth.printing.fonts import BROWSER_RULE, browser_font, font_faces, font_package
from presscloth.printing.html import html, pdf_name
from presscloth.printing.look import Cut
from presscloth.printing.names import slug, slugs
from presscloth.printing.pdf import PrintingRefused, pdf
from presscloth.printing.pictures import pictures_of, read_picture
from presscloth.printing.theme import Theme, open_theme
from presscloth.publish.catalogue import (
    ENTRY_FILE,
    CatalogueEntry,
    catalogue_html,
    entry_of,
    read_entry,
    write_entry,
)
from presscloth.publish.standing import StandingPage, standing_html, standing_links, standing_pages
from presscloth.publish.swap import PublishRefused, staged

Progress = Callable[[int, int, str], None]

SLUG = re.compile(r"[a-z0-9][a-z0-9-]*")
TAKEN = ("theme", "standing", "index")
THEME_FILES = ("screen.css", "page.js")


@dataclass(frozen=True, slots=True)
class Written:
    """What was published: the folder, its files by their names within it, in order.

    `kept` are the recipes whose earlier pages stay; `absent` those that have none to keep.
    """

    folder: Path
    files: tuple[str, ...]
    kept: tuple[str, ...]
    absent: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Job:
    """One size to print on every paper, and the files that come of it."""

    handout: Handout
    theme: str
    own_themes: Path | None
    publisher: Publisher
    files: tuple[str, ...]


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
    pages = standing_pages(standing)
    with staged(site_folder) as staging:
        carried = _carry(kept, site_folder, staging)
        _write_theme(theme, staging / "theme")
        for page in pages:
            _write(staging / "standing" / f"{page.name}.html", standing_html(page, pages, theme, publisher))
        for booklet in booklets:
            _write_recipe(booklet, theme, publisher, pages, staging / booklet.first.slug)
        _print(_jobs(booklets, publisher, own_themes), workers, progress, staging)
        entries = (*map(entry_of, booklets), *carried)
        _write(staging / "index.html", catalogue_html(entries, theme, publisher, standing_links(pages)))
        written = tuple(
            sorted(file.relative_to(staging).as_posix() for file in staging.rglob("*") if file.is_file())
        )
    held = tuple(entry.slug for entry in carried)
    return Written(site_folder, written, held, tuple(name for name in kept if name not in held))


def _check_slugs(booklets: tuple[Booklet, ...], kept: tuple[str, ...]) -> None:
    seen: list[str] = []
    for name in (*(booklet.first.slug for booklet in booklets), *kept):
        if not SLUG.fullmatch(name) or name in TAKEN:
            raise PublishRefused(f"a recipe cannot be called `{name}`: its pages would have no address")
        if name in seen:
            raise PublishRefused(f"two recipes are called `{name}`: rename the folder of one")
        seen.append(name)


def _carry(kept: tuple[str, ...], site: Path, staging: Path) -> tuple[CatalogueEntry, ...]:
    """Take over the earlier pages of recipes, as they are, and what the catalogue says of them."""
    entries = []
    for name in kept:
        entry = read_entry(site / name)
        if entry is not None:
            shutil.copytree(site / name, staging / name)
            entries.append(entry)
    return tuple(entries)


def _write_recipe(
    booklet: Booklet, theme: Theme, publisher: Publisher, pages: tuple[StandingPage, ...], folder: Path
) -> None:
    page = html(booklet, theme, publisher, publisher.papers, standing_links(pages))
    _write(folder / "index.html", page)
    _write(folder / ENTRY_FILE, write_entry(entry_of(booklet)))
    pictures = dict.fromkeys(picture for handout in booklet.handouts for picture in pictures_of(handout))
    for picture in pictures:
        _write(folder / _within(picture), _picture(picture))


def _within(picture: Image) -> PurePosixPath:
    """A picture's place below its recipe's folder."""
    place = PurePosixPath(picture.name)
    if (
        place.is_absolute()
        or ".." in place.parts
        or "\\" in picture.name
        or picture.name in ("", "index.html")
    ):
        raise PrintingRefused(f"the picture {picture.name} does not lie in its recipe's folder")
    return place


def _picture(picture: Image) -> bytes:
    content, refused = read_picture(picture.file)
    if refused:
        raise PrintingRefused(f"the picture {picture.name} {refused}")
    return content


# -- the theme -----------------------------------------------------------------------------------


def _write_theme(theme: Theme, folder: Path) -> None:
    """Style sheet, script and fonts; beside the fonts their licence, as it asks."""
    for name in THEME_FILES:
        _write(folder / name, theme.text(name))
    for cut in theme.look.fonts:
        _write(folder / _font_name(cut), browser_font(cut))
        licence = font_package(cut.package) / "LICENSE"
        _write(folder / f"{cut.package}-licence.txt", licence.read_bytes())
    faces = font_faces(theme.look, lambda _, cut: _font_name(cut), BROWSER_RULE)
    _write(folder / "fonts.css", faces)


def _font_name(cut: Cut) -> str:
    italic = "-italic" if cut.italic else ""
    return f"{slug(cut.family)}-{cut.weight}{italic}.ttf"


# -- PDFs ----------------------------------------------------------------------------------------


def _jobs(booklets: tuple[Booklet, ...], publisher: Publisher, own_themes: Path | None) -> tuple[Job, ...]:
    jobs = []
    for booklet in booklets if publisher.papers else ():
        names = slugs(tuple(handout.size for handout in booklet.handouts))
        for handout, name in zip(booklet.handouts, names, strict=True):
            made = tuple(f"{handout.slug}/{pdf_name(handout, name, paper)}" for paper in publisher.papers)
            jobs.append(Job(handout, publisher.theme, own_themes, publisher, made))
    return tuple(jobs)


def _print(jobs: tuple[Job, ...], workers: int | None, progress: Progress | None, staging: Path) -> None:
    wanted = min(workers or os.cpu_count() or 1, len(jobs))
    with _printer(wanted) as run:
        for done, (job, made) in enumerate(zip(jobs, run(jobs), strict=True), start=1):
            for name, content in zip(job.files, made, strict=True):
                _write(staging / name, content)
            if progress is not None:
                progress(done, len(jobs), f"{job.handout.title}, {job.handout.size}")


def print_job(job: Job) -> tuple[bytes, ...]:
    theme = open_theme(job.theme, job.own_themes)
    return pdf(job.handout, theme, job.publisher, job.publisher.papers)


@contextmanager
def _printer(workers: int) -> Iterator[Callable[[tuple[Job, ...]], Iterator[tuple[bytes, ...]]]]:
    """A way to print jobs in their order, here or in other processes."""
    if workers <= 1:
        yield lambda jobs: map(print_job, jobs)
        return
    pool = ProcessPoolExecutor(workers, mp_context=multiprocessing.get_context("spawn"))
    try:
        yield lambda jobs: pool.map(print_job, jobs)
    finally:
        pool.shutdown(cancel_futures=True)


def _write(file: Path, content: str | bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(content.encode("utf-8") if isinstance(content, str) else content)
