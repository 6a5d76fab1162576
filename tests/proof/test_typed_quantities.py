"""Quantities typed in prose, held against what the layouts need."""

from __future__ import annotations

import pytest
from cutting.shopping import proved

from presscloth.problems import Problem
from presscloth.proof.typed_quantities import TypedQuantityTooSmall

CUSHION = "front | A | 1 | 48 cm (19 in) | 48 cm (19 in)\nback | A | 2 | 48 cm (19 in) | 35 cm (14 in)"
COTTON = "A | Cotton, plain | fabric | 110 cm (43 in) |  | 10 cm (1/8 yd) |"


def found(words: str, pieces: str = CUSHION, materials: str = COTTON) -> list[Problem]:
    steps = f"1. Cut.\n\n## Before you begin\n\n{words}"
    return [p for p in proved(materials, pieces, steps).problems if isinstance(p, TypedQuantityTooSmall)]


def test_about_half_a_yard_for_three_cushion_pieces() -> None:
    """Two backs of 14 in, one behind the other beside the front: 28 in, so that 7/8 yd is bought."""
    (problem,) = found("You need about half a yard of cotton.")
    assert problem.message() == (
        "`about half a yard` of Cotton, plain is too little: the pieces take 28 in, and 7/8 yd is bought"
    )
    assert problem.hint() == "write `{buy A}`, which follows every size"


@pytest.mark.parametrize(
    "words",
    [
        "You need a yard of cotton.",
        "You need 90 cm of the plain cotton.",
        "Turn under 2 cm of cotton.",
        "You need about half a yard of linen.",
        "You need half a yard, and patience.",
    ],
)
def test_enough_or_of_something_else(words: str) -> None:
    assert found(words) == []


def test_metric_is_held_against_metric() -> None:
    (problem,) = found("It takes 60 cm of cotton.")
    assert "take 70 cm, and 70 cm is bought" in problem.message()
    assert problem.systems == ("metric",)


def test_a_name_that_fits_two_is_held_against_the_one_that_needs_least() -> None:
    materials = COTTON + "\nB | Cotton, striped | fabric | 110 cm (43 in) |  | 10 cm (1/8 yd) |"
    pieces = CUSHION + "\ntab | B | 1 | 10 cm (4 in) | 20 cm (8 in)"
    assert found("You need 30 cm of cotton.", pieces, materials) == []
    assert len(found("You need 10 cm of cotton.", pieces, materials)) == 1
