"""Pairs as the trade prints them: which agree, and two that are published and wrong."""

from fractions import Fraction

import pytest

from presscloth.measure import (
    Disagreement,
    Kind,
    Quantity,
    System,
    agreement,
    carried_over,
    convert,
    decimal_text,
    stated_pair,
)
from presscloth.source import Source

SPAN = Source("recipe.md", "1.3 cm (1/2 in)").span(0, 15)


def pair(metric: str, unit: str, inches: str) -> Quantity | Disagreement:
    return stated_pair(Fraction(metric), unit, mixed(inches), "in", span=SPAN)


def mixed(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


# Nominal pairs are names in two systems, no conversions; they agree all the same.
@pytest.mark.parametrize(
    ("inches", "millimetres"),
    [
        # Source: published inch/cm and yard/cm conversion guide, 2022
        ("1/8", "3"),
        ("1/4", "6"),
        ("1/2", "12"),
        ("3/4", "19"),
        ("2", "51"),
        # Source: the same guide, and a book excerpt, beginner's guide to curtains and cushions
        ("3/8", "10"),
        ("1", "25"),
        # Source: book excerpt, beginner's guide to curtains and cushions
        ("5/8", "15"),
        # Common practice, no source
        ("1/2", "13"),
        ("3/4", "20"),
        # Source: published sewing guide (zip lengths)
        ("2", "50"),
        # Source: published worked example or common practice; arithmetic verified here
        ("1/4", "6.4"),
        ("19", "485"),
        ("15", "380"),
        ("12", "305"),
        ("24", "610"),
        ("29", "735"),
    ],
)
def test_published_pairs_agree(inches: str, millimetres: str):
    assert isinstance(pair(millimetres, "mm", inches), Quantity)


# The differences of the same pairs, worked out by hand from 25.4 mm to the inch: without the share that a
# half centimetre may be off, 485 and 735 mm would be refused.
@pytest.mark.parametrize(
    ("inches", "millimetres", "apart"), [("19", "485.1", "2.5 mm"), ("29", "734.9", "1.7 mm")]
)
def test_what_does_not_claim_a_half_centimetre_has_no_share(inches: str, millimetres: str, apart: str):
    found = pair(millimetres, "mm", inches)
    assert isinstance(found, Disagreement)
    assert found.apart_text == apart


# Source: published sewing guide (zip lengths), every pair as it is sold: half-up to a whole centimetre.
@pytest.mark.parametrize(
    ("inches", "centimetres"),
    [
        (4, 10), (5, 13), (6, 15), (7, 18), (8, 20), (9, 23), (10, 25), (11, 28), (12, 30), (13, 33),
        (14, 36), (15, 38), (16, 41), (17, 43), (18, 46), (20, 51), (21, 53), (22, 56), (24, 61),
        (26, 66), (27, 69), (28, 71), (30, 76),
    ],
)  # fmt: skip
def test_zip_lengths_agree(inches: int, centimetres: int):
    assert decimal_text(convert(Fraction(inches), Kind.LENGTH, System.METRIC) / 10, 0) == str(centimetres)
    assert isinstance(pair(str(centimetres), "cm", str(inches)), Quantity)


# Source: published sewing guide (zip lengths): widths of elastic, both metric values where it gives two.
@pytest.mark.parametrize(
    ("inches", "millimetres"),
    [
        ("1/4", (6, 7)), ("1/2", (12, 13)), ("3/4", (19, 20)), ("1", (25, 26)), ("1 1/4", (32,)),
        ("1 1/2", (37, 38)), ("1 3/4", (43, 44)), ("2", (50,)),
    ],
)  # fmt: skip
def test_widths_of_elastic_agree(inches: str, millimetres: tuple[int, ...]):
    for width in millimetres:
        assert isinstance(pair(str(width), "mm", inches), Quantity)


# Source: 16 CFR 1615.1(c)(2), text of 2024: "40 centimeters (15.75 inches)".
def test_a_pair_in_a_regulation_agrees():
    assert isinstance(pair("40", "cm", "15.75"), Quantity)
    assert convert(Fraction("15.75"), Kind.LENGTH, System.METRIC) == Fraction("400.05")


# Source: US Army TM 10-8400-201-23 / TM 10-8340-224-13 (sewing repair tables).
@pytest.mark.parametrize(
    ("inches", "centimetres", "digits"),
    [("1/2", "1.27", 2), ("3/4", "1.91", 2), ("1/4", "0.635", 3), ("2", "5.08", 2)],
)
def test_pairs_in_a_repair_manual_agree(inches: str, centimetres: str, digits: int):
    assert isinstance(pair(centimetres, "cm", inches), Quantity)
    exact = convert(mixed(inches), Kind.LENGTH, System.METRIC)
    assert decimal_text(exact / 10, digits) == centimetres


# Source: published inch/cm and yard/cm conversion guide, 2022; 3 1/4 in is printed there as 8.25 cm.
@pytest.mark.parametrize(
    ("inches", "millimetres"),
    [("1 1/4", 32), ("1 3/4", 44), ("2 1/4", 57), ("2 3/4", 70), ("4", 102), ("5", 127), ("6", 152),
     ("8", 203), ("10", 254), ("12", 305)],
)  # fmt: skip
def test_inches_carried_over_are_those_of_a_published_table(inches: str, millimetres: int):
    q = carried_over(mixed(inches), "in", span=SPAN)
    assert isinstance(q, Quantity)
    assert q.metric == millimetres
    assert agreement(q.metric, q.imperial, Kind.LENGTH, about=False) is None


def test_the_tables_one_value_to_half_a_millimetre_agrees():
    assert isinstance(pair("8.25", "cm", "3 1/4"), Quantity)


# N04. Published, and wrong: 64.8 cm claims to be a conversion, and 25.75 in is 65.4 cm.
def test_a_published_pair_is_refused():
    found = pair("64.8", "cm", "25.75")
    assert isinstance(found, Disagreement)
    assert found.apart == Fraction("6.05")
    assert found.metric_for_imperial == "65.4 cm"
    # 65 cm does not claim to be one.
    assert isinstance(pair("65", "cm", "25.75"), Quantity)


# N25. Still met in the trade (common practice, no source), and wrong.
@pytest.mark.parametrize(
    ("centimetres", "inches", "suggestions"),
    [
        ("1", "1/2", ("1 cm (3/8 in)", "1.3 cm (1/2 in)")),
        ("8", "3", ("8 cm (3 1/8 in)", "7.6 cm (3 in)")),
    ],
)
def test_pairs_still_met_in_the_trade_are_refused(
    centimetres: str, inches: str, suggestions: tuple[str, str]
):
    found = pair(centimetres, "cm", inches)
    assert isinstance(found, Disagreement)
    assert found.suggestions == suggestions
