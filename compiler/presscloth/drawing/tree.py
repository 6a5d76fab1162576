"""Drawings as plain data: shapes in exact millimetres of the page, for any writer.

A drawing is `width` × `height` mm, x to the right, y downwards. Floats are allowed here and nowhere
else. What a shape means is told by its `ink`; a writer decides how an ink looks, in black and white
too.
"""

from __future__ import annotations

from enum import Enum

from presscloth.frozen import dataclass


class Ink(Enum):
    """What a line or an area stands for."""

    CUT = "cut"  # the edge of a piece
    SEAM = "seam"  # a stitch line
    FOLD = "fold"  # a fold
    GRAIN = "grain"  # the grain arrow
    DIMENSION = "dimension"  # dimension lines and their ticks
    CLOTH = "cloth"  # an area of right side
    WRONG_SIDE = "wrong side"  # an area of wrong side
    WASTE = "waste"  # what is left of the cloth, hatched
    SELVEDGE = "selvedge"
    HIDDEN = "hidden"  # an edge that lies below


@dataclass(frozen=True, slots=True)
class Line:
    """A run of straight lines through `points`."""

    points: tuple[tuple[float, float], ...]
    ink: Ink


@dataclass(frozen=True, slots=True)
class Area:
    """A closed outline through `points`, filled; `edge` draws its outline too."""

    points: tuple[tuple[float, float], ...]
    ink: Ink
    edge: Ink | None = None


@dataclass(frozen=True, slots=True)
class Disc:
    x: float
    y: float
    radius: float
    ink: Ink
    edge: Ink | None = None


@dataclass(frozen=True, slots=True)
class Arrow:
    """A straight arrow; `both` gives it a head at each end (a grain arrow)."""

    start: tuple[float, float]
    end: tuple[float, float]
    ink: Ink
    both: bool = False


@dataclass(frozen=True, slots=True)
class Lettering:
    """Words at a point, by their middle, `start` or `end`; `size` is in mm, `turned` in degrees."""

    x: float
    y: float
    text: str
    size: float
    anchor: str = "middle"
    turned: float = 0.0
    bold: bool = False


Shape = Line | Area | Disc | Arrow | Lettering


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing with the words that stand for it (`alt`) and, where there is one, a caption."""

    width: float
    height: float
    shapes: tuple[Shape, ...]
    alt: str
    caption: str = ""
