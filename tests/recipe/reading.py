"""Reading single passages in tests."""

from __future__ import annotations

from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Broken, Expression
from presscloth.recipe.reckoning import expression
from presscloth.source import Passage, Source


def passage(text: str) -> Passage:
    return Passage.of(Source("recipe.md", text).span(0, len(text)))


def read(text: str) -> Expression:
    """An expression that can be read."""
    problems = Problems()
    found = expression(passage(text), problems)
    assert problems.found() == ()
    assert not isinstance(found, Broken)
    return found


def refused(text: str) -> Problem:
    """The one problem of an expression that cannot be read."""
    problems = Problems()
    assert isinstance(expression(passage(text), problems), Broken)
    (problem,) = problems.found()
    return problem
