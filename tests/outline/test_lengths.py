"""Lengths of seam lines, held against mpmath, which integrates and inverts by itself."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import mpmath
import pytest
from outline.runs import DOWN, RIGHT, drafted, lengths, run

from presscloth.outline import Closing
from presscloth.outline.lengths import arc_tangent, length
from presscloth.outline.shape import circle_of
from presscloth.outline.stretches import Cubic, Straight, curve

PROMISED = mpmath.mpf("1e-12")


def exact(value: Fraction) -> mpmath.mpf:
    return mpmath.mpf(value.numerator) / value.denominator


def point(x: object, y: object) -> tuple[Fraction, Fraction]:
    return Fraction(str(x)), Fraction(str(y))


def test_a_straight_run_is_exact():
    assert length(Straight(point(0, 0), point("12.7", 0))) == Fraction("12.7")
    assert length(Straight(point(0, 0), point(30, 40))) == 50


@pytest.mark.parametrize("value", ["0", "1", "1/2", "1/3", "0.0001", "999/1000"])
def test_the_arc_tangent_is_right_to_forty_digits(value):
    with mpmath.workdps(60):
        wanted = mpmath.atan(exact(Fraction(value)))
        assert abs(exact(arc_tangent(Fraction(value))) - wanted) < mpmath.mpf("1e-40")


def test_a_round_base_is_pi_times_its_diameter():
    """Half a disc on the fold, 22 cm across: 220 π = 691.1503837897… mm all round."""
    disc = drafted(run("rim", (0, 220), arched=0, radius=110), closing=Closing.FOLD)
    with mpmath.workdps(50):
        (rim,) = disc.edges
        assert abs(exact(rim.length) - 220 * mpmath.pi) < mpmath.mpf("1e-35")
    assert circle_of(disc) == 110


@pytest.mark.parametrize(("chord", "rise"), [(100, 50), (100, 10), (123, 7), (90, 1)])
def test_an_arc_by_its_rise(chord, rise):
    """Radius c²/8h + h/2, angle 2 asin(c / 2r) (geometry of the circular segment)."""
    cloth = drafted(
        run("top", (chord, 0), arched=rise), run("right", (0, 200)), run("bottom", (-chord, 0)), run("left")
    )
    top = next(edge for edge in cloth.edges if edge.name == "top")
    with mpmath.workdps(50):
        radius = mpmath.mpf(chord) ** 2 / (8 * rise) + mpmath.mpf(rise) / 2
        wanted = 2 * radius * mpmath.asin(mpmath.mpf(chord) / (2 * radius))
        assert abs(exact(top.length) - wanted) < mpmath.mpf("1e-33")


def by_mpmath(cubic: Cubic) -> mpmath.mpf:
    """The length of a cubic curve by Gauss and Legendre's quadrature at 40 digits."""
    with mpmath.workdps(40):
        points = [[exact(c) for c in p] for p in (cubic.start, cubic.first, cubic.last, cubic.end)]
        legs = [[b - a for a, b in zip(p, q, strict=True)] for p, q in pairwise(points)]

        def speed(t: mpmath.mpf) -> mpmath.mpf:
            weights = ((1 - t) ** 2, 2 * t * (1 - t), t**2)
            across, down = (3 * sum(w * leg[i] for w, leg in zip(weights, legs, strict=True)) for i in (0, 1))
            return mpmath.sqrt(across**2 + down**2)

        return mpmath.quad(speed, mpmath.linspace(0, 1, 33))


@pytest.mark.parametrize(
    ("steps", "leaving", "arriving"),
    [
        ([(0, 0), (10, 60), (50, 120)], None, None),
        ([(0, 0), (45, 30), (60, 120)], RIGHT, DOWN),
        ([(0, 0), (100, 1), (101, 100)], None, DOWN),
        ([(0, 0), ("0.5", 7), (80, "7.25"), (90, 300), (91, 301)], RIGHT, RIGHT),
    ],
)
def test_a_curve_is_as_long_as_is_promised(steps, leaving, arriving):
    cubics = curve(tuple(point(*step) for step in steps), leaving, arriving)
    for cubic in cubics:
        assert abs(exact(length(cubic)) - by_mpmath(cubic)) < PROMISED


def test_a_curve_through_points_in_a_line_is_that_line():
    for cubic in curve((point(0, 0), point(30, 40), point(60, 80)), None, None):
        assert abs(length(cubic) - 50) < Fraction(1, 10**12)


def test_a_curve_passes_through_its_points_without_a_kink():
    first, second = curve((point(0, 0), point(30, 10), point(50, 60)), RIGHT, DOWN)
    assert first.end == second.start == point(30, 10)
    # It leaves level, comes in upright, and runs on in its own direction in between.
    assert first.first[1] == 0 and second.last[0] == 50
    into = (first.end[0] - first.last[0], first.end[1] - first.last[1])
    out = (second.first[0] - second.start[0], second.first[1] - second.start[1])
    assert abs(into[0] * out[1] - into[1] * out[0]) < Fraction(1, 10**20)


def test_the_same_curve_from_its_other_end_is_as_long():
    points = (point(0, 0), point(20, 35), point(70, 50))
    there = curve(points, RIGHT, DOWN)
    back = curve(points[::-1], (0, -1), (-1, 0))
    assert [length(c) for c in there] == pytest.approx([length(c) for c in reversed(back)], abs=1e-12)


def test_edges_of_several_runs_are_as_long_as_all_of_them():
    cloth = drafted(
        run("top", (100, 0)),
        run("right", (0, 30)),
        run("right", (0, 70)),
        run("bottom", (-100, 0)),
        run("left"),
    )
    assert lengths(cloth) == {"top": 100, "right": 100, "bottom": 100, "left": 100}
