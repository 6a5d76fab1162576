"""How the parts of a thing lie in it, so that it can be drawn, and which way up they are.

Places are in millimetres of the metric system, x to the right and y downwards from the upper left
corner of the thing as it lies flat.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from enum import Enum
from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.measure.following import is_following
from presscloth.outline import Drafted
from presscloth.source import Span

NOWHERE = Fraction(0)
"""No way from the upper left corner: what is not moved lies here."""


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle, from its upper left corner."""

    x: Fraction
    y: Fraction
    width: Fraction
    height: Fraction

    def moved(self, x: Fraction, y: Fraction) -> Box:
        return Box(self.x + x, self.y + y, self.width, self.height)


@dataclass(frozen=True, slots=True)
class Part:
    """A cut piece in a thing.

    `box` is where it lies, None where nobody said where. `turned` counts quarters clockwise; `back`
    is true where it lies behind and is seen from there. `way` says why it matters which way up it
    is (`one way`, `stitched out`), None where it does not. `outline` is what it is cut by, if by one.
    """

    name: str
    box: Box | None
    turned: int
    back: bool
    way: str | None
    row: Span
    outline: Drafted | None = None


class Mark(Enum):
    """What a line across a thing is."""

    SEAM = "seam"
    FOLD = "fold"


@dataclass(frozen=True, slots=True)
class Line:
    """A seam or a fold in a thing, from point to point."""

    mark: Mark
    start: tuple[Fraction, Fraction]
    end: tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Lying:
    """One of the things that were used, as it lies in what was made of them."""

    name: str
    box: Box
    turned: int
    back: bool
    parts: tuple[Part, ...]


@dataclass(frozen=True, slots=True)
class Arranged:
    """How the things that a statement used lie in what it made, and the lines across that.

    `parts` are given where they are not simply those of what lies in it.
    """

    lying: tuple[Lying, ...] = ()
    lines: tuple[Line, ...] = ()
    parts: tuple[Part, ...] | None = None


class Arrangement:
    """How things lie in another, worked out when somebody first asks: a drawing does, most proofs do not.

    `before` are the arrangements of the things that lie in it. They are worked out first and one after
    another, so that a long chain of statements is no deep one.
    """

    def __init__(self, arrange: Callable[[], Arranged], before: tuple[Arrangement, ...] = ()) -> None:
        self._arrange = arrange
        self._before = before
        self._arranged: Arranged | None = None
        # What is followed is worked out where it is made, among the guards of what it was made by.
        if is_following():
            self._work_out()

    @property
    def lying(self) -> tuple[Lying, ...]:
        return self._known().lying

    @property
    def lines(self) -> tuple[Line, ...]:
        return self._known().lines

    @property
    def parts(self) -> tuple[Part, ...]:
        return self._known().parts or ()

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Arrangement) and self._known() == other._known()

    def __hash__(self) -> int:
        return hash(self._known())

    def _known(self) -> Arranged:
        waiting = [self]
        while waiting:
            unknown = [each for each in waiting[-1]._before if each._arranged is None]
            if unknown:
                waiting += unknown
            else:
                waiting.pop()._work_out()
        return self._work_out()

    def _work_out(self) -> Arranged:
        if self._arranged is None:
            arranged = self._arrange()
            if arranged.parts is None:
                arranged = replace(arranged, parts=parts_of(arranged.lying))
            self._arranged, self._before = arranged, ()
        return self._arranged


def quarter_turned(part: Part, height: Fraction) -> Part:
    """A part after its thing, `height` high, was turned clockwise by a quarter."""
    box = part.box
    if box is not None:
        box = Box(height - box.y - box.height, box.x, box.height, box.width)
    return replace(part, box=box, turned=(part.turned + 1) % 4)


def parts_turned(parts: Iterable[Part], quarters: int, width: Fraction, height: Fraction) -> tuple[Part, ...]:
    """The parts of a thing, `width` by `height`, that is turned clockwise by quarters."""
    found = tuple(parts)
    for _ in range(quarters % 4):
        found = tuple(quarter_turned(part, height) for part in found)
        width, height = height, width
    return found


def parts_moved(parts: Iterable[Part], x: Fraction, y: Fraction) -> tuple[Part, ...]:
    if x is NOWHERE and y is NOWHERE:
        return tuple(parts)
    return tuple(part if part.box is None else replace(part, box=part.box.moved(x, y)) for part in parts)


def somewhere(parts: Iterable[Part]) -> tuple[Part, ...]:
    """The parts of what is sewn onto something: which way up is known, where is not."""
    return tuple(replace(part, box=None) for part in parts)


def parts_of(lying: Iterable[Lying]) -> tuple[Part, ...]:
    return tuple(part for each in lying for part in each.parts)


def folded_up(parts: Iterable[Part], middle: Fraction) -> tuple[Part, ...]:
    """The parts of a thing whose lower half is folded up behind it, along a line at `middle`.

    What lay below is now seen from behind, and the other way up; what the line crosses is on both
    sides. Of a part that lies nobody knows where, nothing is known any more.
    """
    found: list[Part] = []
    for part in parts:
        box = part.box
        if box is None:
            continue
        above, below = max(middle - box.y, Fraction(0)), max(box.y + box.height - middle, Fraction(0))
        if above:
            front = Box(box.x, box.y, box.width, min(box.height, above))
            found.append(replace(part, box=front))
        if below:
            size = min(box.height, below)
            behind = Box(box.x, 2 * middle - box.y - box.height, box.width, size)
            found.append(replace(part, box=behind, turned=(part.turned + 2) % 4, back=not part.back))
    return tuple(found)


def seen_in(parts: Iterable[Part], window: Box) -> tuple[Part, ...]:
    """What of the parts lies inside a window, placed from the window's corner."""
    across = within(parts, window.x, window.x + window.width, across=True)
    inside = within(across, window.y, window.y + window.height, across=False)
    return parts_moved(inside, -window.x, -window.y)


def within(parts: Iterable[Part], start: Fraction, end: Fraction, *, across: bool) -> tuple[Part, ...]:
    """What of the parts lies between two lines, upright ones (`across`) or level ones, where it lies."""
    found: list[Part] = []
    for part in parts:
        box = part.box
        if box is None:
            found.append(part)
            continue
        first = box.x if across else box.y
        last = first + (box.width if across else box.height)
        if first >= start and last <= end:
            found.append(part)
            continue
        first, last = max(first, start), min(last, end)
        if last > first:
            size = last - first
            cut = Box(first, box.y, size, box.height) if across else Box(box.x, first, box.width, size)
            found.append(replace(part, box=cut))
    return tuple(found)
