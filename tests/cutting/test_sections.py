"""A long layout in sections: cut straight through, equal ones counted, long ones shown in parts."""

from collections import Counter

from hypothesis import given
from hypothesis import strategies as st

from presscloth.cutting.laid import Lying, OnCloth
from presscloth.cutting.sections import sections


def box(name: str, x: int, y: int, wide: int, high: int) -> Lying:
    return Lying(name, 0, ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high)))


def test_equal_rows_are_counted_and_shown_some_at_a_time() -> None:
    cloth = OnCloth(100, 120, tuple(box("a", 0, 10 * n, 90, 10) for n in range(12)))
    ((section, times),) = sections(cloth)
    # Ten would fit a square of cloth, but of twelve rows it is six that go into all of them.
    assert (section.length, len(section.pieces), times) == (60, 6, 2)
    assert section.pieces[1].corners[0] == (0, 10)


def test_sections_that_differ_stand_in_the_order_in_which_they_are_met() -> None:
    pieces = (
        box("a", 0, 0, 50, 60),
        box("b", 50, 0, 50, 50),
        box("a", 0, 60, 50, 60),
        box("c", 0, 120, 9, 70),
    )
    found = sections(OnCloth(100, 190, pieces))
    assert [(section.length, times) for section, times in found] == [(60, 1), (60, 1), (70, 1)]


def test_what_cannot_be_cut_apart_is_shown_in_parts_that_end_where_little_lies_across() -> None:
    long = box("long", 0, 0, 10, 500)
    rows = tuple(box("short", 10, 50 * n, 90, 50) for n in range(10))
    found = sections(OnCloth(100, 500, (long, *rows)))
    assert [section.length for section, _ in found] == [200, 200, 100]
    shown = [Counter((piece.name, piece.rest) for piece in section.pieces) for section, _ in found]
    assert shown[0] == {("long", False): 1, ("short", False): 4}
    assert shown[2] == {("long", True): 1, ("short", False): 2}
    (rest,) = (piece for piece in found[2][0].pieces if piece.rest)
    assert set(rest.corners) == {(0, 0), (10, 0), (10, 100), (0, 100)}


def test_a_slanting_piece_is_parted_along_the_line() -> None:
    slanting = Lying("s", 0, ((0, 0), (100, 400), (50, 400)))
    first, second = (section for section, _ in sections(OnCloth(100, 400, (slanting,))))
    assert (first.length, second.length) == (200, 200)
    assert set(first.pieces[0].corners) == {(0, 0), (50, 200), (25, 200)}
    assert set(second.pieces[0].corners) == {(50, 0), (25, 0), (100, 200), (50, 200)}


@given(st.lists(st.tuples(st.integers(1, 60), st.integers(1, 90)), min_size=1, max_size=30))
def test_no_piece_is_lost_and_no_length(sizes: list[tuple[int, int]]) -> None:
    pieces, y = [], 0
    for n, (wide, high) in enumerate(sizes):
        pieces.append(box("p", n % 2 * 40, y, wide, high))
        y += high if n % 3 else high // 2
    length = max(y for piece in pieces for _, y in piece.corners)
    found = sections(OnCloth(100, length, tuple(pieces)))
    assert sum(section.length * times for section, times in found) == length
    begun = sum(times for section, times in found for piece in section.pieces if not piece.rest)
    assert begun == len(sizes)
