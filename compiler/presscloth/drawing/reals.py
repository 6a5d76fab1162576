"""Numbers of a drawing: floats, and followed ones where a drawing depends on the reader's choice.

`on_page` is the only way from an exact number into a drawing; `float` would forget where it came from.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import cast

from presscloth.measure.followed import MARKED, Followed, node_of
from presscloth.measure.following import Argument, Node, Place, Relation, now


class Real:
    """A followed number of a drawing: it is reckoned with as a float, and keeps a guard when it is asked."""

    __slots__ = ("node", "plain")

    def __init__(self, plain: float, node: int) -> None:
        self.plain = plain
        self.node = node

    def __add__(self, other: float) -> float:
        return _by(plus, self, other)

    def __radd__(self, other: float) -> float:
        return _by(plus, other, self)

    def __sub__(self, other: float) -> float:
        return _by(minus, self, other)

    def __rsub__(self, other: float) -> float:
        return _by(minus, other, self)

    def __mul__(self, other: float) -> float:
        return _by(times, self, other)

    def __rmul__(self, other: float) -> float:
        return _by(times, other, self)

    def __truediv__(self, other: float) -> float:
        return _by(over, self, other)

    def __rtruediv__(self, other: float) -> float:
        return _by(over, other, self)

    def __neg__(self) -> float:
        return _by(minus, 0.0, self)

    def __abs__(self) -> float:
        return _by(minus, 0.0, self) if self < 0 else cast(float, self)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, int | float | Real):
            return False
        return _stands(_by(minus, self, other), Relation.NOTHING, Relation.SOMETHING)

    def __hash__(self) -> int:
        return hash(self.node)

    def __lt__(self, other: float) -> bool:
        return _stands(_by(minus, other, self), Relation.MORE, Relation.NOT_LESS)

    def __gt__(self, other: float) -> bool:
        return _stands(_by(minus, self, other), Relation.MORE, Relation.NOT_LESS)

    def __le__(self, other: float) -> bool:
        return _stands(_by(minus, other, self), Relation.NOT_LESS, Relation.MORE)

    def __ge__(self, other: float) -> bool:
        return _stands(_by(minus, self, other), Relation.NOT_LESS, Relation.MORE)

    def __bool__(self) -> bool:
        return self != 0

    def __float__(self) -> float:
        _stands(_by(minus, self, self.plain), Relation.NOTHING, Relation.SOMETHING)
        return self.plain


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
    return _real(value, Node(function, tuple(_argument(each) for each in arguments)))


def _argument(argument: float | Real) -> Argument:
    return Place(argument.node) if isinstance(argument, Real) else float(argument)


def _real(value: float, node: Node) -> float:
    # Whoever draws reckons with it as with a float.
    return cast(float, Real(value, now().node(node)))


def _stands(difference: float, so: Relation, otherwise: Relation) -> bool:
    assert isinstance(difference, Real)
    if so.holds(difference.plain):
        now().hold(Place(difference.node), so)
        return True
    mirrored = difference if otherwise is Relation.SOMETHING else -difference
    assert isinstance(mirrored, Real)
    now().hold(Place(mirrored.node), otherwise)
    return False


# What is reckoned of the numbers of a drawing.


def real(value: Fraction) -> float:
    return float(value)


def length_of(text: str) -> float:
    return float(len(text))


def plus(one: float, other: float) -> float:
    return one + other


def minus(one: float, other: float) -> float:
    return one - other


def times(one: float, other: float) -> float:
    return one * other


def over(one: float, other: float) -> float:
    return one / other


def least(*values: float) -> float:
    return min(values)


def most(*values: float) -> float:
    return max(values)
