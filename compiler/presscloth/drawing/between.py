"""Two things that overlap, or that have something between them: a lap, a zip."""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.drawing.deeds import Deed
from presscloth.drawing.dimensions import across, breadth, down, name_in
from presscloth.drawing.faces import Face, face_of, sized, titled, told_size
from presscloth.drawing.panels import beside, corners, panel
from presscloth.drawing.reals import on_page
from presscloth.drawing.tree import Area, Drawing, Ink, Lettering, Line, Shape
from presscloth.sewing.placing import Box
from presscloth.tongue import named, say


def draw_lap(deed: Deed) -> Drawing | None:
    """One thing lapped over another: how far, and what lies below."""
    over = deed.one("over")
    under = deed.one("under") or over
    if over is None or under is None:
        return None
    words = say(
        "{over} lapped over {under} by {by}",
        over=named(over.name),
        under=named(under.name),
        by=_by(deed, "by"),
    )
    return _draw(deed, "by", words)


def draw_zip(deed: Deed) -> Drawing | None:
    """A zip between two edges, and how much of it is seen."""
    part = deed.one("zip")
    zip_words = "" if part is None else f"{named(part.name)}, {told_size(part.thing, deed)}"
    words = say(
        "{zip}, between {first} and {second}, {showing} of it seen",
        zip=zip_words,
        first=_name(deed, 0),
        second=_name(deed, 1),
        showing=_by(deed, "showing"),
    )
    return _draw(deed, "showing", words)


def _name(deed: Deed, place: int) -> str:
    lying = deed.event.lying
    names = [named(each.name) for each in lying] or [deed.made]
    return names[min(place, len(names) - 1)]


def _by(deed: Deed, slot: str) -> str:
    found = deed.amount(slot)
    return "" if found is None else deed.said(found)


def _draw(deed: Deed, slot: str, words: str) -> Drawing | None:
    made = deed.result
    amount = deed.amount(slot)
    face = face_of(made) if made is not None else None
    if made is None or amount is None or face is None:
        return None
    shapes: list[Shape] = [*titled(face, deed.made)]
    boxes = [each.box for each in deed.event.lying]
    for each in deed.event.lying:
        x, y = face.x + on_page(each.box.x) * face.scale, face.y + on_page(each.box.y) * face.scale
        wide, high = on_page(each.box.width) * face.scale, on_page(each.box.height) * face.scale
        shapes.append(Area(corners(x, y, wide, high), Ink.CLOTH, Ink.CUT))
        found, told = name_in(named(each.name), "", x, y, wide, high)
        if told:
            shapes.append(found)
    if len(boxes) == 2:
        shapes += _middle(face, boxes[0], boxes[1], deed, slot)
    shapes.sort(key=lambda shape: isinstance(shape, Lettering))
    level = len(boxes) == 2 and boxes[0].x != boxes[1].x
    below = 9.0 if level else 0.0
    aside = breadth(deed.said(amount)) + 3.5 if len(boxes) == 2 and not level else 0.0
    shapes += sized(face, made, deed, below, aside)
    alt = say("{name}, {size}: {what}.", name=deed.made, size=told_size(made, deed), what=words)
    return beside((panel(shapes),), alt, words)


def _middle(face: Face, one: Box, other: Box, deed: Deed, slot: str) -> Iterator[Shape]:
    """The strip in which the two lie over each other, or in which something lies between them."""
    amount = deed.amount(slot)
    if amount is None:
        return
    wide = on_page(amount.metric) * face.scale
    level = one.x != other.x
    if level:
        first, second = sorted((one, other), key=lambda box: box.x)
        at = face.x + on_page(first.x + first.width + second.x) / 2 * face.scale
        strip = corners(at - wide / 2, face.y, wide, face.height)
        yield from across(at - wide / 2, at + wide / 2, face.bottom + 3.5, deed.said(amount))
    else:
        first, second = sorted((one, other), key=lambda box: box.y)
        at = face.y + on_page(first.y + first.height + second.y) / 2 * face.scale
        strip = corners(face.x, at - wide / 2, face.width, wide)
        yield from down(at - wide / 2, at + wide / 2, face.right + 3.5, deed.said(amount))
    yield Area(strip, Ink.WASTE, Ink.SEAM)
    if slot == "showing":
        ends = ((at, face.y), (at, face.bottom)) if level else ((face.x, at), (face.right, at))
        yield Line(ends, Ink.SELVEDGE)
