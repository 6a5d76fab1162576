"""Rounds, rectangles and tubes in open ends; gathers."""

from __future__ import annotations

from fractions import Fraction

import pytest
from sewing.table import Table, sew

BASKET = """
    side = join left of wall to right of wall
    pot = set base into bottom of side
    hem top of pot by 1 cm (3/8 in) twice
    finish pot
"""


def round_base(across: str, around: str, measures: str) -> Table:
    pieces = f"wall | A | 1 | {around} | 20 cm (8 in) |\nbase | A | 1 | {across} | | circle"
    return sew(pieces, BASKET, measures=measures, columns=" Shape |")


def test_a_round_base_wants_pi_times_its_stitched_diameter():
    # A base of 12 in as sewn, seams of 1/2 in: wall 38.70 in, stitch line 37.70 in, base cut 13 in
    # (published article on a circle).
    table = round_base(
        "base across + 2 × seam",
        "pi × base across + 2 × seam",
        "seam = 1/2 in (1.3 cm)\nbase across = 12 in (30.5 cm)",
    )
    assert table.names == []
    assert float(table.inches("width of wall")) == pytest.approx(38.70, abs=0.005)
    assert float(table.inches("around of side")) == pytest.approx(37.70, abs=0.005)
    assert table.inches("width of base") == 13
    assert table.inches("finished width of base") == 12
    assert table.inches("width of pot") == table.inches("depth of pot") == 12


def test_with_pi_as_3_14_a_round_base_still_meets():
    # Printed 37.68 in with π = 3.14 for 37.699 in: 0.02 in apart, within 1/16 in.
    table = round_base(
        "base across + 2 × seam",
        "3.14 × base across + 2 × seam",
        "seam = 1/2 in (1.3 cm)\nbase across = 12 in (30.5 cm)",
    )
    assert table.names == []


def test_a_base_that_is_a_centimetre_off_does_not_meet():
    table = round_base("30 cm (12 in)", "pi × 30 cm (12 in)", "seam = 1 cm (3/8 in)")
    # The wall's seam takes 2 cm, the base's 2π cm.
    assert table.names == ["edges-do-not-meet"]
    assert "4.28 cm" in table.first.message()


def test_a_rectangle_meets_with_its_four_stitched_sides():
    pieces = (
        "wall | A | 1 | 2 × (20 cm (8 in) + 10 cm (4 in)) + 2 × seam | 15 cm (6 in)\n"
        "base | A | 1 | 20 cm (8 in) + 2 × seam | 10 cm (4 in) + 2 × seam"
    )
    table = sew(pieces, BASKET)
    assert table.names == []
    assert (table.mm("width of pot"), table.mm("depth of pot")) == (200, 100)
    assert table.mm("around of pot") == 600
    assert table.mm("height of pot", 2) == 140


def test_a_tube_lengthens_a_tube_and_the_other_end_stays_open():
    pieces = (
        "sleeve | A | 1 | 32 cm (12 5/8 in) | 40 cm (16 in)\n"
        "cuff | A | 1 | 32 cm (12 5/8 in) | 12 cm (4 3/4 in)"
    )
    statements = """
        arm = join left of sleeve to right of sleeve
        ring = join left of cuff to right of cuff
        whole = set ring into bottom of arm
        hem top of whole by 1 cm (3/8 in)
        hem bottom of whole by 2 cm (3/4 in)
        finish whole
    """
    table = sew(pieces, statements)
    assert table.names == []
    assert table.mm("height of whole", 3) == 400 + 120 - 20
    assert table.mm("height of whole") == 470
    assert table.mm("around of whole") == 300


def test_gathers_at_two_and_a_half_times():
    # 15 in at 2.5 to 1 want 37 1/2 in as sewn (published worked example).
    pieces = (
        "band | A | 1 | 15 in (38 cm) + 2 × seam | 10 cm (4 in)\n"
        "frill | A | 1 | {wide} + 2 × seam | 12 cm (4 3/4 in)"
    )
    statements = "skirt = gather top of frill to bottom of band\nfinish skirt"
    table = sew(pieces.format(wide="37 1/2 in (95 cm)"), statements)
    assert table.names == ["raw-edge-shows"]
    assert table.inches("finished bottom of skirt") == Fraction(75, 2)
    assert table.inches("finished top of skirt") == 15
    assert table.inches("width of skirt") == Fraction(75, 2) + Fraction(3, 4)
    assert table.mm("height of skirt") == 100 + 120 - 20
    assert sew(pieces.format(wide="50 in (127 cm)"), statements).names[0] == "fullness-unusual"
    assert sew(pieces.format(wide="17 in (43 cm)"), statements).names[0] == "fullness-unusual"


def test_a_tube_is_gathered_to_an_open_end():
    pieces = (
        "bodice | A | 1 | 42 cm (16 1/2 in) | 20 cm (8 in)\nskirt | A | 1 | 82 cm (32 1/4 in) | 30 cm (12 in)"
    )
    statements = """
        body = join left of bodice to right of bodice
        swing = join left of skirt to right of skirt
        dress = gather top of swing to bottom of body
        hem top, bottom of dress by 1 cm (3/8 in)
        finish dress
    """
    table = sew(pieces, statements)
    assert table.names == []
    assert table.mm("bottom of dress") == 800
    assert table.mm("top of dress") == 400
    assert table.mm("height of dress", 3) == 480
