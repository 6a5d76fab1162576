"""Expressions worked out in one size, in both systems at once."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from spec.running import exactly, reported, value

from presscloth.dev import scaffold
from presscloth.measure import Kind
from presscloth.pipeline import Proved, prove

PRESS = "\n## Steps\n1. Press it.\n"


def proved(measures: str, tmp_path: Path, *, more: str = "", front: str = "") -> Proved:
    return prove(scaffold.write(f"{front}## Measures\n{measures}\n{more}{PRESS}", tmp_path))


def exact(expression: str, measures: str, tmp_path: Path) -> str:
    found = proved(measures, tmp_path)
    assert found.problems == ()
    return exactly(expression, found.sizes[0])


@pytest.mark.parametrize(
    ("expression", "measures", "expected"),
    [
        # A pair gives one value to each system; sums stay apart.
        ("4 × block + 2 × strip", "- block = 15 cm (6 in)\n- strip = 6 mm (1/4 in)", "612 mm, 49/2 in"),
        # 10 cm are 3.937 in, which is 31.496 eighths.
        ("a", "- a = 10 cm", "100 mm, 31/8 in"),
        # 2 cm are 0.787 in, which is 12.6 sixteenths.
        ("a", "- a = 2 cm", "20 mm, 13/16 in"),
        ("a", "- a = exactly 1 in", "127/5 mm, 1 in"),
        ("a / 3", "- a = exactly 1 in", "127/15 mm, 1/3 in"),
        ("a × a", "- a = 2 cm (3/4 in)", "400 mm², 9/16 in²"),
        ("a × a / a", "- a = 2 cm (3/4 in)", "20 mm, 3/4 in"),
        ("a / b", "- a = 112 cm (44 in)\n- b = 15 cm (6 in)", "112/15, 22/3"),
        ("round up(a / b)", "- a = 112 cm (44 in)\n- b = 15 cm (6 in)", "8"),
        ("round down(a / b)", "- a = 112 cm (44 in)\n- b = 15 cm (6 in)", "7"),
        ("round up(a to 1 cm (1/2 in))", "- a = 11.3 cm (4 7/16 in)", "120 mm, 9/2 in"),
        ("round(a to 1 cm (1/2 in))", "- a = 11.5 cm (4 1/2 in)", "120 mm, 9/2 in"),
        ("max(a, b) - min(a, b)", "- a = 5 cm (2 in)\n- b = 7 cm (2 3/4 in)", "20 mm, 3/4 in"),
        # Three and four make five.
        ("sqrt(a × a + b × b)", "- a = exactly 3 cm\n- b = exactly 4 cm", "50 mm, 250/127 in"),
        ("-a + 2 × a", "- a = 5 cm (2 in)", "50 mm, 2 in"),
        ("a × 3 %", "- a = 1 m (40 in)", "30 mm, 6/5 in"),
        ("w", "- w = 250 g (9 oz)", "250 g, 9 oz"),
        ("w", "- w = 100 g", "100 g, 7/2 oz"),
    ],
)
def test_values(expression: str, measures: str, expected: str, tmp_path: Path):
    assert exact(expression, measures, tmp_path) == expected


def test_pi_has_forty_digits(tmp_path: Path):
    found = proved("- a = exactly 1 mm", tmp_path)
    quantity = value("pi × a", found.sizes[0])
    assert quantity.metric == Fraction("3.141592653589793238462643383279502884197")
    assert quantity.rooted


@pytest.mark.parametrize(
    ("measures", "name", "place", "message"),
    [
        ("- a = 5 cm (2 in) + 2", "unlike-measures", "5 cm (2 in) + 2", "a length and a number cannot be"),
        (
            "- a = 2 / (5 cm)",
            "measures-nothing",
            "2 / (5 cm)",
            "a number divided by a length measures nothing",
        ),
        ("- a = 5 cm × 5 cm × 5 cm", "measures-nothing", "5 cm × 5 cm × 5 cm", "an area times a length"),
        ("- a = sqrt(5 cm)", "measures-nothing", "sqrt(5 cm)", "the root of a length"),
        ("- a = 5 cm\n- b = a / (a - a)", "divides-by-nothing", "(a - a)", "`(a - a)` is nothing"),
        ("- a = sqrt(0 - 2)", "root-of-negative", "sqrt(0 - 2)", "a root of something below nothing"),
        ("- a = round up(5 cm)", "step-unclear", "round up(5 cm)", "does not say to what step"),
        ("- a = round up(5 cm to 2)", "step-unclear", "round up(5 cm to 2)", "a step that is a number"),
        ("- a = round up(5 cm to 1 cm - 1 cm)", "step-unclear", None, "does not say to what step"),
        ("- a = 0.2 mm", "becomes-nothing", "0.2 mm", "rounded to 1/16 in is nothing"),
        ("- a = 7.5 cm (2 in)", "pair-disagrees", "7.5 cm (2 in)", "24.2 mm apart, 32 % of the larger"),
    ],
)
def test_problems(measures: str, name: str, place: str | None, message: str, tmp_path: Path):
    (one,) = reported(proved(measures, tmp_path))
    assert one.problem.slug() == name
    assert place is None or one.problem.span.text == place
    assert message in one.problem.message()


def test_one_broken_measure_gives_one_message_however_often_it_is_used(tmp_path: Path):
    found = proved(
        "- a = 7.5 cm (2 in)\n- b = 2 × a\n- c = max(a, b, seam)\n- d = round up(c to a)", tmp_path
    )
    assert [one.problem.slug() for one in reported(found)] == ["pair-disagrees"]


def test_about_is_handed_on_and_widens_what_agrees(tmp_path: Path):
    found = proved("- a = 6 cm (2 1/2 in), about\n- b = a / 2\n- c = seam", tmp_path)
    assert found.problems == ()
    assert [value(name, found.sizes[0]).about for name in "abc"] == [True, True, False]
    assert [one.problem.slug() for one in reported(proved("- a = 6 cm (2 1/2 in)", tmp_path))] == [
        "pair-disagrees"
    ]


def test_a_measure_that_differs_by_size(tmp_path: Path):
    sizes = "## Sizes\n| Size | a |\n|---|---|\n| Small | 5 cm (2 in) |\n| Large | 7 cm (2 3/4 in) |\n\n"
    found = proved("- b = 2 × a", tmp_path, front=sizes)
    assert [exactly("b", size) for size in found.sizes] == ["100 mm, 4 in", "140 mm, 11/2 in"]


def test_a_measure_that_is_not_in_a_size_is_told_only_where_it_is_used(tmp_path: Path):
    sizes = "## Sizes\n| Size | a |\n|---|---|\n| Small | – |\n| Large | 7 cm (2 3/4 in) |\n\n"
    assert proved("- b = 2 × a", tmp_path, front=sizes).problems == ()
    check = "\n## Checks\n- b > 2 cm (3/4 in)\n"
    (one,) = reported(proved("- b = 2 × a", tmp_path, front=sizes, more=check))
    assert (one.problem.slug(), one.sizes) == ("not-in-this-size", ("Small",))
    assert one.problem.span.text == "a"


def test_a_recipe_in_one_system_is_worked_out_in_that_one(tmp_path: Path):
    front = "---\nsystems: metric\n---\n\n"
    assert proved("- a = 0.2 mm", tmp_path, front=front).problems == ()
    head = "\n## Pieces\n| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
    pieces = f"{head}| cloth | A | a / b | 30 cm | 30 cm |\n"
    measures = "- a = 45 cm (17 3/4 in)\n- b = 15 cm (6 in)"
    assert proved(measures, tmp_path, front=front, more=pieces).problems == ()
    (one,) = reported(proved(measures, tmp_path, more=pieces))
    assert one.problem.message() == "the number of `cloth` is 3 in metric and 2 23/24 in imperial"


def test_kinds(tmp_path: Path):
    found = proved("- a = 2 cm (3/4 in)\n- w = 250 g (9 oz)", tmp_path)
    kinds = {
        text: value(text, found.sizes[0]).kind for text in ("a", "a × a", "a / a", "w", "w / w", "2 × w")
    }
    assert kinds == {
        "a": Kind.LENGTH,
        "a × a": Kind.AREA,
        "a / a": Kind.NUMBER,
        "w": Kind.WEIGHT,
        "w / w": Kind.NUMBER,
        "2 × w": Kind.WEIGHT,
    }
