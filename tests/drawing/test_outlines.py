"""Pieces that are cut by an outline, in the figures of a handout: in their true shape."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from shapely import LineString, Polygon, box

from presscloth.drawing.layouts import draw_layouts
from presscloth.drawing.pieces import draw_pieces
from presscloth.drawing.tree import Area, Ink, Line
from presscloth.measure import System
from presscloth.pipeline import prove
from presscloth.proof.size import WorkedSize

RECIPES = Path(__file__).parents[2] / "recipes"


@cache
def large() -> WorkedSize:
    sizes = prove(RECIPES / "limpet-pouch" / "recipe.md").sizes
    return next(size for size in sizes if size.edition.size.name == "Large")


def drawn(name: str) -> tuple[Polygon, list[LineString]]:
    """The area of a piece as it is drawn, and its stitch lines."""
    piece = next(piece for piece in large().edition.pieces if piece.name == name)
    (drawing,) = draw_pieces((piece,), (System.METRIC,))
    (area,) = [Polygon(s.points) for s in drawing.shapes if isinstance(s, Area)]
    return area, [LineString(s.points) for s in drawing.shapes if isinstance(s, Line) and s.ink is Ink.SEAM]


def test_a_piece_is_drawn_in_its_shape_with_its_stitch_line_inside():
    """26 × 20 cm, of which the seam lines leave 24 × 18: the same in small."""
    area, seams = drawn("shell")
    left, top, right, bottom = area.bounds
    assert (right - left) / (bottom - top) == pytest.approx(26 / 20, rel=0.01)
    assert len(area.exterior.coords) > 12
    assert 0.75 < area.area / area.envelope.area < 0.95
    assert len(seams) == 2  # the arch and the base
    scale = (right - left) / 260
    for seam in seams:
        assert area.contains(seam)
        for x, y in seam.coords:
            assert area.exterior.distance(LineString([(x, y), (x, y)])) == pytest.approx(10 * scale, abs=0.12)


def test_a_piece_without_allowance_is_cut_where_it_is_sewn():
    area, seams = drawn("shell stiffening")
    assert seams == []
    assert len(area.exterior.coords) > 12


@pytest.mark.parametrize("system", System)
def test_in_a_layout_it_lies_in_its_shape_too(system):
    """Two shells of 26 × 20 cm (10 1/4 × 7 3/4 in), their height along the cloth."""
    (drawing, *_) = draw_layouts(large().buying.purchases["A"], system)
    areas = [Polygon(s.points) for s in drawing.shapes if isinstance(s, Area) and s.ink is Ink.CLOTH]
    shells = [area for area in areas if len(area.exterior.coords) > 8]
    assert len(shells) == 2
    assert shells[0].area == pytest.approx(shells[1].area, rel=0.01)
    left, top, right, bottom = shells[0].bounds
    sides = sorted((right - left, bottom - top))
    assert sides[1] / sides[0] == pytest.approx(
        26 / 20 if system is System.METRIC else 10.25 / 7.75, rel=0.02
    )
    for one in shells:
        for other in areas:
            assert one is other or one.intersection(other).area < 0.01
    assert all(box(0, 0, drawing.width, drawing.height).contains(shell) for shell in shells)
