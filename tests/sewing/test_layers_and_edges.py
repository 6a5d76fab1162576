"""Sandwiches, bagging out, laying and fusing; binding, facing, borders, hems, bands, cords."""

from __future__ import annotations

from fractions import Fraction

import pytest
from sewing.table import sew


def bound(strips: int, strip: str = "40 in (101.6 cm) | 2 in (5 cm)", tail: str = ""):
    pieces = f"quilt | A | 1 | 50 in (127 cm) | 60 in (152.4 cm)\nstrip | A | {strips} | {strip}"
    imperial_first = "---\nwritten in: imperial\n---"
    return sew(pieces, f"bind quilt with {strips} strip{tail}\nfinish quilt", rest=imperial_first)


def test_binding_a_quilt_of_50_by_60():
    # Usable 40 in, 2 in lost for each join: 6 strips (published binding worked example, 2013).
    assert bound(6).names == []
    short = bound(5)
    assert short.names == ["strip-too-short"]
    # 5 × 40 less 4 joins of 2 in reach 192 in; 220 in and 6 in for the ends are wanted.
    assert short.first.message() == (
        "5 `strip` reach 192 in (488 cm); `quilt` wants 226 in (573.8 cm), 6 in (15 cm) for the ends included"
    )


def test_binding_keeps_the_size_and_finishes_the_edges():
    table = bound(6)
    assert table.inches("width of quilt") == table.inches("finished width of quilt") == 50


def test_binding_a_square_of_64():
    # 4 × 64 + 16 = 272 in (published worked example).
    for length, names in ((272, []), (271, ["strip-too-short"])):
        pieces = f"cloth | A | 1 | 64 in | 64 in\nstrip | A | 1 | {length} in | 2 in"
        table = sew(
            pieces,
            "bind cloth with strip, with 16 in for the ends\nfinish cloth",
            rest="---\nsystems: imperial\n---",
        )
        assert table.names == names


def test_binding_one_edge_wants_no_ends():
    pieces = "pocket | A | 1 | 20 cm (8 in) | 20 cm (8 in)\nstrip | A | 1 | 20 cm (8 in) | 5 cm (2 in)"
    table = sew(
        pieces,
        "bind top of pocket with strip\nhem left, right, bottom of pocket by 1 cm (3/8 in)\nfinish pocket",
    )
    assert table.names == []


def test_a_faced_edge_lies_on_the_stitch_line():
    pieces = "cloth | A | 1 | 30 cm (12 in) | 30 cm (12 in)\nstrip | A | 1 | 30 cm (12 in) | 5 cm (2 in)"
    table = sew(
        pieces,
        "mat = face top of cloth with strip\nhem left, right, bottom of mat by 1 cm (3/8 in)\nfinish mat",
    )
    assert table.names == []
    assert table.mm("height of mat", 1) == 290


def test_layers_overhang_the_first():
    pieces = """
        cloth   | A | 1 | 40 cm (16 in) | 50 cm (20 in)
        wadding | A | 1 | 50 cm (20 in) | 60 cm (24 in)
        backing | A | 1 | 52 cm (20 1/2 in) | 62 cm (24 1/2 in)
    """
    statements = (
        "mat = layer cloth, wadding, backing, overhanging 5 cm (2 in)\n"
        "trim mat to 40 cm (16 in) by 50 cm (20 in)\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish mat"
    )
    table = sew(pieces, statements)
    assert table.names == []
    assert table.mm("width of mat", 1) == 520
    too_large = sew(pieces, statements.replace("trim mat to 40 cm (16 in)", "trim mat to 42 cm (16 1/2 in)"))
    # The smallest layer counts, not the lowest.
    assert too_large.names == ["trimmed-larger"]
    assert "40 cm (16 in) wide" in too_large.first.message()
    small = sew(
        pieces.replace("50 cm (20 in) | 60 cm (24 in)", "49 cm (19 1/2 in) | 60 cm (24 in)"), statements
    )
    assert small.names == ["layer-too-small"]
    lower = sew(
        pieces.replace("52 cm (20 1/2 in)", "50 cm (20 in)").replace(
            "50 cm (20 in) | 60", "51 cm (20 1/8 in) | 60"
        ),
        statements,
    )
    assert lower.names == ["layer-too-small"]
    assert "over `wadding`" in lower.first.message()


def test_quilting_takes_up_a_share():
    pieces = "cloth | A | 1 | 50 cm (20 in) | 50 cm (20 in)\nbacking | A | 1 | 60 cm (24 in) | 60 cm (24 in)"
    table = sew(
        pieces,
        "mat = layer cloth, backing, taking up 2 %\n"
        "trim mat to 49 cm (19 1/2 in) by 49 cm (19 1/2 in)\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish mat",
    )
    assert table.mm("width of mat", 1) == 588
    assert table.inches("height of mat", 1) == Fraction(24 * 98, 100)
    assert table.names == []


def test_bagged_out_with_the_top_open():
    pieces = "front | A | 1 | 20 cm (8 in) | 15 cm (6 in)\nback | A | 1 | 20 cm (8 in) | 15 cm (6 in)"
    table = sew(pieces, "flap = bag out front with back, top open\nfinish flap")
    assert table.names == ["raw-edge-shows"]
    assert (table.mm("width of flap"), table.mm("height of flap")) == (180, 140)
    assert table.mm("finished height of flap") == 130
    assert table.first.message() == "top of the finished `flap` is raw"


def test_bagged_out_all_round_through_a_gap():
    pieces = "cloth | A | 2 | 20 cm (8 in) | 15 cm (6 in)"
    table = sew(pieces, "mat = bag out cloth with cloth, leaving 8 cm (3 1/8 in) open\nfinish mat")
    assert table.names == []
    assert table.inches("width of mat") == 8 - Fraction(3, 4)


def test_what_is_laid_level_is_equally_long_there():
    pieces = "pocket | A | 1 | 30 cm (12 in) | 15 cm (6 in)\nback | A | 1 | 30 cm (12 in) | 40 cm (16 in)"
    statements = (
        "hem top of pocket by 1 cm (3/8 in) twice\n"
        "rear = lay pocket on back, bottom level\n"
        "hem all of rear by 1 cm (3/8 in)\n"
        "finish rear"
    )
    assert sew(pieces, statements).names == []
    narrow = sew(
        pieces.replace("pocket | A | 1 | 30 cm (12 in)", "pocket | A | 1 | 29 cm (11 3/8 in)"), statements
    )
    assert narrow.names == ["edges-do-not-meet"]


def test_what_is_fused_fits_either_way_round():
    pieces = "cloth | A | 1 | 30 cm (12 in) | 20 cm (8 in)\npatch | A | 1 | {size}"
    statements = "fuse patch to cloth\nhem all of cloth by 1 cm (3/8 in)\nfinish cloth"
    assert sew(pieces.format(size="20 cm (8 in) | 30 cm (12 in)"), statements).names == []
    assert sew(pieces.format(size="21 cm (8 1/4 in) | 30 cm (12 in)"), statements).names == ["does-not-fit"]


def test_butted_borders():
    # A top of 50 × 60 in as sewn, a border of 5 in: sides 60 1/2, ends 60 1/2 in, cut (magazine,
    # determining border lengths).
    pieces = """
        middle | A | 1 | 50 1/2 in | 60 1/2 in
        side   | A | 2 | 5 1/2 in | 60 1/2 in
        end    | A | 2 | 60 1/2 in | 5 1/2 in
    """
    front = "---\nsystems: imperial\n---"
    table = sew(
        pieces, "quilt = border middle with 2 side, 2 end\nfinish quilt", measures="seam = 1/4 in", rest=front
    )
    assert table.names == ["raw-edge-shows"]
    assert (table.inches("finished width of quilt"), table.inches("finished height of quilt")) == (60, 70)
    lying = sew(
        pieces.replace("60 1/2 in | 5 1/2 in", "5 1/2 in | 60 1/2 in"),
        "quilt = border middle with 2 side, 2 end\nfinish quilt",
        measures="seam = 1/4 in",
        rest=front,
    )
    assert lying.names == ["raw-edge-shows"]


def mitred(length: str):
    pieces = f"middle | A | 1 | 40 1/2 in | 40 1/2 in\nstrip | A | 4 | 5 1/2 in | {length}"
    statement = "quilt = border middle with 4 strip, mitred\nfinish quilt"
    return sew(pieces, statement, measures="seam = 1/4 in", rest="---\nsystems: imperial\n---")


def test_mitred_borders():
    # Edge 40 in, border 5 in: 56 in is comfortable, the exact least is 51.207 in (magazine, how to mitre
    # borders; geometry).
    assert mitred("56 in").names == ["raw-edge-shows"]
    assert mitred("51 1/4 in").names == ["raw-edge-shows"]
    short = mitred("51 3/16 in")
    assert short.names == ["mitre-too-short", "raw-edge-shows"]
    assert short.inches("finished width of quilt") == 50


@pytest.mark.parametrize(
    ("how", "turned"),
    [
        ("by 1 cm (3/8 in)", 10),
        ("by 1 cm (3/8 in) twice", 20),
        ("by 1 cm (3/8 in), then 3 cm (1 1/8 in)", 40),
    ],
)
def test_a_hem_takes_what_is_turned(how: str, turned: int):
    table = sew(
        "cloth | A | 1 | 30 cm (12 in) | 40 cm (16 in)",
        f"hem left, right, bottom of cloth {how}\nhem top of cloth {how}\nfinish cloth",
    )
    assert table.names == []
    assert (table.mm("width of cloth"), table.mm("height of cloth", 1)) == (300 - 2 * turned, 400 - turned)


def test_a_round_cloth_is_hemmed_all_round():
    # Table 24, drop 30, hem 1/2 in each side: cut 85 (published worked example).
    table = sew(
        "cloth | A | 1 | 24 in + 2 × 30 in + 2 × 1/2 in | | circle",
        "hem all of cloth by 1/2 in\nfinish cloth",
        columns=" Shape |",
        rest="---\nsystems: imperial\n---",
    )
    assert table.names == []
    assert table.inches("width of cloth", 0) == 85
    assert table.inches("width of cloth") == 84


def test_a_waistband_is_folded_over_the_edge():
    pieces = "apron | A | 1 | 60 cm (24 in) | 50 cm (20 in)\nbelt | A | 1 | {wide} | 10 cm (4 in)"
    statements = (
        "band top of apron with belt\nhem left, right, bottom of apron by 1 cm (3/8 in)\nfinish apron"
    )
    table = sew(pieces.format(wide="60 cm (24 in)"), statements)
    assert table.names == []
    # 50 cm less the seam, and half of 10 cm less two allowances: 49 + 4.
    assert table.mm("height of apron", 1) == 530
    gathered = sew(
        pieces.format(wide="40 cm (16 in)"),
        statements.replace("band top of apron with", "band top of apron, gathered, with"),
    )
    assert gathered.names == []
    assert (gathered.mm("top of apron"), gathered.mm("bottom of apron", 1)) == (380, 600)
    assert sew(pieces.format(wide="40 cm (16 in)"), statements).names == ["edges-do-not-meet"]


def test_a_cuff_is_folded_over_the_end_of_a_tube():
    pieces = (
        "leg | A | 1 | 42 cm (16 1/2 in) | 50 cm (20 in)\ncuff | A | 1 | 42 cm (16 1/2 in) | 10 cm (4 in)"
    )
    statements = """
        tube = join left of leg to right of leg
        ring = join left of cuff to right of cuff
        band bottom of tube with ring
        hem top of tube by 1 cm (3/8 in)
        finish tube
    """
    table = sew(pieces, statements)
    assert table.names == []
    assert table.mm("height of tube", 3) == 530


@pytest.mark.parametrize(
    ("kind", "length", "names"),
    [
        ("C", "56 cm (22 in)", ["cord-too-short"]),
        ("C", "70 cm (28 in)", []),
        ("D", "40 cm (16 in)", []),
        ("D", "60 cm (24 in)", ["cord-too-short"]),
    ],
)
def test_what_is_drawn_through_a_casing(kind: str, length: str, names: list[str]):
    pieces = f"cloth | A | 1 | 30 cm (12 in) | 60 cm (24 in)\nstring | {kind} | 1 | | {length}"
    statements = (
        "bag = fold cloth in half, join sides\n"
        "hem top of bag by 2 cm (3/4 in) twice\n"
        "draw string through bag\n"
        "finish bag"
    )
    table = sew(pieces.replace("56 cm (22 in)", "55 cm (21 5/8 in)"), statements)
    assert table.names == names
