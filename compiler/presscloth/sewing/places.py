"""The places of a statement where things stand, and the names that a recipe gives to things."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from presscloth.edition import Edition, statements
from presscloth.frozen import dataclass
from presscloth.problems import Problem
from presscloth.recipe.matching import counted_in
from presscloth.recipe.statement import Counted, EdgesOf, Statement
from presscloth.recipe.words import look_up
from presscloth.sewing.shape_problems import NeighbouringEdges
from presscloth.sewing.stock import Drawn
from presscloth.sewing.stock_problems import TooFewCut, TooFewMade
from presscloth.sewing.things import OPPOSITE
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Place:
    """A place where a thing stands, by its name, and how many of it are used for one result and in all."""

    slot: str
    counted: Counted
    name: str
    per_result: int
    in_all: int

    @property
    def span(self) -> Span:
        return self.counted.span


def all_counted(statement: Statement) -> Iterator[tuple[str, Counted]]:
    for name, slot in statement.slots.items():
        for counted in counted_in(slot):
            yield name, counted


def changed(statement: Statement, slot: str) -> Counted:
    """The thing that a statement changes where it names no result."""
    return next(counted_in(statement.slots[slot]))


def names_of_things(edition: Edition) -> Iterator[str]:
    """Every name of a piece, a material's key and what is sewn, as the author spells it first."""
    for piece in edition.recipe.pieces:
        yield piece.name.text
    for material in edition.recipe.materials:
        yield material.key
    for step in edition.recipe.steps:
        for part in step.parts:
            for statement in statements(part.content):
                if statement.result is not None:
                    yield statement.result.name.text


def closes(
    statement: Statement, called: Callable[[str], str], left: Callable[[str, str | None], int]
) -> bool | Problem:
    """Whether a statement sews opposite edges of one thing, which makes a tube.

    The same edge twice takes two things of the name, and so do neighbouring edges where there are two;
    of one thing, neighbouring edges are a problem.
    """
    edges = [slot for slot in statement.slots.values() if isinstance(slot, EdgesOf)]
    if len(edges) != 2:
        return False
    one, other = edges
    name = called(one.of.name.text)
    if name != called(other.of.name.text) or one.of.key != other.of.key or one.edges == other.edges:
        return False
    if OPPOSITE.get(one.edges[0]) == other.edges[0]:
        return True
    if left(name, one.of.key) > 1:
        return False
    return NeighbouringEdges(span=statement.span, name=name, edges=(one.edges[0], other.edges[0]))


def tube_of_one(name: str, edition: Edition) -> tuple[Span | None, str]:
    """The first statement that sews opposite edges of one thing of this name, and the row of several.

    `right of panel to left of panel` makes a tube of one panel, where a row of two may be meant.
    """
    for step in edition.recipe.steps:
        for part in step.parts:
            for statement in statements(part.content):
                match tuple(slot for slot in statement.slots.values() if isinstance(slot, EdgesOf)):
                    case (one, other) if (
                        OPPOSITE.get(one.edges[0]) == other.edges[0]
                        and look_up(one.of.name.text, {name: name}) is not None
                        and look_up(other.of.name.text, {name: name}) is not None
                    ):
                        beside = one.edges[0] in ("left", "right")
                        return statement.span, "side by side" if beside else "top to bottom"
    return None, ""


def too_few(place: Place, wanted: int, drawn: Drawn) -> Problem:
    """What is wrong when a statement wants more of a thing than there is: of a piece, or of what was made."""
    name, span = place.name, place.span
    if drawn.piece:
        return TooFewCut(span=span, name=name, wanted=wanted, cut=drawn.made, left=drawn.left)
    return TooFewMade(span=span, name=name, wanted=wanted, made=drawn.made, left=drawn.left)
