"""Tokens: numbers in every spelling, words, signs, and what none of them can be."""

from __future__ import annotations

from fractions import Fraction

import pytest
from recipe.reading import passage

from presscloth.recipe.lexer import MOST_DIGITS, TokenKind, tokens
from presscloth.source import Passage, Source


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("3", Fraction(3)),
        ("2.5", Fraction(5, 2)),
        (".5", Fraction(1, 2)),
        ("5/8", Fraction(5, 8)),
        ("1 1/2", Fraction(3, 2)),
        ("10 3/16", Fraction(163, 16)),
        ("1½", Fraction(3, 2)),
        ("1 ½", Fraction(3, 2)),
        ("¾", Fraction(3, 4)),
        ("⅓", Fraction(1, 3)),
        ("2⅝", Fraction(21, 8)),
        ("0.1", Fraction(1, 10)),
        ("9" * MOST_DIGITS, Fraction(10**12 - 1)),
    ],
)
def test_numbers_are_exact(text: str, value: Fraction):
    (token,) = tokens(passage(text))
    assert (token.kind, token.value, token.span.text) == (TokenKind.NUMBER, value, text)


@pytest.mark.parametrize(
    ("text", "name", "hint"),
    [
        ("1-1/2", "fraction-with-hyphen", "write `1 1/2`, or `1 - 1/2` with spaces to subtract"),
        ("1‑1/2", "fraction-with-hyphen", "write `1 1/2`, or `1 - 1/2` with spaces to subtract"),
        ("1,5", "comma-in-number", "write `1.5`, or put a space after the comma for two numbers"),
        ("3/0", "divided-by-nothing", "put something other than 0 below the line"),
        ("1 3/0", "divided-by-nothing", "put something other than 0 below the line"),
        ("9" * 13, "number-too-long", "shorten the number to what a tape measure can show"),
        ("&", "character-unknown", "take it out; the signs are + - × / and round brackets"),
        ("_", "character-unknown", "take it out; the signs are + - × / and round brackets"),
    ],
)
def test_what_is_no_number(text: str, name: str, hint: str):
    (token,) = tokens(passage(text))
    assert token.kind is TokenKind.BAD
    assert token.problem is not None
    assert (token.problem.slug(), token.problem.hint()) == (name, hint)
    assert token.problem.span.text == text


def test_signs_that_mean_the_same_have_one_spelling():
    found = tokens(passage("- – − * × ÷ / ≤ <= ≥ >="))
    assert [token.text for token in found] == ["−", "−", "−", "×", "×", "/", "/", "<=", "<=", ">=", ">="]
    assert [token.span.text for token in found][:3] == ["-", "–", "−"]


def test_a_hyphen_within_a_word_belongs_to_it():
    found = tokens(passage("half-square it's side-band-2 x2"))
    assert [token.text for token in found] == ["half-square", "it's", "side-band-2", "x2"]
    assert {token.kind for token in found} == {TokenKind.WORD}


def test_spaces_around_a_token_are_known():
    a, plus, b, minus, c = tokens(passage("a +b - c"))
    assert (plus.before, plus.after) == (True, False)
    assert (minus.before, minus.after) == (True, True)
    assert (a.before, c.after) == (True, True)
    assert b.before is False


def test_a_unit_may_stand_close_to_its_number():
    assert [token.text for token in tokens(passage('5cm (1/2") 3 %'))] == [
        "5",
        "cm",
        "(",
        "1/2",
        '"',
        ")",
        "3",
        "%",
    ]


def test_places_hold_where_the_text_has_gaps():
    source = Source("recipe.md", "> 12 cm\n> + 3")
    gappy = Passage(source, "12 cm\n+ 3", (*range(2, 8), *range(10, 14)))
    spans = [token.span.text for token in tokens(gappy)]
    assert spans == ["12", "cm", "+", "3"]


def test_a_million_signs_are_read_once():
    assert len(tokens(passage("a1 " * 100_000))) == 100_000
    assert tokens(passage("1" * 100_000))[0].kind is TokenKind.BAD
