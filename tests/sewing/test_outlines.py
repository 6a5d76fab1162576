"""Sewing pieces that are cut by an outline: what meets is compared along the seam line."""

from __future__ import annotations

from fractions import Fraction

import pytest
from sewing.table import Table, sew_recipe

from presscloth.dev import scaffold
from presscloth.measure import System
from presscloth.sewing.things import Circle, Flat, Shaped

PI = Fraction("3.14159265358979323846264338327950288")

ARCH = """\
### arch
- right 10 cm (4 in) as crown, arched by 5 cm (2 in)
- down 8 cm (3 1/8 in) as right side
- left 10 cm (4 in) as foot
- back to the start as left side
"""
DISC = """\
### disc
- down 20 cm (8 in) as rim, arched with radius 10 cm (4 in)
- on the fold
"""
BIB = """\
### bib
- right 12 cm (4 3/4 in) as top
- curve right 1 cm (3/8 in) and down 12 cm (4 3/4 in) then right 4 cm (1 5/8 in) and down 8 cm (3 1/8 in) as right, leaving down, arriving down
- left to the fold as bottom
- on the fold
"""  # noqa: E501


def table(outlines: str, pieces: str, *statements: str) -> Table:
    """Pieces as `name | cut | width | height | shape` on a line."""
    rows = [
        f"| {name} | A | {rest} |" for name, _, rest in (line.partition(" | ") for line in pieces.split("\n"))
    ]
    head = "| Piece | From | Cut | Width | Height | Shape |\n|---|---|---|---|---|---|"
    steps = "\n\n".join(f"{i}. So.\n\n   ```sew\n   {each}\n   ```" for i, each in enumerate(statements, 1))
    table_of = "\n".join([head, *rows])
    text = f"## Outlines\n\n{outlines}\n\n## Pieces\n\n{table_of}\n\n## Steps\n\n{steps}\n"
    return sew_recipe(scaffold.complete(text))


def shape(made: Table, name: str) -> object:
    stood = made.made.at(name, 0)
    assert stood is not None and stood.thing is not None
    return stood.thing.shape


# -- what a piece is -----------------------------------------------------------------------------


def test_an_outline_of_one_circle_is_round():
    """20 cm and two seams of 1 cm; 8 in and two of 3/8 in."""
    made = table(DISC, "base | 1 |  |  | outline disc", "finish base")
    assert isinstance(shape(made, "base"), Circle)
    assert (made.mm("width of base"), made.inches("width of base")) == (220, Fraction(35, 4))
    assert abs(made.mm("finished around of base") - 200 * PI) < Fraction(1, 10**20)


def test_an_outline_with_the_four_sides_is_flat_and_has_its_true_size():
    """The sides are curved and longer than the piece is high: 20 cm and two seams."""
    made = table(BIB, "bib | 1 |  |  | outline", "finish bib")
    assert isinstance(shape(made, "bib"), Flat)
    assert (made.mm("width of bib"), made.mm("height of bib")) == (360, 220)
    assert (made.mm("finished width of bib"), made.mm("finished height of bib")) == (340, 200)
    assert made.mm("top of bib") == 260 and made.mm("finished top of bib") == 240
    assert 207 < made.mm("finished left of bib") < 215
    assert made.mm("left of bib") == made.mm("right of bib")


def test_other_edges_have_the_names_that_the_author_gave_them():
    made = table(ARCH, "arch | 1 |  |  | outline", "finish arch")
    assert isinstance(shape(made, "arch"), Shaped)
    assert abs(made.mm("crown of arch") - 50 * PI) < Fraction(1, 10**20)
    assert (made.mm("foot of arch"), made.inches("foot of arch")) == (100, 4)
    assert (made.mm("width of arch"), made.mm("height of arch")) == (120, 150)
    assert (made.mm("finished width of arch"), made.mm("finished height of arch")) == (100, 130)
    assert abs(made.mm("around of arch") - (260 + 50 * PI)) < Fraction(1, 10**20)


def test_measures_may_speak_of_an_edge_by_its_name():
    made = table(
        ARCH, "arch | 1 |  |  | outline\nstrip | 1 | crown of arch + 2 × seam | 5 cm (2 in) |",
        "band = join crown of arch to top of strip", "hem all of band by 4 mm (1/8 in)", "finish band",
    )  # fmt: skip
    assert [p for p in made.names if p != "paper-opens"] == []
    assert abs(made.mm("width of strip") - (20 + 50 * PI)) < Fraction(1, 1000)


# -- seams ---------------------------------------------------------------------------------------


def test_a_curved_edge_meets_a_straight_strip_of_the_same_length():
    """Half a circle of 10 cm is 157.08 mm: a strip of 15.7 cm and two seams misses it by less than 0.1 mm."""
    made = table(
        ARCH, "arch | 1 |  |  | outline\nstrip | 1 | 17.8 cm (7 in) | 5 cm (2 in) |",
        "band = join crown of arch to top of strip", "hem all of band by 4 mm (1/8 in)", "finish band",
    )  # fmt: skip
    first = made.first
    assert first.slug() == "edges-do-not-meet"
    assert "crown of `arch` is 15.7 cm (6 1/4 in)" in first.message()
    assert "top of `strip` is 15.8 cm (6 1/4 in)" in first.message()


def test_two_curved_edges_are_compared_on_the_seam_line():
    """Two arches of one rise meet, of another they do not, though both are cut 12 cm wide."""
    other = ARCH.replace("### arch", "### low").replace("arched by 5 cm (2 in)", "arched by 3 cm (1 1/8 in)")
    made = table(
        f"{ARCH}\n{other}", "arch | 1 |  |  | outline\nlow | 1 |  |  | outline",
        "cap = join crown of arch to crown of low", "hem all of cap by 4 mm (1/8 in)", "finish cap",
    )  # fmt: skip
    assert made.names[0] == "edges-do-not-meet"
    # 2 r asin(c / 2 r) with r = 100²/240 + 15 = 56.67: 122.5 mm against 157.1 mm.
    assert "12.2 cm" in made.first.message() and "15.7 cm" in made.first.message()


def test_what_is_joined_keeps_its_other_edges():
    made = table(
        ARCH, "arch | 2 |  |  | outline", "pair = join crown of arch to crown of arch",
        "hem all of pair by 4 mm (1/8 in)", "finish pair",
    )  # fmt: skip
    assert made.problems == ()
    stood = made.made.at("pair", None)
    assert stood is not None and stood.thing is not None and isinstance(stood.thing.shape, Shaped)
    edges = ["right side", "foot", "left side", "arch right side", "arch foot", "arch left side"]
    assert list(stood.thing.shape.edges) == edges


def test_pieces_of_one_outline_make_a_pouch_that_is_open_where_it_is_not_sewn():
    made = table(
        ARCH, "arch | 2 |  |  | outline",
        "bag = join arch to arch on crown, right side, left side", "hem foot of bag by 4 mm (1/8 in)",
        "finish bag",
    )  # fmt: skip
    assert made.problems == ()
    assert (made.mm("width of bag"), made.mm("around of bag")) == (100, 200)


def test_pieces_of_one_outline_are_bagged_out():
    made = table(
        ARCH, "arch | 2 |  |  | outline", "flap = bag out arch with arch, foot open",
        "hem foot of flap by 4 mm (1/8 in)", "finish flap",
    )  # fmt: skip
    assert made.problems == ()
    assert (made.mm("width of flap", 1), made.mm("height of flap", 1)) == (100, 130)


def test_a_raw_edge_of_an_outline_is_questioned_by_its_name():
    made = table(
        ARCH,
        "arch | 2 |  |  | outline",
        "bag = join arch to arch on crown, right side, left side",
        "finish bag",
    )
    assert made.names == ["raw-edge-shows"]
    assert "foot" in made.first.message()


@pytest.mark.parametrize(
    ("girth", "problems"),
    [
        # Seam lines all round: 260 + 50 π = 417.08 mm; 10 1/4 + 2 π in = 16.533 in; two seams more.
        ("2 × seam + around of arch", []),
        ("44.7 cm (17 5/8 in)", ["edges-do-not-meet"]),
    ],
)
def test_an_outline_is_set_into_a_tube_by_its_seam_lines_all_round(girth, problems):
    made = table(
        ARCH, f"arch | 2 |  |  | outline\nband | 1 | {girth} | 8 cm (3 1/8 in) |",
        "ring = join left of band to right of band", "bowl = set arch into top of ring",
        "box = set arch into bottom of bowl", "finish box",
    )  # fmt: skip
    assert sorted(set(made.names) - {"paper-opens"}) == problems
    if not problems:
        assert (made.mm("width of box"), made.mm("depth of box"), made.mm("height of box")) == (100, 130, 60)


def test_a_shaped_bib_is_gathered_and_joined_as_a_rectangle_is():
    pieces = "bib | 1 |  |  | outline\nband | 1 | 20 cm (8 in) | 6 cm (2 3/8 in) |"
    made = table(
        BIB, f"{pieces}\nwaist | 1 | 34 cm (13 1/2 in) + 2 × seam | 6 cm (2 3/8 in) |",
        "upper = gather top of bib to bottom of band", "whole = join bottom of upper to top of waist",
        "hem all of whole by 4 mm (1/8 in)", "finish whole",
    )  # fmt: skip
    assert made.problems == ()
    # Band, bib and waist less two seams: 60 + 220 + 60 - 40, and the hems.
    assert made.mm("height of whole") == 300 - 8


def test_what_curves_are_longer_does_not_make_a_thing_higher():
    made = table(
        BIB, "bib | 2 |  |  | outline", "whole = join bottom of bib to bottom of bib",
        "hem all of whole by 4 mm (1/8 in)", "finish whole",
    )  # fmt: skip
    assert made.problems == ()
    assert made.mm("height of whole", 1) == 2 * 220 - 20
    assert made.mm("left of whole", 1) > 2 * 220


def test_an_outline_that_is_hemmed_all_round_is_smaller_by_two_hems():
    made = table(ARCH, "arch | 1 |  |  | outline", "hem all of arch by 1 cm (3/8 in)", "finish arch")
    assert made.problems == ()
    assert (made.mm("width of arch"), made.mm("height of arch")) == (100, 130)


def test_both_systems_have_lengths_of_their_own():
    made = table(DISC, "base | 1 |  |  | outline disc", "finish base")
    around = made.quantity("finished around of base")
    assert abs(around[System.IMPERIAL] - 8 * PI) < Fraction(1, 10**20)
    assert around[System.METRIC] != around[System.IMPERIAL] * Fraction(254, 10)


@pytest.mark.parametrize(
    ("wide", "problems"), [("25 cm (10 in)", []), ("17 cm (6 3/4 in)", ["fullness-unusual"])]
)
def test_a_frill_is_gathered_to_a_curve_by_the_length_of_its_seam_line(wide, problems):
    """15.7 cm of curve: a frill of 23 cm at its stitch line is 1.5 times as long, one of 15 cm is shorter."""
    made = table(
        ARCH, f"arch | 1 |  |  | outline\nfrill | 1 | {wide} | 5 cm (2 in) |",
        "cap = gather top of frill to crown of arch", "hem all of cap by 4 mm (1/8 in)", "finish cap",
    )  # fmt: skip
    assert made.names == problems
    stood = made.made.at("cap", 1)
    assert stood is not None and stood.thing is not None and isinstance(stood.thing.shape, Shaped)
    assert "crown" not in stood.thing.shape.edges and "bottom" in stood.thing.shape.edges
