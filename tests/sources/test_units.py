"""Units held against published conversion factors and tables."""

from fractions import Fraction

import pytest

from presscloth.measure import (
    UNITS,
    Direction,
    Kind,
    Quantity,
    System,
    convert,
    decimal_text,
    fraction_text,
    length,
    printed,
    rounded,
)


def in_mm(value: str, unit: str) -> Fraction:
    """The exact length of a value in any unit, in mm."""
    own = mixed(value) * UNITS[unit].factor
    return own if UNITS[unit].system is System.METRIC else convert(own, Kind.LENGTH, System.METRIC)


def in_inches(millimetres: Fraction) -> Fraction:
    return convert(millimetres, Kind.LENGTH, System.IMPERIAL)


def mixed(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


# Source: NIST SP 811, Appendix B.8 (exact factors).
@pytest.mark.parametrize(
    ("value", "unit", "millimetres"),
    [
        ("1", "in", "25.4"),
        ("1", "ft", "304.8"),
        ("1", "yd", "914.4"),
        ("0.001", "in", "0.0254"),
    ],
)
def test_lengths_are_exact_by_definition(value: str, unit: str, millimetres: str):
    assert in_mm(value, unit) == Fraction(millimetres)


# Source: NIST SP 811, Appendix B.8.
def test_a_yard_is_thirty_six_inches():
    assert UNITS["yd"].factor / UNITS["in"].factor == 36


# Source: NIST SP 811, Appendix B.8 gives 0.8361274 m²; the square of 0.9144 m is 0.83612736.
def test_a_square_yard():
    square_inches = UNITS["yd"].factor ** 2
    assert square_inches == 1296
    square_metres = convert(square_inches, Kind.AREA, System.METRIC) / 1000**2
    assert square_metres == Fraction("0.83612736")
    assert decimal_text(square_metres, 7) == "0.8361274"


# Source: NIST SP 811, Appendix B.8 (0.4535924 kg).
def test_a_pound():
    kilograms = convert(UNITS["lb"].factor, Kind.WEIGHT, System.METRIC) / UNITS["kg"].factor
    assert decimal_text(kilograms, 7) == "0.4535924"


# Derived here from the factors of NIST SP 811, Appendix B.8: 4 oz/yd² is 135.6 g/m².
def test_ounces_to_the_square_yard():
    grams = convert(Fraction(4), Kind.WEIGHT, System.METRIC)
    square_metres = convert(UNITS["yd"].factor ** 2, Kind.AREA, System.METRIC) / 1000**2
    assert decimal_text(grams / square_metres, 1) == "135.6"


# Source: NIST SP 811, Appendix B.8 (computer point and pica); the px from memory (source believed:
# W3C CSS Values, absolute lengths).
@pytest.mark.parametrize(
    ("inches", "digits", "millimetres"),
    [("1/72", 7, "0.3527778"), ("1/6", 6, "4.233333"), ("1/96", 7, "0.2645833")],
)
def test_parts_of_an_inch_that_printers_use(inches: str, digits: int, millimetres: str):
    assert decimal_text(in_mm(inches, "in"), digits) == millimetres


# Source: published sewing guide (zip lengths): 1 m is 1.0936 yd, 39.37 in, 3.2808 ft.
@pytest.mark.parametrize(
    ("unit", "digits", "expected"), [("yd", 4, "1.0936"), ("in", 2, "39.37"), ("ft", 4, "3.2808")]
)
def test_a_metre_in_imperial_units(unit: str, digits: int, expected: str):
    assert decimal_text(in_inches(in_mm("1", "m")) / UNITS[unit].factor, digits) == expected


# Derived here: 10 m is 10.94 yd; they hold 10 7/8 yd, and whoever needs them buys 11.
def test_ten_metres_in_yards():
    inches = in_inches(in_mm("10", "m"))
    assert decimal_text(inches / 36, 2) == "10.94"
    held = rounded(Direction.DOWN, length(10_000, inches), length(100, mixed("4 1/2")))
    assert isinstance(held, Quantity)
    assert held.imperial / UNITS["yd"].factor == mixed("10 7/8")
    assert printed(length(10_000, inches), System.IMPERIAL, bought=True).text == "11 yd"


# Source: published worked example or common practice; arithmetic verified here.
def test_stitches_to_the_inch_from_the_stitch_length():
    assert convert(Fraction(1), Kind.LENGTH, System.METRIC) / Fraction("2.5") == Fraction("10.16")


# Source: published inch/cm and yard/cm conversion guide, 2022 (half-up to 0.1 cm).
@pytest.mark.parametrize(
    ("yards", "centimetres"),
    [
        ("1/8", "11.4"), ("1/3", "30.5"), ("1/2", "45.7"), ("2/3", "61"), ("1", "91.4"), ("1 1/2", "137.2"),
        ("2", "182.9"), ("2 1/2", "228.6"), ("3", "274.3"), ("4", "365.8"),
    ],
)  # fmt: skip
def test_yards_in_centimetres(yards: str, centimetres: str):
    millimetres = in_mm(yards, "yd")
    assert decimal_text(millimetres / 10, 1) == centimetres
    # and so it is printed, where nobody stated it otherwise
    assert printed(length(millimetres, 1), System.METRIC).text == f"{centimetres} cm"


# Source: published inch/cm and yard/cm conversion guide, 2022. It prints 3 1/4 in as 8.25 cm (exact 8.255),
# its only value to half a millimetre.
@pytest.mark.parametrize(
    ("inches", "centimetres"),
    [
        ("1 1/4", "3.2"), ("1 3/4", "4.4"), ("2 1/4", "5.7"), ("2 3/4", "7"), ("4", "10.2"), ("5", "12.7"),
        ("6", "15.2"), ("8", "20.3"), ("10", "25.4"), ("12", "30.5"),
    ],
)  # fmt: skip
def test_inches_in_centimetres(inches: str, centimetres: str):
    assert printed(length(in_mm(inches, "in"), 1), System.METRIC).text == f"{centimetres} cm"


# Source: common practice (no source) for the eighths of a yard; the inches follow from 36 in to the yard.
@pytest.mark.parametrize(
    ("inches", "yards"),
    [("4 1/2", "1/8"), ("9", "1/4"), ("13 1/2", "3/8"), ("22 1/2", "5/8"), ("31 1/2", "7/8")],
)
def test_eighths_of_a_yard(inches: str, yards: str):
    assert fraction_text(mixed(inches) / UNITS["yd"].factor) == yards
    q = Quantity(Kind.LENGTH, Fraction(1), mixed(inches))
    assert printed(q, System.IMPERIAL, bought=True).text == f"{yards} yd"
