"""Lay parts out on a roll: how much to buy, and how the pieces lie.

What counts is the purchase, not the length: a layout that ends anywhere within the last step that
has to be bought is as good as any other, and the search ends as soon as the purchase is proved least.
"""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.cutting.covering import cover
from presscloth.cutting.lengths import Lengths
from presscloth.cutting.parts import Cut, DoesNotFit, Layout, Part, Roll, Way, lies_of
from presscloth.cutting.purse import Purse
from presscloth.cutting.refuting import cloths_needed
from presscloth.cutting.search import Search
from presscloth.cutting.strips import Strips

BUDGET = 100_000
"""The work that is put into one layout, about that of laying so many pieces: under half a second."""


def lay_out(
    roll: Roll, parts: Sequence[Part], *, way: Way = Way.FREE, step: int = 1, budget: int = BUDGET
) -> Cut | DoesNotFit:
    """The least purchase, in whole steps, that was found for the parts, and the bound below it.

    Lengths in one unit for all, at least one piece of every part. The result depends on the arguments
    alone. Parts that are wider than the roll, however they may be turned, are reported.
    """
    too_wide = [n for n, part in enumerate(parts) if min(wide for wide, _ in lies_of(part)) > roll.width]
    if too_wide:
        return DoesNotFit(tuple(too_wide))
    if not parts:
        return Cut(Layout(roll.width, 0, ()), 0, 0, 0, True)
    strips = Strips(parts, roll.width)
    match way:
        case Way.STRIPS:
            shortest = strips.bound()
            lengths = Lengths(parts, 2 * shortest)
            bound = stepped(lengths.from_(shortest), step)
            layout = strips.layout(cover(strips, Purse(budget), bound))
        case Way.FREE:
            layout = strips.layout(cover(strips, Purse(budget // 10), 0))
            bound, layout = _free(roll.width, parts, layout, step, budget)
    bought = stepped(layout.length, step)
    return Cut(layout, layout.length, bought, bound, bought == bound)


def stepped(length: int, step: int) -> int:
    """The next whole number of steps."""
    return -(-length // step) * step


def _free(width: int, parts: Sequence[Part], layout: Layout, step: int, budget: int) -> tuple[int, Layout]:
    """A bound and a layout, from a layout to start with."""
    lengths = Lengths(parts, layout.length)
    bound = _least_purchase(width, parts, lengths, stepped(layout.length, step), step)
    search, purse = Search(parts, width), Purse(budget)
    while stepped(layout.length, step) > bound:
        shorter = search.within(lengths.up_to(stepped(layout.length, step) - step), purse)
        if shorter is None:
            break
        layout = shorter
    return bound, layout


def _least_purchase(width: int, parts: Sequence[Part], lengths: Lengths, enough: int, step: int) -> int:
    """The least number of steps that is not proved to be too short; `enough` is known to suffice."""

    def refuted(length: int) -> bool:
        needed = cloths_needed(parts, width, lengths.up_to(length), 2)
        return needed is None or needed > 1

    low = stepped(-(-sum(part.area for part in parts) // width), step)
    high = enough
    at = high - step  # most purchases are proved at once, so the next lower one is tried first
    while low < high:
        if refuted(at):
            low = at + step
        else:
            high = at
        at = (low + high) // 2 // step * step
    return high
