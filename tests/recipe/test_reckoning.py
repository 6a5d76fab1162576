"""Expressions: which sign binds closer, what a pair is, and where reading stops."""

from __future__ import annotations

from fractions import Fraction

import pytest
from recipe.reading import passage, read, refused

from presscloth.measure import Direction
from presscloth.problems import Problems
from presscloth.recipe.expression import (
    Bought,
    Broken,
    Compared,
    Comparison,
    Extreme,
    Measured,
    Name,
    Negative,
    Number,
    PartOf,
    Pi,
    Reckoned,
    Root,
    Rounded,
    Sign,
)
from presscloth.recipe.reckoning import DEEPEST, MOST_TOKENS, ExpressionReader


def shape(of: object) -> str:
    """A tree with all its brackets."""
    match of:
        case Reckoned(sign=sign, left=left, right=right):
            return f"({shape(left)} {sign.value} {shape(right)})"
        case Negative(of=inner):
            return f"-{shape(inner)}"
        case Name(text=text):
            return text
        case Number(value=value):
            return str(value)
        case Measured(first=first, second=second):
            return f"{first.value}{first.unit}" + (f"|{second.value}{second.unit}" if second else "")
        case _:
            return type(of).__name__


@pytest.mark.parametrize(
    ("text", "tree"),
    [
        ("a + b × c", "(a + (b × c))"),
        ("(a + b) × c", "((a + b) × c)"),
        ("a - b - c", "((a − b) − c)"),
        ("a - (b - c)", "(a − (b − c))"),
        ("a / b × c", "((a / b) × c)"),
        ("-a + b", "(-a + b)"),
        ("2 × -a", "(2 × -a)"),
        ("a × 3/4", "(a × 3/4)"),
        ("5 cm (2 in) + 3 mm", "(5cm|2in + 3mm)"),
        ("2 in (5 cm)", "2in|5cm"),
        ("1 1/2 in", "3/2in"),
        ("2 × (5 cm)", "(2 × 5cm)"),
        ('3″ × 2"', "(3in × 2in)"),
        ("2 yards", "2yd"),
    ],
)
def test_trees(text: str, tree: str):
    assert shape(read(text)) == tree


def test_functions():
    assert isinstance(read("pi"), Pi)
    root, least = read("sqrt(a × a)"), read("min(a, b, 3 cm)")
    assert isinstance(root, Root)
    assert isinstance(least, Extreme)
    assert (least.greatest, len(least.among)) == (False, 3)
    up = read("round up(a / b to 1 cm (1/2 in))")
    assert isinstance(up, Rounded)
    assert up.direction is Direction.UP
    assert isinstance(up.step, Measured)
    near = read("round(a)")
    assert isinstance(near, Rounded)
    assert (near.direction, near.step) == (Direction.NEAREST, None)


def test_parts_of_things():
    part = read("finished width of Side strip")
    assert isinstance(part, PartOf)
    assert (part.part, part.finished, part.of.text) == ("width", True, "Side strip")
    assert part.of.span.text == "Side strip"
    bought = read("buy A")
    assert isinstance(bought, Bought)
    assert bought.key.text == "A"


def test_percent_and_exactly():
    share, field = read("3 %"), read("exactly 100 mm")
    assert isinstance(share, Number)
    assert (share.value, share.percent) == (Fraction(3, 100), True)
    assert isinstance(field, Measured)
    assert (field.exactly, field.first.value, field.first.unit) == (True, 100, "mm")


@pytest.mark.parametrize(
    ("text", "name", "place", "hint"),
    [
        ("4 band", "sign-missing", "4 band", "write `4 × band` if that is meant"),
        ("band+ 1", "sign-without-spaces", "+", "write ` + ` with spaces"),
        ("a / 1/2", "fraction-after-sign", "1/2", "put it in brackets: `(1/2)`"),
        ("5 cm (50 mm)", "pair-in-one-system", "5 cm (50 mm)", "write the value in inches in the brackets"),
        (
            "2 in (1 ft)",
            "pair-in-one-system",
            "2 in (1 ft)",
            "write the value in centimetres in the brackets",
        ),
        ("5 cm (2 oz)", "pair-of-unlike", "5 cm (2 oz)", "write a length in both halves"),
        (
            "exactly 5 cm (2 in)",
            "pair-exactly",
            "exactly 5 cm (2 in)",
            "keep the one that is the thing's own",
        ),
        ("5 cms", "unit-unknown", "cms", "write `cm`"),
        ("5 CM", "unit-unknown", "CM", "write `cm`"),
        ("5 feet", "unit-unknown", "feet", "write `ft`"),
        ("a + ", "expression-unfinished", "+", "write the measure that belongs here"),
        ("2 × half a", "expression-unfinished", "half", "write the measure that belongs here"),
        ("", "expression-unfinished", "", "write the measure that belongs here"),
        ("a b (c)", "words-left-over", "(c)", "put a sign before it, or take it out"),
        ("2 × (a + b", "bracket-not-closed", "(", "add the `)` where it belongs"),
        ("a + b)", "bracket-not-closed", ")", "take the bracket out"),
        ("5 cm (", "bracket-not-closed", "(", "add the `)` where it belongs"),
    ],
)
def test_what_cannot_be_read(text: str, name: str, place: str, hint: str):
    problem = refused(text)
    assert (problem.slug(), problem.span.text) == (name, place)
    assert problem.hint().startswith(hint)


def test_brackets_and_length_are_bounded():
    assert shape(read("(" * (DEEPEST - 1) + "a" + ")" * (DEEPEST - 1))) == "a"
    assert refused("(" * DEEPEST + "a" + ")" * DEEPEST).slug() == "expression-too-deep"
    terms = (MOST_TOKENS + 1) // 2
    read(" + ".join(["a"] * terms))
    assert refused(" + ".join(["a"] * (terms + 1))).slug() == "expression-too-deep"


def test_a_part_in_brackets_has_its_own_place_and_a_reckoning_its_brackets():
    whole = read("(a + b) × (c)")
    assert isinstance(whole, Reckoned)
    assert whole.span.text == "(a + b) × (c)"
    assert whole.left.span.text == "(a + b)"
    assert whole.right.span.text == "c"


def compared(text: str) -> Compared | Broken:
    return ExpressionReader(passage(text), Problems()).comparison()


@pytest.mark.parametrize(
    ("text", "comparison"),
    [
        ("a = b", Comparison.EQUAL),
        ("a < b", Comparison.LESS),
        ("a <= b", Comparison.AT_MOST),
        ("a ≤ b", Comparison.AT_MOST),
        ("a > b", Comparison.MORE),
        ("a >= b", Comparison.AT_LEAST),
        ("a within 2 mm of b", Comparison.WITHIN),
        ("a within ease of b", Comparison.WITHIN),
        ("a within width of c of b", Comparison.WITHIN),
    ],
)
def test_comparisons(text: str, comparison: Comparison):
    found = compared(text)
    assert isinstance(found, Compared)
    assert found.comparison is comparison
    assert (shape(found.left), shape(found.right)) == ("a", "b")
    assert found.span.text == text
    assert (found.margin is not None) == (comparison is Comparison.WITHIN)


@pytest.mark.parametrize("text", ["a", "a within b", "a < ", "< b"])
def test_what_compares_nothing(text: str):
    assert isinstance(compared(text), Broken)


def test_reading_stops_where_the_expression_ends():
    reader = ExpressionReader(passage("2 × band, about"), Problems())
    assert shape(reader.expression()) == "(2 × band)"
    assert reader.rest().text == ", about"
    assert reader.takes(",") is not None
    assert reader.rest().text == "about"
    assert Sign.TIMES.value == "×"
