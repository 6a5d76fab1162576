"""Dimension lines and names in drawings."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from presscloth.drawing.reals import greater, letters
from presscloth.drawing.tree import Ink, Lettering, Line, Shape
from presscloth.measure import Quantity, System, printed
from presscloth.tongue import measured

LETTERS = 2.9
"""Height of lettering in mm; what is printed smaller than that is not read at arm's length."""

TICK = 1.2
"""How far the ticks at the ends of a dimension reach to both sides, in mm."""

LEADING = 3.6
"""From one line of words to the next, in mm."""

BREADTH = 0.52
"""Breadth of an average letter, as a part of its height."""


def both(quantity: Quantity, systems: Sequence[System]) -> str:
    """`30 cm (11 3/4 in)`"""
    first, *others = (measured(printed(quantity, system).text) for system in systems)
    return " ".join([first, *(f"({other})" for other in others)])


def breadth(words: str) -> float:
    return letters(words) * LETTERS * BREADTH


def breadth_aside(words: str) -> float:
    """How far the words of an upright dimension reach, each system on a line of its own."""
    return greater(*(breadth(line) for line in _lines(words)))


def _lines(words: str) -> tuple[str, ...]:
    """The words of `both`, system by system."""
    first, *others = words.split(" (")
    return first, *(f"({other}" for other in others)


def across(left: float, right: float, y: float, words: str) -> Iterator[Shape]:
    """A dimension from left to right at `y`, its words below, none of them left of the drawing.

    It is one run, ticks included, and has no heads: an arrow in a drawing is always the grain, or a move.
    """
    over, under = y - TICK, y + TICK
    run = ((left, over), (left, under), (left, y), (right, y), (right, over), (right, under))
    yield Line(run, Ink.DIMENSION)
    middle = greater((left + right) / 2, breadth(words) / 2 + 0.5)
    yield Lettering(middle, y + LETTERS + 1.0, words, LETTERS)


def down(top: float, bottom: float, x: float, words: str) -> Iterator[Shape]:
    """A dimension from top to bottom at `x`, its words to the right of it, each system on a line."""
    near, far = x - TICK, x + TICK
    run = ((near, top), (far, top), (x, top), (x, bottom), (near, bottom), (far, bottom))
    yield Line(run, Ink.DIMENSION)
    lines = _lines(words)
    for number, line in enumerate(lines):
        y = (top + bottom) / 2 + LETTERS / 3 + (number - (len(lines) - 1) / 2) * LEADING
        yield Lettering(x + 1.5, y, line, LETTERS, anchor="start")


def name_in(words: str, mark: str, x: float, y: float, width: float, height: float) -> tuple[Shape, bool]:
    """The name of what lies in a box, level or upright as it fits; else its mark. True: the name is there."""
    middle = (x + width / 2, y + height / 2)
    if breadth(words) + 1 <= width and height >= LETTERS + 1:
        return Lettering(middle[0], middle[1] + LETTERS / 3, words, LETTERS), True
    if breadth(words) + 1 <= height and width >= LETTERS + 1:
        return Lettering(middle[0] + LETTERS / 3, middle[1], words, LETTERS, turned=-90.0), True
    return Lettering(middle[0], middle[1] + LETTERS / 3, mark, LETTERS, bold=True), False
