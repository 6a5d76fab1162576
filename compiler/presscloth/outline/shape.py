"""A piece's outline, worked out: its edges all round, in one system and in both."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.measure import Quantity, System
from presscloth.outline.stretches import Arc, Point, Stretch


class Closing(Enum):
    """How an outline comes back to where it began; the value is how an author says it."""

    ROUND = "all round"
    FOLD = "on the fold"
    MIRRORED = "mirrored"


@dataclass(frozen=True, slots=True)
class Traced:
    """One edge along the seam line, in mm or in: its stretches, clockwise, and its seam allowance.

    `notches` are measured along it from its start; `runs` are the numbers of the runs that it comes from.
    """

    name: str
    stretches: tuple[Stretch, ...]
    length: Fraction
    allowance: Fraction
    notches: tuple[Fraction, ...] = ()
    runs: tuple[int, ...] = ()


@dataclass(frozen=True, eq=False)
class Contour:
    """A whole outline in one system, clockwise on the page; one that is mirrored has both halves.

    `fold` is the line over which the second half lies, None where there is none; `drawn` are the edges
    of the half at its one side, or all.
    """

    edges: tuple[Traced, ...]
    drawn: tuple[Traced, ...]
    fold: tuple[Point, Point] | None


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge in both systems: the length of its seam line, and its allowance."""

    name: str
    length: Quantity
    allowance: Quantity


@dataclass(frozen=True, slots=True)
class Drafted:
    """The outline of a piece in both systems, each in its own numbers.

    `edges` are in the order in which they follow each other, clockwise. `width` and `height` are those
    of the box around the cutting line, `across` and `down` those of the seam line's.
    """

    name: str
    closing: Closing
    edges: tuple[Edge, ...]
    width: Quantity
    height: Quantity
    across: Quantity
    down: Quantity
    metric: Contour
    imperial: Contour

    def __getitem__(self, system: System) -> Contour:
        return self.metric if system is System.METRIC else self.imperial


def circle_of(contour: Contour) -> Fraction | None:
    """The radius of the circle that an outline is; None where it is none."""
    arcs = [stretch for edge in contour.edges for stretch in edge.stretches]
    first = arcs[0]
    if not isinstance(first, Arc) or len({edge.allowance for edge in contour.edges}) > 1:
        return None
    for arc in arcs:
        if not isinstance(arc, Arc) or any(abs(a - b) > _NOISE for a, b in _compared(arc, first)):
            return None
    return first.radius


_NOISE = Fraction(1, 10**20)


def _compared(arc: Arc, first: Arc) -> tuple[tuple[Fraction, Fraction], ...]:
    return (
        (arc.radius, first.radius),
        (arc.centre[0], first.centre[0]),
        (arc.centre[1], first.centre[1]),
    )
