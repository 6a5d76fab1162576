"""The tongue in which a handout speaks: its words, numbers and units in one language.

Every English word that a reader of a handout or page can see is written as

    say("Cut off the end")                          a sentence, a heading, a label
    say("{name}, {width} wide", name=…, width=…)    with values in it: whole sentences, never pieces of them
    say_as("column", "Cut")                         a word that needs its place to be translated
    many("{n} strip", "{n} strips", n)              by number; `n` is written in the language's way
    named(piece.name)                               a name of the author's: piece, size, material, sewn thing
    measured("7.5 cm"), counted_number("0.5")       numbers and measures as `measure` prints them
    listed(["A", "B", "C"])                         `A, B and C`

and templates have `say`, `say_as`, `many`, `listed` and `named` by the same names (a value that is markup
stays markup). A message must stand in the call as a literal: the catalogue is made by looking for it
(`python -m presscloth.dev words` brings `words/*.po` up to date, and a test fails while a word is
missing there). Scripts get their words from `data-` attributes. What a value says is worded when the handout
is built, so that writers find words only. Problems and the command line speak English and use none of this.

Whoever begins a handout or a page opens its language: `with speaking(tongue_of("de")):`. Without that it
is English, and no catalogue, no Babel and no CLDR is loaded.
"""

from presscloth.tongue.speech import (
    counted_number,
    listed,
    many,
    measured,
    month,
    named,
    say,
    say_as,
    speaking,
    spoken,
    unbroken,
)
from presscloth.tongue.tongue import ENGLISH, Tongue, has_words, language_name, languages, tongue_of

__all__ = [
    "ENGLISH",
    "Tongue",
    "counted_number",
    "has_words",
    "language_name",
    "languages",
    "listed",
    "many",
    "measured",
    "month",
    "named",
    "say",
    "say_as",
    "speaking",
    "spoken",
    "tongue_of",
    "unbroken",
]
