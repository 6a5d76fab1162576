"""The parts of a cut as flat tables, for the loops that run often.

Equal pieces are handled in batches: as many as a part has, or fewer when a search wants to lay some
of them one way and some the other. A *lie* is one way in which the pieces of a batch may lie.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import gcd

from presscloth.cutting.parts import Part
from presscloth.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Stock:
    """Per batch: its part, how many pieces, its lies. Per lie: its batch, its extent, its turn.

    `across` and `along` are the extents of a lie in the direction in which the cloth is filled:
    selvedge to selvedge and along it, or the other way round when the stock is `sideways`. Every extent
    across is a multiple of `unit`. `known` has per lie its batch, its extents across and along, and itself.
    Lies of one part with one turn are of one `kind`; `by_across` and `by_along` have by an extent the
    kinds that have it, each with its other extent.
    """

    part: tuple[int, ...]
    count: tuple[int, ...]
    lies: tuple[tuple[int, ...], ...]
    batch: tuple[int, ...]
    across: tuple[int, ...]
    along: tuple[int, ...]
    turned: tuple[bool, ...]
    kind: tuple[int, ...]
    kinds: int
    by_across: Mapping[int, tuple[tuple[int, int], ...]]
    by_along: Mapping[int, tuple[tuple[int, int], ...]]
    area: int
    unit: int
    known: tuple[tuple[int, int, int, int], ...]


def stock_of(parts: Sequence[Part], sizes: Sequence[int], *, sideways: bool = False) -> Stock:
    """The tables for `parts`, each in batches of its size."""
    owner: list[int] = []
    count: list[int] = []
    lies: list[tuple[int, ...]] = []
    batch: list[int] = []
    across: list[int] = []
    along: list[int] = []
    turned: list[bool] = []
    kind: list[int] = []
    extents: list[tuple[int, int]] = []  # per kind, across and along
    for number, (part, size) in enumerate(zip(parts, sizes, strict=True)):
        ways = [False, True] if part.turnable and part.width != part.height else [False]
        for turn in ways:
            upright = turn == sideways
            extents.append((part.width, part.height) if upright else (part.height, part.width))
        for first in range(0, part.quantity, size):
            for way, turn in enumerate(ways):
                batch.append(len(owner))
                kind.append(len(extents) - len(ways) + way)
                across.append(extents[kind[-1]][0])
                along.append(extents[kind[-1]][1])
                turned.append(turn)
            lies.append(tuple(range(len(batch) - len(ways), len(batch))))
            owner.append(number)
            count.append(min(size, part.quantity - first))
    return Stock(
        part=tuple(owner),
        count=tuple(count),
        lies=tuple(lies),
        batch=tuple(batch),
        across=tuple(across),
        along=tuple(along),
        turned=tuple(turned),
        kind=tuple(kind),
        kinds=len(extents),
        by_across=_grouped(extents),
        by_along=_grouped([(along, across) for across, along in extents]),
        area=sum(part.area for part in parts),
        unit=gcd(*across),
        known=tuple(zip(batch, across, along, range(len(batch)), strict=True)),
    )


def whole(parts: Sequence[Part]) -> list[int]:
    """The sizes of batches, one for each part."""
    return [part.quantity for part in parts]


def halved(parts: Sequence[Part]) -> list[int]:
    """The sizes of batches, two for each part: some of its pieces may lie one way, some the other."""
    return [-(-part.quantity // 2) for part in parts]


def even(parts: Sequence[Part], batches: int) -> list[int]:
    """Batches of one size, about so many, at least one for each part."""
    size = -(-sum(part.quantity for part in parts) // batches)
    return [size for _ in parts]


def _grouped(extents: Sequence[tuple[int, int]]) -> Mapping[int, tuple[tuple[int, int], ...]]:
    """By the first of two extents the kinds that have it, each with its second."""
    groups: dict[int, list[tuple[int, int]]] = {}
    for kind, (first, second) in enumerate(extents):
        groups.setdefault(first, []).append((kind, second))
    return {extent: tuple(kinds) for extent, kinds in groups.items()}
