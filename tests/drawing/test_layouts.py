"""Cutting layouts as drawings: where things lie, and what is said of them."""

from __future__ import annotations

from cutting.shopping import only

from presscloth.drawing.layouts import draw_layouts
from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line
from presscloth.measure import System

COTTON = "A | Cotton | fabric | 100 cm (40 in) |  | 10 cm (1/8 yd) | {}"


def drawings(
    pieces: str, materials: str = COTTON.format(""), system: System = System.METRIC
) -> list[Drawing]:
    return list(draw_layouts(only(materials, pieces).buying.purchases["A"], system))


def letters(drawing: Drawing) -> str:
    """The cloth as letters, a cell for each tenth of its width: letters for pieces, dots for waste."""
    waste = next(s for s in drawing.shapes if isinstance(s, Area) and s.ink is Ink.WASTE)
    pieces = [s for s in drawing.shapes if isinstance(s, Area) and s.ink is Ink.CLOTH]
    (left, top), _, (right, bottom), _ = waste.points
    cell = (bottom - top) / 10
    rows = []
    for y in range(10):
        row = ""
        for x in range(round((right - left) / cell)):
            at = left + (x + 0.5) * cell, top + (y + 0.5) * cell
            inside = [number for number, piece in enumerate(pieces) if _holds(piece, *at)]
            row += "abcdefgh"[inside[0]] if inside else "."
        rows.append(row)
    return "\n".join(rows)


def _holds(piece: Area, x: float, y: float) -> bool:
    across, down = [p[0] for p in piece.points], [p[1] for p in piece.points]
    return min(across) < x < max(across) and min(down) < y < max(down)


def test_pieces_lie_where_the_layout_says() -> None:
    """Selvedges above and below, 100 cm apart: 60 and 40 cm side by side, 30 cm along; one end is waste."""
    (drawing,) = drawings(
        "broad | A | 1 | 60 cm (24 in) | 30 cm (12 in)\nslim | A | 1 | 40 cm (16 in) | 20 cm (8 in)"
    )
    found = letters(drawing)
    assert sorted(found.replace("\n", "")) == sorted("a" * 18 + "b" * 8 + "." * 4)
    rows = found.split("\n")
    assert rows.count("aaa") == 6 and rows.count("bb.") == 4


def test_selvedges_lie_along_the_cloth() -> None:
    (drawing,) = drawings("broad | A | 1 | 60 cm (24 in) | 30 cm (12 in)")
    selvedges = [s for s in drawing.shapes if isinstance(s, Line) and s.ink is Ink.SELVEDGE]
    waste = next(s for s in drawing.shapes if isinstance(s, Area) and s.ink is Ink.WASTE)
    assert {s.points[0][1] for s in selvedges} == {waste.points[0][1], waste.points[2][1]}
    assert all(s.points[0][1] == s.points[1][1] for s in selvedges)


def test_length_and_width_are_marked_in_each_system() -> None:
    pieces = "broad | A | 2 | 60 cm (24 in) | 30 cm (12 in)"
    (metric,), (imperial,) = drawings(pieces), drawings(pieces, system=System.IMPERIAL)
    assert {"60 cm", "100 cm"} <= words(metric)
    assert {"24 in", "40 in"} <= words(imperial)


def words(drawing: Drawing) -> set[str]:
    return {shape.text for shape in drawing.shapes if isinstance(shape, Lettering)}


def test_a_piece_bears_its_name_and_size_or_a_number() -> None:
    (drawing,) = drawings(
        "broad | A | 1 | 90 cm (36 in) | 80 cm (32 in)\nslim | A | 1 | 6 cm (2 3/8 in) | 20 cm (8 in)"
    )
    assert {"broad", "90 cm × 80 cm"} <= words(drawing)
    assert "slim" not in words(drawing)
    assert drawing.caption == "A Cotton; 2: slim 6 cm × 20 cm"


def test_cloth_that_goes_one_way_shows_it() -> None:
    piece = "broad | A | 1 | 60 cm (24 in) | 30 cm (12 in)"
    both, one = drawings(piece)[0], drawings(piece, COTTON.format("one way"))[0]
    arrows = [
        next(s for s in drawing.shapes if isinstance(s, Arrow) and s.ink is Ink.GRAIN)
        for drawing in (both, one)
    ]
    assert [arrow.both for arrow in arrows] == [True, False]
    assert "grain" in words(both) and "grain and nap, one way" in words(one)
    assert "100 cm wide, one way, lie" in one.alt


def test_squares_are_cut_into_triangles() -> None:
    (drawing,) = drawings(
        "fin | A | 3 | 20 cm (8 in) |  | half-square triangle\n"
        "kite | A | 4 | 30 cm (12 in) |  | quarter-square triangle"
    )
    cuts = [s for s in drawing.shapes if isinstance(s, Line) and s.ink is Ink.CUT]
    assert len(cuts) == 2 + 2  # two squares across once, one square across twice
    assert "2 squares of 20 cm for fin" in drawing.alt
    assert "1 square of 30 cm for kite" in drawing.alt


def test_circles_are_round() -> None:
    (drawing,) = drawings("disc | A | 3 | 30 cm (12 in) |  | circle")
    discs = [s for s in drawing.shapes if isinstance(s, Disc)]
    assert len(discs) == 3 and len({round(disc.radius, 6) for disc in discs}) == 1
    assert "3 disc, 30 cm across" in drawing.alt


def test_the_words_for_the_picture_count_what_lies_there() -> None:
    (drawing,) = drawings(
        "broad | A | 2 | 60 cm (24 in) | 30 cm (12 in)\nslim | A | 1 | 40 cm (16 in) | 20 cm (8 in)"
    )
    assert drawing.alt == (
        "Cutting layout for A Cotton: on 60 cm of cloth, 100 cm wide, lie "
        "2 broad, 60 cm × 30 cm, 1 slim, 40 cm × 20 cm."
    )


def test_equal_sheets_are_drawn_once() -> None:
    """Nine pieces, four to a sheet: two full sheets alike, and one with a single piece."""
    sheet = "A | Prints | fat quarter | 55 cm (22 in) | 46 cm (18 in) |  |"
    found = drawings("patch | A | 9 | 23 cm (9 in) | 23 cm (9 in)", sheet)
    captions = [drawing.caption.partition(";")[0] for drawing in found]
    assert captions == ["A Prints, 1 of 2, cut 2 like this", "A Prints, 2 of 2"]


def test_a_drawing_grows_so_that_a_narrow_piece_bears_its_number() -> None:
    """Strips of 4 cm on a metre of cloth would be under 2 mm wide; their number stands on every one."""
    (drawing,) = drawings("sliver | A | 5 | 20 cm (8 in) | 4 cm (1 5/8 in)")
    marks = [s for s in drawing.shapes if isinstance(s, Lettering) and s.text == "1" and s.bold]
    assert len(marks) == 5
    assert drawing.caption.endswith("1: sliver 20 cm × 4 cm")


def test_marks_of_narrow_pieces_side_by_side_are_not_read_as_one() -> None:
    """Three strips of 5 cm, alike: their marks stand at three places along them, each on its own strip."""
    (drawing,) = drawings("strip | A | 3 | 5 cm (2 in) | 60 cm (24 in)")
    marks = [shape for shape in drawing.shapes if isinstance(shape, Lettering) and shape.text == "1"]
    strips = [shape for shape in drawing.shapes if isinstance(shape, Area) and shape.ink is Ink.CLOTH]
    assert len({round(mark.x) for mark in marks}) == 3
    assert all(_holds(strip, mark.x, mark.y) for strip, mark in zip(strips, marks, strict=True))
