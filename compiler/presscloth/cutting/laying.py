"""Lay parts out on a roll: how much to buy, and how the pieces lie.

What counts is the purchase, not the length: a layout that ends anywhere within the last step that
has to be bought is as good as any other, and the search ends as soon as the purchase is proved least.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import gcd

from presscloth.cutting.alike import alike
from presscloth.cutting.covering import cover, length_of
from presscloth.cutting.exhausting import Verdict, strips_within
from presscloth.cutting.lengths import Lengths
from presscloth.cutting.parts import Cut, DoesNotFit, Layout, Part, Roll, Way, lies_of
from presscloth.cutting.purse import Purse
from presscloth.cutting.refuting import cloths_needed
from presscloth.cutting.search import Search, first_try
from presscloth.cutting.strips import Strips

BUDGET = 100_000
"""The work that is put into one layout, about that of laying so many pieces: under half a second."""

_PORTION = 3  # of what is left goes into trying a much shorter length
_FEW = 30  # kinds of parts, up to which strips are worth their reckoning
_MANY = 500  # pieces, beyond which the layout of some kits is tried over and over


def lay_out(
    roll: Roll,
    parts: Sequence[Part],
    *,
    way: Way = Way.FREE,
    step: int = 1,
    budget: int = BUDGET,
    seed: int = 0,
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
    told = alike(parts)
    match way:
        case Way.STRIPS:
            bound, layout, work = _in_strips(roll.width, told.parts, step, budget)
        case Way.FREE:
            bound, layout, work = _free(roll.width, told.parts, step, budget, seed)
    (layout,) = told.told_apart((layout,))
    bought = stepped(layout.length, step)
    return Cut(layout, layout.length, bought, bound, bought == bound, work)


def least_length(width: int, parts: Sequence[Part], enough: int, step: int) -> int:
    """No layout of the parts takes fewer whole steps than this length; `enough` is known to suffice."""
    told = alike(parts).parts
    return _least_purchase(width, told, Lengths(told, enough), stepped(enough, step), step) if told else 0


def stepped(length: int, step: int) -> int:
    """The next whole number of steps."""
    return -(-length // step) * step


def _in_strips(width: int, parts: Sequence[Part], step: int, budget: int) -> tuple[int, Layout, int]:
    """The bound on the purchase, a layout in strips, and the work that it took."""
    strips = Strips(parts, width)
    shortest = strips.bound()
    bound = stepped(Lengths(parts, 2 * shortest).from_(shortest), step)
    first = Purse(budget)
    chosen = cover(strips, first, bound)
    purse = Purse(budget // 2)
    while (bought := stepped(length_of(chosen), step)) > bound:
        match strips_within(strips, bought - step, purse):
            case Verdict.IMPOSSIBLE:
                bound = bought
            case Verdict.UNDECIDED:
                break
            case shorter:
                chosen = shorter
    return bound, strips.layout(chosen), budget + budget // 2 - first.left - purse.left


def _free(width: int, parts: Sequence[Part], step: int, budget: int, seed: int) -> tuple[int, Layout, int]:
    """The bound on the purchase, a layout, and the work that it took."""
    search, purse = Search(parts, width, seed), Purse(budget)
    layout = _start(width, parts)
    pieces = sum(part.quantity for part in parts)
    kits = gcd(*(part.quantity for part in parts))
    times = next((n for n in range(1, kits + 1) if kits % n == 0 and pieces // n <= _MANY), 1)
    if times > 1:
        again = _repeated(width, parts, times, step, budget, seed)
        layout = min(layout, again, key=lambda tried: tried.length)
    lengths = Lengths(parts, layout.length)
    bound = _least_purchase(width, parts, lengths, stepped(layout.length, step), step)
    low = bound
    while (bought := stepped(layout.length, step)) > bound and purse.left > 0:
        # Half of the way down is tried with a part of what is left; the last step with all of it.
        aim = max(low, (low + bought - step) // 2 // step * step)
        portion = Purse(purse.left if aim >= bought - step else purse.left // _PORTION)
        purse.left -= portion.left
        shorter = search.within(lengths.up_to(min(aim, bought - step)), portion)
        purse.left += portion.left
        if shorter is None:
            low = min(aim + step, bought - step)
        else:
            (layout,) = shorter
            low = min(low, stepped(layout.length, step))
    return bound, layout, budget - purse.left


def _start(width: int, parts: Sequence[Part]) -> Layout:
    """A first layout: strips, good for many equal pieces; for very many kinds of pieces the first try."""
    if len(parts) <= _FEW:
        strips = Strips(parts, width)
        return strips.layout(cover(strips, Purse(0), 0))
    length = sum(max(part.width, part.height) * part.quantity for part in parts)
    (layout,) = first_try(parts, width, length, 1)
    return layout


def _repeated(width: int, parts: Sequence[Part], times: int, step: int, budget: int, seed: int) -> Layout:
    """The layout of a part of many equal kits, over and over.

    A search among many pieces finds little; among fewer, at the same cost, it finds more.
    """
    few = [replace(part, quantity=part.quantity // times) for part in parts]
    _, layout, _ = _free(width, few, max(1, step // times), budget, seed)
    placed = [replace(piece, y=piece.y + n * layout.length) for n in range(times) for piece in layout.placed]
    return Layout(width, layout.length * times, tuple(placed))


def _least_purchase(width: int, parts: Sequence[Part], lengths: Lengths, enough: int, step: int) -> int:
    """The least number of steps that is not proved to be too short; `enough` is known to suffice."""
    rest, rows = _without_rows(width, parts)
    rest_lengths = Lengths(rest, enough) if rows and rest else lengths

    def refuted(length: int) -> bool:
        if length < rows or not rest:
            return length < rows
        needed = cloths_needed(rest, width, rest_lengths.up_to(length - rows), 2)
        return needed is None or needed > 1

    low = stepped(-(-sum(part.area for part in parts) // width), step)
    high = enough
    # Most purchases are proved at once, so the next lower one is tried first.
    if low == high or refuted(high - step):
        return high
    high -= step
    # Else the bound is mostly near to the area: further and further above it, then halving.
    reach, found = step, False
    while low < high:
        at = (low + high) // 2 // step * step if found else min(low + reach - step, high - step)
        if refuted(at):
            low = at + step
            reach *= 2
        else:
            high, found = at, True
    return high


def _without_rows(width: int, parts: Sequence[Part]) -> tuple[Sequence[Part], int]:
    """The parts that can share a row with others, and the length that all other ones take in any layout.

    Beside a piece that is nearly as wide as the cloth nothing else lies, however it is laid; such pieces
    take their heights and leave the others what is left of the length.
    """
    rest, rows = list(parts), 0
    while rest:
        narrowest = min(wide for part in rest for wide, _ in lies_of(part))
        alone = [part for part in rest if all(wide + narrowest > width for wide, _ in lies_of(part))]
        if not alone:
            break
        for part in alone:
            rows += part.quantity * min(high for wide, high in lies_of(part) if wide <= width)
        rest = [part for part in rest if part not in alone]
    return rest, rows
