"""Where the amounts in statements come from: worked out exactly, or read off the printed page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Protocol

from presscloth.edition import CutPiece, Evaluator
from presscloth.measure import Kind, Quantity, System, printed
from presscloth.measure.followed import Followed
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


class Page:
    """What stands on the page in one system; each quantity is printed once and remembered.

    A quantity that stands there exactly is given back itself.
    """

    def __init__(self, system: System) -> None:
        self.system = system
        self._known: dict[tuple[Quantity, bool], Quantity | None] = {}

    def amount(self, q: Quantity) -> Quantity:
        """A length with the value that stands on the page; what is no length stays."""
        return self._on_page(q, cut=False)

    def cut_size(self, q: Quantity) -> Quantity:
        """The same of a cut size, which may be rounded up."""
        return self._on_page(q, cut=True)

    def _on_page(self, q: Quantity, *, cut: bool) -> Quantity:
        if (q, cut) not in self._known:
            self._known[q, cut] = self._rounded(q, cut=cut)
        return self._known[q, cut] or q

    def _rounded(self, q: Quantity, *, cut: bool) -> Quantity | None:
        """A quantity as it is printed; None where it is printed as it is."""
        if q.kind is not Kind.LENGTH:
            return None
        value: Fraction = printed(q, self.system, cut=cut).value
        # What is followed may be printed otherwise for another choice.
        if value.__class__ is not Followed and value == q[self.system]:
            return None
        return replace(q, metric=value) if self.system is System.METRIC else replace(q, imperial=value)

    def piece(self, piece: CutPiece) -> CutPiece:
        """A piece as the cutting list has it; itself where it stands there exactly."""
        width = None if piece.width is None else self.cut_size(piece.width)
        height = None if piece.height is None else self.cut_size(piece.height)
        allowance = None if piece.allowance is None else self.amount(piece.allowance)
        if width is piece.width and height is piece.height and allowance is piece.allowance:
            return piece
        return replace(piece, width=width, height=height, allowance=allowance)


class OnPaper:
    """Gives the amounts as they stand on a page; numbers of things are printed as they are."""

    def __init__(self, amounts: Mapping[Span, Quantity], counts: Mapping[Span, int], page: Page) -> None:
        self._amounts = amounts
        self._counts = counts
        self._page = page

    def amount(self, expression: Expression, kind: Kind, what: str) -> Quantity | Broken:
        value = self._amounts.get(expression.span)
        return Broken(expression.span) if value is None else self._page.amount(value)

    def count(self, expression: Expression, what: str) -> int | Broken:
        return self._counts.get(expression.span, Broken(expression.span))
