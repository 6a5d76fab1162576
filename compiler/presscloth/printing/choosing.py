"""A page that follows the reader's choices: its numbers marked, and how they are reckoned as data.

What the page carries is the compiler's own reckoning (`choices`), not a second one: the script
`choices.js` knows how to add, to round and to print, and nothing of sewing.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import replace

from presscloth.drawing.reals import Real
from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.frozen import dataclass
from presscloth.handout.choosing import DrawnWay, Followable, Offer, Way
from presscloth.handout.tree import Booklet, Handout, Publisher
from presscloth.measure import Quantity, System, printed
from presscloth.measure.followed import MARKED, unmarked
from presscloth.printing.choosing_nodes import Json, Nodes, number, short
from presscloth.printing.choosing_places import Section, places_of, section_of, with_places
from presscloth.printing.html import StandingLink, html
from presscloth.printing.look import Look
from presscloth.printing.markup import caption_below
from presscloth.printing.names import slugs
from presscloth.printing.theme import Theme
from presscloth.tongue import say, speaking, spoken, tongue_of

DATA_FILE = "choices-data.js"
"""Beside the page: what follows how, as a script, since a page in a folder may read no other data."""

SCRIPTS = '<link rel="stylesheet" href="../theme/choices.css">\n' + "".join(
    f'<script src="{script}" defer></script>\n'
    for script in (DATA_FILE, "../theme/reckoning.js", "../theme/following.js", "../theme/choices.js")
)

FOLLOWING = ("finished", "intro", "materials", "tools", "cutting", "stages", "notes")
"""What of a handout may follow a choice."""


def choosable_html(
    booklet: Booklet,
    theme: Theme,
    publisher: Publisher,
    papers: tuple[str, ...] = (),
    standing: tuple[StandingLink, ...] = (),
) -> tuple[str, str]:
    """Write a booklet as `html` does, and the script beside it with what the page needs to follow."""
    following = Following(booklet, booklet.choices)
    pages = tuple(
        html(following.along(place), theme, publisher, papers, standing)
        for place in range(following.most_ways())
    )
    sizes = told(following, pages)
    data = page_data(booklet, sizes, theme.look)
    page = marked_page(pages[0], sizes).replace("</head>", f"{SCRIPTS}</head>", 1)
    return page, f"globalThis.pressclothChoices = {data};\n"


@dataclass(frozen=True)
class Following:
    """What a page must carry besides its text: the booklet, and its sizes with what may be chosen."""

    booklet: Booklet
    sizes: tuple[Followable | None, ...]

    def most_ways(self) -> int:
        return max((len(size.ways) for size in self.sizes if size is not None), default=0)

    def along(self, place: int) -> Booklet:
        """The booklet as it is reckoned along each size's way of that number, where it has one."""
        pairs = zip(self.booklet.handouts, self.sizes, strict=True)
        return Booklet(tuple(_along(handout, size, place) for handout, size in pairs))


def _along(handout: Handout, size: Followable | None, place: int) -> Handout:
    way = size.ways[place] if size is not None and place < len(size.ways) else None
    if way is None or way.handout is None:
        return handout
    return replace(handout, **{name: getattr(way.handout, name) for name in FOLLOWING})


@dataclass(frozen=True)
class _Told:
    """A size with the words along its ways: which ways can be followed, and at which places of the page."""

    name: str
    size: Followable
    sections: tuple[Section | None, ...]
    places: tuple[int, ...]


def told(following: Following, pages: Sequence[str]) -> tuple[_Told, ...]:
    """Lay the pages along all ways side by side; the recipe's own comes first.

    A way that changes more of a page than words and drawings has no section: it is not followed.
    """
    found = []
    names = slugs(tuple(handout.size for handout in following.booklet.handouts))
    for name, size in zip(names, following.sizes, strict=True):
        if size is not None:
            own = section_of(pages[0], name)
            along = (section_of(page, name) for page in pages[: len(size.ways)])
            sections = tuple(section if section.tags == own.tags else None for section in along)
            places = places_of([section for section in sections if section is not None])
            found.append(_Told(name, size, sections, places))
    return tuple(found)


def marked_page(page: str, sizes: Sequence[_Told]) -> str:
    """A page with an element for each place that follows; marks elsewhere (in the head) go."""
    for each in sizes:
        page = with_places(page, each.name, each.places)
    return unmarked(page)


def page_data(booklet: Booklet, sizes: Sequence[_Told], look: Look) -> str:
    """All that a page's script needs, as JSON."""
    with speaking(tongue_of(booklet.first.language)):
        data: Json = {
            "words": _words(),
            "tongue": _tongue(),
            "look": [look.drawings.scale, look.drawings.alone, look.drawings.in_text],
            "hatch": {_class(ink): inked.hatch for ink, inked in look.inks.items() if inked.hatch},
            "sizes": {each.name: _size(each) for each in sizes},
        }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def _words() -> Json:
    return {
        "yours": say("Yours to choose"),
        "range": say("from {least} to {most}"),
        "own": say("Back to the recipe’s {own}"),
        "changed": say("Numbers that follow your choice are underlined with dots."),
        "outside": say("{typed} lies outside the range from {least} to {most}. {own} stays."),
        "unread": say("“{typed}” cannot be read as a measure; write 7.5, 7 1/2 or 7½. {own} stays."),
        "comma": say("Write a point: {point} instead of {typed}. {own} stays."),
        "broken": say("{typed} does not work: {why}. {own} stays."),
        "lost": say("The page cannot follow {typed}. {own} stays."),
        "near": say("The page cannot follow {typed}; the nearest that it can is {near}. {own} stays."),
        "drawing": say("This drawing still shows the recipe’s own measures."),
    }


def _tongue() -> Json:
    ways = spoken().ways
    return {
        "decimal": ways.decimal,
        "thousands": ways.thousands,
        "units": {unit: list(words) for unit, words in ways.units.items()},
    }


def _size(told: _Told) -> Json:
    nodes = Nodes(told.size.following)
    pairs = zip(told.size.ways, told.sections, strict=True)
    ways = [_way(way, section, told.places, nodes) for way, section in pairs if section is not None]
    return {
        "offers": [_offer(offer) for offer in told.size.offers],
        "ways": ways,
        "drawings": nodes.drawings,
        "nodes": nodes.written(),
    }


def _offer(offer: Offer) -> Json:
    def values(quantity: Quantity) -> Json:
        return [number(quantity.metric), number(quantity.imperial)]

    def text(quantity: Quantity) -> Json:
        return [printed(quantity, system).text for system in System]

    return {
        "name": offer.label,
        "note": offer.note,
        "kind": offer.kind.value,
        "units": [offer.units[system] for system in System],
        "factors": [number(offer.factor(system)) for system in System],
        "steps": [number(offer.step(system)) for system in System],
        "own": values(offer.own),
        "least": values(offer.least),
        "most": values(offer.most),
        "texts": [text(offer.own), text(offer.least), text(offer.most)],
    }


def _way(way: Way, section: Section, places: Sequence[int], nodes: Nodes) -> Json:
    guards = nodes.guards(way.guards)
    if way.handout is None:
        return {"when": guards, "broken": [nodes.text(why) for why in way.broken]}
    return {
        "when": guards,
        "put": [nodes.marks(section.template(place)) for place in places],
        "pieces": [_drawn(each, nodes) for each in way.pieces] if _varies(way.pieces) else [],
        "steps": [[_drawn(each, nodes) for each in step] if _varies(step) else [] for step in way.steps],
    }


def _varies(ways: Sequence[DrawnWay]) -> bool:
    """Whether anything in a drawing follows the choice."""
    return any(
        MARKED.search(f"{drawing.alt} {drawing.caption}") or any(_follows(s) for s in drawing.shapes)
        for way in ways
        for drawing in way.drawings
    )


def _follows(shape: Shape) -> bool:
    match shape:
        case Line(points=points) | Area(points=points):
            numbers = [each for point in points for each in point]
        case Disc():
            numbers = [shape.x, shape.y, shape.radius]
        case Arrow():
            numbers = [*shape.start, *shape.end]
        case Lettering():
            numbers = [shape.x, shape.y, shape.size, shape.turned]
            if MARKED.search(shape.text):
                return True
    return any(isinstance(each, Real) for each in numbers)


def _drawn(way: DrawnWay, nodes: Nodes) -> Json:
    return {"when": nodes.guards(way.guards), "of": [nodes.once(_drawing(d, nodes)) for d in way.drawings]}


def _drawing(drawing: Drawing, nodes: Nodes) -> Json:
    return {
        "size": [_place(drawing.width, nodes), _place(drawing.height, nodes)],
        "alt": nodes.text(drawing.alt or drawing.caption),
        "caption": nodes.text(caption_below(drawing)),
        "shapes": [_shape(shape, nodes) for shape in drawing.shapes],
    }


def _place(value: float, nodes: Nodes) -> Json:
    """A number of a drawing: to the thousandth, or the node that gives it, in brackets."""
    return [nodes.place(value.form)] if isinstance(value, Real) else short(round(value, 2))


def _places(points: Sequence[tuple[float, float]], nodes: Nodes) -> list[Json]:
    return [_place(each, nodes) for point in points for each in point]


def _box(places: Sequence[Json]) -> Sequence[Json]:
    """Left, top, right and bottom of an upright rectangle; empty where it is none."""
    if len(places) != 8:
        return []
    left, top, right, bottom = places[0], places[1], places[4], places[5]
    return (
        [left, top, right, bottom] if places == [left, top, right, top, right, bottom, left, bottom] else []
    )


def _class(ink: Ink | None) -> str:
    return "" if ink is None else ink.value.replace(" ", "-")


def _shape(shape: Shape, nodes: Nodes) -> Json:
    match shape:
        case Line(points, ink):
            return ["line", _class(ink), _places(points, nodes)]
        case Area(points, ink, edge):
            places = _places(points, nodes)
            box = _box(places)
            return ["box" if box else "area", _class(ink), _class(edge), box or places]
        case Disc(x, y, radius, ink, edge):
            where = [_place(each, nodes) for each in (x, y, radius)]
            return ["disc", _class(ink), _class(edge), where]
        case Arrow(start, end, ink, both):
            return ["arrow", _class(ink), _places((start, end), nodes), both]
        case Lettering(x, y, text, size, anchor, turned, bold):
            where = [_place(each, nodes) for each in (x, y)]
            return ["words", where, nodes.text(text), size, anchor, turned, bold]
