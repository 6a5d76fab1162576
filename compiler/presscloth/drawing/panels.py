"""Panels: parts of a drawing that stand beside each other, each with its own extent."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from presscloth.drawing.dimensions import LETTERS, breadth
from presscloth.drawing.reals import greater, lesser
from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Lettering, Line, Shape
from presscloth.frozen import dataclass

GAP = 9.0
WIDEST = 148.0
"""Panels go beside each other up to this width in mm, that of a drawing in a step; then below."""

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Panel:
    """Shapes with their extent, all coordinates from its upper left corner, in mm of the page."""

    width: float
    height: float
    shapes: tuple[Shape, ...]


def panel(shapes: Iterable[Shape], margin: float = 1.5) -> Panel:
    """Shapes moved to the upper left corner, and how far they reach, their words included."""
    found = tuple(shapes)
    boxes = [_box(shape) for shape in found]
    left, top = (lesser(*(box[i] for box in boxes)) - margin for i in (0, 1))
    right, bottom = (greater(*(box[i] for box in boxes)) + margin for i in (2, 3))
    return Panel(right - left, bottom - top, tuple(moved(shape, -left, -top) for shape in found))


def beside(panels: Sequence[Panel], alt: str, caption: str) -> Drawing:
    """One drawing of several panels."""
    shapes: list[Shape] = []
    x = y = row_height = width = 0.0
    for each in panels:
        if x and x + each.width > WIDEST:
            x, y, row_height = 0.0, y + row_height + GAP / 2, 0.0
        shapes += [moved(shape, x, y) for shape in each.shapes]
        width, row_height = greater(width, x + each.width), greater(row_height, each.height)
        x += each.width + GAP
    return Drawing(width, y + row_height, tuple(shapes), alt, caption)


def moved(shape: Shape, x: float, y: float) -> Shape:
    match shape:
        case Line(points=points) | Area(points=points):
            return replace(shape, points=tuple((px + x, py + y) for px, py in points))
        case Disc() | Lettering():
            return replace(shape, x=shape.x + x, y=shape.y + y)
        case Arrow(start=start, end=end):
            return replace(shape, start=(start[0] + x, start[1] + y), end=(end[0] + x, end[1] + y))


def _box(shape: Shape) -> tuple[float, float, float, float]:
    match shape:
        case Line(points=points) | Area(points=points):
            xs, ys = [x for x, _ in points], [y for _, y in points]
            return lesser(*xs), lesser(*ys), greater(*xs), greater(*ys)
        case Disc(x=x, y=y, radius=radius):
            return x - radius, y - radius, x + radius, y + radius
        case Arrow(start=start, end=end):
            return (
                lesser(start[0], end[0]),
                lesser(start[1], end[1]),
                greater(start[0], end[0]),
                greater(start[1], end[1]),
            )
        case Lettering():
            return _words_box(shape)


def _words_box(words: Lettering) -> tuple[float, float, float, float]:
    """The box of words; `y` is the middle of their height, as they are written."""
    long, high = breadth(words.text), LETTERS
    if words.turned:
        return words.x - high, words.y - long / 2, words.x + high / 2, words.y + long / 2
    start = {"start": 0.0, "middle": -long / 2, "end": -long}[words.anchor]
    return words.x + start, words.y - high, words.x + start + long, words.y + high / 2


def corners(x: float, y: float, width: float, height: float) -> tuple[Point, Point, Point, Point]:
    """The corners of a rectangle, clockwise from the upper left."""
    return (x, y), (x + width, y), (x + width, y + height), (x, y + height)


def closed(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """A run of points that comes back to where it began."""
    return (*points, points[0])
