"""Units: the table is pint's, and loading the room does not load pint."""

import subprocess
import sys
from fractions import Fraction

import pytest

from presscloth.measure import SPELLINGS, UNITS, Kind, System, convert, nearest_unit
from presscloth.measure.units import RATIOS, worked_out


def test_the_table_is_what_pint_works_out_of_the_definitions():
    table = worked_out()
    assert dict(table.units) == dict(UNITS)
    assert dict(table.ratios) == dict(RATIOS)


def test_the_room_loads_without_pint():
    script = "import sys, presscloth.measure; print('pint' in sys.modules, 'difflib' in sys.modules)"
    path = f"import sys; sys.path[:] = {sys.path!r}; "
    shown = subprocess.run([sys.executable, "-c", path + script], capture_output=True, text=True, check=True)
    assert shown.stdout.split() == ["False", "False"]


def test_units_are_those_of_the_language():
    assert list(UNITS) == ["mm", "cm", "m", "in", "ft", "yd", "g", "kg", "oz", "lb"]
    assert {name for name, unit in UNITS.items() if unit.system is System.METRIC} == {
        "mm", "cm", "m", "g", "kg",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("spelling", "name"),
    [("in", "in"), ("inch", "in"), ("inches", "in"), ("″", "in"), ('"', "in"), ("yard", "yd"),
     ("yards", "yd"), ("mm", "mm"), ("lb", "lb")],
)  # fmt: skip
def test_spellings_that_an_author_may_use(spelling: str, name: str):
    assert SPELLINGS[spelling] == name


@pytest.mark.parametrize("wrong", ["CM", "centimetres", "feet", "In", "grams", "pounds", "metre", "Yd"])
def test_other_spellings_are_not_units(wrong: str):
    assert wrong not in SPELLINGS


@pytest.mark.parametrize(
    ("wrong", "meant"),
    [("CM", "cm"), ("centimetres", "cm"), ("centimeter", "cm"), ("cm.", "cm"), ("MM", "mm"),
     ("milimetres", "mm"), ("Metres", "m"), ("feet", "ft"), ("foot", "ft"), ("Inches", "in"), ("in.", "in"),
     ("inchs", "in"), ("yds", "yd"), ("lbs", "lb"), ("ounces", "oz"), ("grammes", "g"), ("kilo", "kg"),
     ("′", "ft"), ("”", "in")],
)  # fmt: skip
def test_a_hint_names_the_unit_that_was_meant(wrong: str, meant: str):
    assert nearest_unit(wrong) == meant


@pytest.mark.parametrize("other", ["furlong", "px", "q", "", "seam", "dm", "km", "lob"])
def test_what_is_no_unit_has_no_hint(other: str):
    assert nearest_unit(other) is None


@pytest.mark.parametrize(
    ("metric", "kind", "imperial"),
    [
        (Fraction("25.4"), Kind.LENGTH, Fraction(1)),
        (Fraction("645.16"), Kind.AREA, Fraction(1)),
        (Fraction("453.59237"), Kind.WEIGHT, Fraction(16)),
        (Fraction(7), Kind.NUMBER, Fraction(7)),
        (Fraction(100), Kind.LENGTH, Fraction(500, 127)),
    ],
)
def test_conversion_is_exact_both_ways(metric: Fraction, kind: Kind, imperial: Fraction):
    assert convert(metric, kind, System.IMPERIAL) == imperial
    assert convert(imperial, kind, System.METRIC) == metric
