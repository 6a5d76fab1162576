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


def test_each_use_of_a_piece_from_an_unknown_material_was_another_problem(tmp_path: Path):
    text = (
        "## Pieces\n| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
        "| cloth | A, Q | 1 | 30 cm (12 in) | 30 cm (12 in) |\n"
        "| patch | A, Q | 1 | 30 cm (12 in) | 30 cm (12 in) |\n"
        "## Steps\n1. Sew.\n\n   ```sew\n   mat = join A cloth, Q cloth, A patch, Q patch side by side\n"
        "   hem all of mat by 1.2 cm (1/2 in) twice\n   finish mat\n   ```\n"
    )
    (first,) = reported(text, tmp_path)
    assert (first.problem.slug(), first.problem.span.text) == ("material-unknown", "Q")
    assert {one.problem.slug() for one in first.under} >= {"material-unknown", "name-unknown"}


def test_an_unknown_size_without_sizes_was_told_what_the_sizes_are(tmp_path: Path):
    (one,) = reported("## Steps\n1. Small only: Done.\n", tmp_path)
    assert one.problem.hint().startswith("list it in `## Sizes`")


TWO_PANELS = (
    "## Pieces\n| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
    "| panel | A | 2 | 30 cm (12 in) | 30 cm (12 in) |\n"
    "## Steps\n1. Sew.\n\n   ```sew\n   {}\n"
    "   hem all of skirt by 1.2 cm (1/2 in) twice\n   finish skirt\n   ```\n"
)


def test_a_tube_of_one_panel_where_a_row_of_two_was_meant_said_only_that_one_is_left(tmp_path: Path):
    text = TWO_PANELS.format("skirt = join right of panel to left of panel")
    (left,) = (one for one in reported(text, tmp_path) if one.problem.slug() == "piece-left-over")
    assert left.problem.hint() == "to sew 2 `panel` to one another, write `join 2 panel side by side`"
    (tube,) = left.problem.labels
    assert (tube.span.text, tube.text) == (
        "skirt = join right of panel to left of panel",
        "makes a tube of one `panel`",
    )


def test_a_piece_that_nothing_uses_was_to_be_cut_no_times(tmp_path: Path):
    row = "| spare strip | A | 2 | 30 cm (12 in) | 6 cm (2 3/8 in) |\n## Steps"
    text = TWO_PANELS.replace("## Steps", row).format("skirt = join 2 panel side by side")
    (left,) = reported(text, tmp_path)
    assert left.problem.message() == "2 `spare strip` are left over: 2 cut, 0 sewn in"
    assert left.problem.hint() == "sew it in, take its row away, or note `spare 2`"


SIZES = "| Size | side |\n|---|---|\n| Small | 30 cm (12 in) |\n| Large | 40 cm (16 in) |\n"
HEMMED = "   ```sew\n   hem all of cloth by 1.2 cm (1/2 in) twice\n   finish cloth\n   ```\n"


def test_a_forgotten_heading_above_a_table_was_told_at_every_name_and_every_number_in_it(tmp_path: Path):
    text = f"{SIZES}\n## Measures\n- strip = 2 × side\n## Steps\n1. Small only: Cut {{strip}}.\n\n{HEMMED}"
    (table,) = reported(text, tmp_path)
    assert (table.problem.slug(), table.problem.hint()) == (
        "table-without-heading",
        "write `## Sizes` on a line above it",
    )
    assert {one.problem.slug() for one in table.under} == {"name-unknown", "size-unknown"}


def test_a_table_of_remarks_may_begin_with_size(tmp_path: Path):
    remarks = "\n## Good to know\n\n| Size | fits |\n|---|---|\n| any | a table |\n"
    assert reported(f"## Steps\n1. Hem it.\n\n{HEMMED}{remarks}", tmp_path) == ()


def test_an_empty_line_in_a_table_was_told_at_every_name_below_it(tmp_path: Path):
    text = (
        "## Pieces\n| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
        "| cloth | A | 1 | 30 cm (12 in) | 30 cm (12 in) |\n\n"
        "| pocket | A | 1 | 9 cm (3 1/2 in) | 9 cm (3 1/2 in) |\n"
        "## Steps\n1. Sew.\n\n   ```sew\n   attach pocket to cloth\n"
        "   hem all of cloth by 1.2 cm (1/2 in) twice\n   finish cloth\n   ```\n"
    )
    (table,) = reported(text, tmp_path)
    assert (table.problem.slug(), table.problem.span.where[0]) == ("table-in-two", line_of(table, "| pocket"))
    assert [one.problem.slug() for one in table.under] == ["name-unknown"]


def test_what_a_misspelt_section_names_was_unknown_everywhere(tmp_path: Path):
    text = f"## Measure\n- strip = 2 cm\n- band = 3 cm\n## Steps\n1. Cut {{strip}} and {{band}}.\n\n{HEMMED}"
    (section,) = reported(text, tmp_path)
    assert section.problem.slug() == "section-nearly-known"
    assert [one.problem.slug() for one in section.under] == ["name-unknown", "name-unknown"]


def test_a_lost_line_of_backticks_was_followed_by_all_that_it_did_not_sew(tmp_path: Path):
    lost = HEMMED.replace("   ```\n", "")
    text = f"## Steps\n1. Hem it.\n\n{lost}\n2. Done.\n\n   ```sew\n   finish cloth\n   ```\n"
    (fence,) = reported(text, tmp_path)
    assert (fence.problem.slug(), fence.problem.span.where[0]) == (
        "fence-not-closed",
        line_of(fence, "   ```sew"),
    )
    assert [one.problem.slug() for one in fence.under] == ["too-few-made"]


def line_of(one: Reported, beginning: str) -> int:
    """The number of the first line that begins so."""
    lines = one.problem.span.source.text.splitlines()
    return next(number for number, line in enumerate(lines, 1) if line.startswith(beginning))
