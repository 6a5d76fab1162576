"""Drawings as SVG: true size, a title first, everything in attributes."""

import re
from dataclasses import replace
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from printing.making import layout_drawing

from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line
from presscloth.printing.svg import svg
from presscloth.printing.theme import open_theme

LOOK = open_theme().look
SVG = "{http://www.w3.org/2000/svg}"


def drawn(*shapes, width=100.0, height=50.0, alt="A square", widest=180.0, look=LOOK):
    return ElementTree.fromstring(svg(Drawing(width, height, shapes, alt), look, "d1", widest))


def test_one_unit_is_one_millimetre():
    root = drawn()
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("100mm", "50mm", "0 0 100 50")


def test_a_drawing_too_wide_is_scaled_as_a_whole():
    root = drawn(widest=80)
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("80mm", "40mm", "0 0 100 50")


def test_a_theme_may_enlarge_drawings_as_far_as_they_fit():
    large = replace(LOOK, drawings=replace(LOOK.drawings, scale=2.0))
    assert drawn(look=large, width=60).get("width") == "120mm"
    assert drawn(look=large, width=120).get("width") == "180mm"


def test_the_words_for_it_come_first_and_are_escaped():
    root = drawn(Line(((0, 0), (1, 1)), Ink.CUT), alt='Front & back <"sewn">')
    title = root[0]
    assert title.tag == f"{SVG}title"
    assert title.text == 'Front & back <"sewn">'
    assert root.get("aria-labelledby") == title.get("id")


def test_every_ink_looks_different_without_colour():
    """Width, dash, filling and hatch alone tell the inks apart (grey values for the fillings)."""
    looks = [(look.line, look.dash, look.fill, look.hatch) for look in LOOK.inks.values()]
    assert set(LOOK.inks) == set(Ink)
    assert len(set(looks)) == len(looks)


def test_a_line_is_drawn_in_its_ink():
    path = drawn(Line(((1, 2), (3.25, 4), (5, 6)), Ink.SEAM)).find(f"{SVG}path")
    assert path.get("d") == "M1 2L3.25 4L5 6"
    assert path.get("fill") == "none"
    assert path.get("stroke-dasharray") == "1.8 1.1"
    assert path.get("stroke-width") == "0.35"


def test_an_area_is_filled_and_then_edged():
    filled, edged = drawn(Area(((0, 0), (9, 0), (9, 9)), Ink.WRONG_SIDE, Ink.CUT)).findall(f"{SVG}path")
    assert filled.get("d") == edged.get("d") == "M0 0L9 0L9 9Z"
    assert (filled.get("fill"), filled.get("stroke")) == ("#d5dcdd", None)
    assert (edged.get("fill"), edged.get("stroke-width")) == ("none", "0.5")


def test_hatching_is_one_path_clipped_to_the_area():
    root = drawn(Area(((10, 10), (40, 10), (40, 30), (10, 30)), Ink.WASTE))
    clip = root.find(f"{SVG}clipPath")
    hatch = root.findall(f"{SVG}path")[-1]
    assert hatch.get("clip-path") == f"url(#{clip.get('id')})"
    ends = [tuple(map(float, pair.split())) for pair in re.split("[ML]", hatch.get("d")) if pair]
    assert len(ends) >= 2 * 10
    for (x1, y1), (x2, y2) in zip(ends[::2], ends[1::2], strict=True):
        assert x1 + y1 == pytest.approx(x2 + y2, abs=0.002), "the lines slant by half a right angle"
        assert all(10 <= x <= 40 for x in (x1, x2)) and all(10 <= y <= 30 for y in (y1, y2))


def test_hatch_lines_lie_as_far_apart_as_the_look_says():
    root = drawn(Area(((0, 0), (60, 0), (60, 40), (0, 40)), Ink.WASTE))
    starts = [pair.split("L")[0] for pair in root.findall(f"{SVG}path")[-1].get("d").split("M") if pair]
    totals = sorted(sum(map(float, start.split())) for start in starts)
    gaps = {round(b - a, 2) for a, b in pairwise(totals)}
    assert gaps <= {round(1.8 * 2**0.5, 2), round(1.8 * 2**0.5 - 0.01, 2), round(1.8 * 2**0.5 + 0.01, 2)}


def test_a_disc():
    circle = drawn(Disc(20, 15, 8, Ink.CLOTH)).find(f"{SVG}circle")
    assert (circle.get("cx"), circle.get("cy"), circle.get("r")) == ("20", "15", "8")


def test_an_arrow_has_a_head_at_each_wanted_end():
    one = drawn(Arrow((0, 0), (30, 0), Ink.GRAIN)).findall(f"{SVG}path")[1].get("d")
    two = drawn(Arrow((0, 0), (30, 0), Ink.GRAIN, both=True)).findall(f"{SVG}path")[1].get("d")
    assert one.count("M") == 1 and "L30 0L" in one
    assert two.count("M") == 2 and "L0 0L" in two


def test_lettering_names_its_family_and_is_escaped():
    text = drawn(Lettering(10, 20, "7 1/2 in < & >", 4, anchor="end", turned=-90, bold=True)).find(
        f"{SVG}text"
    )
    assert text.text == "7 1/2 in < & >"
    assert text.get("font-family").startswith("Plain Seam Label")
    assert (text.get("font-size"), text.get("text-anchor"), text.get("font-weight")) == ("4", "end", "600")
    assert text.get("transform") == "rotate(-90 10 20)"
    assert float(text.get("y")) == 20 + 0.35 * 4, "centred: half a capital below the point"


def test_nothing_in_a_drawing_asks_the_page_for_its_look():
    whole = svg(layout_drawing().of, LOOK, "d1", 180)
    assert not re.search(r"class=|style=|var\(|currentColor|href", whole)


def test_ids_differ_between_two_drawings_of_one_page():
    one, two = (svg(layout_drawing().of, LOOK, name, 180) for name in ("a-1", "a-2"))
    ids = [re.findall(r' id="([^"]+)"', text) for text in (one, two)]
    assert len(ids[0]) >= 2
    assert not set(ids[0]) & set(ids[1])


def test_numbers_carry_no_needless_zeros():
    path = drawn(Line(((-0.0001, 2.50), (1 / 3, 4.0)), Ink.CUT)).find(f"{SVG}path")
    assert path.get("d") == "M0 2.5L0.333 4"
