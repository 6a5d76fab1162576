"""Small pieces go into the holes between large ones: where they find room, and what that saves."""

from presscloth.cutting import Cut, Part, Placed, Roll, check, lay_out
from presscloth.cutting.holes import Holes
from presscloth.cutting.stock import even, halved, stock_of, whole

# Two large pieces, 6 × 4 each, on cloth 10 wide and 8 long: 4 × 8 stays free beside them.
PARTS = [Part("large", 6, 4, 2), Part("small", 2, 1, 5, True)]
LARGE = [Placed(0, 0, 0), Placed(0, 0, 4)]


def test_small_pieces_lie_beside_large_ones_as_near_to_the_cut_end_as_they_can():
    holes = Holes(PARTS, 10)
    assert holes.large == (0,) and holes.area == 10
    filled = holes.fill(8, LARGE)
    assert filled.missing == 0
    assert [(each.x, each.y, each.turned) for each in filled.placed] == [
        (6, 0, True),
        (7, 0, True),
        (8, 0, True),
        (9, 0, True),
        (6, 2, True),
    ]


def test_what_finds_no_hole_is_missing_and_nothing_runs_over_the_selvedge():
    holes = Holes([Part("large", 6, 4, 2), Part("small", 3, 1, 3)], 7)
    filled = holes.fill(8, LARGE)  # one square is free in each row, and three would go into the next
    assert filled.missing == 9 and filled.placed == ()


def test_pieces_that_lie_across_a_large_hole_turn_when_that_holds_more():
    # A hole of 2 × 5: standing, four of 1 × 2 leave room for one that lies across.
    parts = [Part("large", 8, 5, 1), Part("small", 2, 1, 5, True)]
    filled = Holes(parts, 10).fill(5, [Placed(0, 0, 0)])
    assert filled.missing == 0 and len(filled.placed) == 5
    assert any(not each.turned for each in filled.placed)


def test_a_large_piece_off_the_squares_takes_every_square_that_it_touches():
    parts = [Part("large", 4, 4, 1), Part("small", 2, 2, 4)]
    parts = [*parts, Part("larger", 8, 4, 3)]
    holes = Holes(parts, 13)  # squares of 2: six of them, and 1 is left over at the right selvedge
    filled = holes.fill(4, [Placed(2, 5, 0)])  # from 5 to 13, so that 4 to 6 is taken as well
    assert sorted((each.x, each.y) for each in filled.placed) == [(0, 0), (0, 2), (2, 0), (2, 2)]


def test_where_small_pieces_are_much_of_the_cloth_or_kinds_are_many_nothing_waits_for_holes():
    much = [Part("large", 6, 4, 2), Part("small", 2, 1, 20, True)]
    assert not Holes(much, 10).worth_filling(8)
    many = [Part("large", 60, 40, 2), *(Part(str(n), 2, 1 + n, 1) for n in range(12))]
    assert not Holes(many, 100).worth_filling(80)
    assert Holes(PARTS, 10).worth_filling(8)
    assert not Holes(PARTS, 10).worth_filling(8_000)


def test_holes_save_a_length_that_no_order_of_all_pieces_finds():
    """Invented: six pouches with tabs and loops from 1120 mm; without holes the same means end at 1280 mm."""
    parts = [
        Part("outer", 260, 190, 12, True),
        Part("lining", 260, 190, 12, True),
        Part("tab", 60, 40, 12, True),
        Part("loop", 120, 40, 6, True),
        Part("inner pocket", 230, 110, 6, True),
    ]
    cut = lay_out(Roll(1120), parts)
    assert isinstance(cut, Cut) and cut.need <= 1270
    assert check(parts, [cut.layout], length=cut.need, strips=False) == ()


def test_few_pieces_of_few_kinds_are_laid_in_halves_of_a_kind():
    """Invented: four cushions with piping from 1370 mm; laid singly, they mostly end at 1780 mm."""
    parts = [
        Part("front", 470, 470, 4, True),
        Part("back", 470, 320, 4, True),
        Part("flap", 470, 270, 4, True),
        Part("piping", 50, 1000, 6, True),
    ]
    cut = lay_out(Roll(1370), parts)
    assert isinstance(cut, Cut) and cut.need <= 1740


def test_batches_are_whole_parts_halves_or_as_many_as_asked_for():
    parts = [Part("a", 3, 2, 5, True), Part("b", 1, 1, 2)]
    assert stock_of(parts, whole(parts)).count == (5, 2)
    assert stock_of(parts, halved(parts)).count == (3, 2, 1, 1)
    assert stock_of(parts, even(parts, 7)).count == (1, 1, 1, 1, 1, 1, 1)
