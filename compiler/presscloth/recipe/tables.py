"""Tables that are reckoned with: rows whose cells are found by the names of their columns."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from presscloth.frozen import dataclass
from presscloth.problems import Problem, Problems
from presscloth.recipe.markdown import TableBlock
from presscloth.recipe.words import nearest
from presscloth.source import Passage, Span


class ColumnMissing(Problem):
    """A table lacks a column that it cannot do without.

    Fails:

        ## Pieces
        | Piece | From | Width         | Height        |
        |-------|------|---------------|---------------|
        | cloth | A    | 30 cm (12 in) | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    table: str
    column: str

    def message(self) -> str:
        return f"the table under {self.table} has no column `{self.column}`"

    def hint(self) -> str:
        return f"add a column with the heading `{self.column}`"


class ColumnUnknown(Problem):
    """A table has a column that means nothing here.

    What stands in it would be left out of every handout. Correct the heading or take the column out.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Hight         |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    table: str
    column: str
    meant: str | None
    known: tuple[str, ...]

    def message(self) -> str:
        return f"`{self.column}` is no column of {self.table}"

    def hint(self) -> str:
        return f"write `{self.meant}`" if self.meant else f"the columns are {', '.join(self.known)}"


class TableInTwo(Problem):
    """An empty line ends a table, and rows below it belong to none.

    Markdown shows such rows as plain text, and nothing in them would be cut or bought.

    Fails:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        | pocket | A    | 1   | 15 cm (6 in)  | 15 cm (6 in)  |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    section: str

    def message(self) -> str:
        return f"an empty line ends the table under {self.section}, and these rows belong to none"

    def hint(self) -> str:
        return "take the empty line above them out"


class CellMissing(Problem):
    """A row has fewer cells than its table has columns.

    One forgotten stroke moves every later cell of the row one column to the left, and a height is
    cut as a width.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    found: int
    wanted: int

    def message(self) -> str:
        cells = "1 cell" if self.found == 1 else f"{self.found} cells"
        return f"this row has {cells}, and the table has {self.wanted} columns"

    def hint(self) -> str:
        return "put a `|` between all cells; leave a cell empty rather than out"


class CellLeftOver(Problem):
    """A row has more cells than its table has columns.

    What stands in the last cells would be lost. A `|` inside a cell is written `\\|`.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) | any grain |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Notes     |
        |-------|------|-----|---------------|---------------|-----------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) | any grain |
    """

    found: int
    wanted: int

    def message(self) -> str:
        return f"this row has {self.found} cells, and the table has only {self.wanted} columns"

    def hint(self) -> str:
        return "add the column, or take the cell out; a `|` inside a cell is written `\\|`"


class CellEmpty(Problem):
    """A cell is empty in which something must stand.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    |     | 30 cm (12 in) | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    column: str
    row: str

    def message(self) -> str:
        return f"the cell `{self.column}` of `{self.row}` is empty"

    def hint(self) -> str:
        if self.column == "Cut":
            return f"write how many of `{self.row}` are cut from each material"
        if self.column == "From":
            return f"write the letter of the material that `{self.row}` is cut from"
        return f"write the {self.column.lower()} of `{self.row}`"


@dataclass(frozen=True, slots=True)
class Row:
    """A row with its cells by column heading; a column that the table does not have is absent."""

    cells: Mapping[str, Passage]
    span: Span

    def text(self, column: str) -> str:
        cell = self.cells.get(column)
        return "" if cell is None else cell.text

    def place(self, column: str) -> Span:
        """Where a cell stands or would stand; the whole row where there is no such column."""
        cell = self.cells.get(column)
        return self.span if cell is None else cell.span()


def read_rows(
    table: TableBlock,
    name: str,
    needed: Sequence[str],
    optional: Sequence[str],
    problems: Problems,
) -> tuple[Row, ...]:
    """The rows of a table whose headings are `needed` and `optional`; rows that do not fit are reported."""
    columns = _columns(table, name, needed, optional, problems)
    if columns is None:
        return ()
    found = []
    for row in table.rows:
        cells = whole_row(row.cells, len(table.head), row.span, problems)
        if cells is not None:
            by_column = {column: cell for column, cell in zip(columns, cells, strict=True) if column}
            found.append(Row(by_column, row.span))
    return tuple(found)


def _columns(
    table: TableBlock, name: str, needed: Sequence[str], optional: Sequence[str], problems: Problems
) -> tuple[str | None, ...] | None:
    known = {column.casefold(): column for column in (*needed, *optional)}
    columns: list[str | None] = []
    for cell in table.head:
        column = known.get(cell.text.strip().casefold())
        if column is None:
            meant = nearest(cell.text.strip(), known.values())
            place = cell.span() if cell.text.strip() else table.span
            problems.add(
                ColumnUnknown(
                    span=place, table=name, column=cell.text.strip(), meant=meant, known=tuple(known.values())
                )
            )
            columns.append(meant)
        else:
            columns.append(column)
    complete = True
    for column in needed:
        if column not in columns:
            span = table.head[0].span().to(table.head[-1].span())
            problems.add(ColumnMissing(span=span, table=name, column=column))
            complete = False
    return tuple(columns) if complete else None


def whole_row(
    cells: tuple[Passage, ...], wanted: int, span: Span, problems: Problems
) -> tuple[Passage, ...] | None:
    """The cells of a row that has as many as the table has columns."""
    if len(cells) < wanted:
        problems.add(CellMissing(span=span, found=len(cells), wanted=wanted))
        return None
    if len(cells) > wanted:
        problems.add(CellLeftOver(span=span, found=len(cells), wanted=wanted))
        return None
    return cells


def needed_cell(row: Row, column: str, of: str, problems: Problems) -> Passage | None:
    """A cell that must not be empty."""
    cell = row.cells[column]
    if cell.text.strip():
        return cell
    problems.add(CellEmpty(span=cell.span(), column=column, row=of))
    return None
