"""Measures that were typed by hand: found wherever prose stands, with their exact place."""

from __future__ import annotations

from pathlib import Path

import pytest
from proof.proving import step, told


@pytest.mark.parametrize(
    ("prose", "place", "hint"),
    [
        ("Press half an inch under.", "half an inch", "{1/2 in}"),
        ('Press 1/2" under.', '1/2"', "{1/2 in}"),
        ("Press 2-3 cm under.", "2-3 cm", "{2 cm} to {3 cm}"),
        ("Press 1.2cm (1/2 in) under.", "1.2cm (1/2 in)", "{1.2 cm (1/2 in)}"),
        ("Press **2 cm** under.", "2 cm", "{2 cm}"),
        ("Press [2 cm](https://x.example) under.", "2 cm", "{2 cm}"),
        ("Press about 2 cm under.", "about 2 cm", "{2 cm, about}"),
        ("Press 2\n   cm under.", "2 cm", "{2 cm}"),
        ("Press 2&nbsp;cm under.", "2&nbsp;cm", "{2 cm}"),
    ],
)
def test_a_typed_measure(prose: str, place: str, hint: str, tmp_path: Path):
    (one,) = told(step(prose), tmp_path)
    assert one == ("typed-by-hand", place, f"`{place}` is typed by hand and follows no size")


@pytest.mark.parametrize(
    "prose",
    [
        "Press {2 cm (3/4 in)} under.",
        "Press `2 cm` under.",
        "Press it ![2 cm](cloth.png) under.",
        "Press it in 2 minutes at 40 degrees.",
    ],
)
def test_what_is_none(prose: str, tmp_path: Path):
    assert [name for name, _, _ in told(step(prose), tmp_path) if name != "typed-by-hand"] == []
    if "![" not in prose:
        assert told(step(prose), tmp_path) == []


def test_words_on_a_picture_are_read_too(tmp_path: Path):
    assert [place for _, place, _ in told(step("![a hem of 2 cm](cloth.png)"), tmp_path)] == ["2 cm"]


@pytest.mark.parametrize(
    ("prose", "message", "hint"),
    [
        (
            "Press 2.5 cm (1/2 in) under.",
            "`2.5 cm (1/2 in)` is typed by hand, and its halves are 12.3 mm apart, 49 % of the larger",
            "{2.5 cm (1 in)}",
        ),
        (
            "Fill it with 200 g (4 oz) of sand.",
            "`200 g (4 oz)` is typed by hand, and its halves are 86.6 g apart, 43 % of the larger",
            "{200 g (7 oz)}",
        ),
    ],
)
def test_a_typed_pair_that_disagrees_is_an_error(prose: str, message: str, hint: str, tmp_path: Path):
    (one,) = told(step(prose), tmp_path)
    assert (one[0], one[2]) == ("typed-pair-disagrees", message)


@pytest.mark.parametrize(
    "fragment",
    [
        "## Measures\n- gap = 8 cm (3 in): leave 3 in open\n",
        "## Tools\n- needle of 2 mm\n",
        "## Notes\n\nCut it 5 cm wide.\n",
        "## Notes\n\n| a |\n|---|\n| 5 cm |\n",
        "## Cut 5 cm\n\nDone.\n",
        "Small: 5 cm wide.\n",
        "## Measures\n- gap = 8 cm (3 1/8 in)\n\n## Checks\n- gap > 2 cm: 5 cm is too little\n",
    ],
)
def test_all_prose_is_read(fragment: str, tmp_path: Path):
    assert "typed-by-hand" in {name for name, _, _ in told(fragment, tmp_path)}


def test_the_names_of_materials_are_left_alone(tmp_path: Path):
    materials = """\
## Materials
| Key | Material          | Form   | Width          | Sold by        | Notes      |
|-----|-------------------|--------|----------------|----------------|------------|
| A   | Cotton, 2 mm pile | fabric | 110 cm (43 in) | 10 cm (1/8 yd) | 3 mm thick |

"""
    found = told(materials + step("Take cotton, 2 mm pile, and 2 mm more."), tmp_path)
    assert [place for _, place, _ in found] == ["3 mm", "2 mm"]
