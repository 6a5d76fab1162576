"""What somebody met who followed the README with a first recipe and made the slips of a beginner."""

from __future__ import annotations

from pathlib import Path

from presscloth.dev import scaffold
from presscloth.pipeline import prove
from presscloth.problems.report import Reported, one_by_one, report


def reported(text: str, folder: Path) -> tuple[Reported, ...]:
    return report(prove(scaffold.write(text, folder)).problems)


def test_an_unknown_unit_was_taken_for_a_name_without_a_sign(tmp_path: Path):
    (unit,) = reported("## Measures\n- seam = 1 smoot (3/8 in)\n", tmp_path)
    assert (unit.problem.slug(), unit.problem.span.text) == ("unit-unknown", "smoot")
    assert unit.problem.message() == "`smoot` is not a unit here"


def test_the_first_word_of_a_name_after_a_number_still_wants_a_sign(tmp_path: Path):
    (sign,) = reported("## Measures\n- hem depth = 2 cm\n- strip = 4 hem depth\n", tmp_path)
    assert (sign.problem.slug(), sign.problem.span.text) == ("sign-missing", "4 hem")


def test_a_missing_cell_of_sizes_was_told_again_wherever_its_measure_was_used(tmp_path: Path):
    text = (
        "## Sizes\n| Size | side |\n|---|---|\n| Small | 3 cm |\n| Large | |\n"
        "## Measures\n- strip = 2 × side\n- band = 3 × side\n## Steps\n1. {strip}, {band}, {side}\n"
    )
    assert [one.problem.slug() for one in one_by_one(reported(text, tmp_path))] == ["size-without-value"]


def test_a_name_that_nothing_bears_was_told_as_a_new_problem_at_each_use(tmp_path: Path):
    text = "## Measures\n- strip = 2 × zygote\n- band = 3 × zygote\n- cord = Zygote\n"
    (first,) = reported(text, tmp_path)
    assert first.problem.span.text == "zygote"
    assert [one.problem.slug() for one in first.under] == ["name-unknown", "name-unknown"]


def test_a_name_that_is_misspelt_twice_is_two_slips(tmp_path: Path):
    text = "## Measures\n- girth = 2 cm\n- band = 3 × girht\n- cord = girht\n"
    assert [one.problem.slug() for one in reported(text, tmp_path)] == ["name-unknown", "name-unknown"]


def test_an_unknown_size_without_sizes_was_told_what_the_sizes_are(tmp_path: Path):
    (one,) = reported("## Steps\n1. Small only: Done.\n", tmp_path)
    assert one.problem.hint().startswith("list it in `## Sizes`")
