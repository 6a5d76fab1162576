"""Transform a passage into tokens: numbers, words and signs, each with its place.

Numbers are read here and nowhere else: `3`, `2.5`, `5/8`, `1 1/2`, `1½`, all exact, with a bounded
number of digits. What cannot be read becomes a token of kind BAD with its problem.
"""

from __future__ import annotations

import re
import unicodedata
from enum import Enum
from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.problems import Problem
from presscloth.recipe.expression_problems import CharacterUnknown, DividedByNothing
from presscloth.recipe.measured_problems import CommaInNumber, FractionWithHyphen, NumberTooLong
from presscloth.source import Passage, Span

MOST_DIGITS = 12


class TokenKind(Enum):
    NUMBER = "number"
    WORD = "word"
    SIGN = "sign"
    BAD = "bad"


@dataclass(frozen=True, slots=True)
class Token:
    """One token; `before` and `after` tell whether a space (or the end) stands on either side."""

    kind: TokenKind
    text: str
    span: Span
    value: Fraction | None = None
    before: bool = True
    after: bool = True
    problem: Problem | None = None

    def says(self, *texts: str) -> bool:
        return self.kind is not TokenKind.NUMBER and self.text in texts


_VULGAR = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_TOKEN = re.compile(
    rf"""
      (?P<hyphened> \d+ [-‑] \d+ / \d+ )
    | (?P<mixed>    \d+ [ ] \d+ / \d+ )
    | (?P<fraction> \d+ / \d+ )
    | (?P<vulgar>   \d* [ ]? [{_VULGAR}] )
    | (?P<comma>    \d+ , \d+ )
    | (?P<decimal>  \d* \. \d+ | \d+ )
    | (?P<word>     [^\W\d_] [\w'’]* (?: [-‑] \w+ )* )
    | (?P<sign>     <= | >= | ≤ | ≥ | [-+−–×*/÷()=<>,%"″:] )
    | (?P<space>    \s+ )
    | (?P<other>    . )
    """,
    re.VERBOSE | re.DOTALL,
)

_SIGNS = {"-": "−", "–": "−", "*": "×", "÷": "/", "≤": "<=", "≥": ">="}


def tokens(passage: Passage) -> tuple[Token, ...]:
    """Read a passage into tokens. Signs that mean the same are given one spelling."""
    return tuple(_tokens(passage))


def _tokens(passage: Passage) -> list[Token]:
    text = passage.text
    found: list[Token] = []
    for match in _TOKEN.finditer(text):
        kind = match.lastgroup
        if kind == "space":
            continue
        start, end = match.span()
        span = passage.span(start, end)
        before = start == 0 or text[start - 1].isspace()
        after = end == len(text) or text[end].isspace()
        found.append(_token(str(kind), match.group(), span, before, after))
    return found


def _token(kind: str, text: str, span: Span, before: bool, after: bool) -> Token:
    match kind:
        case "word":
            return Token(TokenKind.WORD, text, span, None, before, after)
        case "sign":
            return Token(TokenKind.SIGN, _SIGNS.get(text, text), span, None, before, after)
        case _:
            return _number_token(kind, text, span, before, after)


def _number_token(kind: str, text: str, span: Span, before: bool, after: bool) -> Token:
    problem, value = _number(kind, text, span)
    if problem is not None:
        return Token(TokenKind.BAD, text, span, None, before, after, problem)
    return Token(TokenKind.NUMBER, text, span, value, before, after)


def _number(kind: str, text: str, span: Span) -> tuple[Problem | None, Fraction]:
    nothing = Fraction(0)
    if any(len(digits) > MOST_DIGITS for digits in re.findall(r"\d+", text)):
        return NumberTooLong(span=span), nothing
    match kind:
        case "hyphened":
            return FractionWithHyphen(span=span), nothing
        case "comma":
            return CommaInNumber(span=span), nothing
        case "other":
            return CharacterUnknown(span=span), nothing
        case "vulgar":
            digits = text[:-1].strip()
            part = Fraction(unicodedata.numeric(text[-1])).limit_denominator(10)
            return None, part + int(digits or 0)
        case "decimal":
            whole, _, decimals = text.partition(".")
            return None, Fraction(int((whole or "0") + decimals), 10 ** len(decimals))
        case _:
            return _with_stroke(text, span)


def _with_stroke(text: str, span: Span) -> tuple[Problem | None, Fraction]:
    """`5/8`, `1 1/2`"""
    whole, _, fraction = text.rpartition(" ")
    above, _, below = fraction.partition("/")
    if int(below) == 0:
        return DividedByNothing(span=span), Fraction(0)
    return None, int(whole or 0) + Fraction(int(above), int(below))
