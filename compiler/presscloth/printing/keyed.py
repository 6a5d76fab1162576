"""A drawing whose words would be too small to read: letters in it, and a list of what they stand for.

Large print enlarges words in a drawing, not only the drawing; a measure would no longer fit beside its
line, but a letter does, and the measure stands below in the size of the text.
"""

from __future__ import annotations

from collections.abc import Iterator
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


def _letters() -> Iterator[str]:
    """a, b … z, aa, ab …: small ones, for capitals are the keys of materials."""
    for length in count():
        before = ascii_lowercase[length - 1] if length else ""
        yield from (before + letter for letter in ascii_lowercase)
