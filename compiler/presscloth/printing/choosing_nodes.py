"""Followed nodes as data for a page: only those that it needs, in an order in which they can be reckoned."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from presscloth.measure.followed import FIRST_MARK, MARKED, node_of
from presscloth.measure.following import Argument, Chosen, Following, Form, Guard, Place, Sum

Json = str | int | float | bool | None | Sequence["Json"] | Mapping[str, "Json"]

ALONE = re.compile("[\U00100000-\U0010fffe]")
"""A mark without its words."""

SAFE = 2**53
"""Whole numbers below this are exact in a script too."""


def number(value: Fraction) -> int | str:
    """An exact number: `190`, `"15/2"`."""
    return int(value) if value.denominator == 1 and abs(value) < SAFE else str(value)


def short(value: float) -> int | float:
    """A number of a drawing to nine digits, which is finer than any screen."""
    rounded = float(f"{value:.9g}")
    return int(rounded) if rounded.is_integer() else rounded


class Nodes:
    """Numbers nodes anew, those that go into a node before it."""

    def __init__(self, following: Following) -> None:
        self._following = following
        self._places: dict[int, int] = {}
        self._written: list[Json] = []
        self._sums: dict[str, int] = {}
        self._drawn: dict[str, int] = {}
        self.drawings: list[Json] = []

    def written(self) -> Json:
        """All nodes that were asked for: a function's name and its arguments, in order."""
        return self._written

    def node(self, node: int) -> int:
        """The new number of a node."""
        if node not in self._places:
            of = self._following.nodes[node]
            if isinstance(of, Chosen):
                written: list[Json] = ["chosen", of.choice, of.system]
            else:
                written = [of.function.__name__, *(self._argument(each) for each in of.arguments)]
            self._places[node] = len(self._written)
            self._written.append(written)
        return self._places[node]

    def _argument(self, argument: Argument) -> Json:
        match argument:
            case Form():
                return self.form(argument)
            case Sum():
                return self.sum(argument)
            case Place(node=node):
                return f"#{self.node(node)}"
            case str():
                return f"={argument}"

    def sum(self, of: Sum) -> Json:
        """The same in a drawing: a float, or after a sign a constant and each node with its factor."""
        terms = [part for node, factor in of.terms for part in (self.node(node), short(factor))]
        return ["+", short(of.constant), *terms] if terms else short(of.constant)

    def place(self, of: Sum) -> int:
        """The number of a node that gives a sum of a drawing."""
        written = self.sum(of)
        assert isinstance(written, list)
        key = json.dumps(written)
        if key not in self._sums:
            self._sums[key] = len(self._written)
            self._written.append(written)
        return self._sums[key]

    def form(self, form: Form) -> Json:
        """A constant, and after it each node with its factor."""
        terms = [part for node, factor in form.terms for part in (self.node(node), number(factor))]
        return [number(form.constant), *terms]

    def marks(self, text: str) -> str:
        """A text in which marks stand alone already."""
        return ALONE.sub(lambda found: chr(FIRST_MARK + self.node(node_of(found[0]))), text)

    def once(self, drawing: Json) -> int:
        """The number of a drawing; ways that draw alike share it."""
        key = json.dumps(drawing)
        if key not in self._drawn:
            self._drawn[key] = len(self.drawings)
            self.drawings.append(drawing)
        return self._drawn[key]

    def guards(self, guards: Iterable[Guard]) -> Json:
        return [[guard.relation.value, self._argument(guard.difference)] for guard in guards]

    def text(self, text: str) -> str:
        """A text in which the mark of a node stands for its words."""
        return MARKED.sub(lambda found: chr(FIRST_MARK + self.node(node_of(found[1]))), text)
