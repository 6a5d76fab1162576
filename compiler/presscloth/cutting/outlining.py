"""Lay outlines out on a roll: bottom-left on a raster, in one order of pieces after another."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import gcd

from presscloth.cutting.chance import Chance
from presscloth.cutting.laying import stepped
from presscloth.cutting.outlines import (
    Outline,
    OutlineCut,
    OutlineLayout,
    PlacedOutline,
    Point,
    extent,
    turned,
    twice_area,
)
from presscloth.cutting.parts import DoesNotFit, Roll
from presscloth.cutting.purse import Purse
from presscloth.cutting.raster import Cells, Cloth, cells
from presscloth.frozen import dataclass

BUDGET = 140_000
_RASTERS = (220, 330, 640)  # cells across the cloth: coarse ones allow more tries, fine ones lie closer
_FINER = 2  # budgets: what is spent before a finer raster is out of the question, with many large pieces
_MANY = 60  # pieces, beyond which the layout of some kits is taken over and over
_ROW_COST = 4  # laying one row of cells of a piece comes to a quarter of laying a rectangle


@dataclass(frozen=True, slots=True)
class _Lie:
    """One angle of a part: its true height, its cells, and how many columns it may begin in."""

    angle: int
    height: int
    shape: Cells
    places: int


def lay_out_outlines(
    roll: Roll, parts: Sequence[Outline], *, step: int = 1, budget: int = BUDGET
) -> OutlineCut | DoesNotFit:
    """The least purchase, in whole steps, that was found for the outlines, and the bound below it.

    The bound is that of the area, and of the piece that reaches farthest. Lengths in one unit for all,
    at least one piece of every outline; the result depends on the arguments alone. Outlines that are
    wider than the roll are reported.
    """
    fitting = [_fitting(part, roll.width) for part in parts]
    too_wide = [number for number, shapes in enumerate(fitting) if not shapes]
    if too_wide:
        return DoesNotFit(tuple(too_wide))
    if not parts:
        return OutlineCut(OutlineLayout(roll.width, 0, ()), 0, 0, 0, True)
    area = sum(twice_area(part.points) * part.quantity for part in parts)
    reach = max(min(extent(points)[1] for points in shapes.values()) for shapes in fitting)
    bound = stepped(max(reach, -(-area // (2 * roll.width))), step)
    layouts: list[OutlineLayout] = []
    kits = gcd(*(part.quantity for part in parts))
    pieces = sum(part.quantity for part in parts)
    times = next((n for n in range(1, kits + 1) if kits % n == 0 and pieces // n <= _MANY), kits)
    if times > 1:
        return _repeated(roll, parts, times, bound, step, budget)
    purse = Purse(_FINER * budget)
    for number in _RASTERS:
        size = max(1, roll.width // number)
        lies = [_lies(shapes, size, roll.width) for shapes in fitting]
        search = _Search(roll.width, size, parts, lies)
        share = Purse(budget // len(_RASTERS))
        purse.left -= share.left
        layouts.append(search.least(share, bound, step))
        purse.left += share.left
        if stepped(layouts[-1].length, step) <= bound or purse.left <= 0:
            break
    return _cut(min(layouts, key=lambda layout: layout.length), bound, step)


def _cut(layout: OutlineLayout, bound: int, step: int) -> OutlineCut:
    bought = stepped(layout.length, step)
    return OutlineCut(layout, layout.length, bought, bound, bought == bound)


def _repeated(
    roll: Roll, parts: Sequence[Outline], times: int, bound: int, step: int, budget: int
) -> OutlineCut | DoesNotFit:
    """The layout of a part of many equal kits, over and over: a search among many pieces finds little."""
    few = [replace(part, quantity=part.quantity // times) for part in parts]
    cut = lay_out_outlines(roll, few, step=max(1, step // times), budget=budget)
    if isinstance(cut, DoesNotFit):
        return cut
    length = cut.layout.length
    placed = (replace(piece, y=piece.y + n * length) for n in range(times) for piece in cut.layout.placed)
    return _cut(OutlineLayout(roll.width, length * times, tuple(placed)), bound, step)


def _fitting(part: Outline, width: int) -> dict[int, tuple[Point, ...]]:
    """The angles at which a part fits the width, with the outline; one of those that look the same."""
    found: dict[tuple[Point, ...], int] = {}
    for angle in part.angles:
        points = turned(part.points, angle)
        first = points.index(min(points))
        if extent(points)[0] <= width:
            found.setdefault(points[first:] + points[:first], angle)
    return {angle: points for points, angle in found.items()}


def _lies(shapes: dict[int, tuple[Point, ...]], size: int, width: int) -> list[_Lie]:
    lies = []
    for angle, points in shapes.items():
        wide, high = extent(points)
        lies.append(_Lie(angle, high, cells(points, size), (width - wide) // size + 1))
    return lies


class _Search:
    """Orders of single pieces on one raster: the large ones first, then with pieces swapped."""

    def __init__(
        self, width: int, size: int, parts: Sequence[Outline], lies: Sequence[Sequence[_Lie]]
    ) -> None:
        self._width = width
        self._size = size
        self._parts = parts
        self._lies = lies

    def least(self, purse: Purse, goal: int, step: int) -> OutlineLayout:
        """The shortest layout found before the purse is empty or the goal is reached."""
        order = sorted(
            (number for number, part in enumerate(self._parts) for _ in range(part.quantity)),
            key=lambda number: -twice_area(self._parts[number].points),
        )
        tallest_first = sorted(order, key=lambda number: -self._lies[number][0].height)
        best = self._laid(order, purse)
        tried = self._laid(tallest_first, purse)
        if tried.length < best.length:
            best, order = tried, tallest_first
        chance = Chance(1)
        while purse.left > 0 and stepped(best.length, step) > goal and len(self._parts) > 1:
            pieces = order[:]
            one, other = chance.below(len(pieces)), chance.below(len(pieces))
            pieces[one], pieces[other] = pieces[other], pieces[one]
            tried = self._laid(pieces, purse)
            if tried.length <= best.length:
                best, order = tried, pieces
        return best

    def _laid(self, order: Sequence[int], purse: Purse) -> OutlineLayout:
        """The pieces in this order, each as near to the cut end as it goes."""
        cloth = Cloth()
        placed: list[PlacedOutline] = []
        started: dict[tuple[int, int], int] = {}  # an equal piece never lies nearer than those before
        length = 0
        for part in order:
            choices = []
            for lie in self._lies[part]:
                start = started.get((part, lie.angle), 0)
                x, y = cloth.lowest(lie.shape, lie.places, start)
                started[part, lie.angle] = y
                purse.left -= (y - start + 1) * len(lie.shape) // _ROW_COST
                choices.append((y * self._size + lie.height, x, y, lie))
            reach, x, y, lie = min(choices, key=lambda choice: choice[:2])
            length = max(length, reach)
            cloth.lay(lie.shape, x, y)
            placed.append(PlacedOutline(part, x * self._size, y * self._size, lie.angle))
        return OutlineLayout(self._width, length, tuple(placed))
