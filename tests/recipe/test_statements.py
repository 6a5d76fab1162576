"""Statements: cut out of a block, read against the patterns, in exactly one way."""

from __future__ import annotations

import pytest
from recipe.reading import passage

from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Number
from presscloth.recipe.matching import Known
from presscloth.recipe.patterns import Literal, Maybe, OneOf, Place, ResultRule, VerbForm, elements, spoken
from presscloth.recipe.statement import Amount, Caught, Choice, Counted, EdgesOf, Statement, Things
from presscloth.recipe.statements import MOST_TOKENS, result_name, sew_block, statement_passages
from presscloth.source import Source

PLACE = Source("recipe.md", "").span(0, 0)
VERBS = (
    VerbForm(
        "join", ("join {parts:things} {way=side by side|top to bottom}", "join {first:edge} to {second:edge}")
    ),
    VerbForm("hem", ("hem {edges:edges} by {by:measure}[ twice]",), result=ResultRule.CHANGES_FIRST),
    VerbForm("pair", ("pair {first:thing} with {second:thing} into {units:number}",)),
    VerbForm("finish", ("finish {things:things}",), result=ResultRule.NONE),
)


def known(*things: str, measures: tuple[str, ...] = ("seam", "across"), keys: str = "AB") -> Known:
    return Known(dict.fromkeys(measures, PLACE), dict.fromkeys(things, PLACE), frozenset(keys))


NAMES = known("strip", "side strip", "badge", "block", "row", "pocket")


def found(text: str, names: Known = NAMES) -> tuple[list[object], tuple[Problem, ...]]:
    problems = Problems()
    block = sew_block(passage(text), VERBS, names, problems)
    return list(block.statements), problems.found()


def statement(text: str, names: Known = NAMES) -> Statement:
    (one,), problems = found(text, names)
    assert [problem.message() for problem in problems] == []
    assert isinstance(one, Statement)
    return one


def refused(text: str, names: Known = NAMES) -> Problem:
    _, (problem,) = found(text, names)
    return problem


# -- cutting a block ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("block", "parts"),
    [
        ("a\nb\n", ["a", "b"]),
        ("a\n  b\nc", ["a\n  b", "c"]),
        ("\n\n  a\n    b\n\n  c\n", ["a\n    b", "c"]),
        ("  a\nb", ["a", "b"]),
        ("", []),
        ("   \n", []),
    ],
)
def test_one_statement_on_a_line_and_a_deeper_indent_continues_it(block: str, parts: list[str]):
    cut = list(statement_passages(passage(block)))
    assert [part.text for part in cut] == parts
    assert [part.span().text for part in cut] == parts


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("front = join a", "front"),
        ("4 side row = join a", "side row"),
        ("(4 × across) block = join a", "block"),
        ("join a", None),
        ("= join a", None),
    ],
)
def test_the_name_of_a_result_is_known_before_the_rest_is_read(text: str, name: str | None):
    result = result_name(passage(text))
    assert (result.text if result else None) == name


# -- reading --------------------------------------------------------------------------------------


def test_a_list_of_things_with_numbers():
    one = statement("4 row = join 3 strip, Side strips, badge side by side")
    assert (one.verb, one.result is not None and one.result.name.text) == ("join", "row")
    assert one.result is not None
    assert isinstance(one.result.count, Number)
    assert one.result.count.value == 4
    things, way = one.slots["parts"], one.slots["way"]
    assert isinstance(things, Things)
    assert [(each.name.text, each.count is not None) for each in things.of] == [
        ("strip", True),
        ("Side strips", False),
        ("badge", False),
    ]
    assert isinstance(way, Choice)
    assert way.words == "side by side"


def test_edges():
    one = statement("hem left, right and bottom of badge by 2 × seam twice")
    edges, by, twice = one.slots["edges"], one.slots["by"], one.slots["twice"]
    assert isinstance(edges, EdgesOf)
    assert edges.edges == ("left", "right", "bottom")
    assert edges.span.text == "left, right and bottom of badge"
    assert isinstance(by, Amount)
    assert by.span.text == "2 × seam"
    assert isinstance(twice, Choice)
    every = statement("hem all of badge by seam").slots["edges"]
    assert isinstance(every, EdgesOf)
    assert set(every.edges) == {"left", "right", "top", "bottom"}


def test_the_letter_of_a_material_chooses_among_pieces_of_one_name():
    one = statement("pair = pair A pocket with B pocket into 2")
    first, second = one.slots["first"], one.slots["second"]
    assert isinstance(first, Counted)
    assert isinstance(second, Counted)
    assert (first.key, second.key) == ("A", "B")


def test_tails_in_any_order():
    tails = "with 2 mm ease, taking 6 mm (1/4 in), catching top of 2 strip"
    one = statement(f"row = join bottom of badge to top of block, {tails}")
    assert {"taking", "ease", "catching"} <= set(one.slots)
    caught = one.slots["catching"]
    assert isinstance(caught, Caught)
    assert [each.of.name.text for each in caught.of] == ["strip"]
    assert (
        statement("row = join badge, block side by side, leaving 10 cm open").slots["gap"].span.text
        == "10 cm"
    )


@pytest.mark.parametrize(
    ("text", "name", "place", "hint"),
    [
        ("jion badge side by side", "verb-unknown", "jion", "write `join`"),
        ("sew badge", "verb-unknown", "sew", "begin with what is done"),
        ("row = join bagde, block side by side", "name-unknown", "bagde", "write `badge` if that is meant"),
        (
            "row = join badge, block sideways",
            "statement-not-read",
            None,
            "write it like this: `join A, B, C side",
        ),
        ("join badge, block side by side", "result-missing", None, "put a name and `=` before it"),
        ("bag = finish badge", "result-not-made", "bag", "write a name that begins with a letter"),
        ("= join badge, block side by side", "result-not-made", "=", "write a name"),
        ("half = join badge, block side by side", "result-not-made", "half", "write a name"),
        ("4 + row = join badge, block side by side", "expression-unfinished", "+", "write the measure"),
        ("row =", "statement-not-read", None, "write one short statement on a line"),
        ("row = join 1,5 strip side by side", "comma-in-number", "1,5", "write `1.5`"),
    ],
)
def test_what_cannot_be_read(text: str, name: str, place: str | None, hint: str):
    problem = refused(text)
    assert (problem.slug(), problem.span.text) == (name, text if place is None else place)
    assert problem.hint().startswith(hint)


def test_a_statement_of_a_hundred_things_is_too_long():
    text = "row = join " + ", ".join(["badge"] * MOST_TOKENS) + " side by side"
    assert refused(text).slug() == "statement-not-read"


def test_one_reading_must_remain():
    names = known("badge", "pocket", "A pocket")
    problem = refused("row = join A pocket, badge side by side", names)
    assert problem.slug() == "statement-in-two-ways"
    assert problem.hint() == (
        "rename one of the things: it reads as `A pocket`, `badge`, or as `pocket` cut from `A`, `badge`"
    )


def test_a_broken_statement_leaves_the_others():
    statements, problems = found("row = join badge, block side by side\njion x\nfinish row")
    assert [isinstance(each, Statement) for each in statements] == [True, False, True]
    assert [problem.slug() for problem in problems] == ["verb-unknown"]


# -- patterns -------------------------------------------------------------------------------------


def test_a_pattern_is_taken_apart():
    assert elements("hem {edges:edges} by {way=one|two words}[, {by:measure} open][ twice]") == (
        Literal("hem"),
        Place("edges", "edges"),
        Literal("by"),
        OneOf("way", (("one",), ("two", "words"))),
        Maybe((Literal(","), Place("by", "measure"), Literal("open")), None),
        Maybe((Literal("twice"),), "twice"),
    )
    with pytest.raises(ValueError, match="no kind of place: colour"):
        elements("dye {thing:colour}")


@pytest.mark.parametrize(
    ("pattern", "said"),
    [
        ("join {parts:things} {way=side by side|top to bottom}", "join A, B, C side by side | top to bottom"),
        ("join {first:edge} to {second:edge}", "join bottom of A to top of B"),
        ("hem {edges:edges} by {by:measure} [twice]", "hem left, right of A by 2 cm (3/4 in) [twice]"),
        ("pair {a:thing} with {b:thing} into {units:number}", "pair A with B into 2"),
        ("bag {a:thing} [, {open:sides} open]", "bag A[, left, right, bottom open]"),
    ],
)
def test_messages_show_a_pattern_as_an_author_would_write_it(pattern: str, said: str):
    assert spoken(pattern) == said
