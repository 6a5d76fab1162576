"""Fill a length of cloth from the cut end, always at the lowest place of the skyline.

The skyline is the outline of what is laid so far: segments from the left selvedge to the right, each
with a width and a height. The lowest segment gets a piece, next to the higher of its two walls, or
is given up as waste and raised to the lower wall. After the best-fit rule of E. K. Burke,
G. Kendall, G. Whitwell, "A new placement heuristic for the orthogonal stock-cutting problem",
Operations Research 52 (2004), with the scoring of S. C. H. Leung, D. Zhang, K. M. Sim, "A two-stage
intelligent search algorithm for the two-dimensional strip packing problem", EJOR 215 (2011) (both
cited from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum

from presscloth.cutting.stock import Stock


class Rule(Enum):
    """Which piece the lowest segment gets. All look through the order last."""

    ORDER = 0  # the first in the order that fits
    EXACT = 1  # one that fills the segment's width
    SNUG = 2  # filling it and ending level with a wall; filling it; level with a wall
    ROW = 3  # a whole row at once that leaves as little as any; see `rows`


Spot = tuple[int, int, int]
"""A lie and its place: (lie, x, y), in the direction of filling."""


def fill(
    stock: Stock, width: int, length: int, order: Sequence[int], rule: Rule, left: list[int], spare: int
) -> tuple[list[Spot], int]:
    """Lay what fits of `left` (pieces per batch, counted down) into `width` × `length`.

    Lies are taken in `order`. Gives the spots, and the area wasted so far. Stops early as soon as more
    than `spare` is wasted.
    """
    to_lay = sum(left)
    live = [known for lie in order if left[(known := stock.known[lie])[0]]]
    queues = _queues(stock, order) if rule is not Rule.ORDER else []
    starts, heights = [0, width], [0]  # of the segments; after the last start comes the right selvedge
    spots: list[Spot] = []
    wasted = 0
    while to_lay:
        y = min(heights)
        if y >= length:
            break
        at = heights.index(y)
        start = starts[at]
        gap, room = starts[at + 1] - start, length - y
        left_wall = heights[at - 1] - y if at else room
        right_wall = heights[at + 1] - y if at + 1 < len(heights) else room
        chosen = _singled_out(stock, rule, left, queues, gap, room, left_wall, right_wall) if queues else None
        if chosen is None:
            for chosen in live:
                if chosen[1] <= gap and chosen[2] <= room:
                    break
            else:
                lower = left_wall if left_wall < right_wall else right_wall
                wasted += gap * lower
                if wasted > spare:
                    return spots, wasted
                rise(starts, heights, at, y + lower)
                continue
        owner, span, along, lie = chosen
        left[owner] -= 1
        to_lay -= 1
        if not left[owner]:
            live = [known for known in live if known[0] != owner]
        if span == gap:
            spots.append((lie, start, y))
            rise(starts, heights, at, y + along)
        elif along == left_wall or (left_wall >= right_wall and along != right_wall):
            spots.append((lie, start, y))
            if at and along == left_wall:
                starts[at] = start + span
            else:
                starts.insert(at + 1, start + span)
                heights.insert(at, y + along)
        else:
            start = starts[at + 1] - span
            spots.append((lie, start, y))
            if at + 1 < len(heights) and along == right_wall:
                starts[at + 1] = start
            else:
                starts.insert(at + 1, start)
                heights.insert(at + 1, y + along)
    return spots, wasted


_Known = tuple[int, int, int, int]  # of a lie: its batch, its extents across and along, itself
_Queue = list[tuple[int, _Known]]


def _queues(stock: Stock, order: Sequence[int]) -> list[_Queue]:
    """Per kind its lies with their places in the order, the first one last."""
    queues: list[_Queue] = [[] for _ in range(stock.kinds)]
    for place in range(len(order) - 1, -1, -1):
        lie = order[place]
        queues[stock.kind[lie]].append((place, stock.known[lie]))
    return queues


def _singled_out(
    stock: Stock,
    rule: Rule,
    left: Sequence[int],
    queues: Sequence[_Queue],
    gap: int,
    room: int,
    left_wall: int,
    right_wall: int,
) -> _Known | None:
    """The lie that the rule singles out for a segment, or none when the order decides."""
    behind = len(stock.known)
    best, best_place = None, behind
    for kind, along in stock.by_across.get(gap, ()):
        if along <= room and (queue := _waiting(queues[kind], left)):
            place, known = queue[-1]
            if rule is Rule.SNUG and along in (left_wall, right_wall):
                place -= behind
            if place < best_place:
                best, best_place = known, place
    if best or rule is Rule.EXACT:
        return best
    for wall in (left_wall, right_wall):
        for kind, across in stock.by_along.get(wall, ()):
            if across < gap and (queue := _waiting(queues[kind], left)):
                place, known = queue[-1]
                if place < best_place:
                    best, best_place = known, place
    return best


def _waiting(queue: _Queue, left: Sequence[int]) -> _Queue:
    """The queue without the batches at its head of which nothing is left."""
    while queue and not left[queue[-1][1][0]]:
        queue.pop()
    return queue


def rise(starts: list[int], heights: list[int], at: int, top: int) -> None:
    """Lift a whole segment to `top`, and join it with neighbours of that height."""
    heights[at] = top
    if at + 1 < len(heights) and heights[at + 1] == top:
        del starts[at + 1], heights[at + 1]
    if at and heights[at - 1] == top:
        del starts[at], heights[at]
