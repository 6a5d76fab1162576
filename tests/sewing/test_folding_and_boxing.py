"""Folds, pouches that are folded, boxed corners, and linings."""

from __future__ import annotations

from fractions import Fraction

import pytest
from sewing.table import sew

from presscloth.sewing.placing import Mark

STRIP = "strip | A | 1 | 10 cm (4 in) | 50 cm (20 in)"
CLOTH = "cloth | A | 1 | 30 cm (12 in) | 60 cm (24 in)"


@pytest.mark.parametrize(
    ("way", "width", "height"),
    [
        ("lengthways", 50, 500),
        ("across", 100, 250),
        ("side to side", 50, 500),
        ("top to bottom", 100, 250),
        ("lengthways in four", 25, 500),
        ("across in four", 100, 125),
    ],
)
def test_a_fold_halves_or_quarters_a_side(way: str, width: int, height: int):
    table = sew(STRIP, f"handle = fold strip {way}\nfinish handle")
    assert (table.mm("width of handle"), table.mm("height of handle")) == (width, height)


def test_a_strap_of_four_layers_is_a_quarter_as_wide():
    # Cut 2 in wide it finishes at 1/2 in: cut = 4 × finished (published worked example).
    table = sew(
        "tab | A | 1 | 2 in (5 cm) | 8 in (20 cm)", "strap = fold tab lengthways in four\nfinish strap"
    )
    assert table.inches("width of strap") == Fraction(1, 2)


def test_folded_in_four_both_long_edges_are_folded():
    table = sew(
        STRIP, "handle = fold strip lengthways in four\nhem right of handle by 5 mm (3/16 in)\nfinish handle"
    )
    assert table.names[0] == "edge-not-raw"
    assert table.first.message() == "the right of `handle` is folded and cannot be hemmed"


def test_folded_once_the_raw_edges_lie_together():
    table = sew(
        STRIP, "binding = fold strip lengthways\nhem right of binding by 5 mm (3/16 in)\nfinish binding"
    )
    assert "edge-not-raw" not in table.names
    assert table.mm("width of binding") == 45


def test_a_tape_is_halved_across():
    table = sew("cord | C | 1 | | 40 cm (16 in)", "loop = fold cord across\nfinish loop")
    assert table.inches("length of loop") == 8
    assert table.names == []


def test_lengthways_must_be_clear_in_both_systems():
    table = sew("cloth | A | 1 | 30 cm (12 in) | 30.5 cm (12 in)", "pad = fold cloth lengthways\nfinish pad")
    assert table.names == ["fold-unclear"]


def test_a_folded_pouch_is_as_wide_as_its_stitch_lines():
    table = sew(CLOTH, "bag = fold cloth in half, join sides\nhem top of bag by 2 cm (3/4 in)\nfinish bag")
    assert table.names == []
    assert (table.mm("width of bag", 1), table.mm("height of bag", 1)) == (280, 300)
    assert table.mm("around of bag") == 560
    assert table.inches("finished height of bag", 1) == 12 - Fraction(3, 8)
    marks = [line.mark for line in table.made.events[0].lines]
    assert marks == [Mark.FOLD, Mark.SEAM, Mark.SEAM]


def test_folded_at_the_seam_it_must_lie_in_the_middle():
    pieces = "front | A | 1 | 30 cm (12 in) | 31 cm (12 in)\nback | A | 1 | 30 cm (12 in) | {height}"
    statements = """
        cover = join bottom of front to bottom of back
        bag = fold cover in half at the seam, join sides
        hem top of bag by 1 cm (3/8 in)
        finish bag
    """
    assert sew(pieces.format(height="31 cm (12 in)"), statements).names == []
    uneven = sew(pieces.format(height="33 cm (13 in)"), statements)
    assert uneven.names == ["seam-not-in-the-middle"]
    assert "30 cm (11 5/8 in) from its top, the middle 31 cm (12 1/8 in)" in uneven.first.message()


def test_a_tube_of_folded_long_edges():
    table = sew(
        STRIP,
        "tube = fold strip lengthways, join the long edges\n"
        "hem top, bottom of tube by 1 cm (3/8 in)\n"
        "finish tube",
    )
    assert table.names == []
    assert table.mm("around of tube") == 80
    assert table.mm("width of tube") == 40


def test_a_tube_of_a_strip_that_lies_across():
    table = sew(
        "strip | A | 1 | 50 cm (20 in) | 10 cm (4 in)",
        "tube = fold strip lengthways, join the long edges\n"
        "hem left, right of tube by 1 cm (3/8 in)\n"
        "finish tube",
    )
    assert table.names == []
    assert (table.mm("width of tube"), table.mm("height of tube")) == (480, 40)
    assert table.mm("around of tube") == 80


def test_boxed_corners_take_the_depth_off_the_width_and_half_of_it_off_the_height():
    table = sew(
        CLOTH,
        "bag = fold cloth in half, join sides\n"
        "box corners of bag to 8 cm (3 1/8 in)\n"
        "hem top of bag by 1 cm (3/8 in)\n"
        "finish bag",
    )
    assert table.names == []
    assert (table.mm("width of bag", 2), table.mm("depth of bag"), table.mm("height of bag", 2)) == (
        200,
        80,
        260,
    )
    assert table.mm("around of bag") == 560


def test_corners_cut_from_the_raw_edges():
    # A notch of 2 in from the raw edges, equal seams: 4 in deep; a panel of 19 × 16 in as sewn becomes 15
    # in wide and 14 in high (published boxed-corner tutorial; geometry).
    pieces = "front | A | 1 | 20 in (51 cm) | 17 in (43 cm)\nback | A | 1 | 20 in (51 cm) | 17 in (43 cm)"
    statements = """
        bag = join front to back on left, right, bottom
        box corners of bag by cutting 2 in (5 cm) from the raw edges
        hem top of bag by 1/2 in (1.3 cm)
        finish bag
    """
    table = sew(pieces, statements, measures="seam = 1/2 in (1.3 cm)")
    assert table.names == []
    assert table.inches("depth of bag") == 4
    assert table.inches("width of bag") == 15
    assert table.inches("finished height of bag", 2) == 14


def test_corners_cut_from_the_stitch_lines_are_deeper_by_two_seams():
    table = sew(
        CLOTH,
        "bag = fold cloth in half, join sides\n"
        "box corners of bag by cutting 3 cm (1 1/8 in) from the stitch lines\n"
        "hem top of bag by 1 cm (3/8 in)\n"
        "finish bag",
    )
    assert table.mm("depth of bag") == 80
    assert table.inches("depth of bag") == 3


def test_a_closed_pouch_is_boxed_at_four_corners():
    table = sew(
        "cloth | A | 2 | 42 cm (16 3/4 in) | 42 cm (16 3/4 in)",
        "cushion = join cloth to cloth all round, leaving 15 cm (6 in) open\n"
        "box corners of cushion to 10 cm (4 in)\n"
        "finish cushion",
    )
    assert table.names == []
    assert (table.mm("width of cushion"), table.mm("height of cushion")) == (300, 300)
    assert table.mm("around of cushion") == 800


LINED = "cloth | A | 1 | 30 cm (12 in) | 60 cm (24 in)\nlining | A | 1 | 30 cm (12 in) | {height}"
LINE = """
    outer = fold cloth in half, join sides
    inner = fold lining in half, join sides{gap}
    bag = line outer with inner
    finish bag
"""


def test_a_lined_pouch_is_finished_at_the_top():
    table = sew(LINED.format(height="60 cm (24 in)"), LINE.format(gap=", leaving 10 cm (4 in) open"))
    assert table.names == []
    assert table.mm("height of bag") == 290
    assert table.mm("finished height of bag") == 290


def test_a_lining_that_is_lower_is_named_with_the_row_of_pieces():
    table = sew(LINED.format(height="59 cm (23 5/8 in)"), LINE.format(gap=", leaving 10 cm (4 in) open"))
    assert table.names == ["edges-do-not-meet"]
    assert "height of `outer`" in table.first.message()
    assert "5 mm (3/16 in) apart" in table.first.message()
    assert any("lining" in label.span.text for label in table.first.labels)


def test_a_lined_pouch_has_one_turning_gap():
    assert sew(LINED.format(height="60 cm (24 in)"), LINE.format(gap="")).names == ["no-turning-gap"]


def test_a_gap_is_shorter_than_its_seam():
    table = sew(
        CLOTH,
        "bag = fold cloth in half, join sides, leaving 29 cm (11 3/8 in) open\n"
        "hem top of bag by 1 cm (3/8 in)\n"
        "finish bag",
    )
    # Each side seam is 29 cm: 30 cm less the allowance at the top.
    assert table.names == ["gap-too-long"]
