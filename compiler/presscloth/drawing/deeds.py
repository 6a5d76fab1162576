"""What one paragraph does to one thing: statements with what stood in their places, ready to be drawn."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from presscloth.drawing.dimensions import both
from presscloth.frozen import dataclass
from presscloth.measure import Quantity, System
from presscloth.recipe.statement import Amount, Choice, EdgesOf, Sides, Statement
from presscloth.recipe.words import look_up
from presscloth.sewing.construction import Event, Taken
from presscloth.sewing.measuring import edge_of, measured
from presscloth.sewing.places import all_counted
from presscloth.sewing.things import Circle, Hollow, Shape, Thing
from presscloth.source import Span
from presscloth.tongue import named


@dataclass(frozen=True, slots=True)
class Deed:
    """A statement that was carried out. `amounts` holds what the recipe's expressions come to, by place."""

    event: Event
    amounts: Mapping[Span, Quantity]
    systems: tuple[System, ...]

    @property
    def verb(self) -> str:
        return self.event.statement.verb

    @property
    def statement(self) -> Statement:
        return self.event.statement

    @property
    def made(self) -> str:
        """The name of what is made."""
        return named(self.event.made.name) if self.event.made else ""

    @property
    def result(self) -> Thing | None:
        return self.event.made.thing if self.event.made else None

    def has(self, slot: str) -> bool:
        return slot in self.statement.slots

    def amount(self, slot: str) -> Quantity | None:
        found = self.statement.slots.get(slot)
        return self.amounts.get(found.of.span) if isinstance(found, Amount) else None

    def edges(self, slot: str) -> tuple[str, ...]:
        match self.statement.slots.get(slot):
            case EdgesOf(edges=edges) | Sides(edges=edges):
                return tuple(dict.fromkeys(edges))
            case _:
                return ()

    def chosen(self, slot: str) -> str:
        found = self.statement.slots.get(slot)
        return found.words if isinstance(found, Choice) else ""

    def used(self, slot: str) -> tuple[Taken, ...]:
        """The things that stood in a place; one that closes on itself stands in its first place only."""
        found: list[Taken] = []
        rest = list(self.event.used)
        for name, counted in all_counted(self.statement):
            if rest and look_up(counted.name.text, {rest[0].name: rest[0]}) is not None:
                taken = rest.pop(0)
                if name == slot:
                    found.append(taken)
        return tuple(found)

    def one(self, slot: str) -> Taken | None:
        return next(iter(self.used(slot)), None)

    def each(self, taken: Taken) -> int:
        """How many of a thing one result takes."""
        count = self.event.made.count if self.event.made else 1
        return max(1, taken.count // max(1, count))

    def said(self, quantity: Quantity) -> str:
        return both(quantity, self.systems)


def side(shape: Shape, part: str) -> Quantity | None:
    """A measure as the thing lies there, raw allowances included."""
    return measured(shape, part, finished=False)


def size(shape: Shape) -> tuple[Quantity, Quantity] | None:
    width, height = side(shape, "width"), side(shape, "height")
    return None if width is None or height is None else (width, height)


def allowance_at(shape: Shape, edge: str) -> Quantity | None:
    """What a seam takes at an edge; None where that is not known."""
    found = edge_of(shape, edge)
    rim = shape.rim if isinstance(shape, Circle) else None if found is None else found.rim
    return None if rim is None else rim.allowance


def open_edges(shape: Shape, edges: Sequence[str]) -> tuple[str, ...]:
    """Edges that are there: of a tube or a pouch its openings only."""
    return tuple(e for e in edges if e in shape.ends) if isinstance(shape, Hollow) else tuple(edges)
