"""Reckoning with quantities, in both systems at once."""

from dataclasses import replace
from fractions import Fraction

import mpmath
import pytest

from presscloth.measure import (
    BeyondReach,
    Direction,
    DividedByNothing,
    Fault,
    Kind,
    NoSuchProduct,
    NoSuchQuotient,
    Quantity,
    RootOfLess,
    RootOfWrongKind,
    StepOfNothing,
    StepWanted,
    System,
    Unlike,
    add,
    compare,
    divide,
    greatest,
    length,
    multiply,
    negate,
    number,
    pi,
    root,
    rounded,
    same_length,
    smallest,
    stated_pair,
    subtract,
)
from presscloth.measure.arithmetic import square_root
from presscloth.source import Source

TEXT = Source("recipe.md", "5 cm (2 in) + 1 cm (3/8 in)")
BAND = stated_pair(Fraction(5), "cm", Fraction(2), "in", span=TEXT.span(0, 11))
SEAM = stated_pair(Fraction(1), "cm", Fraction(3, 8), "in", span=TEXT.span(14, 27))
assert isinstance(BAND, Quantity)
assert isinstance(SEAM, Quantity)
AREA = Quantity(Kind.AREA, Fraction(2500), Fraction(4))
WEIGHT = Quantity(Kind.WEIGHT, Fraction(250), Fraction(9))


def good(result: Quantity | Fault) -> Quantity:
    assert isinstance(result, Quantity)
    return result


def values(result: Quantity | Fault) -> tuple[Kind, Fraction, Fraction]:
    q = good(result)
    return q.kind, q.metric, q.imperial


def test_each_system_is_reckoned_by_itself():
    assert values(add(BAND, SEAM)) == (Kind.LENGTH, 60, Fraction(19, 8))
    assert values(subtract(BAND, SEAM)) == (Kind.LENGTH, 40, Fraction(13, 8))
    assert values(negate(BAND)) == (Kind.LENGTH, -50, -2)
    assert values(multiply(number(3), SEAM)) == (Kind.LENGTH, 30, Fraction(9, 8))
    assert values(multiply(SEAM, number(3))) == (Kind.LENGTH, 30, Fraction(9, 8))
    assert values(multiply(BAND, SEAM)) == (Kind.AREA, 500, Fraction(3, 4))
    assert values(divide(AREA, BAND)) == (Kind.LENGTH, 50, 2)
    assert values(divide(BAND, SEAM)) == (Kind.NUMBER, 5, Fraction(16, 3))
    assert values(divide(AREA, AREA)) == (Kind.NUMBER, 1, 1)
    assert values(divide(WEIGHT, WEIGHT)) == (Kind.NUMBER, 1, 1)
    assert values(divide(WEIGHT, number(2))) == (Kind.WEIGHT, 125, Fraction(9, 2))
    assert values(divide(number(1), number(8))) == (Kind.NUMBER, Fraction(1, 8), Fraction(1, 8))
    assert values(multiply(number(2), WEIGHT)) == (Kind.WEIGHT, 500, 18)


def test_smallest_and_greatest_choose_in_each_system():
    narrow_in_metric = length(50, 3)
    narrow_in_imperial = length(70, 2)
    assert values(smallest((narrow_in_metric, narrow_in_imperial))) == (Kind.LENGTH, 50, 2)
    assert values(greatest((narrow_in_metric, narrow_in_imperial))) == (Kind.LENGTH, 70, 3)
    assert values(greatest((number(4),))) == (Kind.NUMBER, 4, 4)


@pytest.mark.parametrize(
    ("result", "fault"),
    [
        (add(BAND, number(1)), Unlike(Kind.LENGTH, Kind.NUMBER)),
        (subtract(WEIGHT, AREA), Unlike(Kind.WEIGHT, Kind.AREA)),
        (smallest((BAND, SEAM, AREA)), Unlike(Kind.LENGTH, Kind.AREA)),
        (multiply(AREA, BAND), NoSuchProduct(Kind.AREA, Kind.LENGTH)),
        (multiply(WEIGHT, BAND), NoSuchProduct(Kind.WEIGHT, Kind.LENGTH)),
        (divide(BAND, AREA), NoSuchQuotient(Kind.LENGTH, Kind.AREA)),
        (divide(number(1), BAND), NoSuchQuotient(Kind.NUMBER, Kind.LENGTH)),
        (divide(BAND, number(0)), DividedByNothing((System.METRIC, System.IMPERIAL))),
        (divide(BAND, length(0, 1)), DividedByNothing((System.METRIC,))),
        (root(BAND), RootOfWrongKind(Kind.LENGTH)),
        (root(WEIGHT), RootOfWrongKind(Kind.WEIGHT)),
        (root(number(-1)), RootOfLess((System.METRIC, System.IMPERIAL))),
        (root(Quantity(Kind.AREA, Fraction(4), Fraction(-4))), RootOfLess((System.IMPERIAL,))),
        (rounded(Direction.UP, BAND), StepWanted(Kind.LENGTH)),
        (rounded(Direction.UP, BAND, number(1)), Unlike(Kind.LENGTH, Kind.NUMBER)),
        (rounded(Direction.UP, BAND, length(10, 0)), StepOfNothing()),
        (rounded(Direction.NEAREST, number(3), number(-1)), StepOfNothing()),
    ],
)
def test_faults_say_what_cannot_be(result: Quantity | Fault, fault: Fault):
    assert result == fault


def test_multiplying_without_end_stops():
    q: Quantity | Fault = number(Fraction(10, 7))
    for _ in range(64):
        if not isinstance(q, Quantity):
            break
        q = multiply(q, q)
    assert q == BeyondReach()


def test_a_result_is_computed_and_knows_where_it_comes_from():
    total = good(add(good(add(BAND, SEAM)), BAND))
    assert total.stated is None
    assert total.origins == (TEXT.span(0, 11), TEXT.span(14, 27))
    assert negate(BAND).stated is None
    assert negate(BAND).origins == BAND.origins
    assert good(greatest((SEAM,))).stated is None


@pytest.mark.parametrize("flag", ["about", "physical", "rooted"])
def test_flags_pass_on_to_whatever_is_reckoned_from_them(flag: str):
    flagged = replace(SEAM, **{flag: True})
    for result in (
        add(BAND, flagged),
        subtract(flagged, BAND),
        multiply(number(2), flagged),
        divide(flagged, number(2)),
        negate(flagged),
        smallest((BAND, flagged)),
        root(multiply(flagged, flagged)),
    ):
        assert getattr(good(result), flag) is True
    assert getattr(good(add(BAND, SEAM)), flag) is False


def test_pi_is_right_to_forty_digits():
    with mpmath.workdps(60):
        oracle = mpmath.nstr(mpmath.pi, 40)
    assert pi().metric == pi().imperial == Fraction(oracle)
    assert pi().rooted


@pytest.mark.parametrize(
    "value", ["2", "3", "1/2", "0.1", "20000", "12345678.9", "1/7", "999999999999", "0.00000003", "10"]
)
def test_roots_are_right_to_forty_digits(value: str):
    exact = Fraction(value)
    with mpmath.workdps(60):
        oracle = mpmath.nstr(mpmath.sqrt(mpmath.mpf(exact.numerator) / exact.denominator), 40)
    assert square_root(exact) == (Fraction(oracle), False)


@pytest.mark.parametrize(
    ("value", "expected"),
    [("0", "0"), ("4", "2"), ("2.25", "1.5"), ("1/64", "1/8"), ("1e18", "1e9")],
)
def test_roots_of_squares_are_exact(value: str, expected: str):
    assert square_root(Fraction(value)) == (Fraction(expected), True)


def test_a_root_is_marked_unless_it_is_exact_in_both_systems():
    assert values(root(AREA)) == (Kind.LENGTH, 50, 2)
    assert not good(root(AREA)).rooted
    assert good(root(Quantity(Kind.AREA, Fraction(2500), Fraction(2)))).rooted
    assert values(root(number(0))) == (Kind.NUMBER, 0, 0)
    assert values(root(number(Fraction(9, 4)))) == (Kind.NUMBER, Fraction(3, 2), Fraction(3, 2))


def test_lengths_that_differ_by_less_than_a_thousandth_of_a_millimetre_are_the_same():
    assert same_length(Fraction(100), Fraction("100.0009"), System.METRIC)
    assert not same_length(Fraction(100), Fraction("100.001"), System.METRIC)
    # 1/1000 mm is 0.00003937 in
    assert same_length(Fraction(4), Fraction("4.000039"), System.IMPERIAL)
    assert not same_length(Fraction(4), Fraction("4.00004"), System.IMPERIAL)


def test_lengths_compare_by_that_measure():
    assert compare(Fraction(4), Fraction("4.0005"), System.METRIC) == 0
    assert compare(Fraction(4), Fraction("4.0005"), System.IMPERIAL) == -1
    assert compare(Fraction(5), Fraction(4), System.METRIC) == 1


STEP = length(10, Fraction(1, 2))


@pytest.mark.parametrize(
    ("direction", "metric", "imperial", "expected"),
    [
        (Direction.UP, "50", "2", ("50", "2")),
        (Direction.UP, "50.1", "2.01", ("60", "2.5")),
        (Direction.UP, "50.0009", "2.00003", ("50", "2")),
        (Direction.UP, "50.001", "2.00004", ("60", "2.5")),
        (Direction.DOWN, "49.9995", "1.99997", ("50", "2")),
        (Direction.DOWN, "49.9", "1.99", ("40", "1.5")),
        (Direction.DOWN, "-1", "-0.1", ("-10", "-0.5")),
        (Direction.UP, "-1", "-0.1", ("0", "0")),
        (Direction.NEAREST, "45", "1.75", ("50", "2")),
        (Direction.NEAREST, "44.9", "1.74", ("40", "1.5")),
        (Direction.NEAREST, "-45", "-1.75", ("-50", "-2")),
    ],
)
def test_lengths_are_rounded_in_each_system(
    direction: Direction, metric: str, imperial: str, expected: tuple[str, str]
):
    q = good(rounded(direction, length(Fraction(metric), Fraction(imperial)), STEP))
    assert (q.metric, q.imperial) == (Fraction(expected[0]), Fraction(expected[1]))


def test_a_count_is_rounded_to_one_number_for_both_systems():
    differing = Quantity(Kind.NUMBER, Fraction("4.9"), Fraction("5.1"))
    assert values(rounded(Direction.UP, differing)) == (Kind.NUMBER, 6, 6)
    assert values(rounded(Direction.DOWN, differing)) == (Kind.NUMBER, 4, 4)
    assert values(rounded(Direction.NEAREST, differing)) == (Kind.NUMBER, 5, 5)
    midway = Quantity(Kind.NUMBER, Fraction("4.5"), Fraction("4.4"))
    assert values(rounded(Direction.NEAREST, midway)) == (Kind.NUMBER, 5, 4)
    assert values(rounded(Direction.UP, differing, number(4))) == (Kind.NUMBER, 8, 8)


def test_the_last_digit_of_a_root_does_not_tip_a_rounding():
    two = good(multiply(good(root(number(2))), good(root(number(2)))))
    assert two.metric > 2
    assert values(rounded(Direction.UP, two)) == (Kind.NUMBER, 2, 2)
    seven = good(multiply(good(root(number(7))), good(root(number(7)))))
    assert seven.metric < 7
    assert values(rounded(Direction.DOWN, seven)) == (Kind.NUMBER, 7, 7)
    assert values(rounded(Direction.NEAREST, good(divide(seven, number(2))))) == (Kind.NUMBER, 4, 4)
    # A plain number is taken as it is, however near it comes.
    assert values(rounded(Direction.UP, number(2 + Fraction(1, 10**35)))) == (Kind.NUMBER, 3, 3)


def test_a_rounded_root_is_exact_again():
    assert not good(rounded(Direction.UP, good(root(number(2))))).rooted
    assert good(rounded(Direction.UP, number(5), good(root(number(2))))).rooted
