"""Draw what a statement makes: its parts as they lie, its seams and folds, its dimensions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import cos, radians, sin

from presscloth.drawing.arched import draw_arched, side_set_in
from presscloth.drawing.dimensions import across, both, breadth, breadth_aside, down, name_in
from presscloth.drawing.made import draw_border, draw_layers, draw_on_point
from presscloth.drawing.reals import greater, lesser, on_page
from presscloth.drawing.silhouettes import Place, only_piece, silhouette
from presscloth.drawing.tree import Area, Drawing, Ink, Lettering, Line, Shape
from presscloth.frozen import dataclass
from presscloth.measure import Quantity, System
from presscloth.sewing.construction import Event, Stood
from presscloth.sewing.measuring import measured
from presscloth.sewing.placing import Lying, Mark
from presscloth.sewing.things import Flat, Hollow, Thing
from presscloth.tongue import named, say

WIDEST, TALLEST = 62.0, 38.0
MARGIN = 1.5
OWN_WAYS = {"layer": draw_layers, "border": draw_border, "set on point": draw_on_point}
"""Verbs of which the parts lie in ways of their own."""

INKS = {Mark.SEAM: Ink.SEAM, Mark.FOLD: Ink.FOLD}


@dataclass(frozen=True, slots=True)
class _Frame:
    """Where a thing is drawn: its corner, its size on the page, and mm of the page for one mm of cloth."""

    x: float
    y: float
    width: float
    height: float
    scale: float

    def at(self, x: float, y: float) -> tuple[float, float]:
        return self.x + x * self.scale, self.y + y * self.scale


def draw_event(event: Event, systems: Sequence[System]) -> Drawing | None:
    """Draw what a statement made, where a picture tells more than its name.

    That is a flat thing whose parts lie in it, or a pouch with a depth. Dimensions are those that the
    construction gives, raw allowances included.
    """
    made = event.made
    if made is None or made.thing is None:
        return None
    own = OWN_WAYS.get(event.statement.verb)
    if own is not None:
        return own(event, systems)
    side = side_set_in(event)
    match made.thing.shape:
        case Hollow(depth=Quantity()) as hollow if side is not None:
            return draw_arched(event, hollow, side, systems)
        case Hollow(round=True, depth=Quantity()):
            return _round(made, made.thing, systems)
        case Hollow(depth=Quantity()):
            return _boxed(made, made.thing, systems)
        case Flat():
            lying = [each for each in event.lying if each.box.width > 0 and each.box.height > 0]
            return _joined(event, made, made.thing, lying, systems) if len(lying) > 1 else None
        case _:
            return None


def solid_shapes(name: str, thing: Thing, systems: Sequence[System]) -> tuple[Shape, ...] | None:
    """A thing with a depth, seen a little from above; None where it has none."""
    if not isinstance(thing.shape, Hollow) or thing.shape.depth is None:
        return None
    stood = Stood(name, 0, 1, thing, thing.rows[0]) if thing.rows else None
    if stood is None:
        return None
    made = _round(stood, thing, systems) if thing.shape.round else _boxed(stood, thing, systems)
    return None if made is None else made.shapes


def _joined(
    event: Event, made: Stood, thing: Thing, lying: Sequence[Lying], systems: Sequence[System]
) -> Drawing | None:
    width, height = (measured(thing.shape, side, finished=False) for side in ("width", "height"))
    if width is None or height is None:
        return None
    frame = _frame(width, height, lying)
    shapes: list[Shape] = []
    legend: list[str] = []
    for number, (each, after) in enumerate(zip(lying, [*lying[1:], None], strict=True), start=1):
        shapes += _part(each, after, str(number), frame, legend)
    # Names last, so that none is covered by what lies over its end.
    shapes.sort(key=lambda shape: isinstance(shape, Lettering))
    for line in event.lines:
        points = tuple(frame.at(on_page(x), on_page(y)) for x, y in (line.start, line.end))
        shapes.append(Line(points, INKS[line.mark]))
    words = both(width, systems), both(height, systems)
    bottom, right = frame.y + frame.height, frame.x + frame.width
    shapes += across(frame.x, right, bottom + 3.5, words[0])
    shapes += down(frame.y, bottom, right + 3.5, words[1])
    return Drawing(
        width=greater(
            right + 6 + breadth_aside(words[1]), frame.x + frame.width / 2 + breadth(words[0]) / 2 + 1
        ),
        height=bottom + 9,
        shapes=tuple(shapes),
        alt=_alt(made.name, lying, words),
        caption="; ".join([named(made.name), *legend]),
    )


def _alt(name: str, lying: Sequence[Lying], words: tuple[str, str]) -> str:
    parts = ", ".join(named(each.name) for each in lying)
    values = {"name": named(name), "width": words[0], "height": words[1], "parts": parts}
    return say(
        "{name}, {width} wide and {height} high, made of {parts} (as they lie, from the top left).", **values
    )


def _frame(width: Quantity, height: Quantity, lying: Sequence[Lying]) -> _Frame:
    left = lesser(0.0, *(on_page(each.box.x) for each in lying))
    top = lesser(0.0, *(on_page(each.box.y) for each in lying))
    wide = greater(on_page(width.metric), *(on_page(e.box.x + e.box.width) for e in lying)) - left
    tall = greater(on_page(height.metric), *(on_page(e.box.y + e.box.height) for e in lying)) - top
    scale = lesser(WIDEST / wide, TALLEST / tall)
    return _Frame(
        MARGIN - left * scale,
        MARGIN - top * scale,
        on_page(width.metric) * scale,
        on_page(height.metric) * scale,
        scale,
    )


def _part(each: Lying, after: Lying | None, mark: str, frame: _Frame, legend: list[str]) -> Iterator[Shape]:
    """A part as it lies, its name in what the one sewn on `after` it leaves to be seen."""
    x, y = frame.at(on_page(each.box.x), on_page(each.box.y))
    width, height = on_page(each.box.width) * frame.scale, on_page(each.box.height) * frame.scale
    piece = only_piece(each.parts)
    if piece is not None and piece.outline is not None:
        corners = silhouette(piece.outline, Place(x, y, width, height, piece.turned))
    else:
        corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
    yield Area(corners, Ink.WRONG_SIDE if each.back else Ink.CLOTH, Ink.CUT)
    if after is not None and after.box.x > each.box.x:
        width = lesser(width, on_page(after.box.x - each.box.x) * frame.scale)
    elif after is not None and after.box.y > each.box.y:
        height = lesser(height, on_page(after.box.y - each.box.y) * frame.scale)
    name, told = name_in(named(each.name), mark, x, y, width, height)
    yield name
    if not told:
        legend.append(f"{mark} {named(each.name)}")


def _boxed(made: Stood, thing: Thing, systems: Sequence[System]) -> Drawing | None:
    """A pouch with a depth, seen a little from above: front, base going back, dimensions."""
    sides = [measured(thing.shape, side, finished=False) for side in ("width", "height", "depth")]
    width, height, depth = sides
    if width is None or height is None or depth is None:
        return None
    back = 0.45
    wide = on_page(width.metric) + back * on_page(depth.metric)
    tall = on_page(height.metric) + back * on_page(depth.metric)
    scale = lesser(46.0 / wide, 36.0 / tall)
    w, h, d = (on_page(side.metric) * scale for side in (width, height, depth))
    shift = back * d
    x, y = MARGIN, MARGIN + shift
    front = ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
    side = ((x + w, y), (x + w + shift, y - shift), (x + w + shift, y + h - shift), (x + w, y + h))
    rim = ((x, y), (x + shift, y - shift), (x + w + shift, y - shift), (x + w, y))
    words = [both(each, systems) for each in (width, height, depth)]
    deep = say("depth {depth}", depth=words[2])
    shapes: list[Shape] = [
        Area(side, Ink.WRONG_SIDE, Ink.CUT),
        Area(rim, Ink.WRONG_SIDE, Ink.CUT),
        Area(front, Ink.CLOTH, Ink.CUT),
        Line(((x + w / 2, y), (x + w / 2, y + h)), Ink.HIDDEN)
        if h > 2 * w
        else _name(named(made.name), x, y, w, h),
        *across(x, x + w, y + h + 3.5, words[0]),
        *down(y - shift, y + h - shift, x + w + shift + 3.0, words[1]),
        Lettering(x + w + shift / 2 + 2.0, y + h - shift / 2 + 4.0, deep, 2.9, anchor="start"),
    ]
    return Drawing(
        width=x + w + shift + 6 + greater(breadth_aside(words[1]), breadth(deep)),
        height=y + h + 9,
        shapes=tuple(shapes),
        alt=say(
            "{name} with boxed corners: {width} wide, {height} high, {depth} deep.",
            name=named(made.name),
            width=words[0],
            height=words[1],
            depth=words[2],
        ),
        caption=named(made.name),
    )


def _name(words: str, x: float, y: float, width: float, height: float) -> Shape:
    return name_in(named(words), "", x, y, width, height)[0]


def _round(made: Stood, thing: Thing, systems: Sequence[System]) -> Drawing | None:
    """A round thing with a wall, seen a little from above: diameter and height."""
    diameter = measured(thing.shape, "width", finished=False)
    height = measured(thing.shape, "height", finished=False)
    if diameter is None or height is None:
        return None
    flat = 0.28
    scale = lesser(46.0 / on_page(diameter.metric), 38.0 / on_page(height.metric + diameter.metric))
    w, h = on_page(diameter.metric) * scale, on_page(height.metric) * scale
    depth = flat * w / 2
    x, y = MARGIN, MARGIN + depth
    rim = _ellipse(x + w / 2, y, w / 2, depth, 0.0, 360.0)
    below = _ellipse(x + w / 2, y + h, w / 2, depth, 0.0, 180.0)
    words = both(diameter, systems), both(height, systems)
    wall = ((x, y), *reversed(below), (x + w, y), *_ellipse(x + w / 2, y, w / 2, depth, 0.0, 180.0))
    shapes: list[Shape] = [
        Area(wall, Ink.CLOTH, Ink.CUT),
        Area(rim, Ink.WRONG_SIDE, Ink.CUT),
        _name(made.name, x, y + depth, w, h),
        *across(x, x + w, y + h + depth + 3.5, words[0]),
        *down(y, y + h, x + w + 3.5, words[1]),
    ]
    return Drawing(
        width=greater(x + w + 6 + breadth_aside(words[1]), x + w / 2 + breadth(words[0]) / 2 + 1),
        height=y + h + depth + 9,
        shapes=tuple(shapes),
        alt=say(
            "{name}, round: {width} across and {height} high.",
            name=named(made.name),
            width=words[0],
            height=words[1],
        ),
        caption=named(made.name),
    )


def _ellipse(
    x: float, y: float, across: float, down: float, first: float, last: float
) -> tuple[tuple[float, float], ...]:
    """Points along an ellipse, from one angle to another in degrees, clockwise from the right."""
    steps = 36
    angles = (radians(first + (last - first) * i / steps) for i in range(steps + 1))
    return tuple((x + across * cos(angle), y + down * sin(angle)) for angle in angles)
