"""Numbers as they are typed: `3`, `1,25`, `1-1/2`, `1½`, `one and a half`, `three quarters of a`."""

from __future__ import annotations

from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.proof.typed.tokens import VULGAR, Kind, Text

ONES = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15,
    "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
}  # fmt: skip
TENS = {
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
    "ninety": 90,
}  # fmt: skip
HYPHENS = frozenset("-‐‑–—−")
_SLASHES = frozenset("/⁄")
ARTICLES = frozenset({"a", "an"})

_PARTS = {"half": 2, "quarter": 4, "third": 3, "fifth": 5, "sixth": 6, "eighth": 8, "tenth": 10,
          "sixteenth": 16}  # fmt: skip
_PARTS_AND_PLURALS = _PARTS | {f"{word}s": parts for word, parts in _PARTS.items()} | {"halves": 2}
_NUMBER_WORDS = ARTICLES | ONES.keys() | TENS.keys() | _PARTS.keys() | {"both", "pair", "dozen"}
# The others are ordinals as well: `every third inch`.
_NEVER_ORDINAL = frozenset({"half", "quarter"})

# The parts of a ruler or a yard; `80/12` is a needle.
_DENOMINATORS = frozenset({2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64})
_RULER = frozenset({2, 4, 8, 16, 32, 64})
_MOST_DIGITS = 6


@dataclass(frozen=True, slots=True)
class Number:
    """A number and the index after it. `fraction`: typed as one; `words`: spelled out."""

    value: Fraction
    after: int
    fraction: bool = False
    words: bool = False


def number_at(text: Text, index: int) -> Number | None:
    """The number that begins at a token, as long as it will go."""
    return _in_figures(text, index) or _in_words(text, index)


def begins_a_number(text: Text, index: int) -> bool:
    """Whether a number can begin here: not amid a date, a time, a telephone number or a name (`A4`)."""
    token, before = text[index], text[index - 1]
    if token.kind is Kind.WORD and token.lower not in _NUMBER_WORDS:
        return False
    if token.kind in (Kind.SIGN, Kind.CLOSING) and token.text != ".":
        return False
    if not token.tight:
        return True
    if before.kind in (Kind.DIGITS, Kind.VULGAR, Kind.WORD):
        return False
    if before.text in {"#", "_", "$", "£", "€", "@", "^", "\\"}:
        return False
    joins = before.text in {".", ",", ":", "/", "⁄"} or before.text in HYPHENS
    return not (joins and before.tight and text[index - 2].kind is Kind.DIGITS)


def cardinal_at(text: Text, index: int) -> tuple[int, int] | None:
    """`seven`, `twenty-four`: the number and the index after it."""
    word = text[index].lower
    if word in ONES:
        return ONES[word], index + 1
    if word in TENS:
        hyphen = text.tight_sign(index + 1) in HYPHENS
        ones = text.word(index + 2) if hyphen else text.word(index + 1)
        if 0 < ONES.get(ones, 0) < 10:
            return TENS[word] + ONES[ones], index + (3 if hyphen else 2)
        return TENS[word], index + 1
    return None


def whole_at(text: Text, index: int) -> tuple[int, int] | None:
    """A whole number in figures, of few enough digits."""
    token = text[index]
    if token.kind is Kind.DIGITS and len(token.text) <= _MOST_DIGITS:
        return int(token.text), index + 1
    return None


def _in_figures(text: Text, index: int) -> Number | None:
    token, following = text[index], text[index + 1]
    if token.text == "." and following.tight:
        return _decimal(text, 0, index)
    slashed = following.tight and following.text in _SLASHES and text[index + 2].tight
    if token.kind is Kind.VULGAR or slashed:
        return _part_in_figures(text, index)
    whole = whole_at(text, index)
    if whole is None:
        return None
    value, after = whole
    return (
        (_counted_parts(text, index) if following.kind is Kind.WORD else None)
        or _decimal(text, value, after)
        or _thousands(text, value, after)
        or _mixed(text, value, after)
        or Number(Fraction(value), after)
    )


def _decimal(text: Text, whole: int, index: int) -> Number | None:
    """`.25` or `,25` after the whole ones; three digits after a comma are thousands."""
    mark, digits = text[index], text[index + 1]
    tight = (mark.tight or whole == 0) and digits.tight and digits.kind is Kind.DIGITS
    if mark.text not in {".", ","} or not tight or len(digits.text) > _MOST_DIGITS:
        return None
    if mark.text == "," and len(digits.text) == 3 and whole > 0:
        return None
    value = whole + Fraction(int(digits.text), 10 ** len(digits.text))
    return Number(value, index + 2)


def _thousands(text: Text, whole: int, index: int) -> Number | None:
    digits = text[index + 1]
    tight = digits.tight and digits.kind is Kind.DIGITS and len(digits.text) == 3
    if text.tight_sign(index) != "," or not tight or not 0 < whole < 1000:
        return None
    return Number(Fraction(1000 * whole + int(digits.text)), index + 2)


def _mixed(text: Text, whole: int, index: int) -> Number | None:
    """`1 1/2`, `1-1/2`, `1½`, `1 and 1/2`, `1 and a half`: the whole ones stand before `index`."""
    at = index + 1 if text.sign(index) in HYPHENS | {"&"} else index
    if text.word(at) == "and":
        at = _past_hyphen(text, at + 1)
    joined = at != index
    if not text[at].near:
        return None
    part = _part_in_figures(text, at) or (_part_in_words(text, at) if joined else None)
    if part is None or part.value >= 1:
        return None
    return Number(whole + part.value, part.after, fraction=True, words=part.words)


def _part_in_figures(text: Text, index: int) -> Number | None:
    token = text[index]
    if token.kind is Kind.VULGAR:
        over, under = VULGAR[token.text]
        return Number(Fraction(over, under), index + 1, fraction=True)
    return _slashed(text, index)


def _slashed(text: Text, index: int) -> Number | None:
    """`3/8` and `3/8ths`; more than a whole one only in the parts of a ruler (`5/4`)."""
    if text.tight_sign(index + 1) not in _SLASHES or not text[index + 2].tight:
        return None
    over, under = whole_at(text, index), whole_at(text, index + 2)
    if over is None or under is None:
        return None
    if under[0] not in _DENOMINATORS or not over[0]:
        return None
    if over[0] >= under[0] and not (under[0] in _RULER and over[0] < 4 * under[0]):
        return None
    after = index + 3
    if text[after].tight and text[after].lower in {"ths", "th", "rds", "rd"}:
        after += 1
    return Number(Fraction(over[0], under[0]), after, fraction=True)


def _past_hyphen(text: Text, index: int) -> int:
    """The index after a hyphen without spaces, if one stands here."""
    return index + 1 if text.tight_sign(index) in HYPHENS and text[index + 1].tight else index


def _in_words(text: Text, index: int) -> Number | None:
    part = _part_in_words(text, index)
    if part is not None:
        return part
    if text[index].lower in ARTICLES and text.word(index + 1) == "hundred":
        return Number(Fraction(100), index + 2, words=True)
    whole = cardinal_at(text, index)
    if whole is None:
        return None
    value, after = whole
    if text.word(after) == "hundred":
        return Number(Fraction(100 * value), after + 1, words=True)
    # `two 1/2 in strips` are two strips.
    spoken = text.word(_past_hyphen(text, after)) == "and"
    mixed = _mixed(text, value, after) if spoken else None
    return mixed or Number(Fraction(value), after, words=True)


def _part_in_words(text: Text, index: int) -> Number | None:
    """`half`, `a quarter`, `an eighth`, `three-quarters`, `one-half`, `3 quarters`."""
    word = text[index].lower
    if word in _NEVER_ORDINAL:
        return Number(Fraction(1, _PARTS[word]), index + 1, fraction=True, words=True)
    return _counted_parts(text, index) or _ordinal(text, index)


def _counted_parts(text: Text, index: int) -> Number | None:
    article = text[index].lower in ARTICLES
    over = (1, index + 1) if article else cardinal_at(text, index) or whole_at(text, index)
    if over is None:
        return None
    count, at = over
    joined = text.tight_sign(at) in HYPHENS
    if joined:
        at += 1
    parts = _PARTS_AND_PLURALS.get(text.word(at))
    if parts is None or count >= parts:
        return None
    # `three quarter-inch tucks` are three tucks.
    if count > 1 and not joined and text.word(at) in _PARTS and text.tight_sign(at + 1) in HYPHENS:
        return None
    return Number(Fraction(count, parts), at + 1, fraction=True, words=True)


def _ordinal(text: Text, index: int) -> Number | None:
    """`eighth-inch`, `third of a`: a part of a thing, not the eighth or the third in a row."""
    parts = _PARTS.get(text[index].lower)
    after = index + 1
    hyphen = text.tight_sign(after) in HYPHENS
    if parts is None or not (hyphen or (text.word(after) == "of" and text.word(after + 1) in ARTICLES)):
        return None
    return Number(Fraction(1, parts), after, fraction=True, words=True)
