"""Reckoning with lengths that are known to be lengths."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from presscloth.measure import (
    Fault,
    Quantity,
    add_up,
    greatest,
    length,
    multiply,
    number,
    pi,
    root,
    smallest,
    take_away,
)
from presscloth.measure.remembering import remembered

NOTHING = length(0, 0)


def _sure(result: Quantity | Fault) -> Quantity:
    """What lengths give when added or scaled; it can only fail by growing without end."""
    if isinstance(result, Quantity):
        return result
    raise OverflowError(f"a length that is out of all reach: {result}")


def total(lengths: Iterable[Quantity]) -> Quantity:
    """The sum of lengths; of none of them, nothing."""
    each = tuple(length for length in lengths if length is not NOTHING)
    return _sure(add_up(each)) if each else NOTHING


def less(whole: Quantity, *parts: Quantity) -> Quantity:
    """What is left of a length."""
    some = [part for part in parts if part is not NOTHING]
    return _sure(take_away(whole, some)) if some else whole.computed()


def times(factor: Fraction | int, of: Quantity) -> Quantity:
    return _sure(multiply(_number(factor), of))


_number = remembered(128)(number)


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
    each = tuple(among)
    if all(other is each[0] for other in each):
        return each[0].computed()
    return _sure(greatest(each))


def shortest(among: Iterable[Quantity]) -> Quantity:
    return _sure(smallest(tuple(among)))
