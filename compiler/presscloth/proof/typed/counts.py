"""Finding the numbers of things that an author typed by hand."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from presscloth.frozen import dataclass
from presscloth.proof.typed.numbers import HYPHENS, begins_a_number, cardinal_at, whole_at
from presscloth.proof.typed.tokens import Text, words
from presscloth.proof.typed.tree import TypedCount

_DOZEN = 12
# What may stand between a number and its things without choosing among them.
_STATES = words(
    "finished sewn joined trimmed pressed matching identical cut folded stitched completed quilted lined"
)
_ALL = frozenset({"the", "all", "your", "its", "their", "our"})
# `step 2`: the number is a name; `these two`, `about 20`, `every 2`: a choice, a guess, a rhythm.
_NOT_BEFORE = words(
    "step steps size sizes row rows page pages figure figures no number version stage part chapter "
    "needle these those any other another next last first every per about roughly approximately nearly "
    "almost least most than only over under to or x by"
)
_NOT_AFTER = words("more left over remaining longer")


@dataclass(frozen=True, slots=True)
class _Number:
    """A count and the index after it. `all`: it speaks of all by itself, as `both` and `all four` do."""

    count: int
    after: int
    all: bool = False


# Names by their words in small letters, singular and plural, longest first.
_Names = Mapping[str, tuple["_Spelling", ...]]


@dataclass(frozen=True, slots=True)
class _Spelling:
    words: tuple[str, ...]
    name: str
    several: bool
    single: bool


def find_counts(text: str, names: Sequence[str]) -> tuple[TypedCount, ...]:
    """Find every number of known things typed in a text: `the 16 blocks`, `both handles`.

    `names` are the things that the recipe knows; a plural and the case do not matter, and the longest
    name wins. A choice among things (`one of the handles`, `the first two blocks`) and a guess
    (`two or three tabs`) are no counts. Common practice, no source.
    """
    tokens = Text(text)
    spellings = _spellings(tuple(names))
    found: list[TypedCount] = []
    index = 0
    while index < len(tokens):
        after, count = _count_at(tokens, index, spellings)
        if count is not None:
            found.append(count)
        index = after
    return tuple(found)


def _count_at(text: Text, index: int, names: _Names) -> tuple[int, TypedCount | None]:
    """The count that begins at a token, and the index to go on from."""
    number = _number_at(text, index) if begins_a_number(text, index) else None
    if number is None:
        return index + 1, None
    thing = _thing_at(text, number, names)
    if thing is None or not _counts(text, index, thing[1]):
        return number.after, None
    name, after = thing
    place = text[index].start, text[after - 1].end
    return after, TypedCount(*place, number.count, name, number.all or _speaks_of_all(text, index))


def _number_at(text: Text, index: int) -> _Number | None:
    word = text[index].lower
    if word == "both":
        return _Number(2, index + 1, all=True)
    if word == "half" and text.word(index + 1) == "a" and text.word(index + 2) == "dozen":
        return _Number(_DOZEN // 2, index + 3)
    if word in {"pair", "dozen"}:
        return _grouped(text, index, 1)
    number = cardinal_at(text, index) or whole_at(text, index)
    if number is None:
        return None
    return _grouped(text, number[1], number[0]) or _Number(*number, all=text.word_before(index) == "all")


def _grouped(text: Text, index: int, count: int) -> _Number | None:
    """`pair of`, `2 pairs of`, `dozen`, `two dozen`."""
    word, of = text[index].lower, text.word(index + 1) == "of"
    if word in {"pair", "pairs"} and of:
        return _Number(2 * count, index + 2)
    return _Number(_DOZEN * count, index + 1) if word == "dozen" and not of else None


def _thing_at(text: Text, number: _Number, names: _Names) -> tuple[str, int] | None:
    """The name of the things counted, in the number that the count asks for, and the index after it."""
    at = number.after
    if number.all and text.word(at) == "of":
        at += 1
    if number.all and text.word(at) in _ALL:
        at += 1
    if text.word(at) in _STATES:
        at += 1
    for spelling in names.get(text.word(at), ()):
        here = all(text.word(i) == word for i, word in enumerate(spelling.words, start=at))
        if here and (spelling.single if number.count == 1 else spelling.several):
            return spelling.name, at + len(spelling.words)
    return None


def _counts(text: Text, start: int, after: int) -> bool:
    """False for choices, guesses, rhythms, and names that are only the beginning of a word."""
    if text.word_before(start) in _NOT_BEFORE or text.sign(start - 1) in {"×", "/"}:
        return False
    if text.tight_sign(after) in HYPHENS and text[after + 1].tight:
        return False
    return text.word(after) not in _NOT_AFTER and not (
        text.word(after) == "at" and text.word(after + 2) == "time"
    )


def _speaks_of_all(text: Text, start: int) -> bool:
    return text.word_before(start) in _ALL


@lru_cache(maxsize=16)
def _spellings(names: tuple[str, ...]) -> _Names:
    """The spellings of all names; a recipe asks with the same names for each of its paragraphs."""
    by_first: dict[str, list[_Spelling]] = {}
    for name in names:
        for spelling in _spelled(name):
            by_first.setdefault(spelling.words[0], []).append(spelling)
    return {
        first: tuple(sorted(found, key=lambda spelling: len(spelling.words), reverse=True))
        for first, found in by_first.items()
    }


def _spelled(name: str) -> tuple[_Spelling, ...]:
    """A name as it stands after one, and after several; one that ends in `s` may be either."""
    words = tuple(token.lower for token in map(Text(name).__getitem__, range(len(Text(name)))))
    if not words:
        return ()
    *first, last = words
    as_given = _Spelling(words, name, several=last.endswith("s"), single=True)
    plurals = (f"{last}s", f"{last}es", *((f"{last[:-1]}ies",) if last.endswith("y") else ()))
    singulars = (last[:-1], last[:-2]) if last.endswith("es") else (last[:-1],) if last.endswith("s") else ()
    return (
        as_given,
        *(_Spelling((*first, plural), name, several=True, single=False) for plural in plurals),
        *(
            _Spelling((*first, singular), name, several=False, single=True)
            for singular in singulars
            if singular
        ),
    )
