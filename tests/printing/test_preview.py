"""The preview picture: its size, its bytes, what stands in it; and the drawing that stands for a recipe."""

from __future__ import annotations

import io
import subprocess
import sys
from dataclasses import replace

import pytest
from PIL import Image
from printing.samples import BAG, MUG_MAT, PUBLISHER, SMALL

from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line
from presscloth.handout.tree import Booklet, Figure, StageText, StepText
from presscloth.printing.likeness import MARGIN, likeness
from presscloth.printing.look import read_look
from presscloth.printing.preview import CARD, CARD_EDGE, EDGE, preview
from presscloth.printing.raster import raster
from presscloth.printing.theme import open_theme

THEME = open_theme()
GROUND, PAPER = (0xEE, 0xF2, 0xF2), (255, 255, 255)


def with_drawings(*drawings: Drawing) -> Booklet:
    steps = tuple(
        StepText(number, SMALL.stages[0].steps[0].marks, (Figure(drawing),))
        for number, drawing in enumerate(drawings, start=1)
    )
    return Booklet((replace(MUG_MAT, stages=(StageText((), steps),)),))


def square(side: float, *more, x: float = 0.0, y: float = 0.0, ink: Ink = Ink.WRONG_SIDE) -> Drawing:
    corners = ((x, y), (x + side, y), (x + side, y + side), (x, y + side))
    return Drawing(200, 150, (Area(corners, ink, Ink.CUT), *more), alt=f"a square of {side}")


def picture(booklet: Booklet, publisher=PUBLISHER) -> Image.Image:
    return Image.open(io.BytesIO(preview(booklet, THEME, publisher))).convert("RGB")


class TestLikeness:
    def test_the_drawing_that_shows_most_and_the_later_of_equals(self):
        line = Line(((0, 0), (10, 10)), Ink.SEAM)
        drawn = likeness(with_drawings(square(10, line), square(20, line), square(30)))
        assert drawn is not None and drawn.alt == "a square of 20"

    def test_many_parts_outweigh_what_comes_later(self):
        parts = [Area(((0, 0), (n, 0), (n, 9)), Ink.CLOTH) for n in range(1, 9)]
        drawn = likeness(with_drawings(square(10, *parts), square(20), square(30)))
        assert drawn is not None and drawn.alt == "a square of 10"

    def test_a_strip_shows_less_than_a_square(self):
        strip = Drawing(200, 150, (Area(((0, 0), (90, 0), (90, 5), (0, 5)), Ink.CLOTH),), alt="a strip")
        drawn = likeness(with_drawings(square(30), strip))
        assert drawn is not None and drawn.alt == "a square of 30"

    def test_an_outline_of_its_own_shows_more_than_a_rectangle(self):
        """A gathered skirt is an apron to everybody; the later rectangle might be anything."""
        skirt = Area(((5, 0), (15, 0), (20, 20), (0, 20)), Ink.CLOTH, Ink.CUT)
        shaped = Drawing(200, 150, (skirt,), alt="a skirt")
        drawn = likeness(with_drawings(shaped, square(20)))
        assert drawn is not None and drawn.alt == "a skirt"

    def test_before_and_after_side_by_side_is_not_one_thing(self):
        after = Area(((50, 0), (60, 0), (60, 9), (50, 9)), Ink.CLOTH)
        seams = [Line(((50, n), (60, n)), Ink.SEAM) for n in range(9)]
        drawn = likeness(with_drawings(square(10), square(20, after, *seams)))
        assert drawn is not None and drawn.alt == "a square of 10"
        chained = likeness(
            with_drawings(square(10), square(20, after, *seams, Line(((15, 5), (55, 5)), Ink.SEAM)))
        )
        assert chained is not None and chained.alt == "a square of 20"

    def test_a_cloth_that_is_cut_is_no_likeness(self):
        cut = [Area(((n, 0), (n + 1, 0), (n + 1, 9)), Ink.CLOTH) for n in range(9)]
        drawn = likeness(with_drawings(square(10), square(20, *cut, ink=Ink.WASTE)))
        assert drawn is not None and drawn.alt == "a square of 10"

    def test_measures_and_names_are_left_out_and_do_not_count(self):
        letters = [
            Lettering(5, 5, "front", 3),
            Line(((0, 0), (9, 0)), Ink.DIMENSION),
            Arrow((0, 0), (5, 5), Ink.GRAIN),
        ]
        line = Line(((0, 0), (10, 10)), Ink.SEAM)
        twice = [line] * 4
        drawn = likeness(with_drawings(square(10, *twice), square(20, *letters)))
        assert drawn is not None and drawn.alt == "a square of 10"
        assert [type(shape) for shape in drawn.shapes] == [Area, *[Line] * 4]

    def test_it_is_no_larger_than_what_is_left(self):
        drawn = likeness(with_drawings(square(40, Disc(100, 90, 10, Ink.CLOTH), x=50, y=60)))
        assert drawn is not None
        assert (drawn.width, drawn.height) == (60 + 2 * MARGIN, 40 + 2 * MARGIN)
        assert drawn.shapes[0].points[0] == (MARGIN, MARGIN)
        assert (drawn.shapes[1].x, drawn.shapes[1].y) == (50 + MARGIN, 30 + MARGIN)

    def test_without_drawings_in_steps_the_largest_piece(self):
        alone = replace(SMALL, stages=(), pieces=SMALL.pieces[:3])
        drawn = likeness(Booklet((alone,)))
        assert drawn is not None and "back" in drawn.alt
        assert likeness(Booklet((replace(alone, pieces=()),))) is None


class TestRaster:
    @pytest.mark.parametrize(("width", "height"), [(200, 100), (100, 200)])
    def test_as_large_as_fits_and_in_the_middle(self, width, height):
        corners = ((0, 0), (50, 0), (50, 50), (0, 50))
        drawing = Drawing(50, 50, (Area(corners, Ink.WRONG_SIDE),), alt="")
        drawn = raster(drawing, THEME.look, width, height, "#ffffff")
        side = min(width, height)
        left, top = (width - side) // 2, (height - side) // 2
        assert drawn.size == (width, height)
        inked = [
            (x, y)
            for x in range(width)
            for y in range(height)
            if drawn.getpixel((x, y)) == (0xD5, 0xDC, 0xDD)
        ]
        assert min(inked) == (left, top) and max(inked) == (left + side - 1, top + side - 1)
        assert len(inked) == side * side

    def test_a_dashed_line_is_as_much_line_as_its_dashes(self):
        """Of each 1.8 + 1.1 mm of a seam 1.8 are drawn."""
        drawing = Drawing(290, 20, (Line(((0, 10), (290, 10)), Ink.SEAM),), alt="")
        drawn = raster(drawing, THEME.look, 2900, 200, "#ffffff").convert("L")
        dark = sum(drawn.getpixel((x, 100)) < 128 for x in range(2900))
        assert abs(dark / 2900 - 1.8 / 2.9) < 0.02

    def test_a_hatch_stays_within_its_outline(self):
        corners = ((20, 20), (80, 20), (20, 80))
        drawing = Drawing(100, 100, (Area(corners, Ink.WASTE),), alt="")
        drawn = raster(drawing, THEME.look, 300, 300, "#ffffff").convert("L")
        outside = [(x, y) for x in range(300) for y in range(300) if x < 58 or y < 58 or x + y > 303]
        assert {drawn.getpixel(place) for place in outside} == {255}
        assert sum(drawn.getpixel((x, 90)) < 250 for x in range(60, 210)) > 20

    def test_a_disc_is_round(self):
        drawn = raster(
            Drawing(20, 20, (Disc(10, 10, 9, Ink.WRONG_SIDE),), alt=""), THEME.look, 200, 200, "#ffffff"
        )
        inked = sum(drawn.getpixel((x, y)) != PAPER for x in range(200) for y in range(200))
        assert abs(inked - 3.14159 * 90 * 90) < 0.01 * 40_000


class TestPreview:
    def test_size_and_weight(self):
        content = preview(BAG, THEME, PUBLISHER)
        shown = Image.open(io.BytesIO(content))
        assert (shown.format, shown.size) == ("PNG", (1200, 630))
        assert len(content) < 60_000

    def test_the_same_bytes_in_another_process(self):
        code = (
            "import hashlib; from printing.samples import BAG, PUBLISHER;"
            "from presscloth.printing.preview import preview;"
            "from presscloth.printing.theme import open_theme;"
            "print(hashlib.sha256(preview(BAG, open_theme(), PUBLISHER)).hexdigest())"
        )
        made = {
            subprocess.run(
                [sys.executable, "-c", code],
                env={"PYTHONPATH": ":".join(sys.path), "PYTHONHASHSEED": seed, "TZ": zone, "LC_ALL": "C"},
                capture_output=True, text=True, check=True,
            ).stdout
            for seed, zone in (("1", "UTC"), ("2", "Asia/Tokyo"))
        }  # fmt: skip
        assert len(made) == 1

    def test_the_drawing_lies_on_the_card(self):
        shown = picture(with_drawings(square(30)))
        left, top, right, bottom = CARD
        middle = ((left + right) // 2, (top + bottom) // 2)
        assert shown.getpixel(middle) == (0xD5, 0xDC, 0xDD)
        assert shown.getpixel((left + CARD_EDGE // 2, middle[1])) == PAPER
        assert shown.getpixel((left - 10, middle[1])) == GROUND

    def test_without_a_drawing_there_is_no_card(self):
        shown = picture(Booklet((replace(MUG_MAT, stages=(), pieces=()),)))
        left, _, right, bottom = CARD
        assert shown.getpixel(((left + right) // 2, bottom - 20)) == GROUND

    @pytest.mark.parametrize(
        "title",
        [
            "Mat",
            "A Runner for the Long Kitchen Table with Pebbles, Tide Lines and a Border of Deep Water",
            "Long Words Everywhere Throughout Christmas Stockings",
            "Donaudampfschifffahrtsgesellschaftskapitänsmützenschirmbefestigung",
        ],
    )
    @pytest.mark.parametrize("drawn", [True, False])
    def test_words_stay_in_their_column_and_above_the_publisher(self, title, drawn):
        source = BAG if drawn else Booklet((replace(MUG_MAT, stages=(), pieces=(), finished=SMALL.finished),))
        booklet = Booklet(tuple(replace(handout, title=title) for handout in source.handouts))
        shown = picture(
            booklet, replace(PUBLISHER, name="The Sewing Room above the Old Lifeboat Shed at Tidewrack")
        )
        free = (
            [(0, EDGE - 2), (CARD[0] - 40, CARD[0] - 2)]
            if drawn
            else [(0, EDGE - 2), (1200 - EDGE + 2, 1200)]
        )
        for start, end in free:
            assert {shown.getpixel((x, y)) for x in range(start, end) for y in range(630)} == {GROUND}
        above_name = {shown.getpixel((x, y)) for x in range(EDGE, 600) for y in range(523, 533)}
        assert above_name == {GROUND}
        assert {shown.getpixel((x, y)) for x in range(EDGE, 600) for y in range(535, 566)} != {GROUND}

    def test_a_theme_that_says_nothing_of_it_has_black_on_white(self, tmp_path):
        source = THEME.file("look.yaml").read_text(encoding="utf-8")
        start = source.index("card:")
        (tmp_path / "look.yaml").write_text(
            source[:start] + source[source.index("inks:") :], encoding="utf-8"
        )
        card = read_look(tmp_path / "look.yaml").card
        assert (card.ground, card.ink, card.title, card.text) == (
            "#ffffff", "#1a2528", "Plain Seam Text", "Plain Seam Label",
        )  # fmt: skip
