"""What is trimmed, cut up, or paired and cut: what is left, what falls off, where the blade goes."""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.drawing.deeds import Deed, side, size
from presscloth.drawing.dimensions import across, down
from presscloth.drawing.faces import Face, drawn, face_of, named_inside, sized, titled, told_size
from presscloth.drawing.panels import Point, beside, corners, panel
from presscloth.drawing.reals import lesser, on_page
from presscloth.drawing.tree import Area, Drawing, Ink, Line, Shape
from presscloth.measure import Quantity
from presscloth.sewing.construction import Taken
from presscloth.sewing.lengths import half, less
from presscloth.sewing.things import SIDES, Thing
from presscloth.tongue import named, say

SQUARE = 28.0
"""The side of a square that is paired, in mm of the page."""

HAIR = 0.001
"""In mm of the page: less than a line is wide."""


def draw_trim(deed: Deed) -> Drawing | None:
    """The piece that is left, outlined, and what falls off, hatched."""
    before, after = deed.one("thing"), deed.result
    if before is None or after is None:
        return None
    face = face_of(before.thing) or face_of(after)
    left = size(after.shape)
    if face is None or left is None:
        return None
    rooms = (face.width, face.height)
    wide, high = (lesser(on_page(q.metric) * face.scale, r) for q, r in zip(left, rooms, strict=True))
    x, y = face.x + (face.width - wide) / 2, face.y + (face.height - high) / 2
    shapes: list[Shape] = [
        *titled(face, deed.made),
        Area(face.outline, Ink.WASTE, Ink.HIDDEN),
        Area(corners(x, y, wide, high), Ink.CLOTH, Ink.CUT),
        *across(x, x + wide, face.bottom + 3.5, deed.said(left[0])),
        *down(y, y + high, face.right + 3.5, deed.said(left[1])),
    ]
    shapes += named_inside(Face(x, y, wide, high, face.scale), before.name)
    old = size(before.thing.shape)
    alt = say("{name} trimmed to {size}.", name=deed.made, size=told_size(after, deed))
    if old is not None:
        falls = [half(less(had, has)) for had, has in zip(old, left, strict=True)]
        alt = say(
            "{name}, {old}, trimmed to {size}: {side} falls off at left and right, {end} at top and bottom.",
            name=deed.made,
            old=told_size(before.thing, deed),
            size=told_size(after, deed),
            side=deed.said(falls[0]),
            end=deed.said(falls[1]),
        )
    return beside((panel(shapes),), alt, say("{name}; what falls off is hatched", name=deed.made))


def draw_cut(deed: Deed) -> Drawing | None:
    """One of the things that are cut up, with its cutting lines; what is left over is hatched."""
    whole, piece = deed.one("from"), deed.result
    one = deed.amount("width") or deed.amount("height")
    if whole is None or piece is None or one is None:
        return None
    face = face_of(whole.thing)
    if face is None:
        return None
    wide = deed.has("width")
    step = on_page(one.metric) * face.scale
    room = face.width if wide else face.height
    made = deed.event.made.count if deed.event.made else 1
    count = 0
    while count < made and step * (count + 1) <= room + HAIR:
        count += 1
    shapes: list[Shape] = [*titled(face, named(whole.name)), Area(face.outline, Ink.WASTE, Ink.CUT)]
    for i in range(count):
        at = step * i
        box = (face.x + at, face.y, step, face.height) if wide else (face.x, face.y + at, face.width, step)
        shapes.append(Area(corners(*box), Ink.CLOTH, Ink.CUT))
    shapes += drawn_seams(face, whole.thing)
    shapes += _segment_sizes(face, step, deed, whole, one, wide=wide)
    alt = say(
        "{count} {name}, {size}, cut from {whole_count} {whole}, {whole_size}.",
        count=made,
        name=deed.made,
        size=told_size(piece, deed),
        whole_count=whole.count,
        whole=named(whole.name),
        whole_size=told_size(whole.thing, deed),
    )
    return beside((panel(shapes),), alt, f"{named(whole.name)} → {made} {deed.made}")


def drawn_seams(face: Face, thing: Thing) -> Iterator[Shape]:
    """The seams alone, over what was drawn already."""
    yield from (shape for shape in drawn(face, thing) if isinstance(shape, Line))


def _segment_sizes(
    face: Face, step: float, deed: Deed, whole: Taken, one: Quantity, *, wide: bool
) -> Iterator[Shape]:
    other = side(whole.thing.shape, "height" if wide else "width")
    words = "" if other is None else deed.said(other)
    if wide:
        yield from across(face.x, face.x + step, face.bottom + 3.5, deed.said(one))
        yield from down(face.y, face.bottom, face.right + 3.5, words)
    else:
        yield from across(face.x, face.right, face.bottom + 3.5, words)
        yield from down(face.y, face.y + step, face.right + 3.5, deed.said(one))


def draw_pair(deed: Deed) -> Drawing | None:
    """Two squares with their seams and cuts, and a unit that they give."""
    first, second, unit = deed.one("first"), deed.one("second"), deed.result
    if first is None or second is None or unit is None:
        return None
    square, small = face_of(first.thing, SQUARE, SQUARE), face_of(unit, SQUARE, SQUARE)
    if square is None or small is None:
        return None
    small = face_of(unit, SQUARE * _share(unit, first.thing), SQUARE) or small
    units = _units(deed)
    shapes: list[Shape] = [
        *titled(square, named(first.name)),
        Area(square.outline, Ink.CLOTH, Ink.CUT),
        *_pair_lines(square, units),
        *sized(square, first.thing, deed),
    ]
    a, b, c, d = small.outline
    made: list[Shape] = [
        *titled(small, deed.made),
        Area((a, b, d), Ink.CLOTH, Ink.CUT),
        Area((b, c, d), Ink.WRONG_SIDE, Ink.CUT),
        Line((b, d), Ink.SEAM),
        *sized(small, unit, deed),
    ]
    alt = say(
        "{first} on {second}, {size}, sewn and cut into {units}: each {name} measures {unit_size}.",
        first=named(first.name),
        second=named(second.name),
        size=told_size(first.thing, deed),
        units=units,
        name=deed.made,
        unit_size=told_size(unit, deed),
    )
    caption = f"{named(first.name)}, {named(second.name)} → {units} {deed.made}"
    return beside((panel(shapes), panel(made)), alt, caption)


def _share(part: Thing, whole: Thing) -> float:
    one, other = size(part.shape), size(whole.shape)
    return 1.0 if one is None or other is None else on_page(one[0].metric) / on_page(other[0].metric)


def _units(deed: Deed) -> int:
    """Into how many two squares go: as many as a pair of the things that were used gives."""
    made = deed.event.made.count if deed.event.made else 2
    first = deed.one("first")
    return made // max(1, first.count) if first is not None else made


def _pair_lines(square: Face, units: int) -> Iterator[Shape]:
    """Seams and cuts: beside one diagonal, all round with both diagonals cut, or beside both diagonals."""
    a, b, c, d = square.outline
    diagonals = ((a, c),) if units == 2 else ((a, c), (d, b))
    for start, end in diagonals:
        yield Line((start, end), Ink.CUT)
        if units != 4:
            up = 1 if end[1] > start[1] else -1
            for off in (1.6, -1.6):
                yield Line(_slid(start, end, off, up), Ink.SEAM)
    if units == 4:
        for name in SIDES:
            yield Line(square.inner(name, 1.6), Ink.SEAM)
    if units == 8:
        middle = square.x + square.width / 2, square.y + square.height / 2
        yield Line(((middle[0], square.y), (middle[0], square.bottom)), Ink.CUT)
        yield Line(((square.x, middle[1]), (square.right, middle[1])), Ink.CUT)


def _slid(start: Point, end: Point, off: float, up: int) -> tuple[Point, Point]:
    """A line beside a diagonal that ends where it meets the square's edges."""
    if off > 0:
        return (start[0] + off, start[1]), (end[0], end[1] - up * off)
    return (start[0], start[1] - up * off), (end[0] + off, end[1])
