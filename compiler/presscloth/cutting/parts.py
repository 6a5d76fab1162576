"""What is cut, from what, and how it lies. All lengths are whole numbers of one unit.

The engine does not care which unit: a caller chooses one that holds its measures exactly. 1/80 mm
holds both systems (1 mm is 80, 1/16 in is 127). x and width run across the cloth from the left
selvedge, y and height along it from the cut end.
"""

from __future__ import annotations

from enum import Enum

from presscloth.frozen import dataclass


class Way(Enum):
    """How the cutter works: any layout, or full-width strips first, cut across afterwards."""

    FREE = "free"
    STRIPS = "strips"


@dataclass(frozen=True, slots=True)
class Roll:
    """Cloth sold by length, of one usable `width`."""

    width: int


@dataclass(frozen=True, slots=True)
class Sheet:
    """Cloth sold in pieces of one size: a sheet, a fat quarter."""

    width: int
    length: int


@dataclass(frozen=True, slots=True)
class Part:
    """`quantity` equal rectangles, `height` along the selvedge; `turnable` by a quarter turn."""

    name: str
    width: int
    height: int
    quantity: int
    turnable: bool = False

    @property
    def area(self) -> int:
        """The area of all of them."""
        return self.width * self.height * self.quantity


@dataclass(frozen=True, slots=True)
class Placed:
    """One piece on the cloth: the number of its part, its corner nearest to (0, 0), and its turn."""

    part: int
    x: int
    y: int
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Layout:
    """Pieces on one length of cloth; `length` is where the last of them ends."""

    width: int
    length: int
    placed: tuple[Placed, ...]


@dataclass(frozen=True, slots=True)
class Cut:
    """How much of a roll to buy, and how the pieces lie on it.

    `need` is the layout's length, `bought` the next purchase step at or above it. No layout can do
    with less than `bound`, itself a whole number of steps; `proved` says that `bought` is the least.
    `work` is what was spent of the budget.
    """

    layout: Layout
    need: int
    bought: int
    bound: int
    proved: bool
    work: int = 0


@dataclass(frozen=True, slots=True)
class CutSheets:
    """How many sheets to buy, and a layout for each; no cutting can do with fewer than `bound`."""

    layouts: tuple[Layout, ...]
    bought: int
    bound: int
    proved: bool


@dataclass(frozen=True, slots=True)
class DoesNotFit:
    """Parts that the cloth cannot hold, whichever way they may lie; by their numbers."""

    parts: tuple[int, ...]


def end_of(part: Part, placed: Placed) -> tuple[int, int]:
    """The corner of a placed piece that is farthest from (0, 0)."""
    across, along = (part.height, part.width) if placed.turned else (part.width, part.height)
    return placed.x + across, placed.y + along


def lies_of(part: Part) -> list[tuple[int, int]]:
    """The ways a part may lie: (across, along), as it is and turned."""
    lies = [(part.width, part.height)]
    return [*lies, (part.height, part.width)] if part.turnable and part.width != part.height else lies
