"""Measures that speak of things: settled when first needed, in the state of that moment."""

from __future__ import annotations

from sewing.table import sew

from presscloth.sewing.stock import Stock

TWO = "cloth | A | 2 | 30 cm (12 in) | 30 cm (12 in)\n"


def test_a_piece_is_cut_to_what_was_sewn():
    pieces = TWO + "head | A | 1 | width of row | 10 cm (4 in)"
    table = sew(
        pieces,
        "row = join 2 cloth side by side\n"
        "mat = join head, row top to bottom\n"
        "hem all of mat by 1 cm (3/8 in)\n"
        "finish mat",
    )
    assert table.names == []
    head = next(piece for piece in table.made.edition.pieces if piece.name == "head")
    assert head.width is not None and head.width.metric == 580
    assert [piece.name for piece in table.made.edition.pieces] == ["cloth", "head"]


def test_a_piece_is_needed_before_what_it_speaks_of_is_made():
    pieces = TWO + "head | A | 1 | width of row | 10 cm (4 in)"
    table = sew(
        pieces, "mat = join head, cloth top to bottom\nrow = join cloth, mat top to bottom\nfinish row"
    )
    assert table.names[0] == "not-yet-there"
    assert table.first.message() == "there is no `row` yet when this measure is needed"


def test_a_measure_keeps_what_it_was_told():
    statements = (
        "row = join 2 cloth side by side\n"
        "trim row to whole by 20 cm (8 in)\n"
        "hem all of row by 1 cm (3/8 in)\n"
        "finish row"
    )
    table = sew(TWO, statements, measures="whole = width of row")
    # Trimmed to its own width, it is hemmed later, and is no longer as wide as `whole` says.
    assert table.names == ["measure-changed-later"]
    assert table.first.span.text == "width of row"
    assert "58 cm (23 1/4 in)" in table.first.message()
    assert "56 cm (22 1/2 in)" in table.first.message()


def test_said_in_the_statement_itself_it_may_change():
    statements = (
        "row = join 2 cloth side by side\n"
        "trim row to width of row by 20 cm (8 in)\n"
        "hem all of row by 1 cm (3/8 in)\n"
        "finish row"
    )
    assert sew(TWO, statements).names == []


def test_a_thing_is_known_as_it_stood_after_each_step():
    table = sew(
        "cloth | A | 1 | 30 cm (12 in) | 30 cm (12 in)",
        "hem top of cloth by 1 cm (3/8 in)\n"
        "hem bottom of cloth by 2 cm (3/4 in)\n"
        "hem left, right of cloth by 1 cm (3/8 in)\n"
        "finish cloth",
    )
    assert [table.mm("height of cloth", step) for step in (0, 1, 2, 3)] == [300, 290, 270, 270]
    assert table.mm("height of cloth") == 270


def test_what_a_thing_has_not_got_is_reported():
    table = sew(
        "cloth | A | 1 | 30 cm (12 in) | 30 cm (12 in)",
        "hem all of cloth by depth of cloth / 10\nfinish cloth",
    )
    assert table.names == ["no-such-measure"]


def test_names_are_found_by_their_plural():
    stock = Stock(["side strip", "box"])
    assert stock.called("side strips") == "side strip"
    assert stock.called("Boxes") == "box"
    assert stock.called("nothing") == "nothing"
