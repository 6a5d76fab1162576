"""Things with a depth, the corners that give it to them, and the finished article."""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.drawing.deeds import Deed
from presscloth.drawing.dimensions import LETTERS, across, down
from presscloth.drawing.faces import BEFORE, drawn, extent, face_of, sized, titled, told_size
from presscloth.drawing.panels import Panel, beside, corners, panel
from presscloth.drawing.things import solid_shapes
from presscloth.drawing.tree import Area, Drawing, Ink, Lettering, Line, Shape
from presscloth.measure import Quantity
from presscloth.sewing.construction import Taken
from presscloth.sewing.lengths import half
from presscloth.sewing.things import Hollow, Thing
from presscloth.tongue import named, say


def draw_box(deed: Deed) -> Drawing | None:
    """A pouch with its depth, and one of its corners pulled flat with the seam across it."""
    made = deed.result
    if made is None or not isinstance(made.shape, Hollow) or made.shape.depth is None:
        return None
    depth = made.shape.depth
    square = deed.amount("square")
    panels = [_thing(deed, deed.made, made)]
    panels.append(_corner(deed, depth) if square is None else _cut_corner(deed, square, depth))
    alt = say(
        "{name} with boxed corners: {size}. The seam across each is {depth} long, {half} from the tip.",
        name=deed.made,
        size=told_size(made, deed),
        depth=deed.said(depth),
        half=deed.said(half(depth)),
    )
    if square is not None:
        start = say("raw edges") if deed.chosen("start") == "raw edges" else say("stitch lines")
        alt = say(
            "{name} with boxed corners: {size}. A square of {square}, measured from the {start}, is cut out "
            "of each corner; the seam across it makes {depth}.",
            name=deed.made,
            size=told_size(made, deed),
            square=deed.said(square),
            start=start,
            depth=deed.said(depth),
        )
    return beside(panels, alt, say("{name}, and one of its corners", name=deed.made))


def _corner(deed: Deed, depth: Quantity) -> Panel:
    """A corner pulled flat: a right angle, the seam across it half as far from the tip as it is long."""
    long = 30.0
    deep, tip = long / 2, (BEFORE + long / 2 + 8.0, 0.0)
    reach = deep + 10.0
    shapes: list[Shape] = [
        Area((tip, (tip[0] + reach, reach), (tip[0] - reach, reach)), Ink.CLOTH, Ink.CUT),
        Area((tip, (tip[0] + deep, deep), (tip[0] - deep, deep)), Ink.WASTE),
        Line(((tip[0] - deep, deep), (tip[0] + deep, deep)), Ink.SEAM),
        Line((tip, (tip[0], reach)), Ink.FOLD),
        *across(tip[0] - deep, tip[0] + deep, reach + 3.5, deed.said(depth)),
        *down(0.0, deep, tip[0] + reach + 3.0, deed.said(half(depth))),
    ]
    return panel(shapes)


def _cut_corner(deed: Deed, square: Quantity, depth: Quantity) -> Panel:
    """The lower left corner of a pouch with the square that is cut out of it."""
    side, inside = 20.0, 14.0
    raw = deed.chosen("start") == "raw edges"
    x, y = BEFORE, 0.0
    whole = side + inside
    seam = 3.5
    line = ((x + seam, y), (x + seam, y + whole - seam), (x + whole, y + whole - seam))
    left, bottom = (x, y + whole) if raw else (x + seam, y + whole - seam)
    shapes: list[Shape] = [
        Area(corners(x, y, whole, whole), Ink.CLOTH, Ink.CUT),
        Line(line, Ink.SEAM),
        Area(corners(left, bottom - side, side, side), Ink.WASTE, Ink.CUT),
        *across(left, left + side, y + whole + 3.5, deed.said(square)),
        *down(bottom - side, bottom, x + whole + 3.0, deed.said(square)),
        Lettering(x + whole / 2, y - 3.0, say("depth {depth}", depth=deed.said(depth)), LETTERS),
    ]
    return panel(shapes)


def draw_finished(deed: Deed) -> Drawing | None:
    """The finished articles with the sizes that they have."""
    articles = [taken for taken in deed.event.used if extent(taken.thing) is not None]
    if not articles:
        return None
    panels = [_thing(deed, named(taken.name), taken.thing) for taken in articles]
    told = "; ".join(_told(deed, taken) for taken in articles)
    return beside(panels, say("Finished: {what}.", what=told), say("Finished"))


def _told(deed: Deed, taken: Taken) -> str:
    return f"{taken.count} {named(taken.name)}, {told_size(taken.thing, deed)}"


def _thing(deed: Deed, name: str, thing: Thing) -> Panel:
    """A thing as it is, seen from above where it has a depth."""
    solid = solid_shapes(name, thing, deed.systems)
    if solid is not None:
        return panel(solid)
    face = face_of(thing)
    assert face is not None, "whoever asks has seen that it has a size"
    shapes: Sequence[Shape] = (*titled(face, name), *drawn(face, thing), *sized(face, thing, deed))
    return panel(shapes)
