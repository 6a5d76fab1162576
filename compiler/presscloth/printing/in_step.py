"""How the words and the drawings of a step stand on paper: beside each other, or one below the other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil

from presscloth.drawing.tree import Drawing
from presscloth.handout.tree import Block, Figure
from presscloth.printing.look import Look
from presscloth.printing.svg import scale_of

CAPTION = 8.0
"""mm that a caption and the space around a drawing take."""

BETWEEN = 6.0
"""mm between two drawings in a row, and from the words to a drawing beside them."""

MOST_BESIDE = 160.0
"""mm: a step that is higher is not kept on one page, so its drawings do not stand beside its words."""

LINE = 5.3
NARROW_LINE, WIDE_LINE = 50, 80
"""mm from line to line, and about how many letters a line has beside a drawing and above one."""

MOST_KEPT = 55.0
"""mm: drawings that are higher together may begin a page without their words, which would be half empty."""


def parted(content: tuple[Block, ...]) -> tuple[tuple[Block, ...], tuple[Figure, ...]]:
    """The words of a step, with photographs that stand among them, and the drawings at its end."""
    first = len(content)
    while first and _is_drawing(content[first - 1]):
        first -= 1
    return content[:first], tuple(block for block in content[first:] if isinstance(block, Figure))


def kind_of(words: Sequence[Block], drawings: Sequence[Figure], look: Look, letters: int) -> str:
    """How the drawings of a step stand to its words, which have so many letters.

    `beside` them; `kept` below them, on the same page; `drawn` below them, or at the head of the next
    page; nothing without drawings. They stand beside where that takes less paper.
    """
    if any(isinstance(block, Figure) for block in words):
        return "drawn"
    if not drawings:
        return ""
    sizes = [*_sizes(drawings, look)]
    in_rows = sum(_rows(sizes, look.drawings.in_text))
    if words and all(width <= look.drawings.beside for width, _ in sizes):
        beside = max(LINE * ceil(letters / NARROW_LINE), sum(height for _, height in sizes))
        if beside <= min(MOST_BESIDE, LINE * ceil(letters / WIDE_LINE) + in_rows):
            return "beside"
    return "kept" if in_rows <= MOST_KEPT else "drawn"


def _is_drawing(block: Block) -> bool:
    return isinstance(block, Figure) and isinstance(block.of, Drawing)


def _sizes(drawings: Sequence[Figure], look: Look) -> Iterator[tuple[float, float]]:
    """How wide and how high each is on paper, in mm, its caption included."""
    for figure in drawings:
        if isinstance(figure.of, Drawing):
            scale = scale_of(figure.of, look, look.drawings.in_text)
            yield figure.of.width * scale, figure.of.height * scale + CAPTION


def _rows(sizes: Sequence[tuple[float, float]], room: float) -> Iterator[float]:
    """The heights of the rows in which drawings stand below their step."""
    left, high = room, 0.0
    for width, height in sizes:
        if high and width > left:
            yield high
            left, high = room, 0.0
        left, high = left - width - BETWEEN, max(high, height)
    yield high
