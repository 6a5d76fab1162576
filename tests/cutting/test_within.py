"""Rectangles inside pieces that are not rectangles, and what they prove."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon
from shapely.geometry import box as rectangle

from presscloth.cutting import Part, Way
from presscloth.cutting.laid import Laid, Selling, on_roll
from presscloth.cutting.outlines import Outline, around_circle
from presscloth.cutting.pieces import Pieces
from presscloth.cutting.within import widest_within


def test_in_a_hook_it_is_the_longer_arm() -> None:
    hook = [(0.0, 0.0), (100.0, 0.0), (100.0, 30.0), (20.0, 30.0), (20.0, 90.0), (0.0, 90.0)]
    assert widest_within(hook) == (0.0, 0.0, 100.0, 30.0)


def test_in_a_trapezium_it_stands_between_the_slanting_sides() -> None:
    left, top, right, bottom = widest_within([(0.0, 0.0), (90.0, 0.0), (70.0, 40.0), (20.0, 40.0)])
    assert (top, bottom) == (0.0, 40.0)
    assert (left, right) == (20.0, 70.0)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.integers(20, 100), min_size=3, max_size=14))
def test_it_lies_inside_any_polygon(radii: list[int]) -> None:
    """shapely (a general-purpose library of geometry) agrees that nothing of it lies outside."""
    turn = 2 * math.pi / len(radii)
    points = [(r * math.cos(n * turn), r * math.sin(n * turn)) for n, r in enumerate(radii)]
    found = widest_within(points)
    if found != (0.0, 0.0, 0.0, 0.0):
        assert Polygon(points).buffer(1e-6).contains(rectangle(*found))


@pytest.mark.parametrize(("square", "least"), [(0, 2), (70, 3)])
def test_the_squares_in_circles_prove_what_their_area_does_not(square: int, least: int) -> None:
    """Two circles of 100 on a cloth of 139: squares of 70 do not lie side by side, nor do the circles."""
    circle = Outline("disc", around_circle(100), 2)
    within = (Part("disc", square, square, 2),) if square else ()
    pieces = Pieces((Part("disc", 100, 100, 2),), (circle,), within, 2 * 7853, 100)
    laid = on_roll(139, pieces, Way.FREE, Selling(60, straightened=False), None)
    assert isinstance(laid, Laid)
    assert laid.least == least
