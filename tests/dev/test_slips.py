"""The harness of slips makes real slips and tells truly what became of them."""

from __future__ import annotations

import pytest

from presscloth.dev.slip_makers import Slip
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


def test_a_measure_that_nothing_meets_is_a_free_choice(proved: Proved, slips: tuple[Slip, ...]) -> None:
    grown = Slip("a digit", one(slips, "a digit").edits, choice=True)
    both = tuple((span, "16 cm (6 1/4 in)") for span in [_stated(proved)])
    outcome = try_slip(Slip("a digit", both, choice=True), proved.path, RECIPE, printed(proved))
    assert outcome.became == "survived"
    told = report([outcome, Outcome("x", grown, "error", "pair-disagrees")])
    assert "caught: 1 of 1 that are no free choice (100.0 %)" in told
    assert "free choices: 1 of 2 (50.0 %)" in told
    assert "nothing else has to meet it" in told


def _stated(proved: Proved) -> Span:
    assert proved.recipe is not None
    return proved.recipe.measures[1].expression.span
