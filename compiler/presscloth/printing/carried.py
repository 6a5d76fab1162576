"""The letters of a drawing, carried in its own file.

A drawing that stands beside a page as a picture may fetch nothing, so that the fonts of the page do not
reach it; without letters of its own it would be lettered by whatever the reader has.
"""

from __future__ import annotations

from base64 import b64encode

from presscloth.drawing.tree import Drawing, Lettering
from presscloth.printing.fonts import few_letters
from presscloth.printing.look import Cut, Look

BOLD, PLAIN = 600, 400


def letters_in(drawing: Drawing, look: Look) -> str:
    """A style sheet with the letters that a drawing needs of each weight, for the head of its SVG.

    Empty where it has no words, or where the theme brings no font for them.
    """
    rules = ""
    for weight in (PLAIN, BOLD):
        words = [
            shape.text
            for shape in drawing.shapes
            if isinstance(shape, Lettering) and shape.bold is (weight == BOLD)
        ]
        cut = _cut(look, weight)
        if words and cut is not None:
            font = b64encode(few_letters(cut, frozenset("".join(words)))).decode("ascii")
            rules += (
                f'@font-face{{font-family:"{cut.family}";font-weight:{weight};'
                f'src:url("data:font/ttf;base64,{font}")}}'
            )
    return f"<style>{rules}</style>" if rules else ""


def _cut(look: Look, weight: int) -> Cut | None:
    """The upright cut of the lettering's family; a theme with one weight has it for all words."""
    held = [cut for cut in look.fonts if cut.family == look.lettering.family and not cut.italic]
    return min(held, key=lambda cut: abs(cut.weight - weight), default=None)
