"""The whole compiler on one page: the stages in order, and nothing else."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from presscloth.handout.build import WorkedOut, make_handout
from presscloth.handout.tree import Booklet, Publisher
from presscloth.printing.measures import SizeMeasures
from presscloth.problems import Problem, Problems, Severity
from presscloth.proof import accept, hold_recipe
from presscloth.proof.measured import of_pieces
from presscloth.proof.size import WorkedSize, work_out
from presscloth.recipe.load import RecipeNotFound, load
from presscloth.recipe.read import read
from presscloth.recipe.tree import Recipe
from presscloth.sewing.verbs import forms
from presscloth.source import Source

RECIPE = "recipe.md"


@dataclass(frozen=True)
class Proved:
    """One recipe, proved: what was read and worked out, and all that was found on the way.

    `recipe` is None when the file could not be read at all; `sizes` are those that could be worked
    out. `problems` are in the order in which they were found, one for each size and way.
    """

    slug: str
    path: Path
    recipe: Recipe | None
    sizes: tuple[WorkedSize, ...]
    problems: tuple[Problem, ...]

    @property
    def sound(self) -> bool:
        """Whether a handout may be written: there are no errors."""
        return all(problem.severity is not Severity.ERROR for problem in self.problems)


def find(paths: Sequence[Path]) -> tuple[Path, ...] | Problem:
    """The recipes that are asked for: folders or files; without any, all of `recipes/`."""
    if not paths:
        return tuple(sorted(Path("recipes").glob(f"*/{RECIPE}")))
    found: list[Path] = []
    for path in paths:
        if path.is_dir() and not (path / RECIPE).is_file():
            inside = sorted(path.glob(f"*/{RECIPE}"))
            if not inside:
                return _not_found(path, f"holds no {RECIPE}")
            found += inside
        elif path.is_dir():
            found.append(path / RECIPE)
        elif path.is_file():
            found.append(path)
        else:
            return _not_found(path, "is not there")
    return tuple(dict.fromkeys(found))


def _not_found(path: Path, why: str) -> Problem:
    place = Source(path.as_posix(), "").span(0, 0)
    return RecipeNotFound(span=place, path=path.as_posix(), why=why)


def slug_of(path: Path) -> str:
    """The short name of a recipe: that of its folder, or of its file where it has another name."""
    return path.resolve().parent.name if path.name == RECIPE else path.stem


def prove(path: Path) -> Proved:
    """Read a recipe, work out every size in both systems, and hold everything that can be held."""
    problems = Problems()
    source = load(path, problems)
    if source is None:
        return Proved(slug_of(path), path, None, (), problems.found())
    return prove_source(source, path, problems)


def prove_source(source: Source, path: Path, problems: Problems) -> Proved:
    """The same for a text that has been read already; `path` says where its pictures lie."""
    slug = slug_of(path)
    recipe = read(source, slug=slug, folder=path.parent, verbs=forms(), problems=problems)
    sizes = tuple(work_out(recipe, size, problems) for size in recipe.sizes)
    hold_recipe(recipe, sizes, problems)
    return Proved(slug, path, recipe, sizes, accept(problems.found(), recipe.front.accept))


def booklet(proved: Proved, publisher: Publisher) -> Booklet:
    """The handouts of a sound recipe, one for each size."""
    return Booklet(tuple(make_handout(_worked(size), publisher) for size in proved.sizes))


def measures(proved: Proved) -> tuple[SizeMeasures, ...]:
    """Every measure of every size, by name."""
    return tuple(
        SizeMeasures(size.edition.size.name, size.measures, frozenset(of_pieces(size.edition.pieces)))
        for size in proved.sizes
    )


def _worked(size: WorkedSize) -> WorkedOut:
    return WorkedOut(edition=size.edition, evaluator=size.evaluator, settled=size.settled)
