"""Names that were refused or do not exist: what is said of a place once the whole recipe is known.

Whatever cannot be read where a refused name is used follows from its refusal.

`half gap` cannot be a name, since `half` is a word of the sewing statements; where it is used, an
expression or a statement stops being readable for the same reason, and the author is told once.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from presscloth.problems import Problem
from presscloth.recipe.definitions import NameNotAllowed
from presscloth.recipe.expression_problems import SignMissing
from presscloth.recipe.lost import cause
from presscloth.recipe.matching import Known
from presscloth.recipe.measured_problems import UnitUnknown
from presscloth.recipe.pieces import MaterialUnknown
from presscloth.recipe.reading_problems import NameUnknown, StatementNotRead
from presscloth.source import Span


def units_not_names(problems: Sequence[Problem], known: Known) -> Iterator[Problem]:
    """The same problems; a word after a number with which no name begins was meant for a unit."""
    named = {name.split()[0].casefold() for name in (*known.measures, *known.things) if name.strip()}
    for problem in problems:
        match problem:
            case SignMissing(name=word) if word.casefold() not in named and not cause(word, known.lost):
                place = replace(problem.span, start=problem.span.end - len(word))
                yield UnitUnknown(span=place, unit=word, meant=None)
            case _:
                yield problem


def under_the_first_use(problems: Sequence[Problem]) -> Iterator[Problem]:
    """The same problems; the later uses of a name or a key that nothing bears follow from the first.

    `B strip` is unknown only because no material has the key `B`.
    """
    keys: dict[str, Span] = {}
    first: dict[str, Span] = {}
    for problem in problems:
        match problem:
            case MaterialUnknown(cause=None, key=key) if key in keys:
                yield replace(problem, cause=keys[key])
            case MaterialUnknown(key=key):
                keys.setdefault(key, problem.span)
                yield problem
            case NameUnknown(cause=None, name=name) if name.partition(" ")[0] in keys:
                yield replace(problem, cause=keys[name.partition(" ")[0]])
            case NameUnknown(cause=None, name=name):
                earlier = first.setdefault(name.casefold(), problem.span)
                yield problem if earlier is problem.span else replace(problem, cause=earlier)
            case _:
                yield problem


def under_refused_names(problems: Sequence[Problem]) -> Iterator[Problem]:
    """The same problems; those that lie in a use of a refused name have its refusal for their cause."""
    refused = [p for p in problems if isinstance(p, NameNotAllowed) and p.name]
    for problem in problems:
        first = next((name for name in refused if _lies_in_a_use(problem, name)), None)
        yield problem if first is None or problem.cause else replace(problem, cause=first.span)


def _lies_in_a_use(problem: Problem, refused: NameNotAllowed) -> bool:
    """Whether a problem begins in a name that was refused elsewhere, or is a statement that holds it."""
    place, length = problem.span, len(refused.name)
    if place.source is not refused.span.source or problem is refused:
        return False
    whole = isinstance(problem, StatementNotRead)
    start = place.start if whole else max(0, place.start - length)
    end = place.end if whole else place.start + length
    word = re.compile(rf"(?<!\w){re.escape(refused.name)}(?!\w)", re.IGNORECASE)
    uses = (match.span() for match in word.finditer(place.source.text, start, end))
    return any(whole or begin <= place.start < finish for begin, finish in uses)
