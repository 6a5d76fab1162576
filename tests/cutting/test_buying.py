"""What is bought, of every form: hand-worked numbers in both systems."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from cutting.shopping import only, proved

from presscloth.cutting.buying import Purchase, _distinct
from presscloth.cutting.chosen import reaches
from presscloth.cutting.demand import demands
from presscloth.cutting.strip_list import CutStrips, strips_of
from presscloth.cutting.workshop import Workshop
from presscloth.drawing.tree import Drawing
from presscloth.handout.bought import layout_rows, longest_words
from presscloth.handout.tree import Amount, Text
from presscloth.measure import System

METRIC, IMPERIAL = System.METRIC, System.IMPERIAL
COTTON = "A | Cotton | fabric | 110 cm (43 in) |  | 10 cm (1/8 yd) | {}"


def bought(materials: str, pieces: str, key: str = "A", **more: str) -> Purchase:
    return only(materials, pieces, **more).buying.purchases[key]


def amounts(purchase: Purchase) -> tuple[Fraction, Fraction]:
    return purchase.by_system[METRIC].buy, purchase.by_system[IMPERIAL].buy


def test_each_system_by_itself() -> None:
    """Three across in metric (108 cm), two in imperial (3 × 14 1/2 = 43 1/2 in): one row, and two."""
    purchase = bought(COTTON.format(""), "tile | A | 3 | 36 cm (14 1/2 in) | 30 cm (12 in)")
    assert purchase.by_system[METRIC].need == 300
    assert purchase.by_system[IMPERIAL].need == 24
    assert amounts(purchase) == (300, 27)


def test_all_are_proved_and_bounded() -> None:
    purchase = bought(COTTON.format(""), "tile | A | 6 | 36 cm (14 in) | 31 cm (12 in)")
    for system in System:
        found = purchase.by_system[system]
        assert found.proved and found.bound <= found.need <= found.buy
    assert purchase.by_system[METRIC].buy == 700


def test_a_piece_as_wide_as_its_cloth_fits_as_both_are_printed() -> None:
    """A third of 121 3/8 in is 40.458 in, printed 40 1/2 in: so is the cloth, and the piece lies on it."""
    size = only(
        "A | Cotton | fabric | span / 3 |  | 10 cm (1/8 yd) |",
        "cloth | A | 1 | span / 3 | 50 cm (20 in)",
        measures="- span = 308.4 cm (121 3/8 in)",
    )
    assert size.buying.purchases["A"].by_system[IMPERIAL].need == 20


def test_shrinking_cloth_is_laid_out_as_it_is_after_washing() -> None:
    """10 % less of 110 cm are 99: only two of 36 cm lie side by side. 62 cm washed are 68.9 cm bought."""
    purchase = bought(COTTON.format("shrinks 10 %"), "tile | A | 4 | 36 cm (14 in) | 31 cm (12 in)")
    assert purchase.by_system[METRIC].need == Fraction(6200, 9)
    assert purchase.by_system[METRIC].need / 10 == pytest.approx(68.9, abs=0.05)
    assert purchase.by_system[METRIC].buy == 700


def test_one_way_cloth_turns_nothing() -> None:
    pieces = "strip | A | 1 | 20 cm (8 in) | 100 cm (40 in) |  |  | any grain"
    assert bought(COTTON.format(""), pieces).by_system[METRIC].need == 200
    assert bought(COTTON.format("one way"), pieces).by_system[METRIC].need == 1000


def test_half_square_triangles_nest_by_twos_and_quarter_squares_by_fours() -> None:
    """Seven halves take four squares, five quarters two: six squares of 22 cm, five in a row."""
    pieces = (
        "fin | A | 7 | 22 cm (8 3/4 in) |  | half-square triangle\n"
        "kite | A | 5 | 22 cm (8 3/4 in) |  | quarter-square triangle"
    )
    assert bought(COTTON.format(""), pieces).by_system[METRIC].need == 440


def test_spare_pieces_are_among_those_that_are_cut() -> None:
    pieces = "tile | A | 4 | 50 cm (20 in) | 30 cm (12 in) |  |  | spare 1"
    assert bought(COTTON.format(""), pieces).by_system[METRIC].need == 600


def test_circles_lie_closer_than_the_squares_around_them() -> None:
    """Nine circles of 30 cm in staggered rows; squares would take three rows of three, 90 cm.

    On 100 cm there is room for three and a half: rows stand 25.98 cm apart, three rows end at 81.96.
    """
    cloth = "A | Felt | fabric | 105 cm (41 in) |  | 1 cm (1/2 in) |"
    metric = bought(cloth, "disc | A | 9 | 30 cm (11 3/4 in) |  | circle").by_system[METRIC]
    assert 819 < metric.need < 880
    # Three rows of circles can do no better than their area, and that is what is claimed.
    assert not metric.proved
    assert metric.bound < metric.need <= metric.buy
    assert metric.bound * 1050 >= Fraction(333, 106) * 150 * 150 * 9 * Fraction(99, 100)


def test_bias_strips_lie_beside_each_other() -> None:
    """A strip of 6 × 60 cm at 45° takes (6 + 60) / √2 = 46.7 cm along; the next 6√2 = 8.5 cm more."""
    pieces = "strip | A | 4 | 6 cm (2 3/8 in) | 60 cm (24 in) |  | bias"
    found = bought(COTTON.format(""), pieces).by_system[METRIC]
    assert 466 < found.need < 600


def test_fat_quarters_are_bought_whole() -> None:
    """Squares of 11.5 cm: four by four on 46 × 55 cm, seventeen take a second one."""
    sheet = "A | Prints | fat quarter | 55 cm (22 in) | 46 cm (18 in) |  |"
    assert amounts(bought(sheet, "patch | A | 16 | 11.5 cm (4 1/2 in) | 11.5 cm (4 1/2 in)")) == (1, 1)
    assert amounts(bought(sheet, "patch | A | 17 | 11.5 cm (4 1/2 in) | 11.5 cm (4 1/2 in)")) == (2, 2)


def test_tape_in_whole_lengths_is_cut_from_each_unless_it_may_be_joined() -> None:
    """Three pieces of 60 cm from lengths of 1 m: one from each, or joined 1.8 m from two."""
    tape = "A | Bias tape | tape |  | 1 m (40 in) | 1 | {}"
    pieces = "edge | A | 3 |  | 60 cm (24 in)"
    apart = bought(tape.format(""), pieces)
    assert amounts(apart) == (3, 3)
    assert all(apart.by_system[system].proved for system in System)
    assert amounts(bought(tape.format("joins allowed"), pieces)) == (2, 2)


def test_tape_off_the_roll_by_its_length_in_all() -> None:
    tape = "A | Webbing | tape |  |  | 50 cm (1/2 yd) |"
    assert amounts(bought(tape, "strap | A | 2 |  | 60 cm (24 in)")) == (1500, 54)


def test_zips_one_by_one_in_the_next_length() -> None:
    purchase = bought("A | Zip | zip |  |  | 5 cm (1 in) |", "zip | A | 2 |  | 32 cm (12 1/2 in)")
    assert purchase.by_system[METRIC].lengths == (350, 350)
    assert purchase.by_system[IMPERIAL].lengths == (13, 13)


def test_notions_in_their_packs() -> None:
    assert amounts(bought("A | Ring | notion |  |  | 4 |", "ring | A | 6")) == (8, 8)


SEW = """\
1. Sew.

   ```sew
   mat = join right of one to left of other
   ```
"""


def test_thread_by_the_seams_of_the_construction() -> None:
    """A stitch line of 40 less two allowances, 38 cm (15 1/4 in), 2.5 times and 15 % for waste."""
    materials = COTTON.format("") + "\nB | Thread | thread |  |  |  |"
    pieces = "one | A | 1 | 30 cm (12 in) | 40 cm (16 in)\nother | A | 1 | 30 cm (12 in) | 40 cm (16 in)"
    steps = SEW + "\n2. Hem.\n\n   ```sew\n   finish mat\n   ```\n"
    thread = bought(materials, pieces, "B", steps=steps, measures="- seam = 1 cm (3/8 in)").by_system
    assert thread[METRIC].need == 380 * Fraction(5, 2) * Fraction(115, 100)
    assert thread[IMPERIAL].need == Fraction(61, 4) * Fraction(5, 2) * Fraction(115, 100)
    assert (thread[METRIC].buy, thread[IMPERIAL].buy) == (2000, 72)  # by the metre, by the yard


OPTIONAL = """\
1. Hem the cloth.

   ```sew
   hem all of cloth by 1 cm (3/8 in) twice
   ```

2. Optional: Add the pocket.

   ```sew
   hem all of pocket by 1 cm (3/8 in) twice
   attach pocket to cloth
   ```

3. Done.

   ```sew
   finish cloth
   ```
"""


def test_what_is_optional_is_said_apart() -> None:
    pieces = "cloth | A | 1 | 100 cm (40 in) | 50 cm (20 in)\npocket | A | 1 | 30 cm (12 in) | 30 cm (12 in)"
    purchase = bought(COTTON.format(""), pieces, steps=OPTIONAL)
    assert amounts(purchase) == (500, Fraction(45, 2))
    assert amounts(purchase.full()) == (800, 36)
    assert purchase.optional == ("pocket",)


def test_what_is_optional_is_cut_from_the_same_length_where_it_has_room() -> None:
    pieces = "cloth | A | 1 | 70 cm (28 in) | 50 cm (20 in)\npocket | A | 1 | 30 cm (12 in) | 30 cm (12 in)"
    purchase = bought(COTTON.format(""), pieces, steps=OPTIONAL)
    assert amounts(purchase) == (500, Fraction(45, 2))
    assert (purchase.with_optional, purchase.optional) == ({}, ("pocket",))
    for system in (METRIC, IMPERIAL):
        laid = [piece.name for cloth in purchase.by_system[system].cloths for piece in cloth.pieces]
        with_it = [
            piece.name for cloth in purchase.to_cut().by_system[system].cloths for piece in cloth.pieces
        ]
        assert (laid, sorted(with_it)) == (["cloth"], ["cloth", "pocket"])
    (((_, figure),),) = layout_rows({"A": purchase}, (METRIC,))
    assert isinstance(figure.of, Drawing) and "with the optional pocket" in figure.of.caption


def test_what_only_optional_steps_need_is_bought_for_them() -> None:
    materials = COTTON.format("") + "\nB | Linen | fabric | 110 cm (43 in) |  | 10 cm (1/8 yd) |"
    pieces = "cloth | A | 1 | 100 cm (40 in) | 50 cm (20 in)\npocket | B | 1 | 30 cm (12 in) | 30 cm (12 in)"
    purchase = bought(materials, pieces, key="B", steps=OPTIONAL)
    assert amounts(purchase)[0] == 300 and not purchase.with_optional


CHOICE = """\
1. Sew.

   ```sew
   hem all of cloth by 1 cm (3/8 in) twice
   attach cord to cloth
   finish cloth
   ```
"""


def test_the_longest_choice_is_enough() -> None:
    """Stated 30 cm (12 in); the longest, 60 cm (24 in), is bought."""
    materials = COTTON.format("") + "\nB | Cord | tape |  |  | 10 cm (1/8 yd) |"
    pieces = "cloth | A | 1 | 50 cm (20 in) | 50 cm (20 in)\ncord | B | 1 |  | long"
    measures = "- long = 30 cm (12 in), yours to choose from 20 cm (8 in) to 60 cm (24 in)"
    purchase = bought(materials, pieces, key="B", steps=CHOICE, measures=measures)
    assert amounts(purchase) == (600, 27)


def test_what_grows_when_less_is_chosen_is_bought_for_the_least() -> None:
    """Sand above, water below, together 40 cm (16 in): each is bought for where it is highest.

    Sand at a tide of 5 cm (2 in) is 35 cm (14 in), water at one of 25 cm (10 in) is 25 cm (10 in).
    """
    materials = COTTON.format("") + "\nB | Water | fabric | 110 cm (43 in) |  | 10 cm (1/8 yd) |"
    pieces = "sand | A | 1 | 40 cm (16 in) | 40 cm (16 in) - tide\nwater | B | 1 | 40 cm (16 in) | tide\n"
    measures = (
        "- seam = 1 cm (3/8 in)\n- tide = 10 cm (4 in), yours to choose from 5 cm (2 in) to 25 cm (10 in)"
    )
    worked = only(materials, pieces, steps=WATERLINE, measures=measures)
    assert amounts(worked.buying.purchases["A"]) == (400, Fraction(18))
    assert amounts(worked.buying.purchases["B"]) == (300, Fraction(27, 2))
    (line,) = longest_words(reaches(worked.edition), (METRIC,))
    said = "".join(part.text for part in line if isinstance(part, Text | Amount))
    assert said == "Quantities to buy are enough for any tide from 5 cm to 25 cm."


WATERLINE = """\
1. Sew.

   ```sew
   front = join sand, water top to bottom
   hem all of front by 1 cm (3/8 in) twice
   finish front
   ```
"""


def test_a_workshop_that_cuts_in_strips() -> None:
    """Strips of 20 and of 12 cm. Freely the three low ones stand on each other beside the high ones."""
    pieces = "tall | A | 4 | 20 cm (8 in) | 36 cm (14 in)\nshort | A | 3 | 30 cm (12 in) | 12 cm (4 3/4 in)"
    free = only(COTTON.format(""), pieces).buying.purchases["A"].by_system[METRIC]
    strips = only(COTTON.format(""), pieces, workshop=Workshop(strips=True)).buying.purchases["A"]
    noted = bought(COTTON.format("cut in strips"), pieces)
    assert free.need == 360
    assert strips.by_system[METRIC].need == noted.by_system[METRIC].need == 480
    assert strips_of(strips.by_system[METRIC].cloths) == (
        CutStrips(1, 360 * 80, (("short", 1), ("tall", 4))),
        CutStrips(1, 120 * 80, (("short", 2),)),
    )


def test_a_straightened_end_wants_some_cloth_left() -> None:
    pieces = "tile | A | 2 | 53 cm (21 in) | 30 cm (12 in)"
    assert amounts(bought(COTTON.format(""), pieces)) == (300, Fraction(27, 2))
    loose = only(COTTON.format(""), pieces, workshop=Workshop(straightened=True)).buying.purchases["A"]
    assert loose.by_system[METRIC].buy == 400
    assert loose.by_system[METRIC].proved


def test_a_piece_wider_than_its_cloth() -> None:
    found = proved(COTTON.format(""), "sail | A | 1 | 120 cm (47 in) | 60 cm (24 in)").problems
    (problem,) = [each for each in found if each.slug() == "wider-than-cloth"]
    assert problem.message() == "`sail` takes 120 cm across, and Cotton is 110 cm wide"
    assert "`any grain`" in problem.hint() and "wider cloth" in problem.hint()
    assert problem.span.text.startswith("| sail") or "sail" in problem.span.text


def test_a_piece_that_no_turn_helps() -> None:
    found = proved(COTTON.format("one way"), "sail | A | 1 | 120 cm (47 in) | 60 cm (24 in)").problems
    (problem,) = [each for each in found if each.slug() == "wider-than-cloth"]
    assert problem.hint() == "join two lengths with a seam, or take wider cloth"


def test_a_piece_longer_than_a_sheet() -> None:
    sheet = "A | Canvas | sheet | 30 cm (12 in) | 40 cm (16 in) |  |"
    found = proved(sheet, "base | A | 1 | 25 cm (10 in) | 45 cm (18 in)").problems
    (problem,) = [each for each in found if each.slug() == "wider-than-cloth"]
    assert problem.message() == (
        "`base` takes 25 cm across and 45 cm along, and Canvas is 30 cm wide and 40 cm long"
    )


def test_what_is_a_part_of_another_way_is_not_laid_out() -> None:
    """With the pocket more is cut than without it, of this cloth; what thread takes is told by seams."""
    materials = COTTON.format("") + "\nT | Thread | thread |  |  |  |"
    pieces = "cloth | A | 1 | 100 cm (40 in) | 50 cm (20 in)\npocket | A | 1 | 30 cm (12 in) | 30 cm (12 in)"
    size = only(materials, pieces, steps=OPTIONAL)
    cotton, thread = size.edition.recipe.materials
    fewer, more = sorted(demands(size.sewn), key=lambda each: each.optional)
    assert more.asks_more(fewer, cotton) and not fewer.asks_more(more, cotton)
    assert not more.asks_more(more, cotton)
    assert not more.asks_more(fewer, thread)
    # Only what is optional may be a part of what is optional: both are said.
    assert _distinct((fewer, more), cotton) == (fewer, more)
    assert _distinct((replace(fewer, optional=True), more), cotton) == (more,)
    assert _distinct((fewer, replace(more, optional=False)), cotton)[0].asks_more(fewer, cotton)
