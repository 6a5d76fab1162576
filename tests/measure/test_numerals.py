"""Numbers as the trade writes them."""

from fractions import Fraction

import pytest

from presscloth.measure import (
    Quantity,
    System,
    decimal_text,
    exact_text,
    fraction_text,
    length,
    measure_text,
    number_text,
    pi,
)


@pytest.mark.parametrize(
    ("value", "text"),
    [("0", "0"), ("3", "3"), ("3/2", "1 1/2"), ("5/8", "5/8"), ("20/8", "2 1/2"), ("-1/4", "-1/4"),
     ("-9/4", "-2 1/4")],
)  # fmt: skip
def test_fractions(value: str, text: str):
    assert fraction_text(Fraction(value)) == text


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [("21.25", 2, "21.25"), ("21.5", 2, "21.5"), ("21", 2, "21"), ("200", 0, "200"), ("6.35", 1, "6.4"),
     ("6.349", 1, "6.3"), ("0.05", 2, "0.05"), ("-0.25", 1, "-0.3"), ("-0.04", 1, "0"), ("2/3", 3, "0.667"),
     ("9.96", 1, "10")],
)  # fmt: skip
def test_decimals_are_rounded_half_up(value: str, digits: int, text: str):
    # 6.35 to one digit is 6.3 in binary floating point; the trade prints 6.4.
    assert decimal_text(Fraction(value), digits) == text


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [("7.5", "cm", "7.5 cm"), ("1/2", "cm", "0.5 cm"), ("1.5", "m", "1.5 m"), ("3/2", "in", "1 1/2 in"),
     ("25.75", "in", "25 3/4 in"), ("4/8", "in", "1/2 in"), ("1/3", "yd", "1/3 yd"), ("0.7", "in", "0.7 in"),
     ("1/3", "m", "1/3 m"), ("1/7", "in", "1/7 in"), ("2.125", "cm", "2.125 cm"), ("9", "oz", "9 oz")],
)  # fmt: skip
def test_a_stated_value_is_tidied_and_stays_exact(value: str, unit: str, text: str):
    assert measure_text(Fraction(value), unit) == text


@pytest.mark.parametrize(
    ("value", "text"),
    [("12", "12"), ("2.5", "2 1/2"), ("0.85", "0.85"), ("1/3", "1/3"), ("0.0375", "0.0375"), ("1/7", "1/7")],
)
def test_plain_numbers(value: str, text: str):
    assert number_text(Fraction(value)) == text


def test_exact_text_of_a_rational_is_its_fraction():
    assert exact_text(length(190, Fraction(15, 2)), System.METRIC) == "190"
    assert exact_text(length(190, Fraction(15, 2)), System.IMPERIAL) == "15/2"


@pytest.mark.parametrize(
    ("scale", "text"),
    [("1", "3.14159265359"), ("100000", "314159.265359"), ("1/1000", "0.00314159265359")],
)
def test_exact_text_of_a_root_or_pi_has_twelve_digits(scale: str, text: str):
    circle = pi()
    scaled = Quantity(circle.kind, circle.metric * Fraction(scale), circle.imperial, rooted=True)
    assert exact_text(scaled, System.METRIC) == text


def test_exact_text_rounds_at_the_twelfth_digit():
    q = Quantity(pi().kind, Fraction(2, 7), Fraction(2) - Fraction(1, 10**39), rooted=True)
    assert exact_text(q, System.METRIC) == "0.285714285714"
    assert exact_text(q, System.IMPERIAL) == "2"


def test_exact_text_never_uses_an_exponent_nor_noughts_at_the_end():
    whole = Quantity(pi().kind, Fraction(2_000_000_000_000_000), Fraction(-5, 2), rooted=True)
    assert exact_text(whole, System.METRIC) == "2000000000000000"
    assert exact_text(whole, System.IMPERIAL) == "-2.5"
