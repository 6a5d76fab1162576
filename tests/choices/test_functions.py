"""The page's script rounds, prints and takes roots as the compiler does, on many thousands of numbers."""

from __future__ import annotations

import json
import subprocess
from fractions import Fraction
from itertools import product
from pathlib import Path
from random import Random

import pytest
from choices.agreeing import SCRIPTS
from printing.tools import needs

from presscloth.choices.tracing import stated_text
from presscloth.measure import UNITS, Kind, System, decimal_text, fraction_text, measure_text, number_text
from presscloth.measure.arithmetic import root_is_exact, root_of
from presscloth.measure.followed import (
    greatest_value,
    least_value,
    magnitude,
    quotient,
    whole_part,
)
from presscloth.measure.followed import (
    product as product_of,
)
from presscloth.measure.printing import printed_text, printed_value
from presscloth.measure.rounding import down, half_up, settled, up
from presscloth.sewing.wording import fine_text

TIMES = 1000

HOWS = [
    f"{kind.value} {system.value} {physical} {rooted} {cut} {bought}"
    for kind, system in product(Kind, System)
    for physical, rooted, cut, bought in product((True, False), repeat=4)
]
STEPS = [Fraction(each) for each in ("1", "1/8", "5", "1/16", "10", "1/4", "9/2")]
SLACKS = [Fraction(0), Fraction(1, 1000), Fraction(1, 25400)]


def a_number(random: Random) -> Fraction:
    """On a grid, beside it by a hair, a decimal, a third: where rounding goes wrong."""
    parts = random.choice([1, 2, 4, 8, 16, 32, 3, 7, 10, 100, 1000])
    value = Fraction(random.randint(0, random.choice([40, 4000, 400_000])), parts)
    hairs = [Fraction(1, 2000), Fraction(1, 1000), Fraction(1, 25400), Fraction(1, 10**33)]
    return value + random.choice([0, *hairs]) * random.choice([1, -1])


def with_step(random: Random):
    return a_number(random), random.choice(STEPS)


def with_slack(random: Random):
    return *with_step(random), random.choice(SLACKS)


def signed(random: Random):
    return (a_number(random) * random.choice([1, -1]),)


def not_negative(random: Random):
    value = abs(a_number(random))
    return (random.choice([value, value * value]),)


def as_printed(random: Random):
    return *signed(random), random.choice(HOWS)


def in_a_unit(random: Random):
    return a_number(random), random.choice(list(UNITS))


def as_stated(random: Random):
    how, unit = random.choice(
        [
            ("length metric", "cm"),
            ("length imperial", "in"),
            ("weight metric", "g"),
            ("weight imperial", "oz"),
            ("number metric", ""),
        ]
    )
    return a_number(random), Fraction(random.randint(0, 1)), how, unit


CASES = [
    (half_up, with_step),
    (up, with_slack),
    (down, with_slack),
    (settled, with_slack),
    (whole_part, signed),
    (magnitude, signed),
    (product_of, with_step),
    (quotient, with_step),
    (greatest_value, with_slack),
    (least_value, with_slack),
    (root_of, not_negative),
    (root_is_exact, not_negative),
    (fraction_text, signed),
    (decimal_text, lambda random: (*signed(random), random.randint(0, 3))),
    (measure_text, in_a_unit),
    (number_text, signed),
    (printed_value, as_printed),
    (printed_text, as_printed),
    (stated_text, as_stated),
    (fine_text, lambda random: (a_number(random), random.choice(["metric", "imperial"]))),
]


@pytest.mark.parametrize(("function", "arguments"), CASES, ids=[each.__name__ for each, _ in CASES])
def test_a_function_gives_the_same_in_the_page(function, arguments):
    random = Random(function.__name__)
    given = [arguments(random) for _ in range(TIMES)]
    calls = [
        [function.__name__, *(f"={each}" if isinstance(each, str) else str(each) for each in row)]
        for row in given
    ]
    expected = [function(*row) for row in given]
    for row, mine, theirs in zip(given, expected, called(calls), strict=True):
        said = f"{function.__name__}{row}"
        assert (Fraction(theirs) if isinstance(mine, Fraction) else theirs) == mine, said


def called(calls: list[list[str]]) -> list[str]:
    done = subprocess.run(
        [needs("node"), str(Path(__file__).parent / "call.js")],
        input=json.dumps({"script": str(SCRIPTS / "reckoning.js"), "calls": calls}),
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)
