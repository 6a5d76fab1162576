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
    """What a maker buys for pieces, given as `count × width × height` in rows."""
    rows = "\n".join(
        f"| p{chr(97 + i)} | A | {' | '.join(row.split(' × '))} |  |"
        for i, row in enumerate(pieces.split("; "))
    )
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
    """Squares of 19 × 19, 19 × 13 and 19 × 15 in on 40–44 in cloth: published as about half a yard; 7/8."""
    for width in ("40 in", "44 in"):
        found = bought("1 × 19 in × 19 in; 1 × 19 in × 13 in; 1 × 19 in × 15 in", width=width)
        assert found.need == 32 if width == "36 in" else found.need >= 28
        assert found.buy == Fraction(63, 2)
        assert found.proved


def test_binding_strips() -> None:
    """Seven strips 2 1/2 in wide: 17 1/2 in of cloth, half a yard (published worked example)."""
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
    """The same without a repeat: 456 in is 12.67 yd and not 12.6, as was published: buy 12 3/4."""
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
