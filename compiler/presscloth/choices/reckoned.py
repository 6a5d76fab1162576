"""Reckoning followed nodes for another choice, and how far their values reach over all choices."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import cast

from presscloth.drawing import reals
from presscloth.measure import arithmetic, followed, printing, rounding
from presscloth.measure.following import (
    Argument,
    Chosen,
    Following,
    Form,
    Function,
    Guard,
    Node,
    Place,
    Relation,
    Sum,
    Value,
)

Variables = Mapping[Chosen, Fraction]


class Reckoned:
    """The values of nodes for one choice, each worked out once, when it is asked for."""

    def __init__(self, following: Following, variables: Variables) -> None:
        self._nodes = following.nodes
        self._variables = variables
        self._values: dict[int, Value] = {}

    def value(self, number: int) -> Value:
        found = self._values.get(number)
        if found is None:
            node = self._nodes[number]
            if isinstance(node, Chosen):
                found = self._variables[node]
            else:
                found = node.function(*[self._argument(each) for each in node.arguments])
            self._values[number] = found
        return found

    def form(self, form: Form) -> Fraction:
        total = form.constant
        for node, factor in form.terms:
            value = cast(Fraction, self.value(node))
            total += value if factor == 1 else factor * value
        return total

    def sum(self, of: Sum) -> float:
        total = of.constant
        for node, factor in of.terms:
            total += factor * cast(float, self.value(node))
        return total

    def _argument(self, argument: Argument) -> Value:
        match argument:
            case Sum():
                return self.sum(argument)
            case Form():
                return self.form(argument)
            case Place(node=node):
                return self.value(node)
            case _:
                return argument

    def holds(self, guards: Iterable[Guard]) -> bool:
        """Whether all guards hold. One whose way cannot even be reckoned does not."""
        return all(self._holds(guard) for guard in guards)

    def _holds(self, guard: Guard) -> bool:
        try:
            match guard.difference:
                case Form() as form:
                    return guard.relation.holds(self.form(form))
                case Sum() as of:
                    return guard.relation.holds(self.sum(of))
        except (ZeroDivisionError, ValueError):
            return False


Range = tuple[Fraction, Fraction] | tuple[float, float]

GROWING: frozenset[Function] = frozenset(
    (
        arithmetic.root_of,
        followed.whole_part,
        followed.greatest_value,
        followed.least_value,
        reals.real,
        reals.least,
        reals.most,
    )
)
"""Functions that never give less for more in any of their numbers."""

ROUNDING: frozenset[Function] = frozenset(
    (rounding.half_up, rounding.up, rounding.down, printing.printed_value)
)
"""Functions that never give less for more in their first number, all else being fixed."""

AT_CORNERS: frozenset[Function] = frozenset((reals.times, followed.product))
"""Functions of two numbers that are least and greatest where each is at an end."""

DIVIDING: frozenset[Function] = frozenset((reals.over, followed.quotient))
"""The same as long as the second is never nothing."""


class Reach:
    """Between which values nodes lie over all choices; what cannot be told is None."""

    def __init__(self, following: Following, variables: Mapping[Chosen, tuple[Fraction, Fraction]]) -> None:
        self._nodes = following.nodes
        self._variables = variables
        self._ranges: dict[int, Range | None] = {}

    def always(self, guard: Guard) -> bool:
        """Whether a guard holds whatever is chosen, so that no page need ask."""
        difference = guard.difference
        reach = self._form(difference) if isinstance(difference, Form) else self._sum(difference)
        if reach is None:
            return False
        least, most = reach
        match guard.relation:
            case Relation.MORE:
                return least > 0
            case Relation.NOT_LESS:
                return least >= 0
            case Relation.NOTHING:
                return least == most == 0
            case Relation.SOMETHING:
                return least > 0 or most < 0

    def node(self, number: int) -> Range | None:
        if number not in self._ranges:
            node = self._nodes[number]
            self._ranges[number] = self._variables[node] if isinstance(node, Chosen) else self._of(node)
        return self._ranges[number]

    def _of(self, node: Node) -> Range | None:
        ranges = [self._argument(each) for each in node.arguments]
        known = [each for each in ranges if each is not None]
        if len(known) < len(ranges):
            return None
        try:
            return _corners(node.function, known)
        except (ZeroDivisionError, ValueError):
            return None

    def _argument(self, argument: Argument) -> tuple[Value, Value] | None:
        match argument:
            case Form():
                return self._form(argument)
            case Sum():
                return self._sum(argument)
            case Place(node=node):
                return self.node(node)
            case _:
                return argument, argument

    def _form(self, form: Form) -> tuple[Fraction, Fraction] | None:
        least = most = form.constant
        for node, factor in form.terms:
            reach = self.node(node)
            if reach is None:
                return None
            low, high = (factor * Fraction(end) for end in reach)
            least, most = least + min(low, high), most + max(low, high)
        return least, most

    def _sum(self, of: Sum) -> tuple[float, float] | None:
        least = most = of.constant
        for node, factor in of.terms:
            reach = self.node(node)
            if reach is None:
                return None
            low, high = (factor * float(end) for end in reach)
            least, most = least + min(low, high), most + max(low, high)
        return least, most


def _corners(function: Function, ranges: Sequence[tuple[Value, Value]]) -> Range | None:
    """Between which values a function lies when its arguments lie in ranges."""
    if function is followed.magnitude:
        return _magnitudes(ranges[0])
    fixed = all(low == high for low, high in ranges[1:])
    if function in GROWING or (function in ROUNDING and fixed):
        ends = [function(*(each[end] for each in ranges)) for end in (0, 1)]
    elif function in AT_CORNERS or (function in DIVIDING and _of_one_sign(ranges[1])):
        ends = [function(one, other) for one in ranges[0] for other in ranges[1]]
    else:
        return None
    numbers = [end for end in ends if not isinstance(end, str)]
    return min(numbers), max(numbers)  # type: ignore[return-value]


def _magnitudes(ends: tuple[Value, Value]) -> Range:
    low, high = ends
    assert isinstance(low, Fraction) and isinstance(high, Fraction)
    greatest = max(abs(low), abs(high))
    return (Fraction(0) if low < 0 < high else min(abs(low), abs(high))), greatest


def _of_one_sign(ends: tuple[Value, Value]) -> bool:
    low, high = ends
    assert not isinstance(low, str) and not isinstance(high, str)
    return low > 0 or high < 0
