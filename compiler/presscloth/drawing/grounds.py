"""A thing with all that one paragraph does to it: its edges finished, other things put onto it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from presscloth.drawing.deeds import Deed
from presscloth.drawing.dimensions import LETTERS, name_in
from presscloth.drawing.faces import Face, drawn, extent, face_of, sized, titled, told_size
from presscloth.drawing.ground_words import finished_edges, told
from presscloth.drawing.panels import Panel, Point, beside, closed, corners, panel
from presscloth.drawing.reals import greater, lesser, letters, on_page
from presscloth.drawing.sections import band_seen, front_width, sections, turns
from presscloth.drawing.silhouettes import Place, only_piece, silhouette, stitched
from presscloth.drawing.things import solid_shapes
from presscloth.drawing.tree import Area, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.measure import Quantity
from presscloth.recipe.statement import Caught
from presscloth.sewing.construction import Taken
from presscloth.sewing.lengths import less, shortest
from presscloth.sewing.things import Circle, Flat, Long, Shaped, Thing
from presscloth.tongue import named, say

GROUND = frozenset(
    ("hem", "bind", "face", "band", "draw", "insert", "attach", "fuse", "lay", "tack", "fill", "stitch out")
)
"""Verbs that leave a thing as it is, but for its edges and what is put onto it: they are drawn together."""

EDGES_ONLY = frozenset(("hem", "bind", "face", "band"))
"""Those of them that put nothing on it that would have to be seen from the front."""

THIN = 1.6
"""An edge of a hem or a binding is drawn no thinner than this, in mm of the page."""

NARROW = 44.0
"""How wide a thing may be drawn that has its edge from the side beside it, in mm of the page."""

OUTSIDE = 8.0
"""How far what is caught stands out, in mm of the page."""


def draw_ground(deeds: Sequence[Deed]) -> Drawing | None:
    """One drawing of a thing with everything that was done to it; None where it has no size."""
    last = deeds[-1]
    thing = last.result
    if thing is None:
        return None
    beside_it = tuple(sections(deeds))
    face = face_of(thing, NARROW) if beside_it else face_of(thing)
    if face is None:
        return None
    legend: list[str] = []
    back = all(deed.verb in ("hem", "face") for deed in deeds)
    shapes = [*titled(face, last.made), *drawn(face, thing, Ink.WRONG_SIDE if back else Ink.CLOTH)]
    for deed in deeds:
        shapes += _edges(face, deed)
    putting = [deed for deed in deeds if deed.verb in PUT_IN_THE_MIDDLE]
    for deed in deeds:
        shapes += _put(face, deed, legend, _row(putting, deed))
    below, aside = _standing_out(deeds)
    shapes += sized(face, thing, last, below, aside)
    puts_on = any(deed.verb not in EDGES_ONLY for deed in deeds)
    solid = None if puts_on else solid_shapes(last.made, thing, last.systems)
    panels: list[Panel] = [panel(shapes if solid is None else solid), *beside_it]
    sentences = [words for words in map(told, deeds) if words]
    size = told_size(thing, last)
    sentences.append(say("{name} measures {size} now.", name=last.made, size=size))
    seen = say("{name}, from the wrong side", name=last.made) if back else last.made
    return beside(panels, " ".join(sentences), "; ".join([seen, *legend]))


def _standing_out(deeds: Sequence[Deed]) -> tuple[float, float]:
    """How far below and aside of a thing its dimensions stand, where something comes out of it."""
    edges: set[str] = set()
    for deed in deeds:
        if deed.has("catching"):
            edges |= set(finished_edges(deed, "edges") or deed.edges("edge"))
        if deed.verb == "draw":
            upright = next(iter(deed.edges("through")), "top") in ("left", "right")
            edges.add("bottom" if upright else "right")
    room = OUTSIDE + LETTERS + 2.0
    return (room if "bottom" in edges else 0.0), (room if "right" in edges else 0.0)


# Edges.


def _edges(face: Face, deed: Deed) -> Iterator[Shape]:
    match deed.verb:
        case "hem":
            turned = turns(deed)
            if turned:
                yield from _strips(face, finished_edges(deed, "edges"), turned[-1], Ink.CLOTH)
        case "bind":
            seen = front_width(deed)
            if seen is not None:
                yield from _strips(face, finished_edges(deed, "thing"), seen, Ink.WRONG_SIDE)
        case "face":
            deep = _facing_depth(deed)
            if deep is not None:
                yield from _strips(face, finished_edges(deed, "thing"), deep, Ink.CLOTH)
        case "band":
            seen = band_seen(deed)
            if seen is not None:
                yield from _strips(face, deed.edges("edge"), seen, Ink.WRONG_SIDE)
        case "draw":
            yield from _casing(face, deed)
        case _:
            return


def _facing_depth(deed: Deed) -> Quantity | None:
    strips, taken = deed.one("strips"), front_width(deed)
    if strips is None or taken is None or not isinstance(strips.thing.shape, Flat):
        return None
    return less(shortest((strips.thing.shape.width, strips.thing.shape.height)), taken)


def _strips(face: Face, edges: Sequence[str], deep: Quantity, ink: Ink) -> Iterator[Shape]:
    """Strips along edges: what lies along the fold, the line of stitches inside, mitres where two meet."""
    wide = greater(THIN, on_page(deep.metric) * face.scale)
    wide = lesser(wide, face.width / 2.2, face.height / 2.2)
    if face.is_round:
        x, y = face.x + face.width / 2, face.y + face.height / 2
        yield Disc(x, y, face.width / 2, ink, Ink.FOLD)
        yield Disc(
            x, y, face.width / 2 - wide, Ink.CLOTH if ink is Ink.WRONG_SIDE else Ink.WRONG_SIDE, Ink.SEAM
        )
        return
    if face.piece is not None and face.piece.outline is not None:
        yield from (Line(line, Ink.SEAM) for line in stitched(face.piece.outline, edges, face.place))
        return
    for edge in edges:
        yield Area(face.strip(edge, wide), ink)
    for edge in edges:
        yield Line(face.edge(edge), Ink.CUT)
        yield Line(_between_corners(face, edge, edges, wide), Ink.SEAM)
    for one, other, corner, inward in (
        ("left", "top", 0, (1, 1)),
        ("right", "top", 1, (-1, 1)),
        ("right", "bottom", 2, (-1, -1)),
        ("left", "bottom", 3, (1, -1)),
    ):
        if one in edges and other in edges:
            x, y = face.outline[corner]
            yield Line(((x, y), (x + inward[0] * wide, y + inward[1] * wide)), Ink.FOLD)


def _between_corners(face: Face, edge: str, edges: Sequence[str], deep: float) -> tuple[Point, ...]:
    """The stitch line inside of an edge; it ends where that of a neighbouring edge begins."""
    (x1, y1), (x2, y2) = face.inner(edge, deep)
    if edge in ("top", "bottom"):
        return (x1 + deep * ("left" in edges), y1), (x2 - deep * ("right" in edges), y2)
    return (x1, y1 + deep * ("top" in edges)), (x2, y2 - deep * ("bottom" in edges))


def _casing(face: Face, deed: Deed) -> Iterator[Shape]:
    """A casing with what runs through it, whose ends come out."""
    edge = next(iter(deed.edges("through")), "top")
    deep = lesser(4.0, face.height / 3)
    yield Line(face.inner(edge, deep), Ink.SEAM)
    (x1, y1), (x2, y2) = face.inner(edge, deep / 2)
    out = (6.0, 0.0) if edge in ("top", "bottom") else (0.0, 6.0)
    yield Line(((x1 - out[0], y1 - out[1]), (x2 + out[0], y2 + out[1])), Ink.SELVEDGE)


# What is put onto a thing.

PUT_IN_THE_MIDDLE = frozenset(("attach", "fuse"))


def _row(putting: Sequence[Deed], deed: Deed) -> tuple[int, int]:
    """Where in the middle a statement's things stand: which row of how many."""
    return (putting.index(deed) if deed in putting else 0), max(1, len(putting))


def _put(face: Face, deed: Deed, legend: list[str], row: tuple[int, int]) -> Iterator[Shape]:
    match deed.verb:
        case "attach" | "fuse":
            ink = None if deed.verb == "fuse" else Ink.CLOTH
            for part in deed.used("part"):
                yield from _in_a_row(face, part, deed.each(part), row, ink, legend)
        case "lay":
            for part in deed.used("part"):
                yield from _level(face, part, deed.edges("sides"), legend)
        case "tack":
            for part in deed.used("part"):
                yield from _along(face, part, deed.edges("edge"), legend)
        case "insert":
            for part in deed.used("part"):
                yield from _at_edge(face, part, deed.edges("edge"), legend)
        case "draw":
            for part in deed.used("drawn"):
                edge = next(iter(deed.edges("through")), "top")
                yield from _numbered(named(part.name), _before(face, edge, OUTSIDE), legend)
        case "fill":
            yield from _filled(face, deed)
        case "stitch out":
            yield from _hooped(face, deed)
        case _:
            pass
    yield from _caught(face, deed, legend)


def _in_a_row(
    face: Face, part: Taken, count: int, row: tuple[int, int], ink: Ink | None, legend: list[str]
) -> Iterator[Shape]:
    """Things side by side in the middle of the ground, each as large as it is."""
    level = face.y + face.height * (row[0] + 0.5) / row[1]
    for i in range(min(count, 6)):
        middle = face.x + face.width * (i + 0.5) / min(count, 6)
        room = face.width / min(count, 6)
        yield from _at(face, part, (middle, level), ink, legend, room, marked=i == 0)


def _at(
    face: Face,
    part: Taken,
    middle: Point,
    ink: Ink | None,
    legend: list[str],
    room: float,
    *,
    marked: bool,
) -> Iterator[Shape]:
    """One thing about its middle, turned by a quarter where it would reach out of the ground."""
    x, y = middle
    wide, high = _on_ground(face, part.thing, room)
    piece = only_piece(part.thing.parts)
    if isinstance(part.thing.shape, Circle) or extent(part.thing) is None:
        yield Disc(x, y, lesser(wide, high) / 2, ink or Ink.CLOTH, Ink.CUT if ink else Ink.HIDDEN)
    elif piece is not None and piece.outline is not None:
        turned = piece.turned + _quarters(part.thing, wide, high)
        line = silhouette(piece.outline, Place(x - wide / 2, y - high / 2, wide, high, turned))
        yield Line(closed(line), Ink.HIDDEN) if ink is None else Area(line, ink, Ink.CUT)
    elif ink is None or isinstance(part.thing.shape, Shaped):
        yield Line(closed(corners(x - wide / 2, y - high / 2, wide, high)), Ink.HIDDEN)
    else:
        yield Area(corners(x - wide / 2, y - high / 2, wide, high), ink, Ink.CUT)
    if marked:
        words = named(part.name)
        found, told = name_in(words, "", x - wide / 2, y - high / 2, wide, high)
        if told:
            yield found
        else:
            yield from _numbered(words, (x + wide / 2 + 2.0, y), legend)


def _numbered(words: str, at: Point, legend: list[str]) -> Iterator[Shape]:
    """A number that the caption explains."""
    legend.append(f"{len(legend) + 1} {words}")
    yield Lettering(at[0], at[1] + LETTERS / 3, str(len(legend)), LETTERS, bold=True)


def _on_ground(face: Face, thing: Thing, room: float) -> tuple[float, float]:
    """How large a thing is on the page, no larger than the ground; a button is a dot.

    It is turned by a quarter where it would be wider than the room that it has.
    """
    found = extent(thing)
    if found is None:
        return 3.2, 3.2
    wide, high = (on_page(each.metric) * face.scale for each in found)
    if isinstance(thing.shape, Long):
        high = 1.6
    if wide > room and high <= room:
        wide, high = high, wide
    return lesser(greater(wide, 1.6), face.width), lesser(greater(high, 1.6), face.height)


def _quarters(thing: Thing, wide: float, high: float) -> int:
    """By how many quarters a thing is turned that is drawn so wide and so high."""
    found = extent(thing)
    return 0 if found is None else int((found[0].metric > found[1].metric) != (wide > high))


def _level(face: Face, part: Taken, sides: Sequence[str], legend: list[str]) -> Iterator[Shape]:
    """A thing with edges level with those of the ground."""
    wide, high = _on_ground(face, part.thing, face.width)
    x, y = face.x + (face.width - wide) / 2, face.y + (face.height - high) / 2
    if "left" in sides:
        x = face.x
    elif "right" in sides:
        x = face.right - wide
    if "top" in sides:
        y = face.y
    elif "bottom" in sides:
        y = face.bottom - high
    yield from _at(face, part, (x + wide / 2, y + high / 2), Ink.WRONG_SIDE, legend, face.width, marked=True)


def _along(face: Face, part: Taken, edges: Sequence[str], legend: list[str]) -> Iterator[Shape]:
    """What is tacked lies along an edge, on the thing, its own raw edge level with it."""
    edge = edges[-1] if edges else "top"
    if isinstance(part.thing.shape, Flat):
        wide, high = _on_ground(face, part.thing, face.width)
        deep = lesser(greater(THIN, lesser(wide, high)), face.height * 0.8)
        strip = face.strip(edge, deep)
        yield Area(strip, Ink.WRONG_SIDE, Ink.CUT)
        yield Line(face.inner(edge, lesser(1.2, deep / 2)), Ink.SEAM)
    else:
        yield Line(face.inner(edge, THIN), Ink.SELVEDGE)
    yield from _numbered(named(part.name), _before(face, edge, 0.0), legend)


def _at_edge(face: Face, part: Taken, edges: Sequence[str], legend: list[str]) -> Iterator[Shape]:
    """What is put into an opening: it shows along the edge, a zip as a line with its teeth."""
    edge = next(iter(edges), "top")
    (x1, y1), (x2, y2) = face.edge(edge)
    yield Line(((x1, y1), (x2, y2)), Ink.SELVEDGE)
    for i in range(1, 24):
        x, y = x1 + (x2 - x1) * i / 24, y1 + (y2 - y1) * i / 24
        tooth = (0.0, 1.2) if edge in ("top", "bottom") else (1.2, 0.0)
        yield Line(((x - tooth[0], y - tooth[1]), (x + tooth[0], y + tooth[1])), Ink.CUT)
    yield from _numbered(named(part.name), _before(face, edge, 0.0), legend)


def _before(face: Face, edge: str, out: float) -> Point:
    """Where the number of something along an edge stands: outside of it, clear of the dimensions."""
    (x1, y1), (_, y2) = face.edge(edge)
    if edge == "left":
        return x1 - 3.0 - out, (y1 + y2) / 2
    if edge == "right":
        return x1 - 5.0, (y1 + y2) / 2
    return x1 - 3.0 - out, y1


def _filled(face: Face, deed: Deed) -> Iterator[Shape]:
    """What is filled is hatched inside its seams; the weight stands in the middle."""
    weight = deed.amount("weight")
    if face.is_round:
        yield Disc(face.x + face.width / 2, face.y + face.height / 2, face.width / 2 - 2.0, Ink.WASTE)
    else:
        yield Area(corners(face.x + 2, face.y + 2, face.width - 4, face.height - 4), Ink.WASTE)
    if weight is not None:
        words = deed.said(weight)
        middle = face.x + face.width / 2, face.y + face.height / 2
        long = letters(words) * 1.6
        yield Area(corners(middle[0] - long / 2, middle[1] - 2.4, long, 5.2), Ink.CLOTH)
        yield Lettering(*middle, words, LETTERS)


def _hooped(face: Face, deed: Deed) -> Iterator[Shape]:
    """The stitch field in the middle of the cloth, and the design in the middle of the field."""
    for slots, ink in ((("field_width", "field_height"), Ink.FOLD), (("width", "height"), Ink.SEAM)):
        sides = [deed.amount(slot) for slot in slots]
        if sides[0] is None or sides[1] is None:
            continue
        wide, high = (on_page(each.metric) * face.scale for each in sides if each is not None)
        x, y = face.x + (face.width - wide) / 2, face.y + (face.height - high) / 2
        yield Line(closed(corners(x, y, wide, high)), ink)
        if ink is Ink.SEAM:
            yield Area(corners(x, y, wide, high), Ink.WASTE)


def _caught(face: Face, deed: Deed, legend: list[str]) -> Iterator[Shape]:
    """What a seam catches stands out of the edge."""
    slot = deed.statement.slots.get("catching")
    if not isinstance(slot, Caught):
        return
    edges = finished_edges(deed, "edges") or deed.edges("edge") or ("top",)
    for number, part in enumerate(deed.used("catching")):
        count = min(deed.each(part), 4)
        for i in range(count):
            edge = edges[i % len(edges)] if count > 1 else edges[0]
            (x1, y1), (x2, y2) = face.edge(edge)
            share = (i // len(edges) + 1 + number) / (count // len(edges) + 2 + number)
            x, y = x1 + (x2 - x1) * share, y1 + (y2 - y1) * share
            yield Area(_stub(edge, x, y), Ink.WRONG_SIDE, Ink.CUT)
        yield from _numbered(named(part.name), (x + OUTSIDE + 2.0, y), legend)


def _stub(edge: str, x: float, y: float) -> tuple[Point, ...]:
    match edge:
        case "left":
            return corners(x - OUTSIDE, y - 1.2, OUTSIDE, 2.4)
        case "right":
            return corners(x, y - 1.2, OUTSIDE, 2.4)
        case "bottom":
            return corners(x - 1.2, y, 2.4, OUTSIDE)
        case _:
            return corners(x - 1.2, y - OUTSIDE, 2.4, OUTSIDE)
