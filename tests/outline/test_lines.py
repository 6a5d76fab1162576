"""Seam line and cutting line as they are drawn, held against hand-worked corners and against shapely."""

from __future__ import annotations

from itertools import pairwise
from math import hypot, sqrt

import pytest
from outline.runs import DOWN, LEFT, RIGHT, drafted, rectangle, run
from shapely import LineString, Polygon
from shapely.geometry import Point as Place

from presscloth.measure import System
from presscloth.outline import Closing, Contour, cutting_line, seam_line
from presscloth.outline.flattening import box, notch, thinned
from presscloth.outline.joints import crosses_itself

NEAR = 0.02
"""mm; two lines may each leave their curve by 0.01."""

MITRE = 2  # shapely's join style that keeps corners sharp


def cut(contour: Contour) -> Polygon:
    return Polygon(cutting_line(contour, System.METRIC))


def seam(contour: Contour) -> Polygon:
    return Polygon([point for edge in contour.edges for point in seam_line(edge, System.METRIC)[:-1]])


SHELL = drafted(
    run("arch", (60, 30), (20, 90), curved=True, leaving=RIGHT, arriving=DOWN),
    run("base", to_fold=LEFT),
    closing=Closing.MIRRORED,
)
HOLLOW = drafted(
    run("top", (200, 0), hollowed=30),
    run("right", (0, 100)),
    run("bottom", (-80, 0)),
    run("gore", (-20, -60)),
    run("dart", (-20, 60)),
    run("foot", (-80, 0)),
    run("left"),
)
DISC = drafted(run("rim", (0, 220), arched=0, radius=110), closing=Closing.FOLD)


def test_corners_of_a_rectangle_are_square():
    assert cut(rectangle(120, 80)).equals(Polygon([(-10, -10), (130, -10), (130, 90), (-10, 90)]))


def test_an_edge_may_have_an_allowance_of_its_own_or_none():
    cloth = drafted(
        run("top", (120, 0), allowance=0),
        run("right", (0, 80), allowance=20),
        run("bottom", (-120, 0)),
        run("left"),
    )
    assert box(cutting_line(cloth, System.METRIC)) == (-10, 0, 140, 90)


def test_the_mitre_of_a_slanted_corner_lies_where_the_cutting_lines_meet():
    """A triangle of 30, 40 and 50: its incircle grows from 10 to 20, and all its sides as much."""
    triangle = drafted(run("top", (30, 0)), run("long side", (-30, 40)), run("left"))
    left, top, right, bottom = box(cutting_line(triangle, System.METRIC))
    assert (left, top, right, bottom) == pytest.approx((-10, -10, 50, 70))


def test_a_point_that_would_reach_too_far_is_blunted():
    """An edge that comes in at 8°: mitred it would reach 10 / sin 4° = 143 mm beyond the point."""
    thorn = drafted(run("top", (200, 0)), run("lower", (-200, 28)), run("left"))
    assert 200 + 29 < box(cutting_line(thorn, System.METRIC))[2] < 200 + 45


def test_a_round_is_wider_by_two_allowances():
    assert box(cutting_line(DISC, System.METRIC)) == pytest.approx((-120, -10, 120, 230), abs=1e-9)
    for x, y in cutting_line(DISC, System.METRIC):
        assert hypot(x, y - 110) == pytest.approx(120, abs=1e-9)


def test_lines_keep_to_their_curve():
    """The middle of each piece of a flattened circle lies no more than 0.01 mm inside it."""
    line = cutting_line(DISC, System.METRIC)
    for (x, y), (far_x, far_y) in pairwise(line):
        assert hypot((x + far_x) / 2, (y + far_y) / 2 - 110) > 120 - 0.0125


@pytest.mark.parametrize("contour", [SHELL, HOLLOW, DISC, rectangle(70, 30)])
def test_the_cutting_line_is_what_shapely_makes_of_the_seam_line(contour):
    """shapely rounds its own curves by a hundredth of the allowance, 0.1 mm."""
    wide = seam(contour).buffer(10, join_style=MITRE, mitre_limit=4)
    assert cut(contour).is_valid
    assert cut(contour).symmetric_difference(wide).area < 0.1 * wide.length


@pytest.mark.parametrize("contour", [SHELL, HOLLOW, DISC])
def test_no_point_of_the_cutting_line_is_nearer_than_the_allowance(contour):
    line = LineString([*cutting_line(contour, System.METRIC), cutting_line(contour, System.METRIC)[0]])
    near = [seam(contour).exterior.distance(Place(p)) for p in line.segmentize(1).coords]
    assert min(near) > 10 - NEAR
    on_curves = [distance for distance in near if distance < 10 + NEAR]
    assert len(on_curves) > 0.8 * len(near)  # the others lie at the corners


def test_in_inches_the_lines_are_drawn_in_millimetres():
    square = drafted(
        run("top", (4, 0), allowance="0.375"),
        run("right", (0, 4), allowance="0.375"),
        run("bottom", (-4, 0), allowance="0.375"),
        run("left", allowance="0.375"),
        system=System.IMPERIAL,
    )
    assert box(cutting_line(square, System.IMPERIAL)) == pytest.approx((-9.525, -9.525, 111.125, 111.125))


def test_a_notch_stands_square_on_the_seam_line():
    top = rectangle(120, 80).edges[0]
    assert notch(top, 45.0, System.METRIC) == ((45, 0), (45, -10))
    rim = DISC.edges[0]
    on_seam, on_cut = notch(rim, float(rim.length) / 2, System.METRIC)
    assert hypot(on_seam[0], on_seam[1] - 110) == pytest.approx(110, abs=NEAR)
    assert hypot(on_cut[0], on_cut[1] - 110) == pytest.approx(120, abs=NEAR)


def test_a_line_that_crosses_itself_is_seen():
    assert crosses_itself([(0, 0), (10, 0), (0, 10), (10, 10)]) == (1, 3)
    assert crosses_itself([(0, 0), (10, 0), (10, 10), (0, 10)]) is None


def test_a_gap_that_is_narrower_than_its_allowances_crosses():
    slot = drafted(
        run("top", (120, 0)),
        run("near", (0, 100)),
        run("floor", (15, 0)),
        run("far", (0, -100)),
        run("upper", (120, 0)),
        run("right", (0, 300)),
        run("bottom", (-255, 0)),
        run("left"),
    )
    assert crosses_itself(cutting_line(slot, System.METRIC)) is not None
    assert seam(slot).is_valid


def test_a_thinned_line_keeps_to_the_line():
    line = cutting_line(DISC, System.METRIC)
    thin = thinned(line, 0.5)
    assert len(thin) < len(line) / 3
    assert LineString(thin).hausdorff_distance(LineString(line)) <= 0.5 + 1e-9
    assert (thin[0], thin[-1]) == (line[0], line[-1])


def test_a_diagonal_is_the_root_of_two():
    kite = drafted(run("a", (50, 50)), run("b", (-50, 50)), run("c", (-50, -50)), run("d"))
    left, top, right, bottom = box(cutting_line(kite, System.METRIC))
    assert right - left == pytest.approx(100 + 20 * sqrt(2))
    assert bottom - top == pytest.approx(100 + 20 * sqrt(2))


def test_a_line_that_is_far_too_long_takes_no_longer():
    """A disc of 8 km and a curve as wide: no template, but nothing to wait for either."""
    disc = drafted(run("rim", (0, 8_000_000), arched=0, radius=4_000_000), closing=Closing.FOLD)
    assert len(cutting_line(disc, System.METRIC)) < 2000
    wave = drafted(run("crest", (10**6, 10**6), (10**6, -(10**6)), (10**6, 10**6), curved=True), run("back"))
    assert len(seam_line(wave.edges[0], System.METRIC)) < 7000


def test_an_arc_of_a_metre_is_as_near_as_a_small_one():
    arc = drafted(run("rim", (0, 2000), arched=0, radius=1000), closing=Closing.FOLD)
    line = cutting_line(arc, System.METRIC)
    for (x, y), (far_x, far_y) in pairwise(line):
        assert hypot((x + far_x) / 2, (y + far_y) / 2 - 1000) > 1010 - 0.0125
