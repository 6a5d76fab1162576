"""Reckoning with quantities: every sign is worked out twice, once in each system.

Whatever goes wrong is a value that says so. Results are computed, no longer stated; they are about,
physical or rooted where anything in them is, and know the places of all stated values behind them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from math import isqrt

from presscloth.frozen import dataclass
from presscloth.measure.followed import Followed, by, least_of, most_of
from presscloth.measure.quantity import Kind, Quantity, System, number
from presscloth.measure.rounding import Direction, down, half_up, settled, slack, up
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Unlike:
    """Two things that cannot be added, compared or stepped by each other."""

    left: Kind
    right: Kind


@dataclass(frozen=True, slots=True)
class NoSuchProduct:
    """A product that measures nothing: an area times a length, a weight times a length."""

    left: Kind
    right: Kind


@dataclass(frozen=True, slots=True)
class NoSuchQuotient:
    """A quotient that measures nothing: a length over an area, a number over a length."""

    left: Kind
    right: Kind


@dataclass(frozen=True, slots=True)
class DividedByNothing:
    systems: tuple[System, ...]


@dataclass(frozen=True, slots=True)
class RootOfLess:
    """A root of something below nothing."""

    systems: tuple[System, ...]


@dataclass(frozen=True, slots=True)
class RootOfWrongKind:
    """A root of a length or a weight."""

    kind: Kind


@dataclass(frozen=True, slots=True)
class StepOfNothing:
    """A step to round to that is nothing or less in one of the systems."""


@dataclass(frozen=True, slots=True)
class StepWanted:
    """Rounding without a step, which only a plain number can do."""

    kind: Kind


@dataclass(frozen=True, slots=True)
class BeyondReach:
    """A number of more than a thousand digits, as comes of multiplying without end."""


Fault = (
    Unlike
    | NoSuchProduct
    | NoSuchQuotient
    | DividedByNothing
    | RootOfLess
    | RootOfWrongKind
    | StepOfNothing
    | StepWanted
    | BeyondReach
)

DIGITS = 40
_PI = Fraction("3.141592653589793238462643383279502884197")
_LONGEST = 3400  # bits, somewhat more than a thousand digits

# What the product, the quotient and the root of kinds are; what is not here is nothing.
_PRODUCTS: Mapping[tuple[Kind, Kind], Kind] = {
    **{(Kind.NUMBER, kind): kind for kind in Kind},
    **{(kind, Kind.NUMBER): kind for kind in Kind},
    (Kind.LENGTH, Kind.LENGTH): Kind.AREA,
}
_QUOTIENTS: Mapping[tuple[Kind, Kind], Kind] = {
    **{(kind, Kind.NUMBER): kind for kind in Kind},
    **{(kind, kind): Kind.NUMBER for kind in Kind},
    (Kind.AREA, Kind.LENGTH): Kind.LENGTH,
}
_ROOTS: Mapping[Kind, Kind] = {Kind.NUMBER: Kind.NUMBER, Kind.AREA: Kind.LENGTH}


def add(left: Quantity, right: Quantity) -> Quantity | Fault:
    if left.kind is not right.kind:
        return Unlike(left.kind, right.kind)
    return _result(left.kind, left.metric + right.metric, left.imperial + right.imperial, (left, right))


def add_up(among: Sequence[Quantity]) -> Quantity | Fault:
    """The sum of one or more."""
    first = among[0]
    for other in among[1:]:
        if other.kind is not first.kind:
            return Unlike(first.kind, other.kind)
    metric, imperial = first.metric, first.imperial
    for other in among[1:]:
        metric += other.metric
        imperial += other.imperial
    return _result(first.kind, metric, imperial, tuple(among))


def subtract(left: Quantity, right: Quantity) -> Quantity | Fault:
    return take_away(left, (right,))


def take_away(whole: Quantity, parts: Sequence[Quantity]) -> Quantity | Fault:
    """What several parts leave of a whole."""
    metric, imperial = whole.metric, whole.imperial
    for part in parts:
        if part.kind is not whole.kind:
            return Unlike(whole.kind, part.kind)
        metric -= part.metric
        imperial -= part.imperial
    return _result(whole.kind, metric, imperial, (whole, *parts))


def multiply(left: Quantity, right: Quantity) -> Quantity | Fault:
    """A number times anything, or a length times a length, which is an area."""
    kind = _PRODUCTS.get((left.kind, right.kind))
    if kind is None:
        return NoSuchProduct(left.kind, right.kind)
    return _result(kind, left.metric * right.metric, left.imperial * right.imperial, (left, right))


def divide(left: Quantity, right: Quantity) -> Quantity | Fault:
    """Anything over a number, an area over a length, or two of a kind, which is a number."""
    kind = _QUOTIENTS.get((left.kind, right.kind))
    if kind is None:
        return NoSuchQuotient(left.kind, right.kind)
    nothing = _where(right, lambda value: value == 0)
    if nothing:
        return DividedByNothing(nothing)
    return _result(kind, left.metric / right.metric, left.imperial / right.imperial, (left, right))


def negate(q: Quantity) -> Quantity:
    return replace(q, metric=-q.metric, imperial=-q.imperial, stated=None)


def smallest(among: Sequence[Quantity]) -> Quantity | Fault:
    """The smallest of one or more, in each system by itself."""
    return _extreme(least_of, among)


def greatest(among: Sequence[Quantity]) -> Quantity | Fault:
    """The greatest of one or more, in each system by itself."""
    return _extreme(most_of, among)


def _extreme(choose: Callable[[list[Fraction]], Fraction], among: Sequence[Quantity]) -> Quantity | Fault:
    first = among[0]
    for other in among[1:]:
        if other.kind is not first.kind:
            return Unlike(first.kind, other.kind)
    metric = choose([q.metric for q in among])
    imperial = choose([q.imperial for q in among])
    return _result(first.kind, metric, imperial, tuple(among))


def root(q: Quantity) -> Quantity | Fault:
    """The square root: of a number a number, of an area a length."""
    kind = _ROOTS.get(q.kind)
    if kind is None:
        return RootOfWrongKind(q.kind)
    less = _where(q, lambda value: value < 0)
    if less:
        return RootOfLess(less)
    metric, metric_is_exact = square_root(q.metric)
    imperial, imperial_is_exact = square_root(q.imperial)
    exact = metric_is_exact and imperial_is_exact
    return _result(kind, metric, imperial, (q,), rooted=not exact)


def square_root(value: Fraction) -> tuple[Fraction, bool]:
    """The root of a value that is not negative, and whether it is exact; else to 40 digits, half-up."""
    if value.__class__ is Followed:
        return by(root_of, value), bool(by(root_is_exact, value))
    above, below = isqrt(value.numerator), isqrt(value.denominator)
    if above**2 == value.numerator and below**2 == value.denominator:
        return Fraction(above, below), True
    places = DIGITS
    while _shifted_root(value, places) >= 10**DIGITS:
        places -= 1
    while _shifted_root(value, places) < 10 ** (DIGITS - 1):
        places += 1
    return _shifted_root(value, places) * Fraction(10) ** -places, False


def root_of(value: Fraction) -> Fraction:
    """The root alone."""
    return square_root(value)[0]


def root_is_exact(value: Fraction) -> Fraction:
    """1 where the root is exact, else nothing."""
    return Fraction(square_root(value)[1])


def _shifted_root(value: Fraction, places: int) -> int:
    """The root times ten to the `places`, to the nearest whole number."""
    # Twice the root is taken whole first, which puts the rounding into whole numbers.
    doubled = isqrt(int(4 * value * Fraction(100) ** places))
    return (doubled + 1) // 2


def pi() -> Quantity:
    """Pi to 40 digits."""
    return replace(number(_PI), rooted=True)


def rounded(direction: Direction, q: Quantity, step: Quantity | None = None) -> Quantity | Fault:
    """Round to multiples of a step, a plain number without one to whole ones.

    What lies within 1/1000 mm of a multiple lies on it. A count is one number for both systems:
    `round up` of a plain number gives the greater of the two results to both, `round down` the
    smaller, so that it suffices in both.
    """
    if step is None:
        if q.kind is not Kind.NUMBER:
            return StepWanted(q.kind)
        step = number(1)
    if step.kind is not q.kind:
        return Unlike(q.kind, step.kind)
    if step.metric <= 0 or step.imperial <= 0:
        return StepOfNothing()
    metric = _to_step(direction, q, step, System.METRIC)
    imperial = _to_step(direction, q, step, System.IMPERIAL)
    if q.kind is Kind.NUMBER and direction is Direction.UP:
        metric = imperial = max(metric, imperial)
    if q.kind is Kind.NUMBER and direction is Direction.DOWN:
        metric = imperial = min(metric, imperial)
    result = _result(q.kind, metric, imperial, (q, step))
    # A multiple of a rational step is exact, whatever it was rounded from.
    return replace(result, rooted=step.rooted) if isinstance(result, Quantity) else result


def _to_step(direction: Direction, q: Quantity, step: Quantity, system: System) -> Fraction:
    value, size = q[system], step[system]
    near = slack(value, q.kind, system, rooted=q.rooted or step.rooted)
    match direction:
        case Direction.UP:
            return up(value, size, near)
        case Direction.DOWN:
            return down(value, size, near)
        case Direction.NEAREST:
            # A root that ought to lie midway is not to fall short of it by its last digit.
            return half_up(settled(value, size / 2, near) if q.rooted else value, size)


def _where(q: Quantity, condition: Callable[[Fraction], bool]) -> tuple[System, ...]:
    return tuple(system for system in System if condition(q[system]))


def _result(
    kind: Kind, metric: Fraction, imperial: Fraction, parts: tuple[Quantity, ...], *, rooted: bool = False
) -> Quantity | BeyondReach:
    """A computed quantity with the flags and the origins of its parts."""
    if _grows_without_end(metric) or _grows_without_end(imperial):
        return BeyondReach()
    about = physical = False
    for part in parts:
        about |= part.about
        physical |= part.physical
        rooted |= part.rooted
    return Quantity(kind, metric, imperial, about, physical, rooted, None, _origins(parts))


def _grows_without_end(value: Fraction) -> bool:
    if value.__class__ is Followed:
        return False
    above, below = value.as_integer_ratio()
    return above.bit_length() > _LONGEST or below.bit_length() > _LONGEST


def _origins(parts: tuple[Quantity, ...]) -> tuple[Span, ...]:
    """All places, in order, each once."""
    found: tuple[Span, ...] = ()
    for part in parts:
        origins = part.origins
        if not found:
            found = origins
        elif origins and origins is not found and origins != found:
            return tuple(dict.fromkeys(span for part in parts for span in part.origins))
    return found
