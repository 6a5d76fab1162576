"""Prove that a length of cloth cannot hold the parts, in integers.

Give every extent across the cloth a weight so that no pieces that fit side by side weigh more than
`across_limit`, and likewise along it. Pieces with these weights for sides would then lie in a
rectangle of the two limits if the true ones lay on the cloth; so if the products add up to more, they
do not. (S. P. Fekete, J. Schepers, "A general framework for bounds for higher-dimensional orthogonal
packing problems", Math. Methods of Operations Research 60 (2004), from memory: conservative scales.)
The limits are found by an exact knapsack, whatever the weights are, so the weights may come from
anywhere: the extents themselves (the area bound), dual feasible functions, prices of the bar program.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction

from presscloth.cutting.bars import solve_bars
from presscloth.cutting.knapsack import best_filling
from presscloth.cutting.parts import Part, lies_of
from presscloth.cutting.program import Chooser
from presscloth.frozen import dataclass

_ROUNDS = 3  # of prices across, then along, for one start
_HOPELESS = Fraction(4, 5)  # of a cloth by all the known scales: prices hardly ever make more than one of it
_MOST_THRESHOLDS = 12  # extents that serve as thresholds; with many extents, evenly picked ones


@dataclass(frozen=True, slots=True)
class _Scale:
    """Weights by the number of an extent; no pieces that fit side by side weigh more than `limit`."""

    weights: tuple[int, ...]
    limit: int


class _Axis:
    """One direction of the cloth: its extent, and the different extents that pieces have there."""

    def __init__(self, room: int, extents: Sequence[tuple[int, int]]) -> None:
        self.room = room
        self.sizes = sorted({extent for extent, _ in extents})
        self.number = {size: number for number, size in enumerate(self.sizes)}
        self.most = [0] * len(self.sizes)
        for extent, quantity in extents:
            self.most[self.number[extent]] += quantity

    def scale(self, weights: Sequence[int]) -> _Scale:
        limit = best_filling(self.sizes, weights, self.most, self.room).ceiling
        return _Scale(tuple(weights), limit)

    def known_scales(self) -> Iterator[_Scale]:
        """The extents themselves, then dual feasible functions of them."""
        yield self.scale(self.sizes)
        for weigh in _functions(self.room, self.sizes):
            scale = self.scale([weigh(size) for size in self.sizes])
            if scale.limit:
                yield scale


def _functions(room: int, sizes: Sequence[int]) -> Iterator[Callable[[int], int]]:
    """Dual feasible functions of Fekete and Schepers, scaled to integers."""
    for count in (1, 2, 3, 4, 5):
        yield lambda size, k=count: (  # type: ignore[misc]
            size * k if (k + 1) * size % room == 0 else (k + 1) * size // room * room
        )
    every = -(-len(sizes) // _MOST_THRESHOLDS)
    for small in sizes[::every]:
        if 2 * small <= room:
            yield lambda size, e=small: (  # type: ignore[misc]
                room if size > room - e else size if size >= e else 0
            )
            yield lambda size, e=small: (  # type: ignore[misc]
                room // e - (room - size) // e if 2 * size > room else size // e
            )


@dataclass(frozen=True, slots=True)
class _Choice:
    """Equal pieces, and per lie that the cloth can hold the numbers of its extents across and along."""

    quantity: int
    lies: tuple[tuple[int, int], ...]


def cloths_needed(parts: Sequence[Part], width: int, length: int, enough: int) -> int | None:
    """At least so many cloths of `width` × `length` are needed; None when some part fits none.

    2 is a proof that a layout of this length does not exist. Stops at `enough` or more.
    """
    fitting = [_lies_within(part, width, length) for part in parts]
    if not all(fitting):
        return None
    quantities = [part.quantity for part in parts]
    pairs = list(zip(quantities, fitting, strict=True))
    across = _Axis(width, [(lie[0], quantity) for quantity, lies in pairs for lie in lies])
    along = _Axis(length, [(lie[1], quantity) for quantity, lies in pairs for lie in lies])
    choices = [
        _Choice(quantity, tuple((across.number[wide], along.number[high]) for wide, high in lies))
        for quantity, lies in pairs
    ]
    most = Fraction(0)
    for found in _fillings(across, along, choices):
        most = max(most, found)
        if most > enough - 1:
            break
    return max(1, -(-most.numerator // most.denominator))


def _lies_within(part: Part, width: int, length: int) -> list[tuple[int, int]]:
    return [lie for lie in lies_of(part) if lie[0] <= width and lie[1] <= length]


def _fillings(across: _Axis, along: _Axis, choices: Sequence[_Choice]) -> Iterator[Fraction]:
    """How many cloths' worth the parts weigh, by one pair of scales after another."""
    ranked = []
    scales = list(along.known_scales())
    for wide in across.known_scales():
        for high in scales:
            weight = _weight(wide, high, choices)
            yield weight
            ranked.append((weight, wide, high))
    most, wide, high = max(ranked, key=lambda entry: entry[0])
    if most < _HOPELESS:
        return
    sideways = [_Choice(choice.quantity, _swapped(choice.lies)) for choice in choices]
    for start in {id(scale): scale for scale in (ranked[0][2], high)}.values():
        yield from _priced(across, along, choices, sideways, start)
    for start in {id(scale): scale for scale in (ranked[0][1], wide)}.values():
        yield from _priced(along, across, sideways, choices, start)


def _swapped(lies: Sequence[tuple[int, int]]) -> tuple[tuple[int, int], ...]:
    return tuple((second, first) for first, second in lies)


def _priced(
    one: _Axis, other: _Axis, choices: Sequence[_Choice], sideways: Sequence[_Choice], start: _Scale
) -> Iterator[Fraction]:
    """Best prices along `one` for a scale of the `other`, then the other way round, and again."""
    scale, best = start, Fraction(0)
    for _ in range(_ROUNDS):
        priced = _prices(one, choices, scale)
        if priced is None:
            return
        weight = _weight(priced, scale, choices)
        yield weight
        if weight <= best:
            return
        best, scale = weight, priced
        one, other, choices, sideways = other, one, sideways, choices


def _prices(axis: _Axis, choices: Sequence[_Choice], scale: _Scale) -> _Scale | None:
    """The scale of this axis that makes most of a given scale of the other one."""
    choosers = [
        Chooser(
            choice.quantity,
            tuple((first, scale.weights[second] / scale.limit) for first, second in choice.lies),
        )
        for choice in choices
    ]
    bars = solve_bars(axis.sizes, axis.most, choosers, axis.room)
    return axis.scale(bars.weights) if bars is not None and any(bars.weights) else None


def _weight(first: _Scale, second: _Scale, choices: Sequence[_Choice]) -> Fraction:
    """All parts by weight, each in its lightest lie, over the weight that one cloth can hold."""
    total = 0
    for choice in choices:
        total += choice.quantity * min(
            first.weights[one] * second.weights[other] for one, other in choice.lies
        )
    return Fraction(total, first.limit * second.limit)
