"""Whatever the measure and however it is spelled: its exact value and its exact place are found."""

import re
import sys
from collections.abc import Callable
from fractions import Fraction
from types import FrameType

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from presscloth.proof.typed import Nearness, Value, find, find_counts, suggestion

METRIC = {
    "mm": ("mm", "millimetres", "millimeters"),
    "cm": ("cm", "centimetres", "CM"),
    "m": ("m", "metres", "meters"),
}
IMPERIAL = {"in": ("in", "inches", '"', "″", "''"), "ft": ("ft",), "yd": ("yd", "yards", "yds")}
WEIGHTS = {"g": ("g", "grams"), "kg": ("kg", "kilograms"), "oz": ("oz", "ounces"), "lb": ("lb", "lbs")}
UNITS = METRIC | IMPERIAL | WEIGHTS
VULGAR = {"1/2": "½", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞", "1/3": "⅓"}
ONES = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
WORDS = {
    "1/2": "a half",
    "1/4": "a quarter",
    "3/4": "three quarters",
    "3/8": "three eighths",
    "1/3": "a third",
}


@st.composite
def whole(draw: st.DrawFn) -> tuple[Fraction, str]:
    number = draw(st.integers(1, 999))
    return Fraction(number), str(number)


@st.composite
def decimal(draw: st.DrawFn) -> tuple[Fraction, str]:
    ones = draw(st.integers(0, 99))
    places = draw(st.text("0123456789", min_size=1, max_size=2))
    return Fraction(f"{ones}.{places}"), f"{ones}{draw(st.sampled_from('.,'))}{places}"


@st.composite
def fraction(draw: st.DrawFn) -> tuple[Fraction, str]:
    under = draw(st.sampled_from((2, 3, 4, 8, 16, 32)))
    part = f"{draw(st.integers(1, under - 1))}/{under}"
    ones = draw(st.integers(0, 60))
    value = ones + Fraction(part)
    typed = draw(st.sampled_from((part, VULGAR.get(part, part))))
    if not ones:
        return value, typed
    joins = ("", " ") if typed != part else (" ", "-", "–", " and ")
    return value, f"{ones}{draw(st.sampled_from(joins))}{typed}"


NUMBERS = st.one_of(whole(), decimal(), fraction()).filter(lambda number: number[0] > 0)


@st.composite
def measure(draw: st.DrawFn, units: dict[str, tuple[str, ...]]) -> tuple[Value, str]:
    value, typed = draw(NUMBERS)
    unit = draw(st.sampled_from(sorted(units)))
    spelling = draw(st.sampled_from(units[unit]))
    sign = not spelling[0].isalpha()
    between = "" if sign else draw(st.sampled_from(("", " ", "-", "\u00a0")))
    return Value(unit, value, value), f"{typed}{between}{spelling}"


def in_a_sentence(typed: str) -> str:
    return f"Fold it over by {typed} below the knot."


def only(text: str, typed: str) -> tuple[tuple[Value, ...], ...]:
    """What the one find in a text says, after a look at its place."""
    (found,) = find(text)
    assert text[found.start : found.end] == typed
    assert found.nearness is Nearness.EXACT
    return found.measures


@given(measure(UNITS))
def test_a_measure_in_figures(measured: tuple[Value, str]):
    value, typed = measured
    assert only(in_a_sentence(typed), typed) == ((value,),)


@given(st.sampled_from(ONES), st.sampled_from(sorted(WORDS)), st.sampled_from(["inches", "yards", "metres"]))
def test_a_measure_in_words(ones: str, part: str, unit: str):
    name = {"inches": "in", "yards": "yd", "metres": "m"}[unit]
    number = ONES.index(ones) + 1
    for typed, value in [
        (f"{ones} {unit}", Fraction(number)),
        (f"{ones} and {WORDS[part]} {unit}", number + Fraction(part)),
        (f"{WORDS[part]} of an {unit}", Fraction(part)),
    ]:
        assert only(in_a_sentence(typed), typed) == ((Value(name, value, value),),)


@given(measure(METRIC), measure(IMPERIAL), st.booleans(), st.sampled_from(["{} ({})", "{} / {}", "{} or {}"]))
def test_a_pair(metric: tuple[Value, str], imperial: tuple[Value, str], turned: bool, form: str):
    first, second = (imperial, metric) if turned else (metric, imperial)
    typed = form.format(first[1], second[1])
    assert only(in_a_sentence(typed), typed) == ((first[0], second[0]),)


@given(
    whole(),
    whole(),
    st.sampled_from(["mm", "cm", "inches", "yd"]),
    st.sampled_from(["-", "–", " to ", " – "]),
)
def test_a_range(one: tuple[Fraction, str], other: tuple[Fraction, str], unit: str, between: str):
    typed = f"{one[1]}{between}{other[1]} {unit}"
    name = "in" if unit == "inches" else unit
    low, high = sorted((one[0], other[0]))
    assert only(in_a_sentence(typed), typed) == ((Value(name, low, high),),)


@given(
    st.lists(st.tuples(whole(), whole()), min_size=2, max_size=3),
    st.sampled_from([" x ", "×", " by ", " × "]),
)
def test_lengths_one_by_the_other(sides: list[tuple[tuple[Fraction, str], tuple[Fraction, str]]], times: str):
    metric = times.join(side[0][1] for side in sides)
    imperial = times.join(side[1][1] for side in sides)
    typed = f"{metric} cm ({imperial} in)"
    values = tuple((Value("cm", one[0], one[0]), Value("in", two[0], two[0])) for one, two in sides)
    assert only(in_a_sentence(typed), typed) == values


@given(measure(UNITS))
def test_a_suggestion_says_the_same(measured: tuple[Value, str]):
    text = in_a_sentence(measured[1])
    (found,) = find(text)
    written = suggestion(found)
    assert written[0] + written[-1] == "{}"
    assert only(in_a_sentence(written[1:-1]), written[1:-1]) == found.measures


NUMBER_WORDS = re.compile(
    r"\b(an?|half|halves|quarter|third|fifth|sixth|eighth|tenth|sixteenth|pair|both|dozen|hundred|one|two|"
    r"three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|"
    r"seventy|eighty|ninety)s?\b",
    re.IGNORECASE,
)
FRAGMENTS = st.sampled_from(
    [
        "inch",
        "inches",
        "cm",
        '"',
        "'",
        " ",
        " in ",
        "of",
        "the",
        "yard",
        "(",
        ")",
        "x",
        "-",
        "/",
        "blocks",
        "\n",
    ]
)


@given(st.lists(FRAGMENTS | st.text(max_size=4), max_size=40).map("".join))
def test_without_numbers_there_is_nothing(text: str):
    assume(not any(letter.isnumeric() for letter in text) and not NUMBER_WORDS.search(text))
    assert find(text) == ()
    assert find_counts(text, ["block", "yard"]) == ()


PIECES = FRAGMENTS | st.sampled_from(
    ["1/2", "2", "one", "half", " a ", "½", " or ", " to ", "3 cm", "″", ",", "."]
)


@given(st.lists(PIECES, max_size=60).map("".join))
def test_finds_lie_in_the_text_one_after_the_other(text: str):
    edge = 0
    for found in find(text):
        assert edge <= found.start < found.end <= len(text)
        assert text[found.start : found.end] == text[found.start : found.end].strip()
        assert all(value.low <= value.high for values in found.measures for value in values)
        edge = found.end


@given(st.integers(2, 99), st.sampled_from(["block", "side strip", "patch"]), st.booleans(), st.booleans())
def test_a_count(count: int, name: str, spelled: bool, definite: bool):
    tens = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
    tail = f"-{ONES[count % 10 - 1]}" if count % 10 else ""
    typed = str(count)
    if spelled and count <= 12:
        typed = ONES[count - 1]
    elif spelled and count >= 20:
        typed = f"{tens[count // 10 - 2]}{tail}"
    plural = f"{name}es" if name == "patch" else f"{name}s"
    text = f"Sew {'the ' if definite else ''}{typed} {plural} to the ground."
    (found,) = find_counts(text, ["block", "strip", "side strip", "patch"])
    assert (found.count, found.name, found.definite) == (count, name, definite)
    assert text[found.start : found.end] == f"{typed} {plural}"


def calls(work: Callable[[], object]) -> int:
    """How many calls something takes: work, whatever the clock says."""
    count = 0

    def heard(_frame: FrameType, event: str, _argument: object) -> None:
        nonlocal count
        count += event in {"call", "c_call"}

    sys.setprofile(heard)
    try:
        work()
    finally:
        sys.setprofile(None)
    return count


@pytest.mark.parametrize(
    "piece",
    ["1", "1/", "1/2 ", "1 x ", "2 cm ", "(", '"', '1"', "'", "one and ", "half a ", "1-", "1,", "1 to ", " ",
     "1 cm or ", "1 cm (", "approx. ", "½", "x", "\n", "two block ", "block "],
)  # fmt: skip
def test_work_grows_with_the_length_and_no_faster(piece: str):
    def work(length: int) -> int:
        text = (piece * length)[:length]
        return calls(lambda: (find(text), find_counts(text, ["block", "block block block"])))

    assert work(8000) <= 4.5 * work(2000)


def test_endless_figures_are_no_number():
    assert find(f"Cut {'1' * 50_000} cm, then {'1' * 50_000}/2 in wide, then 0.{'3' * 50_000} cm.") == ()
