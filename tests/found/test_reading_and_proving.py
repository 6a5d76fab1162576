"""Faults that were found once in reading, working out and proving; each stays mended."""

from __future__ import annotations

from pathlib import Path

import pytest
from proof.proving import found, step, told
from spec.running import exactly, handouts

from presscloth.dev import scaffold
from presscloth.pipeline import prove

PIECES = "## Pieces\n| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
SQUARE = "30 cm (12 in) | 30 cm (12 in)"
HEM = "hem all of cloth by 1.2 cm (1/2 in) twice"


def test_a_name_in_braces_that_nothing_bears_was_not_reported_and_broke_the_handout(tmp_path: Path):
    assert told(step("Hem it by {saem}."), tmp_path) == [
        ("name-unknown", "saem", "nothing in this recipe is called `saem`")
    ]


def test_a_sewn_thing_in_braces_was_not_reported_and_broke_the_handout(tmp_path: Path):
    fragment = step("Hem the {sheet}.", f"sheet = {HEM}").replace("finish cloth", "finish sheet")
    assert [name for name, _, _ in told(fragment, tmp_path)] == ["thing-not-measure"]


def test_an_unknown_thing_was_reported_by_the_reader_and_again_by_whoever_asked_for_it(tmp_path: Path):
    fragment = "## Measures\n- a = width of sheet\n\n## Checks\n- a > 1 cm\n"
    assert [one[:2] for one in told(fragment, tmp_path)] == [("name-unknown", "sheet")]


def test_the_place_of_a_name_in_brackets_took_the_brackets_in(tmp_path: Path):
    fragment = "## Measures\n- a = sqrt(bnad) × (bnad)\n- band = 5 cm (2 in)\n"
    assert {one[1] for one in told(fragment, tmp_path)} == {"bnad"}


def test_a_name_with_a_small_word_was_told_once_more_wherever_it_was_used(tmp_path: Path):
    fragment = "## Measures\n- half gap = 5 cm (2 in)\n- b = 2 × half gap\n\n" + step(
        "Leave {half gap} open.", f"{HEM}\nhem bottom of cloth by half gap"
    )
    assert [one[:2] for one in told(fragment, tmp_path)] == [("name-not-allowed", "half gap")]


def test_a_size_in_a_row_that_could_not_be_read_was_called_unknown_too(tmp_path: Path):
    sizes = "## Sizes\n| Size | side |\n|---|---|\n| Small | 30 cm (12 in) |\n| Large |\n\n"
    fragment = sizes + step("Hem it.") + "\n2. Large only: Press it.\n"
    assert [one[0] for one in told(fragment, tmp_path)] == ["cell-missing"]


def test_a_step_for_an_unknown_size_was_followed_by_what_it_did_not_sew(tmp_path: Path):
    head = PIECES.replace("| Height |", "| Height | Sizes |").replace("|---|\n", "|---|---|\n")
    rows = f"{head}| cloth | A | 1 | {SQUARE} | |\n| tab | A | 1 | {SQUARE} | One size |\n\n"
    steps = step("Hem it.").replace("   finish cloth\n", "")
    later = "\n2. Two sizes only: Sew it on.\n\n   ```sew\n   attach tab to cloth\n   ```\n"
    last = "\n3. Done.\n\n   ```sew\n   finish cloth\n   ```\n"
    (one,) = found(rows + steps + later + last, tmp_path)
    assert one.problem.slug() == "size-unknown"
    assert [other.problem.slug() for other in one.under] == ["piece-left-over"]


def test_a_material_that_could_not_be_read_was_missed_among_the_letters(tmp_path: Path):
    sold = "110 cm (43 in) | 10 cm (1/8 yd)"
    rows = f"| A | Cotton | fabrik | {sold} |\n| B | Linen | fabric | {sold} |\n"
    head = "## Materials\n| Key | Material | Form | Width | Sold by |\n|---|---|---|---|---|\n"
    pieces = f"\n{PIECES}| cloth | B | 1 | {SQUARE} |\n"
    assert [one[0] for one in told(head + rows + pieces, tmp_path)] == ["form-unknown"]


@pytest.mark.parametrize(
    ("measure", "message"),
    [
        (
            "round up(5 cm (2 in) to 2)",
            "`round up(5 cm (2 in) to 2)` rounds a length to a step that is a number",
        ),
        ("2 × half", "`half` stands after `×`, where a number or a name should stand"),
        ("5 cm × 5 cm + 1 cm", "an area and a length cannot be added or compared"),
        ("5 cm (", "this bracket is not closed"),
    ],
)
def test_messages_that_said_the_wrong_thing(measure: str, message: str, tmp_path: Path):
    assert [one[2] for one in told(f"## Measures\n- a = {measure}\n", tmp_path)] == [message]


def test_a_range_without_ends_was_quoted_with_its_value(tmp_path: Path):
    (one,) = found("## Measures\n- a = 5 cm (2 in), yours to choose\n", tmp_path)
    assert one.problem.span.text == "yours to choose"
    assert one.problem.hint() == (
        "name both ends of the range: `yours to choose from 40 cm (16 in) to 80 cm (32 in)`"
    )


def test_a_cell_that_is_empty_was_reported_at_its_whole_row(tmp_path: Path):
    line = "| cloth | A | 1 | 30 cm (12 in) | |"
    (one,) = found(f"{PIECES}{line}\n", tmp_path)
    assert (one.problem.slug(), one.problem.span.where[1]) == ("side-missing", len(line))


def test_two_readings_of_a_statement_were_shown_as_the_same_pattern_twice(tmp_path: Path):
    rows = "".join(f"| {name} | A | 1 | {SQUARE} |\n" for name in ("cloth", "pocket", "A pocket"))
    (one,) = found(
        PIECES + rows + "\n" + step("Join.", "front = join A pocket, cloth side by side"), tmp_path
    )
    assert "`A pocket`, `cloth`, or as `pocket` cut from `A`, `cloth`" in one.problem.hint()


def test_what_a_check_needs_was_hidden_by_an_earlier_quiet_look(tmp_path: Path):
    sizes = "## Sizes\n| Size | tab |\n|---|---|\n| Small | – |\n| Large | 5 cm (2 in) |\n\n"
    fragment = f"{sizes}## Measures\n- strip = 2 × tab\n\n## Checks\n- strip > 2 cm (3/4 in)\n"
    (one,) = found(fragment, tmp_path)
    assert (one.problem.slug(), one.sizes) == ("not-in-this-size", ("Small",))


def test_a_check_that_misses_by_little_was_printed_as_if_it_held(tmp_path: Path):
    fragment = "## Measures\n- a = 10 cm (4 in)\n\n## Checks\n- a <= exactly 101 mm\n"
    assert "4 in against 3.976 in" in told(fragment, tmp_path)[0][2]


def test_a_failure_in_both_systems_was_told_as_one_in_metric(tmp_path: Path):
    fragment = "## Measures\n- a = 9 cm (3 1/2 in), yours to choose from 4 cm (1 5/8 in) to 8 cm (3 1/8 in)\n"
    (one,) = found(fragment, tmp_path)
    assert [variant.systems for variant in one.all_variants] == [("metric",), ("imperial",)]


def test_a_recipe_in_one_system_was_held_in_the_other(tmp_path: Path):
    fragment = "---\nsystems: metric\n---\n\n## Measures\n- a = 0.1 mm\n- b = 7 cm (2 3/4 in)\n\n" + step(
        "Mark {b / seam} times."
    )
    proved = prove(scaffold.write(fragment, tmp_path))
    assert proved.problems == ()
    assert "Mark 7 times." in handouts(proved)["One size"]
    assert exactly("a", proved.sizes[0]).startswith("1/10 mm")


def test_a_number_asked_for_in_one_system_was_printed_in_the_other(tmp_path: Path):
    fragment = "## Measures\n- b = 7 cm (2 3/4 in)\n\n" + step("Mark {b / seam, imperial} times.")
    assert "Mark 7 1/3 times." in handouts(prove(scaffold.write(fragment, tmp_path)))["One size"]


def test_what_to_buy_was_printed_in_braces_as_a_length_to_cut(tmp_path: Path):
    printed = handouts(prove(scaffold.write(step("Buy {buy A}."), tmp_path)))["One size"]
    assert "Buy 30 cm (3/8 yd)." in printed


def test_a_pair_that_disagrees_was_also_said_in_two_ways(tmp_path: Path):
    fragment = step("Press {1.2 cm (1/2 in)}, then {3 cm (1/2 in)}.")
    assert [one[0] for one in told(fragment, tmp_path)] == ["pair-disagrees"]


def test_a_picture_with_a_name_longer_than_any_file_ended_the_program(tmp_path: Path):
    fragment = step(f"Look: ![the corner]({'a' * 5000}.png)")
    assert [one[0] for one in told(fragment, tmp_path)] == ["picture-missing"]


def test_a_message_was_broken_into_lines_as_the_text_was(tmp_path: Path):
    (one,) = told(step("Press 2\n   cm under."), tmp_path)
    assert one[2] == "`2 cm` is typed by hand and follows no size"


def test_a_long_text_was_quoted_whole(tmp_path: Path):
    (one,) = told(f"## Measures\n- a = 5 cm ) {'b ' * 70}\n- c = 3 cm {'d ' * 70}\n", tmp_path)[1:]
    assert len(one[2]) < 200


def test_a_short_verb_with_two_letters_swapped_had_no_suggestion(tmp_path: Path):
    (one,) = found(step("Hem it.", "hme all of cloth by 1.2 cm (1/2 in) twice"), tmp_path)
    assert one.problem.hint() == "write `hem`"


def test_a_statement_that_begins_with_an_equals_sign_was_taken_for_a_verb(tmp_path: Path):
    (one,) = found(step("Hem it.", f"= {HEM}"), tmp_path)
    assert one.problem.message() == "there is no name before the `=`"
