"""Optional steps, alternatives, choices and sizes: each way is proved."""

from __future__ import annotations

from sewing.table import sew, sew_recipe

from presscloth.dev import scaffold

CLOTH = "cloth | A | 1 | 30 cm (12 in) | 30 cm (12 in)\n"
HEM = "hem all of cloth by 1 cm (3/8 in)\nfinish cloth"


def test_what_only_an_optional_step_uses_is_optional():
    table = sew(
        CLOTH + "tab | A | 3 | 4 cm (1 5/8 in) | 8 cm (3 1/8 in)",
        f"attach tab to cloth\nOptional: attach 2 tab to cloth\n{HEM}",
    )
    assert table.names == []
    assert table.sizes[0].optional == {("tab", "A"): 2}
    assert len(table.sizes[0].constructions) == 2


def test_all_none_and_each_alone():
    pieces = CLOTH + "tab | A | 1 | 4 cm (1 5/8 in) | 8 cm (3 1/8 in)\nloop | C | 1 | | 8 cm (3 1/8 in)"
    table = sew(pieces, f"Optional: attach tab to cloth\nOptional: attach loop to cloth\n{HEM}")
    assert table.names == []
    used = [sorted(name for name, _ in made.used) for made in table.sizes[0].constructions]
    assert used == [["cloth", "loop", "tab"], ["cloth", "loop"], ["cloth", "tab"], ["cloth"]]


def test_a_thing_that_is_left_when_a_step_is_left_out():
    table = sew(
        CLOTH + "tab | A | 1 | 4 cm (1 5/8 in) | 8 cm (3 1/8 in)",
        f"strap = fold tab lengthways\nOptional: attach strap to cloth\n{HEM}",
    )
    assert table.names == ["thing-left-over"]
    assert [label.text for label in table.first.labels] == ["left out with `Optional:`", "without step 2"]


def test_exactly_one_of_two_alternatives_is_done():
    pieces = CLOTH + "tab | A | 1 | 4 cm (1 5/8 in) | 8 cm (3 1/8 in)\nloop | C | 2 | | 8 cm (3 1/8 in)"
    table = sew(pieces, f"attach tab to cloth\nOr: attach 2 loop to cloth\n{HEM}")
    assert table.names == []
    assert [dict(made.used) for made in table.sizes[0].constructions] == [
        {("tab", "A"): 1, ("cloth", "A"): 1},
        {("loop", "C"): 2, ("cloth", "A"): 1},
    ]


def test_the_other_way_is_proved_too():
    pieces = (
        CLOTH
        + "head | A | 1 | 30 cm (12 in) | 8 cm (3 1/8 in)\nfoot | A | 1 | 29 cm (11 3/8 in) | 8 cm (3 1/8 in)"
    )
    statements = (
        "mat = join head, cloth top to bottom\n"
        "Or: mat = join foot, cloth top to bottom\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish mat"
    )
    table = sew(pieces, statements)
    assert table.names == ["edges-do-not-meet"]
    assert table.first.labels[-1].text == "with the other way of step 1"


def test_a_piece_belongs_to_the_sizes_whose_steps_speak_of_it():
    sizes = "## Sizes\n| Size | side |\n|---|---|\n| Small | 30 cm (12 in) |\n| Large | 40 cm (16 in) |"
    pieces = "cloth | A | 1 | side | side\ntab | A | 2 | 4 cm (1 5/8 in) | 8 cm (3 1/8 in)"
    table = sew(pieces, f"Large only: attach 2 tab to cloth\n{HEM}", rest=sizes)
    assert table.names == []
    assert [("tab", "A") in size.fullest.used for size in table.sizes] == [False, True]


def test_a_choice_is_proved_at_both_ends():
    pieces = "cloth | A | 1 | 30 cm (12 in) | 60 cm (24 in)"
    statements = (
        "bag = fold cloth in half, join sides, leaving gap open\nhem top of bag by 1 cm (3/8 in)\nfinish bag"
    )
    measures = "gap = 12 cm (4 3/4 in), yours to choose from 10 cm (4 in) to {most}"
    assert sew(pieces, statements, measures=measures.format(most="20 cm (8 in)")).names == []
    table = sew(pieces, statements, measures=measures.format(most="35 cm (14 in)"))
    assert table.names == ["gap-too-long"]
    assert table.first.labels[-1].text == "when `gap` is chosen as 35 cm (14 in)"


def test_a_recipe_without_statements_proves_nothing():
    table = sew_recipe(scaffold.complete("## Steps\n1. Sew it."))
    assert table.names == []
    assert not table.sizes[0].sewing
