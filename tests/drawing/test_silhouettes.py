"""What is cut by an outline is drawn in its true line, where it lies and where it is sewn in."""

from __future__ import annotations

import pytest
from sewing.table import Table, sew

from presscloth.drawing.silhouettes import Place
from presscloth.drawing.steps import draw_step
from presscloth.drawing.tree import Area, Disc, Drawing, Ink, Line
from presscloth.measure import System

BOTH = (System.METRIC, System.IMPERIAL)
# Twice as wide as high, allowances taken in: the peak lies in the middle of the upper side.
OUTLINES = """\
## Outlines

### gable
- right 20 cm (8 in) and up 5 cm (2 in) as left slope
- right 20 cm (8 in) and down 5 cm (2 in) as right slope
- down 10 cm (4 in) as right
- left 40 cm (16 in) as foot
- back to the start as left

### bib
- right 20 cm (8 in) as top
- right 5 cm (2 in) and down 20 cm (8 in) as right
- left 30 cm (12 in) as bottom
- back to the start as left
"""
PIECES = """
    gable | A | 2 | | | outline |
    patch | A | 2 | 10 cm (4 in) | 5 cm (2 in) | |
    bib   | A | 1 | | | outline |
    wall  | A | 1 | finished around of gable + 2 × seam | 12 cm (4 3/4 in) | |
    """


def drawings(statements: str) -> tuple[Table, list[Drawing]]:
    table = sew(PIECES, statements, columns=" Shape | Notes |", rest=OUTLINES)
    made = table.made
    steps = sorted({event.step for event in made.events})
    found: list[Drawing] = []
    for step in steps:
        events = [event for event in made.events if event.step == step]
        found += draw_step(events, made.reckoned.amounts, BOTH)
    return table, found


def areas(drawing: Drawing) -> list[Area]:
    return [shape for shape in drawing.shapes if isinstance(shape, Area)]


def test_a_piece_with_an_outline_is_drawn_in_its_true_line():
    _, (drawing,) = drawings("attach patch to gable")
    gable, patch = areas(drawing)
    peak = min(gable.points, key=lambda point: point[1])
    left, right = (choose(x for x, _ in gable.points) for choose in (min, max))
    assert peak[0] == pytest.approx((left + right) / 2)
    assert len(gable.points) == 6
    assert len(patch.points) == 4


def test_what_has_a_side_of_an_outline_set_in_goes_back_from_it():
    table, found = drawings(
        """
        ring = join left of wall to right of wall
        bowl = set gable into top of ring
        """
    )
    assert "edges-do-not-meet" not in table.names
    drawing = found[-1]
    front = areas(drawing)[-1]
    assert (len(front.points), front.ink) == (6, Ink.CLOTH)
    # Seen is one run: the left slope, which lies flatter than the way back, the right one, the right side.
    (seen,) = areas(drawing)[:-1]
    assert seen.ink is Ink.WRONG_SIDE
    corner = max(front.points)
    assert corner in seen.points
    assert min(front.points, key=lambda point: (point[0], -point[1])) not in seen.points
    assert drawing.alt == (
        "bowl: 40 cm (16 in) wide and 15 cm (6 in) high in front, 11 cm (4 3/8 in) from front to back."
    )


def test_a_round_bottom_stays_on_the_wall_that_it_is_put_into():
    table = sew(
        """
        wall | A | 1 | 60 cm (24 in) | 8 cm (3 1/8 in) | |
        base | A | 1 | 18 cm (7 in) | | circle |
        """,
        "ring = join left of wall to right of wall\nattach base to ring",
        columns=" Shape | Notes |",
    )
    events = [event for event in table.made.events if event.step == 2]
    (drawing,) = draw_step(events, table.made.reckoned.amounts, BOTH)
    (disc,) = [shape for shape in drawing.shapes if isinstance(shape, Disc)]
    wall = areas(drawing)[0]
    assert disc.radius * 2 == pytest.approx(max(y for _, y in wall.points) - min(y for _, y in wall.points))


def test_a_place_turns_what_fills_it_clockwise():
    assert Place(0, 0, 2, 1).at(0, 0) == (0, 0)
    assert Place(0, 0, 2, 1, quarters=1).at(0, 0) == (2, 0)
    assert Place(0, 0, 2, 1, quarters=2).at(0, 0) == (2, 1)


def test_the_stitches_of_a_hem_follow_the_outline():
    _, (drawing, *_) = drawings("hem right of bib by 1 cm (3/8 in)")
    line = next(shape for shape in drawing.shapes if isinstance(shape, Line) and shape.ink is Ink.SEAM)
    (x1, y1), (x2, y2) = line.points[0], line.points[-1]
    assert (y2 - y1) / (x2 - x1) == pytest.approx(4, rel=0.1)
