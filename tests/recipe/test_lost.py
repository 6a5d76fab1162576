"""What speaks of a row that could not be read follows from that row's own problem."""

from pathlib import Path

import pytest

from presscloth.dev import scaffold
from presscloth.pipeline import prove
from presscloth.problems.report import one_by_one, report
from presscloth.recipe.lost import cause
from presscloth.source import Source

HEAD = "| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
MATERIALS = "## Materials\n| Key | Material | Form | Width | Sold by |\n|---|---|---|---|---|\n"


@pytest.mark.parametrize(
    ("fragment", "first", "follows"),
    [
        (
            f"## Pieces\n{HEAD}| cloth | A | | 30 cm | 30 cm |\n",
            "cell-empty",
            {"name-unknown", "material-not-used"},
        ),
        ("## Pieces\n| Piece | From |\n|---|---|\n| cloth | A |\n", "column-missing", {"name-unknown"}),
        (f"{MATERIALS}| A | Cotton | fabrik | 110 cm | 10 cm |\n", "form-unknown", {"material-unknown"}),
        ("## Measures\n- top = 3 cm\n- gap = 2 × top\n", "name-not-allowed", {"name-unknown"}),
        (
            "## Sizes\n| Size | top |\n|---|---|\n| Small | 3 cm |\n\n## Measures\n- gap = 2 × top\n",
            "name-not-allowed",
            {"name-unknown"},
        ),
    ],
)
def test_one_cause_gives_one_message(fragment: str, first: str, follows: set[str], tmp_path: Path):
    (one,) = report(prove(scaffold.write(fragment, tmp_path)).problems)
    assert one.problem.slug() == first
    assert follows <= {other.problem.slug() for other in one_by_one(one.under)}


def test_a_name_that_stands_in_no_lost_row_has_no_cause_there(tmp_path: Path):
    fragment = "## Measures\n- top = 3 cm\n- gap = 2 × tap\n"
    found = report(prove(scaffold.write(fragment, tmp_path)).problems)
    assert [one.problem.slug() for one in found] == ["name-not-allowed", "name-unknown"]


@pytest.mark.parametrize(
    ("name", "row", "speaks"),
    [
        ("strap", "| strap | A |", True),
        ("Strap", "| straps | A |", True),
        ("A", "| strap | A, B |", True),
        ("strap", "| bootstrap | A |", False),
        ("side strip", "| side strip | A |", True),
        ("box", "| boxes | A |", True),
        ("a (b", "| a (b | A |", True),
    ],
)
def test_a_row_speaks_of_whole_names(name: str, row: str, speaks: bool):
    place = Source("recipe.md", row).span(0, len(row))
    assert cause(name, [place]) == (place if speaks else None)
