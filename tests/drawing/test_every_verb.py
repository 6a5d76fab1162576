"""Every verb of the language, carried out as the chapter on verbs shows it, is drawn with its sizes."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from spec.notation import examples
from spec.running import run

from presscloth.drawing.deeds import Deed
from presscloth.drawing.dimensions import LETTERS
from presscloth.drawing.panels import WIDEST
from presscloth.drawing.steps import draw_step, draw_together
from presscloth.drawing.tree import Area, Drawing, Ink, Lettering, Line
from presscloth.edition import statements
from presscloth.handout.wording import systems_of
from presscloth.measure import System
from presscloth.pipeline import Proved
from presscloth.recipe.patterns import spoken
from presscloth.sewing.verbs import VERBS

CHAPTER = Path(__file__).parents[1] / "spec" / "12-verbs.md"
SHOWN = tuple(examples(CHAPTER))
PATTERNS = [(verb.name, pattern) for verb in VERBS for pattern in verb.patterns]
BOTH = (System.METRIC, System.IMPERIAL)

MEASURE = re.compile(r"\d (cm|mm|g)\b.*\d in|\d (g|mm)\b")


@pytest.fixture(scope="module")
def carried_out(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Proved]:
    return {one.name: run(one, tmp_path_factory.mktemp("chapter")) for one in SHOWN}


def deeds_of(proved: Proved) -> list[Deed]:
    assert proved.recipe is not None
    construction = proved.sizes[0].construction
    systems = tuple(systems_of(proved.recipe))
    return [Deed(event, construction.reckoned.amounts, systems) for event in construction.events]


def ways_in(proved: Proved) -> set[tuple[str, str]]:
    assert proved.recipe is not None
    parts = [part for step in proved.recipe.steps for part in step.parts]
    return {
        (found.verb, found.pattern)
        for part in parts
        for found in statements(part.content)
        if hasattr(found, "pattern")
    }


@pytest.mark.parametrize("verb", VERBS, ids=lambda verb: verb.name)
def test_has_an_example_that_passes_and_one_that_fails(verb, carried_out: dict[str, Proved]) -> None:
    passing = {v for one in SHOWN if not one.fails for v, _ in ways_in(carried_out[one.name])}
    failing = {v for one in SHOWN if one.fails for v, _ in ways_in(carried_out[one.name])}
    assert verb.name in passing
    assert verb.name in failing


@pytest.mark.parametrize("verb", VERBS, ids=lambda verb: verb.name)
def test_has_a_heading_of_its_own(verb) -> None:
    assert f"\n## {verb.name}\n" in CHAPTER.read_text("utf-8")


@pytest.mark.parametrize("verb", VERBS, ids=lambda verb: verb.name)
def test_is_drawn_with_its_sizes(verb, carried_out: dict[str, Proved]) -> None:
    found = [
        draw_together([deed])
        for one in SHOWN
        if not one.fails
        for deed in deeds_of(carried_out[one.name])
        if deed.verb == verb.name
    ]
    assert found
    for drawing in found:
        assert drawing is not None
        hold(drawing)


def hold(drawing: Drawing) -> None:
    """It shows something, names sizes in its alt text, and can be read at the size at which it prints."""
    assert any(isinstance(shape, (Area, Line)) for shape in drawing.shapes)
    words = [shape for shape in drawing.shapes if isinstance(shape, Lettering)]
    assert words and min(shape.size for shape in words) >= LETTERS
    assert MEASURE.search(drawing.alt), drawing.alt
    assert drawing.width <= WIDEST + 1, "it would be made smaller on the page, its letters too"
    for shape in drawing.shapes:
        points = shape.points if isinstance(shape, (Area, Line)) else ()
        assert all(-0.01 <= x <= drawing.width and -0.01 <= y <= drawing.height for x, y in points)


@pytest.mark.parametrize(("verb", "pattern"), PATTERNS, ids=lambda words: spoken(words)[:40])
def test_every_way_of_writing_it_is_shown(verb: str, pattern: str, carried_out: dict[str, Proved]) -> None:
    assert any((verb, pattern) in ways_in(carried_out[one.name]) for one in SHOWN if not one.fails)


# What some of them say and show, in numbers.


def drawn(carried_out: dict[str, Proved], verb: str, which: int = 0) -> Drawing:
    found = [
        draw_together([deed])
        for one in SHOWN
        if not one.fails
        for deed in deeds_of(carried_out[one.name])
        if deed.verb == verb
    ]
    drawing = found[which]
    assert drawing is not None
    return drawing


@pytest.mark.parametrize(
    ("verb", "alt"),
    [
        ("gather", "frill gathered from 60 cm (24 in) to 30 cm (12 in) of panel, 2 times as long."),
        (
            "bind",
            "Bound at left, right, top and bottom of mat: 2 strip, 100 cm (39 3/8 in) × 5.7 cm (2 1/4 in); "
            "1 cm (3/8 in) of it is seen. mat measures 30 cm (12 in) × 30 cm (12 in) now.",
        ),
        (
            # 5.7 cm less the seam of 1 cm is turned to the wrong side.
            "face",
            "Faced at top of mat: 1 facing, 30 cm (12 in) × 5.7 cm (2 1/4 in), with a seam of 1 cm (3/8 in). "
            "mat measures 30 cm (12 in) × 29 cm (11 5/8 in) now.",
        ),
        (
            # (10 − 2 × 1) / 2 = 4 cm; (4 − 3/4) / 2 = 1 5/8 in.
            "band",
            "Band at top of apron: 4 cm (1 5/8 in) of it is seen. apron measures 28 cm (11 1/4 in) × 32 cm "
            "(12 7/8 in) now.",
        ),
        (
            "trim",
            "sandwich, 40 cm (16 in) × 40 cm (16 in), trimmed to 30 cm (12 in) × 30 cm (12 in): 5 cm (2 in) "
            "falls off at left and right, 5 cm (2 in) at top and bottom.",
        ),
        (
            "cut",
            "6 segment, 10 cm (4 in) × 8.8 cm (3 1/2 in), cut from 1 band, 60 cm (24 in) × 8.8 cm "
            "(3 1/2 in).",
        ),
        (
            "box",
            "bag with boxed corners: 28 cm (11 1/4 in) × 24 cm (9 5/8 in) × 10 cm (4 in). The seam across "
            "each is 10 cm (4 in) long, 5 cm (2 in) from the tip.",
        ),
        (
            "stitch out",
            "A design of 9 cm (3 1/2 in) by 9 cm (3 1/2 in) in the middle of a field of 100 mm (3 15/16 in) "
            "by 100 mm (3 15/16 in). panel measures 30 cm (12 in) × 30 cm (12 in) now.",
        ),
    ],
)
def test_the_words_that_stand_for_it(verb: str, alt: str, carried_out: dict[str, Proved]) -> None:
    assert drawn(carried_out, verb).alt == alt


def test_what_is_cut_off_is_hatched_to_scale(carried_out: dict[str, Proved]) -> None:
    before, after = (
        shape for shape in drawn(carried_out, "trim").shapes if isinstance(shape, Area)
    )  # 40 cm is trimmed to 30 cm
    assert before.ink is Ink.WASTE
    wide = [max(x for x, _ in area.points) - min(x for x, _ in area.points) for area in (before, after)]
    assert wide[1] / wide[0] == pytest.approx(3 / 4)


def test_a_hem_is_drawn_along_its_edges_and_from_the_side(carried_out: dict[str, Proved]) -> None:
    proved = next(
        carried_out[one.name] for one in SHOWN if not one.fails and "1 cm (3/8 in), then" in one.text
    )
    (drawing, *_) = draw_step(
        proved.sizes[0].construction.events, proved.sizes[0].construction.reckoned.amounts, BOTH
    )
    assert drawing.alt.startswith(
        "Hem at left and right of cloth: turned under by 1 cm (3/8 in). "
        "Hem at top and bottom of cloth: turned under by 1 cm (3/8 in), then by 2.5 cm (1 in)."
    )
    words = [shape.text for shape in drawing.shapes if isinstance(shape, Lettering)]
    # Two edges from the side, each with what is turned.
    assert words.count("from the side") == 2
    assert words.count("1 cm (3/8 in)") == 2 and words.count("2.5 cm (1 in)") == 1


def test_a_thing_is_drawn_once_with_all_that_a_step_does_to_it(carried_out: dict[str, Proved]) -> None:
    proved = next(carried_out[one.name] for one in SHOWN if not one.fails and "fuse backing" in one.text)
    construction = proved.sizes[0].construction
    drawings = draw_step(construction.events, construction.reckoned.amounts, BOTH)
    # Fused, hemmed and finished: one picture of one panel.
    assert len(drawings) == 1
    assert "Fused to panel: 1 backing, 20 cm (8 in) × 20 cm (8 in)." in drawings[0].alt
    assert "Hem at left, right, top and bottom of panel" in drawings[0].alt
