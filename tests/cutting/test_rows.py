"""Whole rows at the lowest place: the widths that leave least, the first in the order preferred."""

from presscloth.cutting import Cut, Part, Roll, check, lay_out
from presscloth.cutting.rows import fill_rows
from presscloth.cutting.stock import stock_of, whole

PARTS = [Part("wide", 5, 3, 2), Part("middle", 4, 3, 2), Part("small", 3, 2, 1)]


def test_a_row_leaves_as_little_as_any_and_prefers_what_comes_first():
    stock = stock_of(PARTS, whole(PARTS))
    left = list(stock.count)
    spots, wasted = fill_rows(stock, 13, 3, [0, 1, 2], left, 100)
    # 5 + 5 + 3 and 5 + 4 + 4 both fill 13; the first lie is wanted twice, and the lower piece stands last.
    assert spots == [(0, 0, 0), (0, 5, 0), (2, 10, 0)]
    assert left == [0, 2, 0] and wasted == 3


def test_what_no_piece_fits_is_wasted_and_ends_a_filling_that_wastes_too_much():
    stock = stock_of(PARTS, whole(PARTS))
    spots, wasted = fill_rows(stock, 11, 5, [1, 0, 2], list(stock.count), 4)
    assert spots[:3] == [(1, 0, 0), (1, 4, 0), (2, 8, 0)]
    assert wasted > 4


def test_two_lies_of_one_batch_share_its_pieces():
    stock = stock_of([Part("a", 4, 3, 1, True)], [1])
    left = list(stock.count)
    spots, _ = fill_rows(stock, 7, 4, [0, 1], left, 100)
    assert len(spots) == 1 and left == [0]


def test_rows_find_what_one_piece_after_another_does_not():
    """Twelve invented sets for sewing, one of them: napkins, place mats, coasters and binding from 1500 mm.

    Without whole rows the same means end at 2240 mm.
    """
    parts = [
        Part("napkin", 440, 440, 8, True),
        Part("mat", 480, 360, 8, True),
        Part("coaster", 100, 100, 8, True),
        Part("binding", 60, 480, 8, True),
    ]
    cut = lay_out(Roll(1500), parts)
    assert isinstance(cut, Cut) and cut.need <= 2220
    assert check(parts, [cut.layout], length=cut.need, strips=False) == ()
