"""Names that were refused: whatever cannot be read where one is used follows from that.

`half gap` cannot be a name, since `half` is a word of the sewing statements; where it is used, an
expression or a statement stops being readable for the same reason, and the author is told once.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from presscloth.problems import Problem
from presscloth.recipe.definitions import NameNotAllowed
from presscloth.recipe.reading_problems import StatementNotRead


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
