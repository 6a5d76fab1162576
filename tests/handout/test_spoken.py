"""Measures as they are spoken: a table, whole numbers against a library, and each heard back as printed."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words

from presscloth.handout import spoken_de, spoken_en
from presscloth.handout.spoken import spoken, spoken_amount, spoken_measures
from presscloth.handout.tree import Amount
from presscloth.measure import System, decimal_text, fraction_text

# Common practice, no source: how measures are read aloud in an English workroom.
ENGLISH = {
    "1 in": "one inch",
    "1/2 in": "half an inch",
    "1/4 in": "a quarter of an inch",
    "3/4 in": "three quarters of an inch",
    "1/8 in": "an eighth of an inch",
    "3/8 in": "three eighths of an inch",
    "1/16 in": "a sixteenth of an inch",
    "11/16 in": "eleven sixteenths of an inch",
    "1 1/4 in": "one and a quarter inches",
    "1 1/8 in": "one and an eighth inches",
    "7 1/2 in": "seven and a half inches",
    "2 5/16 in": "two and five sixteenths inches",
    "1 cm": "one centimetre",
    "3.2 cm": "three point two centimetres",
    "64.75 cm": "sixty-four point seven five centimetres",
    "0.8 mm": "zero point eight millimetres",
    "6 mm": "six millimetres",
    "2.05 m": "two point zero five metres",
    "1 m": "one metre",
    "1/2 yd": "half a yard",
    "5/8 yd": "five eighths of a yard",
    "1 yd": "one yard",
    "2 1/8 yd": "two and an eighth yards",
    "1/4 oz": "a quarter of an ounce",
    "8 3/4 oz": "eight and three quarters ounces",
    "250 g": "two hundred and fifty grams",
    "1.25 kg": "one point two five kilograms",
    "45°": "forty-five degrees",
    "3 %": "three per cent",
    "12 cm²": "twelve square centimetres",
    "4": "four",
    "1/2": "a half",
    "3 1/3": "three and a third",
    "0.5": "zero point five",
    "105": "one hundred and five",
    "1,204": "one thousand two hundred and four",
    "2–3 cm": "two to three centimetres",
    "1 1/2 to 2 in": "one and a half to two inches",
    "−3 mm": "minus three millimetres",
    "1234567 mm": "1234567 mm",
}
GERMAN = {
    "1 Zoll": "ein Zoll",
    "1/2 Zoll": "ein halber Zoll",
    "1/4 Zoll": "ein viertel Zoll",
    "3/8 Zoll": "drei achtel Zoll",
    "1 1/2 Zoll": "eineinhalb Zoll",
    "21 1/2 Zoll": "einundzwanzigeinhalb Zoll",
    "2 1/4 Zoll": "zwei und ein viertel Zoll",
    "3,2 cm": "drei Komma zwei Zentimeter",
    "1 cm": "ein Zentimeter",
    "1/2 Yard": "ein halbes Yard",
    "2 Yards": "zwei Yards",
    "1 oz": "eine Unze",
    "1/2 oz": "eine halbe Unze",
    "101 g": "einhunderteins Gramm",
    "1": "eins",
    "21": "einundzwanzig",
    "1.204": "eintausendzweihundertvier",
    "2–3 cm": "zwei bis drei Zentimeter",
}


@pytest.mark.parametrize(("printed", "said"), ENGLISH.items())
def test_english(printed, said):
    assert spoken(printed, "en-GB") == said


@pytest.mark.parametrize(("printed", "said"), GERMAN.items())
def test_german(printed, said):
    assert spoken(printed, "de") == said


@pytest.mark.parametrize(("language", "whole"), [("en", spoken_en.whole), ("de", spoken_de.whole)])
def test_whole_numbers_are_those_of_a_library(language, whole):
    """num2words. It writes commas between thousands in English, and in German keeps an `s` in `101 000`."""
    for n in (*range(1200), *range(1201, 999_999, 787), 999_999):
        said = num2words(n, lang=language).replace(",", "").replace("einstausend", "eintausend")
        assert whole(n) == said


def test_an_amount_in_both_systems():
    amount = Amount((("1 1/4 in", System.IMPERIAL), ("3.2 cm", System.METRIC)))
    assert spoken_amount(amount, "en") == "one and a quarter inches or three point two centimetres"
    about = Amount((("6 cm", System.METRIC), ("2 3/8 in", System.IMPERIAL)), "about")
    assert spoken_amount(about, "en") == "about six centimetres or two and three eighths inches"


def test_in_words_around_it_only_measures_are_spoken():
    said = spoken_measures("Go on with step 3 at 4:15, 2 mm from edge A2, twice 1/2 in, ISO 216.", "en")
    assert said == "Go on with step 3 at 4:15, two millimetres from edge A2, twice half an inch, ISO 216."


def test_the_sign_between_two_sides_is_a_word():
    assert spoken_measures("2 cm × 3 cm", "en") == "two centimetres by three centimetres"
    assert spoken_measures("2 cm × 3 cm", "de") == "zwei Zentimeter mal drei Zentimeter"
    assert spoken_measures(" × ", "de") == " mal "


def test_a_language_without_words_keeps_its_figures():
    assert spoken("3,2 cm", "nl") == "3,2 cm"


# -- heard back ------------------------------------------------------------------------------------

UNIT_HEARD = {
    word: unit for unit, (one, several) in spoken_en.UNITS.items() if unit != "″" for word in (one, several)
}
PARTS_HEARD = {"half": 2, "third": 3, "quarter": 4, "eighth": 8, "sixteenth": 16}
NUMBER_HEARD = {num2words(n): n for n in range(100)}


def heard(said: str) -> tuple[Fraction, str]:
    """A value and its unit from what was said in English; nothing of the speaker's code is used."""
    unit = next((u for u in sorted(UNIT_HEARD, key=len, reverse=True) if re.search(rf"\b{u}$", said)), "")
    rest = said.removesuffix(unit).strip()
    rest = re.sub(r"\b(?:of an?|an?)$", "", rest).strip()
    return _value(rest), UNIT_HEARD.get(unit, "")


def _value(said: str) -> Fraction:
    if " point " in said:
        whole, digits = said.split(" point ")
        return _value(whole) + Fraction(
            int("".join(str(NUMBER_HEARD[each]) for each in digits.split())), 10 ** len(digits.split())
        )
    found = re.fullmatch(r"(?:(.*) and )?(?:an? )?(?:([a-z-]+) )?([a-z]+?)s?", said)
    part = found and (PARTS_HEARD.get(found[3]) or PARTS_HEARD.get(found[3].replace("halve", "half")))
    if found and part:
        top = NUMBER_HEARD[found[2]] if found[2] else 1
        return (_value(found[1]) if found[1] else 0) + Fraction(top, part)
    total = 0
    for chunk, times in ((said.partition(" thousand")[0] if " thousand" in said else "", 1000),):
        total += times * int(_value(chunk)) if chunk else 0
        said = said.partition(" thousand")[2] if chunk else said
    hundreds, hundred, rest = said.rpartition(" hundred")
    total += 100 * NUMBER_HEARD[hundreds.strip()] if hundred else 0
    rest = rest.strip().removeprefix("and ").strip()
    return Fraction(total + (NUMBER_HEARD[rest] if rest else 0))


@given(
    st.integers(0, 400),
    st.sampled_from([Fraction(n, 16) for n in range(16)]),
    st.sampled_from(["in", "yd", "oz"]),
)
def test_fractions_are_heard_as_they_are_printed(whole, part, unit):
    value = whole + part
    assert heard(spoken(f"{fraction_text(value)} {unit}", "en")) == (value, unit)


@given(st.integers(0, 99_999), st.sampled_from([1, 10, 100]), st.sampled_from(["mm", "cm", "m", "kg", ""]))
def test_decimals_are_heard_as_they_are_printed(number, places, unit):
    value = Fraction(number, places)
    assert heard(spoken(f"{decimal_text(value, 2)} {unit}".strip(), "en")) == (value, unit)


@given(st.fractions(0, 100, max_denominator=16), st.fractions(0, 100, max_denominator=16))
def test_two_measures_never_sound_alike(one, other):
    if one.denominator in (1, 2, 4, 8, 16) and other.denominator in (1, 2, 4, 8, 16):
        for language in ("en", "de"):
            said = {spoken(f"{fraction_text(each)} in", language) for each in (one, other)}
            assert len(said) == len({one, other})
