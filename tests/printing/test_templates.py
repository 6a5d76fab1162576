"""Templates at full size, read back from the finished PDF: every line lies where it should, to 0.05 mm."""

from __future__ import annotations

import io
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import pikepdf
import pytest
from printing.geometry import Drawn, Point, strokes
from printing.samples import PUBLISHER, SMALL
from printing.tools import run
from shapely import LineString, MultiLineString, affinity
from shapely.geometry import Point as Place

from presscloth.drawing.sheets import OVERLAP, TILE_HEIGHT, TILE_WIDTH, Sheet
from presscloth.handout.templates import template_note, template_sets
from presscloth.handout.tree import Handout
from presscloth.measure import System
from presscloth.pipeline import prove
from presscloth.printing.html import paper_links
from presscloth.printing.paper import PAPERS
from presscloth.printing.templates import templates_pdf
from presscloth.printing.theme import open_theme
from presscloth.publish.pdf_files import SizeToPrint, templates

RECIPES = Path(__file__).parents[2] / "recipes"
THEME = open_theme()
TRUE = 0.05
"""mm; what is promised."""

BOTH = (System.METRIC, System.IMPERIAL)
EVERY = [
    (slug, size, system, paper)
    for slug, size in (
        ("lobster-pot-basket", "Large"),
        ("slipway-apron", "Medium"),
        ("limpet-pouch", "Small"),
    )
    for system in BOTH
    for paper in PAPERS
]


@dataclass(frozen=True)
class Printed:
    """A PDF of templates: its bytes, what is drawn on each page, and the sheets that it was made from."""

    content: bytes
    pages: tuple[tuple[Drawn, ...], ...]
    sheets: tuple[Sheet, ...]


@cache
def handout(slug: str, size: str) -> Handout:
    sizes = {each.edition.size.name: each.edition for each in prove(RECIPES / slug / "recipe.md").sizes}
    return replace(SMALL, slug=slug, size=size, templates=template_sets(sizes[size], BOTH))


@cache
def written(slug: str, size: str, system: System) -> dict[str, bytes]:
    of = handout(slug, size)
    templates = next(each for each in of.templates if each.system is system)
    return dict(zip(PAPERS, templates_pdf(of, templates, THEME, PUBLISHER, tuple(PAPERS)), strict=True))


@cache
def printed(slug: str, size: str, system: System, paper: str) -> Printed:
    content = written(slug, size, system)[paper]
    with pikepdf.open(io.BytesIO(content)) as document:
        pages = tuple(tuple(strokes(page)) for page in document.pages)
    templates = next(each for each in handout(slug, size).templates if each.system is system)
    return Printed(content, pages, templates.sheets)


def is_cut(line: Drawn) -> bool:
    return line.width == pytest.approx(0.5, abs=0.01) and not line.dash


def is_seam(line: Drawn) -> bool:
    return line.dash == pytest.approx((1.8, 1.1), abs=0.01)


def is_fold(line: Drawn) -> bool:
    return len(line.dash) == 4


def together(of: Printed, piece: str) -> list[Drawn]:
    """All lines of a template, its sheets laid on each other where they belong."""
    found = []
    for page, sheet in zip(of.pages, of.sheets, strict=True):
        if sheet.piece == piece:
            across, down = sheet.column * (TILE_WIDTH - OVERLAP), sheet.row * (TILE_HEIGHT - OVERLAP)
            found += [
                replace(line, points=tuple((x + across, y + down) for x, y in line.points)) for line in page
            ]
    return found


def lines(drawn: list[Drawn]) -> MultiLineString:
    return MultiLineString([LineString(each.points) for each in drawn])


# -- every sheet of every template ---------------------------------------------------------------


@pytest.mark.parametrize(("slug", "size", "system", "paper"), EVERY)
def test_both_test_squares_are_true_on_every_sheet(slug, size, system, paper):
    of = printed(slug, size, system, paper)
    assert len(of.pages) == len(of.sheets)
    for page in of.pages:
        sides = []
        for line in page:
            if line.closed and len(line.points) == 5 and line.width == pytest.approx(0.2, abs=0.01):
                left, top, right, bottom = LineString(line.points).bounds
                sides.append((right - left, bottom - top))
        for wanted in (50.0, 50.8):
            assert any(side == pytest.approx((wanted, wanted), abs=TRUE) for side in sides), wanted


@pytest.mark.parametrize(("slug", "size", "system", "paper"), EVERY)
def test_nothing_is_drawn_beyond_the_margins_of_either_paper(slug, size, system, paper):
    """6 mm at every edge, which common printers leave white; Letter is 3 mm wider on either side."""
    of = printed(slug, size, system, paper)
    for page in of.pages:
        for line in page:
            for x, y in line.points:
                assert 10.9 <= x <= 199.1 and 6 <= y <= 279.4 - 6


@pytest.mark.parametrize(("paper", "width", "height"), [("A4", 210, 297), ("Letter", 215.9, 279.4)])
def test_each_paper_has_its_size_and_is_not_scaled_in_printing(paper, width, height):
    content = written("limpet-pouch", "Small", System.METRIC)[paper]
    with pikepdf.open(io.BytesIO(content)) as document:
        assert str(document.Root.ViewerPreferences.PrintScaling) == "/None"
        for page in document.pages:
            left, bottom, right, top = map(float, page.MediaBox)
            assert (right - left) * 25.4 / 72 == pytest.approx(width, abs=0.01)
            assert (top - bottom) * 25.4 / 72 == pytest.approx(height, abs=0.01)
            assert "/UserUnit" not in page


def ring_centres(page: tuple[Drawn, ...]) -> list[Point]:
    """The middles of the level strokes of 9 mm that are the crosses' own."""
    middles = []
    for line in page:
        (x, y), (far_x, far_y) = line.points[0], line.points[-1]
        level = abs(y - far_y) < 0.001 and abs(far_x - x - 9) < 0.01
        if len(line.points) == 2 and level and line.width == pytest.approx(0.2, abs=0.01):
            middles.append(((x + far_x) / 2, y))
    return middles


@pytest.mark.parametrize(("slug", "size", "piece"), [
    ("lobster-pot-basket", "Large", "base and base lining"), ("slipway-apron", "Medium", "bib"),
])  # fmt: skip
def test_rings_come_to_lie_on_each_other(slug, size, piece):
    of = printed(slug, size, System.METRIC, "A4")
    placed: list[Point] = []
    for page, sheet in zip(of.pages, of.sheets, strict=True):
        assert sheet.piece == piece
        across, down = sheet.column * (TILE_WIDTH - OVERLAP), sheet.row * (TILE_HEIGHT - OVERLAP)
        own = [(x + across, y + down) for x, y in ring_centres(page)]
        neighbours = sum(
            abs(sheet.column - other.column) + abs(sheet.row - other.row) == 1 for other in of.sheets
        )
        assert len(own) == 2 * neighbours
        placed += own
    for x, y in placed:
        assert sum(abs(x - a) < TRUE and abs(y - b) < TRUE for a, b in placed) == 2


# -- shapes --------------------------------------------------------------------------------------


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(("system", "radius", "seam"), [
    # 28 cm across and a seam of 1 cm; 11 in and 3/8 in.
    (System.METRIC, 150.0, 140.0), (System.IMPERIAL, 149.225, 139.7),
])  # fmt: skip
def test_the_pots_base_is_a_circle(system, radius, seam, paper):
    """Half of it, over two sheets, with the fold through its middle."""
    of = together(printed("lobster-pot-basket", "Large", system, paper), "base and base lining")
    fold = lines([line for line in of if is_fold(line)])
    x, top, _, bottom = fold.bounds
    assert bottom - top == pytest.approx(2 * radius, abs=TRUE)
    middle = (x, (top + bottom) / 2)
    for wanted, chosen in ((radius, is_cut), (seam, is_seam)):
        curve = [line for line in of if chosen(line) and len(line.points) > 10]
        for line in curve:
            for point in LineString(line.points).segmentize(2).coords:
                assert Place(middle).distance(Place(point)) == pytest.approx(wanted, abs=TRUE)
        half = affinity.translate(lines(curve), -middle[0], -middle[1]).bounds
        assert half == pytest.approx((0, -wanted, wanted, wanted), abs=TRUE)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(("system", "unit", "width", "height", "seam"), [
    (System.METRIC, 10, 16, 12, 1), (System.IMPERIAL, 25.4, 6.25, 4.75, 0.375),
])  # fmt: skip
def test_the_shell_has_its_size_its_points_and_its_allowance(system, unit, width, height, seam, paper):
    of = together(printed("limpet-pouch", "Small", system, paper), "shell")
    seams = lines([line for line in of if is_seam(line)])
    left, top, right, bottom = seams.bounds
    assert right - left == pytest.approx(width * unit, abs=TRUE)
    assert bottom - top == pytest.approx(height * unit, abs=TRUE)
    # 3/8 of the width to the right of the top of the arch, and a quarter of the height down.
    middle = (left + right) / 2
    for side in (1, -1):
        on_arch = Place(middle + side * width * unit * 3 / 8, top + height * unit / 4)
        assert seams.distance(on_arch) < TRUE
    cut = lines([line for line in of if is_cut(line) and line.closed])
    assert cut.bounds == pytest.approx(
        (left - seam * unit, top - seam * unit, right + seam * unit, bottom + seam * unit), abs=TRUE
    )
    for point in seams.segmentize(2).geoms[0].coords:
        assert cut.distance(Place(point)) == pytest.approx(seam * unit, abs=TRUE)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(("system", "width", "height"), [
    # Half of 46 + 4 × 1 cm, and 26 + 2 × 1 cm; half of 18 + 4 × 3/8 in, and 10 1/4 + 2 × 3/8 in.
    (System.METRIC, 250.0, 280.0), (System.IMPERIAL, 9.75 * 25.4, 11 * 25.4),
])  # fmt: skip
def test_the_bib_over_four_sheets_is_as_wide_and_as_high_as_it_is_cut(system, width, height, paper):
    of = together(printed("slipway-apron", "Medium", system, paper), "bib")
    left, top, right, bottom = lines([line for line in of if is_cut(line) or is_fold(line)]).bounds
    assert right - left == pytest.approx(width, abs=TRUE)
    assert bottom - top == pytest.approx(height, abs=TRUE)


# -- the file ------------------------------------------------------------------------------------


def test_a_template_says_what_it_is_and_how_to_check_it(tmp_path):
    file = tmp_path / "bib.pdf"
    file.write_bytes(written("slipway-apron", "Medium", System.METRIC)["A4"])
    pages = run("pdftotext", "-layout", file, "-").split("\f")[:-1]
    assert len(pages) == 4
    for number, page in enumerate(pages, start=1):
        words = " ".join(page.split())
        assert f"bib · sheet {number} of 4" in words
        assert "Print at 100 %" in words
        assert words.count("measure before you cut") == 2
        assert "where the sheets go" in words
    all_words = " ".join(" ".join(pages).split())
    for wanted in ("cut 1 from A", "place on the fold", "seam allowances are included", "1–2", "2–4"):
        assert wanted in all_words


def test_pieces_that_are_cut_alike_share_a_template():
    sheets = handout("lobster-pot-basket", "Large").templates[0].sheets
    assert {sheet.piece for sheet in sheets} == {"base and base lining"}


def test_the_file_is_tagged_holds_its_fonts_and_leads_nowhere():
    content = written("limpet-pouch", "Small", System.METRIC)["Letter"]
    assert b"file:" not in content
    with pikepdf.open(io.BytesIO(content)) as document:
        assert document.Root.MarkInfo.Marked
        assert str(document.Root.Lang).startswith(SMALL.language[:2])
        for page in document.pages:
            assert "/Annots" not in page
            for font in page.Resources.Font.values():
                below = font.DescendantFonts[0] if "/DescendantFonts" in font else font
                assert {"/FontFile2", "/FontFile3"} & set(below.FontDescriptor.keys())


def test_the_same_templates_give_the_same_bytes():
    of = handout("limpet-pouch", "Small")
    again = templates_pdf(of, of.templates[0], THEME, PUBLISHER, tuple(PAPERS))
    assert dict(zip(PAPERS, again, strict=True)) == written("limpet-pouch", "Small", of.templates[0].system)


def test_a_theme_that_enlarges_its_drawings_leaves_templates_true():
    """Large print draws half as large again; a template must not."""
    large = open_theme("large-print")
    of = handout("limpet-pouch", "Small")
    (content,) = templates_pdf(of, of.templates[0], large, PUBLISHER, ("A4",))
    with pikepdf.open(io.BytesIO(content)) as document:
        page = strokes(document.pages[0])
    squares = [LineString(line.points).bounds for line in page if line.closed and len(line.points) == 5]
    widths = [right - left for left, _, right, _ in squares]
    assert any(width == pytest.approx(50, abs=TRUE) for width in widths)
    assert large.look.drawings.scale != 1


def test_a_page_leads_to_the_templates_in_both_systems_on_both_papers():
    of = handout("limpet-pouch", "Small")
    links = {link.name: link.file for link in paper_links(of, "small", tuple(PAPERS))}
    assert links["A4"] == "limpet-pouch-small-a4.pdf"
    assert links["Templates to print at full size, imperial, Letter"] == (
        "limpet-pouch-small-templates-imperial-letter.pdf"
    )
    assert len(links) == 2 + 4
    alone = replace(of, templates=of.templates[:1])
    names = {link.name: link.file for link in paper_links(alone, "small", ("A4",))}
    assert names["Templates to print at full size, A4"] == "limpet-pouch-small-templates-a4.pdf"


def test_the_files_that_are_written_are_those_that_the_page_leads_to():
    of = handout("limpet-pouch", "Small")
    written_files = dict(templates(SizeToPrint(of, "small", PUBLISHER, None), THEME))
    linked = {link.file for link in paper_links(of, "small", PUBLISHER.papers)}
    assert set(written_files) == {name for name in linked if "templates" in name}
    assert len(written_files) == 2 * len(PUBLISHER.papers)
    assert all(content.startswith(b"%PDF") for content in written_files.values())


def test_the_handout_says_that_there_are_templates():
    (note,) = template_note(handout("limpet-pouch", "Small").templates)
    assert note.about == "Templates"
    assert note.text.startswith("Those of shell and shell stiffening are files of their own, at full size")
    assert "cut all of one article by the same" in note.text
    assert template_note(()) == ()
