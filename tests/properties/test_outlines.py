"""Promises that hold for every outline: it closes, halves are alike, allowances kept, sheets cover it."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from outline.runs import DOWN, LEFT, RIGHT, drafted, run
from shapely import LineString, MultiLineString, Polygon, affinity, unary_union
from shapely.geometry import Point as Place

from presscloth.drawing.sheets import OVERLAP, TILE_HEIGHT, TILE_WIDTH, Plane, Sheet, on_sheets
from presscloth.drawing.tree import Ink, Line
from presscloth.measure import System
from presscloth.outline import Closing, Contour, cutting_line, seam_line
from presscloth.outline.joints import crosses_itself

sizes = st.integers(40, 400)
parts = st.fractions(Fraction(1, 10), Fraction(9, 10), max_denominator=20)
allowances = st.sampled_from((0, 5, 10, 15))


@st.composite
def halves(draw: st.DrawFn) -> Contour:
    """Half a bib: a top, a side that is straight, bent or curved, a bottom to the fold."""
    top, flare, high = draw(sizes), draw(st.integers(-20, 120)), draw(sizes)
    allowance = draw(allowances)
    kind = draw(st.sampled_from(("straight", "arched", "hollowed", "curve")))
    if kind == "curve":
        part = draw(parts)
        steps = ((flare * part**2, high * part), (flare - flare * part**2, high - high * part))
        side = run(
            "side", *steps, curved=True, allowance=allowance, leaving=draw(st.sampled_from((None, DOWN)))
        )
    else:
        rise = Fraction(high) * draw(st.fractions(Fraction(1, 50), Fraction(1, 5), max_denominator=50))
        bends = {} if kind == "straight" else {kind: rise}
        side = run("side", (flare, high), allowance=allowance, **bends)
    assume(top + min(flare, 0) > 30)
    half = drafted(
        run("top", (top, 0), allowance=allowance),
        side,
        run("bottom", to_fold=LEFT, allowance=allowance),
        closing=draw(st.sampled_from((Closing.FOLD, Closing.MIRRORED))),
    )
    seam = [point for edge in half.edges for point in seam_line(edge, System.METRIC)[:-1]]
    assume(crosses_itself(seam) is None)  # what does is refused before it is drawn
    assume(crosses_itself(cutting_line(half, System.METRIC)) is None)
    return half


@given(halves())
@settings(max_examples=25, deadline=None)
def test_an_outline_closes_and_its_halves_are_alike(contour: Contour) -> None:
    for edge, after in zip(contour.edges, (*contour.edges[1:], contour.edges[0]), strict=True):
        assert edge.stretches[-1].end == after.stretches[0].start
        for one, other in zip(edge.stretches, edge.stretches[1:], strict=False):
            assert one.end == other.start
    lengths = {edge.name: edge.length for edge in contour.edges}
    assert lengths["left side"] == pytest.approx(float(lengths["right side"]), abs=1e-12)
    seam = Polygon([p for edge in contour.edges for p in seam_line(edge, System.METRIC)[:-1]])
    mirrored = affinity.scale(seam, xfact=-1, yfact=1, origin=(0, 0))
    assert seam.symmetric_difference(mirrored).area < 1e-3


@given(halves())
@settings(max_examples=25, deadline=None)
def test_the_cutting_line_keeps_the_allowance(contour: Contour) -> None:
    allowance = float(contour.edges[0].allowance)
    seam = Polygon([p for edge in contour.edges for p in seam_line(edge, System.METRIC)[:-1]])
    line = cutting_line(contour, System.METRIC)
    outside = Polygon(line)
    assert outside.buffer(0.03).contains(seam)
    for point in LineString([*line, line[0]]).segmentize(9).coords:
        assert seam.exterior.distance(Place(point)) > allowance - 0.03


@given(st.integers(20, 900), st.integers(20, 900), st.booleans())
@settings(max_examples=15, deadline=None)
def test_sheets_cover_a_template_once_but_for_their_overlaps(wide: int, high: int, arched: bool) -> None:
    contour = drafted(
        run("top", (wide, 0), arched=wide // 5 if arched else None),
        run("right", (0, high)),
        run("bottom", (-wide, 0)),
        run("left"),
    )
    line = cutting_line(contour, System.METRIC)
    left, top = min(x for x, _ in line), min(y for _, y in line)
    cut = tuple((x - left, y - top) for x, y in line)
    plane = Plane("cloth", ("cloth",), cut, (Line((*cut, cut[0]), Ink.CUT),), (), 0.0)
    sheets = on_sheets(plane)
    whole = LineString(plane.lines[0].points)
    moved = [_back(sheet) for sheet in sheets]
    across = whole.bounds[0] - min(lines.bounds[0] for lines in moved)
    down = whole.bounds[1] - min(lines.bounds[1] for lines in moved)
    moved = [affinity.translate(lines, across, down) for lines in moved]
    together = unary_union(moved)
    assert together.hausdorff_distance(whole) < 1e-6
    for number, one in enumerate(moved):
        for other, sheet in zip(moved[number + 1 :], sheets[number + 1 :], strict=True):
            # Two sheets show the same only where they overlap.
            shared = one.intersection(other.buffer(1e-6))
            if not shared.is_empty:
                assert _thin(shared.bounds), (sheets[number], sheet)


def _back(sheet: Sheet) -> MultiLineString:
    """The cutting line on a sheet, moved to where the sheet lies."""
    x, y = sheet.column * (TILE_WIDTH - OVERLAP), sheet.row * (TILE_HEIGHT - OVERLAP)
    runs = [s.points for s in sheet.drawing.shapes if isinstance(s, Line) and s.ink is Ink.CUT]
    return affinity.translate(MultiLineString(runs), x, y)


def _thin(bounds: tuple[float, float, float, float]) -> bool:
    left, top, right, bottom = bounds
    return min(right - left, bottom - top) <= OVERLAP + 1e-4


@given(sizes, sizes)
@settings(max_examples=15, deadline=None)
def test_lengths_do_not_depend_on_the_unit(wide: int, high: int) -> None:
    """The same curve in mm and in inches has the same length, to 1e-12."""

    def arch(unit: Fraction, system: System) -> Fraction:
        steps = ((wide * unit / 2, high * unit / 4), (wide * unit / 4, high * unit))
        half = drafted(
            run("arch", *steps, curved=True, leaving=RIGHT, arriving=DOWN),
            run("base", to_fold=LEFT),
            closing=Closing.FOLD,
            system=system,
        )
        return half.edges[0].length

    metric, imperial = arch(Fraction(1), System.METRIC), arch(Fraction(10, 254), System.IMPERIAL)
    assert abs(metric - imperial * Fraction(254, 10)) < Fraction(1, 10**11)
