"""The harness of slips makes real slips and tells truly what became of them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from presscloth.dev.slip_makers import Slip
from presscloth.dev.slip_places import Held, held
from presscloth.dev.slips import Outcome, printed, report, slips_in, try_slip
from presscloth.pipeline import Proved, prove
from presscloth.source import Span

RECIPE = """\
---
title: Two Panels
release: 2027-03
written in: metric
language: en
sewn: yes
---

## Measures

- seam = 1 cm (3/8 in)
- side = 15 cm (6 in)

## Materials

| Key | Material | Form   | Width          | Sold by        |
|-----|----------|--------|----------------|----------------|
| A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |

## Pieces

| Piece | From | Cut | Width           | Height          |
|-------|------|-----|-----------------|-----------------|
| front | A    | 1   | side + 2 × seam | side + 2 × seam |
| back  | A    | 1   | side + 2 × seam | side + 2 × seam |

## Steps

1. Join front and back with {seam} seams, and hem the top.

   ```sew
   pouch = join front to back on left, right, bottom
   hem top of pouch by seam
   finish pouch
   ```
"""


@pytest.fixture(scope="module")
def proved(tmp_path_factory: pytest.TempPathFactory) -> Proved:
    path = tmp_path_factory.mktemp("recipes") / "recipe.md"
    path.write_text(RECIPE, encoding="utf-8")
    found = prove(path)
    assert [problem.message() for problem in found.problems] == []
    return found


@pytest.fixture(scope="module")
def slips(proved: Proved) -> tuple[Slip, ...]:
    return tuple(slips_in(proved))


def one(slips: tuple[Slip, ...], kind: str) -> Slip:
    return next(slip for slip in slips if slip.kind == kind)


def test_every_kind_that_the_recipe_has_a_place_for(slips: tuple[Slip, ...]) -> None:
    assert {slip.kind for slip in slips} == {
        "allowance lost",
        "allowance doubled",
        "a digit",
        "inch for centimetre",
        "count off by one",
        "wrong piece",
        "wrong edge",
        "step dropped",
        "pair disagrees",
        "typed by hand",
    }


def test_a_slip_changes_its_place_and_nothing_else(slips: tuple[Slip, ...]) -> None:
    made = one(slips, "allowance lost").made_in(RECIPE)
    assert made == RECIPE.replace("side + 2 × seam", "side + 1 × seam", 1)


@pytest.mark.parametrize(
    ("kind", "became", "by"),
    [
        ("allowance lost", "error", "edges-do-not-meet"),
        ("pair disagrees", "error", "pair-disagrees"),
        ("typed by hand", "warning", "typed-by-hand"),
        ("count off by one", "error", "piece-left-over"),
    ],
)
def test_what_became_of_it(proved: Proved, slips: tuple[Slip, ...], kind: str, became: str, by: str) -> None:
    outcome = try_slip(one(slips, kind), proved.path, RECIPE, printed(proved))
    assert (outcome.became, outcome.by) == (became, by)


# Which values are free choices is decided before any slip is made.


def place(proved: Proved, text: str, nth: int = 0) -> Span:
    """Where a text stands in the recipe."""
    assert proved.recipe is not None
    source = proved.recipe.source
    start = -1
    for _ in range(nth + 1):
        start = source.text.index(text, start + 1)
    return source.span(start, start + len(text))


def test_a_cell_that_must_meet_another_is_held(proved: Proved) -> None:
    # The front's width meets the back's along the bottom.
    found = held(place(proved, "side + 2 × seam"), proved)
    assert "edges that meet" in {each.rule for each in found}
    assert {each.apart for each in found if each.rule == "edges that meet"} == {Fraction(0)}


def test_a_measure_on_which_both_sides_depend_alike_is_a_free_choice(proved: Proved) -> None:
    # Front and back grow together, and nothing else has to meet them.
    assert held(place(proved, "15 cm (6 in)"), proved) == ()


def test_a_check_holds_what_it_speaks_of(tmp_path: Path) -> None:
    path = tmp_path / "recipe.md"
    path.write_text(f"{RECIPE}\n## Checks\n\n- side >= 14 cm (5 1/2 in): a hand goes in\n", encoding="utf-8")
    found = prove(path)
    assert [problem.message() for problem in found.problems] == []
    by = held(place(found, "15 cm (6 in)"), found)
    assert [(each.rule, each.apart) for each in by] == [("checks", Fraction(10))]


def test_the_report_leaves_free_choices_out_and_explains_survivors(
    proved: Proved, slips: tuple[Slip, ...]
) -> None:
    grown = Slip("a digit", one(slips, "a digit").edits, (place(proved, "15 cm (6 in)"),))
    free = Outcome("x", grown, "survived", "")
    near = Held("checks", Fraction(3))
    bound = Outcome("x", grown, "survived", "", (near, Held("edges that meet", Fraction(40))))
    caught = Outcome("x", grown, "error", "pair-disagrees", (near,))
    nameless = Outcome("x", one(slips, "wrong edge"), "survived", "")
    told = report([free, bound, caught, nameless])
    assert "caught: 1 of 3 that are no free choice (33.3 %)" in told
    assert "of free choices: 1 of all 4 (25.0 %), 0 of them caught all the same" in told
    assert "a free choice: no comparison of two things depends on it" in told
    assert "held 2 times (checks, edges that meet); the nearest, checks, leaves 3.0 mm" in told
    assert "no rule speaks of it" in told


def test_a_step_is_held_by_what_is_rounded_to_it(tmp_path: Path) -> None:
    # Its halves need not agree, so that it could not be a measure as it stands.
    path = tmp_path / "recipe.md"
    measure = "- room = round up(side + 2 cm (3/4 in) to 5 mm (1/4 in))"
    text = RECIPE.replace("- side = 15 cm (6 in)\n", f"- side = 15 cm (6 in)\n{measure}\n")
    path.write_text(f"{text}\n## Checks\n\n- room >= 14 cm (5 1/2 in): a hand goes in\n", encoding="utf-8")
    found = prove(path)
    assert [problem.message() for problem in found.problems] == []
    by = held(place(found, "5 mm (1/4 in)"), found)
    assert [each.rule for each in by] == ["checks"]
