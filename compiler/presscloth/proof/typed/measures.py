"""Finding the measures that an author typed by hand."""

from __future__ import annotations

from presscloth.frozen import dataclass
from presscloth.proof.typed.amounts import Amount, amount_at
from presscloth.proof.typed.numbers import ARTICLES, HYPHENS, begins_a_number
from presscloth.proof.typed.tokens import Text
from presscloth.proof.typed.tree import Nearness, Typed, Value
from presscloth.proof.typed.units import Unit, looks_like_a_unit

_CLOSES = {"(": ")", "[": "]"}
_ABOUT = frozenset(
    {"about", "roughly", "approximately", "approx", "around", "nearly", "almost", "circa", "ca"}
)
_SHORT_FOR_ABOUT = frozenset({"approx", "ca"})
_ABOUT_SIGNS = frozenset({"~", "≈", "∼"})
_OVER_AND_UNDER = frozenset({"over", "under"})
_SHADES = {"scant": Nearness.SCANT, "bare": Nearness.SCANT, "generous": Nearness.GENEROUS}


@dataclass(frozen=True, slots=True)
class _Found:
    """What stands between two tokens; `last` is the index after it."""

    typed: Typed
    last: int


@dataclass(frozen=True, slots=True)
class _Second:
    """The same measure said again, up to the index `after`."""

    values: tuple[Value, ...]
    after: int
    nearness: Nearness


# By these a cloth is weighed.
_CLOTH = frozenset({"square", "metre", "meter", "m", "m²", "sqm", "yard", "yd"})


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
    if amount is None or _is_a_rate(text, index, amount):
        return None
    if text[index].lower in ARTICLES and text[amount.after - 2].text in HYPHENS:
        index += 1  # the article of `a quarter-inch seam` is the seam's
    nearness, first = _said_before(text, index, floor)
    second = _in_the_other_system(text, amount, bracketed=text[first - 1].text in _CLOSES)
    if second is None and not _sure(text, index, amount):
        return None
    others, after = (second.values, second.after) if second else ((), amount.after)
    if second is not None and nearness is Nearness.EXACT:
        nearness = second.nearness
    if nearness is Nearness.EXACT:
        nearness, after = _said_after(text, after)
    typed = Typed(text[first].start, text[after - 1].end, _measures(amount.values, others), nearness)
    return _Found(typed, after)


def _is_a_rate(text: Text, start: int, amount: Amount) -> bool:
    """`12 stitches per 2.5 cm`, `150 g per square metre`: neither is cut or weighed out."""
    of_cloth = text.word(amount.after) == "per" and text.word(amount.after + 1) in _CLOTH
    return text.word_before(start) == "per" or (amount.weight and of_cloth)


def _sure(text: Text, start: int, amount: Amount) -> bool:
    unit = Unit(amount.values[0].unit, amount.after, amount.sure)
    return amount.sure or looks_like_a_unit(text, start, unit)


def _measures(values: tuple[Value, ...], others: tuple[Value, ...]) -> tuple[tuple[Value, ...], ...]:
    if not others:
        return tuple((value,) for value in values)
    return tuple(zip(values, others, strict=True))


def _in_the_other_system(text: Text, amount: Amount, *, bracketed: bool) -> _Second | None:
    """The same again in the other system: `(1/2 in)`, `/ 1/2 in`, `or 1/2 in`, `(just under 1/2 in)`."""
    bracket = text.sign(amount.after) if text.sign(amount.after) in _CLOSES else ""
    joint = _past_joint(text, amount.after, bracketed=bracketed)
    if joint is None:
        return None
    start, nearness = _past_shades(text, joint)
    other = amount_at(text, start)
    if other is None or not amount.claims_the_same_as(other):
        return None
    closed = bool(bracket) and text[other.after].text == _CLOSES[bracket]
    return _Second(other.values, other.after + 1 if closed else other.after, nearness)


def _past_joint(text: Text, at: int, *, bracketed: bool) -> int | None:
    """The index after what joins two ways of saying a measure; a comma does so only within brackets."""
    sign, word = text.sign(at), text.word(at)
    if sign == "≈":
        return at
    if (sign in _CLOSES or sign == ",") and text.word(at + 1) == "or":
        return at + 2
    joined = sign in {"/", "=", *_CLOSES} or word == "or" or (sign == "," and bracketed)
    return at + 1 if joined else None


def _past_shades(text: Text, at: int) -> tuple[int, Nearness]:
    """Past `about`, `approx.`, `just under`, `scant`: the index after them, and what they say."""
    sign, word, following = text.sign(at), text.word(at), text.word(at + 1)
    if word == "just" and following in _OVER_AND_UNDER:
        return at + 2, Nearness.ABOUT
    if word in _SHADES:
        return at + 1, _SHADES[word]
    if word in _ABOUT or sign in _ABOUT_SIGNS:
        dotted = word in _SHORT_FOR_ABOUT and text.tight_sign(at + 1) == "."
        return at + (2 if dotted else 1), Nearness.ABOUT
    return at + 1 if sign == "=" else at, Nearness.EXACT


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
    if word in _ABOUT_SIGNS or (word in _ABOUT if not dotted else word in _SHORT_FOR_ABOUT):
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
