"""Rows, columns, edges turned to each other, tubes, pouches and laps."""

from __future__ import annotations

from fractions import Fraction

import pytest
from sewing.table import sew

from presscloth.measure import length
from presscloth.sewing.things import FINISHED, Edge, Flat, Rim, State, turned

PATCHES = """
    patch | A | 4 | 10 cm (4 in)  | 12 cm (4 3/4 in)
    strip | A | 5 | 4 cm (1 5/8 in) | 12 cm (4 3/4 in)
"""


def test_a_row_loses_two_allowances_at_each_seam():
    table = sew(
        "patch | A | 4 | 10 cm (4 in) | 12 cm (4 3/4 in)", "row = join 4 patch side by side\nfinish row"
    )
    assert table.mm("width of row") == 4 * 100 - 3 * 20
    assert table.inches("width of row") == 4 * 4 - 3 * Fraction(3, 4)
    assert table.mm("height of row") == 120
    assert table.mm("finished width of row") == 320
    assert table.names == ["raw-edge-shows"]


def test_a_column_loses_two_allowances_at_each_seam():
    table = sew("patch | A | 3 | 10 cm (4 in) | 12 cm (4 3/4 in)", "c = join 3 patch top to bottom\nfinish c")
    assert table.mm("height of c") == 3 * 120 - 2 * 20
    assert table.inches("finished height of c") == 3 * Fraction(19, 4) - 3 * Fraction(3, 4)


@pytest.mark.parametrize(
    ("where", "strips", "width"),
    [("between", 3, 4 * 100 + 3 * 40 - 6 * 20), ("between and at the ends", 5, 4 * 100 + 5 * 40 - 8 * 20)],
)
def test_things_between_others(where: str, strips: int, width: int):
    pieces = PATCHES.replace("strip | A | 5", f"strip | A | {strips}")
    table = sew(pieces, f"row = join 4 patch with strip {where} side by side\nfinish row")
    assert table.mm("width of row") == width
    assert table.made.used[("strip", "A")] == strips
    assert table.names == ["raw-edge-shows"]


def test_sashing_of_four_by_five_blocks():
    # Sashing inside only, 4 × 5 blocks: 31 strips (published sashing formula, n(m - 1) + m(n - 1));
    # cornerstones inside: 12.
    pieces = """
        block | A | 20 | 20 cm (8 in) | 20 cm (8 in)
        post  | A | 15 | 6 cm (2 3/8 in) | 20 cm (8 in)
        rail  | A | 16 | 20 cm (8 in) | 6 cm (2 3/8 in)
        stone | A | 12 | 6 cm (2 3/8 in) | 6 cm (2 3/8 in)
    """
    statements = """
        5 row = join 4 block with post between side by side
        4 sash = join 4 rail with stone between side by side
        top = join 5 row with sash between top to bottom
        finish top
    """.replace("        top =", "        whole =").replace("finish top", "finish whole")
    table = sew(pieces, statements)
    assert table.names == ["raw-edge-shows"]
    assert table.made.used[("post", "A")] + table.made.used[("rail", "A")] == 31
    assert table.mm("finished width of whole") == 4 * 180 + 3 * 40


def test_edges_that_differ_are_reported_with_cut_lengths():
    table = sew(
        "head | A | 1 | 20 cm (8 in) | 5 cm (2 in)\ncloth | A | 1 | 21 cm (8 1/4 in) | 30 cm (12 in)",
        "mat = join head, cloth top to bottom\nfinish mat",
    )
    assert table.names == ["edges-do-not-meet", "raw-edge-shows"]
    assert table.first.message() == (
        "edges do not meet: bottom of `head` is 20 cm (8 in), top of `cloth` is 21 cm (8 1/4 in); "
        "1 cm (1/4 in) apart"
    )
    assert [label.span.text.split("|")[0].strip("| ") for label in table.first.labels] == ["", ""]


def test_a_finished_neighbour_takes_nothing_off():
    # Hemmed at the top, the flap is stitched to its very edge; the strip has an allowance there.
    table = sew(
        "flap | A | 1 | 20 cm (8 in) | 20 cm (8 in)\nstrip | A | 1 | 20 cm (8 in) | 18 cm (7 1/4 in)",
        """
        hem top of flap by 1 cm (3/8 in) twice
        both = join flap, strip side by side
        finish both
        """,
    )
    # 20 cm less 2 cm of hem less one allowance below: 17 cm; the strip less both: 16 cm.
    assert table.first.slug() == "edges-do-not-meet"
    assert "17 cm" in table.first.message() and "16 cm" in table.first.message()
    assert "between the ends of the stitching" in table.first.message()


def test_a_side_that_is_raw_in_part_can_be_neither_joined_nor_hemmed():
    pieces = "flap | A | 1 | 20 cm (8 in) | 20 cm (8 in)\nstrip | A | 1 | 20 cm (8 in) | 19 cm (7 5/8 in)"
    begin = "hem top of flap by 1 cm (3/8 in) twice\nboth = join flap, strip side by side\n"
    table = sew(pieces, begin + "hem top of both by 1 cm (3/8 in)\nfinish both")
    assert "edge-not-raw" in table.names
    assert "raw in part only" in table.first.message()


def test_the_second_thing_is_turned_to_meet_the_first():
    pieces = "front | A | 1 | 20 cm (8 in) | 30 cm (12 in)\nside | A | 1 | 30 cm (12 in) | 8 cm (3 1/8 in)"
    table = sew(pieces, "both = join right of front to top of side\nfinish both")
    assert table.names == ["raw-edge-shows"]
    assert (table.mm("width of both"), table.mm("height of both")) == (200 + 80 - 20, 300)
    lying = table.made.events[0].lying
    assert [(each.name, each.turned) for each in lying] == [("front", 0), ("side", 3)]
    assert (lying[1].box.x, lying[1].box.width, lying[1].box.height) == (180, 80, 300)


@pytest.mark.parametrize("edge", ["left", "right", "top", "bottom"])
@pytest.mark.parametrize("own", ["left", "right", "top", "bottom"])
def test_squares_join_at_any_edges(edge: str, own: str):
    pieces = "a | A | 1 | 20 cm (8 in) | 20 cm (8 in)\nb | A | 1 | 20 cm (8 in) | 20 cm (8 in)"
    pieces = pieces.replace("a |", "one |", 1).replace("\nb |", "\nother |")
    table = sew(pieces, f"both = join {edge} of one to {own} of other\nfinish both")
    sides = (table.mm("width of both"), table.mm("height of both"))
    assert sides == ((380, 200) if edge in ("left", "right") else (200, 380))


def test_opposite_edges_of_one_thing_make_a_tube():
    table = sew(
        "cloth | A | 1 | 40 cm (16 in) | 30 cm (12 in)",
        "tube = join left of cloth to right of cloth\nhem top, bottom of tube by 1 cm (3/8 in)\nfinish tube",
    )
    assert table.names == []
    assert table.mm("around of tube") == 380
    assert table.mm("width of tube") == 190
    assert table.mm("height of tube") == 280
    assert table.mm("height of tube", 1) == 300


def test_the_same_edge_twice_takes_two():
    table = sew(
        "cloth | A | 2 | 40 cm (16 in) | 30 cm (12 in)",
        "long = join bottom of cloth to bottom of cloth\nhem all of long by 1 cm (3/8 in)\nfinish long",
    )
    assert table.names == []
    assert table.made.used[("cloth", "A")] == 2
    assert table.mm("height of long", 1) == 580


def test_neighbouring_edges_take_two_where_there_are_two():
    table = sew(
        "unit | A | 4 | 10 cm (4 in) | 10 cm (4 in)",
        "2 half = join right of unit to top of unit\nwheel = join bottom of half to bottom of half\n"
        "hem all of wheel by 5 mm (3/16 in)\nfinish wheel".replace("half", "pair"),
    )
    assert table.names == []
    assert table.mm("width of wheel", 2) == table.mm("height of wheel", 2) == 180


def test_a_pouch_is_open_at_the_side_that_is_not_named():
    table = sew(
        "front | A | 1 | 20 cm (8 in) | 30 cm (12 in)\nback | A | 1 | 20 cm (8 in) | 30 cm (12 in)",
        "bag = join front to back on left, right, bottom\nhem top of bag by 2 cm (3/4 in)\nfinish bag",
    )
    assert table.names == []
    assert (table.mm("width of bag", 1), table.mm("height of bag", 1)) == (180, 290)
    assert table.mm("around of bag") == 360
    assert table.mm("finished height of bag", 1) == 280
    assert table.mm("height of bag") == 270


def test_a_pillow_case_opens_at_the_side():
    table = sew(
        "front | A | 1 | 40 cm (16 in) | 30 cm (12 in)\nback | A | 1 | 40 cm (16 in) | 30 cm (12 in)",
        "case = join front to back on left, top, bottom\n"
        "hem right of case by 1 cm (3/8 in) twice\n"
        "finish case",
    )
    assert table.names == []
    assert (table.mm("width of case"), table.mm("height of case")) == (390 - 20, 280)
    assert table.mm("around of case") == 560


def test_a_cushion_sewn_all_round_is_closed():
    table = sew(
        "cloth | A | 2 | 42 cm (16 3/4 in) | 42 cm (16 3/4 in)",
        "cushion = join cloth to cloth all round, leaving 15 cm (6 in) open\nfinish cushion",
    )
    assert table.names == []
    assert table.inches("width of cushion") == 16
    assert table.mm("around of cushion") == 800


def test_an_envelope_back_overlaps():
    # Two backs of 18 × 12 in, hemmed 1/2 + 1/2 in, over a front of 18 in overlap by 4 in
    # (magazine, envelope pillow, 2019).
    pieces = """
        front | A | 1 | 18 in (46 cm) | 18 in (46 cm)
        back  | A | 2 | 18 in (46 cm) | 12 in (30.5 cm)
    """
    statements = """
        hem bottom of back by 1/2 in (1.3 cm) twice
        cover = lap bottom of back over bottom of back by 2 × height of back - height of front
        pillow = join front to cover all round
        finish pillow
    """
    table = sew(pieces, statements, measures="seam = 1/2 in (1.3 cm)")
    assert table.names == []
    assert 2 * table.inches("height of back", 1) - table.inches("height of front") == 4
    assert table.inches("height of cover") == 18


def test_a_lap_makes_things_narrower_by_its_width():
    table = sew(
        "flap | A | 2 | 20 cm (8 in) | 30 cm (12 in)",
        "hem all of flap by 1 cm (3/8 in)\n"
        "back = lap right of flap over right of flap by 5 cm (2 in)\n"
        "finish back",
    )
    assert table.names == []
    assert table.mm("width of back") == 2 * 180 - 50
    assert table.inches("height of back") == Fraction(45, 4)


def test_patches_finish_as_published():
    # 2 + 3 in patches at 1/4 in seams give 4 1/2 in, 11 + 9 in give 19 1/2 in and not 20 in (published
    # worked examples).
    for one, other, both in ((2, 3, Fraction(9, 2)), (11, 9, Fraction(39, 2))):
        pieces = f"one | A | 1 | {one} in | 4 in (10 cm)\nother | A | 1 | {other} in | 4 in (10 cm)"
        table = sew(
            pieces, "both = join one, other side by side\nfinish both", measures="seam = 1/4 in (6 mm)"
        )
        assert table.inches("width of both") == both


def test_the_second_lies_face_down_so_that_its_right_edge_is_at_the_left():
    # Both have 6 mm at one side and 1 cm at the other, and are equally high between the stitch lines.
    pieces = """
        slim  | A | 2 | 10 cm | 300 mm | 6 mm
        broad | A | 2 | 10 cm | 308 mm | 1 cm
    """
    statements = """
        front = join slim, broad side by side, taking 1 cm
        back = join {} side by side, taking 1 cm
        bag = join front to back on left, right
        finish bag
    """
    metric = "---\nsystems: metric\n---"
    same = sew(pieces, statements.format("slim, broad"), columns=" Allowance |", rest=metric)
    assert same.names == ["allowances-differ"]
    assert same.first.message() == (
        "the seam allowances differ: left of `front` has 6 mm, right of `back` has 1 cm"
    )
    mirrored = sew(pieces, statements.format("broad, slim"), columns=" Allowance |", rest=metric)
    assert mirrored.names == ["raw-edge-shows"]


def test_the_ends_of_an_edge_are_turned_with_it():
    inch = length(25, 1)
    rim = Rim(State.RAW, inch)
    left = Edge(inch, None, first=FINISHED, last=rim)
    plain = Edge.plain(inch, rim)
    flat = Flat(left=left, right=plain, top=plain, bottom=plain)
    once = turned(flat, 1)
    # Turned clockwise, the left edge lies at the top, and its lower end at the left.
    assert (once.top.first, once.top.last) == (rim, FINISHED)
    assert (turned(flat, 2).right.first, turned(flat, 2).right.last) == (rim, FINISHED)
    assert turned(flat, 4) == flat
