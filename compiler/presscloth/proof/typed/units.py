"""Units as they are typed by hand, and how sure it is that a word is one: `in` seldom is."""

from __future__ import annotations

from presscloth.frozen import dataclass
from presscloth.proof.typed.numbers import HYPHENS, Number
from presscloth.proof.typed.tokens import Kind, Text, words

METRIC = frozenset({"mm", "cm", "m", "g", "kg"})
WEIGHTS = frozenset({"g", "kg", "oz", "lb"})

# How many of the smaller unit make the larger, for `1' 6"`, `2 lb 4 oz`, `1 m 20 cm`.
COMPOUNDS = {("ft", "in"): 12, ("yd", "in"): 36, ("yd", "ft"): 3, ("lb", "oz"): 16, ("m", "cm"): 100}

_SHORT = {
    "mm": "mm", "cm": "cm", "m": "m", "in": "in", "ins": "in", "ft": "ft", "yd": "yd", "g": "g",
    "kg": "kg", "oz": "oz", "lb": "lb", "mms": "mm", "cms": "cm", "yds": "yd", "kgs": "kg",
    "lbs": "lb", "gm": "g", "gms": "g",
}  # fmt: skip
_LONG = {
    "millimetre": "mm", "millimeter": "mm", "centimetre": "cm", "centimeter": "cm", "metre": "m",
    "meter": "m", "inch": "in", "yard": "yd", "gram": "g", "gramme": "g", "kilogram": "kg",
    "kilo": "kg", "ounce": "oz", "foot": "ft", "pound": "lb",
}  # fmt: skip
_PLURALS = {"inches": "in", "feet": "ft"} | {f"{word}s": unit for word, unit in _LONG.items()}
_WORDS = _LONG | _PLURALS
_SIGNS = {'"': "in", "″": "in", "''": "in", "′′": "in", "”": "in",
          "'": "ft", "′": "ft", "’": "ft"}  # fmt: skip

# A capital M is a size, G a clamp; `In` begins a sentence.
_SMALL_ONLY = frozenset({"m", "g", "in", "ins"})
# Never after a number in words: `one in three`.
_FIGURES_ONLY = frozenset({"m", "g", "in", "ins"})

# What follows a length and seldom a small word `in`, nor the feet of a machine.
_LIKE_A_LENGTH = words(
    "wide long high deep tall thick square squares across longer shorter larger smaller wider narrower "
    "higher deeper of"
)
_LIKE_INCHES = _LIKE_A_LENGTH | words(
    "apart from by x under seam seams hem hems strip strips border borders allowance allowances overlap "
    "gap diameter radius hoop or below above beyond past outside inside extra up down away between "
    "binding tail tails finished open unsewn free at before after"
)
# After `trim to 4 in`, `measures 4 in` these are as good.
_LEADING = words("to by measure measures measuring is are be within than about roughly every")
_NEUTRAL = words("and then so when while with for as if but until on")
AFTER_A_LENGTH = _LIKE_INCHES | _NEUTRAL | {"to", "in"}
_DETERMINERS = words(
    "the a an each every all this that these those your our his her their its both either any some no "
    "one two three four five six seven eight nine ten turn order total it them"
)
# `size 4 in`, `step 2 in`: the number is a name.
_NAMING = words(
    "size sizes step steps needle page pages figure figures fig row rows no number version stage "
    "setting stitch tension dial level chapter table part set turn"
)
# `the iron on 3 in`; `a radius of 7 in`.
_SETTINGS = frozenset({"iron", "dial", "machine", "tension"})
_EXTENTS = words("radius diameter width length height depth distance total gap overlap")
_ENDING = frozenset(".,;:)]!?/×—–")
# Cloth is sold by its weight in ounces: `8 oz denim` is a kind of denim.
_CLOTHS = words("denim canvas duck twill linen cotton sailcloth cloth fabric wool")


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit and the index after it; `sure` is false for words that are mostly something else."""

    name: str
    after: int
    sure: bool


def unit_at(text: Text, index: int, number: Number) -> Unit | None:
    """The unit of a number that ends at `index`, a hyphen between them or not."""
    hyphen = text.tight_sign(index) in HYPHENS and text[index + 1].tight
    at = index + 1 if hyphen else index
    if text[at].kind is Kind.SIGN:
        return None if hyphen else _mark_at(text, at)
    word = text.word(at)
    name = _SHORT.get(word) or _WORDS.get(word)
    if name is None or not _ends_here(text, at + 1, word):
        return None
    if word in _SMALL_ONLY and text[at].text != word:
        return None
    if word in _FIGURES_ONLY and number.words:
        return None
    if name == "oz" and text.word(at + 1) in _CLOTHS:
        return None
    if word in {"foot", "feet", "pound", "pounds"}:
        sure = number.fraction
    elif word in {"in", "ins"}:
        sure = hyphen or text[at].tight or (number.fraction and text.word(at + 1) not in _DETERMINERS)
    else:
        sure = True
    after = _with_dot(text, at + 1, word)
    return Unit(name, after, sure or after > at + 1)


def long_unit_at(text: Text, index: int) -> Unit | None:
    """A unit spelled out in the singular, for `an inch`, `a yard`."""
    word = text.word(index)
    if word not in _LONG or not _ends_here(text, index + 1, word):
        return None
    return Unit(_LONG[word], index + 1, sure=word not in {"foot", "pound"})


def looks_like_a_unit(text: Text, start: int, unit: Unit) -> bool:
    """Whether the words around a number (from token `start`) and an unsure unit make a measure of it."""
    following = text[unit.after]
    after, before = text.word(unit.after), text.word_before(start)
    if unit.name != "in":
        known = after == "of" and text.word(unit.after + 1) in _DETERMINERS  # two feet of the stand
        return not known and after in ({"of"} if unit.name == "lb" else _LIKE_A_LENGTH)
    further = text.word_before(start - 1) if before in {"to", "on", "of"} else ""
    if before in _NAMING or further in _SETTINGS:
        return False
    if following.kind in (Kind.DIGITS, Kind.VULGAR) or after in _DETERMINERS:
        return False
    if not after and (following.kind in (Kind.NOTHING, Kind.CLOSING) or following.text in _ENDING):
        return True
    if not following.near or after in _LIKE_INCHES or before in {"a", "an"}:
        return True
    return (before in _LEADING or further in _EXTENTS) and after in _NEUTRAL


def _mark_at(text: Text, index: int) -> Unit | None:
    """`″`, `"`, `'`: right after the figures, and not within a word (`the 12's`)."""
    token = text[index]
    name = _SIGNS.get(token.text)
    following = text[index + 1]
    if name is None or not token.tight or (following.tight and following.kind is Kind.WORD):
        return None
    return Unit(name, index + 1, sure=True)


def _ends_here(text: Text, index: int, word: str) -> bool:
    """False amid `2-in-1`, `g/m²`, `cm2`, `yard's`."""
    token, following = text[index], text[index + 1]
    if not token.tight or (token.lower == "x" and following.kind is Kind.DIGITS):
        return True
    if token.kind in (Kind.DIGITS, Kind.VULGAR, Kind.WORD) or token.text in {"²", "³", "^", "_"}:
        return False
    if token.text in {"/", "'", "’"}:
        return not (following.tight and following.kind is Kind.WORD)
    if token.text in HYPHENS and following.tight and word == "in":
        return following.kind is not Kind.DIGITS and following.lower not in {"one", "a"}
    return True


def _with_dot(text: Text, index: int, word: str) -> int:
    """The index after the dot of an abbreviation; the dot that ends a sentence is none."""
    following = text[index + 1]
    if word not in _SHORT or text.tight_sign(index) != "." or following.kind is Kind.NOTHING:
        return index
    goes_on = (
        following.text in {")", "]", ",", ";", "(", "×"}
        or following.text.islower()
        or (following.kind is Kind.DIGITS)
    )
    return index + 1 if goes_on else index
