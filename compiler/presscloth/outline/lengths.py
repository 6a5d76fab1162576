"""How long stretches are: straight ones exactly, arcs to 40 digits, curves to within 1e-12."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal, localcontext
from fractions import Fraction
from itertools import pairwise

from presscloth.measure.remembering import remembered
from presscloth.outline.stretches import Arc, Cubic, Point, Straight, Stretch, distance

WITHIN = Decimal("1e-13")
"""A tenth of what is promised for a curve, in mm or in; the promise is 1e-12."""

_DIGITS = 50
_DEEPEST = 12


def length(stretch: Stretch) -> Fraction:
    """The length of a stretch, in the unit of its points."""
    match stretch:
        case Straight(start=start, end=end):
            return distance(start, end)
        case Arc():
            return _arc(stretch)
        case Cubic():
            return _cubic(stretch)


def _arc(arc: Arc) -> Fraction:
    """The radius times the angle; over a chord c an arc that rises by h has 4 atan(2 h / c) (geometry)."""
    chord = distance(arc.start, arc.end)
    middle = ((arc.start[0] + arc.end[0]) / 2, (arc.start[1] + arc.end[1]) / 2)
    rise = arc.radius - distance(middle, arc.centre)
    return 4 * arc.radius * arc_tangent(2 * rise / chord)


@remembered(4096)
def arc_tangent(value: Fraction) -> Fraction:
    """The arc tangent to 40 digits, for values from 0 to 1.

    Halving the angle three times makes the series short: atan x = 2 atan(x / (1 + √(1 + x²))).
    """
    with localcontext(prec=_DIGITS):
        x = _decimal(value)
        for _ in range(3):
            x = x / (1 + (1 + x * x).sqrt())
        square, power, total, odd = x * x, x, x, 1
        while abs(power) > Decimal(10) ** -(_DIGITS - 2):
            power *= -square
            odd += 2
            total += power / odd
        return Fraction(round(8 * total, 42))


def _cubic(cubic: Cubic) -> Fraction:
    """The integral of the speed along the curve, by Romberg's rule, halved until two rows agree."""
    with localcontext(prec=_DIGITS):
        speed = _speed(cubic)
        step = Decimal(1)
        row = [(speed(Decimal(0)) + speed(Decimal(1))) / 2]
        for halving in range(1, _DEEPEST + 1):
            step /= 2
            middles = sum((speed((2 * i + 1) * step) for i in range(2 ** (halving - 1))), Decimal(0))
            better = [row[0] / 2 + step * middles]
            for power, before in enumerate(row, start=1):
                better.append(better[-1] + (better[-1] - before) / (4**power - 1))
            if halving > 3 and abs(better[-1] - row[-1]) < WITHIN:
                return Fraction(round(better[-1], 30))
            row = better
        return Fraction(round(row[-1], 30))


def _speed(cubic: Cubic) -> Callable[[Decimal], Decimal]:
    """How fast a point runs along a cubic curve, by its parameter from 0 to 1."""
    points = (cubic.start, cubic.first, cubic.last, cubic.end)
    (ax, ay), (bx, by), (cx, cy) = (_leg(one, other) for one, other in pairwise(points))

    def speed(t: Decimal) -> Decimal:
        left = 1 - t
        one, two, three = left * left, 2 * left * t, t * t
        across, down = one * ax + two * bx + three * cx, one * ay + two * by + three * cy
        return 3 * (across * across + down * down).sqrt()

    return speed


def _leg(start: Point, end: Point) -> tuple[Decimal, Decimal]:
    return _decimal(end[0] - start[0]), _decimal(end[1] - start[1])


def _decimal(value: Fraction) -> Decimal:
    return Decimal(value.numerator) / Decimal(value.denominator)
