"""Draw what is made in ways of its own: layers, borders, squares set on point.

Sizes come from the construction, in metric millimetres drawn to scale; what only shows how things lie
(the space between layers) is not to scale, and the alt text says what is.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import isqrt

from presscloth.drawing.dimensions import LETTERS, across, both, breadth, breadth_aside, down, name_in
from presscloth.drawing.reals import greater, lesser, on_page
from presscloth.drawing.tree import Area, Drawing, Ink, Lettering, Line, Shape
from presscloth.measure import Quantity, System
from presscloth.sewing.construction import Event
from presscloth.sewing.measuring import measured
from presscloth.sewing.things import Flat, Thing, Triangle
from presscloth.tongue import named, say

MARGIN = 1.5
WIDEST, TALLEST = 64.0, 42.0


def _side(thing: Thing | None, part: str) -> Quantity | None:
    return None if thing is None else measured(thing.shape, part, finished=False)


def draw_layers(event: Event, systems: Sequence[System]) -> Drawing | None:
    """A sandwich: each layer to scale in width, slanting away; a statement names the uppermost first."""
    sizes = [(t.name, _side(t.thing, "width"), _side(t.thing, "height")) for t in event.used]
    layers = [(name, w, h) for name, w, h in sizes if w is not None and h is not None]
    if len(layers) < 2:
        return None
    widest = greater(*(on_page(w.metric) for _, w, _ in layers))
    scale = WIDEST / (widest * 1.35)
    gap, slant, rise = 11.0, 0.35, 0.30
    deepest = greater(*(on_page(h.metric) for _, _, h in layers)) * scale
    squeeze = lesser(1.0, 28.0 / deepest)
    shapes: list[Shape] = []
    bottom = MARGIN + rise * deepest * squeeze + gap * (len(layers) - 1)
    centre = MARGIN + widest * scale * 0.5
    lowest_first = list(reversed(layers))
    beside = centre + widest * scale / 2 + slant * deepest * squeeze + 3.0
    for number, (name, w, h) in enumerate(lowest_first):
        wide, deep = on_page(w.metric) * scale, on_page(h.metric) * scale * squeeze
        y = bottom - number * gap
        left = centre - wide / 2
        back_x, back_y = slant * deep, rise * deep
        corners = (
            (left, y),
            (left + wide, y),
            (left + wide + back_x, y - back_y),
            (left + back_x, y - back_y),
        )
        shapes.append(Area(corners, Ink.CLOTH if number % 2 == 0 else Ink.WRONG_SIDE, Ink.CUT))
        words = f"{named(name)}, {both(w, systems)} × {both(h, systems)}"
        shapes.append(Lettering(beside, y - back_y / 2 + 1.0, words, LETTERS, anchor="start"))
    longest = greater(
        *(breadth(f"{named(n)}, {both(w, systems)} × {both(h, systems)}") for n, w, h in layers)
    )
    made = named(event.made.name) if event.made else ""
    said = "; ".join(
        say(
            "{name}, {width} wide and {height} high",
            name=named(n),
            width=both(w, systems),
            height=both(h, systems),
        )
        for n, w, h in layers
    )
    return Drawing(
        width=beside + longest + 1,
        height=bottom + 4,
        shapes=tuple(shapes),
        alt=say("{name} in layers, from the top down: {layers}.", name=made, layers=said),
        caption=made,
    )


def draw_border(event: Event, systems: Sequence[System]) -> Drawing | None:
    """A thing with its border: inner seams, and how the corners are made."""
    made = event.made
    if made is None or not event.used:
        return None
    inner, *strips = event.used
    width, height = _side(made.thing, "width"), _side(made.thing, "height")
    inside = [_side(inner.thing, part) for part in ("width", "height")]
    if width is None or height is None or inside[0] is None or inside[1] is None:
        return None
    scale = lesser(WIDEST / on_page(width.metric), TALLEST / on_page(height.metric))
    w, h = on_page(width.metric) * scale, on_page(height.metric) * scale
    rim_x = (w - on_page(inside[0].metric) * scale) / 2
    rim_y = (h - on_page(inside[1].metric) * scale) / 2
    x, y = MARGIN, MARGIN
    outer = ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
    inner_box = (
        (x + rim_x, y + rim_y),
        (x + w - rim_x, y + rim_y),
        (x + w - rim_x, y + h - rim_y),
        (x + rim_x, y + h - rim_y),
    )
    mitred = "mitred" in event.statement.slots or event.statement.pattern.endswith("mitred")
    name, _ = name_in(named(inner.name), "", *inner_box[0], w - 2 * rim_x, h - 2 * rim_y)
    words = both(width, systems), both(height, systems)
    shapes: list[Shape] = [
        Area(outer, Ink.WRONG_SIDE, Ink.CUT),
        Area(inner_box, Ink.CLOTH),
        Line((*inner_box, inner_box[0]), Ink.SEAM),
        *_corners(outer, inner_box, mitred=mitred),
        name,
        *across(x, x + w, y + h + 3.5, words[0]),
        *down(y, y + h, x + w + 3.5, words[1]),
    ]
    listed = ", ".join(dict.fromkeys(named(strip.name) for strip in strips))
    how = say("mitred corners") if mitred else say("sides first, then top and bottom")
    return Drawing(
        width=x + w + 6 + breadth_aside(words[1]),
        height=y + h + 9,
        shapes=tuple(shapes),
        alt=say(
            "{name}, {width} wide and {height} high: {inner} with a border of {strips}, {how}.",
            name=named(made.name),
            width=words[0],
            height=words[1],
            inner=named(inner.name),
            strips=listed,
            how=how,
        ),
        caption=say(
            "{name}: {strips} around {inner}, {how}",
            name=named(made.name),
            strips=listed,
            inner=named(inner.name),
            how=how,
        ),
    )


Box = tuple[tuple[float, float], tuple[float, float], tuple[float, float], tuple[float, float]]


def _corners(outer: Box, inner: Box, *, mitred: bool) -> Iterator[Shape]:
    if mitred:
        for corner, point in zip(outer, inner, strict=True):
            yield Line((corner, point), Ink.SEAM)
        return
    left, right = outer[0][0], outer[1][0]
    for _, y in (inner[0], inner[2]):
        yield Line(((left, y), (inner[0][0], y)), Ink.SEAM)
        yield Line(((inner[1][0], y), (right, y)), Ink.SEAM)


def draw_on_point(event: Event, systems: Sequence[System]) -> Drawing | None:
    """Squares on point: rows and columns, the squares between them, the triangles around.

    r × c squares, (r − 1)(c − 1) between them and 2 (r + c − 2) setting triangles give both (geometry).
    """
    made = event.made
    width, height = (_side(made.thing if made else None, part) for part in ("width", "height"))
    if made is None or width is None or height is None or len(event.used) < 2:
        return None
    squares = [taken for taken in event.used if isinstance(taken.thing.shape, Flat)]
    grid = _grid(event, made.count, wide=width.metric >= height.metric)
    if grid is None:
        return None
    rows, columns = grid
    first, between = squares[0], squares[min(1, len(squares) - 1)]
    half = min(WIDEST / (2 * columns), TALLEST / (2 * rows))
    x, y = MARGIN, MARGIN
    w, h = 2 * half * columns, 2 * half * rows
    outer = ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
    shapes: list[Shape] = [Area(outer, Ink.WRONG_SIDE, Ink.CUT)]
    for row in range(rows):
        for column in range(columns):
            shapes.append(_diamond(x + (2 * column + 1) * half, y + (2 * row + 1) * half, half, Ink.CLOTH))
    for row in range(1, rows):
        for column in range(1, columns):
            shapes.append(_diamond(x + 2 * column * half, y + 2 * row * half, half, Ink.WASTE))
    words = both(width, systems), both(height, systems)
    shapes += across(x, x + w, y + h + 3.5, words[0])
    shapes += down(y, y + h, x + w + 3.5, words[1])
    return Drawing(
        width=x + w + 6 + breadth_aside(words[1]),
        height=y + h + 9,
        shapes=tuple(shapes),
        alt=say(
            "{name}, {width} wide and {height} high: {columns} {first} across and {rows} down, set on point, "
            "{number} {between} between them (hatched), triangles around.",
            name=named(made.name),
            width=words[0],
            height=words[1],
            columns=columns,
            first=named(first.name),
            rows=rows,
            number=(rows - 1) * (columns - 1),
            between=named(between.name),
        ),
        caption=say("{name}; hatched: {between}", name=named(made.name), between=named(between.name)),
    )


def _grid(event: Event, made: int, *, wide: bool) -> tuple[int, int] | None:
    """Rows and columns from the numbers of squares and of setting triangles, 2 (r + c − 2) of them."""
    squares = sum(t.count for t in event.used if isinstance(t.thing.shape, Flat)) // made
    shapes = ((t.thing.shape, t.count) for t in event.used)
    settings = sum(n for shape, n in shapes if isinstance(shape, Triangle) and shape.quarter) // made
    both_ways = settings // 2 + 2
    rest = both_ways**2 - 2 * (squares + both_ways - 1)
    if rest < 0 or isqrt(rest) ** 2 != rest:
        return None
    more, fewer = (both_ways + isqrt(rest)) // 2, (both_ways - isqrt(rest)) // 2
    return (fewer, more) if wide else (more, fewer)


def _diamond(x: float, y: float, half: float, ink: Ink) -> Shape:
    return Area(((x, y - half), (x + half, y), (x, y + half), (x - half, y)), ink, Ink.SEAM)
