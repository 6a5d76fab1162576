"""Blocks: what stands in a Markdown text, each with its exact place.

Text is a `Passage`, in which every character knows where it was typed, whatever stood between: the
`>` of a quote, the indent of an item, the backslash of a `\\|` in a cell.
"""

from __future__ import annotations

from collections.abc import Mapping

from presscloth.frozen import dataclass
from presscloth.problems import Problem
from presscloth.source import Passage, Span

DEEPEST = 20
"""How deep quotes, lists and brackets may stand in one another; a list takes two."""


@dataclass(frozen=True, slots=True)
class HeadingBlock:
    level: int
    text: Passage
    span: Span


@dataclass(frozen=True, slots=True)
class ParagraphBlock:
    text: Passage
    span: Span


@dataclass(frozen=True, slots=True)
class ItemBlock:
    content: tuple[MarkdownBlock, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class ListBlock:
    """A list; `start` is the first number of an ordered one, None for a list with bullets."""

    start: int | None
    items: tuple[ItemBlock, ...]
    span: Span

    @property
    def ordered(self) -> bool:
        return self.start is not None


@dataclass(frozen=True, slots=True)
class QuoteBlock:
    content: tuple[MarkdownBlock, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class FenceBlock:
    """What stands between two fences; `info` is what follows the first one."""

    info: str
    text: Passage
    span: Span


@dataclass(frozen=True, slots=True)
class CodeBlock:
    """Lines that are indented by four spaces; the indent is not part of the text."""

    text: Passage
    span: Span


@dataclass(frozen=True, slots=True)
class RowBlock:
    """A row with the cells that the author typed, which may be fewer or more than the head has."""

    cells: tuple[Passage, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class TableBlock:
    head: tuple[Passage, ...]
    rows: tuple[RowBlock, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class RuleBlock:
    span: Span


MarkdownBlock = (
    HeadingBlock | ParagraphBlock | ListBlock | QuoteBlock | FenceBlock | CodeBlock | TableBlock | RuleBlock
)


@dataclass(frozen=True, slots=True)
class Body:
    """A whole text: its blocks, and the addresses of `[label]: address` lines by normalised label."""

    blocks: tuple[MarkdownBlock, ...]
    references: Mapping[str, str]


class NestedTooDeep(Problem):
    """Quotes, lists, brackets or stars stand too deep inside one another.

    No reader at the sewing table follows ten lists inside one another, and what stands deeper than
    that is not read and would be missing from the handout. Write the inner ones one after the other.

    Fails:

        ## Notes

        > > > > > > > > > > > > > > > > > > > > > Press the seam open.

    Passes:

        ## Notes

        > Press the seam open.
    """

    def message(self) -> str:
        return f"what begins here stands more than {DEEPEST} levels deep inside other things"

    def hint(self) -> str:
        return "take some of the `>`, indents, brackets or stars around it away"


class FenceNotClosed(Problem):
    """A block that begins with three backticks has no end.

    Everything below belongs to the block: later steps and sections are lost without a trace. Put
    three backticks, indented like the first ones, on a line of their own where the block ends.

    Fails:

        ## Notes

        ```
        Press the seam open.

    Passes:

        ## Notes

        ```
        Press the seam open.
        ```
    """

    def message(self) -> str:
        return "the block that begins here is never closed"

    def hint(self) -> str:
        return "close it with the same signs on a line of their own, indented like the first ones"
