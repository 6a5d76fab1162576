"""A drawing in a file of its own carries the letters that it needs, for nothing else reaches it.

A picture in a page may load nothing (SVG Integration, W3C: secure static mode); a `data:` address is no load.
The fonts are read with fontTools, which had no part in making them smaller.
"""

import base64
import io
import re
from dataclasses import replace

from fontTools.ttLib import TTFont

from presscloth.drawing.tree import Area, Drawing, Ink, Lettering
from presscloth.printing.carried import letters_in
from presscloth.printing.svg import svg
from presscloth.printing.theme import open_theme

LOOK = open_theme().look
RULE = re.compile(
    r'@font-face\{font-family:"([^"]+)";font-weight:(\d+);src:url\("data:font/ttf;base64,([^"]+)"\)\}'
)


def drawing(*words: Lettering) -> Drawing:
    return Drawing(50, 20, (Area(((0, 0), (50, 0), (50, 20)), Ink.CLOTH), *words), alt="A test")


def fonts(drawn: Drawing, look=LOOK) -> dict[str, TTFont]:
    rules = RULE.findall(letters_in(drawn, look))
    assert {family for family, _, _ in rules} <= {look.lettering.family}
    return {weight: TTFont(io.BytesIO(base64.b64decode(data))) for _, weight, data in rules}


def letters(font: TTFont) -> set[str]:
    return {chr(code) for code in font.getBestCmap()}


def test_each_weight_has_the_letters_that_are_written_in_it_and_no_others():
    held = fonts(drawing(Lettering(5, 5, "1 skirt", 2.9), Lettering(5, 9, "½ yd ×", 2.9, bold=True)))
    assert letters(held["400"]) == set("1 skirt")
    assert letters(held["600"]) == set("½ yd ×")


def test_a_weight_that_is_not_written_is_not_carried():
    assert set(fonts(drawing(Lettering(5, 5, "a", 2.9)))) == {"400"}
    assert letters_in(drawing(), LOOK) == ""


def test_its_letters_are_those_of_the_themes_font():
    """The bold words are wider, as in the theme; a fall-back would have had one width for both."""
    held = fonts(drawing(Lettering(5, 5, "m", 2.9), Lettering(5, 9, "m", 2.9, bold=True)))
    plain, bold = (font["hmtx"][font.getBestCmap()[ord("m")]][0] for font in held.values())
    assert bold > plain > 0


def test_a_theme_without_a_font_for_its_lettering_carries_none():
    lettering = replace(LOOK.lettering, family="Of the reader's own")
    assert letters_in(drawing(Lettering(5, 5, "a", 2.9)), replace(LOOK, lettering=lettering)) == ""


def test_a_few_letters_are_a_few_kilobytes():
    words = "pocket 16 cm × 18 cm, tie strip, neck band (8 3/4 in)"
    assert len(letters_in(drawing(Lettering(5, 5, words, 2.9)), LOOK)) < 8000


def test_the_letters_stand_before_what_is_drawn():
    drawn = drawing(Lettering(5, 5, "a", 2.9))
    text = svg(drawn, LOOK, "d", 180.0, head=letters_in(drawn, LOOK))
    assert text.index("</title>") < text.index("@font-face") < text.index("<path") < text.index("<text")
