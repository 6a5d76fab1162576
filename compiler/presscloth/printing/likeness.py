"""The drawing that stands for a recipe where there is room for one: in the catalogue, in a preview."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.handout.tree import Booklet, Figure, Handout

MARGIN = 1.0  # mm around what is drawn, for the width of its lines


def shown_size(booklet: Booklet) -> Handout:
    """The size that stands for all: the first that somebody has sewn, else the first."""
    return next((handout for handout in booklet.handouts if handout.sewn), booklet.first)


def likeness(booklet: Booklet) -> Drawing | None:
    """The drawing in the steps that shows most, the last of several, without measures and names.

    Without one in the steps the largest piece stands for the thing; None where nothing is drawn.
    """
    handout = shown_size(booklet)
    made = [_bare(drawing) for drawing in _in_steps(handout)]
    if made:
        return max(reversed(made), key=lambda drawing: len(drawing.shapes))
    pieces = [_bare(figure.of) for figure in handout.pieces if isinstance(figure.of, Drawing)]
    return max(pieces, key=lambda drawing: drawing.width * drawing.height, default=None)


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
    corners = [corner for shape in kept for corner in _corners(shape)]
    if not corners:
        return replace(drawing, shapes=kept, caption="")
    left, top = min(x for x, _ in corners) - MARGIN, min(y for _, y in corners) - MARGIN
    return Drawing(
        width=max(x for x, _ in corners) - left + MARGIN,
        height=max(y for _, y in corners) - top + MARGIN,
        shapes=tuple(_moved(shape, -left, -top) for shape in kept),
        alt=drawing.alt,
    )


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
