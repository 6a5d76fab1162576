"""What a size cuts: cut sizes, counts, allowances, and which pieces it has."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from spec.running import reported

from presscloth.dev import scaffold
from presscloth.edition import CutPiece
from presscloth.edition.asking import find_piece, part_of_piece
from presscloth.pipeline import Proved, prove
from presscloth.recipe.tree import Grain, Shape

HEAD = (
    "| Piece | From | Cut | Width | Height | Shape | Sizes | Grain | Allowance | Notes |\n"
    + "|---" * 10
    + "|\n"
)
MATERIALS = """\
## Materials
| Key | Material | Form   | Width          | Sold by        |
|-----|----------|--------|----------------|----------------|
| A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
| B   | Linen    | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
| C   | Tape     | tape   |                | 10 cm (1/8 yd) |
| D   | Button   | notion |                | 1              |

"""
SIZES = "## Sizes\n| Size | side |\n|---|---|\n| Small | 30 cm (12 in) |\n| Large | 40 cm (16 in) |\n\n"
PRESS = "\n## Steps\n1. Press it.\n"


def proved(rows: str, tmp_path: Path, *, before: str = "", steps: str = PRESS) -> Proved:
    return prove(scaffold.write(f"{before}{MATERIALS}## Pieces\n{HEAD}{rows}\n{steps}", tmp_path))


def pieces(rows: str, tmp_path: Path, size: int = 0, **more: str) -> dict[str, CutPiece]:
    return {piece.name: piece for piece in proved(rows, tmp_path, **more).sizes[size].edition.pieces}


def test_sizes_counts_and_what_is_said_besides(tmp_path: Path):
    rows = (
        "| front | A, B | 2 | 20 cm (8 in) | 30 cm (12 in) | | | across | 6 mm (1/4 in) | spare 1 |\n"
        "| base | A | 1 | 20 cm (8 in) | | circle | | | | any grain |\n"
        "| loop | C | 3 | | 12 cm (4 3/4 in) | | | | | |\n"
        "| button | D | 4 | | | | | | | |"
    )
    found = pieces(rows, tmp_path)
    front, base, loop, button = found["front"], found["base"], found["loop"], found["button"]
    assert (front.keys, front.count, front.spare, front.grain) == (("A", "B"), 2, 1, Grain.ACROSS)
    assert front.width is not None and front.height is not None and front.allowance is not None
    assert (front.width.metric, front.height.imperial, front.allowance.imperial) == (200, 12, Fraction(1, 4))
    assert (base.shape, base.height, base.grain) == (Shape.CIRCLE, None, Grain.ANY)
    assert (loop.count, loop.width, button.count, button.height) == (3, None, 4, None)
    assert base.allowance is not None
    assert base.allowance.metric == 10


def test_parts_of_a_piece(tmp_path: Path):
    found = pieces("| front | A, B | 2 | 20 cm (8 in) | 30 cm (12 in) | | | | | |", tmp_path)
    front = found["front"]

    def part(name: str, *, finished: bool = False) -> tuple[Fraction, Fraction] | None:
        value = part_of_piece(front, name, finished=finished)
        return None if value is None else (value.metric, value.imperial)

    assert part("width") == part("top") == (200, 8)
    assert part("height") == part("left") == part("length") == (300, 12)
    assert part("count") == (4, 4)
    assert part("width", finished=True) == (180, Fraction(29, 4))
    assert part("depth") is None
    assert find_piece("B fronts", tuple(found.values())) is front
    assert find_piece("D front", tuple(found.values())) is None


@pytest.mark.parametrize(
    ("row", "name", "place", "message"),
    [
        (
            "| c | A | 5/2 | 3 cm | 3 cm | | | | | |",
            "count-not-whole",
            "5/2",
            "the number of `c` comes out as 2 1/2",
        ),
        ("| c | A | 0 - 1 | 3 cm | 3 cm | | | | | |", "count-not-whole", "0 - 1", "is less than nothing"),
        ("| c | A | 3 cm | 3 cm | 3 cm | | | | | |", "count-not-whole", "3 cm", "is a length, and should be"),
        (
            "| c | A | 1 | 30 | 3 cm | | | | | |",
            "wrong-kind",
            "30",
            "the width of `c` is a number, and should be",
        ),
        (
            "| c | A | 1 | 3 cm | 3 cm × 3 cm | | | | | |",
            "wrong-kind",
            "3 cm × 3 cm",
            "the height of `c` is an area",
        ),
        ("| c | A | 1 | 0 cm | 3 cm | | | | | |", "not-positive", "0 cm", "the width of `c` comes out as 0"),
        ("| c | A | 1 | 3 cm | 3 cm | | | | 2 | |", "wrong-kind", "2", "the allowance of `c` is a number"),
    ],
)
def test_what_cannot_be_cut(row: str, name: str, place: str, message: str, tmp_path: Path):
    found = [one for one in reported(proved(row, tmp_path)) if one.problem.slug() != "material-not-used"]
    assert [one.problem.slug() for one in found] == [name]
    assert found[0].problem.span.text == place
    assert message in found[0].problem.message()


def test_a_cut_size_below_nothing_is_told_for_each_system_in_one_message(tmp_path: Path):
    found = reported(proved("| c | A | 1 | seam - 2 cm (3/4 in) | 3 cm | | | | | |", tmp_path))
    (one,) = [one for one in found if one.problem.slug() == "not-positive"]
    assert [variant.problem.message() for variant in one.all_variants] == [
        "the width of `c` comes out as -1 cm",
        "the width of `c` comes out as -3/8 in",
    ]
    assert [variant.systems for variant in one.all_variants] == [("metric",), ("imperial",)]


STEPS = """
## Steps
1. Large only: Sew on the pocket.

   ```sew
   attach A pocket to cloth
   ```

2. Done.

   ```sew
   finish cloth
   ```
"""


def test_a_piece_belongs_to_the_sizes_whose_statements_speak_of_it(tmp_path: Path):
    rows = (
        "| cloth | A | 1 | side | side | | | | | |\n"
        "| pocket | A, B | 1 | 9 cm (3 1/2 in) | 9 cm (3 1/2 in) | | | | | |\n"
        "| label | B | 1 | 3 cm (1 1/8 in) | 3 cm (1 1/8 in) | | | | | |\n"
        "| tab | A | 1 | 3 cm (1 1/8 in) | 3 cm (1 1/8 in) | | small | | | |"
    )
    found = proved(rows, tmp_path, before=SIZES, steps=STEPS)
    small, large = (size.edition for size in found.sizes)
    assert [piece.name for piece in small.pieces] == ["cloth", "label", "tab"]
    assert [piece.name for piece in large.pieces] == ["cloth", "pocket", "label"]
    assert (small.without, large.without) == (("pocket",), ("tab",))
    assert [step.number for step in small.steps] == [2]
    assert [step.number for step in large.steps] == [1, 2]
