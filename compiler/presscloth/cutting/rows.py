"""Fill a length of cloth from the cut end, the lowest place of the skyline in one go.

As `skyline`, but the lowest segment gets a whole row: pieces side by side that together leave as little
of its width as any, those that come first in the order by preference. Which widths pieces add up to is
a sum of subsets, kept in the bits of an integer (the idea of filling a segment by a knapsack: G. Belov,
G. Scheithauer, E. A. Mukhacheva, "One-dimensional heuristics adapted for two-dimensional rectangular
strip packing", J. Oper. Res. Soc. 59 (2008), from memory).
"""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.cutting.skyline import Spot, rise
from presscloth.cutting.stock import Stock

Row = list[tuple[int, int]]
"""Lies, and how many pieces of each stand side by side."""


def fill_rows(
    stock: Stock, width: int, length: int, order: Sequence[int], left: list[int], spare: int
) -> tuple[list[Spot], int]:
    """Lay what fits of `left` into `width` × `length`, as `skyline.fill` does."""
    across, along, batch = stock.across, stock.along, stock.batch
    to_lay = sum(left)
    starts, heights = [0, width], [0]
    spots: list[Spot] = []
    wasted = 0
    while to_lay:
        y = min(heights)
        if y >= length:
            break
        at = heights.index(y)
        x, room = starts[at], length - y
        gap = starts[at + 1] - x
        left_wall = heights[at - 1] - y if at else room
        right_wall = heights[at + 1] - y if at + 1 < len(heights) else room
        fitting = [lie for lie in order if left[batch[lie]] and across[lie] <= gap and along[lie] <= room]
        if not fitting:
            lower = min(left_wall, right_wall)
            wasted += gap * lower
            if wasted > spare:
                return spots, wasted
            rise(starts, heights, at, y + lower)
            continue
        # The highest pieces stand at the higher wall, so that the skyline stays plain.
        row = sorted(_fullest(stock, gap, fitting, left), key=lambda each: -along[each[0]])
        free = gap - sum(across[lie] * count for lie, count in row)
        if left_wall < right_wall:
            row.reverse()
            x += free
        for lie, count in row:
            left[batch[lie]] -= count
            to_lay -= count
            spots += [(lie, x + n * across[lie], y) for n in range(count)]
            at = _raised(starts, heights, at, x, x + count * across[lie], y + along[lie])
            x += count * across[lie]
    return spots, wasted


def _fullest(stock: Stock, gap: int, fitting: Sequence[int], left: Sequence[int]) -> Row:
    """A row that leaves as little of the gap as any, with as many as it can hold of the first lies."""
    across, batch, unit = stock.across, stock.batch, stock.unit
    mask = (1 << (gap // unit + 1)) - 1
    reached = 1
    sums = []  # per lie, from the last: what the lies after it add up to
    for lie in reversed(fitting):
        sums.append(reached)
        step = across[lie] // unit
        count = min(left[batch[lie]], gap // across[lie])
        portion = 1
        while count:
            portion = min(portion, count)
            reached |= reached << (portion * step)
            count -= portion
            portion *= 2
        reached &= mask
    rest = reached.bit_length() - 1
    row: Row = []
    taken: dict[int, int] = {}
    for lie, after in zip(fitting, reversed(sums), strict=True):
        step, owner = across[lie] // unit, batch[lie]
        # Two lies of one batch share its pieces, so that not all that adds up can be had.
        most = min(left[owner] - taken.get(owner, 0), rest // step)
        count = next((n for n in range(most, -1, -1) if after >> (rest - n * step) & 1), 0)
        if count:
            row.append((lie, count))
            rest -= count * step
            taken[owner] = taken.get(owner, 0) + count
    return row or [(fitting[0], 1)]


def _raised(starts: list[int], heights: list[int], at: int, start: int, end: int, top: int) -> int:
    """Lift from `start` to `end` within a segment; gives the number of the segment after `end`."""
    if start > starts[at]:
        starts.insert(at + 1, start)
        heights.insert(at + 1, heights[at])
        at += 1
    if end < starts[at + 1]:
        starts.insert(at + 1, end)
        heights.insert(at + 1, heights[at])
    segments = len(heights)
    after = at + 1
    rise(starts, heights, at, top)
    return after - (segments - len(heights))
