"""Stitching out, trimming, segments, triangle units and settings on point."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest
from sewing.table import sew

IMPERIAL = "---\nsystems: imperial\n---"


@pytest.mark.parametrize(
    ("design", "names", "systems"),
    [
        ("12 cm (4 3/4 in) by 16 cm (6 1/4 in)", [], ()),
        ("16 cm (6 1/4 in) by 12 cm (4 3/4 in)", [], ()),
        ("12 cm (4 3/4 in) by 18 cm (7 1/8 in)", ["stitching-outside-field"], ("imperial",)),
        ("14 cm (5 1/2 in) by 18 cm (7 in)", ["stitching-outside-field"], ()),
    ],
)
def test_what_is_stitched_out_lies_inside_the_field(design: str, names: list[str], systems: tuple[str, ...]):
    # A field that is called 5 × 7 in is 130 × 180 mm (common practice, no source): millimetres decide.
    table = sew(
        "ground | A | 1 | 20 cm (8 in) | 25 cm (10 in)",
        f"badge = stitch out ground, {design}, in exactly 130 mm by exactly 180 mm\n"
        f"hem all of badge by 1 cm (3/8 in)\n"
        f"finish badge",
    )
    assert table.names == names
    if names:
        assert table.first.systems == systems


def test_a_field_of_100_mm_is_less_than_4_in():
    # 4 in are 101.6 mm (exact); the field is 100 mm = 3.94 in (common practice, no source).
    table = sew(
        "ground | A | 1 | 20 cm (8 in) | 25 cm (10 in)",
        "badge = stitch out ground, 10 cm (4 in) by 10 cm (4 in), in exactly 100 mm by exactly 100 mm\n"
        "hem all of badge by 1 cm (3/8 in)\n"
        "finish badge",
    )
    assert table.names == ["stitching-outside-field"]
    assert table.first.systems == ("imperial",)


def test_trimming_makes_all_edges_raw_again():
    table = sew(
        "cloth | A | 1 | 30 cm (12 in) | 40 cm (16 in)",
        "hem top of cloth by 1 cm (3/8 in)\n"
        "trim cloth to 20 cm (8 in) by 20 cm (8 in)\n"
        "hem all of cloth by 1 cm (3/8 in)\n"
        "finish cloth",
    )
    assert table.names == []
    assert table.mm("finished height of cloth", 2) == 180


def test_segments_are_counted_in_whole_ones():
    pieces = "strip | A | 2 | 40 in | 2 1/2 in"
    statements = (
        "{n} segment = cut 2 1/2 in wide from 2 strip\nrow = join {n} segment side by side\nfinish row"
    )
    table = sew(pieces, statements.format(n=32), measures="seam = 1/4 in", rest=IMPERIAL)
    assert table.names == ["raw-edge-shows"]
    assert table.made.used[("strip", "A")] == 2
    assert table.inches("width of row") == 32 * 2 + Fraction(1, 2)
    assert (
        "too-few-segments"
        in sew(pieces, statements.format(n=33), measures="seam = 1/4 in", rest=IMPERIAL).names
    )
    assert (
        "fewer-would-do"
        in sew(pieces, statements.format(n=16), measures="seam = 1/4 in", rest=IMPERIAL).names
    )


def test_a_root_that_comes_to_a_whole_number_of_segments_holds_them():
    pieces = "strip | A | 1 | sqrt(2) × sqrt(2) × 20 in | 2 1/2 in"
    statements = "16 segment = cut 2 1/2 in wide from strip\nrow = join 16 segment side by side\nfinish row"
    assert sew(pieces, statements, measures="seam = 1/4 in", rest=IMPERIAL).names == ["raw-edge-shows"]


def units(at_once: int, square: str, count: int):
    pieces = f"light | A | 2 | {square} | {square}\ndark | A | 2 | {square} | {square}"
    statements = (
        f"{count} unit = pair light with dark into {at_once}\n"
        f"row = join {count} unit side by side\n"
        f"finish row"
    )
    return sew(pieces, statements, measures="seam = 1/4 in", rest=IMPERIAL)


@pytest.mark.parametrize(
    ("at_once", "square", "as_cut"),
    [
        # Cut 3 7/8 in for 3 in: the trade's 7/8 is 0.021 in more than (2 + √2) s (geometry).
        (2, "3 7/8 in", 3.875 - sqrt(2) / 4),
        (4, "8 in", (8 - 0.5) / sqrt(2)),
        (8, "7 3/4 in", 3.875 - sqrt(2) / 4),
    ],
)
def test_half_square_units(at_once: int, square: str, as_cut: float):
    table = units(at_once, square, 2 * at_once)
    assert float(table.inches("width of unit")) == pytest.approx(as_cut, abs=1e-12)
    assert table.made.used == {("light", "A"): 2, ("dark", "A"): 2}
    # What shows of 3 in is 0.021 in too large, and is trimmed.
    if square == "3 7/8 in":
        assert float(table.inches("finished width of unit")) - 3 == pytest.approx(0.0214, abs=0.0001)


def test_units_come_out_in_whole_goes():
    assert "does-not-come-out" in units(4, "8 in", 6).names


def test_a_half_square_triangle_of_the_trade():
    # Cut 3 7/8 in, two of them sewn on the long side and trimmed to 3 1/2 in (published worked example).
    pieces = (
        "light | A | 1 | 3 7/8 in | | half-square triangle\ndark | A | 1 | 3 7/8 in | | half-square triangle"
    )
    statements = (
        "unit = join long side of light to long side of dark\ntrim unit to 3 1/2 in by 3 1/2 in\nfinish unit"
    )
    table = sew(pieces, statements, measures="seam = 1/4 in", columns=" Shape |", rest=IMPERIAL)
    assert table.names == ["raw-edge-shows"]
    assert table.inches("finished width of unit") == 3
    assert float(table.inches("long side of light")) == pytest.approx(3.875 * sqrt(2))


def test_an_oversized_triangle_unit_is_trimmed():
    # Cut 4 1/8 in, trimmed to 3 1/2 in (published worked example); 2 1/4 in for 1 1/2 in is too small to
    # be trimmed to 2 in, 2 3/8 in is enough (published, and wrong: 1 1/2 + 7/8 = 2 1/4).
    statements = (
        "2 unit = pair light with dark into 2\n"
        "trim unit to {trimmed} by {trimmed}\n"
        "row = join 2 unit side by side\n"
        "finish row"
    )
    for square, trimmed, names in (
        ("4 1/8 in", "3 1/2 in", ["raw-edge-shows"]),
        ("2 3/8 in", "2 in", ["raw-edge-shows"]),
        ("2 1/4 in", "2 in", ["trimmed-larger", "raw-edge-shows"]),
    ):
        pieces = f"light | A | 1 | {square} | {square}\ndark | A | 1 | {square} | {square}"
        table = sew(pieces, statements.format(trimmed=trimmed), measures="seam = 1/4 in", rest=IMPERIAL)
        assert table.names == names


def test_four_quarter_square_triangles_make_a_square():
    pieces = (
        "light | A | 2 | 4 1/4 in | | quarter-square triangle\n"
        "dark | A | 2 | 4 1/4 in | | quarter-square triangle"
    )
    statements = (
        "2 big = join left of light to right of dark\n"
        "unit = join long side of big to long side of big\n"
        "finish unit"
    )
    table = sew(
        pieces,
        statements.replace("big", "wedge"),
        measures="seam = 1/4 in",
        columns=" Shape |",
        rest=IMPERIAL,
    )
    assert table.names == ["raw-edge-shows"]
    # S − 2√2 s: 4 1/4 in give 3.543 in, 3.043 in as sewn (geometry: F = S − (2 + 2√2) s).
    assert float(table.inches("finished width of unit")) == pytest.approx(4.25 - (2 + 2 * sqrt(2)) / 4)


def on_point(
    rows: int, squares: str, triangles: str, block: str, side: str, corner: str, statement: str = ""
):
    pieces = f"""
        block  | A | 50 | {block} + 1/2 in | {block} + 1/2 in |
        filler | A | 50 | {side} | | quarter-square triangle
        corner | A | 4 | {corner} | | half-square triangle
    """
    statements = f"quilt = set {squares} on point in {rows} rows with {triangles}\nfinish quilt"
    return sew(pieces, statements, measures="seam = 1/4 in", columns=" Shape |", rest=IMPERIAL)


def test_four_by_five_squares_on_point():
    # 4 × 5: 32 blocks, 14 side triangles, 4 corners (published chart of squares set on point).
    table = on_point(4, "32 block", "14 filler, 4 corner", "10 in", "15 1/2 in", "8 in")
    assert "setting-miscounted" not in table.names
    outside = (15.5 - 10 * sqrt(2) - 2 * sqrt(2) / 4) / 2
    corner_outside = (8 - 10 / sqrt(2) - sqrt(2) / 4) / 2
    assert float(table.inches("width of quilt")) == pytest.approx(
        5 * 10 * sqrt(2) + 2 * min(outside, corner_outside)
    )
    assert (
        "setting-miscounted"
        in on_point(4, "31 block", "14 filler, 4 corner", "10 in", "15 1/2 in", "8 in").names
    )
    assert (
        "setting-miscounted"
        in on_point(4, "32 block", "13 filler, 4 corner", "10 in", "15 1/2 in", "8 in").names
    )


def test_a_square_in_a_square():
    # Centre 6 in: corner triangles from squares of 5 1/8 in; the block finishes at 8.485 in (published
    # worked example).
    table = on_point(1, "block", "4 corner", "6 in", "1 in", "5 1/8 in")
    names = [name for name in table.names if name not in ("piece-left-over", "raw-edge-shows")]
    assert names == []
    outside = (5.125 - 6 / sqrt(2) - sqrt(2) / 4) / 2
    assert float(table.inches("width of quilt")) - 2 * outside == pytest.approx(8.485, abs=0.001)


def test_triangles_that_do_not_reach_the_stitch_line():
    table = on_point(4, "32 block", "14 filler, 4 corner", "10 in", "14 1/2 in", "8 in")
    assert "triangle-too-small" in table.names
