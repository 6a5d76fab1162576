"""Edges seen from the side: how a hem is turned, how a binding lies round an edge.

Lengths along the cloth are to scale, at their true size where the room allows; the space between the
layers is not.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from presscloth.drawing.deeds import Deed, allowance_at, side
from presscloth.drawing.dimensions import LETTERS, across
from presscloth.drawing.panels import Panel, Point, panel
from presscloth.drawing.reals import greater, lesser, on_page
from presscloth.drawing.tree import Ink, Lettering, Line, Shape
from presscloth.measure import Quantity
from presscloth.sewing.lengths import less, shortest, total
from presscloth.sewing.things import Flat
from presscloth.tongue import say

LAYER = 2.4
"""Space between two layers on the page, in mm."""

ROOM = 32.0
"""The longest length in a section, in mm of the page."""

AT_LEAST = 2.5
REST = 12.0
"""How much of the cloth beyond the edge is shown."""

EDGE = 46.0
"""Where the edge lies in a section, from its left."""


def section_of(deed: Deed) -> Panel | None:
    """The edge that a statement finishes, from the side; None where there is nothing to be seen so."""
    match deed.verb:
        case "hem":
            shapes = _hem(deed)
        case "bind":
            shapes = _binding(deed)
        case "face":
            shapes = _facing(deed)
        case "band":
            shapes = _band(deed)
        case _:
            return None
    if not shapes:
        return None
    head = Lettering(EDGE - REST, -9.0, say("from the side"), LETTERS)
    return panel((head, *shapes))


def turns(deed: Deed) -> tuple[Quantity, ...]:
    """What a hem turns under, one after the other."""
    by, then = deed.amount("by"), deed.amount("then")
    if by is None:
        return ()
    if deed.has("twice"):
        return by, by
    return (by,) if then is None else (by, then)


def _hem(deed: Deed) -> Sequence[Shape]:
    turned = turns(deed)
    if not turned:
        return ()
    *first, last = turned
    scale = _scale(turned)
    deep = _long(last, scale)
    shapes: list[Shape] = []
    if first:
        inner = lesser(_long(first[0], scale), deep)
        shapes.append(_cloth((EDGE, 2 * LAYER), (EDGE - deep, 2 * LAYER), deep, (EDGE - deep + inner, LAYER)))
        shapes += across(EDGE - deep, EDGE - deep + inner, 2 * LAYER + 11.0, deed.said(first[0]))
    else:
        shapes.append(_cloth((EDGE, LAYER), (EDGE - deep, LAYER), deep, None))
    lowest = 2 * LAYER if first else LAYER
    shapes.append(_stitches(EDGE - deep + 1.2, -1.5, lowest + 1.5))
    shapes += across(EDGE - deep, EDGE, lowest + 4.0, deed.said(last))
    return shapes


def _cloth(turn: Point, end: Point, deep: float, tucked: Point | None) -> Shape:
    """The cloth from the left, turned at the edge; with a second turn its raw edge is tucked in."""
    run = [(EDGE - greater(deep, AT_LEAST) - REST, 0.0), (EDGE, 0.0), turn, end]
    if tucked is not None:
        run += [(end[0], tucked[1]), tucked]
    return Line(tuple(run), Ink.CUT)


def _stitches(x: float, top: float, bottom: float) -> Shape:
    return Line(((x, top), (x, bottom)), Ink.SEAM)


def _scale(lengths: Sequence[Quantity]) -> float:
    longest = greater(*(on_page(each.metric) for each in lengths))
    return lesser(1.0, ROOM / longest) if longest > 0 else 1.0


def _long(length: Quantity, scale: float) -> float:
    return greater(AT_LEAST, on_page(length.metric) * scale)


def front_width(deed: Deed) -> Quantity | None:
    """How much of a binding is seen from the front: what its seam takes."""
    thing = deed.one("thing")
    if thing is None:
        return None
    edges = deed.edges("thing") or ("top",)
    return deed.amount("taking") or allowance_at(thing.thing.shape, edges[0])


def _binding(deed: Deed) -> Sequence[Shape]:
    seen = front_width(deed)
    if seen is None:
        return ()
    s = _long(seen, _scale((seen,)))
    left = EDGE - s
    strip = (
        (EDGE, -1.0),
        (left, -1.0),
        (left, -LAYER - 0.6),
        (EDGE + 1.6, -LAYER - 0.6),
        (EDGE + 1.6, LAYER + 0.6),
        (left - 2.0, LAYER + 0.6),
        (left - 2.0, 1.0),
        (EDGE, 1.0),
    )
    return (
        Line(((left - REST, 0.0), (EDGE, 0.0)), Ink.CUT),
        Line(strip, Ink.CUT),
        _stitches(left + 0.8, -LAYER - 2.0, LAYER + 2.0),
        *across(left, EDGE, LAYER + 5.5, deed.said(seen)),
    )


def _facing(deed: Deed) -> Sequence[Shape]:
    strips, thing = deed.one("strips"), deed.one("thing")
    taken = front_width(deed)
    if strips is None or thing is None or taken is None or not isinstance(strips.thing.shape, Flat):
        return ()
    deep = less(shortest((strips.thing.shape.width, strips.thing.shape.height)), taken)
    long = _long(deep, _scale((deep,)))
    return (
        Line(((EDGE - long - REST, 0.0), (EDGE, 0.0)), Ink.CUT),
        Line(((EDGE, 0.0), (EDGE, LAYER), (EDGE - long, LAYER)), Ink.CUT),
        _stitches(EDGE - 1.0, -1.5, LAYER + 1.5),
        *across(EDGE - long, EDGE, LAYER + 4.0, deed.said(deep)),
    )


def band_seen(deed: Deed) -> Quantity | None:
    """How high a band is as it is seen: by so much, and the allowance, the thing has grown."""
    before, result = deed.one("edge"), deed.result
    edges = deed.edges("edge")
    if before is None or result is None or not edges:
        return None
    part = "height" if edges[0] in ("top", "bottom") else "width"
    old, new = side(before.thing.shape, part), side(result.shape, part)
    taken = deed.amount("taking") or allowance_at(before.thing.shape, edges[0])
    if old is None or new is None or taken is None:
        return None
    return less(total((new, taken)), old)


def _band(deed: Deed) -> Sequence[Shape]:
    seen = band_seen(deed)
    if seen is None:
        return ()
    s = _long(seen, _scale((seen,)))
    left, tuck = EDGE - s, lesser(4.0, s * 0.6)
    strip = (
        (left + tuck, -1.0),
        (left, -1.0),
        (left, -LAYER),
        (EDGE, -LAYER),
        (EDGE, LAYER),
        (left, LAYER),
        (left, 1.0),
        (left + tuck, 1.0),
    )
    return (
        Line(((left - REST, 0.0), (left + tuck, 0.0)), Ink.CUT),
        Line(strip, Ink.CUT),
        _stitches(left + 0.8, -LAYER - 1.5, LAYER + 1.5),
        *across(left, EDGE, LAYER + 4.5, deed.said(seen)),
    )


def sections(deeds: Sequence[Deed], most: int = 2) -> Iterator[Panel]:
    """The edges that differ, each once, no more of them than have room."""
    seen: list[object] = []
    for deed in deeds:
        made = section_of(deed)
        mark = (deed.verb, *(deed.said(each) for each in turns(deed)))
        if made is not None and mark not in seen and len(seen) < most:
            seen.append(mark)
            yield made
