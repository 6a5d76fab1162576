"""How many there are: everything is used once, numbers inside are for one result, nothing is left over."""

from __future__ import annotations

import pytest
from sewing.table import sew

HEM = "hem all of mat by 1 cm (3/8 in)\nfinish mat"


def test_too_few_are_cut():
    table = sew(
        "side | A | 1 | 7 cm (2 3/4 in) | 11 cm (4 1/4 in)", f"mat = join side, side side by side\n{HEM}"
    )
    assert table.names == ["too-few-cut"]
    assert (
        table.first.message() == "2 `side` wanted, 1 cut"
        or "wanted, 1 cut, and 1 used" in table.first.message()
    )


def test_one_is_left_over():
    table = sew("side | A | 3 | 7 cm (2 3/4 in) | 11 cm (4 1/4 in)", f"mat = join 2 side side by side\n{HEM}")
    assert table.names == ["piece-left-over"]
    assert table.first.message() == "1 `side` is left over: 3 cut, 2 sewn in"
    assert table.first.span.text == "side"


def test_what_is_cut_besides_is_never_wanted():
    table = sew(
        "side | A | 3 | 7 cm (2 3/4 in) | 11 cm (4 1/4 in) | spare 1",
        f"mat = join 2 side side by side\n{HEM}",
        columns=" Notes |",
    )
    assert table.names == []


def test_numbers_inside_are_for_one_result():
    table = sew(
        "patch | A | 12 | 10 cm (4 in) | 10 cm (4 in)",
        f"4 row = join 3 patch side by side\nmat = join 4 row top to bottom\n{HEM}",
    )
    assert table.names == []
    assert table.made.used[("patch", "A")] == 12
    assert table.quantity("count of row").metric == 4


def test_a_change_without_a_name_changes_all():
    table = sew(
        "napkin | A | 6 | 40 cm (16 in) | 40 cm (16 in)\ntab | A | 12 | 4 cm (1 5/8 in) | 8 cm (3 1/8 in)",
        "hem all of napkin by 1 cm (3/8 in) twice\nattach 2 tab to napkin\nfinish napkin",
    )
    assert table.names == []
    assert table.made.used[("tab", "A")] == 12
    assert [(each.name, each.count) for each in table.made.finished] == [("napkin", 6)]


def test_several_articles_are_finished():
    table = sew(
        "napkin | A | 6 | 40 cm (16 in) | 40 cm (16 in)\nmat | A | 6 | 40 cm (16 in) | 30 cm (12 in)",
        "hem all of napkin by 1 cm (3/8 in)\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish 4 napkin, mat\n"
        "finish napkin",
    )
    assert table.names == []
    assert [(each.name, each.count) for each in table.made.finished] == [
        ("napkin", 4),
        ("mat", 6),
        ("napkin", 2),
    ]


def test_what_was_used_up_is_used_again():
    table = sew(
        "cloth | A | 1 | 30 cm (12 in) | 30 cm (12 in)\npatch | A | 1 | 9 cm (3 1/2 in) | 9 cm (3 1/2 in)",
        "attach patch to cloth\nattach patch to cloth\nhem all of cloth by 1 cm (3/8 in)\nfinish cloth",
    )
    assert table.names == ["too-few-cut"]
    assert table.first.message() == "1 `patch` wanted, 1 cut, and 1 used before"


def test_a_thing_of_the_same_name_is_still_there():
    table = sew(
        "cloth | A | 2 | 30 cm (12 in) | 30 cm (12 in)",
        "cloth = hem all of cloth by 1 cm (3/8 in)\nfinish cloth",
    )
    assert table.names == ["name-still-taken"]


def test_pieces_from_several_materials_are_told_apart():
    pieces = "pocket | A, B | 1 | 20 cm (8 in) | 20 cm (8 in)\nback | A | 2 | 30 cm (12 in) | 40 cm (16 in)"
    statements = """
        hem all of A pocket by 1 cm (3/8 in)
        hem all of B pocket by 2 cm (3/4 in)
        one = attach A pocket to back
        other = attach B pocket to back
        mat = join one, other side by side
        hem all of mat by 1 cm (3/8 in)
        finish mat
    """
    table = sew(pieces, statements.replace("other", "second").replace("one", "first"))
    assert table.names == []
    assert table.made.used == {("pocket", "A"): 1, ("pocket", "B"): 1, ("back", "A"): 2}
    again = sew(
        pieces,
        statements.replace("attach B pocket", "attach A pocket")
        .replace("other", "second")
        .replace("one", "first"),
    )
    assert "too-few-cut" in again.names or "too-few-made" in again.names


def test_joins_without_measure_are_counted():
    table = sew(
        "cloth | A | 1 | 30 cm (12 in) | 60 cm (24 in)\n"
        "handle | C | 2 | | 40 cm (16 in)\n"
        "button | F | 3 | | ",
        """
        bag = fold cloth in half, join sides
        hem top of bag by 1 cm (3/8 in)
        attach 2 handle to bag
        attach 3 button to bag
        finish bag
        """,
    )
    assert table.names == []
    assert [(each.name, each.count) for each in table.made.not_measured] == [("handle", 2), ("button", 3)]


def test_a_filling_is_weighed():
    table = sew(
        "cloth | A | 4 | 30 cm (12 in) | 30 cm (12 in)",
        "2 cushion = join 2 cloth side by side\nfinish cushion".replace(
            "join 2 cloth side by side", "join cloth to cloth all round, leaving 10 cm (4 in) open"
        )
        + "",
        rest="",
    )
    assert table.names == []
    filled = sew(
        "cloth | A | 4 | 30 cm (12 in) | 30 cm (12 in)",
        "2 cushion = join cloth to cloth all round, leaving 10 cm (4 in) open\n"
        "fill cushion with 250 g (9 oz) of G\n"
        "finish cushion",
    )
    assert filled.names == []
    assert [(f.key, f.weight.metric, f.weight.imperial, f.count) for f in filled.made.filled] == [
        ("G", 250, 9, 2)
    ]


def test_what_a_seam_catches_is_used_up_and_not_longer_than_the_seam():
    pieces = (
        "cloth | A | 2 | 30 cm (12 in) | 30 cm (12 in)\n"
        "loop | C | 2 | | 10 cm (4 in)\n"
        "flap | A | {n} | 10 cm (4 in) | 12 cm (4 3/4 in)"
    )
    statements = (
        "mat = join top of cloth to top of cloth, catching top of 2 loop, top of {n} flap\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish mat"
    )
    table = sew(pieces.format(n=2), statements.format(n=2))
    assert table.names == []
    assert table.made.used[("flap", "A")] == 2
    assert [(each.name, each.count) for each in table.made.not_measured] == [("loop", 2)]
    assert sew(pieces.format(n=3), statements.format(n=3)).names == ["caught-too-long"]


def test_a_broken_statement_says_nothing_of_what_follows():
    table = sew(
        "cloth | A | 2 | 30 cm (12 in) | 30 cm (12 in)",
        "mat = join left of cloth to nothing of cloth\nhem all of mat by 1 cm (3/8 in)\nfinish mat",
    )
    assert "piece-left-over" not in table.names
    assert "used-before-made" not in table.names


def test_what_follows_from_an_edge_that_does_not_meet_hangs_under_it():
    pieces = (
        "head | A | 1 | 29 cm (11 3/8 in) | 10 cm (4 in)\n"
        "cloth | A | 1 | 30 cm (12 in) | 30 cm (12 in)\n"
        "foot | A | 1 | 30 cm (12 in) | 10 cm (4 in)"
    )
    table = sew(
        pieces,
        "middle = join cloth, head top to bottom\n"
        "mat = join middle, foot top to bottom\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish mat",
    )
    first, second = table.problems
    assert [first.slug(), second.slug()] == ["edges-do-not-meet"] * 2
    assert first.cause is None
    assert second.cause == first.span


@pytest.mark.parametrize("name", ["zip-too-short"])
def test_a_zip_reaches_along_its_opening(name: str):
    pieces = "cloth | A | 2 | 30 cm (12 in) | 20 cm (8 in)\nslide | E | 1 | | {zip}"
    statements = (
        "mat = zip slide between top of cloth and bottom of cloth, showing 1 cm (3/8 in)\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish mat"
    )
    statements = statements.replace("bottom of cloth", "top of cloth")
    table = sew(pieces.format(zip="30 cm (12 in)"), statements)
    assert table.names == []
    # Each edge gives its allowance, and what shows of the zip is added.
    assert table.mm("height of mat", 1) == 2 * 200 - 20 + 10
    assert sew(pieces.format(zip="25 cm (10 in)"), statements).names == [name]


def test_a_zip_in_the_mouth_of_a_pouch_finishes_it():
    pieces = "cloth | A | 1 | 30 cm (12 in) | 60 cm (24 in)\nslide | E | 1 | | 28 cm (11 1/4 in)"
    table = sew(pieces, "bag = fold cloth in half, join sides\ninsert slide in top of bag\nfinish bag")
    assert table.names == []
    assert table.mm("height of bag") == 290


def test_a_seam_between_two_allowances_that_take_everything():
    table = sew(
        "strip | A | 2 | 10 cm (4 in) | 2 cm (3/4 in)",
        "mat = join 2 strip side by side\nhem all of mat by 2 mm (1/16 in)\nfinish mat",
    )
    assert table.names == ["nothing-left"]
    assert table.first.message() == "nothing is left of `mat`: its seam comes out as 0 mm (0 in)"


def test_a_finished_thing_that_is_nothing_between_its_raw_edges():
    table = sew("strip | A | 1 | 10 cm (4 in) | 2 cm (3/4 in)", "finish strip")
    assert "nothing-left" in table.names
    assert "its finished height comes out as 0 mm (0 in)" in table.first.message()


def test_hems_that_take_more_than_there_is():
    table = sew(
        "strip | A | 1 | 10 cm (4 in) | 5 cm (2 in)", "hem all of strip by 3 cm (1 1/8 in)\nfinish strip"
    )
    # In inches, twice 1 1/8 leave less than nothing of 2 in as well.
    assert table.names == ["nothing-left"]
    assert table.first.message() == "nothing is left of `strip`: its height comes out as -1 cm (-1/4 in)"
