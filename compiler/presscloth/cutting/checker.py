"""Check a layout again, with nothing but the parts and the cloth: shares no code with the engine.

A wrong layout would be cut into cloth, so whatever laid it out, every layout passes here before it
is printed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from presscloth.cutting.parts import Layout, Part, Placed
from presscloth.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Outside:
    """A piece that reaches beyond the cloth; by its place in the layout."""

    piece: int


@dataclass(frozen=True, slots=True)
class Overlap:
    """Two pieces that lie on one another."""

    one: int
    other: int


@dataclass(frozen=True, slots=True)
class WrongCount:
    """More or fewer pieces of a part than are wanted."""

    part: int
    wanted: int
    laid: int


@dataclass(frozen=True, slots=True)
class NoSuchPart:
    """A piece of a part that there is not."""

    piece: int


@dataclass(frozen=True, slots=True)
class AgainstGrain:
    """A piece that lies turned and must not."""

    piece: int


@dataclass(frozen=True, slots=True)
class NotInStrips:
    """Two pieces in one strip, across the full width, that no cut along the strip parts."""

    one: int
    other: int


Fault = Outside | Overlap | WrongCount | NoSuchPart | AgainstGrain | NotInStrips


@dataclass(frozen=True, slots=True)
class _Box:
    """Where a piece lies: from `x` to `right`, from `y` to `end`."""

    piece: int
    x: int
    right: int
    y: int
    end: int


def check(
    parts: Sequence[Part], layouts: Sequence[Layout], *, length: int, strips: bool
) -> tuple[Fault, ...]:
    """Everything that is wrong with layouts that together hold all parts, on cloths of this length.

    A piece is named by its place among the pieces of all layouts. With `strips`, each layout must
    come apart by cuts across the full width into strips, and each strip by cuts along into its pieces.
    """
    faults: list[Fault] = []
    laid = Counter(piece.part for layout in layouts for piece in layout.placed)
    for number, part in enumerate(parts):
        if laid[number] != part.quantity:
            faults.append(WrongCount(number, part.quantity, laid[number]))
    first = 0
    for layout in layouts:
        boxes = []
        for piece, placed in enumerate(layout.placed, first):
            if not 0 <= placed.part < len(parts):
                faults.append(NoSuchPart(piece))
                continue
            part = parts[placed.part]
            if placed.turned and not part.turnable:
                faults.append(AgainstGrain(piece))
            boxes.append(_box(piece, placed, part))
        faults.extend(Outside(box.piece) for box in boxes if not _inside(box, layout.width, length))
        faults.extend(_overlaps(boxes))
        if strips:
            faults.extend(_not_in_strips(boxes))
        first += len(layout.placed)
    return tuple(faults)


def _box(piece: int, placed: Placed, part: Part) -> _Box:
    wide, high = (part.height, part.width) if placed.turned else (part.width, part.height)
    return _Box(piece, placed.x, placed.x + wide, placed.y, placed.y + high)


def _inside(box: _Box, width: int, length: int) -> bool:
    return box.x >= 0 and box.y >= 0 and box.right <= width and box.end <= length


def _overlaps(boxes: Sequence[_Box]) -> Iterator[Overlap]:
    """A line is swept along the cloth; only pieces that it meets together can overlap."""
    met: list[_Box] = []
    for box in sorted(boxes, key=lambda box: box.y):
        met = [other for other in met if other.end > box.y]
        for other in met:
            if other.x < box.right and box.x < other.right:
                yield Overlap(*sorted((other.piece, box.piece)))
        met.append(box)


def _not_in_strips(boxes: Sequence[_Box]) -> Iterator[NotInStrips]:
    """A strip ends where no piece lies across the whole width; in a strip no piece is behind another."""
    strip: list[_Box] = []
    for box in sorted(boxes, key=lambda box: box.y):
        if strip and box.y >= max(other.end for other in strip):
            strip = []
        for other in strip:
            if other.x < box.right and box.x < other.right:
                yield NotInStrips(*sorted((other.piece, box.piece)))
        strip.append(box)
