"""Prose: what the author wrote to be read, as a tree that any writer can print.

Blocks hold inline pieces; every node carries its span. There is no raw HTML in a recipe.
"""

from __future__ import annotations

from enum import Enum

from presscloth.frozen import dataclass
from presscloth.recipe.expression import Expression
from presscloth.source import Span


class How(Enum):
    """What may stand after the comma in `{expression, how}`."""

    ABOUT = "about"
    METRIC = "metric"
    IMPERIAL = "imperial"
    BOUGHT = "bought"


@dataclass(frozen=True, slots=True)
class Words:
    """Plain words; escapes and entities are already what they stand for."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Measure:
    """`{expression}` or `{expression, about}`: a measure to be printed, or a piece to be named."""

    expression: Expression
    how: tuple[How, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Emphasis:
    of: tuple[Inline, ...]
    strong: bool
    span: Span


@dataclass(frozen=True, slots=True)
class Code:
    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Link:
    to: str
    of: tuple[Inline, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Picture:
    """`![alt](file)`; `file` is the address as written, relative to the recipe's folder.

    `title` is what Markdown has in quotes behind the address, and is not printed.
    """

    file: str
    alt: tuple[Inline, ...]
    span: Span
    title: str = ""


@dataclass(frozen=True, slots=True)
class LineBreak:
    """The end of a line in the source; `hard` when the author asked for a new line."""

    hard: bool
    span: Span


Inline = Words | Measure | Emphasis | Code | Link | Picture | LineBreak


@dataclass(frozen=True, slots=True)
class Paragraph:
    of: tuple[Inline, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Heading:
    level: int
    of: tuple[Inline, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Listing:
    """A list; `start` is the first number of an ordered one, None for a list with bullets."""

    items: tuple[tuple[Block, ...], ...]
    start: int | None
    span: Span


@dataclass(frozen=True, slots=True)
class Quote:
    of: tuple[Block, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Verbatim:
    """A code block; `info` is the word after the fence."""

    text: str
    info: str
    span: Span


@dataclass(frozen=True, slots=True)
class Grid:
    """A table that is only read, not reckoned with: a head row and body rows of cells."""

    head: tuple[tuple[Inline, ...], ...]
    rows: tuple[tuple[tuple[Inline, ...], ...], ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Rule:
    span: Span


Block = Paragraph | Heading | Listing | Quote | Verbatim | Grid | Rule


def plain(inlines: tuple[Inline, ...]) -> str:
    """The words alone; a measure stands as it was typed."""
    return "".join(map(_plain, inlines))


def _plain(inline: Inline) -> str:
    match inline:
        case Words(text=text) | Code(text=text):
            return text
        case Measure(span=span):
            return span.text
        case Emphasis(of=of) | Link(of=of) | Picture(alt=of):
            return plain(of)
        case LineBreak():
            return " "
