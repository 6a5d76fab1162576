"""What could not be read, so that whoever looks for it in vain can say why it is not there.

A row or an item with an error is left out, and everything that speaks of it would fail too. Those
later problems follow from the first one: their cause is the place that was left out.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Container, Iterator, Sequence

from presscloth.recipe.markdown import ListBlock, MarkdownBlock, TableBlock
from presscloth.source import Span


def cause(name: str, lost: Sequence[Span]) -> Span | None:
    """The place, among those left out, that speaks of a name."""
    word = re.compile(rf"(?<!\w){re.escape(name)}(?:e?s)?(?!\w)", re.IGNORECASE)
    return next((span for span in lost if word.search(span.text)), None)


def left_out(content: Sequence[MarkdownBlock], kept: Sequence[Span]) -> tuple[Span, ...]:
    """The rows and items of a section from which nothing was kept; the whole table where none was.

    What is neither a table nor a list is left out whole.
    """
    return tuple(span for block in content for span in _left_out(block, kept))


def columns_left_out(content: Sequence[MarkdownBlock], kept: Container[str]) -> tuple[Span, ...]:
    """The headings of the columns, but for the first, whose names were not kept."""
    return tuple(
        cell.span()
        for block in content
        if isinstance(block, TableBlock)
        for cell in block.head[1:]
        if " ".join(cell.text.split()) not in kept
    )


def _left_out(block: MarkdownBlock, kept: Sequence[Span]) -> Iterator[Span]:
    match block:
        case TableBlock(rows=rows, span=whole):
            parts = [row.span for row in rows]
        case ListBlock(items=items, span=whole):
            parts = [item.span for item in items]
        case _:
            yield block.span
            return
    starts = sorted(span.start for span in kept)
    missing = [part for part in parts if not _holds_one(part, starts)]
    if missing and len(missing) == len(parts):
        yield whole
    else:
        yield from missing


def _holds_one(part: Span, starts: Sequence[int]) -> bool:
    """Whether one of the places that begin at `starts`, which are sorted, lies in a row or an item."""
    first = bisect_left(starts, part.start)
    return first < len(starts) and starts[first] < part.end
