"""Words in drawings that large print would make too small become letters with a list."""

from dataclasses import replace
from itertools import islice

from printing.samples import PUBLISHER, TALL

from presscloth.drawing.tree import Drawing, Ink, Lettering, Line
from presscloth.printing.keyed import _letters, keyed
from presscloth.printing.pdf import paper_html
from presscloth.printing.theme import open_theme

LARGE, PLAIN = open_theme("large-print").look, open_theme().look
WORDS = (
    Lettering(20, 10, "39.2 cm × 144.2 cm", 2.9),
    Lettering(20, 20, "1", 2.9),
    Lettering(20, 30, "binding strip", 2.9, anchor="start", turned=-90),
    Lettering(60, 10, "39.2 cm × 144.2 cm", 2.9),
)


def drawing(width: float) -> Drawing:
    return Drawing(width, 40, (Line(((0, 0), (width, 0)), Ink.CUT), *WORDS), alt="Four words")


def test_a_measure_on_two_lines_has_one_letter():
    """A drawing says an upright measure system by system; in the list it is one measure again."""
    said = ("front", "33 cm", "(13 in)", "34 cm")
    words = tuple(Lettering(9.0, 5.0 * n, text, 2.9) for n, text in enumerate(said))
    drawn, keys = keyed(Drawing(120, 40, words, "A front"), LARGE, 180)
    assert keys == (("a", "front"), ("b", "33 cm (13 in)"), ("c", "34 cm"))
    assert [shape.text for shape in letterings(drawn)] == ["a", "b", "c"]


def letterings(drawn: Drawing) -> list[Lettering]:
    return [shape for shape in drawn.shapes if isinstance(shape, Lettering)]


def test_a_wide_drawing_has_letters_of_18_points_and_a_list():
    """180 mm on 120 mm enlarge by 1.5: 6.36 mm on paper are 4.24 mm in the drawing."""
    drawn, keys = keyed(drawing(120), LARGE, 180)
    assert keys == (("a", "39.2 cm × 144.2 cm"), ("b", "binding strip"))
    assert [words.text for words in letterings(drawn)] == ["a", "1", "b", "a"]
    assert {round(words.size, 3) for words in letterings(drawn)} == {4.24}
    assert all(words.turned == 0 for words in letterings(drawn))
    assert drawn.alt == "Four words"


def test_a_narrow_drawing_keeps_its_words():
    """70 mm grow 2.2 times, and 2.9 mm become 6.38; a higher one grows less, and has letters."""
    low = replace(drawing(70), height=27)
    assert keyed(low, LARGE, 180) == (low, ())
    assert keyed(drawing(70), LARGE, 180)[1] != ()


def test_other_themes_keep_their_words():
    assert keyed(drawing(400), PLAIN, 180) == (drawing(400), ())


def test_letters_do_not_run_out():
    assert list(islice(_letters(), 24, 29)) == ["y", "z", "aa", "ab", "ac"]


def test_the_list_stands_below_the_drawing_on_paper():
    page = paper_html(TALL, open_theme("large-print"), PUBLISHER)
    assert '<ul class="keys">\n<li><strong>a</strong> ' in page
    assert "keys" not in paper_html(TALL, open_theme(), PUBLISHER)
