"""What a sold thing measures: by the metre in one market, by the yard in the other."""

from __future__ import annotations

import pytest
from cutting.shopping import only, proved

from presscloth.measure import System
from presscloth.problems import Severity

# A fat quarter is half of a metre, or half of a yard, by half of the cloth's width (common practice).
QUARTER = "A | Prints | fat quarter | 55 cm (22 in) | 50 cm (18 in) |  |"


def test_half_a_metre_and_half_a_yard_are_both_a_fat_quarter() -> None:
    """Squares of 10 cm: 5 × 5 from 55 × 50 cm; of 4 in: 5 × 4 from 22 × 18 in (published: 20)."""
    (purchase,) = only(QUARTER, "patch | A | 25 | 10 cm (4 in) | 10 cm (4 in)").buying.purchases.values()
    assert purchase.by_system[System.METRIC].buy == 1
    assert purchase.by_system[System.IMPERIAL].buy == 2


def test_a_tape_in_whole_lengths_is_wound_by_the_metre_or_by_the_yard() -> None:
    tape = "A | Twill tape | tape |  | 5 m (5 yd) | 1 |"
    (purchase,) = only(tape, "tie | A | 5 |  | 95 cm (37 1/2 in)").buying.purchases.values()
    assert purchase.by_system[System.METRIC].buy == 1
    assert purchase.by_system[System.IMPERIAL].buy == 2


@pytest.mark.parametrize(
    "row",
    [
        QUARTER.replace("50 cm (18 in)", "50 cm (17 in)"),  # farther apart than a metre and a yard
        QUARTER.replace("50 cm (18 in)", "50 cm (28 in)"),
        "A | Cotton | fabric | 110 cm (40 in) |  | 10 cm (1/8 yd) |",  # cut from the roll: one cloth
    ],
)
def test_other_pairs_must_agree(row: str) -> None:
    found = proved(row, "patch | A | 1 | 10 cm (4 in) | 10 cm (4 in)")
    assert {type(p).__name__ for p in found.problems if p.severity is Severity.ERROR} == {"PairDisagrees"}
