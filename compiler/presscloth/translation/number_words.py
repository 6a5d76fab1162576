"""Numbers that a paragraph says in words, held against those in its translation.

Languages do not count alike: `both` may be `die zwei`, `in half` may be `zur Hälfte`, and whoever says
`four-patch` in one says `Block` in the other. So a number is only held against one of the other side where
both sides say as many, and two counts only where nothing stands beside it that means two as well.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping

from presscloth.recipe.prose import Inline, Words
from presscloth.recipe.walking import inlines

WORDS: Mapping[str, tuple[str, ...]] = {
    "en": tuple("two three four five six seven eight nine ten eleven twelve".split()),
    "de": tuple("zwei drei vier fünf sechs sieben acht neun zehn elf zwölf".split()),
}
"""The numbers from two to twelve, which is how far prose counts in words (common practice, no source). One is
an article in many languages."""

LIKE_TWO: Mapping[str, re.Pattern[str]] = {
    "en": re.compile(r"\b(both|pairs?|twice|double\w*|half|halves|second|either|couples?)\b", re.IGNORECASE),
    "de": re.compile(r"\b(beide\w*|paar\w*|doppel\w*|\w*mal|halb\w*|hälften?|zweite\w*|je)\b", re.IGNORECASE),
}


def numbers_said(of: tuple[Inline, ...], language: str) -> tuple[Counter[int], bool]:
    """The numbers in a run's words, and whether its twos are plain; empty where the words are not known."""
    kind = language.lower().split("-")[0]
    said = " ".join(each.text for each in inlines(of) if isinstance(each, Words))
    known = {word: number for number, word in enumerate(WORDS.get(kind, ()), start=2)}
    found = (known.get(word.casefold()) for word in re.findall(r"(?<![\w-])\w+(?![\w-])", said))
    return Counter(number for number in found if number), not (
        kind in LIKE_TWO and LIKE_TWO[kind].search(said)
    )


def in_other_numbers(
    original: tuple[Inline, ...], language: str, translated: tuple[Inline, ...], into: str
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The number words that a translation lacks and those that it has instead, each in its language."""
    (mine, plain), (theirs, also_plain) = numbers_said(original, language), numbers_said(translated, into)
    if not (plain and also_plain):
        del mine[2], theirs[2]
    if mine.total() != theirs.total() or mine == theirs:
        return (), ()
    return _words(mine - theirs, language), _words(theirs - mine, into)


def _words(numbers: Counter[int], language: str) -> tuple[str, ...]:
    words = WORDS[language.lower().split("-")[0]]
    return tuple(words[number - 2] for number in numbers.elements())
