"""How long proving takes: a recipe of a hundred statements and five sizes, in both systems."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from time import process_time

from presscloth.edition import make_edition
from presscloth.problems import Problems
from presscloth.recipe.read import read
from presscloth.recipe.tree import Recipe
from presscloth.sewing import prove_sewing
from presscloth.sewing.carrying import sew
from presscloth.sewing.proving import unasked
from presscloth.sewing.verbs import forms
from presscloth.sewing.ways import ways
from presscloth.source import Source

ROUNDS = 5
COLOURS = ("red", "blue", "green", "grey", "pink", "white", "black", "brown", "teal", "ochre", "plum")
ROWS = len(COLOURS)
SIZES = ("Tiny", "Small", "Medium", "Large", "Huge")


def hundred_statements() -> str:
    """A wall hanging: patches joined one by one to rows, rows to a sheet, a loop that may be left off.

    One row may be begun at its other end, and the length of the loop is the reader's to choose.
    """
    sides = "\n".join(f"| {size} | {2.5 * (i + 2):g} cm ({i + 2} in) |" for i, size in enumerate(SIZES))
    cut = f"A | {ROWS} | side + 2 × seam | side + 2 × seam"
    pieces = "\n".join(f"| {colour} patch | {cut} |" for colour in COLOURS)
    steps = "\n".join(_row(number) for number in range(ROWS))
    rows = ", ".join(f"{colour} row" for colour in COLOURS)
    return f"""\
---
title: Wall Hanging
release: 2027-01
---
## Sizes
| Size | side |
|------|------|
{sides}

## Measures
- seam = 1 cm (3/8 in)
- loop length = 20 cm (8 in), yours to choose from 10 cm (4 in) to 30 cm (12 in)

## Materials
| Key | Material      | Form   | Width          | Sold by        |
|-----|---------------|--------|----------------|----------------|
| A   | Cotton fabric | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
| B   | Cotton tape   | tape   |                | 10 cm (1/8 yd) |

## Pieces
| Piece | From | Cut | Width | Height |
|-------|------|-----|-------|--------|
{pieces}
| loop | B | 1 | loop length | |

## Steps
{steps}
{ROWS + 2}. Sew the rows together and hem all round.

    ```sew
    sheet = join {rows} top to bottom
    hem all of sheet by 5 mm (3/16 in) twice
    ```

{ROWS + 3}. Optional: Sew on the loop.

    ```sew
    attach loop to sheet
    ```

{ROWS + 4}. Press.

    ```sew
    finish sheet
    ```
"""


def _row(number: int) -> str:
    """The step of a row; the second has another way, from its other end."""
    row, first = f"{COLOURS[number]} row", f"{COLOURS[0]} patch"
    joins = "\n".join(
        f"    {row} = join right of {row if i else first} to left of {colour} patch"
        for i, colour in enumerate(COLOURS[1:])
    )
    step = f"{number + 1 + (number > 1)}. Sew a row.\n\n    ```sew\n{joins}\n    ```\n"
    if number != 1:
        return step
    others = ", ".join(f"{colour} patch" for colour in reversed(COLOURS))
    other_way = f"    {row} = join {others} side by side"
    return f"{step}\n3. Or: Begin at the other end.\n\n    ```sew\n{other_way}\n    ```\n"


def recipe_of(text: str) -> Recipe:
    return read(
        Source("recipe.md", text), slug="wall-hanging", folder=Path(), verbs=forms(), problems=Problems()
    )


def measured() -> tuple[float, float]:
    """The seconds that all sizes take: one way as stated, and every way, end of a choice and paper."""
    recipe = recipe_of(hundred_statements())
    editions = tuple(make_edition(recipe, size, Problems(), unasked) for size in recipe.sizes)
    stated = _fastest(lambda: [sew(each, ways(each)[0]) for each in editions])
    return stated, _fastest(lambda: [prove_sewing(each) for each in editions])


def _fastest(work: Callable[[], object]) -> float:
    times = []
    for _ in range(ROUNDS):
        start = process_time()
        work()
        times.append(process_time() - start)
    return min(times)
