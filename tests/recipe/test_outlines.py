"""Reading outlines: runs, their options, and what cannot be read, with its place."""

from __future__ import annotations

import pytest

from presscloth.dev import scaffold
from presscloth.problems import Problem, Problems
from presscloth.recipe.outline import Closed, OutlineText, Towards, expressions
from presscloth.recipe.read import read
from presscloth.recipe.tree import Recipe
from presscloth.sewing.verbs import forms
from presscloth.source import Source

PIECES = """\
## Pieces
| Piece | From | Cut | Shape   |
|-------|------|-----|---------|
| cloth | A    | 1   | outline |
"""


def recipe_of(*runs: str, pieces: str = PIECES) -> tuple[Recipe, tuple[Problem, ...]]:
    listed = "\n".join(f"- {run}" for run in runs)
    text = scaffold.complete(f"## Outlines\n\n### cloth\n{listed}\n\n{pieces}")
    problems = Problems()
    recipe = read(Source("recipe.md", text), slug="r", folder=None, verbs=forms(), problems=problems)
    return recipe, problems.found()


def outline_of(*runs: str) -> OutlineText:
    recipe, problems = recipe_of(*runs)
    assert problems == ()
    (outline,) = recipe.outlines
    return outline


def test_an_outline_is_its_heading_and_its_runs():
    outline = outline_of(
        "right 12 cm (4 3/4 in) as top", "down 8 cm (3 1/8 in) as right", "back to the start as left"
    )
    assert outline.name.text == "cloth"
    assert [run.name.text for run in outline.runs] == ["top", "right", "left"]
    assert outline.closed is Closed.ROUND
    top, right, left = outline.runs
    assert [(move.towards, move.by.span.text) for move in top.legs[0]] == [
        (Towards.RIGHT, "12 cm (4 3/4 in)")
    ]
    assert right.legs[0][0].towards.step == (0, 1)
    assert left.legs == ()


def test_a_slanted_run_goes_two_ways_at_once():
    run = outline_of("right 4 cm and down 9 cm as side", "back to the start as rest").runs[0]
    assert [(move.towards.value, move.by.span.text) for move in run.legs[0]] == [
        ("right", "4 cm"),
        ("down", "9 cm"),
    ]


def test_a_curve_goes_from_point_to_point():
    curve = "curve right 1 cm and down 6 cm then right 4 cm then down seam as neck"
    run = outline_of(f"{curve}, leaving down, arriving right", "back to the start as rest").runs[0]
    assert run.curved and len(run.legs) == 3
    assert (run.leaving, run.arriving) == (Towards.DOWN, Towards.RIGHT)


@pytest.mark.parametrize(
    ("words", "outwards", "by_radius", "amount"),
    [
        ("arched by 2 cm (3/4 in)", True, False, "2 cm (3/4 in)"),
        ("hollowed by seam / 2", False, False, "seam / 2"),
        ("arched with radius 2 × seam", True, True, "2 × seam"),
        ("hollowed with radius max(3 cm, 4 cm)", False, True, "max(3 cm, 4 cm)"),
    ],
)
def test_an_arc_is_by_its_rise_or_its_radius(words, outwards, by_radius, amount):
    arched = outline_of(f"right 4 cm as top, {words}", "back to the start as rest").runs[0].arched
    assert arched is not None
    found = (arched.outwards, arched.by_radius, arched.amount.span.text)
    assert found == (outwards, by_radius, amount)


def test_notches_and_allowances_stand_after_commas():
    first, second = outline_of(
        "right 9 cm as top, notched in the middle, notched at 2 cm and 3 cm, allowance 2 × seam",
        "back to the start as rest, no allowance",
    ).runs
    assert [None if notch is None else notch.span.text for notch in first.notches] == [None, "2 cm", "3 cm"]
    assert first.allowance is not None and first.allowance.span.text == "2 × seam"
    assert second.bare and not first.bare


def test_a_half_is_on_the_fold_or_mirrored():
    half = ("right 9 cm as top", "down 9 cm as side", "left to the fold as bottom")
    assert outline_of(*half, "on the fold").closed is Closed.FOLD
    mirrored = outline_of(*half, "mirrored")
    assert mirrored.closed is Closed.MIRRORED
    assert mirrored.runs[2].to_fold is Towards.LEFT
    assert {"top", "left side", "right side", "bottom"} <= set(mirrored.edges())


def test_every_measure_of_an_outline_is_read():
    outline = outline_of(
        "curve right 1 cm then down 2 cm as a, notched at 3 cm, allowance 4 cm",
        "left 5 cm as b, arched by 6 cm",
        "back to the start as c",
    )
    assert [e.span.text for e in expressions(outline)] == ["1 cm", "2 cm", "3 cm", "4 cm", "5 cm", "6 cm"]


CLOSING = "back to the start as rest"
AGAIN = "right 2 cm as top, no allowance"


@pytest.mark.parametrize(
    ("runs", "slug", "place"),
    [
        (("right 9 cm", CLOSING), "run-unclear", "right 9 cm"),
        (("forward 9 cm as top", CLOSING), "run-unclear", "forward 9 cm"),
        (("right 9 cm and left 2 cm as top", CLOSING), "run-unclear", "right 9 cm and left 2 cm"),
        (("right 9 cm then down 2 cm as top", CLOSING), "run-unclear", "right 9 cm then down 2 cm"),
        (("curve right 9 cm as top", CLOSING), "run-unclear", "curve right 9 cm as top"),
        (("right 9 cm as top, leaving down", CLOSING), "run-unclear", "right 9 cm as top, leaving down"),
        (("right 9 cm as top, bent by 2 cm", CLOSING), "run-unclear", "bent by 2 cm"),
        (("right 9 cm as top", "on the fold", "down 2 cm as right"), "run-unclear", "down 2 cm as right"),
        (("right 9 cm as top", "left to the fold as low", CLOSING), "run-unclear", "left to the fold as low"),
        (("right 9 cm as top", "right 2 cm as top, no allowance", CLOSING), "run-unclear", AGAIN),
        (("right 9 cm as half a top", CLOSING), "name-not-allowed", "half a top"),
        (("right 9 as top, arched by", CLOSING), "run-unclear", "arched by"),
        (("right 9 cm plus as top", CLOSING), "words-left-over", "plus"),
        (("right bnad as top", CLOSING), "name-unknown", "bnad"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_told_at_its_place(runs, slug, place):
    _, problems = recipe_of(*runs)
    found = [(problem.slug(), problem.span.text) for problem in problems]
    assert found == [(slug, place)]


def test_what_is_no_list_under_a_heading_is_told():
    text = scaffold.complete(
        f"## Outlines\n\nSome words.\n\n### cloth\n- right 9 cm as top\n- {CLOSING}\n\n{PIECES}"
    )
    problems = Problems()
    read(Source("recipe.md", text), slug="r", folder=None, verbs=forms(), problems=problems)
    assert [(p.slug(), p.span.text) for p in problems.found()] == [("content-unexpected", "Some words.")]


def test_a_piece_with_an_outline_has_no_other_sizes():
    pieces = PIECES.replace("| Shape   |", "| Shape   | Width |").replace("| outline |", "| outline | 9 cm |")
    pieces = pieces.replace("|---------|", "|---------|-------|")
    _, problems = recipe_of("right 9 cm as top, arched by 2 cm", CLOSING, pieces=pieces)
    (problem,) = problems
    assert (problem.slug(), problem.hint()) == ("side-left-over", "leave both cells empty")


def test_an_outline_does_not_depend_on_a_choice_however_far_behind():
    text = scaffold.complete(
        "## Measures\n- reach = 9 cm, yours to choose from 5 cm to 12 cm\n- span = 2 × reach\n\n"
        f"## Outlines\n\n### cloth\n- right 4 cm as top\n- down span as right\n- {CLOSING}\n\n{PIECES}"
    )
    problems = Problems()
    read(Source("recipe.md", text), slug="r", folder=None, verbs=forms(), problems=problems)
    assert [(p.slug(), p.span.text) for p in problems.found()] == [("outline-chosen", "span")]
    (problem,) = problems.found()
    assert "`reach`" in problem.message()
