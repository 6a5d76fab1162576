"""Words of a handout as bare text, for what is read by machines: search, and data about a page."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from presscloth.handout.tree import (
    Amount,
    Block,
    Code,
    Divider,
    Emphasis,
    Figure,
    Foreign,
    Grid,
    Heading,
    Image,
    Inline,
    Link,
    Listing,
    NewLine,
    Paragraph,
    Quote,
    Text,
    Verbatim,
)


def plain(words: Iterable[Inline], *, measures: bool = True) -> str:
    """The words on one line, without pictures; without `measures` a space stands for each measure."""
    return " ".join("".join(_word(word, measures) for word in words).split())


def plain_blocks(blocks: Iterable[Block], *, measures: bool = True) -> Iterator[str]:
    """The words of each paragraph, heading, item and row, in order; drawings and pictures say nothing."""
    for block in blocks:
        match block:
            case Paragraph(of=words) | Heading(of=words):
                yield plain(words, measures=measures)
            case Listing(items=items):
                for item in items:
                    yield from plain_blocks(item, measures=measures)
            case Quote(of=inside):
                yield from plain_blocks(inside, measures=measures)
            case Verbatim(text=text):
                yield " ".join(text.split())
            case Grid(head=head, rows=rows):
                for row in (head, *rows):
                    yield ", ".join(plain(cell, measures=measures) for cell in row)
            case Figure() | Divider():
                pass


def _word(word: Inline, measures: bool) -> str:
    match word:
        case Text(text=text) | Code(text=text):
            return text
        case Amount():
            return word.text if measures else " "
        case Emphasis(of=of) | Link(of=of) | Foreign(of=of):
            return "".join(_word(each, measures) for each in of)
        case Image():
            return ""
        case NewLine():
            return " "
