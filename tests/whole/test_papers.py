"""Every PDF of the shipped site: tagged, whole, readable in its order, and the same from anywhere.

What is asked of a tagged PDF: ISO 14289-1 (PDF/UA-1) and ISO 32000-1, 14.8.
"""

from __future__ import annotations

import re
import shutil
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pikepdf
import pytest
from PIL import Image
from printing.lettering import sizes
from printing.tagged import elements
from printing.tools import run
from whole.shipped import IN_LARGE_PRINT, ROOT, Shipped

from presscloth.cutting.workshop import Workshop
from presscloth.pipeline import booklet, compile_site, prove
from presscloth.printing.html import pdf_name
from presscloth.printing.paper import LAYOUT_HEIGHT, PAPERS
from presscloth.printing.pdf import paper_html
from presscloth.printing.theme import open_theme
from presscloth.problems import Problems
from presscloth.publish.publisher import publisher_of

pytestmark = pytest.mark.browser

LEAST = 18  # points: what large print is (common practice of associations for the blind, from memory)


def papers(shipped: Shipped) -> tuple[Path, ...]:
    """Those on A4: a Letter file is the same document in another box (`tests/printing/test_pdf.py`)."""
    found = (*shipped.plain.rglob("*-a4.pdf"), *shipped.large.rglob("*-a4.pdf"))
    assert len(found) > 20
    return tuple(sorted(found))


def test_every_file_is_sound_and_tagged(shipped: Shipped):
    for file in papers(shipped):
        assert "No syntax or stream encoding errors" in run("qpdf", "--check", file), file.name
        with pikepdf.open(file) as document:
            assert document.Root.MarkInfo.Marked is True, file.name
            assert str(document.Root.Lang), file.name
            assert str(document.docinfo["/Title"]), file.name


def test_headings_are_in_order_and_figures_have_words(shipped: Shipped):
    for file in papers(shipped):
        with pikepdf.open(file) as document:
            kinds = [str(each.S) for each, _ in elements(document)]
            ranks = [int(kind[2]) for kind in kinds if re.fullmatch(r"/H\d", kind)]
            assert ranks[0] == 1 and ranks.count(1) == 1, file.name
            assert all(below <= above + 1 for above, below in pairwise(ranks)), file.name
            for figure, _ in elements(document, "/Figure"):
                assert len(str(figure.get("/Alt", ""))) > 5, file.name


def test_every_cell_has_its_headers(shipped: Shipped):
    """A cell has a header in its row, or one in the table's head above it; all say of what they are."""
    looked = 0
    for file in papers(shipped):
        with pikepdf.open(file) as document:
            for table, _ in elements(document, "/Table"):
                rows = [
                    (group, [cell for cell in row.K if str(cell.S) in ("/TH", "/TD")])
                    for group in table.K
                    for row in group.K
                    if str(row.get("/S")) == "/TR"
                ]
                heads = [len(cells) for group, cells in rows if group.S == "/THead"]
                for group, cells in rows:
                    headers = [cell for cell in cells if cell.S == "/TH"]
                    assert all("/Scope" in cell.A for cell in headers), file.name
                    assert headers or (heads and len(cells) <= max(heads)), file.name
                    assert group.S != "/THead" or len(headers) == len(cells), file.name
                    looked += len(cells)
    assert looked > 1000


def test_fonts_are_embedded(shipped: Shipped):
    for file in papers(shipped):
        with pikepdf.open(file) as document:
            descriptors = [each for each in document.objects if _kind(each) == "/FontDescriptor"]
            assert descriptors, file.name
            assert all({"/FontFile", "/FontFile2", "/FontFile3"} & set(each.keys()) for each in descriptors)


def _kind(each: pikepdf.Object) -> str:
    return str(each.get("/Type", "")) if isinstance(each, pikepdf.Dictionary) else ""


def test_no_file_tells_of_the_machine(shipped: Shipped, tmp_path):
    """Unpacked, no PDF and no page names a folder of the machine that made it."""
    places = [str(ROOT), str(shipped.plain.parent), str(Path.home()), "file:/"]
    unpacked = tmp_path / "unpacked.pdf"
    for file in papers(shipped):
        run("qpdf", "--qdf", "--object-streams=disable", file, unpacked)
        content = unpacked.read_bytes()
        assert not [place for place in places if place.encode() in content], file.name
    for folder in (shipped.plain, shipped.large):
        for page in folder.rglob("*.html"):
            assert not [place for place in places if place in page.read_text(encoding="utf-8")], page


# -- how full the pages are -----------------------------------------------------------------------

TOP, FOOT = 15.0, 19.0  # mm: the margins of the layout, `themes/plain-seam/print.css`
LEAST_FILLED = 0.65


def filled(page: Image.Image) -> float:
    """How far down a page's text and drawings reach, in parts of the room between its margins."""
    unit = page.height / PAPERS["A4"][1]
    around = (PAPERS["A4"][1] - LAYOUT_HEIGHT) / 2
    top, foot = (around + TOP) * unit, page.height - (around + FOOT) * unit
    inked = page.crop((0, round(top), page.width, round(foot))).point(lambda tone: 255 if tone < 230 else 0)
    box = inked.getbbox()
    return 0.0 if box is None else box[3] / inked.height


def test_no_page_but_the_last_ends_a_third_empty(shipped: Shipped, tmp_path):
    """A step whose drawing does not fit takes the next page whole; that must not leave half of one white."""
    looked = 0
    for file in sorted(shipped.plain.rglob("*-a4.pdf")):
        if "templates" in file.name or "cue-sheet" in file.name:
            continue
        run("pdftoppm", "-r", "25", "-gray", "-png", file, tmp_path / file.stem)
        *pages, _ = sorted(tmp_path.glob(f"{file.stem}-*.png"))
        for page in pages:
            assert filled(Image.open(page)) >= LEAST_FILLED, page.name
        looked += len(pages)
    assert looked > 100


# -- reading order -------------------------------------------------------------------------------


class Reading(HTMLParser):
    """The words of a page in their order, without drawings and what stands in the margins."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.words: list[str] = []
        self.aside: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        running = "running" in (dict(attrs).get("class") or "")
        if tag not in ("meta", "br", "img", "hr", "path", "circle") and (
            self.aside or running or tag in ("head", "svg")
        ):
            self.aside.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if self.aside and self.aside[-1] == tag:
            self.aside.pop()

    def handle_data(self, data: str) -> None:
        if not self.aside:
            self.words.append(data)


def of_page(text: str) -> str:
    return re.sub(r"\s", "", "".join(Reading(text).words))


def of_pdf(file: Path) -> str:
    """The words of a PDF in the order of its tags, without labels of lists and what is in figures."""
    words: list[str] = []
    skipped: int | None = None
    for line in run("pdfinfo", "-struct-text", file).split("\n"):
        depth = len(line) - len(line.lstrip())
        if skipped is not None and depth > skipped:
            continue
        skipped = depth if re.match(r"\s*(Lbl|Figure)\b", line) else None
        if found := re.fullmatch(r'\s*"(.*)"', line):
            words.append(found.group(1))
    return re.sub(r"\s", "", "".join(words))


@pytest.mark.parametrize(
    ("theme", "slug"),
    [
        ("plain-seam", "harbour-kit-bag"),
        ("plain-seam", "shingle-placemats"),
        ("large-print", IN_LARGE_PRINT[0]),
    ],
)
def test_a_pdf_is_read_in_the_order_of_its_page(shipped: Shipped, theme, slug):
    publisher = publisher_of(ROOT / "site", Problems())
    workshop = Workshop(kept_in=shipped.plain.parent / "layouts")
    first = booklet(prove(ROOT / "recipes" / slug / "recipe.md", workshop), publisher).first
    name = pdf_name(first, re.sub(r"\W", "-", first.size.lower()), "A4")
    page = of_page(paper_html(first, open_theme(theme), publisher))
    assert len(page) > 2000
    assert of_pdf(shipped.of(theme) / slug / name) == page


# -- the same from anywhere ----------------------------------------------------------------------


def test_another_folder_gives_the_same_bytes(shipped: Shipped, tmp_path):
    """The recipe from a copy elsewhere, written elsewhere: every PDF is the same to the bit."""
    slug = "shingle-placemats"
    elsewhere = tmp_path / "a folder" / "of another depth"
    shutil.copytree(ROOT / "recipes" / slug, elsewhere / slug)
    done = compile_site(
        (elsewhere / slug / "recipe.md",), out=elsewhere / "site", site=shipped.publisher, workers=1
    )
    assert not done.failed
    made = {file.name: file.read_bytes() for file in (elsewhere / "site" / slug).glob("*.pdf")}
    assert made == {file.name: file.read_bytes() for file in (shipped.plain / slug).glob("*.pdf")}
    assert len(made) >= 2


# -- large print ---------------------------------------------------------------------------------


@pytest.mark.parametrize("slug", IN_LARGE_PRINT)
def test_nothing_in_large_print_is_smaller_than_18_points(shipped: Shipped, slug):
    """Every word of the finished PDF, those in drawings too; templates keep their true scale."""
    files = [file for file in (shipped.large / slug).glob("*.pdf") if "templates" not in file.name]
    assert len(files) >= 2
    for file in files:
        with pikepdf.open(file) as document:
            for number, page in enumerate(document.pages, start=1):
                small = [round(size, 2) for size in sizes(page) if size < LEAST - 0.01]
                assert small == [], f"{file.name}, page {number}"


@pytest.mark.parametrize("slug", IN_LARGE_PRINT)
def test_large_print_has_no_italics(shipped: Shipped, slug):
    for file in (shipped.large / slug).glob("*.pdf"):
        with pikepdf.open(file) as document:
            names = [str(each.FontName) for each in document.objects if _kind(each) == "/FontDescriptor"]
            assert names and not [name for name in names if "Italic" in name or "Oblique" in name]
