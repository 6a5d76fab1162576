"""Counts: whole, and the same in both systems."""

from fractions import Fraction

import pytest

from presscloth.measure import (
    Kind,
    NotACount,
    Quantity,
    WhyNot,
    as_count,
    length,
    multiply,
    number,
    root,
)


@pytest.mark.parametrize("count", [0, 1, 12, -3])
def test_a_whole_number_is_a_count(count: int):
    assert as_count(number(count)) == count


@pytest.mark.parametrize(
    ("quantity", "why"),
    [
        (length(1, 1), WhyNot.NOT_A_NUMBER),
        (Quantity(Kind.WEIGHT, Fraction(2), Fraction(2)), WhyNot.NOT_A_NUMBER),
        (number(Fraction(5, 2)), WhyNot.NOT_WHOLE),
        (Quantity(Kind.NUMBER, Fraction(5), Fraction(6)), WhyNot.DIFFERS),
        (Quantity(Kind.NUMBER, Fraction(5), Fraction(11, 2)), WhyNot.DIFFERS),
        (number(3 + Fraction(1, 10**35)), WhyNot.NOT_WHOLE),
        (Quantity(Kind.NUMBER, Fraction(3), 3 + Fraction(1, 10**35)), WhyNot.DIFFERS),
    ],
)
def test_anything_else_says_why_not(quantity: Quantity, why: WhyNot):
    assert as_count(quantity) == NotACount(why, quantity)


def test_the_last_digit_of_a_root_does_not_spoil_a_count():
    side = root(number(2))
    assert isinstance(side, Quantity)
    two = multiply(side, side)
    assert isinstance(two, Quantity)
    assert two.metric != 2
    assert as_count(two) == 2
