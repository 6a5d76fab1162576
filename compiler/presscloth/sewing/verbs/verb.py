"""What a verb is: its name, and for each way of writing it what is done with the things."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from inspect import cleandoc

from presscloth.frozen import dataclass
from presscloth.recipe.patterns import ResultRule, VerbForm
from presscloth.recipe.statement import Counted, Statement
from presscloth.sewing.work import Made, Work

Carry = Callable[[Work], Made]
"""Carries a statement out once; what it demands in vain stops it there, and is reported."""

Implied = Callable[[Statement, Callable[[Counted], int]], Mapping[str, int]]
"""How many things are meant, by their places, where no number stands before a name."""


def one_each(statement: Statement, number: Callable[[Counted], int]) -> Mapping[str, int]:
    """One thing is meant wherever no number stands."""
    return {}


@dataclass(frozen=True, slots=True)
class Verb:
    """A verb. `ways` holds for each pattern what it does; the docstring of that is its reference.

    `changes` names the place of the thing that is changed where no result is named. `at_once` names
    the place of a number that says how many come out of one go. With `in_all`, the numbers before
    the things are for all results together and not for one; with `takes_all`, a name without a number
    means all that are left of it. `implied` tells how many are meant where no
    number stands and it is not one.
    """

    name: str
    ways: Mapping[str, Carry]
    result: ResultRule = ResultRule.NEEDED
    changes: str | None = None
    at_once: str | None = None
    in_all: bool = False
    takes_all: bool = False
    implied: Implied = one_each

    @property
    def patterns(self) -> tuple[str, ...]:
        return tuple(self.ways)

    @property
    def form(self) -> VerbForm:
        return VerbForm(self.name, self.patterns, self.result)

    @property
    def reference(self) -> Mapping[str, str]:
        """For each way of writing it, what it makes and what it demands."""
        return {pattern: cleandoc(carry.__doc__ or "") for pattern, carry in self.ways.items()}
