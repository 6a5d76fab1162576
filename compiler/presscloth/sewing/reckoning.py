"""Where the amounts in statements come from: worked out exactly, or read off the printed page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Protocol

from presscloth.edition import CutPiece, Evaluator
from presscloth.measure import Kind, Quantity, System, printed
from presscloth.recipe.expression import Broken, Expression
from presscloth.source import Span


class Reckoning(Protocol):
    """What sewing asks of whoever works out amounts; `Broken` has been reported."""

    def amount(self, expression: Expression, kind: Kind, what: str) -> Quantity | Broken: ...

    def count(self, expression: Expression, what: str) -> int | Broken: ...


class Exactly:
    """Works amounts out, and remembers each by its place."""

    def __init__(self, evaluator: Evaluator) -> None:
        self._evaluator = evaluator
        self.amounts: dict[Span, Quantity] = {}
        self.counts: dict[Span, int] = {}

    def amount(self, expression: Expression, kind: Kind, what: str) -> Quantity | Broken:
        value = self._evaluator.of_kind(expression, kind, what)
        if isinstance(value, Quantity):
            self.amounts[expression.span] = value
        return value

    def count(self, expression: Expression, what: str) -> int | Broken:
        value = self._evaluator.count(expression, what)
        if isinstance(value, int):
            self.counts[expression.span] = value
        return value


class OnPaper:
    """Gives the amounts as they are printed in one system; numbers of things are printed as they are."""

    def __init__(self, amounts: Mapping[Span, Quantity], counts: Mapping[Span, int], system: System) -> None:
        self._amounts = amounts
        self._counts = counts
        self._system = system

    def amount(self, expression: Expression, kind: Kind, what: str) -> Quantity | Broken:
        value = self._amounts.get(expression.span)
        return Broken(expression.span) if value is None else as_printed(value, self._system)

    def count(self, expression: Expression, what: str) -> int | Broken:
        return self._counts.get(expression.span, Broken(expression.span))


def as_printed(q: Quantity, system: System, *, cut: bool = False) -> Quantity:
    """A length with the value that stands on the page in a system; what is no length stays."""
    if q.kind is not Kind.LENGTH:
        return q
    value: Fraction = printed(q, system, cut=cut).value
    return replace(q, metric=value) if system is System.METRIC else replace(q, imperial=value)


def piece_on_paper(piece: CutPiece, system: System) -> CutPiece:
    """A piece as the cutting list has it."""
    return replace(
        piece,
        width=None if piece.width is None else as_printed(piece.width, system, cut=True),
        height=None if piece.height is None else as_printed(piece.height, system, cut=True),
        allowance=None if piece.allowance is None else as_printed(piece.allowance, system),
    )
