"""An outline in one size: both systems in their own numbers, boxes, and what is reported in which of them."""

from __future__ import annotations

from fractions import Fraction

from presscloth.dev import scaffold
from presscloth.edition import Edition, make_edition
from presscloth.measure import System, printed
from presscloth.problems import Problem, Problems
from presscloth.recipe.read import read
from presscloth.sewing.proving import unasked
from presscloth.sewing.verbs import forms
from presscloth.source import Source

PIECES = "## Pieces\n| Piece | From | Cut | Shape   |\n|---|---|---|---|\n| cloth | A | 1 | outline |\n"


def edition(*runs: str, front: str = "", more: str = "") -> tuple[Edition, tuple[Problem, ...]]:
    listed = "\n".join(f"- {run}" for run in runs)
    text = scaffold.complete(f"{front}{more}## Outlines\n\n### cloth\n{listed}\n\n{PIECES}")
    problems = Problems()
    recipe = read(Source("recipe.md", text), slug="r", folder=None, verbs=forms(), problems=problems)
    return make_edition(recipe, recipe.sizes[0], problems, unasked), problems.found()


SQUARE = ("right 30 cm (12 in) as top", "down 20 cm (8 in) as right", "left 30 cm (12 in) as bottom")


def test_corners_are_pairs_and_each_system_has_its_own():
    made, problems = edition(*SQUARE, "back to the start as left")
    assert problems == ()
    outline = made.pieces[0].outline
    assert outline is not None
    corners = [
        [edge.stretches[0].start for edge in outline[system].edges]
        for system in (System.METRIC, System.IMPERIAL)
    ]
    assert corners == [[(0, 0), (300, 0), (300, 200), (0, 200)], [(0, 0), (12, 0), (12, 8), (0, 8)]]
    assert [edge.length[System.IMPERIAL] for edge in outline.edges] == [12, 8, 12, 8]


def test_the_cut_size_is_the_box_around_the_cutting_line_rounded_up():
    """20 cm from point to point, and at each end a mitred corner that reaches √2 cm beyond it."""
    made, problems = edition(
        "right 10 cm (4 in) and down 10 cm (4 in) as a", "left 10 cm (4 in) and down 10 cm (4 in) as b",
        "left 10 cm (4 in) and up 10 cm (4 in) as c", "back to the start as d",
    )  # fmt: skip
    assert problems == ()
    width = made.pieces[0].width
    assert width is not None
    assert abs(width.metric - (200 + Fraction("28.2843"))) < Fraction(1, 1000)
    assert printed(width, System.METRIC, cut=True).text == "22.9 cm"  # 22.83 up to the next millimetre
    assert printed(width, System.IMPERIAL, cut=True).text == "9 1/16 in"  # 8 + 0.375 × 2 √2 = 9.061


def test_what_is_wrong_in_one_system_is_told_of_that_one():
    """2.5 and 3 cm are 5.5 cm, 1 and 1 1/8 in are 2 1/8; 8.9 cm agrees with 3 1/2 in as 9 cm does."""
    runs = ("right 2.5 cm (1 in) as a", "right 3 cm (1 1/8 in) and down 9 cm (3 1/2 in) as b")
    _, sound = edition(*runs, "left 5.5 cm (2 1/8 in) as c", "up 9 cm (3 1/2 in) as d")
    assert sound == ()
    _, (problem,) = edition(*runs, "left 5.5 cm (2 1/8 in) as c", "up 8.9 cm (3 1/2 in) as d")
    assert (problem.slug(), problem.systems, problem.sizes) == (
        "outline-does-not-close", ("metric",), ("One size",),
    )  # fmt: skip
    assert problem.span.text == "up 8.9 cm (3 1/2 in) as d"
    assert "it ends 1 mm down from where it began" in problem.message()


def test_a_recipe_in_one_system_need_not_close_in_the_other():
    """2.4 and 2.6 cm, and 5 cm back: carried over run by run they would be 15/16 + 1, and 2 in."""
    made, problems = edition(
        "right 2.4 cm as a", "right 2.6 cm and down 9 cm as b", "left 5 cm as c", "up 9 cm as d",
        front="---\nsystems: metric\n---\n",
    )  # fmt: skip
    assert problems == ()
    outline = made.pieces[0].outline
    assert outline is not None
    assert outline.edges[2].length[System.METRIC] == 50


def test_an_allowance_of_an_edge_takes_the_place_of_the_pieces_own():
    made, _ = edition(
        *SQUARE[:2],
        f"{SQUARE[2]}, allowance 4 cm (1 5/8 in)",
        "back to the start as left, no allowance",
    )
    piece = made.pieces[0]
    assert piece.width is not None and piece.height is not None
    assert (piece.width[System.METRIC], piece.height[System.METRIC]) == (310, 250)


def test_flags_and_places_come_along():
    made, _ = edition(*SQUARE, "back to the start as left", more="## Measures\n- seam = 1 cm (3/8 in)\n\n")
    outline = made.pieces[0].outline
    assert outline is not None
    top = outline.edges[0].length
    assert not top.rooted and [span.text for span in top.origins] == ["30 cm (12 in)"]
    arched, _ = edition(
        "right 30 cm (12 in) as top, arched by 4 cm (1 5/8 in)", *SQUARE[1:], "back to the start as left"
    )
    outline = arched.pieces[0].outline
    assert outline is not None and outline.edges[0].length.rooted


def test_a_size_has_an_outline_of_its_own():
    text = (
        "## Sizes\n| Size | side |\n|---|---|\n| Small | 10 cm (4 in) |\n| Large | 20 cm (8 in) |\n\n"
        "## Outlines\n\n### cloth\n- right side as top\n- down side as right\n- left side as bottom\n"
        f"- back to the start as left\n\n{PIECES}"
    )
    problems = Problems()
    source = Source("recipe.md", scaffold.complete(text))
    recipe = read(source, slug="r", folder=None, verbs=forms(), problems=problems)
    sizes = [make_edition(recipe, size, problems, unasked).pieces[0].width for size in recipe.sizes]
    assert [side[System.METRIC] for side in sizes if side is not None] == [120, 220]


def test_what_is_out_of_all_reach_is_told_and_not_drawn():
    far = "right 999999 m × 999999 as top"
    _, problems = edition(far, "down 9 cm (3 1/2 in) as side", "back to the start as rest")
    assert [(problem.slug(), problem.span.text) for problem in problems] == [("beyond-reckoning", far)]
