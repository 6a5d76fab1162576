"""Published quantities, asked of whole recipes; the source stands beside each."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from presscloth.cutting.taking import Bought
from presscloth.measure import System
from presscloth.pipeline import prove_source
from presscloth.problems import Problems
from presscloth.source import Source

IMPERIAL = System.IMPERIAL

RECIPE = """\
---
title: Quantities
release: 2027-01
written in: imperial
systems: imperial
language: en
---

## Materials

| Key | Material | Form   | Width   | Length   | Sold by   | Notes   |
|-----|----------|--------|---------|----------|-----------|---------|
| A   | Cotton   | {form} | {width} | {length} | {sold_by} | {notes} |

## Pieces

| Piece | From | Cut | Width | Height | Grain |
|-------|------|-----|-------|--------|-------|
{pieces}

## Steps

1. Cut everything.
"""


def bought(
    pieces: str,
    *,
    width: str,
    length: str = "",
    form: str = "fabric",
    sold_by: str = "1/8 yd",
    notes: str = "",
) -> Bought:
    """What a maker buys for pieces, given as `count × width × height`, perhaps with `× grain`."""
    cells = [[*row.split(" × "), ""][:4] for row in pieces.split("; ")]
    rows = "\n".join(f"| p{chr(97 + i)} | A | {' | '.join(row)} |" for i, row in enumerate(cells))
    text = RECIPE.format(form=form, width=width, length=length, sold_by=sold_by, notes=notes, pieces=rows)
    problems = Problems()
    proved = prove_source(Source("quantities.md", text), Path("quantities.md"), problems)
    assert [p.message() for p in proved.problems] == []
    (size,) = proved.sizes
    (purchase,) = size.buying.purchases.values()
    return purchase.by_system[IMPERIAL]


# Squares from a fat quarter of 18 × 22 in: published worked example or common practice; the arithmetic
# was verified.
@pytest.mark.parametrize(("square", "count"), [("2", 99), ("2 1/2", 56), ("3", 42), ("3 1/2", 30), ("4", 20)])
def test_squares_from_a_fat_quarter(square: str, count: int) -> None:
    def needed(number: int) -> Fraction:
        rows = f"{number} × {square} in × {square} in"
        return bought(rows, width="22 in", length="18 in", form="fat quarter", sold_by="").buy

    assert needed(count) == 1
    assert needed(count + 1) == 2


def test_five_inch_squares_per_yard() -> None:
    """56 of 5 in from a yard of 40 in (published worked example or common practice)."""
    assert bought("56 × 5 in × 5 in", width="40 in", sold_by="1 yd").buy == 36
    assert bought("57 × 5 in × 5 in", width="40 in", sold_by="1 yd").buy == 72


def test_half_a_yard_cannot_hold_the_cushion_squares() -> None:
    """N09: squares of 19 × 19, 19 × 13, 19 × 15 in on 40–44 in cloth: published as half a yard; 7/8."""
    for width in ("40 in", "44 in"):
        found = bought("1 × 19 in × 19 in; 1 × 19 in × 13 in; 1 × 19 in × 15 in", width=width)
        assert found.need == 28
        assert found.buy == Fraction(63, 2)
        assert found.proved


def test_binding_strips() -> None:
    """G33: seven strips 2 1/2 in wide: 17 1/2 in of cloth, half a yard (published worked example)."""
    found = bought("7 × 40 in × 2 1/2 in", width="40 in")
    assert found.need == Fraction(35, 2)
    assert found.buy == 18


def test_round_cloth_of_ninety_inches() -> None:
    """A round cloth cut 91 in from cloth wide enough: 2 5/8 yd (published tablecloth worked example)."""
    found = bought("1 × 91 in × 91 in", width="96 in")
    assert found.buy == Fraction(21, 8) * 36


def test_pattern_repeat() -> None:
    """Four drops of 114 in with a repeat of 11 in: 4 × 121 = 484 in (published drapery worked example)."""
    found = bought("4 × 54 in × 114 in", width="54 in", notes="repeat 11 in")
    assert found.need == 484
    assert found.buy == Fraction(27, 2) * 36  # 13.44 yd, up to the next eighth


def test_drops_without_a_repeat() -> None:
    """N20: the same without a repeat: 456 in is 12.67 yd and not 12.6, as was published: buy 12 3/4."""
    found = bought("4 × 54 in × 114 in", width="54 in")
    assert found.need == 456
    assert found.buy == Fraction(51, 4) * 36


def test_backing_in_two_lengths() -> None:
    """A backing of 65 × 78 in with one seam: two lengths of 65, 3 5/8 yd (published worked example, 2015)."""
    found = bought("2 × 39 in × 65 in", width="42 in")
    assert found.need == 130
    assert found.buy == Fraction(29, 8) * 36


def test_shrinking_cloth_is_bought_longer() -> None:
    """10 % lost in the wash: 90 in of washed cloth are 100 in from the shop (geometry)."""
    found = bought("1 × 36 in × 90 in", width="44 in", notes="shrinks 10 %")
    assert found.need == 100


# Squares cut from washed cotton with 43 1/2 in of usable width: a shop's published table, every second
# row. An exact fit loses a row there, since the cut end is straightened first.
CUTS = ("1/8", "1/4", "1/3", "3/8", "1/2", "5/8", "2/3", "3/4", "7/8", "1")
SQUARES = {
    1: (172, 344, 473, 559, 731, 946, 989, 1118, 1333, 1505),
    2: (42, 84, 105, 126, 168, 231, 231, 273, 315, 351),
    3: (14, 28, 42, 56, 70, 98, 98, 112, 140, 154),
    4: (10, 20, 20, 30, 40, 50, 50, 60, 70, 80),
    5: (0, 8, 16, 16, 24, 32, 32, 40, 48, 56),
    6: (0, 7, 7, 14, 14, 21, 21, 28, 35, 35),
}
MISPRINTS = {(2, "1"): 357}
"""17 rows of 21 are 357 and not 351."""


@pytest.mark.parametrize("side", SQUARES)
def test_squares_per_cut(side: int) -> None:
    for cut, published in zip(CUTS, SQUARES[side], strict=True):
        count = MISPRINTS.get((side, cut), published)
        assert not one_cut_holds(count + 1, side, cut)
        assert count == 0 or one_cut_holds(count, side, cut)


def one_cut_holds(count: int, side: int | str, cut: str) -> bool:
    row = f"{count} × {side} in × {side} in"
    found = bought(row, width="43 1/2 in", sold_by=f"{cut} yd", notes="straightened")
    return found.buy == Fraction(cut) * 36


def test_a_misprint_is_not_reproduced() -> None:
    """Published: 351 squares of 2 in from a yard; one more can be cut, and six."""
    assert one_cut_holds(352, 2, "1")


def test_an_exact_fit_is_enough_where_nothing_is_straightened() -> None:
    """The same squares by the printed arithmetic of a fat quarter: 18 / 3 = 6 rows, none is lost."""
    assert bought("84 × 3 in × 3 in", width="43 1/2 in", sold_by="1/2 yd").buy == 18
    assert bought("84 × 3 in × 3 in", width="43 1/2 in", sold_by="1/2 yd", notes="straightened").buy == 36


def test_round_cloth_in_two_lengths() -> None:
    """A round cloth of 90 in from 54 in cloth: two lengths of 91 in, 182 in, 5 1/8 yd (published)."""
    found = bought("2 × 54 in × 91 in", width="54 in")
    assert (found.need, found.buy) == (182, Fraction(41, 8) * 36)


def test_rectangular_cloth() -> None:
    """Table 40 × 80 in, drop 11 1/2, hem 1/2: cut 64 × 104 in, from 66 in cloth 104 in (published sizes)."""
    assert bought("1 × 64 in × 104 in", width="66 in").need == 104


def test_curtain_widths() -> None:
    """Two curtains of 70 in at 54 in: three widths side by side (published worked example)."""
    assert bought("3 × 54 in × 90 in", width="54 in").need == 270


def test_pillow_squares() -> None:
    """Four squares of 15 in for two pillows: half a yard of 60 in cloth, 7/8 yd of 54 in (newspaper)."""
    assert bought("4 × 15 in × 15 in", width="60 in").buy == 18
    assert bought("4 × 15 in × 15 in", width="54 in").buy == Fraction(7, 8) * 36


def test_binding_for_a_large_quilt() -> None:
    """60 × 80 in: eight strips of 2 1/2 in, 20 in of cloth (derived from the published estimate)."""
    assert bought("8 × 40 in × 2 1/2 in", width="40 in").need == 20


def test_five_bias_strips_from_twenty_inches() -> None:
    """Strips 2 1/2 in wide on the bias lie 2 1/2 × √2 = 3.536 in apart along the selvedge (geometry).

    Beside each other they take far less than five squares around them would.
    """
    found = bought("5 × 2 1/2 in × 20 in × bias", width="43 in", sold_by="1/8 yd")
    square = (Fraction(5, 2) + 20) * Fraction(707, 1000)
    assert square <= found.need < 2 * square
