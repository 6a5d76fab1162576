"""Things as they lie on the table: shapes with named edges, each with its own length and state.

All lengths are exact and hold in both systems. A length takes the raw edges' allowances in; what
is between the stitch lines is worked out by `measuring`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from enum import Enum
from functools import cached_property
from types import MappingProxyType

from presscloth.frozen import dataclass
from presscloth.measure import Quantity, compare, same_length
from presscloth.measure.quantity import System
from presscloth.recipe.tree import Form
from presscloth.sewing.lengths import NOTHING, less, longest, times, total
from presscloth.sewing.placing import Arranged, Arrangement, Part
from presscloth.source import Span

SIDES = ("left", "right", "top", "bottom")
LONG_SIDE = "long side"
OPPOSITE: Mapping[str, str] = MappingProxyType(
    {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}
)
CLOCKWISE = ("top", "right", "bottom", "left")


class State(Enum):
    """What has been done to an edge; the value is the word that messages use."""

    RAW = "raw"
    SEWN = "sewn"
    FOLDED = "folded"
    FINISHED = "finished"


@dataclass(frozen=True, slots=True)
class Rim:
    """An edge's state, and the allowance of a raw one; None where it has none of its own."""

    state: State
    allowance: Quantity | None = None

    @property
    def raw(self) -> bool:
        return self.state is State.RAW

    @property
    def taken_off(self) -> Quantity:
        """What a raw edge takes off what meets it; nothing where its allowance is not known."""
        return NOTHING if self.allowance is None else self.allowance


FINISHED = Rim(State.FINISHED)
FOLDED = Rim(State.FOLDED)
SEWN = Rim(State.SEWN)


def alike(one: Rim, other: Rim) -> bool:
    """Whether two rims are in one state, raw ones with the same allowance."""
    if one.state is not other.state:
        return False
    return not one.raw or same_allowance(one.allowance, other.allowance)


def same_allowance(one: Quantity | None, other: Quantity | None) -> bool:
    if one is other:
        return True
    if one is None or other is None:
        return False
    return all(same_length(one[system], other[system], system) for system in System)


def together(rims: tuple[Rim, ...]) -> Rim | None:
    """The rim of an edge that consists of several; None where some are raw and some are not."""
    first = rims[0]
    if all(alike(first, other) for other in rims[1:]):
        return first
    if all(rim.raw for rim in rims):
        return Rim(State.RAW)
    return None if any(rim.raw for rim in rims) else FINISHED


@dataclass(frozen=True)
class Edge:
    """An edge: its length from corner to corner, and its rim.

    `first` and `last` are the rims at its two ends, seen from above from left to right or from top
    to bottom. They differ where an edge consists of several; `rim` is None where it is partly raw.
    """

    length: Quantity
    rim: Rim | None
    first: Rim
    last: Rim

    @classmethod
    def plain(cls, length: Quantity, rim: Rim) -> Edge:
        return cls(length, rim, rim, rim)

    def long(self, length: Quantity) -> Edge:
        return Edge(length, self.rim, self.first, self.last)

    def finished(self, length: Quantity, rim: Rim = FINISHED) -> Edge:
        return Edge.plain(length, rim)

    def between(self, one: Rim, other: Rim) -> Quantity:
        """How long its stitching is between two rims; what is sewn again and again is reckoned once."""
        for first, last, stitched in self._known:
            if first is one and last is other:
                return stitched
        stitched = less(self.length, one.taken_off, other.taken_off)
        self._known.append((one, other, stitched))
        return stitched

    @cached_property
    def has_length(self) -> bool:
        """Whether it is longer than nothing in both systems."""
        return all(compare(self.length[system], NOTHING[system], system) > 0 for system in System)

    @cached_property
    def _known(self) -> list[tuple[Rim, Rim, Quantity]]:
        return []

    @property
    def turned_end(self) -> Edge:
        """The edge as it is seen when its thing has been turned by half."""
        return Edge(self.length, self.rim, self.last, self.first)


def one_after_the_other(edges: tuple[Edge, ...], taken: Quantity) -> Edge:
    """One edge made of several; `taken` is what the seams between them take in all."""
    rims = tuple(edge.rim for edge in edges)
    known = tuple(rim for rim in rims if rim is not None)
    rim = together(known) if len(known) == len(rims) else None
    return Edge(less(total(edge.length for edge in edges), taken), rim, edges[0].first, edges[-1].last)


def _without(bow: Quantity, length: Quantity) -> Quantity:
    return length if bow is NOTHING else less(length, bow)


@dataclass(frozen=True)
class Flat:
    """A flat thing with four edges.

    `seam_at` is where the last seam that crossed it lies, from its top; `least` the smallest of its
    layers, width and height. `bow` is by how much curved or slanted edges are longer than it is wide
    and high; nothing where it is a rectangle.
    """

    left: Edge
    right: Edge
    top: Edge
    bottom: Edge
    seam_at: Quantity | None = None
    least: tuple[Quantity, Quantity] | None = None
    bow: tuple[Quantity, Quantity] = (NOTHING, NOTHING)

    @property
    def bowed(self) -> bool:
        """Whether it is no rectangle."""
        return self.bow[0] is not NOTHING or self.bow[1] is not NOTHING

    @property
    def is_something(self) -> bool:
        """Whether it is a rectangle with four edges in both systems, and so has a width and a height."""
        edges = self.left, self.right, self.top, self.bottom
        return not self.bowed and all(edge.has_length for edge in edges)

    def edge(self, name: str) -> Edge:
        match name:
            case "left":
                return self.left
            case "right":
                return self.right
            case "top":
                return self.top
            case _:
                return self.bottom

    @cached_property
    def width(self) -> Quantity:
        return _without(self.bow[0], longest((self.top.length, self.bottom.length)))

    @cached_property
    def height(self) -> Quantity:
        return _without(self.bow[1], longest((self.left.length, self.right.length)))


@dataclass(frozen=True, slots=True)
class Hollow:
    """A tube or a pouch, lying flat, right side out.

    `width` and `height` are those of the flat thing, an open end's raw allowance included; `ends`
    are its openings, each as long as it is around; `closed` tells how its other edges were closed.
    """

    width: Quantity
    height: Quantity
    depth: Quantity | None
    ends: Mapping[str, Edge]
    closed: Mapping[str, Rim]
    round: bool = False

    @property
    def upright(self) -> bool:
        """Whether what goes around it goes from side to side."""
        return not ("left" in self.ends or "right" in self.ends)

    @property
    def around(self) -> Quantity:
        """The way round it; round an open end where it tapers, the widest."""
        if self.ends:
            return longest(edge.length for edge in self.ends.values())
        across = self.width if self.upright else self.height
        return times(2, across if self.depth is None else total((across, self.depth)))


@dataclass(frozen=True, slots=True)
class Circle:
    """A flat round thing; `diameter` takes the allowance in."""

    diameter: Quantity
    rim: Rim


@dataclass(frozen=True, slots=True)
class Triangle:
    """A right-angled triangle with two equal legs, raw all round.

    A half-square triangle has its legs at the left and the bottom, a quarter-square triangle at the
    left and the right with its long side below. `leg` is from the right angle to the point, as cut.
    """

    leg: Quantity
    long_side: Quantity
    rim: Rim
    quarter: bool

    @property
    def legs(self) -> tuple[str, str]:
        return ("left", "right") if self.quarter else ("left", "bottom")


@dataclass(frozen=True, slots=True)
class Shaped:
    """A flat thing cut by an outline whose edges are not simply left, right, top and bottom.

    The `length` of an edge is that of its stitching. `width` and `height` are those of the box around
    the cutting line, `across` and `down` those of the seam line's; None where several are sewn together.
    """

    edges: Mapping[str, Edge]
    width: Quantity | None = None
    height: Quantity | None = None
    across: Quantity | None = None
    down: Quantity | None = None


@dataclass(frozen=True, slots=True)
class Long:
    """A tape, an elastic, a cord or a zip."""

    length: Quantity
    form: Form


@dataclass(frozen=True, slots=True)
class Whole:
    """A thing without measures: a button, a template, what is cut by an outline only."""


@dataclass(frozen=True, slots=True)
class Odd:
    """A thing whose outline is not worked out; its size is known where it was given with it."""

    width: Quantity | None = None
    height: Quantity | None = None
    rim: Rim | None = None


Shape = Flat | Hollow | Circle | Triangle | Shaped | Long | Whole | Odd


NO_ARRANGEMENT = Arrangement(Arranged)
"""That of a thing in which nothing lies."""


@dataclass(frozen=True, slots=True)
class Thing:
    """A thing with what is remembered of it.

    `parts` are the cut pieces as they lie in it; `directed` is true where it matters of one of them which
    way up it is; `gaps` how many turning gaps it has; `rows` the
    rows of Pieces from which it comes; `cause` the statement that made it although edges did not meet.
    """

    shape: Shape
    arrangement: Arrangement = NO_ARRANGEMENT
    directed: bool = False
    gaps: int = 0
    rows: tuple[Span, ...] = ()
    cause: Span | None = None

    @property
    def parts(self) -> tuple[Part, ...]:
        return self.arrangement.parts


def rectangle(width: Quantity, height: Quantity, rim: Rim) -> Flat:
    """A flat thing with one rim all round."""
    side, end = Edge.plain(height, rim), Edge.plain(width, rim)
    return Flat(side, side, end, end)


def turned(flat: Flat, quarters: int) -> Flat:
    """A flat thing turned clockwise by quarters: after one, its left edge lies at the top."""
    for _ in range(quarters % 4):
        flat = Flat(
            left=flat.bottom,
            top=flat.left.turned_end,
            right=flat.top,
            bottom=flat.right.turned_end,
            least=None if flat.least is None else (flat.least[1], flat.least[0]),
            bow=(flat.bow[1], flat.bow[0]),
        )
    return flat


def quarters_to(edge: str, place: str) -> int:
    """By how many quarters, clockwise, a thing is turned so that its `edge` comes to lie at `place`."""
    return (CLOCKWISE.index(place) - CLOCKWISE.index(edge)) % 4


def neighbours(flat: Flat, name: str) -> tuple[Rim, Rim]:
    """The rims that an edge meets at its two ends."""
    match name:
        case "left":
            return flat.top.first, flat.bottom.first
        case "right":
            return flat.top.last, flat.bottom.last
        case "top":
            return flat.left.first, flat.right.first
        case _:
            return flat.left.last, flat.right.last


def with_edge(flat: Flat, name: str, edge: Edge) -> Flat:
    """A flat thing with another edge in the place of one."""
    match name:
        case "left":
            return replace(flat, left=edge)
        case "right":
            return replace(flat, right=edge)
        case "top":
            return replace(flat, top=edge)
        case _:
            return replace(flat, bottom=edge)
