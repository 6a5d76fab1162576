"""Rounding to a grid, and when two lengths count as one."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from fractions import Fraction
from math import ceil, floor
from types import MappingProxyType

from presscloth.measure.followed import Followed, by, order
from presscloth.measure.following import now
from presscloth.measure.quantity import Kind, System
from presscloth.measure.units import convert


class Direction(Enum):
    """Which way a value is rounded; the value is how an author says it."""

    UP = "round up"
    DOWN = "round down"
    NEAREST = "round"


# Two lengths that differ by less than this are the same length.
SAME: Mapping[System, Fraction] = MappingProxyType(
    {
        System.METRIC: Fraction(1, 1000),
        System.IMPERIAL: convert(Fraction(1, 1000), Kind.LENGTH, System.IMPERIAL),
    }
)

# Roots and pi are carried to 40 digits, so that a few sums and products leave more than 30 right.
_NOISE = Fraction(1, 10**30)


def half_up(value: Fraction, step: Fraction) -> Fraction:
    """The nearest multiple of the step; one midway goes away from nothing.

    A negative value is rounded as its positive counterpart, so that a difference reads the same
    whichever way round it is taken.
    """
    if value.__class__ is Followed or step.__class__ is Followed:
        return by(half_up, value, step)
    # How many steps, in whole numbers: fractions would take four times as long.
    unit = value.denominator * step.numerator
    steps = (2 * abs(value.numerator) * step.denominator + unit) // (2 * unit)
    return Fraction((-steps if value < 0 else steps) * step.numerator, step.denominator)


def slack(value: Fraction, kind: Kind, system: System, *, rooted: bool) -> Fraction:
    """By how much a value may miss a grid and still count as lying on it.

    A length by 1/1000 mm. Anything else by the noise in its last digits, and only where a root or
    pi entered.
    """
    if kind is Kind.LENGTH:
        return SAME[system]
    return abs(value) * _NOISE if rooted else Fraction(0)


def up(value: Fraction, step: Fraction, slack: Fraction = Fraction(0)) -> Fraction:
    """The least multiple of the step that is not smaller, unless one lies within the slack."""
    if value.__class__ is Followed:
        return by(up, value, step, slack)
    return _on_the_grid(value, step, slack, ceil(value / step) * step)


def down(value: Fraction, step: Fraction, slack: Fraction = Fraction(0)) -> Fraction:
    """The greatest multiple of the step that is not larger, unless one lies within the slack."""
    if value.__class__ is Followed:
        return by(down, value, step, slack)
    return _on_the_grid(value, step, slack, floor(value / step) * step)


def _on_the_grid(value: Fraction, step: Fraction, slack: Fraction, otherwise: Fraction) -> Fraction:
    nearest = half_up(value, step)
    return nearest if abs(value - nearest) < slack else otherwise


def settled(value: Fraction, step: Fraction, slack: Fraction) -> Fraction:
    """The value itself, or the multiple of the step that lies within the slack of it."""
    if value.__class__ is Followed:
        return by(settled, value, step, slack)
    return _on_the_grid(value, step, slack, value)


def compare(a: Fraction, b: Fraction, system: System) -> int:
    """-1, 0 or 1 as length `a` is shorter than, the same as or longer than `b` (mm or in)."""
    if a.__class__ is Followed or b.__class__ is Followed:
        now().compared.append((a, b))
        return order(a - b, SAME[system])
    # By whole numbers: whatever is sewn is compared many times, and fractions would take longer.
    apart = a.numerator * b.denominator - b.numerator * a.denominator
    same = SAME[system]
    if abs(apart) * same.denominator < same.numerator * a.denominator * b.denominator:
        return 0
    return -1 if apart < 0 else 1


def same_length(a: Fraction, b: Fraction, system: System) -> bool:
    """Whether two lengths (both in mm, or both in in) differ by less than 1/1000 mm."""
    return compare(a, b, system) == 0


def same_number(a: Fraction, b: Fraction, *, rooted: bool) -> bool:
    """Whether two plain numbers are equal, but for the noise that a root leaves."""
    if rooted:
        return abs(a - b) <= max(abs(a), abs(b)) * _NOISE
    return a == b
