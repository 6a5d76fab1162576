"""Before and after: what is folded, gathered, trimmed, cut up, paired, lined or turned out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from presscloth.drawing.deeds import Deed, side
from presscloth.drawing.dimensions import LETTERS, across
from presscloth.drawing.faces import BEFORE, Face, drawn, face_of, named_inside, sized, titled, told_size
from presscloth.drawing.ground_words import edge_words
from presscloth.drawing.panels import Point, beside, corners, panel
from presscloth.drawing.reals import lesser, on_page
from presscloth.drawing.tree import Area, Drawing, Ink, Lettering, Line, Shape
from presscloth.measure import Quantity, decimal_text
from presscloth.sewing.construction import Taken
from presscloth.sewing.placing import Mark
from presscloth.sewing.things import SIDES, Hollow, Thing
from presscloth.tongue import named, say

HALF_ROOM = 42.0
"""How wide each of two things beside each other may be drawn, in mm of the page."""


def draw_fold(deed: Deed) -> Drawing | None:
    """A thing with its fold lines, and folded."""
    before, after = deed.one("thing"), deed.result
    if before is None or after is None:
        return None
    scaled = _to_one_scale(before.thing, after)
    if scaled is None:
        return None
    flat, folded = scaled
    shapes = [*titled(flat, named(before.name)), *drawn(flat, before.thing), *sized(flat, before.thing, deed)]
    for line in deed.event.lines:
        ink = Ink.FOLD if line.mark is Mark.FOLD else Ink.SEAM
        points = tuple(_on(flat, *point) for point in (line.start, line.end))
        shapes.append(Line(points, ink))
    made = [*titled(folded, deed.made), *drawn(folded, after), *_closed_sides(folded, after, deed)]
    made += sized(folded, after, deed)
    values = {
        "name": named(before.name),
        "size": told_size(before.thing, deed),
        "made": deed.made,
        "result": told_size(after, deed),
    }
    if isinstance(after.shape, Hollow):
        alt = say("{name}, {size}, folded and sewn: {made}, {result}.", **values)
    else:
        alt = say("{name}, {size}, folded: {made}, {result}.", **values)
    return beside((panel(shapes), panel(made)), alt, f"{named(before.name)} → {deed.made}")


def _on(face: Face, x: Fraction, y: Fraction) -> Point:
    return face.x + on_page(x) * face.scale, face.y + on_page(y) * face.scale


def _to_one_scale(before: Thing, after: Thing) -> tuple[Face, Face] | None:
    """Two things drawn to the scale of the larger one."""
    one = face_of(before, HALF_ROOM)
    other = face_of(after, HALF_ROOM)
    if one is None or other is None:
        return None
    share = lesser(1.0, one.scale / other.scale)
    return one, face_of(after, other.width * share, other.height * share) or other


def _closed_sides(face: Face, thing: Thing, deed: Deed) -> Iterator[Shape]:
    """The stitch lines of a pouch or a tube along its closed sides, with a gap where one is left."""
    if not isinstance(thing.shape, Hollow) or face.is_round:
        return
    sewn = [name for name in SIDES if name in thing.shape.closed]
    gap = deed.amount("gap")
    widest = "bottom" if "bottom" in sewn else next(iter(sewn), "")
    for name in sewn:
        folded = thing.shape.closed[name].state.value == "folded"
        yield from _with_gap(face, name, Ink.FOLD if folded else Ink.SEAM, gap if name == widest else None)


def _with_gap(face: Face, edge: str, ink: Ink, gap: Quantity | None) -> Iterator[Shape]:
    """A line just inside an edge, open in its middle by as much as is left for turning."""
    start, end = face.inner(edge, 1.2)
    if gap is None:
        yield Line((start, end), ink)
        return
    long = (end[0] - start[0]) + (end[1] - start[1])
    share = lesser(0.9, on_page(gap.metric) * face.scale / long) / 2
    for a, b in ((0.0, 0.5 - share), (0.5 + share, 1.0)):
        yield Line((_part_way(start, end, a), _part_way(start, end, b)), ink)


def _part_way(start: Point, end: Point, share: float) -> Point:
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


def draw_gather(deed: Deed) -> Drawing | None:
    """What is gathered below what it is gathered to, with both lengths."""
    gathered, edge = deed.one("gathered"), deed.one("edge")
    lengths = _edge_length(deed, gathered, "gathered"), _edge_length(deed, edge, "edge")
    if gathered is None or edge is None or lengths[0] is None or lengths[1] is None:
        return None
    long, short = lengths[0], lengths[1]
    scale = 76.0 / on_page(long.metric)
    wide, narrow = 76.0, on_page(short.metric) * scale
    x, y, deep = BEFORE, BEFORE, 30.0
    middle = x + wide / 2
    left, right = middle - narrow / 2, middle + narrow / 2
    teeth = 16
    wave = tuple((left + narrow * i / teeth, y + 9.0 + (0.9 if i % 2 else -0.9)) for i in range(teeth + 1))
    creases = [wave[i] for i in range(1, teeth, 2)]
    frill = (*wave, (x + wide, y + 9.0 + deep), (x, y + 9.0 + deep))
    shapes: list[Shape] = [
        Area(frill, Ink.CLOTH, Ink.CUT),
        Area(corners(left, y, narrow, 9.0), Ink.WRONG_SIDE, Ink.CUT),
        *(Line(((cx, cy), (cx + (cx - middle) * 0.18, y + 17.0)), Ink.HIDDEN) for cx, cy in creases),
        Lettering(middle, y + 5.5, named(edge.name), LETTERS),
        Lettering(middle, y + 9.0 + deep * 0.7, named(gathered.name), LETTERS),
        *_across_above(left, right, y - 3.5, deed.said(short)),
        *across(x, x + wide, y + 9.0 + deep + 3.5, deed.said(long)),
    ]
    ratio = decimal_text(long.metric / short.metric, 2)
    alt = say(
        "{name} gathered from {long} to {short} of {edge}, {ratio} times as long.",
        name=named(gathered.name),
        long=deed.said(long),
        short=deed.said(short),
        edge=named(edge.name),
        ratio=ratio,
    )
    return beside((panel(shapes),), alt, say("{name}, gathered", name=named(gathered.name)))


def _across_above(left: float, right: float, y: float, words: str) -> Iterator[Shape]:
    """A dimension with its words above."""
    for shape in across(left, right, y, words):
        yield Lettering(shape.x, y - 3.0, words, LETTERS) if isinstance(shape, Lettering) else shape


def _edge_length(deed: Deed, taken: Taken | None, slot: str) -> Quantity | None:
    edges = deed.edges(slot)
    return side(taken.thing.shape, edges[0]) if taken is not None and edges else None


def draw_bag_out(deed: Deed) -> Drawing | None:
    """What was turned out, with the seams inside and what stays open."""
    first, second, made = deed.one("first"), deed.one("second"), deed.result
    if first is None or second is None or made is None:
        return None
    face = face_of(made)
    if face is None:
        return None
    is_open = deed.edges("open")
    gap = deed.amount("gap")
    sewn = [name for name in ("bottom", "left", "right", "top") if name not in is_open]
    shapes: list[Shape] = [*titled(face, deed.made), *drawn(face, made)]
    if not face.is_round:
        for number, name in enumerate(sewn):
            shapes += _with_gap(face, name, Ink.SEAM, None if number else gap)
    shapes += named_inside(face, first.name)
    shapes += sized(face, made, deed)
    left_open = edge_words(is_open) if is_open else deed.said(gap) if gap is not None else "–"
    alt = say(
        "{first} and {second} sewn together right sides in and turned, {open} left open: {name}, {size}.",
        first=named(first.name),
        second=named(second.name),
        open=left_open,
        name=deed.made,
        size=told_size(made, deed),
    )
    return beside((panel(shapes),), alt, f"{deed.made}: {named(first.name)}, {named(second.name)}")


def draw_line(deed: Deed) -> Drawing | None:
    """A lining in what it lines: dashed inside, level at the top."""
    outer, lining, made = deed.one("outer"), deed.one("lining"), deed.result
    if outer is None or lining is None or made is None:
        return None
    face = face_of(made)
    if face is None:
        return None
    inset = 2.4
    left, right, bottom = face.x + inset, face.right - inset, face.bottom - inset
    shapes: list[Shape] = [
        *titled(face, deed.made),
        Area(face.outline, Ink.CLOTH, Ink.CUT),
        Line(((left, face.y), (left, bottom), (right, bottom), (right, face.y)), Ink.HIDDEN),
        Line(face.inner("top", 1.2), Ink.SEAM),
        *named_inside(face, lining.name),
        *sized(face, made, deed),
    ]
    gap = deed.amount("gap")
    words = say(
        "{lining} inside {outer}, sewn together round the opening: {name}, {size}.",
        lining=named(lining.name),
        outer=named(outer.name),
        name=deed.made,
        size=told_size(made, deed),
    )
    if gap is not None:
        words = f"{words} {say('A gap of {gap} is left for turning.', gap=deed.said(gap))}"
    caption = say(
        "{name}: {lining} (dashed) in {outer}",
        name=deed.made,
        lining=named(lining.name),
        outer=named(outer.name),
    )
    return beside((panel(shapes),), words, caption)


def draw_hollow(deed: Deed) -> Drawing | None:
    """A tube or a pouch as it lies flat: its closed sides, its size, and the way round it."""
    made = deed.result
    if made is None or not isinstance(made.shape, Hollow):
        return None
    face = face_of(made)
    if face is None:
        return None
    shapes: list[Shape] = [*titled(face, deed.made), *drawn(face, made), *_closed_sides(face, made, deed)]
    shapes += sized(face, made, deed)
    if deed.event.used and not face.is_round:
        shapes += named_inside(face, deed.event.used[0].name)
    names = [named(taken.name) for taken in deed.event.used]
    around = deed.said(made.shape.around)
    is_open = edge_words(tuple(made.shape.ends)) if made.shape.ends else ""
    values = {"name": deed.made, "size": told_size(made, deed), "around": around, "parts": ", ".join(names)}
    if is_open:
        alt = say("{name} of {parts}: {size}, {around} round, open at {edges}.", edges=is_open, **values)
    else:
        alt = say("{name} of {parts}: {size}, closed all round.", **values)
    caption = say("{name}: {around} round", name=deed.made, around=around) if is_open else deed.made
    return beside((panel(shapes),), alt, caption)


def draw_flat(deed: Deed) -> Drawing | None:
    """A flat thing of which the parts lie nowhere in particular: its outline and its size."""
    made = deed.result
    face = face_of(made) if made is not None else None
    if made is None or face is None:
        return None
    shapes: Sequence[Shape] = (*titled(face, deed.made), *drawn(face, made), *sized(face, made, deed))
    names = ", ".join(named(taken.name) for taken in deed.event.used)
    alt = say("{name} of {parts}: {size}.", name=deed.made, parts=names, size=told_size(made, deed))
    return beside((panel(shapes),), alt, deed.made)
