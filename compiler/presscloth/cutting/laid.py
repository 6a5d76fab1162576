"""Transform the pieces of one material, in one system, into what they take of the cloth.

Here the engine is asked, its answer is checked, and the purchase is counted in the shop's steps.
Lengths are in 1/80 mm of the cloth as it is cut, after washing.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor
from pathlib import Path

from presscloth.cutting.alike import alike
from presscloth.cutting.checker import check
from presscloth.cutting.keeping import Rows, kept
from presscloth.cutting.laying import BUDGET, lay_out, least_length
from presscloth.cutting.outline_checker import check_outlines
from presscloth.cutting.outlines import Outline, OutlineLayout, PlacedOutline, Point, turned
from presscloth.cutting.outlining import BUDGET as OUTLINE_BUDGET
from presscloth.cutting.outlining import lay_out_outlines
from presscloth.cutting.parts import DoesNotFit, Layout, Part, Placed, Roll, Sheet, Way, end_of
from presscloth.cutting.pieces import Pieces
from presscloth.cutting.refuting import cloths_needed
from presscloth.cutting.shaped import rectangle_within
from presscloth.cutting.sheets import lay_out_sheets
from presscloth.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Lying:
    """One piece on the cloth: its name, the number of its kind, and its corners.

    `rest`: where a layout is shown in parts, what of it lies beyond the end of an earlier part.
    """

    name: str
    part: int
    corners: tuple[Point, ...]
    rest: bool = False


@dataclass(frozen=True, slots=True)
class OnCloth:
    """The pieces on one length or sheet of cloth; x runs across it, y along it."""

    width: int
    length: int
    pieces: tuple[Lying, ...]


@dataclass(frozen=True, slots=True)
class Laid:
    """What is taken of the cloth: how far it reaches, how many steps or sheets, and no fewer than `least`."""

    length: int
    bought: int
    least: int
    cloths: tuple[OnCloth, ...]


@dataclass(frozen=True, slots=True)
class Selling:
    """How a roll is sold: the length of washed cloth in one step, and whether an exact fit is enough."""

    step: Fraction
    straightened: bool

    def steps(self, length: int) -> int:
        """How many steps hold a length. Where the cut end is straightened, some cloth must be left."""
        number = length / self.step
        return floor(number) + 1 if self.straightened else ceil(number)


@lru_cache(maxsize=512)
def on_roll(width: int, pieces: Pieces, way: Way, selling: Selling, keep: Path | None) -> Laid | DoesNotFit:
    """Lay pieces out on a roll. Round and slanting ones lie closer than the boxes around them, if free."""
    boxed = _boxes(width, pieces.parts, way, selling, keep)
    if isinstance(boxed, DoesNotFit) or pieces.within is None:
        return boxed
    least = selling.steps(max(pieces.reach, -(-pieces.area // width)))
    if least < boxed.bought:
        least = max(least, _within(width, pieces, boxed.length, selling, keep))
    best = boxed
    if least < boxed.bought and pieces.outlines and way is Way.FREE:
        closer = _outlines(width, pieces.outlines, selling, keep)
        if closer is not None and closer.bought < boxed.bought:
            best = closer
    return Laid(best.length, best.bought, least, best.cloths)


@lru_cache(maxsize=512)
def on_sheets(sheet: Sheet, pieces: Pieces, way: Way, keep: Path | None) -> Laid | DoesNotFit:
    """Lay pieces out on sheets or fat quarters; round ones take the boxes around them."""
    parts = pieces.parts
    misfits: list[DoesNotFit] = []

    def work() -> Rows | None:
        cut = lay_out_sheets(sheet, parts, way=way)
        if isinstance(cut, DoesNotFit):
            misfits.append(cut)
            return None
        return [[cut.bound, len(cut.layouts)], *(row for layout in cut.layouts for row in _rows(layout))]

    rows = kept(keep, ("sheets", sheet, _unnamed(parts), way, BUDGET), work)
    if rows is None:
        return misfits[0]
    (bound, number), *rest = rows
    layouts = []
    for _ in range(number):
        layout, rest = _layout(rest)
        layouts.append(layout)
    _must_be_right(parts, layouts, sheet.length, way)
    if pieces.within is not None:
        inside = cloths_needed(alike(_rectangles(pieces)).parts, sheet.width, sheet.length, number)
        bound = max(1, -(-pieces.area // (sheet.width * sheet.length)), inside or 1)
    return Laid(sheet.length, number, bound, tuple(_boxes_on(layout, parts) for layout in layouts))


def _within(width: int, pieces: Pieces, enough: int, selling: Selling, keep: Path | None) -> int:
    """No fewer steps hold the rectangles that lie inside the pieces, and so the pieces; as in `_boxes`."""
    step = ceil(selling.step)
    shapes = tuple((each.points, each.quantity, each.angles) for each in pieces.outlines)
    known = _unnamed([part for part in pieces.within or () if part is not None])
    rows = kept(
        keep,
        ("within", width, known, shapes, enough, step),
        lambda: [[least_length(width, _rectangles(pieces), enough, step)]],
    )
    return rows[0][0] // step if rows is not None else 0


def _rectangles(pieces: Pieces) -> list[Part]:
    """The rectangles inside pieces, those inside their outlines looked for; some pieces may have none."""
    found = [part for part in pieces.within or () if part is not None]
    for outline, known in zip(pieces.outlines, pieces.within or (), strict=False):
        if known is None:
            width, height = rectangle_within(outline.points)
            turnable = 90 in outline.angles and 0 in outline.angles
            if 0 not in outline.angles:  # it lies across only
                width, height = height, width
            if min(width, height) > 0:
                found.append(Part(outline.name, width, height, outline.quantity, turnable))
    return found


def _boxes(
    width: int, parts: Sequence[Part], way: Way, selling: Selling, keep: Path | None
) -> Laid | DoesNotFit:
    # The engine counts in whole units. A step that is not one is taken as the next longer one: what
    # cannot be cut from so many longer steps cannot be cut from as many true ones.
    found = _cut(width, parts, way, ceil(selling.step), keep)
    if isinstance(found, DoesNotFit):
        return found
    layout, bound = found
    bought, least = selling.steps(layout.length), bound // ceil(selling.step)
    if bought > least and selling.straightened:
        # An exact fit does not do; whether there is a shorter layout is seen when every unit counts.
        shorter = _cut(width, parts, way, 1, keep)
        if not isinstance(shorter, DoesNotFit):
            least = max(least, selling.steps(shorter[1]))
            layout = min(layout, shorter[0], key=lambda each: each.length)
            bought = selling.steps(layout.length)
    _must_be_right(parts, (layout,), layout.length, way)
    return Laid(layout.length, bought, least, (_boxes_on(layout, parts),))


def _cut(
    width: int, parts: Sequence[Part], way: Way, step: int, keep: Path | None
) -> tuple[Layout, int] | DoesNotFit:
    """A layout and the bound on the purchase, from the engine or as it was kept."""
    misfits: list[DoesNotFit] = []

    def work() -> Rows | None:
        cut = lay_out(Roll(width), parts, way=way, step=step)
        if isinstance(cut, DoesNotFit):
            misfits.append(cut)
            return None
        return [[cut.bound], *_rows(cut.layout)]

    rows = kept(keep, ("roll", width, _unnamed(parts), way, step, BUDGET), work)
    if rows is None:
        return misfits[0]
    layout, _ = _layout(rows[1:])
    return layout, rows[0][0]


def _outlines(width: int, outlines: Sequence[Outline], selling: Selling, keep: Path | None) -> Laid | None:
    def work() -> Rows | None:
        cut = lay_out_outlines(Roll(width), outlines, step=ceil(selling.step))
        if isinstance(cut, DoesNotFit):
            return None
        placed = ([each.part, each.x, each.y, each.angle] for each in cut.layout.placed)
        return [[cut.layout.length], *placed]

    unnamed = tuple((each.points, each.quantity, each.angles) for each in outlines)
    rows = kept(keep, ("outlines", width, unnamed, ceil(selling.step), OUTLINE_BUDGET), work)
    if rows is None:
        return None
    (length,), *placed = rows
    layout = OutlineLayout(width, length, tuple(PlacedOutline(*row) for row in placed))
    faults = check_outlines(outlines, layout, length=length)
    if faults:
        raise AssertionError(f"a wrong layout: {faults[0]}")
    return Laid(length, selling.steps(length), 0, (_outlines_on(layout, outlines),))


def _must_be_right(parts: Sequence[Part], layouts: Sequence[Layout], length: int, way: Way) -> None:
    """Every layout passes the independent checker; one that does not is a fault of the engine."""
    faults = check(parts, layouts, length=length, strips=way is Way.STRIPS)
    if faults:
        raise AssertionError(f"a wrong layout: {faults[0]}")


def _unnamed(parts: Sequence[Part]) -> tuple[tuple[int, int, int, bool], ...]:
    """Parts without their names, which change nothing of how they lie."""
    return tuple((part.width, part.height, part.quantity, part.turnable) for part in parts)


def _rows(layout: Layout) -> Rows:
    head = [layout.width, layout.length, len(layout.placed)]
    return [head, *([each.part, each.x, each.y, int(each.turned)] for each in layout.placed)]


def _layout(rows: Rows) -> tuple[Layout, Rows]:
    """The first layout in some rows, and the rows after it."""
    (width, length, number), *rest = rows
    placed = tuple(Placed(part, x, y, bool(turn)) for part, x, y, turn in rest[:number])
    return Layout(width, length, placed), rest[number:]


def _boxes_on(layout: Layout, parts: Sequence[Part]) -> OnCloth:
    lying = []
    for placed in layout.placed:
        right, end = end_of(parts[placed.part], placed)
        corners = ((placed.x, placed.y), (right, placed.y), (right, end), (placed.x, end))
        lying.append(Lying(parts[placed.part].name, placed.part, corners))
    return OnCloth(layout.width, layout.length, tuple(lying))


def _outlines_on(layout: OutlineLayout, outlines: Sequence[Outline]) -> OnCloth:
    lying = []
    for placed in layout.placed:
        outline = outlines[placed.part]
        corners = tuple((x + placed.x, y + placed.y) for x, y in turned(outline.points, placed.angle))
        lying.append(Lying(outline.name, placed.part, corners))
    return OnCloth(layout.width, layout.length, tuple(lying))
