"""No line ends within a measure, in the words of any language."""

from __future__ import annotations

import pytest

from presscloth.measure import UNITS
from presscloth.tongue import speaking, tongue_of, unbroken


@pytest.mark.parametrize(
    ("language", "text", "where"),
    [
        ("en", "2: pocket 5 1/2 in × 6 5/8 in", "2: pocket 5~1/2~in~× 6~5/8~in"),
        ("en", "panel 15 cm × 10 cm, cut 2", "panel 15~cm~× 10~cm, cut 2"),
        ("en", "3 inches of 4 yards", "3 inches of 4 yards"),
        ("en", "1 1/2 yd, 250 g, 9 oz", "1~1/2~yd, 250~g, 9~oz"),
        ("de", "Etikett 4 1/2 Zoll × 3 Zoll", "Etikett 4~1/2~Zoll~× 3~Zoll"),
        ("de", "2 Yards, 3 Streifen", "2~Yards, 3 Streifen"),
    ],
)
def test_spaces_in_measures_hold(language: str, text: str, where: str) -> None:
    with speaking(tongue_of(language)):
        assert unbroken(text) == where.replace("~", "\N{NO-BREAK SPACE}")


@pytest.mark.parametrize("unit", UNITS)
def test_every_unit_that_is_printed_holds(unit: str) -> None:
    assert unbroken(f"3 {unit}") == f"3\N{NO-BREAK SPACE}{unit}"
