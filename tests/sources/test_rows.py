"""Every row of geometry that somebody published, and every published mistake, is named by its test.

A row is named in a comment or docstring of its test (`G10: …`). Rows of one letter are numbered with gaps.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

GEOMETRY = (
    "G01 G02 G04 G06 G07 G09 G10 G11 G12 G14 G15 G17 G18 G20 G21 G25 G26 G28 G29 G30 G32 G33 G34 G35 G37 G39 "
    "G40 G42 G44 G45 G46 G47 G49 G50"
).split()

WRONG = "N01 N03 N04 N06 N09 N11 N13 N18 N20 N25".split()
"""Published, and wrong: what is printed must be rejected."""

TESTS = "".join(
    file.read_text("utf-8") for file in Path(__file__).parent.glob("test_*.py") if file.name != "test_rows.py"
)


@pytest.mark.parametrize("row", [*GEOMETRY, *WRONG])
def test_a_test_holds_it(row: str) -> None:
    assert re.search(rf"(# |\"\"\")(\w\d\d, )?{row}\b", TESTS)
