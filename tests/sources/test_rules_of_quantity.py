"""The rules behind published quantities, held beyond the rows that were published."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor

import pytest
from sources.test_quantities import CUTS, MISPRINTS, SQUARES, one_cut_holds

HALVES = [Fraction(side, 2) for side in range(2, 14)]


def by_the_rule(side: Fraction, cut: str) -> int:
    """F22: rows of whole squares across 43 1/2 in; along, an exact fit loses one row."""
    return (ceil(Fraction(cut) * 36 / side) - 1) * floor(Fraction(87, 2) / side)


def test_the_published_cells_follow_the_rule_but_for_the_misprint() -> None:
    """F22: (⌈L / s⌉ − 1) × ⌊43.5 / s⌋, of the cells at hand all but one."""
    off = {
        (side, cut): (printed, by_the_rule(Fraction(side), cut))
        for side, row in SQUARES.items()
        for cut, printed in zip(CUTS, row, strict=True)
        if printed != by_the_rule(Fraction(side), cut)
    }
    assert off == {(2, "1"): (351, 357)}
    assert MISPRINTS == {(2, "1"): 357}


@pytest.mark.parametrize("side", HALVES, ids=str)
def test_twelve_sizes_and_ten_cuts_hold_what_the_rule_says(side: Fraction) -> None:
    """All twelve sizes of the table, 1 to 6 1/2 in, also those whose rows are not at hand."""
    whole, half = divmod(side, 1)
    written = f"{whole} 1/2" if half else f"{whole}"
    for cut in CUTS:
        count = by_the_rule(side, cut)
        assert not one_cut_holds(count + 1, written, cut)
        assert count == 0 or one_cut_holds(count, written, cut)
