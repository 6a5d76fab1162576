"""The pictures of a handout, and which of them may be printed."""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path

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

LARGEST_FILE = 30_000_000  # bytes
LARGEST_PICTURE = 60_000_000  # pixels: a small file may unpack to gigabytes
KINDS = ("JPEG", "PNG", "WEBP", "GIF")


def read_picture(file: Path) -> tuple[bytes, str]:
    """The bytes of a picture and why it cannot be printed (empty when it can)."""
    from PIL import Image as Pictures

    try:
        if file.stat().st_size > LARGEST_FILE:
            return b"", f"is larger than {LARGEST_FILE // 1_000_000} MB"
        content = file.read_bytes()
        with Pictures.open(io.BytesIO(content), formats=KINDS) as picture:
            width, height = picture.size
    except (OSError, Pictures.DecompressionBombError) as error:
        return b"", f"cannot be read ({type(error).__name__})"
    if width * height > LARGEST_PICTURE:
        return b"", f"has more than {LARGEST_PICTURE // 1_000_000} million points"
    return content, ""


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
