"""Numbers of things that were typed by hand, held against the cutting list and the statements."""

from __future__ import annotations

from pathlib import Path

import pytest
from proof.proving import found, told

PIECES = """\
## Materials
| Key | Material     | Form   | Width          | Sold by        |
|-----|--------------|--------|----------------|----------------|
| A   | Cotton, sand | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
| B   | Cotton, sea  | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |

## Pieces
| Piece | From | Cut | Width        | Height       | Notes   |
|-------|------|-----|--------------|--------------|---------|
| block | A, B | 6   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) | spare 1 |

"""


def steps(prose: str) -> str:
    return f"""{PIECES}## Steps
1. {prose}

   ```sew
   4 row = join 3 block side by side
   cloth = join 4 row top to bottom
   hem all of cloth by 1.2 cm (1/2 in) twice
   finish cloth
   ```
"""


# Six of each are cut and one more to spare; a row takes three, twelve in all; there are four rows.
@pytest.mark.parametrize(
    "prose",
    [
        "Join the 12 blocks.",
        "Join the twelve blocks.",
        "Join all 12 blocks.",
        "Join the 6 blocks of each colour.",
        "Join 3 blocks for each row.",
        "Join the 4 rows.",
        "Join the four Rows.",
        "Take 2 blocks at a time.",
        "Join a dozen blocks.",
        "Join the 14 blocks and spare ones.",
        "Press it 16 times.",
        "Wait for 5 minutes.",
    ],
)
def test_numbers_that_fit(prose: str, tmp_path: Path):
    assert [name for name, _, _ in told(steps(prose), tmp_path) if name == "typed-count-differs"] == []


@pytest.mark.parametrize(
    ("prose", "place", "message"),
    [
        ("Sew the 16 blocks.", "16 blocks", "of `block` there are 3 or 6 or 7 or 12 or 14"),
        ("Join the five rows.", "five rows", "of `row` there are 4"),
        ("Join 5 rows.", "5 rows", "of `row` there are 4"),
        ("Join both rows.", "both rows", "of `row` there are 4"),
        ("**Join the 5** rows.", "5** rows", "of `row` there are 4"),
    ],
)
def test_numbers_that_differ(prose: str, place: str, message: str, tmp_path: Path):
    (one,) = [one for one in told(steps(prose), tmp_path) if one[0] == "typed-count-differs"]
    assert one[1] == place
    assert one[2] == f"`{place}` is typed by hand, and {message}"


def test_the_cell_of_the_cutting_list_is_shown(tmp_path: Path):
    (one,) = [one for one in found(steps("Sew the 16 blocks."), tmp_path) if one.problem.labels]
    assert [label.span.text for label in one.problem.labels] == ["6"]


def test_a_number_is_held_in_the_sizes_in_which_it_is_printed(tmp_path: Path):
    sizes = "## Sizes\n| Size | across |\n|---|---|\n| Small | 3 |\n| Large | 4 |\n\n"
    pieces = (
        "## Pieces\n| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
        "| block | A | across | 12 cm (4 3/4 in) | 30 cm (12 in) |\n\n"
    )
    prose = (
        "## Steps\n1. Join the 3 blocks.\n\n   ```sew\n   cloth = join (across) block side by side\n"
        "   hem all of cloth by 1.2 cm (1/2 in) twice\n   finish cloth\n   ```\n"
    )
    (one,) = found(sizes + pieces + prose, tmp_path)
    assert (one.problem.slug(), one.sizes) == ("typed-count-differs", ("Large",))
    small = prose.replace("1. Join the 3", "1. Join them.\n\n   Small only: Join the 3").replace(
        "blocks.\n\n   ```sew", "blocks.\n\n   Then:\n\n   ```sew"
    )
    assert found(sizes + pieces + small, tmp_path) == ()
