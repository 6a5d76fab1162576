"""Numbers of a drawing: floats, and followed ones where a drawing depends on the reader's choice.

`on_page` is the only way from an exact number into a drawing; `float` would forget where it came from.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import ceil, floor
from typing import cast

from presscloth.measure.followed import MARKED, Followed, node_of
from presscloth.measure.following import Node, Place, Relation, Sum, now, stands


class Real:
    """A followed number of a drawing: it is reckoned with as a float, and keeps a guard when it is asked."""

    __slots__ = ("form", "plain")

    def __init__(self, plain: float, form: Sum) -> None:
        self.plain = plain
        self.form = form

    def __add__(self, other: float) -> float:
        return _sum(self, 1.0, other, 1.0)

    def __radd__(self, other: float) -> float:
        return _sum(self, 1.0, other, 1.0)

    def __sub__(self, other: float) -> float:
        return _sum(self, 1.0, other, -1.0)

    def __rsub__(self, other: float) -> float:
        return _sum(self, -1.0, other, 1.0)

    def __mul__(self, other: float) -> float:
        return _by(times, self, other) if isinstance(other, Real) else _scaled(self, other)

    def __rmul__(self, other: float) -> float:
        return _scaled(self, other)

    def __truediv__(self, other: float) -> float:
        return _by(over, self, other) if isinstance(other, Real) else _scaled(self, 1 / other)

    def __rtruediv__(self, other: float) -> float:
        return _by(over, other, self)

    def __neg__(self) -> float:
        return _scaled(self, -1.0)

    def __abs__(self) -> float:
        return -self if self < 0 else cast(float, self)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, int | float | Real):
            return False
        return _stands(_sum(self, 1.0, other, -1.0), Relation.NOTHING, Relation.SOMETHING)

    def __hash__(self) -> int:
        return hash(self.form)

    def __lt__(self, other: float) -> bool:
        return _stands(_sum(self, -1.0, other, 1.0), Relation.MORE, Relation.NOT_LESS)

    def __gt__(self, other: float) -> bool:
        return _stands(_sum(self, 1.0, other, -1.0), Relation.MORE, Relation.NOT_LESS)

    def __le__(self, other: float) -> bool:
        return _stands(_sum(self, -1.0, other, 1.0), Relation.NOT_LESS, Relation.MORE)

    def __ge__(self, other: float) -> bool:
        return _stands(_sum(self, 1.0, other, -1.0), Relation.NOT_LESS, Relation.MORE)

    def __bool__(self) -> bool:
        return self != 0

    # Whoever takes the number out, or reckons in a way that is not followed, has it held to its value.

    def __float__(self) -> float:
        _stands(_sum(self, 1.0, self.plain, -1.0), Relation.NOTHING, Relation.SOMETHING)
        return self.plain

    def __int__(self) -> int:
        return int(float(self))

    def __ceil__(self) -> int:
        return ceil(float(self))

    def __floor__(self) -> int:
        return floor(float(self))

    def __round__(self, digits: int = 0) -> float:
        return round(float(self), digits)

    def __floordiv__(self, other: float) -> float:
        return float(self) // float(other)

    def __mod__(self, other: float) -> float:
        return float(self) % float(other)

    def __pow__(self, other: float) -> float:
        return cast(float, float(self) ** float(other))

    def __format__(self, how: str) -> str:
        return format(float(self), how)


def on_page(value: Fraction) -> float:
    """An exact number as one of a drawing."""
    if not isinstance(value, Followed):
        return float(value)
    return _real(float(value.plain), Node(real, (value.form,)))


def lesser(*values: float) -> float:
    """The least of some numbers, whichever it is for another choice."""
    return _by(least, *values) if any(isinstance(each, Real) for each in values) else min(values)


def greater(*values: float) -> float:
    """The greatest of some numbers, whichever it is for another choice."""
    return _by(most, *values) if any(isinstance(each, Real) for each in values) else max(values)


def letters(words: str) -> float:
    """How many letters a text has on the page."""
    found = MARKED.findall(words)
    count: float = len(MARKED.sub("", words))
    for mark, text in found:
        count += _real(float(len(text)), Node(length_of, (Place(node_of(mark)),)))
    return count


def _by(function: Callable[..., float], *arguments: float | Real) -> float:
    value = function(*(each.plain if isinstance(each, Real) else each for each in arguments))
    return _real(value, Node(function, tuple(_form(each) for each in arguments)))


def _form(argument: float | Real) -> Sum:
    return argument.form if isinstance(argument, Real) else Sum(float(argument))


def _real(value: float, node: Node) -> float:
    # Whoever draws reckons with it as with a float.
    return cast(float, Real(value, Sum(0.0, ((now().node(node), 1.0),))))


def _sum(one: Real, times_one: float, other: float | Real, times_other: float) -> float:
    plain = other.plain if isinstance(other, Real) else other
    form = _form(other)
    terms: dict[int, float] = {}
    for each, factor in ((one.form, times_one), (form, times_other)):
        for node, of in each.terms:
            terms[node] = terms.get(node, 0.0) + factor * of
    constant = times_one * one.form.constant + times_other * form.constant
    made = Sum(constant, tuple(sorted((node, of) for node, of in terms.items() if of)))
    return _number(times_one * one.plain + times_other * plain, made)


def _scaled(one: Real, factor: float) -> float:
    form = one.form
    made = Sum(form.constant * factor, tuple((node, of * factor) for node, of in form.terms if of * factor))
    return _number(one.plain * factor, made)


def _number(plain: float, form: Sum) -> float:
    return cast(float, Real(plain, form)) if form.terms else form.constant


def _stands(difference: float, so: Relation, otherwise: Relation) -> bool:
    if isinstance(difference, Real):
        return stands(difference.plain, difference.form, so, otherwise)
    return so.holds(difference)


# What is reckoned of the numbers of a drawing, besides sums and multiples.


def real(value: Fraction) -> float:
    return float(value)


def length_of(text: str) -> float:
    return float(len(text))


def times(one: float, other: float) -> float:
    return one * other


def over(one: float, other: float) -> float:
    return one / other


def least(*values: float) -> float:
    return min(values)


def most(*values: float) -> float:
    return max(values)
