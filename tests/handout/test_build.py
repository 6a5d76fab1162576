"""A whole handout: what it says in each size."""

from __future__ import annotations

from presscloth.handout.tree import Booklet, Paragraph
from presscloth.printing.text import text


def test_sizes_in_order(pouch: Booklet) -> None:
    assert [handout.size for handout in pouch.handouts] == ["Child", "Adult"]
    assert [handout.sewn for handout in pouch.handouts] == [False, True]
    assert [handout.audience for handout in pouch.handouts] == ["child", "adult"]
    assert all(handout.proved for handout in pouch.handouts)


def test_finished_size_is_that_of_the_construction(pouch: Booklet) -> None:
    """15 cm are boxed to 5: 10 cm wide, and half of the 5 is lost in height; imperial by itself."""
    ((child,), (adult,)) = (handout.finished for handout in pouch.handouts)
    assert [(word, side.text) for word, side in child.sides] == [
        ("width", "10 cm (4 in)"),
        ("depth", "5 cm (2 in)"),
        # 15 + 4 allowances - bottom seam - two turns - half of the base.
        ("height", "13.5 cm (5 3/8 in)"),
    ]
    assert adult.sides[0][1].text == "15 cm (6 in)"


def test_the_cutting_list(pouch: Booklet) -> None:
    child, adult = (handout.cutting for handout in pouch.handouts)
    assert [line.piece for line in child] == ["panel", "cord", "button"]
    assert [line.piece for line in adult] == ["panel", "tab", "cord", "button"]
    panel, cord, button = child
    assert [(word, side.text) for word, side in panel.sides] == [
        ("width", "17 cm (6 3/4 in)"),
        ("height", "19 cm (7 1/2 in)"),
    ]
    assert panel.number == 2 and panel.measure_first
    assert [(word, side.text) for word, side in cord.sides] == [("length", "30 cm (12 in)")]
    assert button.sides == () and button.belongs == "optional"
    assert panel.belongs == ""


def test_steps_keep_their_numbers_and_say_what_is_left_out(pouch: Booklet) -> None:
    child, adult = (handout.stages[0].steps for handout in pouch.handouts)
    assert [(step.number, step.elsewhere) for step in child] == [
        (1, ""),
        (2, ""),
        (3, "Adult only"),
        (4, ""),
        (5, ""),
    ]
    assert all(step.elsewhere == "" for step in adult)


def test_marks(pouch: Booklet) -> None:
    steps = pouch.first.stages[0].steps
    assert steps[0].marks.at == "4:15"
    assert steps[0].marks.at_link == "https://tidewrack.example/jetty-pouch#t=255"
    assert steps[1].marks.care and not steps[0].marks.care
    assert steps[3].marks.optional


def test_prose_prints_what_the_step_made(pouch: Booklet) -> None:
    first = pouch.first.stages[0].steps[0].content[0]
    assert isinstance(first, Paragraph)
    whole = text(pouch.first)
    assert "Sew the panels together on three sides with 1 cm (3/8 in) seams: 15 cm (6 in) wide." in " ".join(
        whole.split()
    )


def test_cautions_defer_and_speak_of_cords_for_a_child_only(pouch: Booklet) -> None:
    child, adult = (handout.cautions for handout in pouch.handouts)
    assert [caution.about for caution in adult] == ["Local rules", "Blades", "Irons", "Machines"]
    assert [caution.about for caution in child] == [
        "Local rules",
        "Blades",
        "Irons",
        "Machines",
        "Cords and ties",
        "Small parts",
    ]
    assert "comes first" in adult[0].text or "come first" in adult[0].text


def test_materials_with_quantities(pouch: Booklet) -> None:
    canvas, cord, button = pouch.first.materials
    assert canvas.quantity is not None and canvas.quantity.text == "20 cm (1/4 yd)"
    assert canvas.verdict == "least that can be bought"
    # The longest choice must be enough.
    assert cord.quantity is not None and cord.quantity.text in ("30 cm (3/8 yd)", "60 cm (3/4 yd)")
    assert button.optional and button.quantity is not None and button.quantity.text == "1"
