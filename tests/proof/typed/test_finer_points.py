"""Finer points of what is typed: each line would change if one rule of the finder were wrong."""

import pytest

from presscloth.proof.typed import Nearness, find, find_counts, suggestion


def written(text: str) -> list[tuple[str, str]]:
    return [(text[typed.start : typed.end], suggestion(typed)) for typed in find(text)]


@pytest.mark.parametrize(
    ("typed", "braces"),
    [
        # Numbers.
        ("5/4 in", "{1 1/4 in}"),
        ("3/8ths of an inch", "{3/8 in}"),
        ("1/2 an inch", "{1/2 in}"),
        ("1⁄2 in", "{1/2 in}"),
        ("2 ½ in", "{2 1/2 in}"),
        (".5 cm", "{0.5 cm}"),
        ("0,125 in", "{1/8 in}"),
        ("1,500 m", "{1500 m}"),
        ("3 quarters of an inch", "{3/4 in}"),
        ("three-quarter-inch", "{3/4 in}"),
        ("two-and-a-half inches", "{2 1/2 in}"),
        ("1 and 1/2 inches", "{1 1/2 in}"),
        ("a hundred grams", "{100 g}"),
        ("two hundred metres", "{200 m}"),
        ("twenty-five centimetres", "{25 cm}"),
        ("a third of a yard", "{1/3 yd}"),
        ("a third of a metre", "{1/3 m}"),
        ("1 - 1/2 in", "{1 1/2 in}"),
        # Units.
        ("1 m 20 cm", "{120 cm}"),
        ("2 lb 4 oz", "{36 oz}"),
        ("5'6\"", "{66 in}"),
        ("two pounds", "{2 lb}"),
        ("one inch and three-quarters", "{1 3/4 in}"),
        ("an inch or two", "{1 in} to {2 in}"),
        # Ranges, and lengths one by the other.
        ("1-1/2-2 in", "{1 1/2 in} to {2 in}"),
        ("3/4-1 in", "{3/4 in} to {1 in}"),
        ("10mm-12mm", "{10 mm} to {12 mm}"),
        ("one or two inches", "{1 in} to {2 in}"),
        ("half an inch to an inch", "{1/2 in} to {1 in}"),
        ("a half to three-quarters of an inch", "{1/2 in} to {3/4 in}"),
        ("3-2 cm", "{2 cm} to {3 cm}"),
        ("20cmx30cm", "{20 cm} by {30 cm}"),
        ("2 x 1/2 in", "{2 in} by {1/2 in}"),
        ('20cm x 30cm / 8" x 12"', "{20 cm (8 in)} by {30 cm (12 in)}"),
        ("20 × 15 × 8 cm (8 × 6 × 3 in)", "{20 cm (8 in)} by {15 cm (6 in)} by {8 cm (3 in)}"),
        # In the other system.
        ("1 cm/3/8 in", "{1 cm (3/8 in)}"),
        ("10 cm, or 4 in", "{10 cm (4 in)}"),
        ("10 cm = 4 in", "{10 cm (4 in)}"),
        ("1.5kg (3 lb 5 oz)", "{1.5 kg (53 oz)}"),
        ("20 cm (or about 8 in)", "{20 cm (8 in), about}"),
        ("6 mm (scant 1/4 in)", "{6 mm (1/4 in)}"),
        ("10 cm ≈ 4 in", "{10 cm (4 in), about}"),
        ("10 cm or so", "{10 cm, about}"),
        ("~5 cm", "{5 cm, about}"),
        ("just under 4 cm", "{4 cm, about}"),
    ],
)
def test_spellings(typed: str, braces: str):
    assert written(f"Leave {typed} of braid free.") == [(typed, braces)]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        # Where one measure ends and the next begins.
        ("an inch and a quarter turn", [("an inch", "{1 in}")]),
        ("three quarter-inch tucks", [("quarter-inch", "{1/4 in}")]),
        ("two 1/2 in strips", [("1/2 in", "{1/2 in}")]),
        ("1/2 yd (18 in, 45 cm)", [("1/2 yd", "{1/2 yd}"), ("18 in, 45 cm", "{18 in (45 cm)}")]),
        ("2 cm or 3 cm", [("2 cm", "{2 cm}"), ("3 cm", "{3 cm}")]),
        ("2 mm to 1 cm", [("2 mm", "{2 mm}"), ("1 cm", "{1 cm}")]),
        ("2 cm and 3 cm", [("2 cm", "{2 cm}"), ("3 cm", "{3 cm}")]),
        ("20 cm (8 x 12 in)", [("20 cm", "{20 cm}"), ("8 x 12 in", "{8 in} by {12 in}")]),
        ("10 cm (4 oz)", [("10 cm", "{10 cm}"), ("4 oz", "{4 oz}")]),
        ("10 cm, 4 in wide", [("10 cm", "{10 cm}"), ("4 in", "{4 in}")]),
        ("1 ft 20 in", [("1 ft", "{1 ft}"), ("20 in", "{20 in}")]),
        ("3 1 x 2 in", [("1 x 2 in", "{1 in} by {2 in}")]),
        ("Done: 2\ncm", [("2\ncm", "{2 cm}")]),
        ("Done: 2\n\ncm", []),
        ("2.5 cm. Now 2 in. wide", [("2.5 cm", "{2.5 cm}"), ("2 in.", "{2 in}")]),
        ("2 5/4 in", [("5/4 in", "{1 1/4 in}")]),
        ("2     cm", []),
        ("1/2 inch and a quarter of the rest", [("1/2 inch", "{1/2 in}")]),
        ("an inch and half of the rest", [("an inch", "{1 in}")]),
        ("3 cm approx 4 cm", [("3 cm approx", "{3 cm, about}"), ("4 cm", "{4 cm}")]),
        # Quotations.
        ('"Cut 6" x 8"" she said', [('6" x 8"', "{6 in} by {8 in}")]),
        ("the '2' key or the '6' foot", []),
        ("the “2” key, the 12” hoop", [("12”", "{12 in}")]),
        ("the 1990's, all the 2's", []),
        # The small word in.
        ("cut 2 in linen", []),
        ("cut 4 x 6 in linen", [("4 x 6 in", "{4 in} by {6 in}")]),
        ("a 4 in linen strip", [("4 in", "{4 in}")]),
        ("trim to 4 in and press", [("4 in", "{4 in}")]),
        ("cut 4 in and press", []),
        ("cut 1/2 in the red", []),
        ("step 2 in, step 3 in.", []),
        ("lay 2 in, 2 out", [("2 in", "{2 in}")]),
        ("one in, two in", []),
        ("two m, three g", []),
        ("100/16 in or 70/10 in good shape", []),
        ("4 in 1/2 the cases", []),
        ("write a 2 in the corner; a 4 in 5 chance", []),
        ("set the iron to 3 in between", []),
        # Neither lengths nor weights.
        ("30 cm² of felt at 120 g/m², 2 m/min, 3 cm^2", []),
        ("ten stitches an inch", []),
        ("every third inch, the third yard", []),
        ("the metre's end, a yardarm, 2 yard's", []),
        ("$5 m, #3 m, A4 m", []),
        ("3 M, 2 G, 5 In", []),
    ],
)
def test_borders(text: str, found: list[tuple[str, str]]):
    assert written(text) == found


def test_shades():
    shades = {
        "a scant 1/4 in": Nearness.SCANT,
        "a generous half inch": Nearness.GENEROUS,
        "circa 3 cm": Nearness.ABOUT,
        "3 cm": Nearness.EXACT,
        "3 cm approx.": Nearness.ABOUT,
    }
    assert {text: found.nearness for text in shades for found in find(text)} == shades


def test_pairs_are_what_must_agree():
    (box,) = find("20 x 30 cm (8 x 12 in)")
    assert [(one.low, one.unit, two.low, two.unit) for one, two in box.pairs()] == [
        (20, "cm", 8, "in"),
        (30, "cm", 12, "in"),
    ]
    (alone,) = find("20 x 30 cm")
    assert alone.pairs() == ()


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Sew two half squares.", [("two half squares", 2, "half square", False)]),
        ("Sew two halfs.", [("two halfs", 2, "half", False)]),
        ("All four of the blocks; four of the blocks.", [("four of the blocks", 4, "block", True)]),
        ("All of the 4 blocks.", [("4 blocks", 4, "block", True)]),
        ("One of the 4 blocks.", [("4 blocks", 4, "block", True)]),
        ("Both of the straps.", [("Both of the straps", 2, "strap", True)]),
        ("Take two pairs of straps.", [("two pairs of straps", 4, "strap", False)]),
        ("The two dozen blocks.", [("two dozen blocks", 24, "block", True)]),
        ("Half a dozen blocks.", [("Half a dozen blocks", 6, "block", False)]),
        (
            "Sew 3 bunnies and 2 patches.",
            [("3 bunnies", 3, "bunny", False), ("2 patches", 2, "patch", False)],
        ),
        ("The two Trousers.", [("two Trousers", 2, "trousers", True)]),
        ("Turn the one block.", [("one block", 1, "block", True)]),
        ("Stop. Two\nblocks.", [("Two\nblocks", 2, "block", False)]),
        ("2 blocks-wide, 2.5 blocks, 1/2 blocks, A4 blocks", []),
        ("4 x 4 blocks, 4 by 4 blocks, 4 × 4 blocks", []),
        ("one block at a time, one blocks, two block, two half", []),
        ("these two blocks, about 20 blocks, every 2 blocks, 2 blocks more", []),
        ("1234567 blocks, step twenty-four blocks", []),
        ("The one half square.", [("one half square", 1, "half square", True)]),
    ],
)
def test_counts(text: str, found: list[tuple[str, int, str, bool]]):
    names = ["half", "half square", "block", "strap", "bunny", "patch", "trousers"]
    counted = find_counts(text, names)
    assert [(text[one.start : one.end], one.count, one.name, one.definite) for one in counted] == found


def test_a_name_given_in_the_plural():
    assert [one.name for one in find_counts("Sew 2 sashes, 1 sash, the one tab.", ["sashes", "tabs"])] == [
        "sashes",
        "sashes",
        "tabs",
    ]
    assert find_counts("Sew the 16 blocks.", ["", "  "]) == ()
