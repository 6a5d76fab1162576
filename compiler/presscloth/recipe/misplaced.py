"""Tables that are known by their columns, and stand where the heading of their section was forgotten."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from presscloth.problems import Problem
from presscloth.recipe.markdown import MarkdownBlock, TableBlock
from presscloth.recipe.sections import SectionBlocks

BEGINS: Mapping[str, tuple[str, ...]] = {
    "Sizes": ("Size",),
    "Materials": ("Key", "Material"),
    "Pieces": ("Piece", "From"),
}
"""The first headings of the columns by which a table is known without the heading above it."""


class TableWithoutHeading(Problem):
    """A table of sizes, materials or pieces stands where the heading of its section is missing.

    The compiler knows it by the section in which it stands, and everything that it names would be
    unknown.

    Fails:

        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |

    Passes:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
    """

    section: str

    def message(self) -> str:
        return f"this looks like the table of {self.section}, and no heading above it says so"

    def hint(self) -> str:
        return f"write `## {self.section}` on a line above it"


def without_heading(
    intro: Sequence[MarkdownBlock], known: Mapping[str, SectionBlocks]
) -> Iterator[TableWithoutHeading]:
    """The tables that can only belong to a section that the recipe lacks.

    They stand before the first section, or under another section that is reckoned with. In a section
    of remarks a table may begin as it likes.
    """
    for block in (*intro, *(block for section in known.values() for block in section.content)):
        for name, begins in BEGINS.items():
            if name not in known and isinstance(block, TableBlock) and _begins(block, begins):
                yield TableWithoutHeading(span=block.span, section=name)


def apart_from(
    blocks: Sequence[MarkdownBlock], misplaced: Sequence[TableWithoutHeading]
) -> tuple[MarkdownBlock, ...]:
    """The blocks that are not such tables."""
    spans = [problem.span for problem in misplaced]
    return tuple(block for block in blocks if block.span not in spans)


def sections_apart_from(
    known: Mapping[str, SectionBlocks], misplaced: Sequence[TableWithoutHeading]
) -> Mapping[str, SectionBlocks]:
    """The sections without such tables."""
    return {
        name: replace(section, content=apart_from(section.content, misplaced))
        for name, section in known.items()
    }


def _begins(table: TableBlock, words: tuple[str, ...]) -> bool:
    head = [" ".join(cell.text.split()).casefold() for cell in table.head]
    return head[: len(words)] == [word.casefold() for word in words]
