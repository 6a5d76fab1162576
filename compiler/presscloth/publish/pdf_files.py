"""The PDFs of a size: a small function for each kind, all in one list; printed by several processes."""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from pathlib import Path

from presscloth.frozen import dataclass
from presscloth.handout.tree import Booklet, Handout, Publisher
from presscloth.printing.cues import cues_pdf
from presscloth.printing.html import cues_name, pdf_name, templates_name
from presscloth.printing.names import slugs
from presscloth.printing.pdf import pdf
from presscloth.printing.templates import templates_pdf
from presscloth.printing.theme import Theme, open_theme

PdfFile = tuple[str, bytes]
"""A PDF's name within its recipe's folder, and its bytes."""

Progress = Callable[[int, int, str], None]
"""Told how many sizes are done, of how many, and which."""


@dataclass(frozen=True, slots=True)
class SizeToPrint:
    """A size with its name as part of a file's name; a process of its own can print it."""

    handout: Handout
    size: str
    publisher: Publisher
    own_themes: Path | None


def handout(to_print: SizeToPrint, theme: Theme) -> Iterator[PdfFile]:
    """The handout on every paper."""
    papers = to_print.publisher.papers
    printed = pdf(to_print.handout, theme, to_print.publisher, papers)
    for paper, content in zip(papers, printed, strict=True):
        yield pdf_name(to_print.handout, to_print.size, paper), content


def templates(to_print: SizeToPrint, theme: Theme) -> Iterator[PdfFile]:
    """The templates at full size, in each system on every paper; nothing where no piece needs one."""
    papers = to_print.publisher.papers
    for each in to_print.handout.templates:
        printed = templates_pdf(to_print.handout, each, theme, to_print.publisher, papers)
        for paper, content in zip(papers, printed, strict=True):
            yield templates_name(to_print.handout, to_print.size, each, paper), content


def cues(to_print: SizeToPrint, theme: Theme) -> Iterator[PdfFile]:
    """The presenter's cue sheet on every paper, where there is a video."""
    if not to_print.handout.video:
        return
    papers = to_print.publisher.papers
    printed = cues_pdf(to_print.handout, theme, to_print.publisher, papers)
    for paper, content in zip(papers, printed, strict=True):
        yield cues_name(to_print.handout, to_print.size, paper), content


PDF_FILES: tuple[Callable[[SizeToPrint, Theme], Iterator[PdfFile]], ...] = (handout, templates, cues)


def print_size(to_print: SizeToPrint) -> tuple[PdfFile, ...]:
    theme = open_theme(to_print.publisher.theme, to_print.own_themes)
    return tuple(file for kind in PDF_FILES for file in kind(to_print, theme))


def sizes_to_print(
    booklets: tuple[Booklet, ...], publisher: Publisher, own_themes: Path | None
) -> tuple[SizeToPrint, ...]:
    """Every size of every recipe; none where there is no paper to print on."""
    return tuple(
        SizeToPrint(handout, name, publisher, own_themes)
        for booklet in (booklets if publisher.papers else ())
        for handout, name in zip(
            booklet.handouts, slugs(tuple(each.size for each in booklet.handouts)), strict=True
        )
    )


def printed(
    sizes: tuple[SizeToPrint, ...], workers: int | None, progress: Progress | None
) -> Iterator[PdfFile]:
    """The PDFs of all sizes, named within the site, as they come out of `workers` processes."""
    wanted = min(workers or os.cpu_count() or 1, len(sizes))
    with _printer(wanted) as run:
        for done, (size, files) in enumerate(zip(sizes, run(sizes), strict=True), start=1):
            for name, content in files:
                yield f"{size.handout.slug}/{name}", content
            if progress is not None:
                progress(done, len(sizes), f"{size.handout.title}, {size.handout.size}")


@contextmanager
def _printer(
    workers: int,
) -> Iterator[Callable[[tuple[SizeToPrint, ...]], Iterator[tuple[PdfFile, ...]]]]:
    """A way to print sizes in their order, here or in other processes."""
    if workers <= 1:
        yield lambda sizes: map(print_size, sizes)
        return
    pool = ProcessPoolExecutor(workers, mp_context=multiprocessing.get_context("spawn"))
    try:
        yield lambda sizes: pool.map(print_size, sizes)
    finally:
        pool.shutdown(cancel_futures=True)
