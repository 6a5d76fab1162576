"""Measures and counts that an author typed by hand in prose, held against what was worked out."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import ClassVar

from presscloth.measure import UNITS, Disagreement, System, agreement
from presscloth.problems import Problem, Severity
from presscloth.proof.subject import Subject
from presscloth.proof.typed import Typed, TypedCount, Value, find, suggestion
from presscloth.recipe.prose import Code, Emphasis, Inline, LineBreak, Link, Measure, Picture, Words
from presscloth.recipe.walking import inlines
from presscloth.source import Span


class TypedPairDisagrees(Problem):
    """A pair of measures that was typed by hand in prose does not agree.

    Whoever follows the one half does something else than whoever follows the other.

    Fails:

        ## Steps
        1. Press 2.5 cm (1/2 in) under.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Press {2.5 cm (1 in)} under.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    disagreement: Disagreement

    def message(self) -> str:
        found = self.disagreement
        return (
            f"`{self.span.quoted}` is typed by hand, and its halves are {found.apart_text} apart, "
            f"{found.share_text} of the larger"
        )

    def hint(self) -> str:
        return f"write {' or '.join(f'`{{{pair}}}`' for pair in self.disagreement.suggestions)}"


class TypedByHand(Problem):
    """A measure is typed by hand in prose.

    It follows no size, it is given in one way only, and when the measure changes it stays as it
    is. In braces it is worded like all others, and a name in braces follows every size.

    Fails:

        ## Steps
        1. Press half an inch under.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Press {1.2 cm (1/2 in)} under.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING
    instead: str

    def message(self) -> str:
        return f"`{self.span.quoted}` is typed by hand and follows no size"

    def hint(self) -> str:
        return f"write `{self.instead}`, or the name of a measure in braces"


def check(subject: Subject) -> Iterator[Problem]:
    """Find typed measures in all prose; those in braces, in code and in names of materials apart."""
    for run in subject.told:
        for text, places in runs(run.of):
            named = _named_materials(text, subject)
            for typed in find(text):
                if not any(start <= typed.start and typed.end <= end for start, end in named):
                    yield from _problems(typed, place_of(typed, places))


def _named_materials(text: str, subject: Subject) -> list[tuple[int, int]]:
    """Where a text names a material as the list does: `Cotton cord, 4 mm`."""
    return [
        match.span()
        for material in subject.recipe.materials
        for match in re.finditer(re.escape(material.name), text, re.IGNORECASE)
    ]


def runs(of: tuple[Inline, ...]) -> Iterator[tuple[str, list[Span]]]:
    """Stretches of words that stand together, with the place of each character."""
    text = ""
    places: list[Span] = []
    for inline in inlines(of):
        match inline:
            case Words(text=words, span=span):
                text += words
                places += _places(words, span)
            case LineBreak(span=span):
                text += " "
                places.append(span)
            case Emphasis() | Link():
                pass  # what stands inside follows by itself
            case Measure() | Code() | Picture():
                yield text, places
                text, places = "", []
    yield text, places


def _places(words: str, span: Span) -> list[Span]:
    """The place of each character; of an escape or an entity, the whole of it."""
    if len(words) != span.end - span.start:
        return [span] * len(words)
    return [Span(span.source, span.start + i, span.start + i + 1) for i in range(len(words))]


def place_of(typed: Typed | TypedCount, places: list[Span]) -> Span:
    return places[typed.start].to(places[typed.end - 1])


def _problems(typed: Typed, span: Span) -> Iterator[Problem]:
    disagreements = [d for pair in typed.pairs() for d in _held(*pair, about=typed.about)]
    for disagreement in disagreements:
        yield TypedPairDisagrees(span=span, disagreement=disagreement)
    if not disagreements:
        yield TypedByHand(span=span, instead=suggestion(typed))


def _held(first: Value, second: Value, *, about: bool) -> Iterator[Disagreement]:
    """Hold both ends of a range against each other; equal ends once."""
    systems = {UNITS[value.unit].system: value for value in (first, second)}
    if len(systems) < 2 or UNITS[first.unit].kind is not UNITS[second.unit].kind:
        return
    metric, imperial = systems[System.METRIC], systems[System.IMPERIAL]
    kind = UNITS[metric.unit].kind
    for low_metric, low_imperial in dict.fromkeys(((metric.low, imperial.low), (metric.high, imperial.high))):
        found = agreement(_own(low_metric, metric.unit), _own(low_imperial, imperial.unit), kind, about=about)
        if found is not None:
            yield found
            return


def _own(value: Fraction, unit: str) -> Fraction:
    return value * UNITS[unit].factor
