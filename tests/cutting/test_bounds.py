"""Bounds never exceed what is possible, and reach it where the area alone does not."""

from itertools import product

import pytest
from cutting.pictures import shortest_free

from presscloth.cutting import Part
from presscloth.cutting.chance import Chance
from presscloth.cutting.knapsack import best_filling
from presscloth.cutting.laying import least_length
from presscloth.cutting.lengths import Lengths
from presscloth.cutting.refuting import cloths_needed
from presscloth.dev.perfect import pinwheels, straight


@pytest.mark.parametrize("seed", range(20))
def test_nothing_possible_is_refuted(seed: int):
    cut = straight if seed % 2 else pinwheels
    boxes = cut(9, 8, 6, seed)[:5]
    parts = [Part(str(n), wide, high, 1, n % 2 == 0) for n, (_, _, wide, high) in enumerate(boxes)]
    least = shortest_free(parts, 9)
    assert cloths_needed(parts, 9, least, 2) == 1
    assert all(cloths_needed(parts, 9, longer, 2) == 1 for longer in range(least, least + 12))


def test_one_unit_of_area_too_many_is_refuted():
    parts = [Part("a", 5, 2, 10)]
    assert cloths_needed(parts, 10, 10, 2) == 1
    assert cloths_needed([*parts, Part("b", 1, 1, 1)], 10, 10, 2) == 2


def test_pieces_wider_than_half_the_cloth_lie_one_behind_another():
    parts = [Part("a", 6, 5, 3)]
    assert cloths_needed(parts, 10, 15, 2) == 1
    assert cloths_needed(parts, 10, 14, 2) == 2  # the area would need 9


def test_three_in_a_row_do_not_fit_in_either_direction():
    # 4 squares of 4 in 9 × 9 fill a square of 8; a fifth has no room, though 17 units² are left over.
    assert cloths_needed([Part("a", 4, 4, 4)], 9, 9, 2) == 1
    assert cloths_needed([Part("a", 4, 4, 5)], 9, 9, 2) == 2


def test_prices_prove_what_no_standard_function_proves():
    # Bars of 5 and of 3 in a width of 12: 5 + 5, 5 + 3 + 3, or 3 × 4, by mixed demand.
    parts = [Part("a", 5, 10, 6), Part("b", 3, 10, 5)]
    # 6 a and 5 b: two rows 5 + 3 + 3 hold 2 a and 4 b, two rows 5 + 5 hold 4 a; one b is left: 4.25 rows.
    assert cloths_needed(parts, 12, 42, 2) == 2
    assert sum(part.area for part in parts) <= 12 * 38


def test_cloths_are_counted():
    assert cloths_needed([Part("a", 6, 6, 7)], 10, 10, 100) == 7
    assert cloths_needed([Part("a", 5, 5, 7)], 10, 10, 100) == 2
    assert cloths_needed([Part("a", 11, 5, 1, True)], 10, 10, 100) is None
    assert cloths_needed([Part("a", 11, 5, 1, True)], 10, 11, 100) == 1


@pytest.mark.parametrize("seed", range(10))
def test_the_best_filling_is_the_one_found_by_trying_all(seed: int):
    sizes = [2 + seed % 3, 5, 7, 11]
    values = [3 + seed, 8, 12 - seed % 4, 19]
    most = [3, 1, 2, 1]
    room = 17 + seed
    ways = product(*(range(count + 1) for count in most))
    best = max(
        sum(value * count for value, count in zip(values, way, strict=True))
        for way in ways
        if sum(size * count for size, count in zip(sizes, way, strict=True)) <= room
    )
    filling = best_filling(sizes, values, most, room)
    assert filling.value == filling.ceiling == best
    assert sum(size * count for size, count in zip(sizes, filling.counts, strict=True)) <= room


def test_a_filling_that_is_not_searched_to_the_end_keeps_a_ceiling_that_is_certain():
    chance = Chance(1)
    sizes = [500 + chance.below(900) for _ in range(60)]
    values = [size + 40 + chance.below(5) for size in sizes]
    best = [0] * 9002  # by room: the textbook table, one piece after another
    for size, value in zip(sizes, values, strict=True):
        for room in range(9001, size - 1, -1):
            best[room] = max(best[room], best[room - size] + value)
    filling = best_filling(sizes, values, [1] * 60, 9001)
    assert filling.value < best[9001] <= filling.ceiling  # 9570, 9599, 9731


def test_lengths_are_sums_of_pieces_that_can_stand_one_behind_another():
    lengths = Lengths([Part("a", 4, 10, 2), Part("b", 3, 7, 1, True)], 40)
    sums = [0, 3, 7, 10, 13, 17, 20, 23, 27]
    assert [length for length in range(41) if lengths.up_to(length) == length] == sums
    assert [lengths.up_to(at) for at in (2, 9, 26, 40)] == [0, 7, 23, 27]
    assert [lengths.from_(at) for at in (1, 8, 24, 28)] == [3, 10, 27, 28]


def test_nothing_lies_beside_pieces_nearly_as_wide_as_the_cloth():
    """Three strips across all of the cloth, and a piece 1342 mm long: 3 × 65 + 1342 = 1537 mm at least."""
    strips = Part("binding", 1100, 65, 3)
    runner = [Part("centre", 342, 1342, 1), Part("border", 77, 1112, 2), Part("end", 242, 77, 2), strips]
    assert least_length(1100, runner, 2000, 1) == 1537
    # One millimetre narrower than the cloth less the narrowest other piece, and that one lies beside it.
    assert least_length(1100 + 77, runner, 2000, 1) < 1537
    # Once the strips are out of the way, the next widest pieces are alone as well.
    boards = [strips, Part("board", 1000, 400, 2), Part("slat", 101, 50, 1), Part("pin", 150, 150, 1)]
    assert least_length(1100, boards, 3000, 1) == 195 + 800 + 150


def test_a_piece_that_may_be_turned_out_of_the_way_is_not_alone():
    assert (
        least_length(1100, [Part("strip", 1090, 65, 3, True), Part("centre", 342, 1342, 1)], 3000, 1) < 1537
    )
