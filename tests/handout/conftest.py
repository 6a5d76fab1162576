"""A recipe with everything that a handout words, proved once for all tests of this room."""

from __future__ import annotations

from pathlib import Path

import pytest

from presscloth.handout.tree import Booklet, Publisher
from presscloth.pipeline import Proved, booklet, prove_source
from presscloth.problems import Problems
from presscloth.source import Source

PUBLISHER = Publisher("Tidewrack sewing room", "", ("A4",), (), "plain-seam")

RECIPE = """\
---
title: Jetty Pouch
release: 2027-04
written in: metric
language: en
skills: joining, boxed corners
audience:
  Child: child
  Adult: adult
sewn: Adult
video: https://tidewrack.example/jetty-pouch
---

## Sizes

| Size  | side            | tab side        |
|-------|-----------------|-----------------|
| Child | 15 cm (6 in)    | –               |
| Adult | 20 cm (8 in)    | 6 cm (2 3/8 in) |

## Measures

- seam = 1 cm (3/8 in)
- base = 5 cm (2 in)
- cord length = 30 cm (12 in), yours to choose from 20 cm (8 in) to 60 cm (24 in)

## Tools

- sewing machine, rotary cutter, iron

## Materials

| Key | Material         | Form   | Width          | Sold by        | Notes       |
|-----|------------------|--------|----------------|----------------|-------------|
| A   | Canvas, slate    | fabric | 140 cm (55 in) | 10 cm (1/8 yd) | one way     |
| B   | Cotton cord      | tape   |                | 10 cm (1/8 yd) |             |
| C   | Button, 20 mm    | notion |                | 1              |             |

## Pieces

| Piece  | From | Cut | Width           | Height                   | Notes         |
|--------|------|-----|-----------------|--------------------------|---------------|
| panel  | A    | 2   | side + 2 × seam | side + 2 × seam + 2 × seam | measure first |
| tab    | A    | 1   | tab side + 2 × seam | tab side + 2 × seam  | any grain     |
| cord   | B    | 1   |                 | cord length              |               |
| button | C    | 1   |                 |                          |               |

## Steps

### The pouch

1. At 4:15: Sew the panels together on three sides with {seam} seams: {width of pouch} wide.

   ```sew
   pouch = join panel to panel on left, right, bottom
   ```

2. Take care: Box the corners to {base}.

   ```sew
   pouch box = box corners of pouch to base
   hem top of pouch box by seam twice
   ```

3. Adult only: Hem the {tab}, and sew it on.

   ```sew
   hem all of tab by seam
   attach tab to pouch box
   ```

4. Optional: Sew on the button.

   ```sew
   attach button to pouch box
   ```

5. Thread in {cord length} of cord.

   ```sew
   attach cord to pouch box
   finish pouch box
   ```

## Checks

- base <= side: the base fits into the pouch

## Care

Wash it **cool**.
"""


def prove_text(text: str) -> Proved:
    return prove_source(Source("jetty-pouch/recipe.md", text), Path("jetty-pouch/recipe.md"), Problems())


@pytest.fixture(scope="session")
def proved() -> Proved:
    return prove_text(RECIPE)


@pytest.fixture(scope="session")
def pouch(proved: Proved) -> Booklet:
    assert [(p.slug(), p.message()) for p in proved.problems] == []
    return booklet(proved, PUBLISHER)
