"""Putting runs together: closing, halves, names of edges, and what cannot be."""

from __future__ import annotations

from fractions import Fraction

import pytest
from outline.runs import DOWN, LEFT, drafted, lengths, rectangle, run

from presscloth.measure import System
from presscloth.outline import Closing, draft, seam_line
from presscloth.outline.drafting import (
    ArcCannotBe,
    DoesNotClose,
    EdgeInPieces,
    FoldAslant,
    GoesNowhere,
    NotchOutside,
)

BIB = (
    run("top", (120, 0), notches=(None,)),
    run("side", (10, 60), (40, 60), curved=True, leaving=DOWN, notches=(30,)),
    run("hip", (0, 80)),
    run("bottom", to_fold=LEFT),
)


def test_runs_follow_each_other_from_the_start_and_close():
    assert lengths(rectangle(120, 80)) == {"top": 120, "right": 80, "bottom": 120, "left": 80}


def test_runs_may_go_round_either_way():
    """Down first and then to the right: the same piece, its edges told clockwise."""
    other = drafted(run("left", (0, 80)), run("bottom", (120, 0)), run("right", (0, -80)), run("top"))
    assert [edge.name for edge in other.edges] == ["top", "right", "bottom", "left"]
    assert lengths(other) == lengths(rectangle(120, 80))


@pytest.mark.parametrize("way", [1, -1])
def test_arched_is_outwards_whichever_way_the_runs_go(way):
    cloth = drafted(
        run("top", (way * 100, 0), arched=20),
        run("side", (0, 100)),
        run("bottom", (-way * 100, 0)),
        run("other"),
    )
    top = next(edge for edge in cloth.edges if edge.name == "top")
    assert min(y for _, y in seam_line(top, System.METRIC)) == pytest.approx(-20)


def test_hollowed_is_inwards():
    cloth = drafted(
        run("top", (100, 0), hollowed=20), run("right", (0, 100)), run("bottom", (-100, 0)), run("left")
    )
    assert max(y for _, y in seam_line(cloth.edges[0], System.METRIC)) == pytest.approx(20)


def test_an_edge_on_the_fold_goes_on_beyond_it_and_others_are_there_twice():
    bib = drafted(*BIB, closing=Closing.FOLD)
    assert [edge.name for edge in bib.edges] == [
        "top", "right side", "right hip", "bottom", "left hip", "left side",
    ]  # fmt: skip
    half = {edge.name: edge.length for edge in bib.drawn}
    whole = {edge.name: edge.length for edge in bib.edges}
    assert whole["top"] == 2 * half["top"] == 240
    assert whole["bottom"] == 2 * half["bottom"] == 340
    assert whole["left side"] == whole["right side"] == half["side"]


def test_names_that_say_their_side_change_it():
    bib = drafted(
        run("top", (100, 0)), run("right", (20, 90)), run("bottom", to_fold=LEFT), closing=Closing.MIRRORED
    )
    assert [edge.name for edge in bib.edges] == ["top", "right", "bottom", "left"]


def test_a_level_fold_has_an_upper_and_a_lower_half():
    leaf = drafted(run("tip", (0, -40)), run("side", (100, 0)), run("end", (0, 40)), closing=Closing.MIRRORED)
    assert [edge.name for edge in leaf.edges] == ["tip", "upper side", "end", "lower side"]
    assert lengths(leaf)["tip"] == 80


def test_both_halves_are_alike():
    """Every point of the one half lies in the other, at the same distance from the fold."""
    bib = drafted(*BIB, closing=Closing.FOLD)
    points = {name: seam_line(edge, System.METRIC) for name, edge in ((e.name, e) for e in bib.edges)}
    right = sorted((round(x, 6), round(y, 6)) for x, y in points["right side"])
    left = sorted((round(-x, 6), round(y, 6)) for x, y in points["left side"])
    assert left == right


def test_notches_are_measured_from_the_start_of_their_run_and_mirrored():
    bib = {edge.name: edge for edge in drafted(*BIB, closing=Closing.FOLD).edges}
    assert bib["right side"].notches == (30,)
    assert bib["left side"].notches == (bib["left side"].length - 30,)
    assert bib["top"].notches == (60, 180)


def test_a_closed_gap_of_less_than_a_thousandth_of_a_millimetre_is_none():
    near = Fraction(3, 10000)
    found = draft(
        (run("top", (100, 0)), run("right", (0, 50)), run("left", (-100 + near, -50))),
        Closing.ROUND,
        System.METRIC,
    )
    assert not isinstance(found, DoesNotClose)
    assert found.edges[-1].stretches[-1].end == (0, 0)


@pytest.mark.parametrize(
    ("runs", "closing", "fault"),
    [
        (
            (run("top", (100, 0)), run("right", (0, 50)), run("bottom", (-99, 0)), run("left", (0, -50))),
            Closing.ROUND,
            DoesNotClose(Fraction(1), Fraction(0)),
        ),
        (
            (run("top", (100, 0)), run("right", (0, 50)), run("bottom", (-98, 0))),
            Closing.FOLD,
            FoldAslant(Fraction(2), Fraction(50)),
        ),
        ((run("top", (100, 0), arched="50.1"), run("back")), Closing.ROUND, ArcCannotBe(0, Fraction(100))),
        (
            (run("top", (100, 0), arched=0, radius="49.9"), run("back")),
            Closing.ROUND,
            ArcCannotBe(0, Fraction(100)),
        ),
        ((run("top", (100, 0)), run("spot", (0, 0)), run("back")), Closing.ROUND, GoesNowhere(1)),
        (
            (run("top", (100, 0)), run("right", (0, 50), notches=(51,)), run("back")),
            Closing.ROUND,
            NotchOutside(1, Fraction(50)),
        ),
        (
            (run("rim", (100, 0)), run("right", (0, 50)), run("rim", (-100, 0)), run("left")),
            Closing.ROUND,
            EdgeInPieces("rim"),
        ),
    ],
)
def test_what_cannot_be_is_told(runs, closing, fault):
    assert draft(runs, closing, System.METRIC) == fault


def test_half_a_circle_is_the_widest_arc():
    disc = drafted(run("upper", (100, 0), arched=50), run("lower", (-100, 0), arched=50))
    assert lengths(disc)["upper"] == pytest.approx(157.0796326794897)


def test_a_level_run_to_the_fold_ends_below_the_start():
    half = drafted(
        run("top", (70, 0)), run("right", (13, 90)), run("bottom", to_fold=LEFT), closing=Closing.FOLD
    )
    assert half.fold == ((0, 0), (0, 90))


@pytest.mark.parametrize(
    ("runs", "sides"),
    [
        ((("top", -100, 0), ("side", -20, 90), (1, 0)), ("left side", "right side")),
        ((("bottom", -120, 0), ("side", 20, -90), (1, 0)), ("left side", "right side")),
        ((("bottom", 120, 0), ("side", -20, -90), (-1, 0)), ("right side", "left side")),
        ((("start", 0, -40), ("side", 100, 0), (0, 1)), ("upper side", "lower side")),
        ((("start", 0, 40), ("side", 100, 0), (0, -1)), ("lower side", "upper side")),
        ((("start", 0, -40), ("side", -100, 0), (0, 1)), ("upper side", "lower side")),
    ],
)
def test_the_half_that_is_drawn_is_called_by_where_it_lies(runs, sides):
    """To the left or the right of an upright fold, above or below a level one, whichever way it goes."""
    (first, x, y), (second, to_x, to_y), fold = runs
    half = drafted(
        run(first, (x, y)), run(second, (to_x, to_y)), run("end", to_fold=fold), closing=Closing.FOLD
    )
    drawn = next(edge for edge in half.drawn if edge.name == "side")
    whole = {edge.name: edge for edge in half.edges}
    own, other = sides
    assert whole[own].stretches == drawn.stretches
    assert other in whole and whole[other].length == drawn.length
