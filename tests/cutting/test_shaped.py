"""Laying out pieces by their outline: the polygon covers what is cut, keeps to it, and nests."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from shapely import Polygon, affinity

from presscloth.cutting.outlines import extent
from presscloth.cutting.pieces import PER_MM, Cloth, as_cut, pieces_of
from presscloth.cutting.shaped import covering, least_area
from presscloth.dev import scaffold
from presscloth.edition import CutPiece
from presscloth.measure import System
from presscloth.outline import cutting_line
from presscloth.outline.flattening import box
from presscloth.pipeline import prove

RECIPES = Path(__file__).parents[2] / "recipes"
EVERY = [
    (slug, size, piece, system)
    for slug, size, piece in (
        ("lobster-pot-basket", "Medium", "base"),
        ("slipway-apron", "Large", "bib"),
        ("limpet-pouch", "Large", "shell"),
        ("limpet-pouch", "Small", "shell stiffening"),
    )
    for system in System
]


@cache
def piece_of(slug: str, size: str, name: str) -> CutPiece:
    sizes = {each.edition.size.name: each.edition for each in prove(RECIPES / slug / "recipe.md").sizes}
    return next(piece for piece in sizes[size].pieces if piece.name == name)


def laid(piece: CutPiece, system: System) -> tuple[Polygon, Polygon]:
    """What is laid out and what is cut, in mm, with the boxes around them in one place."""
    assert piece.outline is not None and piece.width is not None and piece.height is not None
    sides = as_cut(piece.width, system), as_cut(piece.height, system)
    points = covering(piece.outline, system, *sides)
    line = cutting_line(piece.outline[system], system)
    left, top, _, _ = box(line)
    return (
        Polygon([(x / PER_MM, y / PER_MM) for x, y in points]),
        affinity.translate(Polygon(line), -left, -top),
    )


@pytest.mark.parametrize(("slug", "size", "name", "system"), EVERY)
def test_what_is_laid_out_covers_what_is_cut(slug, size, name, system):
    polygon, cut = laid(piece_of(slug, size, name), system)
    assert polygon.is_valid
    assert cut.difference(polygon).area < 0.05  # mm²: corners to the nearest 1/80 mm


@pytest.mark.parametrize(("slug", "size", "name", "system"), EVERY)
def test_and_no_more_than_a_little_beside(slug, size, name, system):
    polygon, cut = laid(piece_of(slug, size, name), system)
    assert polygon.difference(cut.buffer(0.5, join_style=2)).area < 0.05


@pytest.mark.parametrize(("slug", "size", "name", "system"), EVERY)
def test_the_area_of_the_bound_is_never_too_large(slug, size, name, system):
    piece = piece_of(slug, size, name)
    assert piece.outline is not None
    _, cut = laid(piece, system)
    least = least_area(piece.outline, system) / PER_MM**2
    assert 0.97 * cut.area < least <= cut.area


@pytest.mark.parametrize(("slug", "size", "name", "system"), EVERY)
def test_it_fits_the_box_that_the_cutting_list_prints(slug, size, name, system):
    piece = piece_of(slug, size, name)
    assert piece.outline is not None and piece.width is not None and piece.height is not None
    sides = as_cut(piece.width, system), as_cut(piece.height, system)
    wide, high = extent(covering(piece.outline, system, *sides))
    assert wide <= sides[0] and high <= sides[1]


def test_an_outline_may_lie_upside_down_unless_the_cloth_goes_one_way():
    shell = piece_of("limpet-pouch", "Large", "shell")
    for one_way, angles in ((False, (0, 180)), (True, (0,))):
        pieces = pieces_of([(shell, 2)], Cloth(100_000, one_way, 0), System.METRIC)
        assert [outline.angles for outline in pieces.outlines] == [angles]


def test_stiffening_may_lie_anyhow():
    stiff = piece_of("limpet-pouch", "Large", "shell stiffening")
    pieces = pieces_of([(stiff, 2)], Cloth(100_000, False, 0), System.METRIC)
    assert [outline.angles for outline in pieces.outlines] == [(0, 90, 180, 270)]


WEDGE = """\
## Outlines

### gore
- right 10 cm (4 in) as top
- down 30 cm (12 in) as right
- back to the start as slope

## Pieces
| Piece | From | Cut | Shape   | Notes    |
|-------|------|-----|---------|----------|
| gore  | A    | 2   | outline | in pairs |
"""


def test_pieces_in_pairs_are_laid_out_as_one_and_its_mirrored_twin(tmp_path):
    """A right-angled wedge and its twin do not come to lie on each other by turning."""
    edition = prove(scaffold.write(WEDGE, tmp_path)).sizes[0].edition
    pieces = pieces_of([(edition.pieces[0], 2)], Cloth(100_000, False, 0), System.METRIC)
    one, twin = (Polygon(outline.points) for outline in pieces.outlines)
    assert [outline.quantity for outline in pieces.outlines] == [1, 1]
    assert one.area == pytest.approx(twin.area)
    moved = affinity.translate(affinity.scale(one, -1, 1, origin=(0, 0)), one.bounds[2], 0)
    assert moved.symmetric_difference(twin).area < 1e-6 * one.area


def test_alike_halves_need_no_twin():
    shell = piece_of("limpet-pouch", "Large", "shell")
    pieces = pieces_of([(shell, 2)], Cloth(100_000, False, 0), System.METRIC)
    assert [outline.quantity for outline in pieces.outlines] == [2]
