"""Every shipped recipe is proved without a problem, and makes what was worked out for it by hand.

The numbers below were worked out with pencil and paper from the statements of each recipe, the two
systems apart; the way to them stands beside them. They hold the whole compiler, from the text to the
cutting list.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from presscloth.measure import Quantity, System, printed
from presscloth.pipeline import Proved, prove, prove_source
from presscloth.problems import Problems
from presscloth.proof.size import WorkedSize
from presscloth.source import Source

RECIPES = Path(__file__).parents[2] / "recipes"
SLUGS = tuple(sorted(path.parent.name for path in RECIPES.glob("*/recipe.md")))

# A piece: how many are cut, then width and height in metric, then in imperial, as the list prints them.
Cut = tuple[int, str, str, str, str]

CUT: dict[tuple[str, str], dict[str, Cut]] = {
    # Field + 5 cm (2 in); in inches 100 mm + 2 in are 5.937, rounded up to the sixteenth.
    # Column: stitched × block + patched × (block + 2 × sash); bands 6.5 cm (2 1/2 in) + 2 seams.
    # Binding: (2 × (runner with seams, width + height) + ends - strip) / (110 - 6.5 cm; 43 - 2 1/2 in).
    ("tide-table-runner", "Small"): {
        "ground": (5, "15 cm", "15 cm", "5 15/16 in", "5 15/16 in"),
        "sash strip": (8, "11.2 cm", "3.7 cm", "4 1/2 in", "1 1/2 in"),
        "long band": (2, "7.7 cm", "111.2 cm", "3 in", "44 1/2 in"),
        "backing": (1, "34.2 cm", "134.2 cm", "13 1/2 in", "53 1/2 in"),
        "binding strip": (3, "110 cm", "6.5 cm", "43 in", "2 1/2 in"),
    },
    ("tide-table-runner", "Medium"): {
        "ground": (4, "18 cm", "23 cm", "7 1/8 in", "9 1/8 in"),
        "sash strip": (6, "16.2 cm", "3.7 cm", "6 1/2 in", "1 1/2 in"),
        "long band": (2, "7.7 cm", "121.2 cm", "3 in", "48 1/2 in"),
        "backing": (1, "39.2 cm", "144.2 cm", "15 1/2 in", "57 1/2 in"),
        "binding strip": (4, "110 cm", "6.5 cm", "43 in", "2 1/2 in"),
    },
    ("tide-table-runner", "Large"): {
        "ground": (3, "25 cm", "25 cm", "9 7/8 in", "9 7/8 in"),
        "sash strip": (4, "21.2 cm", "3.7 cm", "8 1/2 in", "1 1/2 in"),
        "long band": (2, "7.7 cm", "111.2 cm", "3 in", "44 1/2 in"),
        "backing": (1, "44.2 cm", "134.2 cm", "17 1/2 in", "53 1/2 in"),
        "binding strip": (4, "110 cm", "6.5 cm", "43 in", "2 1/2 in"),
    },
    # A side of 40 cm (16 in) and two seams; 12.5 cm (5 in) of it are water; each panel has its seams.
    ("tide-table-napkins", "One size"): {
        "sand panel": (6, "41.2 cm", "28.7 cm", "16 1/2 in", "11 1/2 in"),
        "water panel": (6, "41.2 cm", "13.7 cm", "16 1/2 in", "5 1/2 in"),
        "backing": (6, "41.2 cm", "41.2 cm", "16 1/2 in", "16 1/2 in"),
    },
    # Cover = pad - 2 cm (3/4 in). Leaf: half of cover and overlap together, a seam, a hem turned twice.
    ("dune-envelope-cushion", "Small"): {
        "sky panel": (1, "41 cm", "18 cm", "16 1/2 in", "7 1/4 in"),
        "sand panel": (1, "41 cm", "26 cm", "16 1/2 in", "10 1/2 in"),
        "leaf": (2, "41 cm", "32.5 cm", "16 1/2 in", "13 in"),
    },
    ("dune-envelope-cushion", "Large"): {
        "sky panel": (1, "51 cm", "21 cm", "20 1/2 in", "8 1/4 in"),
        "sand panel": (1, "51 cm", "33 cm", "20 1/2 in", "13 1/2 in"),
        "leaf": (2, "51 cm", "37.5 cm", "20 1/2 in", "15 in"),
    },
    ("dune-envelope-cushion", "Long"): {
        "sky panel": (1, "61 cm", "18 cm", "24 1/2 in", "7 1/4 in"),
        "sand panel": (1, "61 cm", "26 cm", "24 1/2 in", "10 1/2 in"),
        "leaf": (2, "61 cm", "32.5 cm", "24 1/2 in", "13 in"),
    },
    # Four side hems in the width; seam, turn and hem of 5 cm (2 in) in the skirt's height.
    ("slipway-apron", "Child"): {
        "skirt": (1, "54 cm", "39 cm", "21 1/2 in", "15 1/4 in"),
        "neck band": (1, "24 cm", "7.5 cm", "9 1/2 in", "2 7/8 in"),
        "tie strip": (2, "10 cm", "32 cm", "4 in", "12 3/4 in"),
        "tab strip": (2, "10 cm", "22 cm", "4 in", "8 3/4 in"),
    },
    ("slipway-apron", "Small"): {
        "skirt": (1, "79 cm", "55 cm", "31 1/2 in", "21 3/4 in"),
        "neck band": (1, "29 cm", "7.5 cm", "11 1/2 in", "2 7/8 in"),
        "tie strip": (2, "10 cm", "82 cm", "4 in", "32 3/4 in"),
    },
    ("slipway-apron", "Medium"): {
        "skirt": (1, "89 cm", "59 cm", "35 in", "23 1/4 in"),
        "neck band": (1, "32 cm", "7.5 cm", "12 1/2 in", "2 7/8 in"),
        "tie strip": (2, "10 cm", "92 cm", "4 in", "36 3/4 in"),
    },
    ("slipway-apron", "Large"): {
        "skirt": (1, "99 cm", "63 cm", "39 in", "24 3/4 in"),
        "neck band": (1, "34 cm", "7.5 cm", "13 1/2 in", "2 7/8 in"),
        "tie strip": (2, "10 cm", "102 cm", "4 in", "40 3/4 in"),
    },
    # 15 √2 = 21.2132 cm and 6 √2 = 8.4853 in for a block on its point; four of them and both borders
    # are 114.853 cm and 45.941 in, five 136.066 cm and 54.426 in; 5 cm (2 in) more for the mitres.
    ("half-tide-quilt", "Pram"): {
        "pale square": (6, "20 cm", "20 cm", "8 in", "8 in"),
        "plain square": (6, "16.2 cm", "16.2 cm", "6 1/2 in", "6 1/2 in"),
        "wrack side": (2, "3.7 cm", "86.1 cm", "1 1/2 in", "34 1/2 in"),
        "deep side": (2, "13.7 cm", "119.9 cm", "5 1/2 in", "48 in"),
        "binding strip": (5, "110 cm", "6.5 cm", "43 in", "2 1/2 in"),
    },
    ("half-tide-quilt", "Lap"): {
        "pale square": (10, "20 cm", "20 cm", "8 in", "8 in"),
        "plain square": (12, "16.2 cm", "16.2 cm", "6 1/2 in", "6 1/2 in"),
        "wrack side": (2, "3.7 cm", "107.3 cm", "1 1/2 in", "42 7/8 in"),
        "deep side": (2, "13.7 cm", "141.1 cm", "5 1/2 in", "56 3/8 in"),
        "binding strip": (5, "110 cm", "6.5 cm", "43 in", "2 1/2 in"),
    },
    # Round the base: 18 π = 56.549, 22 π = 69.115, 28 π = 87.965 cm, up to 5 mm; 7 π = 21.991,
    # 8 3/4 π = 27.489, 11 π = 34.558 in, up to 1/4 in; two seams more.
    ("lobster-pot-basket", "Small"): {"wall": (1, "59 cm", "18 cm", "22 3/4 in", "7 in")},
    ("lobster-pot-basket", "Medium"): {"wall": (1, "71.5 cm", "22 cm", "28 1/4 in", "8 3/4 in")},
    ("lobster-pot-basket", "Large"): {"wall": (1, "90 cm", "26 cm", "35 1/2 in", "10 1/4 in")},
    # The box around the shell: its width and height, and a seam on every side. Zip strips: half of what
    # the zip leaves of the reach, and two seams.
    ("limpet-pouch", "Small"): {
        "shell": (2, "18 cm", "14 cm", "7 in", "5 1/2 in"),
        "shell stiffening": (2, "16 cm", "12 cm", "6 1/4 in", "4 3/4 in"),
        "zip strip": (2, "20 cm", "4.5 cm", "7 3/4 in", "1 3/4 in"),
    },
    ("limpet-pouch", "Large"): {
        "shell": (2, "26 cm", "20 cm", "10 1/4 in", "7 3/4 in"),
        "zip strip": (2, "30 cm", "6.5 cm", "11 3/4 in", "2 9/16 in"),
    },
    # 24 slices of 8.7 cm (3 1/2 in), 12 to a width of 110 cm (43 in): two sets.
    ("shingle-placemats", "One size"): {
        "strip": (2, "110 cm", "7.7 cm", "43 in", "3 in"),
        "backing": (4, "46.2 cm", "33.7 cm", "18 1/2 in", "13 in"),
        "wadding": (4, "51.2 cm", "38.7 cm", "20 1/2 in", "15 in"),
    },
}

# What is finished: how many, then width and height in mm, then in inches.
Made = tuple[int, str, str, str, str]

FINISHED: dict[tuple[str, str], dict[str, Made]] = {
    # Block and two bands, and the seam allowance on every side, which the binding covers.
    ("tide-table-runner", "Small"): {"runner": (1, "242", "1242", "19/2", "99/2")},
    ("tide-table-runner", "Medium"): {"runner": (1, "292", "1342", "23/2", "107/2")},
    ("tide-table-runner", "Large"): {"runner": (1, "342", "1242", "27/2", "99/2")},
    ("tide-table-napkins", "One size"): {"napkin": (6, "400", "400", "16", "16")},
    ("dune-envelope-cushion", "Small"): {"cover": (1, "380", "380", "61/4", "61/4")},
    ("dune-envelope-cushion", "Large"): {"cover": (1, "480", "480", "77/4", "77/4")},
    ("dune-envelope-cushion", "Long"): {"cover": (1, "580", "380", "93/4", "61/4")},
    # As wide as the skirt; neck band, bib, waistband and skirt make the height.
    ("slipway-apron", "Child"): {"apron": (1, "500", "580", "20", "181/8")},
    ("slipway-apron", "Small"): {"apron": (1, "750", "800", "30", "253/8")},
    ("slipway-apron", "Medium"): {"apron": (1, "850", "860", "67/2", "271/8")},
    ("slipway-apron", "Large"): {"apron": (1, "950", "920", "75/2", "289/8")},
    # 97 % of the quilt top, down to 5 mm and 1/4 in: 0.97 × 948.4 = 919.9, 0.97 × 37.956 = 36.817 …
    ("half-tide-quilt", "Pram"): {"quilt": (1, "915", "1125", "147/4", "45")},
    ("half-tide-quilt", "Lap"): {"quilt": (1, "1125", "1330", "45", "213/4")},
    ("lobster-pot-basket", "Small"): {"basket": (1, "180", "160", "7", "25/4")},
    ("lobster-pot-basket", "Medium"): {"basket": (1, "220", "200", "35/4", "8")},
    ("lobster-pot-basket", "Large"): {"basket": (1, "280", "240", "11", "19/2")},
    # It lies on one of its sides: as wide as a shell, as high as the band reaches.
    ("limpet-pouch", "Small"): {"pouch": (1, "160", "60", "25/4", "19/8")},
    ("limpet-pouch", "Large"): {"pouch": (1, "240", "100", "19/2", "4")},
    ("shingle-placemats", "One size"): {
        "mat": (4, "450", "325", "18", "25/2"),
        "coaster": (4, "100", "100", "4", "4"),
    },
}

# A slip that an author could make: what stood there, what stands there now, the problem, and its sizes.
Slip = tuple[str, str, str, str, tuple[str, ...]]

SLIPS: tuple[Slip, ...] = (
    (
        "tide-table-runner",
        "runner width + 2 × seam                   | band",
        "runner width + seam                   | band",
        "edges-do-not-meet",
        ("Small", "Medium", "Large"),
    ),
    (
        "tide-table-runner",
        "6 1/2 in (16.5 cm) |",
        "8 in (20.3 cm) |",
        "stitching-outside-field",
        ("Large",),
    ),
    (
        "tide-table-napkins",
        "side - tide + 2 × seam",
        "side - tide + seam",
        "edges-do-not-meet",
        ("One size",),
    ),
    (
        "dune-envelope-cushion",
        "leaf height + seam + 2 × hem",
        "leaf height + 2 × hem",
        "edges-do-not-meet",
        ("Small", "Large", "Long"),
    ),
    (
        "slipway-apron",
        "| 50 cm (20 in)    | 18 cm (7 in)",
        "| 34 cm (13 1/2 in) | 18 cm (7 in)",
        "fullness-unusual",
        ("Child",),
    ),
    (
        "half-tide-quilt",
        "diagonal + 2 × seam + 2 × sqrt(2) × seam to",
        "diagonal + seam to",
        "triangle-too-small",
        ("Pram", "Lap"),
    ),
    (
        "half-tide-quilt",
        "- mitre spare = 2 in (5 cm)",
        "- mitre spare = 1/2 in (1.2 cm)",
        "mitre-too-short",
        ("Pram", "Lap"),
    ),
    (
        # 58 cm round a base of 56.5 cm; in inches 22 round 22, and nobody who works in inches would know.
        "lobster-pot-basket",
        "pi × base diameter to 5 mm (1/4 in))",
        "pi × base diameter to 2 cm (1 in))",
        "meets-in-one-system",
        ("Small", "Large"),
    ),
    (
        "lobster-pot-basket",
        ", leaving gap open",
        "",
        "no-turning-gap",
        ("Small", "Medium", "Large"),
    ),
    (
        "limpet-pouch",
        "rim length - opening: what",
        "rim length - opening - seam: what",
        "edges-do-not-meet",
        ("Small", "Large"),
    ),
    (
        "slipway-apron",
        "- left to the fold as bottom",
        "- left waist / 2 as bottom",
        "fold-not-straight",
        ("Child", "Small", "Medium", "Large"),
    ),
    ("shingle-placemats", "finish 4 mat", "finish 3 mat", "thing-left-over", ("One size",)),
)


@cache
def proved(slug: str) -> Proved:
    return prove(RECIPES / slug / "recipe.md")


def sizes_of(recipe: Proved) -> dict[str, WorkedSize]:
    return {size.edition.size.name: size for size in recipe.sizes}


def as_cut(quantity: Quantity | None, system: System) -> str:
    assert quantity is not None
    return printed(quantity, system, cut=True).text


@pytest.mark.parametrize("slug", SLUGS)
def test_a_recipe_is_proved_without_a_problem(slug: str) -> None:
    recipe = proved(slug)
    assert [f"{p.span.where}: {p.message()}" for p in recipe.problems] == []
    assert recipe.sizes
    for size in recipe.sizes:
        assert size.sewn.sewing
        assert all(each.certain and each.finished for each in size.sewn.constructions)


@pytest.mark.parametrize("slug", SLUGS)
def test_every_piece_is_sewn_in_by_one_way_or_another(slug: str) -> None:
    for size in proved(slug).sizes:
        cut = {(piece.name, key): piece.count for piece in size.edition.pieces for key in piece.keys}
        most = {piece: max(each.used.get(piece, 0) for each in size.sewn.constructions) for piece in cut}
        assert most == cut


@pytest.mark.parametrize(("slug", "size"), CUT)
def test_pieces_are_cut_as_worked_out_by_hand(slug: str, size: str) -> None:
    pieces = {piece.name: piece for piece in sizes_of(proved(slug))[size].edition.pieces}
    for name, expected in CUT[slug, size].items():
        piece = pieces[name]
        found = (
            piece.count,
            as_cut(piece.width, System.METRIC),
            as_cut(piece.height, System.METRIC),
            as_cut(piece.width, System.IMPERIAL),
            as_cut(piece.height, System.IMPERIAL),
        )
        assert (name, found) == (name, expected)


@pytest.mark.parametrize(("slug", "size"), FINISHED)
def test_the_article_measures_what_was_worked_out_by_hand(slug: str, size: str) -> None:
    made = sizes_of(proved(slug))[size].construction
    found = {}
    for article in made.finished:
        width = made.part(article.name, "width", finished=True)
        height = made.part(article.name, "height", finished=True)
        assert width is not None and height is not None
        sides = (width.metric, height.metric, width.imperial, height.imperial)
        found[article.name] = (article.count, *sides)
    expected = {
        name: (count, *(Fraction(side) for side in sides))
        for name, (count, *sides) in FINISHED[slug, size].items()
    }
    assert found == expected


def test_triangles_for_the_quilt_reach_a_seam_beyond_its_points() -> None:
    """Blocks of 6 in: 6 √2 + 1 1/4 = 9.735, up to 9 3/4; 6/√2 + 7/8 = 5.118, up to 5 1/4 (published
    charts of setting triangles). In metric 21.213 + 1.2 + 1.697 = 24.11 and 10.607 + 1.2 + 0.849 = 12.66.
    """
    for size, setting in (("Pram", 10), ("Lap", 14)):
        pieces = {piece.name: piece for piece in sizes_of(proved("half-tide-quilt"))[size].edition.pieces}
        for name, count, metric, imperial in (
            ("setting triangle", setting, "24.5 cm", "9 3/4 in"),
            ("corner triangle", 4, "13 cm", "5 1/4 in"),
        ):
            piece = pieces[name]
            sides = (as_cut(piece.width, System.METRIC), as_cut(piece.width, System.IMPERIAL))
            assert (piece.count, *sides) == (count, metric, imperial)


def test_a_child_gets_tabs_that_open_and_no_neck_loop() -> None:
    sizes = sizes_of(proved("slipway-apron"))
    child = {piece.name for piece in sizes["Child"].edition.pieces}
    grown = {piece.name for piece in sizes["Large"].edition.pieces}
    assert {"tab strip", "grip patch"} <= child and not {"neck strap", "ring"} & child
    assert {"neck strap", "ring"} <= grown and not {"tab strip", "grip patch"} & grown


@pytest.mark.parametrize(("slug", "before", "after", "problem", "sizes"), SLIPS)
def test_a_slip_in_a_recipe_is_found(
    slug: str, before: str, after: str, problem: str, sizes: tuple[str, ...]
) -> None:
    path = RECIPES / slug / "recipe.md"
    text = path.read_text(encoding="utf-8")
    assert text.count(before) == 1
    slipped = prove_source(Source(path.as_posix(), text.replace(before, after)), path, Problems())
    found = [each for each in slipped.problems if each.slug() == problem]
    assert {size for each in found for size in each.sizes} == set(sizes)
    assert not slipped.sound
