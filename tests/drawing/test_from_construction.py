"""Drawings are made from the construction and say the same numbers."""

from __future__ import annotations

from pathlib import Path

import pytest

from presscloth.drawing.dimensions import LETTERS, across, breadth, name_in
from presscloth.drawing.pieces import ROOM, draw_pieces
from presscloth.drawing.things import draw_event
from presscloth.drawing.tree import Area, Arrow, Drawing, Ink, Lettering, Line
from presscloth.measure import System
from presscloth.pipeline import Proved, prove_source
from presscloth.problems import Problems
from presscloth.source import Source

BOTH = (System.METRIC, System.IMPERIAL)

RECIPE = """\
---
title: Two Strips
release: 2027-04
written in: metric
language: en
---

## Measures

- seam = 1 cm (3/8 in)

## Materials

| Key | Material | Form    | Width          | Sold by        |
|-----|----------|---------|----------------|----------------|
| A   | Cotton   | fabric  | 110 cm (43 in) | 10 cm (1/8 yd) |
| B   | Wadding  | wadding | 110 cm (43 in) | 10 cm (1/8 yd) |

## Pieces

| Piece   | From | Cut | Width         | Height        | Grain  |
|---------|------|-----|---------------|---------------|--------|
| head    | A    | 1   | 33 cm (13 in) | 13 cm (5 in)  |        |
| foot    | A    | 1   | 33 cm (13 in) | 23 cm (9 in)  | across |
| lining  | A    | 1   | 33 cm (13 in) | 34 cm (13 1/4 in) | any |
| wadding | B    | 1   | 33 cm (13 in) | 34 cm (13 1/4 in) | any |

## Steps

1. Join.

   ```sew
   front = join bottom of head to top of foot
   ```

2. Layer and bag out.

   ```sew
   sandwich = layer wadding, front
   mat = bag out sandwich with lining, top open
   hem top of mat by seam
   finish mat
   ```
"""


@pytest.fixture(scope="module")
def proved() -> Proved:
    return prove_source(Source("two-strips.md", RECIPE), Path("two-strips.md"), Problems())


@pytest.fixture(scope="module")
def front(proved: Proved) -> Drawing:
    event = next(e for e in proved.sizes[0].construction.events if e.made and e.made.name == "front")
    drawing = draw_event(event, BOTH)
    assert drawing is not None
    return drawing


def words(drawing: Drawing) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, Lettering)]


def test_a_joined_thing_has_its_parts_its_seam_and_its_dimensions(front: Drawing) -> None:
    # 13 + 23 - 2 = 34 cm; 5 + 9 - 3/4 = 13 1/4 in.
    assert words(front) == ["head", "foot", "33 cm (13 in)", "34 cm", "(13 1/4 in)"]
    assert front.alt == (
        "front, 33 cm (13 in) wide and 34 cm (13 1/4 in) high, made of head, foot (as they lie, from the top "
        "left)."
    )
    assert [shape.ink for shape in front.shapes if isinstance(shape, Line)].count(Ink.SEAM) == 1


def test_it_is_drawn_to_scale(front: Drawing) -> None:
    heads = [shape for shape in front.shapes if isinstance(shape, Area)]
    heights = [max(y for _, y in area.points) - min(y for _, y in area.points) for area in heads]
    assert heights[0] / heights[1] == pytest.approx(13 / 23)


def test_nothing_lies_outside(front: Drawing) -> None:
    for shape in front.shapes:
        points = shape.points if isinstance(shape, (Area, Line)) else ()
        assert all(0 <= x <= front.width and 0 <= y <= front.height for x, y in points)


def test_lettering_can_be_read(front: Drawing) -> None:
    """Capitals of 2.9 mm in print are about 8 point type (common practice, no source)."""
    sizes = [shape.size for shape in front.shapes if isinstance(shape, Lettering)]
    assert min(sizes) == LETTERS >= 2.8


def test_pieces_say_letter_number_and_both_sizes(proved: Proved) -> None:
    drawings = draw_pieces(proved.sizes[0].edition.pieces, BOTH)
    told = [text for drawing in drawings for text in words(drawing)]
    assert told[:4] == ["A · head", "cut 1", "33 cm × 13 cm", "13 in × 5 in"]
    assert all(drawing.width <= ROOM + 2 for drawing in drawings)
    assert "A · head; A · foot" in drawings[0].alt, "their sizes stand in the cutting list"


def test_the_grain_arrow_lies_as_the_grain(proved: Proved) -> None:
    head, foot, *_ = proved.sizes[0].edition.pieces
    arrows = [
        shape
        for piece in (head, foot)
        for drawing in draw_pieces((piece,), BOTH)
        for shape in drawing.shapes
        if isinstance(shape, Arrow)
    ]
    along, across = arrows
    assert along.start[0] == along.end[0] and along.start[1] != along.end[1]
    assert across.start[1] == across.end[1] and across.start[0] != across.end[0]


def test_a_name_that_does_not_fit_becomes_a_mark() -> None:
    shape, there = name_in("side strip", "3", 0, 0, 40, 10)
    assert there and isinstance(shape, Lettering) and (shape.text, shape.turned) == ("side strip", 0.0)
    shape, there = name_in("side strip", "3", 0, 0, 6, 40)
    assert there and isinstance(shape, Lettering) and shape.turned == -90.0
    shape, there = name_in("side strip", "3", 0, 0, 6, 6)
    assert not there and isinstance(shape, Lettering) and shape.text == "3"


def test_words_of_a_narrow_dimension_stay_on_the_drawing() -> None:
    (words,) = (
        shape for shape in across(1.5, 6.5, 10.0, "3.5 cm (1 3/8 in)") if isinstance(shape, Lettering)
    )
    assert words.x - breadth(words.text) / 2 == pytest.approx(0.5)
    (words,) = (
        shape for shape in across(1.5, 91.5, 10.0, "3.5 cm (1 3/8 in)") if isinstance(shape, Lettering)
    )
    assert words.x == pytest.approx(46.5)
