"""Speed, as ratios measured in one run: times of one machine say nothing about another."""

from __future__ import annotations

import gc
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from time import perf_counter, process_time

from presscloth.cli import COLLECTED
from presscloth.cutting import laid
from presscloth.cutting.workshop import Workshop
from presscloth.dev import bench_sewing, scaffold
from presscloth.dev.bench_compile import compiled
from presscloth.dev.clocks import Clock
from presscloth.handout.tree import Booklet, Handout, Publisher
from presscloth.pipeline import booklet, prove
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
    yield from _processes(recipes)
    yield from _proof()
    yield from _kept_layouts(recipes, folder)
    theme = open_theme(PUBLISHER.theme)
    booklets = _enough(recipes)
    handouts = [handout for each in booklets for handout in each.handouts]
    _print_both(handouts[0], theme)  # what is imported and read once is not measured
    yield from _besides(recipes, folder / "compiled")
    yield from _two_papers(handouts, theme)
    yield from _two_workers(booklets, folder)


# -- whole processes --------------------------------------------------------------------------------


def _processes(recipes: tuple[Path, ...]) -> Measured:
    checks = [("-m", "presscloth", "check", str(recipe)) for recipe in recipes]
    bare, helped, *checked = _fastest(("-c", "pass"), ("-m", "presscloth", "--help"), *checks)
    yield f"presscloth --help : bare Python, best of {ROUNDS} whole processes", helped / bare
    for recipe, taken in zip(recipes, checked, strict=True):
        what = f"presscloth check {recipe.parent.name} ({taken:.2f} s) : bare Python ({bare:.3f} s)"
        yield what, taken / bare


def _fastest(*commands: tuple[str, ...]) -> list[float]:
    """The fastest run of each, all taken in turns, so that a busy moment does not fall on one alone."""
    environment = {**os.environ, "PYTHONPATH": str(PACKAGE.parent)}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)  # nobody compiles a program anew each time
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
    kept_in = folder / "layouts"
    for recipe in recipes:
        laid_out = _bought(recipe, 1, kept_in)
        kept = min(_bought(recipe, 1, kept_in) for _ in range(ROUNDS))
        name = f"all layouts of {recipe.parent.name}, best of {ROUNDS}"
        yield f"{name}: as they were kept ({1000 * kept:.0f} ms) : laid out", kept / laid_out
    yield "forty kits laid out together : one", _bought(recipes[0], 40, None) / _bought(recipes[0], 1, None)


def _bought(recipe: Path, number: int, kept_in: Path | None) -> float:
    """The processor's time to work out what so many of each size take, with nothing remembered."""
    proved = prove(recipe, Workshop(kept_in=kept_in))
    laid.on_roll.cache_clear()
    laid.on_sheets.cache_clear()
    start = process_time()
    for size in proved.sizes:
        size.buying.kits(number, optional=True)
    return process_time() - start


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


def _besides(recipes: tuple[Path, ...], folder: Path) -> Measured:
    """Whole compiles, the first one laying everything out, the second with layouts that were kept."""
    for which in ("the first", "another"):
        shares = compiled(recipes, folder, HANDOUTS)
        made = f"{which} compile, {shares.handouts} handouts, {shares.files} files"
        yield f"everything besides WeasyPrint : {made}", shares.besides
        without = shares.besides + shares.collecting
        yield "  the same, were collecting the boxes that WeasyPrint leaves not its own work", without
        yield "  of it reading and proving", shares.proving
        yield "  of it laying out, wording, drawing, following what the reader may choose", shares.wording


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
