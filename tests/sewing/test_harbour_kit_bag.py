"""One whole recipe: every value of it worked out by hand, and slips that must be found."""

from __future__ import annotations

import json
from collections.abc import Callable
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from presscloth.measure import System
from presscloth.pipeline import Proved, prove_source
from presscloth.problems import Problem, Problems
from presscloth.problems.report import report
from presscloth.recipe.lexer import tokens
from presscloth.recipe.reckoning import ExpressionReader
from presscloth.source import Passage, Source

FOLDER = Path(__file__).parent / "harbour-kit-bag"
TEXT = (FOLDER / "recipe.md").read_text("utf-8")
EXPECTED = json.loads((FOLDER / "expected.json").read_text("utf-8"))

SIZES = ["Small", "Tall", "Large"]


@cache
def proved(*changes: tuple[str, str]) -> Proved:
    """The recipe with some of its text exchanged."""
    text = TEXT
    for old, new in changes:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    return prove_source(Source("recipe.md", text), FOLDER / "recipe.md", Problems())


def tops(proof: Proved) -> list[Problem]:
    """The problems that are shown: those that follow from others hang under them."""
    return [one.problem for one in report(proof.problems)]


def size_of(proof: Proved, name: str):
    return next(size for size in proof.sizes if size.edition.size.name == name)


CASES = [(size, what) for size in SIZES for what in EXPECTED[size]]


@pytest.mark.parametrize(("size", "what"), CASES)
def test_every_value_in_both_systems(size: str, what: str):
    worked = size_of(proved(), size)
    passage = Passage.of(Source("x", what).span(0, len(what)))
    value = worked.value(ExpressionReader(passage, Problems(), tokens(passage)).expression(), None)
    wanted = EXPECTED[size][what]
    assert value[System.METRIC] == Fraction(wanted["metric"])
    assert value[System.IMPERIAL] == Fraction(wanted["imperial"])


def test_nothing_is_wrong_with_it():
    assert [f"{p.slug()}: {p.message()}" for p in proved().problems] == []


def test_what_is_optional_and_what_belongs_to_a_size():
    for name in SIZES:
        sewn = size_of(proved(), name).sewn
        assert sewn.optional == {("pocket", "C"): 1}
        assert len(sewn.constructions) == 2
        assert (("side tab", "B") in sewn.fullest.used) is (name == "Large")


@pytest.mark.parametrize(("size", "count"), [("Small", 4), ("Tall", 4), ("Large", 6)])
def test_joins_that_are_not_measured_are_counted(size: str, count: int):
    not_measured = size_of(proved(), size).sewn.fullest.not_measured
    assert sum(each.count for each in not_measured) == count


def found(*changes: tuple[str, str], where: Callable[[Problem], bool] = lambda _: True) -> list[Problem]:
    return [problem for problem in tops(proved(*changes)) if where(problem)]


def test_a_badge_of_4_in_does_not_fit_into_100_mm():
    old = "| Small | exactly 100 mm | exactly 100 mm | 9 cm (3 1/2 in)  | 9 cm (3 1/2 in)  |"
    new = old.replace("9 cm (3 1/2 in)", "10 cm (4 in)")
    problems = found((old, new))
    assert [p.slug() for p in problems] == ["stitching-outside-field"]
    assert problems[0].systems == ("imperial",)
    assert problems[0].sizes == ("Small",)


def test_a_lining_that_is_half_an_allowance_short():
    row = "| lining           | C    | 1   | front width + 2 × seam | 2 × front height + 2 × seam |"
    problems = found((row, row.replace("2 × front height + 2 × seam", "2 × front height + seam    ")))
    assert {p.slug() for p in problems} == {"edges-do-not-meet"}
    for problem in problems:
        assert problem.span.text == "bag = line outer with liner"
        assert "5 mm (3/16 in) apart" in problem.message()
        assert any("lining" in label.span.text for label in problem.labels)


def test_too_few_and_too_many_side_strips():
    row = "| side strip       | A    | 2   |"
    few = found((row, row.replace("| 2   |", "| 1   |")))
    assert [p.slug() for p in few] == ["too-few-cut"]
    assert few[0].message() == "2 `side strip` wanted, 1 cut"
    many = found((row, row.replace("| 2   |", "| 3   |")))
    assert [p.slug() for p in many] == ["piece-left-over"]
    assert many[0].message() == "1 `side strip` is left over: 3 cut, 2 sewn in"


def test_a_head_strip_that_is_an_allowance_short():
    row = "| head strip       | B    | 1   | front width + 2 × seam |"
    problems = found((row, row.replace("front width + 2 × seam", "front width + seam    ")))
    assert {p.slug() for p in problems} == {"edges-do-not-meet"}
    assert problems[0].span.text == "front = join head strip, middle, foot strip top to bottom"
    assert "1 cm (3/8 in) apart" in problems[0].message()


def test_the_wrong_edge_of_the_back():
    problems = found(("join bottom of front to bottom of back", "join bottom of front to right of back"))
    assert {p.slug() for p in problems} == {"edges-do-not-meet"}
    small = next(p for p in problems if "Small" in p.sizes)
    assert "21 cm (8 1/4 in)" in small.message()
    assert "26 cm (10 1/4 in)" in small.message()
