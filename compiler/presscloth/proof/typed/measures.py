"""Finding the measures that an author typed by hand."""

from __future__ import annotations

from dataclasses import dataclass

from presscloth.proof.typed.amounts import Amount, amount_at
from presscloth.proof.typed.numbers import ARTICLES, HYPHENS, begins_a_number
from presscloth.proof.typed.tokens import Text
from presscloth.proof.typed.tree import Nearness, Typed, Value
from presscloth.proof.typed.units import Unit, looks_like_a_unit

_CLOSES = {"(": ")", "[": "]"}
_ABOUT = frozenset(
    {"about", "roughly", "approximately", "approx", "around", "nearly", "almost", "circa", "ca"}
)
_ABOUT_SIGNS = frozenset({"~", "≈", "∼"})
_OVER_AND_UNDER = frozenset({"over", "under"})
_SHADES = {"scant": Nearness.SCANT, "bare": Nearness.SCANT, "generous": Nearness.GENEROUS}


@dataclass(frozen=True, slots=True)
class _Found:
    """What stands between two tokens; `last` is the index after it."""

    typed: Typed
    last: int


def find(text: str) -> tuple[Typed, ...]:
    """Find every measure typed in a text, in order, none overlapping another.

    Lengths and weights, in figures or in words, in one system or claimed in both. Numbers without a
    unit, areas, times, temperatures and rates are none. The work grows with the length of the text.
    Which spellings count: common practice, no source; the sentences of the tests show them.
    """
    tokens = Text(text)
    found: list[Typed] = []
    index = floor = 0
    while index < len(tokens):
        one = _found_at(tokens, index, floor) if begins_a_number(tokens, index) else None
        if one is None:
            index += 1
        else:
            found.append(one.typed)
            index = floor = one.last
    return tuple(found)


def _found_at(text: Text, index: int, floor: int) -> _Found | None:
    amount = amount_at(text, index)
    if amount is None:
        return None
    if text[index].lower in ARTICLES and text[amount.after - 2].text in HYPHENS:
        index += 1  # the article of `a quarter-inch seam` is the seam's
    nearness, first = _said_before(text, index, floor)
    other, after = _in_the_other_system(text, amount, bracketed=text[first - 1].text in _CLOSES)
    if other is None and not _sure(text, index, amount):
        return None
    if nearness is Nearness.EXACT:
        nearness, after = _said_after(text, after)
    others = other.values if other else ()
    typed = Typed(text[first].start, text[after - 1].end, _measures(amount.values, others), nearness)
    return _Found(typed, after)


def _sure(text: Text, start: int, amount: Amount) -> bool:
    unit = Unit(amount.values[0].unit, amount.after, amount.sure)
    return amount.sure or looks_like_a_unit(text, start, unit)


def _measures(values: tuple[Value, ...], others: tuple[Value, ...]) -> tuple[tuple[Value, ...], ...]:
    if not others:
        return tuple((value,) for value in values)
    return tuple(zip(values, others, strict=True))


def _in_the_other_system(text: Text, amount: Amount, *, bracketed: bool) -> tuple[Amount | None, int]:
    """The same again in the other system, and the index after it: `(1/2 in)`, `/ 1/2 in`, `or 1/2 in`."""
    at = amount.after
    bracket = text.sign(at) if text.sign(at) in _CLOSES else ""
    start = _second_start(text, at, bracketed=bracketed)
    other = amount_at(text, start) if start is not None else None
    if other is None or not amount.claims_the_same_as(other):
        return None, at
    closed = bool(bracket) and text[other.after].text == _CLOSES[bracket]
    return other, other.after + 1 if closed else other.after


def _second_start(text: Text, at: int, *, bracketed: bool) -> int | None:
    """Where the second value would begin."""
    sign, word = text.sign(at), text.word(at)
    if sign == "," and text.word(at + 1) == "or":
        return at + 2
    if sign in {"/", "="} or sign in _ABOUT_SIGNS or word == "or" or (sign == "," and bracketed):
        return at + 1
    if sign not in _CLOSES:
        return None
    at += 1
    while text.word(at) in _ABOUT | {"or"} or text.sign(at) in _ABOUT_SIGNS | {"=", "."}:
        at += 1
    return at


def _said_before(text: Text, index: int, floor: int) -> tuple[Nearness, int]:
    """What `about`, `approx.`, `just under`, `scant` before it say, and the index where the run begins.

    `about` goes into the braces; `scant` stays outside, where the sewing room reads it.
    """
    before = text[index - 1].lower if text[index].near else ""
    dotted = before == "." and text[index - 1].tight
    at = index - 2 if dotted else index - 1
    if at < floor:
        return Nearness.EXACT, index
    word = text[at].lower
    if word in _SHADES and not dotted:
        return _SHADES[word], index
    if not before:
        return Nearness.EXACT, index
    if word in _ABOUT_SIGNS or (word in _ABOUT if not dotted else word in {"approx", "ca"}):
        return Nearness.ABOUT, at
    if word in _OVER_AND_UNDER and text[at - 1].lower == "just" and at - 1 >= floor:
        return Nearness.ABOUT, at - 1
    return Nearness.EXACT, index


def _said_after(text: Text, after: int) -> tuple[Nearness, int]:
    """`2 cm or so`, `2 cm approx.`"""
    if text.word(after) == "or" and text.word(after + 1) == "so":
        return Nearness.ABOUT, after + 2
    if text.word(after) in {"approx", "approximately"}:
        dot = (
            text.word(after) == "approx"
            and text.tight_sign(after + 1) == "."
            and text[after + 2].text.islower()
        )
        return Nearness.ABOUT, after + (2 if dot else 1)
    return Nearness.EXACT, after
