"""The pictures of a handout, in the order of the page."""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.drawing.tree import Drawing
from presscloth.handout.tree import (
    Block,
    Emphasis,
    Figure,
    Grid,
    Handout,
    Heading,
    Image,
    Inline,
    Link,
    Listing,
    Paragraph,
    Quote,
)


def pictures_of(handout: Handout) -> tuple[Image, ...]:
    """Every picture that a handout shows, once, in the order of the page."""
    found = [*_in_blocks(handout.intro)]
    for notes in (line.notes for lines in (handout.materials, handout.cutting) for line in lines):
        for note in notes:
            found += _in_words(note)
    for tool in handout.tools:
        found += _in_words(tool)
    found += _in_blocks(handout.pieces)
    for stage in handout.stages:
        found += _in_words(stage.title)
        for step in stage.steps:
            found += _in_blocks(step.content)
    for section in handout.notes:
        found += [*_in_words(section.title), *_in_blocks(section.content)]
    return tuple(dict.fromkeys(found))


def _in_blocks(blocks: tuple[Block, ...]) -> Iterator[Image]:
    for block in blocks:
        match block:
            case Paragraph(of) | Heading(of=of):
                yield from _in_words(of)
            case Listing(items):
                for item in items:
                    yield from _in_blocks(item)
            case Quote(of=inside):
                yield from _in_blocks(inside)
            case Grid(head, rows):
                for row in (head, *rows):
                    for cell in row:
                        yield from _in_words(cell)
            case Figure(of=shown, caption=caption):
                if not isinstance(shown, Drawing):
                    yield shown
                yield from _in_words(caption)
            case _:
                pass


def _in_words(words: tuple[Inline, ...]) -> Iterator[Image]:
    for word in words:
        match word:
            case Image():
                yield word
            case Emphasis(of) | Link(of=of):
                yield from _in_words(of)
            case _:
                pass
