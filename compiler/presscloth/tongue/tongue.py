"""A language: its catalogue of words, how it writes numbers and units, and an author's names in it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import field
from functools import cache
from pathlib import Path

from presscloth.frozen import dataclass
from presscloth.tongue.conventions import ENGLISH_WAYS, SIGNS, Conventions, conventions_of

WORDS = Path(__file__).parent / "words"
"""The catalogues: gettext's `.po`, one for each language, the English texts their message ids."""

_FRACTION = re.compile(r"-?\d+(?: \d+/\d+|/\d+)?(?:\.\d+)?")
_MEASURE = re.compile(rf"({_FRACTION.pattern}) ([a-z]+²?)(?![a-z])")

Value = str | int


@dataclass(frozen=True)
class Catalogue:
    """The words of a language by their context and English; plurals in the order of the rule's numbers.

    `plural` gives the number of the plural form for a count (gettext's `Plural-Forms`).
    """

    language: str
    words: Mapping[tuple[str, str], tuple[str, ...]]
    plural: Plural

    def word(self, context: str, message: str) -> str:
        found = self.words.get((context, message))
        return found[0] if found and found[0] else message

    def many(self, one: str, several: str, n: int) -> str:
        found = self.words.get(("", one), ())
        form = self.plural(n)
        if form < len(found) and found[form]:
            return found[form]
        return one if n == 1 else several


class Plural:
    """The rule by which a language chooses among its plural forms."""

    def __init__(self, rule: str) -> None:
        from gettext import c2py

        self._form = c2py(rule)

    def __call__(self, n: int) -> int:
        return int(self._form(n))


@dataclass(frozen=True)
class Tongue:
    """What a handout is worded with. `names` are an author's names in this language, by the recipe's own.

    `catalogue` is None in English, whose texts stand in the code.
    """

    language: str
    ways: Conventions
    catalogue: Catalogue | None = None
    names: Mapping[str, str] = field(default_factory=dict)

    def say(self, message: str, **values: Value) -> str:
        return self.say_as("", message, **values)

    def say_as(self, context: str, message: str, /, **values: Value) -> str:
        words = self.catalogue.word(context, message) if self.catalogue else message
        return words.format(**self._written(values)) if values else words

    def many(self, one: str, several: str, n: int, /, **values: Value) -> str:
        return self.form(one, several, n).format(**self._written({"n": n, **values}))

    def form(self, one: str, several: str, n: int) -> str:
        """The form of a message that a number asks for, its places not yet filled."""
        if self.catalogue:
            return self.catalogue.many(one, several, n)
        return one if n == 1 else several

    def _written(self, values: Mapping[str, Value]) -> Mapping[str, str]:
        return {k: self.number(str(v)) if isinstance(v, int) else v for k, v in values.items()}

    def number(self, text: str) -> str:
        """A number as `measure` prints it (`1250.5`, `7 1/2`) in the way of the language."""
        whole, point, decimals = text.partition(".")
        if len(whole.lstrip("-")) > 4 and whole.lstrip("-").isdigit() and self.ways.thousands:
            whole = f"{int(whole):,}".replace(",", self.ways.thousands)
        return f"{whole}{self.ways.decimal}{decimals}" if point else whole

    def measured(self, text: str) -> str:
        """Measures in a text as `measure` prints them: `21.25 cm` in German `21,25 cm`, `3 in` `3 Zoll`."""
        if self.ways is ENGLISH_WAYS:
            return text
        return _MEASURE.sub(lambda found: self._measure(found[1], found[2]), text)

    def _measure(self, number: str, unit: str) -> str:
        one, several = self.ways.units.get(unit, (unit, unit))
        return f"{self.number(number)} {one if _at_most_one(number) else several}"

    def unbroken(self, text: str) -> str:
        """A text in which no line ends within a measure: `2 1/2 in` is one word, and so is `15 cm ×`."""
        words = (word for pair in self.ways.units.values() for word in pair)
        return _spaces_in_measures((*SIGNS, *words)).sub("\N{NO-BREAK SPACE}", text)

    def named(self, name: str) -> str:
        """An author's name in this language; as the recipe has it where there is no other."""
        return self.names.get(name, name)

    def listed(self, words: Sequence[str]) -> str:
        """`Small`, `Small and Tall`, `Small, Medium and Tall`"""
        *before, last = words
        return self.say("{before} and {last}", before=", ".join(before), last=last) if before else last

    def month(self, year: int, number: int) -> str:
        """`May 2027`, in German `Mai 2027`."""
        return f"{self.ways.months[number - 1]} {year}"


@cache
def _spaces_in_measures(units: tuple[str, ...]) -> re.Pattern[str]:
    """The spaces between a number and its fraction, a number and its unit, and before `×`."""
    unit = "|".join(sorted(map(re.escape, units), key=len, reverse=True))
    return re.compile(rf"(?<=\d) (?=\d+/\d|(?:{unit})(?!\w))| (?=×)")


def _at_most_one(number: str) -> bool:
    """Whether a unit stands in the singular: one, and parts of one (`3/4 Yard`)."""
    return number == "1" or re.fullmatch(r"-?\d+/\d+", number) is not None


ENGLISH = Tongue("en", ENGLISH_WAYS)


def tongue_of(language: str, names: Mapping[str, str] | None = None) -> Tongue:
    """The tongue for a language tag (BCP 47); words stay English where there is no catalogue."""
    if _is_english(language):
        return Tongue(language, ENGLISH_WAYS, None, names) if names else ENGLISH
    held = _held(language)
    return Tongue(language, conventions_of(language), catalogue(held) if held else None, names or {})


def language_name(language: str) -> str:
    """A language's name in itself: `English`, `Deutsch`."""
    return conventions_of(language).name if not _is_english(language) else ENGLISH_WAYS.name


def has_words(language: str) -> bool:
    """Whether handouts can be worded in a language: it is English, or there is a catalogue of it."""
    return _is_english(language) or _held(language) is not None


@cache
def languages() -> tuple[str, ...]:
    """The languages of the catalogues, English first."""
    return ("en", *sorted(file.stem for file in WORDS.glob("*.po")))


def _is_english(language: str) -> bool:
    return language.lower().split("-")[0] == "en"


def _held(language: str) -> str | None:
    """The catalogue that serves a tag: its own, else that of the language without region and script."""
    wanted = language.lower().split("-")
    for length in range(len(wanted), 0, -1):
        tag = "-".join(wanted[:length])
        for name in languages()[1:]:
            if name.lower() == tag:
                return name
    return None


@cache
def catalogue(name: str) -> Catalogue:
    """Read a catalogue with Babel; what is marked fuzzy is left out, as gettext does."""
    from babel.messages.pofile import read_po

    with open(WORDS / f"{name}.po", "rb") as file:
        read = read_po(file, locale=name.replace("-", "_"))
    words: dict[tuple[str, str], tuple[str, ...]] = {}
    for message in read:
        if message.id and not message.fuzzy:
            key = message.id if isinstance(message.id, str) else message.id[0]
            said = message.string
            words[message.context or "", key] = (said,) if isinstance(said, str) else tuple(said or ())
    return Catalogue(name, words, Plural(read.plural_expr))
