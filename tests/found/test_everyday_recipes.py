"""Ten everyday things to sew, as a first author writes them down: right, and with one slip each."""

from __future__ import annotations

from pathlib import Path

import pytest
from proof.proving import told

RECIPES = Path(__file__).parent / "everyday"

# Which recipe, what its author slips at, what he writes there, what is told, and at which words.
SLIPS = [
    ("lined-bag", ", leaving gap open", "", "no-turning-gap", "bag = line shell with inner"),
    (
        "lined-bag",
        "lining | B | 2 | bag width + 2 × seam",
        "lining | B | 2 | bag width + seam",
        "edges-do-not-meet",
        "bag = line shell with inner",
    ),
    ("pillowcase-with-french-seams", "hem left of back", "hem right of back", "edge-not-raw", "back"),
    (
        "towels-with-double-hems",
        "towel width + 4 × hem depth",
        "towel width + 2 × hem depth",
        "check-fails",
        "width of towel = towel width",
    ),
    (
        "napkin-with-a-mitred-border",
        "middle side + 2 × border width + 5 cm (2 in)",
        "middle side + 2 × seam",
        "mitre-too-short",
        "4 border strip",
    ),
    (
        "log-cabin",
        "log5 | A | 4 | 5 cm (2 in) + 2 × log",
        "log5 | A | 4 | 5 cm (2 in) + log",
        "edges-do-not-meet",
        "4 block = join top of block to bottom of log5",
    ),
    ("flying-geese", "sky | B | 2 × geese", "sky | B | geese", "too-few-cut", "sky"),
    (
        "flying-geese",
        "goose width / 2 + 2.2 cm (7/8 in)",
        "goose width / 2 + 1 cm (3/8 in)",
        "edges-do-not-meet",
        "(geese) winged = join left of goose to long side of sky",
    ),
    (
        "drawstring-bag",
        "2 × bag width + 25 cm (10 in)",
        "bag width + 20 cm (8 in)",
        "cord-too-short",
        "2 cord",
    ),
    (
        "drawstring-bag",
        "+ 2 × (casing + 1 cm (3/8 in))",
        "+ casing",
        "check-fails",
        "height of bag = bag height",
    ),
    (
        "pleated-curtain",
        "fullness × rail",
        "2 × fullness × rail",
        "fullness-unusual",
        "hung = band top of curtain, gathered, with heading strip",
    ),
    (
        "pleated-curtain",
        ", gathered,",
        "",
        "edges-do-not-meet",
        "hung = band top of curtain with heading strip",
    ),
    ("zip-pouch", "zip length = 25 cm (10 in)", "zip length = 20 cm (8 in)", "zip-too-short", "zip"),
    ("bunting", "attach 9 flag", "attach 10 flag", "too-few-made", "10 flag"),
    (
        "bunting",
        ", top open",
        "",
        "cannot-be-turned",
        "(bunting length) flag = bag out flag side with flag side",
    ),
]


@pytest.mark.parametrize("path", sorted(RECIPES.glob("*.md")), ids=lambda path: path.stem)
def test_an_everyday_thing_is_sound(path: Path, tmp_path: Path):
    assert told(path.read_text(encoding="utf-8"), tmp_path) == []


@pytest.mark.parametrize(("name", "right", "wrong", "problem", "place"), SLIPS)
def test_a_slip_is_told_at_its_place(
    name: str, right: str, wrong: str, problem: str, place: str, tmp_path: Path
):
    text = (RECIPES / f"{name}.md").read_text(encoding="utf-8")
    assert right in text
    found = told(text.replace(right, wrong), tmp_path)
    assert (problem, place) in [(slug, spelt) for slug, spelt, _ in found]
