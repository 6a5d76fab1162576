"""An author's Checks, held in every size and both systems."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from proof.proving import found, told

from presscloth.measure import Kind, Quantity, System
from presscloth.proof.checks import holds
from presscloth.recipe.expression import Comparison

M = System.METRIC


def length(value: Fraction | int) -> Quantity:
    return Quantity(Kind.LENGTH, Fraction(value), Fraction(value))


def number(value: int) -> Quantity:
    return Quantity(Kind.NUMBER, Fraction(value), Fraction(value))


@pytest.mark.parametrize(
    ("comparison", "less", "same", "more"),
    [
        (Comparison.EQUAL, False, True, False),
        (Comparison.LESS, True, False, False),
        (Comparison.AT_MOST, True, True, False),
        (Comparison.MORE, False, False, True),
        (Comparison.AT_LEAST, False, True, True),
    ],
)
def test_comparisons(comparison: Comparison, less: bool, same: bool, more: bool):
    for left, expected in ((9, less), (10, same), (11, more)):
        assert holds(comparison, length(left), length(10), None, M) is expected
        assert holds(comparison, number(left), number(10), None, M) is expected


def test_a_thousandth_of_a_millimetre_is_nothing():
    near, far = Fraction(10_000_9, 10_000), Fraction(10_001, 1000)
    assert holds(Comparison.EQUAL, length(near), length(10), None, M)
    assert not holds(Comparison.LESS, length(10), length(near), None, M)
    assert not holds(Comparison.EQUAL, length(far), length(10), None, M)
    assert holds(Comparison.LESS, length(10), length(far), None, M)


def test_within():
    for left, expected in ((7, False), (8, True), (10, True), (12, True), (13, False)):
        assert holds(Comparison.WITHIN, length(left), length(10), length(2), M) is expected


def fragment(check: str, sizes: str = "") -> str:
    return f"{sizes}## Measures\n- gap = 10 cm (4 in)\n- opening = 18 cm (7 in)\n\n## Checks\n- {check}\n"


def test_a_check_that_holds(tmp_path: Path):
    within = "gap within 1 mm (1/16 in) of 10 cm (4 in)"
    for check in ("gap < opening", "gap + seam <= 11 cm (4 3/8 in): so", within):
        assert [name for name, _, _ in told(fragment(check), tmp_path) if name.startswith("check")] == []


def test_a_check_that_fails(tmp_path: Path):
    assert told(fragment("gap > opening: a *hand* must pass"), tmp_path) == [
        (
            "check-fails",
            "gap > opening",
            "`gap > opening` does not hold: 10 cm / 4 in against 18 cm / 7 in (a hand must pass)",
        )
    ]
    assert told(fragment("opening / gap = 2"), tmp_path) == [
        ("check-fails", "opening / gap = 2", "`opening / gap = 2` does not hold: 1.8 / 1 3/4 against 2")
    ]


def test_what_shows_no_difference_as_printed_is_shown_more_exactly(tmp_path: Path):
    assert told(fragment("gap <= exactly 101 mm"), tmp_path) == [
        (
            "check-differs",
            "gap <= exactly 101 mm",
            "`gap <= exactly 101 mm` holds in metric and fails in imperial: 4 in against 3.976 in",
        )
    ]


def test_each_size_is_held_and_told_with_its_own_values(tmp_path: Path):
    sizes = (
        "## Sizes\n| Size | edge |\n|---|---|\n| Small | 9 cm (3 1/2 in) |\n| Large | 6 cm (2 3/8 in) |\n\n"
    )
    (one,) = found(fragment("gap < edge", sizes), tmp_path)
    assert [variant.problem.message() for variant in one.all_variants] == [
        "`gap < edge` does not hold: 10 cm / 4 in against 9 cm / 3 1/2 in",
        "`gap < edge` does not hold: 10 cm / 4 in against 6 cm / 2 3/8 in",
    ]
    assert [variant.sizes for variant in one.all_variants] == [("Small",), ("Large",)]
    (one,) = found(fragment("Large only: gap < edge", sizes), tmp_path)
    assert one.sizes == ("Large",)


def test_a_recipe_in_one_system_is_held_in_that_one(tmp_path: Path):
    front = "---\nsystems: metric\n---\n\n"
    assert told(front + fragment("gap <= exactly 101 mm"), tmp_path) == []
    (one,) = found(front + fragment("gap <= exactly 99 mm"), tmp_path)
    assert one.problem.slug() == "check-fails"


def test_like_is_compared_with_like(tmp_path: Path):
    for check, message in (
        ("gap > 3", "a length and a number cannot be added or compared"),
        ("gap × gap > gap", "an area and a length cannot be added or compared"),
        ("gap within 2 of opening", "a length and a length cannot be added or compared"),
    ):
        (one,) = told(fragment(check), tmp_path)
        assert one[0] == "unlike-measures"
        assert one[2] == message or check.startswith("gap within")


def test_a_broken_side_is_told_once(tmp_path: Path):
    broken = "## Measures\n- gap = 7.5 cm (2 in)\n\n## Checks\n- gap > 2 cm\n- gap < 1 m\n"
    assert [name for name, _, _ in told(broken, tmp_path)] == ["pair-disagrees"]
