"""Sheets and fat quarters: how many, and how the pieces lie on each."""

import pytest

from presscloth.cutting import CutSheets, DoesNotFit, Part, Sheet, Way, check, lay_out_sheets
from presscloth.dev.perfect import as_parts, straight


def laid(sheet: Sheet, parts: list[Part], way: Way = Way.FREE, budget: int = 20_000) -> CutSheets:
    cut = lay_out_sheets(sheet, parts, way=way, budget=budget)
    assert isinstance(cut, CutSheets)
    assert check(parts, cut.layouts, length=sheet.length, strips=way is Way.STRIPS) == ()
    assert cut.bought == len(cut.layouts) >= cut.bound
    assert cut.proved == (cut.bought == cut.bound)
    return cut


@pytest.mark.parametrize("way", Way)
def test_squares_fill_fat_quarters(way: Way):
    # 18 × 22 in holds 4 × 5 squares of 4 1/4 in (common practice: a fat quarter is 18 × 22 in); in 1/4 in.
    cut = laid(Sheet(88, 72), [Part("square", 17, 17, 50, True)], way)
    assert (cut.bought, cut.proved) == (3, True)
    assert [len(layout.placed) for layout in cut.layouts] == [20, 20, 10]


def test_pieces_that_cannot_share_a_sheet_take_one_each():
    cut = laid(Sheet(10, 10), [Part("a", 6, 6, 3), Part("b", 4, 10, 2)])
    assert (cut.bought, cut.bound, cut.proved) == (3, 3, True)


def test_two_full_sheets_are_found():
    parts = [*as_parts(straight(20, 15, 5, 1)), *as_parts(straight(20, 15, 6, 2))]
    cut = laid(Sheet(20, 15), parts, budget=100_000)
    assert (cut.bought, cut.proved) == (2, True)


def test_strips_do_not_cross_from_sheet_to_sheet():
    parts = [Part("a", 10, 4, 3), Part("b", 10, 3, 2)]
    cut = laid(Sheet(10, 10), parts, Way.STRIPS)  # 18 in all, 4 + 4 and 4 + 3 + 3
    assert (cut.bought, cut.proved) == (2, True)


def test_a_part_that_no_sheet_holds_is_named():
    parts = [Part("a", 5, 5, 1), Part("b", 12, 3, 1), Part("c", 3, 12, 1, True)]
    assert lay_out_sheets(Sheet(10, 10), parts) == DoesNotFit((1, 2))
    assert laid(Sheet(10, 12), [parts[0], parts[2]]).bought == 1


def test_no_parts_need_no_sheets():
    assert laid(Sheet(10, 10), []).bought == 0
