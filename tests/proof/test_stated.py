"""Stated values: one distance is said in one way."""

from __future__ import annotations

from pathlib import Path

import pytest
from proof.proving import found, step, told


@pytest.mark.parametrize(
    ("measures", "single", "carried", "pair"),
    [
        # 4 in are 10.16 cm, carried over to the millimetre.
        ("- a = 4 in (10 cm)\n- b = 4 in", "4 in", "10.2 cm", "4 in (10 cm)"),
        ("- b = 4 in\n- a = 4 in (10 cm)", "4 in", "10.2 cm", "4 in (10 cm)"),
        # 10 cm are 3.937 in: 3 7/8 to the eighth, in whichever unit they are said.
        ("- a = 10 cm (4 in)\n- b = 100 mm", "100 mm", "3 7/8 in", "10 cm (4 in)"),
        ("- a = 250 g (9 oz)\n- b = 250 g", "250 g", "8 3/4 oz", "250 g (9 oz)"),
    ],
)
def test_a_single_value_that_is_carried_over_elsewhere(measures, single, carried, pair, tmp_path: Path):
    (one,) = found(f"## Measures\n{measures}\n", tmp_path)
    problem = one.problem
    assert (problem.slug(), problem.span.text) == ("carried-over-elsewhere", single)
    assert (
        problem.message() == f"`{single}` is carried over to {carried}, and elsewhere it stands as `{pair}`"
    )
    assert [label.span.text for label in problem.labels] == [pair]


@pytest.mark.parametrize(
    "measures",
    [
        "- a = 4 in (10.2 cm)\n- b = 4 in",  # carried over to the same
        "- a = 10 cm (4 in)\n- b = exactly 10 cm",
        "- a = 10 cm (4 in)\n- b = 2 × a",
        "- a = 10 cm (4 in)\n- b = 11 cm",
        "- a = 10 cm (4 in)\n- b = round up(a to 10 cm)",  # a step is no measure
        "- a = 1 kg (2 1/4 lb)\n- b = 1 m",  # of another kind
    ],
)
def test_what_is_not_questioned(measures: str, tmp_path: Path):
    assert told(f"## Measures\n{measures}\n", tmp_path) == []


def test_a_single_value_in_a_statement_and_in_braces_counts_too(tmp_path: Path):
    fragment = "## Measures\n- a = 4 in (10 cm)\n\n" + step("Press {4 in} under.")
    assert [(name, place) for name, place, _ in told(fragment, tmp_path)] == [
        ("carried-over-elsewhere", "4 in")
    ]


@pytest.mark.parametrize(
    ("prose", "place", "message"),
    [
        (
            "Press {2 cm (3/4 in)}, then {2 cm (13/16 in)}.",
            "2 cm (13/16 in)",
            "`2 cm (13/16 in)` is said here, and `2 cm (3/4 in)` elsewhere, for the same distance",
        ),
        (
            "Press {2 cm (3/4 in)}, then {1.9 cm (3/4 in)}.",
            "1.9 cm (3/4 in)",
            "`1.9 cm (3/4 in)` is said here, and `2 cm (3/4 in)` elsewhere, for the same distance",
        ),
        # The statement hems by 1.2 cm (1/2 in).
        (
            "Press {1.3 cm (1/2 in)} under.",
            "1.2 cm (1/2 in)",
            "`1.2 cm (1/2 in)` is said here, and `1.3 cm (1/2 in)` elsewhere, for the same distance",
        ),
    ],
)
def test_one_distance_said_in_two_ways(prose: str, place: str, message: str, tmp_path: Path):
    assert told(step(prose), tmp_path) == [("said-in-two-ways", place, message)]


@pytest.mark.parametrize(
    "prose",
    [
        "Press {2 cm (3/4 in)}, then {20 mm (3/4 in)}.",  # the same, in another unit
        "Press {2 cm (3/4 in)}, then {3/4 in (2 cm)}.",
        "Press {2 cm (3/4 in)}, then {4 cm (1 5/8 in)}.",
    ],
)
def test_the_same_pair_may_be_written_as_one_likes(prose: str, tmp_path: Path):
    assert told(step(prose), tmp_path) == []


def test_two_pairs_in_one_formula(tmp_path: Path):
    fragment = "## Measures\n- a = 2 cm (3/4 in) + 2 × 1.9 cm (3/4 in)\n"
    assert [(name, place) for name, place, _ in told(fragment, tmp_path)] == [
        ("said-in-two-ways", "1.9 cm (3/4 in)")
    ]
    apart = "## Measures\n- a = 2 cm (3/4 in)\n- b = 1.9 cm (3/4 in)\n"
    assert told(apart, tmp_path) == []


def test_a_pair_that_disagrees_is_told_for_that_alone(tmp_path: Path):
    fragment = step("Press {1.2 cm (1/2 in)}, then {3 cm (1/2 in)}.")
    assert [name for name, _, _ in told(fragment, tmp_path)] == ["pair-disagrees"]


def test_a_single_value_in_an_outline_counts_too(tmp_path: Path):
    """A side of 10 cm (4 in) that goes back as 10 cm alone, which is 3 7/8 in, does not close in inches."""
    fragment = (
        "## Outlines\n\n### cloth\n- right 10 cm (4 in) as top\n- down 9 cm (3 1/2 in) as right\n"
        "- left 10 cm as bottom\n- back to the start as left\n\n"
        "## Pieces\n| Piece | From | Cut | Shape |\n|---|---|---|---|\n| cloth | A | 1 | outline |\n"
    )
    assert [(name, place) for name, place, _ in told(fragment, tmp_path)] == [
        ("carried-over-elsewhere", "10 cm")
    ]
