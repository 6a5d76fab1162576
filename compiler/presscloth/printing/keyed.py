"""A drawing whose words would be too small to read: letters in it, and a list of what they stand for.

Large print enlarges words in a drawing, not only the drawing; a measure would no longer fit beside its
line, but a letter does, and the measure stands below in the size of the text.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import count
from string import ascii_lowercase

from presscloth.drawing.tree import Drawing, Lettering, Shape
from presscloth.printing.look import Look
from presscloth.printing.svg import scale_of

SHORT = 2  # so many signs fit wherever a letter does: the numbers of pieces

Keys = tuple[tuple[str, str], ...]
"""Letters, each with the words that it stands for, in the order in which they are met."""


def keyed(drawing: Drawing, look: Look, widest: float) -> tuple[Drawing, Keys]:
    """The drawing with words of at least the look's least size on paper, and its list of letters.

    A drawing whose words are large enough as it is printed (`widest` in mm) stays as it is.
    """
    least = look.lettering.least / scale_of(drawing, look, widest)
    if all(shape.size >= least for shape in drawing.shapes if isinstance(shape, Lettering)):
        return drawing, ()
    drawing = replace(drawing, shapes=tuple(_in_one_line(drawing.shapes)))
    letters, held = _letters(), dict[str, str]()

    def enlarged(shape: Shape) -> Shape:
        if not isinstance(shape, Lettering):
            return shape
        if len(shape.text) > SHORT and shape.text not in held:
            held[shape.text] = next(letters)
        return replace(
            shape, text=held.get(shape.text, shape.text), size=max(shape.size, least), turned=0.0, bold=True
        )

    shapes = tuple(map(enlarged, drawing.shapes))
    return replace(drawing, shapes=shapes), tuple((letter, words) for words, letter in held.items())


def _in_one_line(shapes: Sequence[Shape]) -> Iterator[Shape]:
    """A measure whose second system stands below the first, in brackets, is one measure with one letter."""
    first: Lettering | None = None
    for shape in shapes:
        if first is not None and isinstance(shape, Lettering) and _is_below(shape, first):
            yield replace(first, text=f"{first.text} {shape.text}")
            first = None
            continue
        if first is not None:
            yield first
        first = shape if isinstance(shape, Lettering) else None
        if first is None:
            yield shape
    if first is not None:
        yield first


def _is_below(words: Lettering, above: Lettering) -> bool:
    return words.text.startswith("(") and words.x == above.x


def _letters() -> Iterator[str]:
    """a, b … z, aa, ab …: small ones, for capitals are the keys of materials."""
    for length in count():
        before = ascii_lowercase[length - 1] if length else ""
        yield from (before + letter for letter in ascii_lowercase)
