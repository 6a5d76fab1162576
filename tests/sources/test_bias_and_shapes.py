"""Published values and facts of geometry of bias strips, stars, hexagons and folded geese, through recipes.

Values only are quoted; the source stands beside each.
"""

from __future__ import annotations

from fractions import Fraction
from math import cos, pi, sin, sqrt

import pytest
from shapely import Polygon
from sources.test_geometry import QUARTER, eighths, sewn, wrong

WHOLE = 1e-9


def length(expression: str, measures: str = QUARTER) -> float:
    """What an expression comes to in inches, as the width to which a piece is cut."""
    table = sewn(f"patch | A | 1 | {expression} | 9 in", "finish patch", measures=measures)
    return float(table.inches("width of patch"))


# Bias.


def test_bias_from_a_square():
    # G26: side² / width, 20 square, 2 wide: 200 in (published worked example).
    assert length("20 in × 20 in / 2 in") == 200
    # Rows are whole and the seams take their allowance, so the strip that is really cut is never longer.
    statements = "strip = cut continuous bias 2 in wide from square\nfinish strip"
    strip = sewn("square | A | 1 | 20 in | 20 in", statements)
    assert strip.inches("width of strip") == 2 * 6**2 * 2 <= 200


CONTINUOUS = "strip = cut continuous bias 1 in wide from square\nfinish strip"


def test_continuous_bias():
    # G28: 1/4 seams, w = 1, L = 98: n = √(L / 2 w) = 7 rows, square n w √2 + 2 s = 10.40 (published worked
    # example).
    assert length("7 × 1 in × sqrt(2) + 2 × seam") == pytest.approx(10.40, abs=0.005)
    exact = sewn("square | A | 1 | 7 in × sqrt(2) + 2 × seam | 7 in × sqrt(2) + 2 × seam", CONTINUOUS)
    assert exact.inches("width of strip") == 98
    smaller = sewn("square | A | 1 | 10 1/4 in | 10 1/4 in", CONTINUOUS)
    assert smaller.inches("width of strip") == 2 * 6**2


@pytest.mark.parametrize(("strips", "found"), [(5, []), (6, ["too-few-segments"]), (8, ["too-few-segments"])])
def test_bias_strips_along_a_selvedge(strips: int, found: list[str]):
    # G29: strips 2 1/2 wide across 20 in of selvedge: the pitch is w √2 = 3.536, so 5 and not 8 (geometry).
    assert length("2 1/2 in × sqrt(2)") == pytest.approx(3.536, abs=0.0005)
    # The cloth is 40 wide; the strips begin along 20 in of its selvedge and end 40 further down.
    statements = f"{strips} strip = cut bias 2 1/2 in wide from cloth\nfinish strip"
    table = sewn("cloth | A | 1 | 40 in | 60 in", statements)
    assert wrong(table) == found
    assert float(table.inches("width of strip")) == pytest.approx(40 * sqrt(2), abs=WHOLE)


# Shapes.


@pytest.mark.parametrize(("square", "wide"), [("4", "7 1/2"), ("5", "9 1/2")])
def test_a_folded_goose(square: str, wide: str):
    # G09: from squares of 4 and 5 in, 4 × 7 1/2 and 5 × 9 1/2 (published worked example): c × (2 c − 1/2).
    # The rectangle of that size, folded in half, lies between the two squares when they are sewn.
    pieces = (
        f"wing | A | 2 | {square} in | {square} in\nsky | A | 1 | 2 × {square} in - 2 × seam | {square} in"
    )
    statements = (
        "folded sky = fold sky side to side\n"
        "goose = join 2 wing side by side\n"
        "attach folded sky to goose\n"
        "finish goose"
    )
    table = sewn(pieces, statements)
    assert wrong(table) == []
    assert table.inches("height of goose") == eighths(square)
    assert table.inches("width of goose") == table.inches("width of sky") == eighths(wide)


def test_an_eight_point_star():
    # G17: diamonds of side 3: block 10.24 (published worked example, 3.41 times the side; exactly 2 + √2).
    assert length("3 in × (2 + sqrt(2))") == pytest.approx(10.24, abs=0.005)
    assert length("3 in × (2 + sqrt(2))") > length("3 in × 3.41")


def polygon(corners: int, side: float, turned: float = 0.0) -> Polygon:
    radius = side / (2 * sin(pi / corners))
    angles = [2 * pi * i / corners + turned for i in range(corners)]
    return Polygon([(radius * cos(a), radius * sin(a)) for a in angles])


def box_with_allowance(shape: Polygon, allowance: float) -> tuple[float, float]:
    """Width and height of a shape with its allowance, the corners left pointed (shapely)."""
    left, low, right, high = shape.buffer(allowance, join_style="mitre", mitre_limit=10).bounds
    return right - left, high - low


def test_a_hexagon():
    # G18: side 1, s = 1/4: flats 1.732, corners 2; cut, flats 2.232, corners 2.577 (geometry; shapely).
    flats, corners = length("sqrt(3) × 1 in"), length("2 × 1 in")
    cut_flats = length("sqrt(3) × 1 in + 2 × seam")
    cut_corners = length("2 × 1 in + 4 × seam / sqrt(3)")
    assert (flats, corners) == (pytest.approx(1.732, abs=0.0005), 2)
    assert (cut_flats, cut_corners) == (pytest.approx(2.232, abs=0.0005), pytest.approx(2.577, abs=0.0005))
    assert box_with_allowance(polygon(6, 1), 0.25) == (pytest.approx(cut_corners), pytest.approx(cut_flats))


def test_an_equilateral_triangle():
    # G20: side 4, s = 1/4: height 3.464, strip 4.214, its tip untrimmed, cut side 4.866 (geometry; shapely).
    height = length("4 in × sqrt(3) / 2")
    strip = length("4 in × sqrt(3) / 2 + 3 × seam")
    side = length("4 in + 2 × sqrt(3) × seam")
    assert [height, strip, side] == [pytest.approx(value, abs=0.0005) for value in (3.464, 4.214, 4.866)]
    assert box_with_allowance(polygon(3, 4, pi / 2), 0.25) == (pytest.approx(side), pytest.approx(strip))


# Setting triangles by the chart's own rounding of √2.


@pytest.mark.parametrize(
    ("block", "side", "corner"),
    [
        ("4", "7", "3 3/4"),
        ("6", "9 3/4", "5 1/8"),
        ("8", "12 5/8", "6 5/8"),
        ("10", "15 1/2", "8"),
        ("14", "21 1/8", "10 7/8"),
        ("16", "23 7/8", "12 1/4"),
    ],
)
def test_the_chart_of_setting_squares(block: str, side: str, corner: str):
    # G10: side = 1.414 B + 1 1/4, corner = B / 1.414 + 7/8, rounded up to eighths (M. Hohn, table of setting
    # triangles, Oct 2002).
    assert length(f"round up({block} in × 1.414 + 1 1/4 in to 1/8 in)") == eighths(side)
    assert length(f"round up({block} in / 1.414 + 7/8 in to 1/8 in)") == eighths(corner)


def test_the_rounding_of_the_root_decides():
    # G11: block 16 with the exact root: 24, not 23 7/8 (the same table; arithmetic).
    assert length("round up(16 in × sqrt(2) + 1 1/4 in to 1/8 in)") == 24


@pytest.mark.parametrize("step", ["1/4", "1/2"])
def test_rounded_up_to_quarters_or_halves(step: str):
    # G12: block 10: 15.39 becomes 15 1/2 (published worked example).
    assert length(f"round up(10 in × 1.414 + 1 1/4 in to {step} in)") == Fraction(31, 2)


def test_the_rule_for_envelope_backs():
    # G42: insert 16: back 16 / 2 + 4 = 12 (published worked example).
    assert length("16 in / 2 + 4 in") == 12
