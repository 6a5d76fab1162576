"""Templates cut into sheets: as few as do, none empty, words and squares where there is room."""

from __future__ import annotations

from dataclasses import replace

import pytest
from shapely import LineString, box

from presscloth.dev import scaffold
from presscloth.drawing.clipping import Frame
from presscloth.drawing.room import Room
from presscloth.drawing.sheets import TILE_HEIGHT, TILE_WIDTH, Plane, on_sheets
from presscloth.drawing.templates import draw_templates
from presscloth.drawing.tree import Arrow, Ink, Lettering, Line
from presscloth.edition import CutPiece, make_edition
from presscloth.measure import System
from presscloth.problems import Problems
from presscloth.recipe.read import read
from presscloth.recipe.tree import Grain
from presscloth.sewing.proving import unasked
from presscloth.sewing.verbs import forms
from presscloth.source import Source


def plane(*corners: tuple[float, float]) -> Plane:
    return Plane(
        "cloth", ("cloth", "cut 1 from A"), corners, (Line((*corners, corners[0]), Ink.CUT),), (), 0.0
    )


def block(wide: float, high: float) -> Plane:
    return plane((0, 0), (wide, 0), (wide, high), (0, high))


def pieces_of(*runs: str) -> tuple[CutPiece, ...]:
    listed = "\n".join(f"- {run}" for run in runs)
    table = "| Piece | From | Cut | Shape |\n|---|---|---|---|\n| cloth | A | 1 | outline |"
    text = scaffold.complete(f"## Outlines\n\n### cloth\n{listed}\n\n## Pieces\n{table}\n")
    problems = Problems()
    recipe = read(Source("recipe.md", text), slug="r", folder=None, verbs=forms(), problems=problems)
    pieces = make_edition(recipe, recipe.sizes[0], problems, unasked).pieces
    assert problems.found() == ()
    return pieces


@pytest.mark.parametrize(
    ("wide", "high", "places"),
    [
        # Tiles of 188 × 248 mm that overlap by 12: one reaches 186 × 246, two 362 × 482, three 538.
        (186, 246, [(0, 0)]),
        (187, 246, [(0, 0), (0, 1)]),
        (186, 247, [(0, 0), (1, 0)]),
        (362, 482, [(0, 0), (0, 1), (1, 0), (1, 1)]),
        (363, 100, [(0, 0), (0, 1), (0, 2)]),
    ],
)
def test_as_many_sheets_as_it_takes(wide, high, places):
    sheets = on_sheets(block(wide, high))
    assert [(sheet.row, sheet.column) for sheet in sheets] == places
    assert [(sheet.number, sheet.of) for sheet in sheets] == [
        (i, len(places)) for i in range(1, len(places) + 1)
    ]


def test_a_sheet_that_would_hold_nothing_is_left_out():
    """An L of 50 cm by 60 cm: the upper right of 3 × 3 tiles stays empty."""
    ell = plane((0, 0), (120, 0), (120, 500), (500, 500), (500, 620), (0, 620))
    places = [(sheet.row, sheet.column) for sheet in on_sheets(ell)]
    assert places == [(0, 0), (1, 0), (2, 0), (2, 1), (2, 2)]


def test_a_template_is_turned_where_that_takes_fewer_sheets():
    """24 × 17 cm, seams included, does not fit the tile upright; turned it is one sheet, its grain level."""
    pieces = pieces_of(
        "right 22 cm (8 5/8 in) as top", "down 15 cm (5 7/8 in) as right", "left 22 cm (8 5/8 in) as bottom",
        "back to the start as left",
    )  # fmt: skip
    (sheet,) = draw_templates(pieces, "Plain Cloth", System.METRIC)
    (line,) = [s for s in sheet.drawing.shapes if isinstance(s, Line) and s.ink is Ink.CUT]
    left, top, right, bottom = LineString(line.points).bounds
    assert (right - left, bottom - top) == pytest.approx((170, 240))
    (arrow,) = [s for s in sheet.drawing.shapes if isinstance(s, Arrow)]
    assert arrow.start[1] == pytest.approx(arrow.end[1]) and arrow.both


def test_a_piece_that_may_lie_anyhow_has_no_grain_arrow():
    (piece,) = pieces_of(
        "right 12 cm (4 3/4 in) as top, arched by 3 cm (1 1/8 in)", "back to the start as foot"
    )
    (sheet,) = draw_templates((replace(piece, grain=Grain.ANY),), "Plain Cloth", System.METRIC)
    assert not [s for s in sheet.drawing.shapes if isinstance(s, Arrow)]


def test_squares_keep_clear_of_lines_where_there_is_room():
    for sheet in on_sheets(block(300, 400)):
        shapes = sheet.drawing.shapes
        cut = [LineString(s.points) for s in shapes if isinstance(s, Line) and s.ink is Ink.CUT]
        squares = [
            box(*LineString(s.points).bounds)
            for s in shapes
            if isinstance(s, Line) and s.ink is Ink.DIMENSION and len(s.points) == 5
        ]
        assert len(squares) == 2
        assert not squares[0].intersects(squares[1])
        assert not any(square.intersects(line) for square in squares for line in cut)


def test_everything_lies_on_its_sheet():
    for sheet in on_sheets(block(300, 400)):
        for shape in sheet.drawing.shapes:
            if isinstance(shape, Line):
                for x, y in shape.points:
                    assert -1e-9 <= x <= TILE_WIDTH + 1e-9 and -1e-9 <= y <= TILE_HEIGHT + 1e-9


def test_words_stand_once_and_inside_the_piece():
    sheets = on_sheets(block(300, 400))
    where = [
        (sheet.number, s.x, s.y)
        for sheet in sheets
        for s in sheet.drawing.shapes
        if isinstance(s, Lettering) and s.text == "cut 1 from A"
    ]
    assert len(where) == 1


def test_the_alternative_words_tell_the_whole_sheet():
    first, second = on_sheets(block(187, 100))
    assert first.drawing.alt == (
        "Template of cloth at full size, sheet 1 of 2, with a test square of 5 cm and one of 2 in."
    )
    assert "sheet 2 of 2" in second.drawing.alt


@pytest.mark.parametrize("way", ["right", "left"])
def test_the_words_at_the_fold_stand_inside_the_half(way):
    other = {"right": "left", "left": "right"}[way]
    pieces = pieces_of(
        f"{way} 8 cm (3 1/8 in) as top",
        "down 15 cm (5 7/8 in) as edge",
        f"{other} to the fold as foot",
        "on the fold",
    )
    (sheet,) = draw_templates(pieces, "Plain Cloth", System.METRIC)
    (fold,) = [s for s in sheet.drawing.shapes if isinstance(s, Line) and s.ink is Ink.FOLD]
    (cut, *_) = [s for s in sheet.drawing.shapes if isinstance(s, Line) and s.ink is Ink.CUT]
    words = [
        s
        for s in sheet.drawing.shapes
        if isinstance(s, Lettering) and s.text == "place on the fold" and s.turned
    ]
    (at,) = words
    left, _, right, _ = LineString(cut.points).bounds
    assert left < at.x < right
    assert abs(at.x - fold.points[0][0]) == pytest.approx(4.5)
    assert LineString(fold.points).length == pytest.approx(170)


def test_a_name_longer_than_a_sheet_has_a_place_all_the_same():
    (sheet,) = on_sheets(replace(block(150, 200), words=("a panel of the hold-all " * 4, "cut 1 from A")))
    assert [s.text for s in sheet.drawing.shapes if isinstance(s, Lettering)].count("cut 1 from A") == 1


def test_of_places_that_are_free_the_lowest_and_of_those_the_right_most_is_taken():
    room = Room(Frame(0, 0, 40, 40))
    assert room.lowest(8, 8) == Frame(30, 30, 8, 8)
    room.take_line(((38, 0), (38, 40)))
    assert room.lowest(8, 8) == Frame(26, 30, 8, 8)
    room.take_line(((0, 38), (40, 38)))
    assert room.lowest(8, 8) == Frame(26, 26, 8, 8)


def test_what_is_put_into_a_copy_of_a_room_is_not_in_the_room():
    room = Room(Frame(0, 0, 40, 40))
    room.copy().take_box(Frame(24, 24, 12, 12))
    assert room.lowest(8, 8) == Frame(30, 30, 8, 8)
    assert all(taken == 0 for taken, _, _ in room.places(8, 8))


def test_lines_beside_a_frame_take_nothing_and_lines_across_it_do():
    room = Room(Frame(100, 100, 40, 40))
    room.take_line(((90, 90), (90, 200)))
    room.take_line(((90, 150), (200, 150)))
    assert all(taken == 0 for taken, _, _ in room.places(8, 8))
    room.take_line(((90, 120), (200, 120)))
    assert max(taken for taken, _, _ in room.places(8, 8)) == 3
