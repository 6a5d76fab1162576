"""What expressions say of things while these are being sewn.

A measure is settled when it is first needed. What it was told of a thing is remembered, and held
against the thing when that is changed under the same name.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from presscloth.frozen import dataclass
from presscloth.measure import Quantity, System, number, same_length
from presscloth.problems import Label, Problem
from presscloth.recipe.expression import Bought, Broken, PartOf
from presscloth.recipe.statement import Statement
from presscloth.recipe.tree import Material
from presscloth.recipe.words import look_up
from presscloth.sewing.measuring import measured
from presscloth.sewing.shape_problems import (
    MeasureChangedLater,
    NoSuchMeasure,
    NotBoughtYet,
    NotYetThere,
    what_it_is,
)
from presscloth.sewing.stock import Stock
from presscloth.sewing.things import Thing
from presscloth.sewing.wording import said
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class _Asked:
    """What a measure's definition asked of a thing, and what it was then."""

    part: PartOf
    name: str
    value: Quantity


class Asking:
    """Answers what expressions ask of the things in a stock."""

    def __init__(
        self,
        stock: Stock,
        materials: Mapping[str, Material],
        systems: tuple[System, ...],
        fetch: Callable[[str], None],
        report: Callable[[Problem], None],
    ) -> None:
        self._stock = stock
        self._materials = materials
        self._systems = systems
        self._fetch = fetch
        self._report = report
        self._asked: list[_Asked] = []
        self.statement: Statement | None = None
        self.certain = True  # until a statement could not be read, which may have made anything

    def answer(self, asked: PartOf | Bought) -> Quantity | Broken:
        match asked:
            case Bought(key=key):
                return self._refuse(NotBoughtYet(span=asked.span, key=key.text))
            case PartOf(of=of):
                name, letter = self._named(of.text)
                self._fetch(name)
                thing = self._stock.thing(name, letter)
                if thing is not None:
                    return self._part(asked, name, thing)
                if self._stock.has(name) or not self.certain:
                    return Broken(asked.span)
                return self._refuse(NotYetThere(span=asked.span, name=name))

    def _refuse(self, problem: Problem) -> Broken:
        self._report(problem)
        return Broken(problem.span)

    def _named(self, name: str) -> tuple[str, str | None]:
        """The name of a thing, and the letter of a material that stands before it (`A pocket`)."""
        key, _, rest = name.partition(" ")
        if rest and key in self._materials and look_up(name, self._stock.names) is None:
            return self._stock.called(rest), key
        return self._stock.called(name), None

    def _part(self, asked: PartOf, name: str, thing: Thing) -> Quantity | Broken:
        if asked.part == "count":
            return number(self._stock.made(name))
        value = measured(thing.shape, asked.part, finished=asked.finished)
        if value is None:
            found = what_it_is(thing.shape)
            return self._refuse(NoSuchMeasure(span=asked.span, name=name, part=asked.part, found=found))
        if self.statement is None or not _inside(asked.span, self.statement.span):
            self._asked.append(_Asked(asked, name, value))
        return value

    def hold(self, name: str, thing: Thing, statement: Statement) -> None:
        """Hold a thing as it becomes against what measures were told of it."""
        for asked in self._asked:
            if asked.name == name:
                self._hold(asked, thing, statement)

    def _hold(self, asked: _Asked, thing: Thing, statement: Statement) -> None:
        part = asked.part
        now = measured(thing.shape, part.part, finished=part.finished)
        if now is not None and all(same_length(now[s], asked.value[s], s) for s in self._systems):
            return
        self._report(
            MeasureChangedLater(
                span=part.span,
                part=f"finished {part.part}" if part.finished else part.part,
                name=asked.name,
                earlier=said(asked.value, self._systems),
                later="something else" if now is None else said(now, self._systems),
                labels=(Label(statement.span, "changed here"),),
            )
        )


def _inside(inner: Span, outer: Span) -> bool:
    return inner.source is outer.source and outer.start <= inner.start and inner.end <= outer.end
