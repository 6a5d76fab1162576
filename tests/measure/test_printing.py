"""What of a quantity stands on the page."""

from dataclasses import replace
from fractions import Fraction

import pytest

from presscloth.measure import (
    Kind,
    Printed,
    Quantity,
    System,
    carried_over,
    length,
    multiply,
    number,
    pi,
    printed,
    root,
    stated_pair,
)
from presscloth.source import Source

SPAN = Source("recipe.md", "7.5 cm (3 in)").span(0, 13)


def metric(millimetres: str, **how: bool) -> Printed:
    return printed(length(Fraction(millimetres), 1), System.METRIC, **how)


def imperial(inches: str, **how: bool) -> Printed:
    value = sum((Fraction(part) for part in inches.split()), Fraction(0))
    return printed(length(1, value), System.IMPERIAL, **how)


def physical(millimetres: str, system: System, *, cut: bool = False) -> Printed:
    q = carried_over(Fraction(millimetres), "mm", exactly=True, span=SPAN)
    assert isinstance(q, Quantity)
    return printed(q.computed(), system, cut=cut)


def test_a_stated_value_prints_as_it_is_stated():
    q = stated_pair(Fraction(15), "mm", Fraction(5, 8), "in", span=SPAN)
    assert isinstance(q, Quantity)
    assert printed(q, System.METRIC) == Printed(Fraction(15), "15 mm")
    assert printed(q.computed(), System.METRIC) == Printed(Fraction(15), "1.5 cm")
    fine = stated_pair(Fraction("64.77"), "cm", Fraction("25.5"), "in", span=SPAN)
    assert isinstance(fine, Quantity)
    assert printed(fine, System.METRIC, cut=True) == Printed(Fraction("647.7"), "64.77 cm")
    assert printed(fine, System.IMPERIAL, bought=True) == Printed(Fraction("25.5"), "25 1/2 in")


def test_a_carried_value_prints_as_stated_on_its_own_side_only():
    q = carried_over(Fraction(75), "mm", span=SPAN)
    assert isinstance(q, Quantity)
    assert printed(q, System.METRIC).text == "75 mm"
    assert printed(q, System.IMPERIAL).text == "3 in"


@pytest.mark.parametrize(
    ("millimetres", "value", "text"),
    [
        ("0", "0", "0 mm"),
        ("7", "7", "7 mm"),
        ("7.5", "7.5", "7.5 mm"),
        ("7.4", "7", "7 mm"),
        ("7.75", "8", "8 mm"),
        ("9.4", "9", "9 mm"),
        ("9.5", "9.5", "9.5 mm"),
        ("9.6", "10", "1 cm"),
        ("10", "10", "1 cm"),
        ("212.5", "212.5", "21.25 cm"),
        ("212.4", "212", "21.2 cm"),
        ("212.6", "213", "21.3 cm"),
        ("640", "640", "64 cm"),
        ("3048", "3048", "304.8 cm"),
        ("-12.6", "-13", "-1.3 cm"),
        ("-7.5", "-7.5", "-7.5 mm"),
    ],
)
def test_computed_metric_lengths(millimetres: str, value: str, text: str):
    assert metric(millimetres) == Printed(Fraction(value), text)


@pytest.mark.parametrize(
    ("inches", "value", "text"),
    [
        ("0", "0", "0 in"),
        ("1/16", "1/16", "1/16 in"),
        ("1/32", "1/16", "1/16 in"),
        ("0.03", "0", "0 in"),
        ("0.97", "1", "1 in"),
        ("0.96", "15/16", "15/16 in"),
        ("2 3/16", "35/16", "2 3/16 in"),
        ("2.19", "9/4", "2 1/4 in"),
        ("2.18", "17/8", "2 1/8 in"),
        ("8 3/8", "67/8", "8 3/8 in"),
        ("19 6/8", "79/4", "19 3/4 in"),
        ("60", "60", "60 in"),
        ("-2.19", "-9/4", "-2 1/4 in"),
    ],
)
def test_computed_imperial_lengths(inches: str, value: str, text: str):
    assert imperial(inches) == Printed(Fraction(value), text)


@pytest.mark.parametrize(
    ("millimetres", "there", "cut"),
    [
        # Stitch fields and the cloth hooped round them
        ("100", "3 15/16 in", "3 15/16 in"),
        ("130", "5 1/8 in", "5 1/8 in"),
        ("150", "5 7/8 in", "5 15/16 in"),
        ("180", "7 1/16 in", "7 1/8 in"),
        ("200", "7 7/8 in", "7 7/8 in"),
    ],
)
def test_physical_values_print_to_the_sixteenth_and_are_cut_larger(millimetres: str, there: str, cut: str):
    assert physical(millimetres, System.IMPERIAL).text == there
    assert physical(millimetres, System.IMPERIAL, cut=True).text == cut


def test_physical_values_print_to_the_tenth_of_a_millimetre_and_are_cut_rounded_up():
    buckle = Quantity(Kind.LENGTH, Fraction("25.45"), Fraction(1), physical=True)
    assert printed(buckle, System.METRIC) == Printed(Fraction("25.5"), "2.55 cm")
    assert printed(buckle, System.METRIC, cut=True) == Printed(Fraction(26), "2.6 cm")
    pin = Quantity(Kind.LENGTH, Fraction("6.35"), Fraction(1, 4), physical=True)
    assert printed(pin, System.METRIC) == Printed(Fraction("6.4"), "6.4 mm")


def test_a_cut_size_that_holds_nothing_physical_is_not_rounded_up():
    assert metric("212.4", cut=True).text == "21.2 cm"
    assert imperial("2.18", cut=True).text == "2 1/8 in"


@pytest.mark.parametrize(
    ("millimetres", "value", "text"),
    [("350", "350", "35 cm"), ("350.1", "360", "36 cm"), ("350.0005", "350", "35 cm"),
     ("1990.1", "2000", "2 m"), ("2345", "2350", "2.35 m"), ("2500", "2500", "2.5 m"),
     ("1990", "1990", "199 cm")],
)  # fmt: skip
def test_metric_lengths_bought(millimetres: str, value: str, text: str):
    assert metric(millimetres, bought=True) == Printed(Fraction(value), text)


@pytest.mark.parametrize(
    ("inches", "value", "text"),
    [("4 1/2", "9/2", "1/8 yd"), ("18", "18", "1/2 yd"), ("28", "63/2", "7/8 yd"), ("36", "36", "1 yd"),
     ("91", "189/2", "2 5/8 yd"), ("18.00003", "18", "1/2 yd")],
)  # fmt: skip
def test_imperial_lengths_bought(inches: str, value: str, text: str):
    assert imperial(inches, bought=True) == Printed(Fraction(value), text)


def test_what_is_bought_rounds_up_whether_physical_or_not():
    q = Quantity(Kind.LENGTH, Fraction("351"), Fraction(1), physical=True)
    assert printed(q, System.METRIC, bought=True).text == "36 cm"


@pytest.mark.parametrize(
    ("grams", "text", "bought"),
    [("250", "250 g", "250 g"), ("251.5", "252 g", "255 g"), ("999.4", "999 g", "1 kg"),
     ("1250", "1.25 kg", "1.25 kg"), ("999.5", "1 kg", "1 kg")],
)  # fmt: skip
def test_metric_weights(grams: str, text: str, bought: str):
    q = Quantity(Kind.WEIGHT, Fraction(grams), Fraction(1))
    assert printed(q, System.METRIC).text == text
    assert printed(q, System.METRIC, bought=True).text == bought


@pytest.mark.parametrize(
    ("ounces", "value", "text", "bought"),
    [("8.8", "8.75", "8 3/4 oz", "9 oz"), ("15.9", "16", "1 lb", "1 lb"),
     ("18.5", "19", "1 3/16 lb", "1 3/16 lb"), ("24", "24", "1 1/2 lb", "1 1/2 lb"),
     ("24.1", "24", "1 1/2 lb", "1 9/16 lb")],
)  # fmt: skip
def test_imperial_weights(ounces: str, value: str, text: str, bought: str):
    q = Quantity(Kind.WEIGHT, Fraction(1), Fraction(ounces))
    assert printed(q, System.IMPERIAL) == Printed(Fraction(value), text)
    assert printed(q, System.IMPERIAL, bought=True).text == bought


def test_areas():
    q = Quantity(Kind.AREA, Fraction(12345), Fraction("19.13"))
    assert printed(q, System.METRIC) == Printed(Fraction(12350), "123.5 cm²")
    assert printed(q, System.IMPERIAL) == Printed(Fraction("19.125"), "19 1/8 in²")
    assert printed(q, System.IMPERIAL, bought=True).text == "19 1/4 in²"


@pytest.mark.parametrize(
    ("value", "printed_value", "text"),
    [("12", "12", "12"), ("5/2", "5/2", "2 1/2"), ("2/3", "2/3", "2/3"), ("0.85", "0.85", "0.85"),
     ("1/7", "0.14", "0.14"), ("0.00375", "0", "0"), ("0.0375", "0.0375", "0.0375")],
)  # fmt: skip
def test_plain_numbers(value: str, printed_value: str, text: str):
    assert printed(number(Fraction(value)), System.METRIC) == Printed(Fraction(printed_value), text)


def test_a_number_prints_the_value_of_its_system():
    q = Quantity(Kind.NUMBER, Fraction(5), Fraction(6))
    assert (printed(q, System.METRIC).text, printed(q, System.IMPERIAL).text) == ("5", "6")


def test_a_circle_prints_rounded():
    around = multiply(pi(), length(300, 12))
    assert isinstance(around, Quantity)
    assert printed(around, System.METRIC).text == "94.2 cm"
    assert printed(around, System.IMPERIAL).text == "37 3/4 in"


def test_the_last_digit_of_a_root_does_not_tip_a_printed_value():
    side = root(number(7))
    assert isinstance(side, Quantity)
    seven = multiply(side, side)
    assert isinstance(seven, Quantity)
    # 7.5 mm and 3/32 in, but for the noise of the root: on the half millimetre, midway between sixteenths
    q = multiply(seven, length(Fraction("7.5") / 7, Fraction(3, 32) / 7))
    assert isinstance(q, Quantity)
    assert q.metric < Fraction("7.5")
    assert q.imperial < Fraction(3, 32)
    assert printed(q, System.METRIC) == Printed(Fraction("7.5"), "7.5 mm")
    assert printed(q, System.IMPERIAL) == Printed(Fraction(1, 8), "1/8 in")
    # 6.35 mm and 3/32 in of a physical thing: midway between tenths, and between sixteenths
    q = multiply(seven, replace(length(Fraction("6.35") / 7, Fraction(3, 32) / 7), physical=True))
    assert isinstance(q, Quantity)
    assert q.metric < Fraction("6.35")
    assert printed(q, System.METRIC) == Printed(Fraction("6.4"), "6.4 mm")
    assert printed(q, System.IMPERIAL) == Printed(Fraction(1, 8), "1/8 in")
