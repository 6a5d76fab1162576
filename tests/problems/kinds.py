"""Kinds of problem made up for these tests, and a short way to report them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from presscloth.problems import Label, Problem, Severity
from presscloth.source import Source, Span

TEXT = """\
---
title: Plain Cloth
---

- base = 7.5 cm (2 in)
- strip = 2 × base
- gap = strip - base
"""

SOURCE = Source("recipes/plain/recipe.md", TEXT)


def at(words: str, source: Source = SOURCE) -> Span:
    """The first place where these words stand."""
    start = source.text.index(words)
    return source.span(start, start + len(words))


class PairOff(Problem):
    """A pair is off.

    Somebody would cut it wrongly.

    Fails: an example in words.

    Passes: another.
    """

    said: str = "the pair is off"

    def message(self) -> str:
        return self.said

    def hint(self) -> str:
        return "write another pair"


@dataclass(frozen=True, kw_only=True)
class EdgeOff(PairOff):
    """An edge is off.

    Fails:

        ## Measures
        - seam = 1 cm (3 in)

    Passes:

        ## Measures
        - seam = 1 cm (3/8 in)
    """


@dataclass(frozen=True, kw_only=True)
class LookAgain(PairOff):
    """Something may not be meant."""

    severity: ClassVar[Severity] = Severity.WARNING


__all__ = ["SOURCE", "TEXT", "EdgeOff", "Label", "LookAgain", "PairOff", "at"]
