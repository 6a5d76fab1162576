"""The table of sizes: what each is called, and the measures that differ by size."""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.problems import Problem, Problems
from presscloth.recipe.definitions import NameNotAllowed, measured
from presscloth.recipe.expression import Broken, Name
from presscloth.recipe.lost import cause
from presscloth.recipe.sections import SectionBlocks, the_table
from presscloth.recipe.tables import CellEmpty, whole_row
from presscloth.recipe.tree import Definition, Size
from presscloth.recipe.words import look_up, nearest, why_no_name
from presscloth.source import Passage, Span

ONE_SIZE = "One size"


class SizeNamedTwice(Problem):
    """Two rows of Sizes have the same name.

    Fails:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Small | 40 cm (16 in) |

    Passes:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Large | 40 cm (16 in) |
    """

    size: str

    def message(self) -> str:
        return f"the size `{self.size}` is listed twice"

    def hint(self) -> str:
        return "give one of the two another name, or take it out"


class SizeUnknown(Problem):
    """A size is named that Sizes does not list.

    A step for a size that does not exist would be printed on no handout.

    Fails:

        ## Steps
        1. Huge only: Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. One size only: Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    size: str
    known: tuple[str, ...]

    def message(self) -> str:
        return f"there is no size `{self.size}`"

    def hint(self) -> str:
        if self.known == (ONE_SIZE,):
            return "list it in `## Sizes`, or take it away: a recipe without Sizes has one size"
        meant = nearest(self.size, self.known)
        return f"write `{meant}`" if meant else f"the sizes are {', '.join(self.known)}"


class SizeWithoutValue(Problem):
    """A size has no value for a measure.

    Every size needs one. Where the measure does not exist in a size, a dash says so.

    Fails:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Large |               |

    Passes:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Large | 40 cm (16 in) |
    """

    size: str
    measure: str

    def message(self) -> str:
        return f"the size `{self.size}` has no value for `{self.measure}`"

    def hint(self) -> str:
        return "write the measure, or a dash `–` where it does not exist in this size"


class NoSizes(Problem):
    """The table under Sizes has no row, or its first column is not called Size.

    Fails:

        ## Sizes
        | Size  | side |
        |-------|------|

    Passes:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
    """

    def message(self) -> str:
        return "the table under Sizes lists no size"

    def hint(self) -> str:
        return "give it a first column `Size` and one row for each size; a recipe in one size needs no Sizes"


def read_sizes(section: SectionBlocks | None, place: Span, problems: Problems) -> tuple[Size, ...]:
    """The sizes with their measures; a recipe without Sizes has one, called `One size`."""
    table = the_table(section, "Sizes", problems)
    if table is None:
        return (Size(ONE_SIZE, {}, place),)
    if not table.head or table.head[0].text.strip().casefold() != "size" or not table.rows:
        problems.add(NoSizes(span=table.span))
        return (Size(ONE_SIZE, {}, place),)
    columns = [_column(cell, problems) for cell in table.head[1:]]
    sizes: dict[str, Size] = {}
    for row in table.rows:
        cells = whole_row(row.cells, len(table.head), row.span, problems)
        if cells is None:
            continue
        name = " ".join(cells[0].text.split())
        if look_up(name, sizes) is not None:
            problems.add(SizeNamedTwice(span=cells[0].span(), size=name))
            continue
        if not name:
            problems.add(CellEmpty(span=cells[0].span(), column="Size", row="this row"))
            continue
        measures = {
            column.text: _value(column, cell, name, problems)
            for column, cell in zip(columns, cells[1:], strict=True)
            if column is not None
        }
        sizes[name] = Size(name, measures, cells[0].span())
    return tuple(sizes.values()) or (Size(ONE_SIZE, {}, place),)


def _column(cell: Passage, problems: Problems) -> Name | None:
    name = Name(" ".join(cell.text.split()), cell.span())
    why = why_no_name(name.text) if name.text else "it is empty"
    if why is not None:
        problems.add(NameNotAllowed(span=name.span, name=name.text, why=why))
        return None
    return name


def _value(column: Name, cell: Passage, size: str, problems: Problems) -> Definition | None:
    text = cell.text.strip()
    if text in ("–", "-", "—"):
        return None
    if not text:
        problems.add(SizeWithoutValue(span=cell.span(), size=size, measure=column.text))
        return Definition(column, Broken(cell.span()), about=False, choice=None, note=(), span=cell.span())
    return measured(column, cell, (), cell.span(), problems)


def hold_sizes(
    named: Sequence[Name], sizes: Sequence[Size], lost: Sequence[Span], problems: Problems
) -> None:
    """Report names of sizes that Sizes does not list."""
    known = tuple(size.name for size in sizes)
    for name in named:
        if not any(name.text.casefold() == size.casefold() for size in known):
            because = cause(name.text, lost)
            problems.add(SizeUnknown(span=name.span, size=name.text, known=known, cause=because))
