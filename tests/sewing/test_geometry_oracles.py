"""Geometry held against a general-purpose library: polygons that are cut, moved and joined in the plane."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sewing.table import sew
from shapely import affinity
from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union

from presscloth.measure import Quantity, length
from presscloth.sewing.lengths import half, times_root_two
from presscloth.sewing.measuring import stitched_leg, stitched_long_side
from presscloth.sewing.things import Rim, State, Triangle, rectangle, turned

IMPERIAL = "---\nsystems: imperial\n---"
MITRE = 2  # shapely's join style that keeps corners sharp


def inner(shape: Polygon, seam: float) -> Polygon:
    """The stitch line of a shape."""
    return shape.buffer(-seam, join_style=MITRE, mitre_limit=20)


def triangle(leg: Fraction, allowance: Fraction, *, quarter: bool = False) -> Triangle:
    side = length(leg, leg)
    rim = Rim(State.RAW, length(allowance, allowance))
    if quarter:
        return Triangle(half(times_root_two(side)), side, rim, quarter=True)
    return Triangle(side, times_root_two(side), rim, quarter=False)


sides = st.fractions(min_value=4, max_value=60, max_denominator=16)
seams = st.fractions(min_value=Fraction(1, 8), max_value=Fraction(5, 8), max_denominator=16)


@given(sides, seams)
def test_a_triangle_between_its_stitch_lines(leg: Fraction, seam: Fraction):
    cut = Polygon([(0, 0), (float(leg), 0), (0, float(leg))])
    sewn = inner(cut, float(seam))
    shape = triangle(leg, seam)
    minx, _, maxx, _ = sewn.bounds
    assert float(stitched_leg(shape).metric) == pytest.approx(maxx - minx)
    assert float(stitched_long_side(shape).metric) == pytest.approx(sqrt(4 * sewn.area))


def joined_over(piece: Polygon, seam_line: LineString) -> Polygon:
    """A piece and its mirror image beyond a line: what two of them make when they are sewn along it."""
    (x0, y0), (x1, y1) = seam_line.coords
    dx, dy = x1 - x0, y1 - y0
    norm = dx * dx + dy * dy
    a, b = (dx * dx - dy * dy) / norm, 2 * dx * dy / norm
    mirrored = affinity.affine_transform(piece, [a, b, b, -a, x0 - a * x0 - b * y0, y0 - b * x0 + a * y0])
    return unary_union([piece, mirrored]).buffer(0)


def units(at_once: int, square: str) -> float:
    pieces = f"light | A | 1 | {square} | {square}\ndark | A | 1 | {square} | {square}"
    statements = (
        f"{at_once} unit = pair light with dark into {at_once}\n"
        f"row = join {at_once} unit side by side\n"
        f"finish row"
    )
    table = sew(pieces, statements, measures="seam = 1/4 in", rest=IMPERIAL)
    return float(table.inches("width of unit"))


def test_two_units_from_a_pair_of_squares():
    s, side = 0.25, 5.0
    # Sewn s beside the diagonal and cut along it: a triangle of which the seam leaves what lies inside.
    half_square = Polygon([(0, 0), (side, 0), (0, side)])
    d = s * sqrt(2)
    kept = half_square.intersection(Polygon([(-9, -9), (side - d + 9, -9), (-9, side - d + 9)]))
    unit = joined_over(kept, LineString([(side - d, 0), (0, side - d)]))
    assert units(2, "5 in") == pytest.approx(sqrt(unit.area))


def test_four_units_from_a_pair_of_squares():
    s, side = 0.25, 8.0
    # Sewn all round and cut on both diagonals: a triangle on each side, opened at the seam.
    quarter = Polygon([(0, 0), (side, 0), (side / 2, side / 2)])
    kept = quarter.intersection(box(0, s, side, side))
    unit = joined_over(kept, LineString([(0, s), (side, s)]))
    assert units(4, "8 in") == pytest.approx(sqrt(unit.area))


def test_eight_units_from_a_pair_of_squares():
    assert units(8, "10 in") == pytest.approx(units(2, "5 in"))


def test_a_notch_from_the_raw_edges_makes_a_box_of_twice_its_side():
    # A panel with both lower corners notched, stitched all round: the notch that the stitch lines leave is as
    # large as the one that was cut, and the box is as deep as two of them.
    s, notch, wide, high = 0.5, 2.0, 20.0, 17.0
    panel = box(0, 0, wide, high) - box(0, 0, notch, notch) - box(wide - notch, 0, wide, notch)
    sewn = inner(panel, s)
    minx, miny, maxx, _ = sewn.bounds
    floor = sewn.intersection(LineString([(minx, miny), (maxx, miny)]))
    table = sew(
        "front | A | 1 | 20 in | 17 in\nback | A | 1 | 20 in | 17 in",
        "bag = join front to back on left, right, bottom\n"
        "box corners of bag by cutting 2 in from the raw edges\nfinish bag",
        measures="seam = 1/2 in",
        rest=IMPERIAL,
    )
    assert float(table.inches("width of bag")) == pytest.approx(floor.length)
    wall = [y for x, y in sewn.exterior.coords if abs(x - minx) < 1e-9]
    # The wall reaches from the notch to the stitch line at the top, and half the depth is floor.
    assert float(table.inches("finished height of bag")) == pytest.approx(max(wall) - min(wall))
    assert float(table.inches("depth of bag")) == pytest.approx(2 * (min(wall) - miny))


@pytest.mark.parametrize(("rows", "columns"), [(1, 1), (2, 2), (4, 5), (3, 2)])
def test_squares_on_point_fill_their_rectangle(rows: int, columns: int):
    block = 6.0
    diagonal = block * sqrt(2)
    diamond = Polygon(
        [(diagonal / 2, 0), (diagonal, diagonal / 2), (diagonal / 2, diagonal), (0, diagonal / 2)]
    )
    outer = [
        affinity.translate(diamond, c * diagonal, r * diagonal) for r in range(rows) for c in range(columns)
    ]
    between = [
        affinity.translate(diamond, (c + 0.5) * diagonal, (r + 0.5) * diagonal)
        for r in range(rows - 1)
        for c in range(columns - 1)
    ]
    middle = unary_union([*outer, *between])
    frame = box(0, 0, columns * diagonal, rows * diagonal)
    gaps = [gap for gap in getattr(frame - middle, "geoms", [frame - middle]) if gap.area > 1e-9]
    corners = [gap for gap in gaps if gap.area < block * block / 3]
    count = rows * columns + (rows - 1) * (columns - 1)
    setting = 2 * (rows + columns - 2)
    assert (len(corners), len(gaps) - len(corners)) == (4, setting)
    filler, corner = "9 3/4 in", "5 1/2 in"
    pieces = f"""
        block  | A | {count} | 6 1/2 in | 6 1/2 in |
        filler | A | {max(setting, 1)} | {filler} | | quarter-square triangle
        corner | A | 4 | {corner} | | half-square triangle
    """
    triangles = f"{setting} filler, 4 corner" if setting else "4 corner"
    table = sew(
        pieces,
        f"quilt = set {count} block on point in {rows} rows with {triangles}\n"
        f"trim quilt to {columns} × sqrt(2) × 6 in + 2 × seam by "
        f"{rows} × sqrt(2) × 6 in + 2 × seam\nfinish quilt",
        measures="seam = 1/4 in",
        columns=" Shape |",
        rest=IMPERIAL,
    )
    assert [name for name in table.names if name != "piece-left-over"] == ["raw-edge-shows"]
    assert float(table.inches("finished width of quilt")) == pytest.approx(frame.bounds[2])
    assert float(table.inches("finished height of quilt")) == pytest.approx(frame.bounds[3])


edges = st.sampled_from(["left", "right", "top", "bottom"])


@settings(max_examples=25, deadline=None)
@given(edges, edges, st.integers(6, 30), st.integers(6, 30), st.integers(6, 30))
def test_what_is_joined_covers_what_is_made(edge: str, own: str, across: int, deep: int, other: int):
    # Both edges are `across` long; the pieces as they are seen between the seams fill the new thing.
    def piece(name: str, at: str, depth: int) -> str:
        wide, high = (depth, across) if at in ("left", "right") else (across, depth)
        return f"{name} | A | 1 | {wide} cm | {high} cm"

    pieces = piece("first", edge, deep) + "\n" + piece("second", own, other)
    table = sew(
        pieces,
        f"both = join {edge} of first to {own} of second\nfinish both",
        rest="---\nsystems: metric\n---",
    )
    assert table.names == ["raw-edge-shows"]
    wide, high = float(table.mm("width of both")), float(table.mm("height of both"))
    parts = [part.box for part in table.made.finished[0].thing.parts]
    seen = [box(float(b.x), float(b.y), float(b.x + b.width), float(b.y + b.height)) for b in parts if b]
    assert len(seen) == 2
    assert seen[0].intersection(seen[1]).area == 0
    assert unary_union(seen).equals(box(0, 0, wide, high))


def quantity(value: int) -> Quantity:
    return length(value, value)


@given(st.integers(1, 50), st.integers(1, 50), st.integers(0, 7))
def test_turning_by_quarters(wide: int, high: int, quarters: int):
    flat = rectangle(quantity(wide), quantity(high), Rim(State.RAW, quantity(1)))
    shape = affinity.rotate(box(0, 0, wide, high), -90 * quarters)
    minx, miny, maxx, maxy = shape.bounds
    spun = turned(flat, quarters)
    assert (float(spun.width.metric), float(spun.height.metric)) == pytest.approx((maxx - minx, maxy - miny))
