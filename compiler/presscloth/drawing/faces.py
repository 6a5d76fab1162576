"""The face of a thing: its outline as it lies flat, drawn to scale, with the seams between its pieces."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from presscloth.drawing.deeds import Deed, side, size
from presscloth.drawing.dimensions import LETTERS, across, breadth, down, name_in
from presscloth.drawing.panels import Point, closed, corners
from presscloth.drawing.reals import greater, lesser, on_page
from presscloth.drawing.silhouettes import Place, only_piece, silhouette
from presscloth.drawing.tree import Area, Disc, Ink, Lettering, Line, Shape
from presscloth.frozen import dataclass
from presscloth.measure import Quantity
from presscloth.sewing.placing import Box, Part
from presscloth.sewing.things import Circle, Hollow, Long, Shaped, Thing, Triangle
from presscloth.tongue import named

WIDEST, TALLEST = 56.0, 34.0
LEAST = 3.0
"""In mm of the page; what is thinner could not be told from a line."""

COVERED = Fraction(19, 20)
"""So much of a thing the pieces in it must cover for the seams between them to be known."""

BEFORE = 14.0
"""Room at the left, so that words below a narrow thing stay on the drawing."""


@dataclass(frozen=True, slots=True)
class Face:
    """Where a thing stands on the page, and mm of the page for one mm of cloth.

    `piece` is what it alone consists of, where that is cut by an outline.
    """

    x: float
    y: float
    width: float
    height: float
    scale: float
    is_round: bool = False
    piece: Part | None = None

    @property
    def right(self) -> float:
        return self.x + self.width

    @property
    def bottom(self) -> float:
        return self.y + self.height

    @property
    def outline(self) -> tuple[Point, ...]:
        return corners(self.x, self.y, self.width, self.height)

    @property
    def place(self) -> Place:
        return Place(self.x, self.y, self.width, self.height, self.piece.turned if self.piece else 0)

    @property
    def silhouette(self) -> tuple[Point, ...] | None:
        """The true line of what is cut by an outline; None where it is none, or several are sewn together."""
        outline = None if self.piece is None else self.piece.outline
        return None if outline is None else silhouette(outline, self.place)

    def edge(self, name: str) -> tuple[Point, Point]:
        upper_left, upper_right, lower_right, lower_left = self.outline
        ends = {
            "top": (upper_left, upper_right),
            "bottom": (lower_left, lower_right),
            "left": (upper_left, lower_left),
            "right": (upper_right, lower_right),
        }
        return ends.get(name, (upper_left, upper_right))

    def strip(self, name: str, deep: float) -> tuple[Point, ...]:
        """A strip along an edge, inside of it."""
        match name:
            case "bottom":
                return corners(self.x, self.bottom - deep, self.width, deep)
            case "left":
                return corners(self.x, self.y, deep, self.height)
            case "right":
                return corners(self.right - deep, self.y, deep, self.height)
            case _:
                return corners(self.x, self.y, self.width, deep)

    def inner(self, name: str, deep: float) -> tuple[Point, Point]:
        """The line inside of an edge, parallel to it."""
        (x1, y1), (x2, y2) = self.edge(name)
        x, y = {"top": (0, deep), "bottom": (0, -deep), "left": (deep, 0), "right": (-deep, 0)}.get(
            name, (0, deep)
        )
        return (x1 + x, y1 + y), (x2 + x, y2 + y)


def extent(thing: Thing) -> tuple[Quantity, Quantity] | None:
    """How wide and how high a thing lies; a tape lies level and is drawn as thick as a line can be."""
    if isinstance(thing.shape, Long):
        return thing.shape.length, thing.shape.length
    return size(thing.shape)


def face_of(thing: Thing, widest: float = WIDEST, tallest: float = TALLEST) -> Face | None:
    """A thing as large as the room allows; None where its size is not known."""
    found = extent(thing)
    if found is None:
        return None
    wide, high = on_page(found[0].metric), on_page(found[1].metric)
    if wide <= 0 or high <= 0:
        return None
    if isinstance(thing.shape, Long):
        scale = widest / wide
        return Face(BEFORE, BEFORE, widest, LEAST, scale)
    scale = lesser(widest / wide, tallest / high)
    return Face(
        BEFORE,
        BEFORE,
        greater(wide * scale, LEAST),
        greater(high * scale, LEAST),
        scale,
        isinstance(thing.shape, Circle) or (isinstance(thing.shape, Hollow) and _is_disc(thing.shape)),
        only_piece(thing.parts),
    )


def _is_disc(hollow: Hollow) -> bool:
    return hollow.round and not hollow.ends and hollow.depth is None


def drawn(face: Face, thing: Thing, ink: Ink = Ink.CLOTH) -> Iterator[Shape]:
    """Its outline, and the seams between the pieces of which it is made."""
    if face.is_round:
        yield Disc(face.x + face.width / 2, face.y + face.height / 2, face.width / 2, ink, Ink.CUT)
        return
    if face.silhouette is not None:
        yield Area(face.silhouette, ink, Ink.CUT)
        return
    match thing.shape:
        case Triangle(quarter=True):
            tip = (face.x + face.width / 2, face.y)
            yield Area((tip, face.outline[2], face.outline[3]), ink, Ink.CUT)
        case Triangle():
            yield Area((face.outline[0], face.outline[2], face.outline[3]), ink, Ink.CUT)
        case Shaped():
            # Several are sewn together: the box around them is what can be measured here.
            yield Line(closed(face.outline), Ink.HIDDEN)
        case _:
            yield Area(face.outline, ink, Ink.CUT)
    for box in _tiles(thing):
        yield Line(closed(_inside(face, box)), Ink.SEAM)


def _tiles(thing: Thing) -> tuple[Box, ...]:
    """The boxes of the pieces that make up the front; none where they do not cover it, as behind gathers."""
    boxes = tuple(part.box for part in thing.parts if part.box is not None and not part.back)
    whole = size(thing.shape)
    if len(boxes) < 2 or whole is None:
        return ()
    covered = sum(box.width * box.height for box in boxes)
    return boxes if covered >= COVERED * whole[0].metric * whole[1].metric else ()


def _inside(face: Face, box: Box) -> tuple[Point, ...]:
    left = lesser(face.right, face.x + on_page(box.x) * face.scale)
    top = lesser(face.bottom, face.y + on_page(box.y) * face.scale)
    right = lesser(face.right, left + on_page(box.width) * face.scale)
    bottom = lesser(face.bottom, top + on_page(box.height) * face.scale)
    return corners(left, top, right - left, bottom - top)


def sized(face: Face, thing: Thing, deed: Deed, below: float = 0.0, aside: float = 0.0) -> Iterator[Shape]:
    """Its dimensions below and to the right; `below` and `aside` leave room for what stands out there."""
    found = extent(thing)
    if found is None:
        return
    yield from across(face.x, face.right, face.bottom + 3.5 + below, deed.said(found[0]))
    if not isinstance(thing.shape, Long) and not face.is_round:
        yield from down(face.y, face.bottom, face.right + 3.5 + aside, deed.said(found[1]))


def titled(face: Face, words: str) -> Iterator[Shape]:
    """The name of a thing above it."""
    broad = breadth(words)
    middle = greater(face.x + face.width / 2, broad / 2 + 0.5)
    yield Lettering(middle, face.y - LETTERS - 0.4, words, LETTERS, bold=True)


def named_inside(face: Face, name: str, off: float = 0.0) -> Iterator[Shape]:
    """The name of a thing in its middle, where it fits."""
    found, told = name_in(named(name), "", face.x, face.y + off, face.width, face.height - off)
    if told:
        yield found


def told_size(thing: Thing, deed: Deed) -> str:
    """`20 cm (8 in) × 30 cm (12 in)`, or how long; nothing where a thing has no size."""
    if isinstance(thing.shape, Long):
        return deed.said(thing.shape.length)
    found = size(thing.shape)
    if found is None:
        return ""
    if isinstance(thing.shape, Circle):
        return deed.said(found[0])
    depth = side(thing.shape, "depth")
    return " × ".join(deed.said(each) for each in (found if depth is None else (*found, depth)))
