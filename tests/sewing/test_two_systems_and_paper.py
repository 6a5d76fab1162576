"""Edges that meet in one system only, and what opens once sizes are rounded as they are printed."""

from __future__ import annotations

from sewing.table import sew

FRONT = "---\nwritten in: imperial\n---"
ROW = (
    "row = join 4 patch side by side\n"
    "mat = join row, head top to bottom\n"
    "hem all of mat by 1 cm (3/8 in)\n"
    "finish mat"
)


def blocks(head: str, front: str = FRONT):
    pieces = f"patch | A | 4 | block + 2 × seam | block + 2 × seam\nhead | A | 1 | {head} | 3 in (7.6 cm)"
    return sew(pieces, ROW, measures="seam = 1/4 in (6 mm)\nblock = 6 in", rest=front)


def test_a_length_typed_a_second_time_misses_in_the_other_system():
    table = blocks("24 1/2 in")
    assert table.names == ["meets-in-one-system"]
    problem = table.first
    assert problem.systems == ("metric",)
    # 4 × 15.2 cm and two allowances of 6 mm are 62 cm; 24 1/2 in is carried over to 62.2 cm.
    assert problem.message() == (
        "bottom of `row` and top of `head` meet in imperial and miss in metric by 2 mm: "
        "bottom of `row` is 62 cm, from `6 in` (carried over by itself to 15.2 cm) and `1/4 in (6 mm)`; "
        "top of `head` is 62.2 cm, from `24 1/2 in` (carried over by itself to 62.2 cm)"
    )
    assert problem.hint() == (
        "state each length once and compute from it, instead of typing `24 1/2 in` by itself; "
        "or write `24 1/2 in (62 cm)`"
    )
    assert [(label.span.text, label.text) for label in problem.labels] == [
        ("6 in", "stated for bottom of `row`, carried over by itself to 15.2 cm"),
        ("1/4 in (6 mm)", "stated for bottom of `row`"),
        ("24 1/2 in", "stated for top of `head`, carried over by itself to 62.2 cm"),
    ]


def test_the_pair_that_is_proposed_closes_it():
    assert blocks("24 1/2 in (62 cm)").names == []


def test_computed_from_the_same_length_it_meets_in_both():
    assert blocks("4 × block + 2 × seam").names == []


def test_a_recipe_in_one_system_is_proved_in_that_one():
    assert blocks("24 1/2 in", "---\nwritten in: imperial\nsystems: imperial\n---").names == []
    metric = blocks("24 1/2 in", "---\nwritten in: metric\nsystems: metric\n---")
    assert metric.names == ["edges-do-not-meet"]
    assert "62 cm" in metric.first.message() and "in)" not in metric.first.message()


def test_three_blocks_of_8_and_a_half():
    # Three blocks cut 8 1/2 in finish at 24 in, 24 1/2 in with allowances, not 25 1/2 in (published, and
    # wrong).
    for head, names in (("25 1/2 in", ["edges-do-not-meet"]), ("24 1/2 in", [])):
        pieces = f"block | A | 3 | 8 1/2 in | 8 1/2 in\nhead | A | 1 | {head} | 3 in"
        statements = ROW.replace("4 patch", "3 block")
        table = sew(pieces, statements, measures="seam = 1/4 in", rest="---\nsystems: imperial\n---")
        assert table.names == names


def thirds(count: int, quilt: str):
    pieces = (
        f"strip | A | {count} | quilt / {count} + 2 × seam | 10 cm (4 in)\n"
        f"head | A | 1 | quilt + 2 × seam | 10 cm (4 in)"
    )
    statements = (
        f"row = join {count} strip side by side\n"
        f"mat = join head, row top to bottom\n"
        f"hem all of mat by 1 cm (3/8 in)\n"
        f"finish mat"
    )
    return sew(pieces, statements, measures=f"seam = 1/4 in (6 mm)\nquilt = {quilt}")


def test_three_thirds_open_on_paper_in_inches_only():
    table = thirds(3, "50 cm (20 in)")
    assert table.names == ["paper-opens"]
    problem = table.first
    assert problem.systems == ("imperial",)
    # 7 1/6 in is printed as 7 1/8 in: three times 1/24 in are 1/8 in.
    assert "open by 1/8 in" in problem.message()
    assert "the width of `strip` is printed as 7 1/8 in and is 7.167 in" in problem.hint()


def test_seven_sevenths_miss_on_paper():
    table = thirds(7, "60 cm (24 in)")
    assert [(p.slug(), p.systems) for p in table.problems] == [("paper-misses", ("imperial",))]


def test_metric_rounds_to_the_millimetre():
    # 50 cm in eleven: 45.4545 mm and 12 mm of seams are printed as 57 mm; eleven times 0.4545 mm are 5 mm.
    table = thirds(11, "50 cm (20 in)")
    assert ("paper-opens", ("metric",)) in [(p.slug(), p.systems) for p in table.problems]
    assert any("5 mm" in p.message() for p in table.problems if p.systems == ("metric",))


def test_ease_takes_up_what_paper_opens():
    pieces = (
        "strip | A | 3 | quilt / 3 + 2 × seam | 10 cm (4 in)\nhead | A | 1 | quilt + 2 × seam | 10 cm (4 in)"
    )
    statements = (
        "row = join 3 strip side by side\n"
        "mat = join head, row top to bottom, with 6 mm (1/4 in) ease\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish mat"
    )
    assert sew(pieces, statements, measures="seam = 1/4 in (6 mm)\nquilt = 50 cm (20 in)").names == []


def test_ease_allows_a_difference():
    pieces = "one | A | 1 | 20 cm (8 in) | 10 cm (4 in)\nother | A | 1 | 20.5 cm (8 1/4 in) | 10 cm (4 in)"
    join = (
        "mat = join one, other top to bottom, with {ease} ease\nhem all of mat by 1 cm (3/8 in)\nfinish mat"
    )
    assert sew(pieces, join.format(ease="6 mm (1/4 in)")).names == []
    assert sew(pieces, join.format(ease="4 mm (3/16 in)")).names == ["edges-do-not-meet"]


def test_taking_says_what_a_seam_takes():
    pieces = (
        "one | A | 1 | 20 cm (8 in) | 10 cm (4 in) | 6 mm (1/4 in)\n"
        "other | A | 1 | 20 cm (8 in) | 10 cm (4 in) | 6 mm (1/4 in)"
    )
    statements = (
        "mat = join one, other top to bottom, taking 1 cm (3/8 in)\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish mat"
    )
    table = sew(pieces, statements, columns=" Allowance |")
    assert table.names == []
    assert table.mm("height of mat", 1) == 180
    plain = sew(pieces, statements.replace(", taking 1 cm (3/8 in)", ""), columns=" Allowance |")
    assert plain.mm("height of mat", 1) == 188


def test_an_edge_that_is_about_cannot_meet_another():
    table = sew(
        "one | A | 2 | tab | 10 cm (4 in)",
        "mat = join 2 one top to bottom\nhem all of mat by 1 cm (3/8 in)\nfinish mat",
        measures="tab = 20 cm (8 in), about",
    )
    assert table.names == ["about-edge-meets"]


def test_nor_can_an_exact_edge_meet_one_that_is_about():
    table = sew(
        "one | A | 1 | 20 cm (8 in) | 10 cm (4 in)\nother | A | 1 | tab | 10 cm (4 in)",
        "mat = join one, other top to bottom\nhem all of mat by 1 cm (3/8 in)\nfinish mat",
        measures="tab = 20 cm (8 in), about",
    )
    assert table.names == ["about-edge-meets"]
    assert table.first.message().startswith("top of `other` is only about so long")


def test_lengths_within_a_thousandth_of_a_millimetre_meet():
    # √2 × √2 × 10 cm is carried to 40 digits and is 20 cm.
    pieces = (
        "one | A | 1 | sqrt(2) × sqrt(2) × 10 cm (4 in) | 10 cm (4 in)\n"
        "other | A | 1 | 20 cm (8 in) | 10 cm (4 in)"
    )
    table = sew(pieces, "mat = join one, other top to bottom\nhem all of mat by 1 cm (3/8 in)\nfinish mat")
    assert table.names == []
