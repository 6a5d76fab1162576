"""The drawing that stands for a recipe where there is room for one: in the catalogue, in a preview."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from math import sqrt

from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.handout.tree import Booklet, Figure, Handout

OWN_OUTLINE = 2.0
MARGIN = 1.0  # mm around what is drawn, for the width of its lines

Box = tuple[float, float, float, float]
"""Left, top, right, bottom."""


def shown_size(booklet: Booklet) -> Handout:
    """The size that stands for all: the first that somebody has sewn, else the first."""
    return next((handout for handout in booklet.handouts if handout.sewn), booklet.first)


def likeness(booklet: Booklet) -> Drawing | None:
    """The drawing in the steps that shows the thing best, without measures and names.

    Without one in the steps the largest piece stands for the thing; None where nothing is drawn.
    """
    handout = shown_size(booklet)
    steps = [_bare(drawing) for drawing in _in_steps(handout)]
    things = [(place, drawing) for place, drawing in enumerate(steps) if _is_one_thing(drawing)]
    if things:
        return max(things, key=lambda thing: _shows(thing[1]) * (1 + (thing[0] + 1) / len(steps)))[1]
    pieces = [_bare(figure.of) for figure in handout.pieces if isinstance(figure.of, Drawing)]
    return max(pieces, key=lambda drawing: drawing.width * drawing.height, default=None)


def _shows(drawing: Drawing) -> float:
    """How much there is to see: parts, and a little for seams; the less, the more it is a mere strip.

    A later drawing counts up to twice, being more of the whole (a judgement, no source).
    """
    squareness = min(drawing.width, drawing.height) / max(drawing.width, drawing.height)
    return sum(map(_tells, drawing.shapes)) * sqrt(squareness)


def _tells(shape: Shape) -> float:
    """A part with a slanting or curved outline tells the most: a rectangle might be anything."""
    match shape:
        case Disc():
            return OWN_OUTLINE
        case Area(points):
            level = all(x == to_x or y == to_y for (x, y), (to_x, to_y) in pairwise((*points, points[0])))
            return 1.0 if level else OWN_OUTLINE
        case _:
            return 0.25


def _is_one_thing(drawing: Drawing) -> bool:
    """Neither before and after side by side, nor a cloth that is being cut."""
    if not drawing.shapes:
        return False
    lowest = drawing.shapes[0]
    if isinstance(lowest, Area) and lowest.ink is Ink.WASTE:
        return False
    together, *apart = (_box(shape) for shape in drawing.shapes)
    while near := [box for box in apart if _touch(together, box)]:
        together = _around([together, *near])
        apart = [box for box in apart if box not in near]
    return not apart


def _in_steps(handout: Handout) -> Iterator[Drawing]:
    for stage in handout.stages:
        for step in stage.steps:
            for block in step.content:
                if isinstance(block, Figure) and isinstance(block.of, Drawing):
                    yield block.of


def _bare(drawing: Drawing) -> Drawing:
    """Without letters and dimension lines, and no larger than what is left."""
    kept = tuple(
        shape
        for shape in drawing.shapes
        if not isinstance(shape, Lettering) and shape.ink not in (Ink.DIMENSION, Ink.GRAIN)
    )
    if not kept:
        return replace(drawing, shapes=(), caption="")
    left, top, right, bottom = _around([_box(shape) for shape in kept])
    return Drawing(
        width=right - left + 2 * MARGIN,
        height=bottom - top + 2 * MARGIN,
        shapes=tuple(_moved(shape, MARGIN - left, MARGIN - top) for shape in kept),
        alt=drawing.alt,
    )


def _box(shape: Shape) -> Box:
    corners = _corners(shape)
    across, down = [x for x, _ in corners], [y for _, y in corners]
    return min(across), min(down), max(across), max(down)


def _around(boxes: list[Box]) -> Box:
    """The smallest box with all of these inside."""
    left, top, right, bottom = zip(*boxes, strict=True)
    return min(left), min(top), max(right), max(bottom)


def _touch(one: Box, other: Box) -> bool:
    across = one[0] - MARGIN <= other[2] and other[0] <= one[2] + MARGIN
    return across and one[1] - MARGIN <= other[3] and other[1] <= one[3] + MARGIN


def _corners(shape: Shape) -> tuple[tuple[float, float], ...]:
    match shape:
        case Line(points) | Area(points):
            return points
        case Disc(x, y, radius):
            return (x - radius, y - radius), (x + radius, y + radius)
        case Arrow(start, end):
            return start, end
        case Lettering(x, y):
            return ((x, y),)


def _moved(shape: Shape, across: float, down: float) -> Shape:
    def move(point: tuple[float, float]) -> tuple[float, float]:
        return point[0] + across, point[1] + down

    match shape:
        case Line() | Area():
            return replace(shape, points=tuple(map(move, shape.points)))
        case Disc() | Lettering():
            return replace(shape, x=shape.x + across, y=shape.y + down)
        case Arrow():
            return replace(shape, start=move(shape.start), end=move(shape.end))
