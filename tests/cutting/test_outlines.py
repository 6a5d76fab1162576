"""Circles and outlines on a raster: always sound, held against exact geometry from outside."""

import math
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point as Place
from shapely import Polygon, affinity, box

from presscloth.cutting.checker import AgainstGrain, NoSuchPart, Outside, Overlap, WrongCount
from presscloth.cutting.outline_checker import check_outlines, overlap
from presscloth.cutting.outlines import (
    Outline,
    OutlineCut,
    OutlineLayout,
    PlacedOutline,
    around_circle,
    turned,
    twice_area,
)
from presscloth.cutting.outlining import lay_out_outlines
from presscloth.cutting.parts import DoesNotFit, Roll
from presscloth.cutting.raster import Cloth, cells

TRIANGLE = ((0, 0), (200, 0), (100, 240))
HOOK = ((0, 0), (90, 0), (90, 30), (30, 30), (30, 100), (0, 100))


def polygons(parts: list[Outline], layout: OutlineLayout) -> list[Polygon]:
    """The pieces as shapely turns and moves them."""
    shapes = []
    for placed in layout.placed:
        shape = affinity.rotate(Polygon(parts[placed.part].points), placed.angle, origin=(0, 0))
        left, low, _, _ = shape.bounds
        shapes.append(affinity.translate(shape, placed.x - left, placed.y - low))
    return shapes


def laid(width: int, parts: list[Outline], step: int = 1, budget: int = 6000) -> OutlineCut:
    cut = lay_out_outlines(Roll(width), parts, step=step, budget=budget)
    assert isinstance(cut, OutlineCut)
    assert check_outlines(parts, cut.layout, length=cut.need) == ()
    assert cut.bound <= cut.bought < cut.need + step
    shapes = polygons(parts, cut.layout)
    cloth = box(-0.001, -0.001, width + 0.001, cut.need + 0.001)
    assert all(cloth.contains(shape) for shape in shapes)
    for at, shape in enumerate(shapes):  # oracle: shapely, an independent geometry library
        assert all(shape.intersection(other).area < 0.01 for other in shapes[:at])
    return cut


def test_flags_lie_head_to_foot():
    upright = laid(1120, [Outline("flag", TRIANGLE, 24)])
    turning = laid(1120, [Outline("flag", TRIANGLE, 24, (0, 180))], budget=60_000)
    assert 1150 <= upright.need <= 1250  # five to a row of 240, five rows
    assert turning.need <= 760  # ten to a row of 240, three rows


def test_a_hook_holds_another_hook():
    cut = laid(125, [Outline("hook", HOOK, 2, (0, 180))])
    assert cut.need < 200  # one behind the other would need 200
    assert {placed.angle for placed in cut.layout.placed} == {0, 180}


def test_a_piece_as_wide_as_the_cloth_fits_whatever_the_raster():
    cut = laid(1123, [Outline("band", ((0, 0), (1123, 0), (1123, 97), (0, 97)), 2)])
    assert 194 <= cut.need <= 204


def test_outlines_that_are_too_wide_are_named():
    parts = [Outline("a", TRIANGLE, 1), Outline("b", ((0, 0), (900, 0), (900, 90), (0, 90)), 1, (0, 180))]
    assert lay_out_outlines(Roll(500), parts) == DoesNotFit((1,))
    assert isinstance(laid(500, [parts[0], Outline("b", parts[1].points, 1, (0, 90))]), OutlineCut)


def test_the_bound_is_the_area_or_the_reach():
    # Two triangles of 24,000 units² on a cloth of 200: 240 by area, and no less than 240 by reach.
    cut = laid(400, [Outline("flag", TRIANGLE, 2, (0, 180))], step=240)
    assert (cut.bound, cut.bought, cut.proved) == (240, 240, True)
    assert laid(100, [Outline("strip", ((0, 0), (50, 0), (50, 70), (0, 70)), 3)], budget=600).bound == 105


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 100_000))
def test_a_circle_is_covered_and_little_more(diameter: int):
    polygon = Polygon(around_circle(diameter))
    middle = polygon.bounds[2] / 2
    circle = Place(middle, middle).buffer(diameter / 2, quad_segs=64)  # inside the true circle
    assert polygon.buffer(0.01).contains(circle)
    assert diameter <= polygon.bounds[2] <= diameter + 2
    if diameter > 1000:
        assert Fraction(twice_area(around_circle(diameter)), 2) < Fraction(102, 100) * Fraction(
            math.pi * diameter**2 / 4
        )


@pytest.mark.parametrize("angle", [0, 90, 180, 270])
def test_turning_agrees_with_shapely(angle: int):
    shape = affinity.rotate(Polygon(HOOK), angle, origin=(0, 0))
    left, low, _, _ = shape.bounds
    assert (
        Polygon(turned(HOOK, angle)).symmetric_difference(affinity.translate(shape, -left, -low)).area < 1e-6
    )


@pytest.mark.parametrize("size", [3, 7, 10, 33])
@pytest.mark.parametrize("points", [TRIANGLE, HOOK, around_circle(150), turned(HOOK, 270)])
def test_cells_are_those_that_shapely_finds_touched(points, size: int):
    shape = Polygon(points)
    touched = cells(points, size)
    for row, stretches in enumerate(touched):
        columns = {column for first, end in stretches for column in range(first, end)}
        for column in range(260 // size + 1):
            square = box(column * size, row * size, (column + 1) * size, (row + 1) * size)
            inside = square.intersection(shape).area > 1e-9
            assert inside <= (column in columns)  # every touched cell is taken
            if column in columns and len(stretches) == 1:
                assert square.buffer(size).intersects(shape)  # and none that is far away


def test_the_lowest_place_is_the_leftmost_that_is_free():
    cloth = Cloth()
    square = cells(((0, 0), (2, 0), (2, 2), (0, 2)), 1)
    cloth.lay(square, 0, 0)
    assert cloth.lowest(square, 5, 0) == (2, 0)
    cloth.lay(square, 3, 0)
    assert cloth.lowest(square, 5, 0) == (0, 2)
    bar = cells(((0, 0), (1, 0), (1, 3), (0, 3)), 1)
    assert cloth.lowest(bar, 6, 0) == (2, 0)


GOOD = OutlineLayout(400, 240, (PlacedOutline(0, 0, 0, 0), PlacedOutline(0, 100, 0, 180)))
FLAGS = [Outline("flag", TRIANGLE, 2, (0, 180))]


@pytest.mark.parametrize(
    ("placed", "fault"),
    [
        (PlacedOutline(0, 99, 0, 180), Overlap(0, 1)),
        (PlacedOutline(0, 0, 0, 0), Overlap(0, 1)),
        (PlacedOutline(0, 201, 0, 180), Outside(1)),
        (PlacedOutline(0, 100, -1, 180), Outside(1)),
        (PlacedOutline(0, 160, 0, 90), AgainstGrain(1)),
        (PlacedOutline(1, 100, 0, 180), NoSuchPart(1)),
        (PlacedOutline(1, 100, 0, 180), WrongCount(0, 2, 1)),
    ],
)
def test_the_checker_finds_a_fault(placed: PlacedOutline, fault: object):
    assert check_outlines(FLAGS, GOOD, length=240) == ()
    assert fault in check_outlines(FLAGS, OutlineLayout(400, 240, (GOOD.placed[0], placed)), length=240)


CORNERS = st.lists(st.tuples(st.integers(0, 30), st.integers(0, 30)), min_size=3, max_size=3, unique=True)


@settings(max_examples=300, deadline=None)
@given(CORNERS, CORNERS)
def test_overlap_agrees_with_shapely(one: list[tuple[int, int]], other: list[tuple[int, int]]):
    shapes = Polygon(one), Polygon(other)
    if all(shape.area > 0 for shape in shapes):
        assert overlap(one, other) == (shapes[0].intersection(shapes[1]).area > 1e-9)


def test_a_piece_within_another_overlaps_and_one_in_its_hollow_does_not():
    square = ((0, 0), (100, 0), (100, 100), (0, 100))
    within = ((40, 40), (60, 40), (60, 60), (40, 60))
    hollow = ((30, 30), (90, 30), (90, 100), (30, 100))
    assert overlap(square, within) and overlap(within, square) and overlap(square, square)
    assert not overlap(HOOK, hollow)
    assert overlap(HOOK, tuple((x - 1, y) for x, y in hollow))


def test_many_kits_are_laid_out_as_some_over_and_over(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr("presscloth.cutting.outlining._MANY", 9)
    some, many = (laid(500, [Outline("flag", TRIANGLE, count, (0, 180))]) for count in (9, 18))
    assert many.need == 2 * some.need
    assert len(many.layout.placed) == 18
