"""How quantities are worded, and which system leads."""

from __future__ import annotations

from fractions import Fraction

from presscloth.handout.wording import amount, clock
from presscloth.measure import System, length, number
from presscloth.recipe.prose import How

METRIC, IMPERIAL = System.METRIC, System.IMPERIAL
BOTH = (METRIC, IMPERIAL)
BAND = length(190, Fraction(15, 2))


def test_the_leading_system_stands_first() -> None:
    assert amount(BAND, BOTH).text == "19 cm (7 1/2 in)"
    assert amount(BAND, (IMPERIAL, METRIC)).text == "7 1/2 in (19 cm)"
    assert amount(BAND, (METRIC,)).text == "19 cm"


def test_what_the_braces_ask_for() -> None:
    assert amount(BAND, BOTH, (How.ABOUT,)).text == "about 19 cm (7 1/2 in)"
    assert amount(BAND, BOTH, (How.IMPERIAL,)).text == "7 1/2 in"
    assert amount(BAND, BOTH, (How.METRIC,)).texts == (("19 cm", METRIC),)
    # 190 mm are bought as whole centimetres, 7 1/2 in as eighths of a yard: 1/4 yd is 9 in.
    assert amount(BAND, BOTH, (How.BOUGHT,)).text == "19 cm (1/4 yd)"


def test_a_number_has_no_system() -> None:
    assert amount(number(12), BOTH).texts == (("12", None),)


def test_clock() -> None:
    assert [clock(seconds) for seconds in (5, 255, 3855)] == ["0:05", "4:15", "1:04:15"]
