"""Drawings as SVG: true size, a title first; the look in attributes on paper, in classes on the web."""

import re
from dataclasses import replace
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from printing.making import layout_drawing

from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line
from presscloth.printing.svg import drawing_styles, svg
from presscloth.printing.theme import open_theme

LOOK = open_theme().look
SVG = "{http://www.w3.org/2000/svg}"


def drawn(*shapes, width=100.0, height=50.0, alt="A square", widest=180.0, look=LOOK):
    return ElementTree.fromstring(svg(Drawing(width, height, shapes, alt), look, "d1", widest))


def on_the_web(*shapes, width=100.0, height=50.0):
    text = svg(Drawing(width, height, shapes, "A square"), LOOK, "d1", 180.0, classes=True)
    return ElementTree.fromstring(text.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1))


def places(path: str) -> list[tuple[float, float]]:
    """Every point that a path of M, l, h, v and z leads to, in order: SVG 2, 9.3."""
    found: list[tuple[float, float]] = []
    x = y = 0.0
    for letter, numbers in re.findall(r"([MmlhvzZ])([^MmlhvzZ]*)", path):
        values = [float(number) for number in re.findall(r"-?(?:[0-9]+\.?[0-9]*|\.[0-9]+)", numbers)]
        match letter:
            case "M":
                x, y = values
                found.append((x, y))
            case "m":
                x, y = x + values[0], y + values[1]
                found.append((x, y))
            case "h":
                x += values[0]
                found.append((x, y))
            case "v":
                y += values[0]
                found.append((x, y))
            case "l":
                for across, down in zip(values[::2], values[1::2], strict=True):
                    x, y = x + across, y + down
                    found.append((x, y))
    return [(round(x, 3), round(y, 3)) for x, y in found]


def square(x, y, side=10.0, ink=Ink.CLOTH, edge=Ink.CUT):
    return Area(((x, y), (x + side, y), (x + side, y + side), (x, y + side)), ink, edge)


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


def test_a_theme_may_say_how_high_a_drawing_may_become():
    low = replace(LOOK, drawings=replace(LOOK.drawings, scale=2.0, tall=60.0))
    root = drawn(look=low, width=60, height=40)
    assert (root.get("width"), root.get("height")) == ("90mm", "60mm")


def test_the_words_for_it_come_first_and_are_escaped():
    root = drawn(Line(((0, 0), (1, 1)), Ink.CUT), alt='Front & back <"sewn">')
    title = root[0]
    assert title.tag == f"{SVG}title"
    assert title.text == 'Front & back <"sewn">'
    assert root.get("role") == "img"


def test_every_ink_looks_different_without_colour():
    """Width, dash, filling and hatch alone tell the inks apart (grey values for the fillings)."""
    looks = [(look.line, look.dash, look.fill, look.hatch) for look in LOOK.inks.values()]
    assert set(LOOK.inks) == set(Ink)
    assert len(set(looks)) == len(looks)


def test_a_line_is_drawn_in_its_ink():
    path = drawn(Line(((1, 2), (3.25, 4), (5, 6)), Ink.SEAM)).find(f"{SVG}path")
    assert path.get("d") == "M1 2l2.25 2 1.75 2"
    assert places(path.get("d")) == [(1, 2), (3.25, 4), (5, 6)]
    assert path.get("fill") is None
    assert path.get("stroke-dasharray") == "1.8 1.1"
    assert path.get("stroke-width") == "0.35"


def test_an_area_is_filled_and_edged_in_one():
    root = drawn(Area(((0, 0), (9, 0), (9, 9)), Ink.WRONG_SIDE, Ink.CUT))
    (path,) = root.findall(f"{SVG}path")
    assert path.get("d") == "M0 0h9v9z"
    assert (path.get("fill"), path.get("stroke-width")) == ("#d5dcdd", "0.5")
    assert root.get("fill") == "none", "what says nothing of a filling has none"


def test_hatching_is_one_path_clipped_to_the_area():
    root = drawn(Area(((10, 10), (40, 10), (40, 30), (10, 30)), Ink.WASTE))
    clip = root.find(f"{SVG}clipPath")
    hatch = root.findall(f"{SVG}path")[-1]
    assert hatch.get("clip-path") == f"url(#{clip.get('id')})"
    ends = places(hatch.get("d"))
    assert len(ends) >= 2 * 10
    for (x1, y1), (x2, y2) in zip(ends[::2], ends[1::2], strict=True):
        assert x1 + y1 == pytest.approx(x2 + y2, abs=0.002), "the lines slant by half a right angle"
        assert all(10 <= x <= 40 for x in (x1, x2)) and all(10 <= y <= 30 for y in (y1, y2))


def test_hatch_lines_lie_as_far_apart_as_the_look_says():
    root = drawn(Area(((0, 0), (60, 0), (60, 40), (0, 40)), Ink.WASTE))
    starts = places(root.findall(f"{SVG}path")[-1].get("d"))[::2]
    totals = sorted(map(sum, starts))
    gaps = {round(b - a, 2) for a, b in pairwise(totals)}
    assert gaps <= {round(1.8 * 2**0.5, 2), round(1.8 * 2**0.5 - 0.01, 2), round(1.8 * 2**0.5 + 0.01, 2)}


def test_a_disc():
    """Two half circles of radius 8 from the left to the right and back, about (20, 15)."""
    path = drawn(Disc(20, 15, 8, Ink.CLOTH)).find(f"{SVG}path")
    assert path.get("d") == "M12 15a8 8 0 1 0 16 0a8 8 0 1 0 -16 0z"


def test_an_arrow_has_a_head_at_each_wanted_end():
    (one,) = drawn(Arrow((0, 0), (30, 0), Ink.GRAIN)).findall(f"{SVG}path")
    (two,) = drawn(Arrow((0, 0), (30, 0), Ink.GRAIN, both=True)).findall(f"{SVG}path")
    assert places(one.get("d"))[:2] == [(0, 0), (30, 0)]
    assert one.get("d").count("m") == 1 and places(one.get("d"))[3] == (30, 0)
    assert two.get("d").count("m") == 2 and places(two.get("d"))[6] == (0, 0)


def test_lettering_names_its_family_and_is_escaped():
    text = drawn(Lettering(10, 20, "7 1/2 in < & >", 4, anchor="end", turned=-90, bold=True)).find(
        f"{SVG}text"
    )
    assert text.text == "7 1/2 in < & >"
    assert text.get("fill") == LOOK.lettering.colour
    assert (text.get("font-size"), text.get("text-anchor"), text.get("font-weight")) == ("4", "end", "600")
    assert text.get("transform") == "rotate(-90 10 20)"
    assert float(text.get("y")) == 20 + 0.35 * 4, "centred: half a capital below the point"


def test_nothing_in_a_drawing_asks_the_page_for_its_look():
    whole = svg(layout_drawing().of, LOOK, "d1", 180)
    assert not re.search(r"class=|style=|var\(|currentColor|href", whole)
    assert 'font-family="Plain Seam Label, ' in whole


def test_ids_differ_between_two_drawings_of_one_page():
    one, two = (svg(layout_drawing().of, LOOK, name, 180) for name in ("a-1", "a-2"))
    ids = [re.findall(r' id="([^"]+)"', text) for text in (one, two)]
    assert len(ids[0]) >= 1
    assert not set(ids[0]) & set(ids[1])


def test_numbers_carry_no_needless_zeros():
    path = drawn(Line(((-0.0001, 2.50), (1 / 3, 4.0)), Ink.CUT)).find(f"{SVG}path")
    assert path.get("d") == "M0 2.5l.333 1.5"


# -- marks that are joined -------------------------------------------------------------------------


def test_patches_that_lie_beside_each_other_become_one_path():
    patches = [square(x, y) for y in (0, 10, 20) for x in (0, 10, 20)]
    (path,) = drawn(*patches).findall(f"{SVG}path")
    assert path.get("d").count("M") == path.get("d").count("z") == 9


def test_a_patch_over_another_is_drawn_over_it():
    root = drawn(square(0, 0), square(5, 0))
    assert [path.get("d") for path in root.findall(f"{SVG}path")] == ["M0 0h10v10h-10z", "M5 0h10v10h-10z"]


def test_a_mark_passes_only_what_it_does_not_touch():
    """White, grey, white: the second white joins the first unless it lies over the grey."""
    aside = drawn(square(0, 0), square(20, 0, ink=Ink.WRONG_SIDE), square(40, 0))
    over = drawn(square(0, 0), square(20, 0, ink=Ink.WRONG_SIDE), square(25, 0))
    assert [path.get("fill") for path in aside.findall(f"{SVG}path")] == ["#ffffff", "#d5dcdd"]
    assert [path.get("fill") for path in over.findall(f"{SVG}path")] == ["#ffffff", "#d5dcdd", "#ffffff"]


def test_a_patch_does_not_slip_under_words():
    root = drawn(square(0, 0), Lettering(5, 5, "a", 3), square(4, 4, side=2), square(30, 0))
    kinds = [child.tag.removeprefix(SVG) for child in root if child.tag != f"{SVG}title"]
    assert kinds == ["path", "text", "path"]
    assert root.findall(f"{SVG}path")[1].get("d") == "M4 4h2v2h-2zM30 0h10v10h-10z"


def test_words_that_look_alike_say_it_once():
    group = drawn(Lettering(5, 5, "one", 3), Lettering(50, 5, "two", 3)).find(f"{SVG}g")
    assert group.get("font-size") == "3"
    assert [text.text for text in group] == ["one", "two"]


# -- on the web ------------------------------------------------------------------------------------


def test_on_the_web_the_look_is_in_classes_and_the_theme_has_their_rules():
    root = on_the_web(square(0, 0, ink=Ink.WRONG_SIDE), Line(((0, 0), (1, 1)), Ink.SEAM))
    assert [path.get("class") for path in root.findall(f"{SVG}path")] == ["wrong-side cut", "seam"]
    assert not [name for child in root.iter() for name in child.attrib if name in ("fill", "stroke")]
    rules = drawing_styles(LOOK)
    assert ".drawing .wrong-side { fill: #d5dcdd }" in rules
    assert ".drawing .seam { stroke: #1a2528; stroke-width: 0.35; stroke-dasharray: 1.8 1.1 }" in rules
    for ink in Ink:
        assert f".drawing .{ink.value.replace(' ', '-')} {{" in rules


def test_on_the_web_a_hatch_is_one_line_repeated():
    root = on_the_web(square(10, 10, ink=Ink.WASTE, edge=None))
    pattern, path = root.find(f"{SVG}pattern"), root.findall(f"{SVG}path")[-1]
    assert (pattern.get("width"), pattern.get("patternTransform")) == ("1.8", "rotate(45)")
    assert path.get("fill") == f"url(#{pattern.get('id')})"
    assert path.get("d") == "M10 10h10v10h-10z"


def test_on_the_web_places_are_told_to_a_tenth_of_a_millimetre():
    """The way between two rounded places, so that an error does not grow from point to point."""
    path = on_the_web(Line(tuple((x * 0.14, 0.0) for x in range(11)), Ink.CUT)).find(f"{SVG}path")
    assert places(path.get("d"))[-1] == (1.4, 0)
