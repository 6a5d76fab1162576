"""Cloth cut on the bias: strips at 45° across it, or rows on a sheet that becomes one long strip."""

from __future__ import annotations

from math import sqrt

from presscloth.drawing.deeds import Deed, size
from presscloth.drawing.dimensions import LETTERS, across, down
from presscloth.drawing.faces import BEFORE, Face, face_of, sized, titled, told_size
from presscloth.drawing.panels import Panel, beside, panel
from presscloth.drawing.reals import on_page
from presscloth.drawing.tree import Area, Drawing, Ink, Lettering, Line, Shape
from presscloth.measure import Quantity
from presscloth.sewing.construction import Taken
from presscloth.tongue import named, say

HAIR = 0.001
"""In mm of the page: less than a line is wide."""

SHEET = 52.0
"""How long the bias edge of a sheet is drawn, in mm of the page."""


def draw_cut_bias(deed: Deed) -> Drawing | None:
    """The cloth with its strips at 45°; what is left at the slanting ends is hatched."""
    cloth, strip, width = deed.one("from"), deed.result, deed.amount("width")
    face = face_of(cloth.thing) if cloth is not None else None
    if cloth is None or strip is None or width is None or face is None:
        return None
    made = deed.event.made.count if deed.event.made else 1
    shapes = [*titled(face, named(cloth.name)), *_strips(face, on_page(width.metric) * face.scale, made)]
    shapes += sized(face, cloth.thing, deed)
    alt = say(
        "{count} {name}, {size}, cut at 45 degrees from {whole_count} {whole}, {whole_size}.",
        count=made,
        name=deed.made,
        size=told_size(strip, deed),
        whole_count=cloth.count,
        whole=named(cloth.name),
        whole_size=told_size(cloth.thing, deed),
    )
    caption = say("{name}, each {width} wide", name=deed.made, width=deed.said(width))
    return beside((panel(shapes),), alt, caption)


def _strips(face: Face, wide: float, most: int) -> list[Shape]:
    """Slanting strips from one long side to the other, as many as there is room for and are wanted."""
    shapes: list[Shape] = [Area(face.outline, Ink.WASTE, Ink.CUT)]
    pitch = wide * sqrt(2)
    upright = face.height > face.width
    room, short = (face.height, face.width) if upright else (face.width, face.height)
    for i in range(most):
        start = pitch * i
        if start + pitch + short > room + HAIR:
            break
        corners = ((0.0, start), (short, start + short), (short, start + pitch + short), (0.0, start + pitch))
        points = corners if upright else tuple((y, x) for x, y in corners)
        shapes.append(Area(tuple((face.x + x, face.y + y) for x, y in points), Ink.CLOTH, Ink.CUT))
    return shapes


def draw_continuous_bias(deed: Deed) -> Drawing | None:
    """The square with its diagonal, and the sheet that its halves make, with the rows to cut along."""
    square, strip, width = deed.one("from"), deed.result, deed.amount("width")
    long = size(strip.shape) if strip is not None else None
    if square is None or strip is None or width is None or long is None:
        return None
    face = face_of(square.thing, 40.0, 40.0)
    if face is None:
        return None
    first, _, last, _ = face.outline
    whole: list[Shape] = [
        *titled(face, named(square.name)),
        Area(face.outline, Ink.CLOTH, Ink.CUT),
        Line((first, last), Ink.CUT),
        *sized(face, square.thing, deed),
    ]
    alt = say(
        "{square}, {size}, cut on its diagonal and sewn to a tube: one {name}, {long} long and {width} wide.",
        square=named(square.name),
        size=told_size(square.thing, deed),
        name=deed.made,
        long=deed.said(long[0]),
        width=deed.said(width),
    )
    return beside((panel(whole), _sheet(deed, square, width)), alt, f"{named(square.name)} → {deed.made}")


def _sheet(deed: Deed, square: Taken, width: Quantity) -> Panel:
    """Both halves sewn together at their straight edges: bias edges above and below, rows between them."""
    found = size(square.thing.shape)
    side = on_page(found[0].metric) if found is not None else 1.0
    scale = SHEET / (side * sqrt(2))
    high, row = SHEET / 2, on_page(width.metric) * scale
    x, y = BEFORE, 6.0
    sheet = ((x + high, y), (x + high + SHEET, y), (x + SHEET, y + high), (x, y + high))
    shapes: list[Shape] = [Area(sheet, Ink.CLOTH, Ink.CUT)]
    middle = x + high + SHEET / 2
    shapes.append(Line(((middle, y), (middle - high, y + high)), Ink.SEAM))
    at = row
    while at < high - HAIR:
        shapes.append(Line(((x + high - at, y + at), (x + high - at + SHEET, y + at)), Ink.FOLD))
        at += row
    shapes += down(y, y + row, x + high + SHEET + 3.0, deed.said(width))
    shapes += across(x, x + SHEET, y + high + 3.5, say("bias edge"))
    shapes.append(Lettering(middle - high / 2, y - 3.0, say("rows to cut along, moved on by one"), LETTERS))
    return panel(shapes)
