"""Faults that were found once in carrying out statements; each stays mended."""

from __future__ import annotations

from pathlib import Path

from proof.proving import step, told

PIECES = """\
## Pieces
| Piece | From | Cut | Width         | Height        | Shape                |
|-------|------|-----|---------------|---------------|----------------------|
| wedge | A    | 2   | 20 cm (8 in)  | 20 cm (8 in)  | half-square triangle |
| strip | A    | 2   | 26 cm (10 in) | 5 cm (2 in)   |                      |
| arch  | A    | 1   |               |               | outline              |

## Outlines

### arch

- right 20 cm (8 in) as crown, arched by 5 cm (2 in)
- down 20 cm (8 in) as right
- left 20 cm (8 in) as foot
- back to the start as left

"""


def test_a_band_on_the_long_side_of_a_triangle_ended_the_program(tmp_path: Path):
    fragment = PIECES + step("Band it.", "band long side of wedge with strip, taking 1 cm (3/8 in)")
    assert told(fragment, tmp_path)[0] == (
        "wrong-shape",
        "wedge",
        "`wedge` is a triangle; this needs a flat thing with four sides",
    )


def test_joining_on_a_side_that_only_an_outline_has_ended_the_program(tmp_path: Path):
    fragment = PIECES + step("Join it.", "bag = join strip to strip on crown, left")
    assert "sides-make-no-pouch" in [name for name, _, _ in told(fragment, tmp_path)]
