"""How German writes numbers, units and months, held against the CLDR as Babel carries it."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from babel.numbers import format_decimal
from babel.units import format_unit
from hypothesis import given
from hypothesis import strategies as st

from presscloth.measure import Kind, Quantity, System, printed
from presscloth.tongue import (
    ENGLISH,
    counted_number,
    has_words,
    language_name,
    listed,
    many,
    measured,
    month,
    named,
    say,
    speaking,
    spoken,
    tongue_of,
)

GERMAN = tongue_of("de")
ZOLL, METRIC = (
    re.compile(r"(?:(\d+) )?(?:(\d+)/(\d+)|(\d+)) (Zoll|Yards?)"),
    re.compile(r"([\d,.]+) (mm|cm|m)"),
)


def test_what_the_cldr_knows_of_german_units():
    # CLDR 48 through Babel 2.18: the long forms are the words of speech and books; the short form of an inch
    # is the English sign, which is why the long one is taken.
    assert format_unit(7, "length-inch", "long", locale="de") == "7 Zoll"
    assert format_unit(7, "length-inch", "short", locale="de") == "7 in"
    assert [format_unit(n, "length-yard", "long", locale="de") for n in (1, 2)] == ["1 Yard", "2 Yards"]
    assert format_unit(3, "length-centimeter", "short", locale="de") == "3 cm"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("3.2 cm", "3,2 cm"),
        ("21.25 cm (8 3/8 in)", "21,25 cm (8 3/8 Zoll)"),
        ("1 in", "1 Zoll"),
        ("3/4 yd", "3/4 Yard"),
        ("1 yd", "1 Yard"),
        ("1 1/8 yd", "1 1/8 Yards"),
        ("2 ft", "2 Fuß"),
        ("2 1/2 in²", "2 1/2 Quadratzoll"),
        ("250 g (9 oz)", "250 g (9 oz)"),
        ("1.125 kg (2 1/2 lb)", "1,125 kg (2 1/2 lb)"),
        ("3 %", "3 %"),
        ("24″ and 3 in", "24″ and 3 Zoll"),
    ],
)
def test_measures(text: str, said: str):
    assert GERMAN.measured(text) == said
    assert ENGLISH.measured(text) == text


def test_numbers_and_thousands_are_those_of_the_cldr():
    for text in ("2.5", "12500.5", "1250", "100000"):
        value = float(text)
        grouped = format_decimal(value, locale="de")
        # German leaves four figures together (DIN 5008:2020, 14.1; from memory); the CLDR groups them.
        assert GERMAN.number(text) == (grouped if value >= 10_000 else grouped.replace(".", ""))


def read_back(text: str) -> Fraction:
    """A printed German length in mm or in, read by hand."""
    found = METRIC.fullmatch(text)
    if found:
        factor = {"mm": 1, "cm": 10, "m": 1000}[found[2]]
        return Fraction(found[1].replace(".", "").replace(",", ".")) * factor
    inches = ZOLL.fullmatch(text)
    assert inches, text
    whole = Fraction(inches[1] or 0) + (
        Fraction(int(inches[2]), int(inches[3])) if inches[2] else int(inches[4])
    )
    return whole * (36 if inches[5].startswith("Yard") else 1)


@given(st.fractions(min_value=Fraction(1, 2), max_value=5000, max_denominator=4000))
def test_a_german_length_reads_back_within_half_a_step(length: Fraction):
    quantity = Quantity(Kind.LENGTH, length, length / Fraction(127, 5))
    metric = read_back(GERMAN.measured(printed(quantity, System.METRIC).text))
    assert abs(metric - length) <= Fraction(1, 2)
    if quantity.imperial >= Fraction(1, 16):
        inches = read_back(GERMAN.measured(printed(quantity, System.IMPERIAL).text))
        step = Fraction(1, 16) if quantity.imperial < 1 else Fraction(1, 8)
        assert abs(inches - quantity.imperial) <= step / 2


@given(st.fractions(min_value=1, max_value=50_000, max_denominator=100))
def test_what_is_bought_reads_back_as_enough_and_not_a_step_more(length: Fraction):
    quantity = Quantity(Kind.LENGTH, length, length / Fraction(127, 5))
    metric = read_back(GERMAN.measured(printed(quantity, System.METRIC, bought=True).text))
    assert length <= metric < length + 10
    yards = read_back(GERMAN.measured(printed(quantity, System.IMPERIAL, bought=True).text))
    assert quantity.imperial <= yards < quantity.imperial + Fraction(9, 2)


def test_months_lists_and_the_language_of_the_moment():
    assert spoken() is ENGLISH
    with speaking(GERMAN):
        assert month(2027, 3) == "März 2027"
        assert listed(["A", "B", "C"]) == "A, B und C"
        assert say("In the video at {time}", time="4:15") == "Im Video bei 4:15"
        assert many("{n} sheet", "{n} sheets", 12_000) == "12.000 Bogen"
        assert measured("7 1/2 in") == "7 1/2 Zoll"
        assert counted_number("0.5") == "0,5"
        with speaking(ENGLISH):
            assert listed(["A", "B"]) == "A and B"
    assert month(2027, 3) == "March 2027"


def test_names_are_those_of_the_translation():
    with speaking(tongue_of("de", {"strap": "Träger"})):
        assert (named("strap"), named("badge")) == ("Träger", "badge")


def test_a_region_takes_the_words_of_its_language_and_its_own_numbers():
    swiss = tongue_of("de-CH")
    assert swiss.say("Tools") == "Werkzeug"
    assert swiss.number("2.5") == "2.5"  # CLDR: the Swiss write a point
    assert tongue_of("en-GB") is ENGLISH


def test_a_language_without_a_catalogue_says_so():
    assert [has_words(tag) for tag in ("en", "en-US", "de", "de-AT", "fr", "xx")] == [True] * 4 + [False] * 2
    assert tongue_of("fr").say("Tools") == "Tools"
    assert tongue_of("fr").number("2.5") == "2,5"
    assert [language_name(tag) for tag in ("en-GB", "de", "fr")] == ["English", "Deutsch", "Français"]
