"""Lay parts out on sheets of one size: how many to buy, and how the pieces lie on each."""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.cutting.alike import alike
from presscloth.cutting.covering import cover
from presscloth.cutting.knapsack import best_filling
from presscloth.cutting.laying import BUDGET
from presscloth.cutting.parts import CutSheets, DoesNotFit, Layout, Part, Sheet, Way, lies_of
from presscloth.cutting.purse import Purse
from presscloth.cutting.refuting import cloths_needed
from presscloth.cutting.search import Search, first_try
from presscloth.cutting.strips import Strip, Strips


def lay_out_sheets(
    sheet: Sheet, parts: Sequence[Part], *, way: Way = Way.FREE, budget: int = BUDGET
) -> CutSheets | DoesNotFit:
    """The least number of sheets that was found for the parts, and the bound below it.

    Lengths in one unit for all, at least one piece of every part. The result depends on the arguments
    alone. Parts that no sheet can hold are reported.
    """
    misfits = [number for number, part in enumerate(parts) if not _fits(part, sheet)]
    if misfits:
        return DoesNotFit(tuple(misfits))
    if not parts:
        return CutSheets((), 0, 0, True)
    told = alike(parts)
    pieces = sum(part.quantity for part in parts)
    bound = cloths_needed(told.parts, sheet.width, sheet.length, pieces) or 1
    match way:
        case Way.STRIPS:
            bound, layouts = _in_strips(sheet, told.parts, bound, budget)
        case Way.FREE:
            layouts = _free(sheet, told.parts, bound, budget)
    layouts = told.told_apart(layouts)
    return CutSheets(layouts, len(layouts), bound, len(layouts) == bound)


def _fits(part: Part, sheet: Sheet) -> bool:
    return any(wide <= sheet.width and high <= sheet.length for wide, high in lies_of(part))


def _free(sheet: Sheet, parts: Sequence[Part], bound: int, budget: int) -> tuple[Layout, ...]:
    """One sheet fewer again and again, as long as the purse lasts."""
    pieces = sum(part.quantity for part in parts)
    layouts = first_try(parts, sheet.width, sheet.length, pieces)
    search, purse = Search(parts, sheet.width), Purse(budget)
    while len(layouts) > bound:
        fewer = search.within(sheet.length, purse, len(layouts) - 1)
        if fewer is None:
            break
        layouts = fewer
    return layouts


def _in_strips(
    sheet: Sheet, parts: Sequence[Part], bound: int, budget: int
) -> tuple[int, tuple[Layout, ...]]:
    """Strips for all pieces, then strips for each sheet; with the bound raised to that of strips."""
    strips = Strips(parts, sheet.width, sheet.length)
    bound = max(bound, -(-strips.bound() // sheet.length))
    sheets = _dealt(cover(strips, Purse(0), 0), sheet.length)
    if len(sheets) > bound:
        sheets = min(sheets, _dealt(cover(strips, Purse(budget), 0), sheet.length), key=len)
    return bound, tuple(strips.layout(taken) for taken in sheets)


def _dealt(strips: Sequence[Strip], length: int) -> list[list[Strip]]:
    """The strips of each sheet, each sheet as full as what is left makes it."""
    rest = list(strips)
    sheets = []
    while rest:
        sheets.append(_fullest(rest, length))
        for strip in sheets[-1]:
            rest.remove(strip)
    return sheets


def _fullest(strips: Sequence[Strip], length: int) -> list[Strip]:
    """Strips that use up as much as possible of one sheet, the highest of all among them."""
    first = max(strips, key=lambda strip: strip.height)
    others = list(strips)
    others.remove(first)
    heights = [strip.height for strip in others]
    filling = best_filling(heights, heights, [1] * len(heights), length - first.height)
    return [first, *(strip for strip, count in zip(others, filling.counts, strict=True) if count)]
