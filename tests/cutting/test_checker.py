"""The checker finds every fault that is put into a good layout."""

from dataclasses import replace

import pytest

from presscloth.cutting import Layout, Part, Placed, check
from presscloth.cutting.checker import (
    AgainstGrain,
    Fault,
    NoSuchPart,
    NotInStrips,
    Outside,
    Overlap,
    WrongCount,
)

PARTS = [Part("a", 4, 3, 1), Part("b", 3, 5, 1, True), Part("c", 4, 2, 1)]
GOOD = Layout(7, 5, (Placed(0, 0, 0), Placed(1, 4, 0), Placed(2, 0, 3)))


def faults(layout: Layout, length: int = 5, strips: bool = False) -> tuple[Fault, ...]:
    return check(PARTS, [layout], length=length, strips=strips)


def with_piece(at: int, piece: Placed) -> Layout:
    return replace(GOOD, placed=(*GOOD.placed[:at], piece, *GOOD.placed[at + 1 :]))


def test_a_good_layout_passes():
    assert faults(GOOD) == ()


@pytest.mark.parametrize(
    ("layout", "fault"),
    [
        (with_piece(2, Placed(2, 0, 2)), Overlap(0, 2)),
        (with_piece(2, Placed(2, 1, 3)), Overlap(1, 2)),
        (with_piece(2, Placed(2, 0, 4)), Outside(2)),
        (with_piece(0, Placed(0, -1, 0)), Outside(0)),
        (with_piece(0, Placed(0, 0, -1)), Outside(0)),
        (replace(GOOD, width=6), Outside(1)),
        (with_piece(2, Placed(2, 0, 3, True)), AgainstGrain(2)),
        (with_piece(1, Placed(1, 2, 0, True)), Overlap(0, 1)),
        (replace(GOOD, placed=GOOD.placed[:2]), WrongCount(2, 1, 0)),
        (replace(GOOD, placed=(*GOOD.placed, Placed(2, 0, 5))), WrongCount(2, 1, 2)),
        (with_piece(2, Placed(3, 0, 3)), NoSuchPart(2)),
        (with_piece(2, Placed(-1, 0, 3)), NoSuchPart(2)),
    ],
)
def test_a_fault_is_found(layout: Layout, fault: Fault):
    assert fault in faults(layout)


def test_pieces_that_touch_do_not_overlap_but_one_unit_more_does():
    parts = [Part("a", 2, 2, 2)]
    touching = Layout(4, 2, (Placed(0, 0, 0), Placed(0, 2, 0)))
    assert check(parts, [touching], length=2, strips=True) == ()
    nearer = replace(touching, placed=(Placed(0, 0, 0), Placed(0, 1, 0)))
    assert check(parts, [nearer], length=2, strips=False) == (Overlap(0, 1),)


def test_the_cloth_that_is_bought_counts_not_the_length_that_the_layout_claims():
    assert faults(replace(GOOD, length=9)) == ()
    assert Outside(1) in faults(GOOD, length=4)


def test_a_free_layout_is_not_one_in_strips():
    assert faults(GOOD, strips=True) == (NotInStrips(0, 2),)


def test_strips_may_hold_lower_pieces_but_none_behind_another():
    parts = [Part("a", 4, 4, 1), Part("b", 3, 2, 2)]
    beside = Layout(10, 4, (Placed(0, 0, 0), Placed(1, 4, 0), Placed(1, 7, 0)))
    behind = Layout(10, 4, (Placed(0, 0, 0), Placed(1, 4, 0), Placed(1, 4, 2)))
    assert check(parts, [beside], length=4, strips=True) == ()
    assert check(parts, [behind], length=4, strips=False) == ()
    assert check(parts, [behind], length=4, strips=True) == (NotInStrips(1, 2),)


def test_pieces_are_counted_over_all_sheets():
    one = Layout(7, 5, GOOD.placed[:1])
    others = Layout(7, 5, GOOD.placed[1:])
    assert check(PARTS, [one, others], length=5, strips=False) == ()
    assert check(PARTS, [others, others], length=5, strips=False) == (
        WrongCount(0, 1, 0),
        WrongCount(1, 1, 2),
        WrongCount(2, 1, 2),
    )
    shifted = replace(others, placed=(others.placed[0], Placed(2, 0, 4)))
    assert check(PARTS, [one, shifted], length=5, strips=False) == (Outside(2),)
