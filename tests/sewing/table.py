"""A sewing table: pieces and statements in a few lines, carried out by the real reader and the real verbs."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from presscloth.dev import scaffold
from presscloth.edition import make_edition
from presscloth.measure import Quantity, System
from presscloth.problems import Problem, Problems
from presscloth.recipe.read import read
from presscloth.sewing import Construction, Sewn, hold_sizes, prove_sewing
from presscloth.sewing.proving import unasked
from presscloth.sewing.verbs import forms
from presscloth.source import Source

HEAD = "| Piece | From | Cut | Width | Height |"

MATERIALS = """\
| Key | Material      | Form    | Width          | Sold by        | Notes   |
|-----|---------------|---------|----------------|----------------|---------|
| A   | Cotton fabric | fabric  | 150 cm (59 in) | 10 cm (1/8 yd) |         |
| B   | Canvas fabric | fabric  | 150 cm (59 in) | 10 cm (1/8 yd) | one way |
| C   | Cord          | tape    |                | 10 cm (1/8 yd) |         |
| D   | Elastic       | elastic |                | 10 cm (1/8 yd) |         |
| E   | Zip           | zip     |                | 5 cm (2 in)    |         |
| F   | Button        | notion  |                | 1              |         |
| G   | Filling       | filling |                | 50 g (2 oz)    |         |
"""


@dataclass(frozen=True)
class Table:
    """What came of it: every size, and all that was found, each problem once."""

    sizes: tuple[Sewn, ...]
    problems: tuple[Problem, ...]

    @property
    def made(self) -> Construction:
        return self.sizes[0].fullest

    @property
    def names(self) -> list[str]:
        return [problem.slug() for problem in self.problems]

    @property
    def first(self) -> Problem:
        return self.problems[0]

    def quantity(self, what: str, step: int | None = None) -> Quantity:
        """`width of row`, `finished height of bag`, as it stood after a step or in the end."""
        part, _, name = what.partition(" of ")
        finished = part.startswith("finished ")
        found = self.made.part(name, part.removeprefix("finished "), finished=finished, step=step)
        assert found is not None, f"there is no {what}"
        return found

    def mm(self, what: str, step: int | None = None) -> Fraction:
        return self.quantity(what, step)[System.METRIC]

    def inches(self, what: str, step: int | None = None) -> Fraction:
        return self.quantity(what, step)[System.IMPERIAL]


def sew(pieces: str, statements: str, *, measures: str = "", columns: str = "", rest: str = "") -> Table:
    """Sew pieces (`name | key | cut | width | height` on a line) by statements, one step each.

    A line of statements that begins with a lead word (`Optional:`, `Or:`) gives it to its step. `columns`
    are further columns of Pieces, `rest` other sections and front matter.
    """
    rows = [line.strip() for line in pieces.strip().splitlines()]
    head = HEAD + columns
    table = [head, "|" + "---|" * (head.count("|") - 1), *(f"| {row} |" for row in rows)]
    steps = "\n\n".join(_step(i, line.strip()) for i, line in enumerate(statements.strip().splitlines(), 1))
    sections = [rest] if rest else []
    if measures:
        listed = "\n".join(f"- {line.strip()}" for line in measures.strip().splitlines())
        sections.append(f"## Measures\n{listed}")
    if "## Materials" not in rest:
        sections.append(f"## Materials\n{MATERIALS}")
    sections += ["## Pieces\n" + "\n".join(table), f"## Steps\n{steps}"]
    return sew_recipe(scaffold.complete("\n\n".join(sections)))


def _step(number: int, line: str) -> str:
    lead, colon, statement = line.partition(": ")
    if not colon or " = " in lead:
        lead, statement = "", line
    words = f"{lead}: so." if lead else "So."
    return f"{number}. {words}\n\n   ```sew\n   {statement}\n   ```"


def sew_recipe(text: str) -> Table:
    """Sew a whole recipe, every size of it."""
    problems = Problems()
    recipe = read(Source("recipe.md", text), slug="recipe", folder=None, verbs=forms(), problems=problems)
    made: list[Sewn] = []
    for size in recipe.sizes:
        made.append(prove_sewing(make_edition(recipe, size, problems, unasked)))
        problems.extend(made[-1].problems)
    problems.extend(list(hold_sizes(made)))
    unused = {"key-not-used", "material-not-used"}
    return Table(tuple(made), tuple(p for p in dict.fromkeys(problems.found()) if p.slug() not in unused))
