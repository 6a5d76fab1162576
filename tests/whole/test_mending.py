"""A recipe is broken in ways in which authors break recipes, and mended from what the compiler says.

Where the hint quotes what to write, it is written at the reported place, by this test, without a thought.
Where it says in words what to do, the words are held, and are then done as they say. Either way the
recipe must be sound again.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from presscloth.pipeline import Proved, prove_source
from presscloth.problems import Problem, Problems
from presscloth.problems.report import Reported, report
from presscloth.source import Source

RECIPE = Path(__file__).parents[2] / "recipes" / "harbour-kit-bag" / "recipe.md"
SOUND = RECIPE.read_text("utf-8")

_QUOTED = re.compile(r"^write `(?:## )?([^`…]+)`")

# What is typed wrong, and the problem that says so.
BY_ITSELF = {
    "a wrong half of a pair": ("base = 7.5 cm (3 in)", "base = 7.5 cm (2 in)", "pair-disagrees"),
    "a slip in a name": ("+ 2 × side band", "+ 2 × side bnad", "name-unknown"),
    "a unit in full": ("side band = 5 cm", "side band = 5 centimetres", "unit-unknown"),
    "a fraction with a hyphen": ("| 9 cm (3 1/2 in)  | 9", "| 9 cm (3-1/2 in)  | 9", "fraction-with-hyphen"),
    "a decimal comma": ("base = 7.5 cm", "base = 7,5 cm", "comma-in-number"),
    "a sign left out": ("4 × handle width", "4 handle width", "sign-missing"),
    "a sign without spaces": ("badge width + 2 ×", "badge width+ 2 ×", "sign-without-spaces"),
    "a form in the plural": ("| fabric      | 140", "| fabrics     | 140", "form-unknown"),
    "a small key": ("| E   |", "| e   |", "key-unclear"),
    "a heading of a column": ("| Height  ", "| Hight   ", "column-unknown"),
    "a key of the front matter": ("summary:", "sumary:", "front-matter-key-unknown"),
    "a verb": ("middle = join", "middle = jion", "verb-unknown"),
    "a thing in a statement": ("head strip, middle,", "head strip, midle,", "name-unknown"),
    "a thing in prose": ("{width of badge}", "{width of bagde}", "name-unknown"),
    "a size before a step": ("Large only:", "Lagre only:", "size-unknown"),
    "how a measure is printed": ("{turning gap, about}", "{turning gap, abuot}", "printed-how"),
    "a part of a thing": ("{height of badge}", "{hight of badge}", "part-unknown"),
    "a sewn size in the front matter": ("sewn: Tall", "sewn: Tal", "size-unknown"),
}


@cache
def prove(text: str) -> Proved:
    return prove_source(Source("recipe.md", text), RECIPE, Problems())


def told(text: str) -> tuple[Reported, ...]:
    proved = prove(text)
    assert proved.recipe is not None
    sizes = [size.name for size in proved.recipe.sizes]
    return report(proved.problems, sizes=sizes, systems=["metric", "imperial"])


def broken(was: str, typed: str) -> str:
    assert SOUND.count(was) >= 1
    return SOUND.replace(was, typed, 1)


def mended(text: str, problem: Problem) -> str:
    """The text with what the hint quotes at the place of the problem; `height of …` keeps its end."""
    hint = problem.hint().replace(" of …`", "`")
    quoted = _QUOTED.match(hint)
    assert quoted is not None, hint
    return text[: problem.span.start] + quoted[1] + text[problem.span.end :]


def test_the_recipe_is_sound():
    assert prove(SOUND).problems == ()


@pytest.mark.parametrize("slip", BY_ITSELF)
def test_one_message_and_its_hint_mend_it(slip: str):
    was, typed, name = BY_ITSELF[slip]
    text = broken(was, typed)
    (one,) = told(text)
    assert one.problem.slug() == name
    again = mended(text, one.problem)
    assert prove(again).problems == ()
    assert " ".join(again.split()) == " ".join(SOUND.split())


# What is wrong, the problem that says so, words of its message and hint, and what these tell to do.
IN_WORDS = {
    "a piece cut once too seldom": (
        ("| A    | 2   | side band", "| A    | 1   | side band"),
        "too-few-cut",
        "2 `side strip` wanted, 1 cut",
        "cut 2 `side strip`",
        ("| A    | 1   | side band", "| A    | 2   | side band"),
    ),
    "a piece cut once too often": (
        ("| A    | 2   | side band", "| A    | 3   | side band"),
        "piece-left-over",
        "1 `side strip` is left over: 3 cut, 2 sewn in",
        "cut 2",
        ("| A    | 3   | side band", "| A    | 2   | side band"),
    ),
    "the last statement forgotten": (
        ("    finish bag\n", ""),
        "thing-left-over",
        "`bag` is left over",
        "`finish bag`",
        ("    attach button to bag\n", "    attach button to bag\n    finish bag\n"),
    ),
    "a heading that is not the title": (
        ("# Harbour Kit Bag\n", "# Harbor Kit Bag\n"),
        "title-differs",
        "the title is `Harbour Kit Bag`",
        "make them the same",
        ("# Harbor Kit Bag\n", "# Harbour Kit Bag\n"),
    ),
    "a step of sale left out": (
        ("| 1 m (1 yd)     |", "|                |"),
        "step-of-sale-missing",
        "in what steps `Cut-away stabiliser` is sold",
        "in both systems",
        ("| 50 cm (20 in)  |                |", "| 50 cm (20 in)  | 1 m (1 yd)     |"),
    ),
    "a stroke forgotten in a table": (
        ("Canvas, slate                 | fabric  ", "Canvas, slate                   fabric  "),
        "cell-missing",
        "this row has 5 cells, and the table has 6 columns",
        "put a `|` between all cells",
        ("Canvas, slate                   fabric  ", "Canvas, slate                 | fabric  "),
    ),
    "an allowance forgotten": (
        ("| front width + 2 × seam | head band", "| front width + seam     | head band"),
        "edges-do-not-meet",
        "`head strip` is 20 cm (7 7/8 in), top of `middle` is 21 cm (8 1/4 in); 1 cm (3/8 in) apart",
        "cut 1 cm (3/8 in) too long or too short",
        ("| front width + seam     | head band", "| front width + 2 × seam | head band"),
    ),
    "a block never closed": (
        ("   outer = box corners of shell to base\n   ```\n", "   outer = box corners of shell to base\n"),
        "fence-not-closed",
        "the block that begins here is never closed",
        "on a line of their own, indented like the first ones",
        ("   outer = box corners of shell to base\n", "   outer = box corners of shell to base\n   ```\n"),
    ),
}


@pytest.mark.parametrize("slip", IN_WORDS)
def test_words_say_what_to_do(slip: str):
    (was, typed), name, message, hint, (wrong, right) = IN_WORDS[slip]
    text = broken(was, typed)
    (one,) = told(text)
    assert one.problem.slug() == name
    assert message in one.problem.message()
    assert hint in one.problem.hint()
    assert text.count(wrong) == 1
    assert prove(text.replace(wrong, right)).problems == ()
