"""Names: what may be one, how one is found, and when two are one."""

from __future__ import annotations

import pytest
from spec.running import reported

from presscloth.dev import scaffold
from presscloth.pipeline import prove
from presscloth.recipe.words import Names, forms, look_up, nearest, why_no_name


@pytest.mark.parametrize(
    "name",
    ["base depth", "side band", "Füllung", "back-strip", "top band", "x", "widths"],
)
def test_names(name: str):
    assert why_no_name(name) is None


@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("width", "`width` always means a part of a thing"),
        ("Top", "`Top` always means a part of a thing"),
        ("long side", "`long side` always means a part of a thing"),
        ("2nd strip", "`2nd` does not begin with a letter"),
        ("strip 2", "`2` does not begin with a letter"),
        ("strip of cloth", "`of` has a meaning of its own in the language"),
        ("half circle", "`half` has a meaning of its own in the language"),
        ("round base", "`round` has a meaning of its own in the language"),
        ("strip cm", "`cm` is a unit"),
        ("two inches", "`inches` is a unit"),
    ],
)
def test_what_cannot_be_a_name(name: str, why: str):
    assert why_no_name(name) == why


def test_every_small_word_of_the_patterns_and_every_unit_is_kept():
    kept = "of to by in into on with from at and over through between twice half wide high"
    for word in (*kept.split(), *"mm cm m in inch inches ft yd yard yards g kg oz lb".split()):
        assert why_no_name(f"strip {word}") is not None, word


def test_capitals_and_a_plural_do_not_matter():
    among = {"Side Band": 1, "box": 2, "glasses": 3}
    assert [look_up(name, among) for name in ("side bands", "BOXES", "glass", "Glasses")] == [1, 2, 3, 3]
    assert look_up("band", among) is None
    assert look_up("side  band", among) == 1


def test_the_exact_spelling_wins():
    among = {"Band": 1, "band": 2, "bands": 3}
    assert [look_up(name, among) for name in ("band", "Band", "bands", "BAND")] == [2, 1, 3, 1]


def test_names_that_are_gathered_are_found_as_those_that_are_listed():
    names = Names({"Band": 1})
    assert names.find("bands") == 1
    names.add("bands", 2)
    assert (names.find("bands"), names.find("BANDS"), names.find("band")) == (2, 2, 1)
    assert names.find("strip") is None


def test_forms():
    assert forms("Boxes") == ("boxes", "boxe", "box", "boxess", "boxeses")


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("bnad", "band"), ("hme", "hem"), ("side strp", "side strip"), ("Bands", "band"), ("zip", None)],
)
def test_what_was_probably_meant(typed: str, meant: str | None):
    assert nearest(typed, ["band", "hem", "side strip", "lining"]) == meant


def told(fragment: str, tmp_path) -> list[tuple[str, str]]:
    found = reported(prove(scaffold.write(fragment, tmp_path)))
    return [(one.problem.slug(), one.problem.span.text) for one in found]


def test_one_name_is_one_thing_in_a_whole_recipe(tmp_path):
    fragment = """\
## Sizes
| Size  | side          |
|-------|---------------|
| Small | 30 cm (12 in) |
| Large | 40 cm (16 in) |

## Measures
- Sides = 5 cm (2 in)
- sheet = 30 cm (12 in)

## Pieces
| Piece | From | Cut | Width         | Height        |
|-------|------|-----|---------------|---------------|
| sheet | A    | 1   | side          | side          |
| cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

## Steps
1. Hem it.

   ```sew
   side = hem all of cloth by 1.2 cm (1/2 in) twice
   finish side
   ```
"""
    assert [found for found in told(fragment, tmp_path) if found[0] == "name-twice"] == [
        ("name-twice", "Sides"),
        ("name-twice", "sheet"),
        ("name-twice", "side"),
    ]


def test_what_is_sewn_may_take_the_name_of_a_piece(tmp_path):
    statements = "   cloth = hem all of cloth by 1.2 cm (1/2 in) twice\n   finish cloth\n"
    assert told(f"## Steps\n1. Hem.\n\n   ```sew\n{statements}   ```\n", tmp_path) == []


def test_a_circle_is_told_once_with_all_its_members(tmp_path):
    fragment = "## Measures\n- a = b\n- b = 2 × c\n- c = max(a, 3 cm)\n- d = a\n"
    (one,) = reported(prove(scaffold.write(fragment, tmp_path)))
    assert one.problem.slug() == "circle-of-names"
    assert one.problem.message() == "these measures are defined by each other: `a` → `b` → `c` → `a`"
    assert [label.span.text for label in one.problem.labels] == ["b", "c"]


@pytest.mark.parametrize(
    ("measure", "place", "hint"),
    [
        ("hight of cloth", "hight", "write `height of …`"),
        ("finished hight of cloth", "finished hight", "write `height of …`"),
        ("2 × colour of cloth", "colour", "use width, height, depth, around, length, count or an edge"),
    ],
)
def test_a_part_that_no_thing_has_is_told_once(measure: str, place: str, hint: str, tmp_path):
    fragment = f"## Measures\n- strip = {measure}\n- other = 2 × strip\n"
    (one,) = reported(prove(scaffold.write(fragment, tmp_path)))
    assert (one.problem.slug(), one.problem.span.text) == ("part-unknown", place)
    assert one.problem.hint().startswith(hint)
