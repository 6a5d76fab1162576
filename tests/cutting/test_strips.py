"""Strips across the full width, then cut across: two-stage cutting."""

import pytest
from cutting.pictures import picture, shortest_in_strips
from cutting.test_laying import TOTE

from presscloth.cutting import Cut, Part, Roll, Way, check, lay_out
from presscloth.cutting.exhausting import Verdict, strips_within
from presscloth.cutting.purse import Purse
from presscloth.cutting.strips import Strip, Strips
from presscloth.dev.perfect import straight


def laid(width: int, parts: list[Part], step: int = 1, budget: int = 20_000) -> Cut:
    cut = lay_out(Roll(width), parts, way=Way.STRIPS, step=step, budget=budget)
    assert isinstance(cut, Cut)
    assert check(parts, [cut.layout], length=cut.bought, strips=True) == ()
    assert cut.bound <= cut.bought
    return cut


def test_equal_heights_share_a_strip_and_lower_pieces_are_trimmed():
    parts = [Part("a", 3, 4, 2), Part("b", 2, 3, 2), Part("c", 4, 1, 2)]
    cut = laid(8, parts)
    assert picture(cut.layout, parts) == "\n".join(
        ["aaaaaabb", "aaaaaabb", "aaaaaabb", "aaaaaa..", "bbcccc..", "bb......", "bb......", "cccc...."]
    )
    assert (cut.need, cut.proved) == (8, True)


def test_strips_can_need_more_than_a_free_layout():
    parts = [Part("a", 3, 2, 4, True), Part("b", 1, 1, 1)]
    free = lay_out(Roll(5), parts)
    assert isinstance(free, Cut) and free.need == 5
    assert laid(5, parts).need == 6


def test_the_tote_in_strips():
    cut = laid(112, TOTE)
    assert (cut.need, cut.bound, cut.proved) == (73, 73, True)


@pytest.mark.parametrize("seed", range(12))
def test_small_sets_come_out_as_by_trying_everything(seed: int):
    boxes = straight(12, 14, 7, seed)
    parts = [Part(str(n), wide, high, 1, n % 2 == 0) for n, (_, _, wide, high) in enumerate(boxes)]
    cut = laid(12, parts)
    assert cut.need == cut.bound == shortest_in_strips(parts, 12)


def test_trying_everything_finds_strips_or_proves_that_there_are_none():
    parts = [Part("a", 3, 4, 2), Part("b", 2, 3, 2), Part("c", 4, 1, 2)]
    strips = Strips(parts, 8)
    found = strips_within(strips, 8, Purse(1000))
    assert isinstance(found, tuple) and sum(strip.height for strip in found) <= 8
    assert strips_within(strips, 7, Purse(1000)) is Verdict.IMPOSSIBLE
    assert strips_within(strips, 7, Purse(5)) is Verdict.UNDECIDED


def test_a_strip_is_as_high_as_its_tallest_piece_and_no_higher():
    strips = Strips([Part("a", 3, 4, 2), Part("b", 6, 2, 2, True)], 8)
    assert strips.trimmed((1, 0)) == Strip(4, (1, 0))
    assert strips.trimmed((0, 1)) == Strip(2, (0, 1))
    assert strips.trimmed((2, 1)) == Strip(6, (2, 1))  # only on its end does b go beside both


def test_many_kits_in_strips_are_close_to_the_bound():
    kits = [Part(part.name, part.width, part.height, 40 * part.quantity, part.turnable) for part in TOTE]
    cut = laid(112, kits, step=10)
    assert cut.bought * 100 <= cut.bound * 102
