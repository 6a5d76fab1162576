"""Speed, as ratios measured in one run: times of one machine say nothing about another."""

from __future__ import annotations

import gc
import os
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import replace
from pathlib import Path
from time import perf_counter, process_time

from presscloth.cli import COLLECTED
from presscloth.cutting import laid
from presscloth.cutting.workshop import Workshop
from presscloth.dev import bench_sewing, scaffold
from presscloth.handout.tree import Booklet, Handout, Publisher
from presscloth.pipeline import booklet, prove
from presscloth.printing.html import html
from presscloth.printing.shipped import CHECKOUT, PACKAGE
from presscloth.printing.theme import Theme, open_theme

HANDOUTS = 12
ROUNDS = 7
PAPERS = ("A4", "Letter")
PUBLISHER = Publisher("Tidewrack sewing room", "", PAPERS, (), "plain-seam")

Measured = Iterator[tuple[str, float]]


def main(arguments: Sequence[str]) -> int:
    """Measure everything and print a table; `arguments` are recipes to measure with, all by default."""
    gc.set_threshold(*COLLECTED)
    with tempfile.TemporaryDirectory() as folder:
        recipes = _recipes(arguments, Path(folder))
        print(f"{'ratio':>7}  what")
        for what, ratio in _all(recipes, Path(folder)):
            print(f"{ratio:7.2f}  {what}", flush=True)
    return 0


def _recipes(arguments: Sequence[str], folder: Path) -> tuple[Path, ...]:
    """The recipes that are named or shipped; the smallest one where there are none."""
    if arguments:
        return tuple(Path(argument) for argument in arguments)
    shipped = tuple(sorted((CHECKOUT / "recipes").glob("*/recipe.md")))
    if shipped:
        return shipped
    smallest = folder / "plain-cloth"
    smallest.mkdir()
    return (scaffold.write("", smallest),)


def _all(recipes: tuple[Path, ...], folder: Path) -> Measured:
    yield from _processes(recipes[0])
    yield from _proof()
    yield from _kept_layouts(recipes, Path(folder))
    theme = open_theme(PUBLISHER.theme)
    booklets = _enough(recipes)
    handouts = [handout for each in booklets for handout in each.handouts]
    _print_both(handouts[0], theme)  # what is imported and read once is not measured
    yield from _besides_layout(recipes, theme, folder)
    yield from _two_papers(handouts, theme)
    yield from _two_workers(booklets, folder)


# -- whole processes --------------------------------------------------------------------------------


def _processes(recipe: Path) -> Measured:
    bare, helped, checked = _fastest(
        ("-c", "pass"), ("-m", "presscloth", "--help"), ("-m", "presscloth", "check", str(recipe))
    )
    yield "presscloth --help : bare Python", helped / bare
    yield "presscloth check of one recipe : bare Python", checked / bare


def _fastest(*commands: tuple[str, ...]) -> list[float]:
    """The fastest run of each, all taken in turns, so that a busy moment does not fall on one alone."""
    environment = {**os.environ, "PYTHONPATH": str(PACKAGE.parent)}
    times: list[list[float]] = [[] for _ in commands]
    for _ in range(ROUNDS):
        for command, taken in zip(commands, times, strict=True):
            start = perf_counter()
            subprocess.run([sys.executable, *command], env=environment, capture_output=True, check=False)
            taken.append(perf_counter() - start)
    return [min(taken) for taken in times]


# -- what is proved --------------------------------------------------------------------------------


def _proof() -> Measured:
    stated, every_way = bench_sewing.measured()
    yield (
        f"a hundred statements in five sizes, every way and on paper ({every_way:.2f} s) : "
        f"one way, as stated ({stated:.2f} s)",
        every_way / stated,
    )


# -- what is bought ---------------------------------------------------------------------------------


def _kept_layouts(recipes: tuple[Path, ...], folder: Path) -> Measured:
    """All purchases of all sizes, laid out and as they were kept; and forty kits against one."""
    found, kept = (_bought(recipes, 1, folder / "layouts") for _ in range(2))
    yield "layouts as they were kept : laid out", kept / found
    yield "forty kits laid out together : one", _bought(recipes[:1], 40, None) / _bought(recipes[:1], 1, None)


def _bought(recipes: tuple[Path, ...], number: int, kept_in: Path | None) -> float:
    """The time that it takes to work out what so many of each size take, with nothing remembered."""
    proved = [prove(path, Workshop(kept_in=kept_in)) for path in recipes]
    laid.on_roll.cache_clear()
    laid.on_sheets.cache_clear()
    start = perf_counter()
    for each in proved:
        for size in each.sizes:
            size.buying.kits(number, optional=True)
    return perf_counter() - start


# -- what is compiled -------------------------------------------------------------------------------


def _enough(recipes: tuple[Path, ...]) -> tuple[Booklet, ...]:
    """The booklets of all sound recipes, again under other names until they hold twelve handouts."""
    proved = [prove(path) for path in recipes]
    sound = [booklet(each, PUBLISHER) for each in proved if each.sound]
    if not sound:
        raise SystemExit("bench: none of these recipes can be compiled")
    found: list[Booklet] = []
    while sum(len(each.handouts) for each in found) < HANDOUTS:
        again = f"-{len(found)}" if found else ""
        found += [_called(each, each.first.slug + again) for each in sound]
    return tuple(found)


def _called(of: Booklet, slug: str) -> Booklet:
    return Booklet(tuple(replace(handout, slug=slug) for handout in of.handouts))


def _print_both(handout: Handout, theme: Theme) -> None:
    from presscloth.printing.pdf import pdf

    pdf(handout, theme, PUBLISHER, PAPERS)


class Clock:
    """Adds up this process's time between starts and stops; one within another does not count twice."""

    def __init__(self) -> None:
        self.total = 0.0
        self._depth = 0
        self._started = 0.0

    def __enter__(self) -> None:
        if self._depth == 0:
            self._started = process_time()
        self._depth += 1

    def __exit__(self, *_: object) -> None:
        self._depth -= 1
        if self._depth == 0:
            self.total += process_time() - self._started


@contextmanager
def clocked(owner: object, name: str, clock: Clock) -> Iterator[None]:
    """For a while, let a clock run whenever a function is at work."""
    function: Callable[..., object] = getattr(owner, name)

    def timed(*arguments: object, **named: object) -> object:
        with clock:
            return function(*arguments, **named)

    setattr(owner, name, timed)
    try:
        yield
    finally:
        setattr(owner, name, function)


def _besides_layout(recipes: tuple[Path, ...], theme: Theme, folder: Path) -> Measured:
    """Everything from the file to the PDFs but WeasyPrint's own work, and the finisher in it is ours."""
    workshop = Workshop(kept_in=folder / "besides")
    for which in ("the first", "another"):
        share, handouts = _share_besides(recipes, theme, workshop)
        yield f"everything besides WeasyPrint : {which} compile, {handouts} handouts", share


def _share_besides(recipes: tuple[Path, ...], theme: Theme, workshop: Workshop) -> tuple[float, int]:
    import weasyprint

    from presscloth.printing import pdf

    layout, finisher, whole = Clock(), Clock(), Clock()
    handouts = 0
    with ExitStack() as clocks:
        for owner, name in (
            (weasyprint.HTML, "__init__"),
            (weasyprint.CSS, "__init__"),
            (weasyprint.HTML, "render"),
            (weasyprint.Document, "write_pdf"),
        ):
            clocks.enter_context(clocked(owner, name, layout))
        clocks.enter_context(clocked(pdf, "mend", finisher))
        while handouts < HANDOUTS:
            with whole:
                handouts += _compile(recipes, theme, workshop)
    return (whole.total - layout.total + finisher.total) / whole.total, handouts


def _compile(recipes: tuple[Path, ...], theme: Theme, workshop: Workshop) -> int:
    """Prove and print everything once, without writing; how many handouts that were."""
    printed = 0
    for path in recipes:
        proved = prove(path, workshop)
        if proved.sound:
            made = booklet(proved, PUBLISHER)
            html(made, theme, PUBLISHER, PAPERS)
            for handout in made.handouts:
                _print_both(handout, theme)
                printed += 1
    return printed


def _two_papers(handouts: Sequence[Handout], theme: Theme) -> Measured:
    from presscloth.printing.pdf import pdf

    together, apart = Clock(), Clock()
    for handout in handouts:
        with together:
            pdf(handout, theme, PUBLISHER, PAPERS)
        for paper in PAPERS:
            with apart:
                pdf(handout, theme, PUBLISHER, (paper,))
    yield f"two papers together : one after the other, {len(handouts)} handouts", together.total / apart.total


def _two_workers(booklets: tuple[Booklet, ...], folder: Path) -> Measured:
    from presscloth.publish.site import publish

    taken = []
    for workers in (1, 2):
        start = perf_counter()
        publish(booklets, (), PUBLISHER, folder / f"site-{workers}", workers=workers)
        taken.append(perf_counter() - start)
    yield "a compile with 1 worker : with 2", taken[0] / taken[1]
