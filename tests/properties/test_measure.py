"""What holds of every measure, whatever its value."""

from fractions import Fraction

import mpmath
from hypothesis import given
from hypothesis import strategies as st

from presscloth.measure import (
    Direction,
    Kind,
    Printed,
    Quantity,
    System,
    add,
    agreement,
    carried_over,
    compare,
    convert,
    exact_text,
    length,
    number,
    printed,
    root,
    rounded,
    same_length,
    stated_pair,
    subtract,
)
from presscloth.source import Source

SPAN = Source("recipe.md", "7.5 cm").span(0, 6)
SYSTEMS = st.sampled_from(System)
LENGTHS = st.fractions(min_value=-5000, max_value=5000, max_denominator=10_000)
POSITIVE = st.fractions(min_value=Fraction(1, 100), max_value=5000, max_denominator=10_000)

# What each printed unit measures, in mm or in (exact by definition, NIST SP 811 Appendix B.8)
UNITS_READ = {"mm": 1, "cm": 10, "m": 1000, "in": 1, "yd": 36}


def read(text: str) -> Fraction:
    """The value of a printed length, as a maker reads it."""
    *numerals, unit = text.removeprefix("-").split(" ")
    size = sum((Fraction(part) for part in numerals), Fraction(0)) * UNITS_READ[unit]
    return -size if text.startswith("-") else size


def in_both(value: Fraction, **flags: bool) -> Quantity:
    return Quantity(Kind.LENGTH, value, value, **flags)


@given(LENGTHS, SYSTEMS)
def test_a_printed_length_read_back_lies_within_half_a_step(value: Fraction, system: System):
    shown = printed(in_both(value), system)
    assert read(shown.text) == shown.value
    step = Fraction(1) if system is System.METRIC else Fraction(1, 16 if abs(value) < 1 else 8)
    assert abs(shown.value - value) <= step / 2


@given(LENGTHS, SYSTEMS)
def test_a_physical_length_lies_within_half_of_its_finer_step(value: Fraction, system: System):
    shown = printed(in_both(value, physical=True), system)
    assert read(shown.text) == shown.value
    assert abs(shown.value - value) <= (Fraction(1, 10) if system is System.METRIC else Fraction(1, 16)) / 2


@given(POSITIVE, SYSTEMS)
def test_what_is_cut_or_bought_suffices_and_wastes_less_than_a_step(value: Fraction, system: System):
    metric = system is System.METRIC
    same = Fraction(1, 1000) if metric else Fraction(1, 25400)
    cut: tuple[Printed, Fraction] = (
        printed(in_both(value, physical=True), system, cut=True),
        Fraction(1) if metric else Fraction(1, 16),
    )
    bought: tuple[Printed, Fraction] = (
        printed(in_both(value), system, bought=True),
        Fraction(10) if metric else Fraction(36, 8),
    )
    for shown, step in (cut, bought):
        assert read(shown.text) == shown.value
        assert value - same < shown.value < value + step


@given(POSITIVE, SYSTEMS)
def test_what_is_printed_prints_as_itself(value: Fraction, system: System):
    for how in ({}, {"bought": True}):
        once = printed(in_both(value), system, **how)
        assert printed(in_both(once.value), system, **how) == once


@given(st.lists(st.integers(0, 3000), min_size=1, max_size=8), SYSTEMS)
def test_sums_of_measures_on_the_grid_print_as_sums(steps: list[int], system: System):
    # Half millimetres and sixteenths of an inch: what stays on the grid loses nothing on the page.
    grid = Fraction(1, 2) if system is System.METRIC else Fraction(1, 16)
    total = length(0, 0)
    for step in steps:
        longer = add(total, in_both(step * grid))
        assert isinstance(longer, Quantity)
        total = longer
    read_parts = sum((read(printed(in_both(step * grid), system).text) for step in steps), Fraction(0))
    assert read(printed(total, system).text) == read_parts


@given(st.integers(1, 5000))
def test_carrying_over_and_back_does_not_drift(millimetres: int):
    there = carried(Fraction(millimetres), "mm").imperial
    back = carried(there, "in").metric
    assert carried(back, "mm").imperial == there


@given(st.integers(1, 1000))
def test_a_length_on_the_ruler_comes_back_as_it_went(eighths: int):
    inches = Fraction(eighths, 8)
    assert carried(carried(inches, "in").metric, "mm").imperial == inches


@given(st.integers(1, 500))
def test_weights_come_back_as_they_went(quarters: int):
    ounces = Fraction(quarters, 4)
    assert carried(carried(ounces, "oz").metric, "g").imperial == ounces


def carried(value: Fraction, unit: str) -> Quantity:
    q = carried_over(value, unit, span=SPAN)
    assert isinstance(q, Quantity)
    return q


@given(POSITIVE, st.sampled_from(["mm", "in", "yd"]))
def test_exactly_keeps_the_very_length(value: Fraction, unit: str):
    q = carried_over(value, unit, exactly=True, span=SPAN)
    assert isinstance(q, Quantity)
    assert convert(q.imperial, Kind.LENGTH, System.METRIC) == q.metric
    assert convert(q.metric, Kind.LENGTH, System.IMPERIAL) == q.imperial


@given(POSITIVE, POSITIVE, st.booleans())
def test_what_is_suggested_for_a_disagreement_agrees(metric: Fraction, imperial: Fraction, about: bool):
    found = agreement(metric, imperial, Kind.LENGTH, about=about)
    if found is None:
        return
    if found.imperial_for_metric is not None:
        assert agreement(metric, read(found.imperial_for_metric), Kind.LENGTH, about=about) is None
    if found.metric_for_imperial is not None:
        assert agreement(read(found.metric_for_imperial), imperial, Kind.LENGTH, about=about) is None
    assert 0 < found.share <= 1


@given(POSITIVE, POSITIVE)
def test_agreement_asks_how_far_apart_and_not_which_is_larger(metric: Fraction, off: Fraction):
    # Half millimetres off the whole centimetre, so that the tolerance is a distance and no share.
    metric = 30 + metric.__floor__() * 10 + Fraction(1, 2)
    off = off / 1000
    both = [
        agreement(metric, convert(metric + signed, Kind.LENGTH, System.IMPERIAL), Kind.LENGTH, about=False)
        for signed in (off, -off)
    ]
    assert [found is None for found in both] == [off <= Fraction("1.6")] * 2


@given(POSITIVE, POSITIVE)
def test_what_is_about_agrees_wherever_the_strict_pair_does(metric: Fraction, imperial: Fraction):
    if agreement(metric, imperial, Kind.LENGTH, about=False) is None:
        assert agreement(metric, imperial, Kind.LENGTH, about=True) is None


@given(st.integers(1, 2000), st.integers(1, 800))
def test_a_pair_stands_or_is_refused_and_says_what_it_was(half_mm: int, eighths: int):
    found = stated_pair(Fraction(half_mm, 20), "cm", Fraction(eighths, 8), "in", span=SPAN)
    assert found.stated is not None
    assert found.stated.metric is not None
    assert found.stated.imperial is not None
    assert read(found.stated.metric) == found.metric == Fraction(half_mm, 2)
    assert read(found.stated.imperial) == found.imperial == Fraction(eighths, 8)


@given(LENGTHS, LENGTHS)
def test_what_is_added_can_be_taken_away(a: Fraction, b: Fraction):
    total = add(in_both(a), in_both(b))
    assert isinstance(total, Quantity)
    assert subtract(total, in_both(b)) == in_both(a)


@given(POSITIVE)
def test_roots_are_those_of_an_oracle(value: Fraction):
    found = root(number(value))
    assert isinstance(found, Quantity)
    with mpmath.workdps(60):
        oracle = mpmath.nstr(mpmath.sqrt(mpmath.mpf(value.numerator) / value.denominator), 40)
    assert found.metric == Fraction(oracle) or found.metric**2 == value


@given(LENGTHS, POSITIVE, SYSTEMS)
def test_rounding_goes_to_a_multiple_and_the_right_way(value: Fraction, step: Fraction, system: System):
    # A step is far wider than the 1/1000 mm within which lengths are the same.
    q, grid = in_both(value), in_both(step + 1)
    results = {}
    for direction in Direction:
        result = rounded(direction, q, grid)
        assert isinstance(result, Quantity)
        assert (result[system] / grid[system]).denominator == 1
        results[direction] = result[system]
    if not same_length(value, results[Direction.NEAREST], system):
        assert results[Direction.DOWN] < value < results[Direction.UP]
        assert results[Direction.UP] - results[Direction.DOWN] == grid[system]
    assert abs(results[Direction.NEAREST] - value) <= grid[system] / 2


@given(st.fractions(min_value=-1000, max_value=1000), st.fractions(min_value=-1000, max_value=1000))
def test_a_rounded_count_suffices_in_both_systems(metric: Fraction, imperial: Fraction):
    q = Quantity(Kind.NUMBER, metric, imperial)
    more, fewer = rounded(Direction.UP, q), rounded(Direction.DOWN, q)
    assert isinstance(more, Quantity)
    assert isinstance(fewer, Quantity)
    assert more.metric == more.imperial >= max(metric, imperial)
    assert fewer.metric == fewer.imperial <= min(metric, imperial)


@given(LENGTHS, LENGTHS, SYSTEMS)
def test_comparing_is_the_same_from_either_side(a: Fraction, b: Fraction, system: System):
    assert compare(a, b, system) == -compare(b, a, system)


@given(LENGTHS, SYSTEMS)
def test_exact_text_gives_the_value_back(value: Fraction, system: System):
    assert Fraction(exact_text(in_both(value), system)) == value
    short = Fraction(exact_text(in_both(value, rooted=True), system))
    assert abs(short - value) <= abs(value) * Fraction(5, 10**12)
