"""Which way up pieces end: what is turned, folded over, and seen from behind."""

from __future__ import annotations

from sewing.table import sew

TWO = "front | B | 1 | 30 cm (12 in) | 40 cm (16 in)\nback | B | 1 | 30 cm (12 in) | 40 cm (16 in)"
BAG = """
    cover = join bottom of front to {edge} of back
    bag = fold cover in half, join sides
    hem top of bag by 1 cm (3/8 in)
    finish bag
"""


def test_joined_at_both_bottoms_and_folded_both_are_upright():
    table = sew(TWO, BAG.format(edge="bottom"))
    assert table.names == []
    assert [(part.name, part.turned, part.back) for part in table.made.finished[0].thing.parts] == [
        ("front", 0, False),
        ("back", 0, True),
    ]


def test_joined_bottom_to_top_and_folded_the_back_is_upside_down():
    table = sew(TWO, BAG.format(edge="top"))
    assert table.names == ["ends-upside-down"]
    assert table.first.message() == "`back` (one way) ends upside down on the back of the finished `bag`"


def test_one_piece_that_is_folded_is_upside_down_behind():
    table = sew(
        "cloth | B | 1 | 30 cm (12 in) | 60 cm (24 in)",
        "bag = fold cloth in half, join sides\nhem top of bag by 1 cm (3/8 in)\nfinish bag",
    )
    assert table.names == ["ends-upside-down"]


def test_cloth_without_a_direction_is_not_questioned():
    assert sew(TWO.replace("| B |", "| A |"), BAG.format(edge="top")).names == []
    loose = sew(TWO.replace("16 in)", "16 in) | any grain"), BAG.format(edge="top"), columns=" Notes |")
    assert loose.names == []


def test_what_is_stitched_out_has_a_direction():
    pieces = "ground | A | 1 | 20 cm (8 in) | 20 cm (8 in)\nhead | A | 1 | 20 cm (8 in) | 10 cm (4 in)"
    statements = """
        badge = stitch out ground, 5 cm (2 in) by 5 cm (2 in), in exactly 100 mm by exactly 100 mm
        mat = join bottom of head to bottom of badge
        hem all of mat by 1 cm (3/8 in)
        finish mat
    """
    table = sew(pieces, statements)
    assert table.names == ["ends-upside-down"]
    assert "(stitched out)" in table.first.message()
    assert sew(pieces, statements.replace("bottom of badge", "top of badge")).names == []


def test_turned_by_a_quarter_is_not_upside_down():
    pieces = "front | B | 1 | 30 cm (12 in) | 30 cm (12 in)\nside | B | 1 | 30 cm (12 in) | 10 cm (4 in)"
    table = sew(
        pieces, "mat = join left of front to top of side\nhem all of mat by 1 cm (3/8 in)\nfinish mat"
    )
    assert table.names == []
    assert [part.turned for part in table.made.finished[0].thing.parts] == [1, 0]
