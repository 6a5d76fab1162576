"""Measures that are the reader's to choose: a range that is one, with the stated value inside."""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.edition import Edition
from presscloth.measure import Quantity, System, printed
from presscloth.problems import Problem
from presscloth.proof.prose import ValueAfter
from presscloth.recipe.naming import definitions
from presscloth.recipe.tree import Definition


class ChoiceOutside(Problem):
    """A measure that is the reader's to choose is stated outside its own range, or the range is none.

    Fails:

        ## Measures
        - strap = 90 cm (36 in), yours to choose from 40 cm (16 in) to 80 cm (32 in)

    Passes:

        ## Measures
        - strap = 60 cm (24 in), yours to choose from 40 cm (16 in) to 80 cm (32 in)
    """

    name: str
    stated: str
    least: str
    most: str

    def message(self) -> str:
        between = f"is to be chosen from {self.least} to {self.most}"
        return f"`{self.name}` is stated as {self.stated}, and {between}"

    def hint(self) -> str:
        return "state a value within the range, smaller end first, or widen the range"


def hold(edition: Edition, value: ValueAfter) -> Iterator[Problem]:
    """Hold each choice of this size: least, stated and most in order, in both systems."""
    for definition in definitions((edition.size,), edition.recipe.measures):
        if definition.choice is not None:
            yield from (p.in_size(edition.size.name) for p in _hold(definition, edition, value))


def _hold(definition: Definition, edition: Edition, value: ValueAfter) -> Iterator[Problem]:
    assert definition.choice is not None
    least, most = (value(end, None) for end in definition.choice)
    stated = value(definition.expression, None)
    if not (isinstance(least, Quantity) and isinstance(most, Quantity) and isinstance(stated, Quantity)):
        return
    for system in edition.recipe.front.systems:
        if not least[system] <= stated[system] <= most[system] or least[system] == most[system]:
            yield ChoiceOutside(
                span=definition.expression.span,
                name=definition.name.text,
                stated=_said(stated, system),
                least=_said(least, system),
                most=_said(most, system),
                systems=(system.value,),
            )


def _said(quantity: Quantity, system: System) -> str:
    return printed(quantity, system).text
