"""Fragments completed to whole recipes."""

from pathlib import Path

from presscloth.dev.scaffold import PICTURE, complete, write
from presscloth.pipeline import prove

NOTHING = """\
---
title: Plain Cloth
release: 2027-01
---

## Measures

- seam = 1 cm (3/8 in)

## Materials

| Key | Material      | Form   | Width          | Sold by        |
|-----|---------------|--------|----------------|----------------|
| A   | Cotton fabric | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |

## Pieces

| Piece | From | Cut | Width         | Height        |
|-------|------|-----|---------------|---------------|
| cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

## Steps

1. Press all four sides under, once and once again, and stitch.

   ```sew
   hem all of cloth by 1.2 cm (1/2 in) twice
   finish cloth
   ```
"""


def sections(text: str) -> list[str]:
    return [line[3:] for line in text.splitlines() if line.startswith("## ")]


def test_nothing_becomes_the_smallest_recipe():
    assert complete("") == NOTHING


def test_the_smallest_recipe_is_proved_without_a_problem(tmp_path: Path):
    proved = prove(write("", tmp_path))
    assert proved.problems == ()
    assert proved.recipe is not None
    assert (tmp_path / PICTURE).read_bytes().startswith(b"\x89PNG")


def test_a_section_takes_the_place_of_the_usual_one():
    text = complete("## Pieces\n| Piece |\n|---|\n| cloth |\n")
    assert sections(text) == ["Measures", "Materials", "Pieces", "Steps"]
    assert "| Piece |\n|---|\n| cloth |\n\n## Steps" in text
    assert "30 cm" not in text


def test_sizes_come_first_and_other_sections_last():
    text = complete("## Notes\nDone.\n\n## Checks\n- a < b\n\n## Sizes\n| Size |\n|---|\n| Small |\n")
    assert sections(text) == ["Sizes", "Measures", "Materials", "Pieces", "Steps", "Notes", "Checks"]


def test_a_section_that_stands_twice_stays_twice():
    assert sections(complete("## Measures\n- a = 1\n\n## Measures\n- b = 2\n")).count("Measures") == 2


def test_the_seam_is_kept_unless_it_is_defined():
    assert "- seam = 1 cm (3/8 in)\n- band = 2 cm" in complete("## Measures\n- band = 2 cm\n")
    assert complete("## Measures\n- seam = 2 cm\n").count("seam =") == 1
    by_size = complete("## Sizes\n| Size | seam |\n|---|---|\n| Small | 1 cm |\n")
    assert "seam =" not in by_size
    assert sections(by_size) == ["Sizes", "Materials", "Pieces", "Steps"]


def test_front_matter_is_replaced_key_by_key_and_extended():
    text = complete("---\nrelease: 2028-02\nskills:\n  - hems\n---\n\n# Plain Cloth\n")
    front = "---\ntitle: Plain Cloth\nrelease: 2028-02\nskills:\n  - hems\n---\n"
    assert text.startswith(f"{front}\n# Plain Cloth\n")


def test_what_stands_before_the_sections_stays_there():
    text = complete("# Plain Cloth\n\nFor the table.\n")
    assert "---\n\n# Plain Cloth\n\nFor the table.\n\n## Measures" in text
