"""Ranges of choice, letters of materials, what braces print, and statements that could not be read."""

from __future__ import annotations

from pathlib import Path

import pytest
from proof.proving import found, step, told

from presscloth.problems.report import one_by_one


@pytest.mark.parametrize(
    ("measure", "messages"),
    [
        ("5 cm (2 in), yours to choose from 4 cm (1 5/8 in) to 8 cm (3 1/8 in)", []),
        ("4 cm (1 5/8 in), yours to choose from 4 cm (1 5/8 in) to 8 cm (3 1/8 in)", []),
        (
            "9 cm (3 1/2 in), yours to choose from 4 cm (1 5/8 in) to 8 cm (3 1/8 in)",
            [
                "`a` is stated as 9 cm, and is to be chosen from 4 cm to 8 cm",
                "`a` is stated as 3 1/2 in, and is to be chosen from 1 5/8 in to 3 1/8 in",
            ],
        ),
        (
            "5 cm (2 in), yours to choose from 8 cm (3 1/8 in) to 4 cm (1 5/8 in)",
            [
                "`a` is stated as 5 cm, and is to be chosen from 8 cm to 4 cm",
                "`a` is stated as 2 in, and is to be chosen from 3 1/8 in to 1 5/8 in",
            ],
        ),
        # 20 cm is the end itself, and 7 7/8 in lies beyond it.
        (
            "20 cm (7 7/8 in), yours to choose from 10 cm (4 in) to 20 cm (7 3/4 in)",
            ["`a` is stated as 7 7/8 in, and is to be chosen from 4 in to 7 3/4 in"],
        ),
    ],
)
def test_choices(measure: str, messages: list[str], tmp_path: Path):
    outside = [
        one
        for one in found(f"## Measures\n- a = {measure}\n", tmp_path)
        if one.problem.slug() == "choice-outside"
    ]
    assert [variant.problem.message() for one in outside for variant in one.all_variants] == messages


def materials(*keys: str) -> str:
    rows = "".join(f"| {key} | Cotton {key} | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |\n" for key in keys)
    head = "| Key | Material | Form | Width | Sold by |\n|---|---|---|---|---|\n"
    pieces = "## Pieces\n| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
    cloth = f"| cloth | {', '.join(keys)} | 1 | 30 cm (12 in) | 30 cm (12 in) |\n"
    return f"## Materials\n{head}{rows}\n{pieces}{cloth}\n## Steps\n1. Press it.\n"


@pytest.mark.parametrize(
    ("keys", "message"),
    [
        ("AB", None),
        ("ABCDEFGHJKLMNP", None),  # the trade leaves I and O out
        ("ABCDEFGHIJKLMNOP", None),
        ("BA", None),
        ("AC", "no material has the letter B, though a later one is used"),
        ("AE", "no material has the letters B, C, D, though a later one is used"),
    ],
)
def test_letters(keys: str, message: str | None, tmp_path: Path):
    assert [said for _, _, said in told(materials(*keys), tmp_path)] == ([message] if message else [])


@pytest.mark.parametrize(
    ("brace", "name", "place"),
    [
        ("{seam × seam}", "area-printed", "seam × seam"),
        ("{7 cm (2 3/4 in) / seam}", "number-differs", "7 cm (2 3/4 in) / seam"),
        ("{sheet}", "name-unknown", "sheet"),
        ("{width of sheet}", "name-unknown", "sheet"),
        ("{2 × cloth}", "thing-not-measure", "cloth"),
        ("{buy Q}", "not-bought", "buy Q"),
        ("{depth of cloth}", "no-such-measure", "depth of cloth"),
        ("{seam + 2}", "unlike-measures", "seam + 2"),
    ],
)
def test_what_cannot_be_printed(brace: str, name: str, place: str, tmp_path: Path):
    assert [one[:2] for one in told(step(f"Hem it by {brace}."), tmp_path)] == [(name, place)]


@pytest.mark.parametrize(
    "brace", ["{cloth}", "{Cloths}", "{7 cm (2 3/4 in) / seam, imperial}", "{2 × seam}", "{buy A}"]
)
def test_what_can_be_printed(brace: str, tmp_path: Path):
    assert told(step(f"Hem it by {brace}."), tmp_path) == []


def test_what_follows_from_an_unread_statement_hangs_under_it(tmp_path: Path):
    statements = "hem bottom of cloth by 1.2 cm (1/2 in)\nhme left of cloth by 1.2 cm (1/2 in)"
    (one,) = found(step("Hem it.", statements), tmp_path)
    assert one.problem.slug() == "verb-unknown"
    assert [other.problem.slug() for other in one_by_one(one.under)] == ["raw-edge-shows"]


def test_what_is_wrong_before_an_unread_statement_stands_by_itself(tmp_path: Path):
    statements = "hem bottom of cloth by 40 cm (16 in)\nhme left of cloth by 1.2 cm (1/2 in)"
    slugs = [one.problem.slug() for one in found(step("Hem it.", statements), tmp_path)]
    assert slugs[-1] == "verb-unknown"
    assert len(slugs) == 2


def test_a_measure_that_is_wrong_by_itself_is_not_hidden_under_a_statement(tmp_path: Path):
    fragment = "## Measures\n- a = 7.5 cm (2 in)\n\n" + step(
        "Hem it.", "hme left of cloth by 1.2 cm (1/2 in)"
    )
    assert {one.problem.slug() for one in found(fragment, tmp_path)} == {"pair-disagrees", "verb-unknown"}
