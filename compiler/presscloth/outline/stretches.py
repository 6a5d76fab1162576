"""Stretches of an outline: straight lines, arcs of circles, and cubic curves, from point to point.

Coordinates are `Fraction`s of mm or in, x to the right and y downwards. What needs a root or pi is
carried to 40 digits.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from presscloth.frozen import dataclass
from presscloth.measure.arithmetic import square_root

Point = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Straight:
    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Arc:
    """Less than half a circle, or half of one. `clockwise` as it is seen on the page."""

    start: Point
    end: Point
    centre: Point
    radius: Fraction
    clockwise: bool


@dataclass(frozen=True, slots=True)
class Cubic:
    """A cubic Bézier curve: it leaves its start towards `first` and comes to its end from `last`."""

    start: Point
    first: Point
    last: Point
    end: Point


Stretch = Straight | Arc | Cubic


def turned_back(stretch: Stretch) -> Stretch:
    """The same stretch from its end to its start."""
    match stretch:
        case Straight(start=start, end=end):
            return Straight(end, start)
        case Arc():
            return Arc(stretch.end, stretch.start, stretch.centre, stretch.radius, not stretch.clockwise)
        case Cubic():
            return Cubic(stretch.end, stretch.last, stretch.first, stretch.start)


def mirrored(stretch: Stretch, axis: Fraction, *, upright: bool) -> Stretch:
    """A stretch on the other side of an upright or a level line through `axis`."""

    def over(point: Point) -> Point:
        x, y = point
        return (2 * axis - x, y) if upright else (x, 2 * axis - y)

    match stretch:
        case Straight(start=start, end=end):
            return Straight(over(start), over(end))
        case Arc():
            clockwise = not stretch.clockwise
            return Arc(
                over(stretch.start), over(stretch.end), over(stretch.centre), stretch.radius, clockwise
            )
        case Cubic():
            return Cubic(over(stretch.start), over(stretch.first), over(stretch.last), over(stretch.end))


def distance(one: Point, other: Point) -> Fraction:
    """Exact where it is a fraction, else to 40 digits."""
    across, down = other[0] - one[0], other[1] - one[1]
    if not across or not down:
        return abs(across + down)
    return square_root(across**2 + down**2)[0]


def arc(start: Point, end: Point, radius: Fraction, *, clockwise: bool) -> Arc | None:
    """The shorter arc of a radius between two points; None where they are further apart than it reaches."""
    chord = distance(start, end)
    away_squared = radius**2 - chord**2 / 4
    if chord == 0 or away_squared < 0:
        return None
    away = square_root(away_squared)[0]
    # Seen along the chord, a clockwise arc on the page has its centre at the right.
    side = 1 if clockwise else -1
    across, down = (end[0] - start[0]) / chord, (end[1] - start[1]) / chord
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    centre = (middle[0] - side * down * away, middle[1] + side * across * away)
    return Arc(start, end, centre, radius, clockwise)


def radius_of(chord: Fraction, rise: Fraction) -> Fraction:
    """The radius of the arc that rises so far above the middle of its chord (geometry)."""
    return (chord**2 / 4 + rise**2) / (2 * rise)


Direction = tuple[int, int]


def curve(points: tuple[Point, ...], leaving: Direction | None, arriving: Direction | None) -> list[Cubic]:
    """A smooth curve through points, measured off along its chords.

    In every point between, it has the direction of the parabola through that point and its two
    neighbours (Bessel's tangents, as in G. Farin, Curves and Surfaces for CAGD); at its ends that of
    the parabola there, or the direction that is given.
    """
    chords = [distance(one, other) for one, other in pairwise(points)]
    slopes = [
        ((other[0] - one[0]) / chord, (other[1] - one[1]) / chord)
        for (one, other), chord in zip(pairwise(points), chords, strict=True)
    ]
    inner = [
        _between(before, after, chord, next_chord)
        for (before, after), (chord, next_chord) in zip(pairwise(slopes), pairwise(chords), strict=True)
    ]
    first = _given(leaving) or _end_tangent(slopes[0], inner[0] if inner else _given(arriving))
    last = _given(arriving) or _end_tangent(slopes[-1], inner[-1] if inner else _given(leaving))
    tangents = [first, *inner, last]
    return [
        Cubic(
            start,
            (_short(start[0] + out[0] * chord / 3), _short(start[1] + out[1] * chord / 3)),
            (_short(end[0] - back[0] * chord / 3), _short(end[1] - back[1] * chord / 3)),
            end,
        )
        for (start, end), chord, (out, back) in zip(pairwise(points), chords, pairwise(tangents), strict=True)
    ]


def _given(direction: Direction | None) -> Point | None:
    return None if direction is None else (Fraction(direction[0]), Fraction(direction[1]))


def _between(before: Point, after: Point, chord: Fraction, next_chord: Fraction) -> Point:
    whole = chord + next_chord
    return (
        (before[0] * next_chord + after[0] * chord) / whole,
        (before[1] * next_chord + after[1] * chord) / whole,
    )


def _end_tangent(slope: Point, inner: Point | None) -> Point:
    """The parabola's direction at its end; along the chord where nothing bends it."""
    return slope if inner is None else (2 * slope[0] - inner[0], 2 * slope[1] - inner[1])


def _short(value: Fraction) -> Fraction:
    """A value to 30 decimals, so that numbers do not grow from step to step."""
    return Fraction(round(value * 10**30), 10**30)
