"""Where parts lie is worked out when somebody asks, not before, and once."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import pytest
from tests.sewing.table import sew, sew_recipe

from presscloth.dev import scaffold
from presscloth.measure import Quantity
from presscloth.sewing.placing import Arranged, Arrangement
from presscloth.sewing.verbs import joining
from presscloth.sewing.work import Used

SQUARES = "square | A | 3 | 12 cm (4 3/4 in) | 12 cm (4 3/4 in)"
ROW = """
row = join 3 square side by side
hem all of row by 1.2 cm (1/2 in) twice
finish row
"""


def test_a_proof_arranges_nothing(monkeypatch: pytest.MonkeyPatch):
    asked: list[int] = []
    usual = joining.lying_in_line

    def counting(
        used: Sequence[Used], quarters: Sequence[int], taken: Sequence[Quantity], *, across: bool
    ) -> Arranged:
        asked.append(len(used))
        return usual(used, quarters, taken, across=across)

    monkeypatch.setattr(joining, "lying_in_line", counting)
    made = sew(SQUARES, ROW).made
    assert asked == []
    assert [part.name for part in made.finished[0].thing.parts] == ["square", "square", "square"]
    assert [each.box.x for each in made.events[0].lying] == [0, Fraction(100), Fraction(200)]
    assert asked == [3]


def test_a_proof_arranges_what_must_not_be_upside_down():
    table = sew(
        SQUARES.replace("| A |", "| B |").replace("3 |", "2 |"),
        """
        pair = join top of square to top of square
        hem all of pair by 1.2 cm (1/2 in) twice
        finish pair
        """,
    )
    assert table.names == ["ends-upside-down"]


def test_a_long_chain_of_statements_is_no_deep_one():
    strips = 300
    others = "\n".join(["   row = join right of row to left of strip"] * (strips - 2))
    table = sew_recipe(
        scaffold.complete(f"""\
## Pieces
| Piece | From | Cut      | Width       | Height        |
|-------|------|----------|-------------|---------------|
| strip | A    | {strips} | 5 cm (2 in) | 50 cm (20 in) |

## Steps
1. Sew.

   ```sew
   row = join 2 strip side by side
{others}
   finish row
   ```
""")
    )
    last = table.made.finished[0].thing.parts[-1]
    assert last.box is not None
    assert last.box.x == (strips - 1) * 30 + 10


def test_what_was_arranged_is_kept():
    times: list[int] = []

    def arrange() -> Arranged:
        times.append(1)
        return Arranged()

    arrangement = Arrangement(arrange)
    assert times == []
    assert (arrangement.lying, arrangement.lines, arrangement.parts) == ((), (), ())
    assert times == [1]
