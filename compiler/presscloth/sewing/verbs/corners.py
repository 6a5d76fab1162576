"""Joining triangles: to squares, and to larger triangles."""

from __future__ import annotations

from presscloth.measure import Quantity
from presscloth.sewing.lengths import less, times_root_two
from presscloth.sewing.things import LONG_SIDE, Odd, Rim, Shape, State, Triangle, alike, rectangle
from presscloth.sewing.verbs.laying import sewn_from
from presscloth.sewing.work import Made, Work


def join_triangles(work: Work) -> Made:
    """Two triangles sewn on their long sides make a square, two quarter-square ones on a leg a triangle.

    Sewn on the long side, with a seam of s, the square measures leg − √2 s as cut; sewn on a leg, the
    larger triangle's legs measure long side − √2 s (geometry). Of all else only the seam is compared.
    """
    first, second = work.one("first"), work.one("second")
    one, other = work.edge("first"), work.edge("second")
    taken = work.join(one, other)
    return Made(_joined(first.shape, one.name, second.shape, other.name, taken), sewn_from(first, second))


def _joined(one: Shape, edge: str, other: Shape, own: str, taken: Quantity) -> Shape:
    if not (isinstance(one, Triangle) and isinstance(other, Triangle)):
        return Odd()
    rim = one.rim if alike(one.rim, other.rim) else Rim(State.RAW)
    lost = times_root_two(taken)
    if edge == own == LONG_SIDE:
        side = less(one.leg, lost)
        return rectangle(side, side, rim)
    if one.quarter and other.quarter and LONG_SIDE not in (edge, own) and edge != own:
        leg = less(one.long_side, lost)
        return Triangle(leg, times_root_two(leg), rim, quarter=False)
    return Odd()
