"""What is followed: how numbers were reckoned, so that the same can be reckoned for another choice.

A recipe is worked out with a measure of the reader's choice as a followed number (`followed.py`).
Whatever is made of it is followed too: sums and multiples as one `Form`, everything else as a `Node`
that names the function and what went into it. Whenever the way of the reckoning hangs on such a
number, a `Guard` is kept: as long as all guards hold, another choice is reckoned the very same way.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import field
from enum import Enum
from fractions import Fraction

from presscloth.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Form:
    """A constant and so many times each of some nodes, by their numbers in order."""

    constant: Fraction
    terms: tuple[tuple[int, Fraction], ...] = ()

    def negated(self) -> Form:
        return Form(-self.constant, tuple((node, -factor) for node, factor in self.terms))


@dataclass(frozen=True, slots=True)
class Sum:
    """The same in a drawing, where numbers are floats."""

    constant: float
    terms: tuple[tuple[int, float], ...] = ()

    def negated(self) -> Sum:
        return Sum(-self.constant, tuple((node, -factor) for node, factor in self.terms))


@dataclass(frozen=True, slots=True)
class Place:
    """A text: the number of the node that gives it."""

    node: int


@dataclass(frozen=True, slots=True)
class Chosen:
    """A number of the reader's choice: which choice, and in which system."""

    choice: int
    system: str


Value = Fraction | float | str
Argument = Form | Sum | Place | str
Function = Callable[..., Value]


@dataclass(frozen=True, slots=True)
class Node:
    """What a function gives for its arguments; the function's name tells it wherever it is done again."""

    function: Function
    arguments: tuple[Argument, ...]


class Relation(Enum):
    """How something stands to nothing."""

    MORE = ">"
    NOT_LESS = ">="
    NOTHING = "="
    SOMETHING = "!"

    def holds(self, difference: Fraction | float) -> bool:
        match self:
            case Relation.MORE:
                return difference > 0
            case Relation.NOT_LESS:
                return difference >= 0
            case Relation.NOTHING:
                return difference == 0
            case Relation.SOMETHING:
                return difference != 0


@dataclass(frozen=True, slots=True)
class Guard:
    """What must hold for the reckoning to go the same way: a difference, and how it stands to nothing."""

    difference: Form | Sum
    relation: Relation


@dataclass
class Following:
    """All that is followed: nodes in the order of their making, and the guards of the way taken.

    `compared` are the lengths that were held against each other, as they were asked.
    """

    nodes: list[Node | Chosen] = field(default_factory=list)
    guards: dict[Guard, None] = field(default_factory=dict)
    compared: list[tuple[Fraction, Fraction]] = field(default_factory=list)
    _known: dict[Node | Chosen, int] = field(default_factory=dict)

    def node(self, node: Node | Chosen) -> int:
        """The number of a node; one that is there already is not made twice."""
        if node not in self._known:
            self._known[node] = len(self.nodes)
            self.nodes.append(node)
        return self._known[node]

    def hold(self, difference: Form | Sum, relation: Relation) -> None:
        self.guards[Guard(difference, relation)] = None

    @contextmanager
    def aside(self) -> Iterator[dict[Guard, None]]:
        """For a while, keep guards by themselves: those of one drawing."""
        usual, self.guards = self.guards, {}
        try:
            yield self.guards
        finally:
            self.guards = usual


_NOW: ContextVar[Following | None] = ContextVar("following", default=None)


@contextmanager
def following(now: Following) -> Iterator[None]:
    """While numbers are followed."""
    before = _NOW.set(now)
    try:
        yield
    finally:
        _NOW.reset(before)


def is_following() -> bool:
    return _NOW.get() is not None


def now() -> Following:
    """What is being followed; only a followed number asks."""
    found = _NOW.get()
    assert found is not None, "a followed number has outlived what follows it"
    return found


def stands(plain: Fraction | float, difference: Form | Sum, so: Relation, otherwise: Relation) -> bool:
    """Whether a difference, `plain` for now, stands to nothing one way or the other; keeps the guard."""
    if so.holds(plain):
        now().hold(difference, so)
        return True
    now().hold(difference if otherwise is Relation.SOMETHING else difference.negated(), otherwise)
    return False
