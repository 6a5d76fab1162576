"""Reckoning with lengths that are known to be lengths."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from presscloth.measure import (
    Fault,
    Quantity,
    add,
    greatest,
    length,
    multiply,
    number,
    pi,
    root,
    smallest,
    subtract,
)

NOTHING = length(0, 0)


def _sure(result: Quantity | Fault) -> Quantity:
    """What lengths give when added or scaled; it can only fail by growing without end."""
    if isinstance(result, Quantity):
        return result
    raise OverflowError(f"a length that is out of all reach: {result}")


def total(lengths: Iterable[Quantity]) -> Quantity:
    """The sum of lengths; of none of them, nothing."""
    each = tuple(lengths)
    if not each:
        return NOTHING
    result = each[0].computed()
    for other in each[1:]:
        result = _sure(add(result, other))
    return result


def less(whole: Quantity, *parts: Quantity) -> Quantity:
    """What is left of a length."""
    for part in parts:
        whole = _sure(subtract(whole, part))
    return whole.computed()


def times(factor: Fraction | int, of: Quantity) -> Quantity:
    return _sure(multiply(number(factor), of))


def half(of: Quantity) -> Quantity:
    return times(Fraction(1, 2), of)


def times_root_two(of: Quantity) -> Quantity:
    """The diagonal of a square."""
    return _sure(multiply(_sure(root(number(2))), of))


def times_pi(of: Quantity) -> Quantity:
    """The way round a circle."""
    return _sure(multiply(pi(), of))


def shared(share: Quantity, of: Quantity) -> Quantity:
    """A share of a length."""
    return _sure(multiply(share, of))


def longest(among: Iterable[Quantity]) -> Quantity:
    return _sure(greatest(tuple(among)))


def shortest(among: Iterable[Quantity]) -> Quantity:
    return _sure(smallest(tuple(among)))
