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
    """

    part: tuple[int, ...]
    count: tuple[int, ...]
    lies: tuple[tuple[int, ...], ...]
    batch: tuple[int, ...]
    across: tuple[int, ...]
    along: tuple[int, ...]
    turned: tuple[bool, ...]
    by_across: Mapping[int, tuple[int, ...]]
    by_along: Mapping[int, tuple[int, ...]]
    area: int
    unit: int
    known: tuple[tuple[int, int, int, int], ...]


def stock_of(parts: Sequence[Part], *, batches: int = 0, sideways: bool = False) -> Stock:
    """The tables for `parts`, split into about as many batches as asked for, at least one per part."""
    pieces = sum(part.quantity for part in parts)
    size = -(-pieces // batches) if batches else pieces
    owner: list[int] = []
    count: list[int] = []
    lies: list[tuple[int, ...]] = []
    batch: list[int] = []
    across: list[int] = []
    along: list[int] = []
    turned: list[bool] = []
    for number, part in enumerate(parts):
        for first in range(0, part.quantity, size):
            ways = [False, True] if part.turnable and part.width != part.height else [False]
            for turn in ways:
                batch.append(len(owner))
                across.append(part.width if turn == sideways else part.height)
                along.append(part.height if turn == sideways else part.width)
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
        by_across=_grouped(across),
        by_along=_grouped(along),
        area=sum(part.area for part in parts),
        unit=gcd(*across),
        known=tuple(zip(batch, across, along, range(len(batch)), strict=True)),
    )


def _grouped(extents: Sequence[int]) -> Mapping[int, tuple[int, ...]]:
    """Which lies have each extent."""
    groups: dict[int, list[int]] = {}
    for lie, extent in enumerate(extents):
        groups.setdefault(extent, []).append(lie)
    return {extent: tuple(lies) for extent, lies in groups.items()}
