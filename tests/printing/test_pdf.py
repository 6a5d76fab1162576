"""PDFs by their structure: tags, language, bookmarks, page boxes, fonts, words.

What is asked of a tagged PDF is in ISO 14289-1 (PDF/UA-1) and ISO 32000-1, 14.8.
"""

import io
import re
from dataclasses import replace
from itertools import pairwise

import pikepdf
import pytest
from printing.making import layout_drawing, pair, para
from printing.samples import MUG_MAT, PUBLISHER, SMALL, TALL
from printing.tagged import elements
from printing.tools import run

from presscloth.handout.tree import StageText, StepText, Text
from presscloth.printing.paper import PAPERS, page_box
from presscloth.printing.pdf import pdf
from presscloth.printing.theme import open_theme

THEME = open_theme()


@pytest.fixture(scope="module")
def tall() -> dict[str, bytes]:
    return dict(zip(PAPERS, pdf(TALL, THEME, PUBLISHER, tuple(PAPERS)), strict=True))


@pytest.fixture
def document(tall):
    with pikepdf.open(io.BytesIO(tall["A4"])) as opened:
        yield opened


@pytest.fixture(scope="module")
def text(tall, tmp_path_factory) -> str:
    file = tmp_path_factory.mktemp("pdf") / "tall.pdf"
    file.write_bytes(tall["A4"])
    return run("pdftotext", "-layout", file, "-")


# -- paper ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(("paper", "width", "height"), [("A4", 210, 297), ("Letter", 215.9, 279.4)])
def test_each_paper_has_its_size(tall, paper, width, height):
    """A4 is 210 × 297 mm (ISO 216), Letter 8 1/2 × 11 in (ANSI/ASME Y14.1)."""
    with pikepdf.open(io.BytesIO(tall[paper])) as document:
        for page in document.pages:
            left, bottom, right, top = map(float, page.MediaBox)
            assert (right - left) * 25.4 / 72 == pytest.approx(width, abs=0.01)
            assert (top - bottom) * 25.4 / 72 == pytest.approx(height, abs=0.01)
            assert list(page.TrimBox) == list(page.BleedBox) == list(page.MediaBox)


def test_the_layout_lies_in_the_middle_of_both_papers():
    for paper in PAPERS:
        left, bottom, right, top = page_box(paper)
        assert left + right == pytest.approx(210 * 72 / 25.4, abs=0.01)
        assert bottom + top == pytest.approx(279.4 * 72 / 25.4, abs=0.01)


def test_both_papers_say_the_same(tall):
    with pikepdf.open(io.BytesIO(tall["A4"])) as one, pikepdf.open(io.BytesIO(tall["Letter"])) as other:
        assert len(one.pages) == len(other.pages) >= 3
        for here, there in zip(one.pages, other.pages, strict=True):
            assert here.Contents.read_bytes() == there.Contents.read_bytes()


# -- what the document says of itself ------------------------------------------------------------


def test_title_language_and_claims(document):
    assert str(document.docinfo["/Title"]) == "Harbour Kit Bag, Tall"
    assert str(document.docinfo["/Author"]) == "Tidewrack sewing room"
    assert str(document.Root.Lang) == "en"
    assert document.Root.MarkInfo.Marked is True
    assert document.Root.ViewerPreferences.DisplayDocTitle is True
    assert document.Root.ViewerPreferences.PrintScaling == "/None"
    with document.open_metadata() as metadata:
        assert metadata["pdfuaid:part"] == "1"
        assert metadata["dc:title"] == "Harbour Kit Bag, Tall"


def test_the_language_is_the_recipes():
    (made,) = pdf(replace(MUG_MAT, language="en-NZ"), THEME, PUBLISHER, ("A4",))
    with pikepdf.open(io.BytesIO(made)) as document:
        assert str(document.Root.Lang) == "en-NZ"


def test_bookmarks_follow_the_headings(document):
    with document.open_outline() as outline:
        (title,) = outline.root
        assert title.title == "Harbour Kit Bag"
        assert [each.title for each in title.children] == [
            "Before you start",
            "Materials",
            "Tools",
            "Cutting list",
            "The pieces",
            "Steps",
            "When you sell what you sew",
        ]
        steps = next(each for each in title.children if each.title == "Steps")
        assert [each.title for each in steps.children] == ["The badge", "The outer bag", "The lining"]


def test_fonts_are_embedded_and_bold_is_its_own(document):
    fonts = document.pages[0].Resources.Font
    names = {str(font.BaseFont).split("+")[1] for font in fonts.values()}
    assert names == {
        "Plain-Seam-Text",
        "Plain-Seam-Text-Semi-Bold",
        "Plain-Seam-Text-Italic",
        "Plain-Seam-Title-Semi-Bold",
        "Plain-Seam-Label",
        "Plain-Seam-Label-Semi-Bold",
    }
    for font in fonts.values():
        descriptor = font.DescendantFonts[0].FontDescriptor
        assert len(descriptor.FontFile2.read_bytes()) > 500
        assert "/ToUnicode" in font


# -- tags ----------------------------------------------------------------------------------------


def test_every_header_cell_says_of_what(document):
    cells = elements(document, "/TH")
    assert len(cells) > 20
    for cell, above in cells:
        assert cell.A.Scope == ("/Column" if above[-2] == "/THead" else "/Row")


def test_cells_point_at_no_headers_twice(document):
    for cell, _ in elements(document):
        assert "/ID" not in cell
        if cell.S == "/TD":
            assert "/Headers" not in cell.get("/A", {})


def test_list_items_are_a_label_and_a_body(document):
    items = elements(document, "/LI")
    assert len(items) >= 15
    for item, _ in items:
        kinds = [str(kid.S) for kid in item.K]
        assert kinds in (["/Lbl", "/LBody"], ["/LBody"])
        for kid in item.K:
            assert kid.P.objgen == item.objgen
            for inner in kid.K:
                if isinstance(inner, pikepdf.Dictionary) and "/S" in inner:
                    assert inner.P.objgen == kid.objgen


def test_figures_have_words_and_a_box_on_their_page(document):
    figures = [figure for figure, _ in elements(document, "/Figure")]
    assert len(figures) == 6  # five drawings, and the code that leads to the page
    for figure in figures:
        assert len(str(figure.Alt)) > 20
        left, bottom, right, top = map(float, figure.A.BBox)
        page_left, page_bottom, page_right, page_top = map(float, figure.Pg.MediaBox)
        assert page_left < left < right < page_right
        assert page_bottom < bottom < top < page_top
    layout = figures[3].A.BBox
    width, height = (float(layout[2]) - float(layout[0])), (float(layout[3]) - float(layout[1]))
    assert width * 25.4 / 72 == pytest.approx(120, abs=0.05)
    assert height * 25.4 / 72 == pytest.approx(62, abs=0.05)


def test_headings_never_skip_a_rank(document):
    ranks = [int(str(each.S)[2]) for each, _ in elements(document) if re.fullmatch(r"/H\d", str(each.S))]
    assert ranks[0] == 1
    assert all(below <= above + 1 for above, below in pairwise(ranks))


def marked(page) -> tuple[set[int], list[str]]:
    """The numbers of the marked contents of a page, and the kinds of its artifacts."""
    numbers: set[int] = set()
    aside: list[str] = []
    for operands, operator in pikepdf.parse_content_stream(page):
        if str(operator) == "BDC" and operands[0] == "/Artifact":
            aside.append(str(operands[1].Type))
        elif str(operator) == "BDC":
            numbers.add(int(operands[1].MCID))
    return numbers, aside


def test_all_content_is_tagged_or_an_artifact(document):
    nums = document.Root.StructTreeRoot.ParentTree.Nums
    parents = {int(nums[place]): nums[place + 1] for place in range(0, len(nums), 2)}
    reached = {element.objgen for element, _ in elements(document)}
    for page in document.pages:
        numbers, aside = marked(page)
        owners = parents[int(page.StructParents)]
        assert numbers
        for number, owner in enumerate(owners):
            if number in numbers:
                assert owner.objgen in reached
            else:
                assert owner is None
        assert aside.count("/Pagination") >= 3, "title, version and page number stand in the foot"


def test_links_in_the_tree_have_their_annotations(document):
    links = [
        str(note.A.URI) for page in document.pages for note in page.get("/Annots", []) if note.A.S == "/URI"
    ]
    assert "https://tidewrack.example/video#t=255" in links
    assert all(link.startswith("https://tidewrack.example") for link in links)


# -- words ---------------------------------------------------------------------------------------


def test_the_foot_of_each_page(text):
    pages = text.split("\f")[:-1]
    for number, page in enumerate(pages, start=1):
        foot = page.strip().split("\n")[-1]
        assert "Harbour Kit Bag · Tall" in foot
        assert "Tidewrack sewing room · version 2" in foot
        assert f"Page {number} of {len(pages)}" in foot


def test_fractions_look_built_and_read_as_typed(text):
    assert "22 cm (8 3/4 in)" in text
    assert "½" not in text and "⁄" not in text
    assert "9 1/2 in × 13 in" in text


def test_no_measure_is_broken_between_two_lines(tmp_path):
    """A page full of measures, each line beginning elsewhere: every line holds whole ones only."""
    measures = [
        para("x" * shift + " ", *[part for _ in range(12) for part in (pair("121.5 cm", "47 7/8 in"), " ")])
        for shift in range(1, 20)
    ]
    (made,) = pdf(replace(MUG_MAT, intro=tuple(measures), stages=()), THEME, PUBLISHER, ("A4",))
    (tmp_path / "full.pdf").write_bytes(made)
    read = run("pdftotext", "-layout", tmp_path / "full.pdf", "-")
    lines = [line.strip() for line in read.split("\n") if "7/8" in line or "121.5" in line]
    assert len(lines) >= 19 * 3
    assert read.count("121.5 cm") == read.count("(47 7/8 in)") == 19 * 12
    for line in lines:
        assert re.fullmatch(r"(x+ ?)?((121\.5 cm|\(47 7/8 in\)) ?)*", line), line


def test_step_numbers_run_through_and_do_not_restart(text):
    steps = text[text.index("The badge") :]
    numbers = [int(found) for found in re.findall(r"^\s*(\d+)\.(?:\s|$)", steps, re.MULTILINE)]
    assert numbers == [1, 2, 3, 4, 5, 6, 7, 8, 8, 9]


def test_marks_are_words_on_paper(text):
    for words_of_mark in ("Optional", "Take care", "Or", "In the video at 9:02"):
        assert re.search(rf"\b{words_of_mark}\b", text)


def test_a_draft_says_so_on_every_page(tmp_path):
    (made,) = pdf(MUG_MAT, THEME, PUBLISHER, ("A4",))
    (tmp_path / "mat.pdf").write_bytes(made)
    read = run("pdftotext", "-layout", tmp_path / "mat.pdf", "-")
    assert "Draft, not released" in read
    assert "version 1 · draft" in read
    assert "proved" not in read


def test_a_table_is_not_torn_from_its_head(tmp_path):
    """Forty rows run over pages: the head stands on each, and never fewer than two rows with it."""
    long = replace(SMALL, cutting=SMALL.cutting * 6)
    (made,) = pdf(long, THEME, PUBLISHER, ("A4",))
    (tmp_path / "long.pdf").write_bytes(made)
    pages = run("pdftotext", "-layout", tmp_path / "long.pdf", "-").split("\f")
    with_rows = [page for page in pages if "side strip" in page.split("The badge")[0]]
    assert len(with_rows) >= 3
    for page in with_rows:
        assert page.count("Piece ") == 1
        assert len(re.findall(r" (linen|canvas|lining|cord|stabiliser)\s+\d ", page)) >= 2


def test_a_table_over_pages_is_one_table_and_its_head_is_read_once():
    """What is printed again stands in no element of the tree: its marks are artifacts."""
    long = replace(SMALL, cutting=SMALL.cutting * 6)
    (made,) = pdf(long, THEME, PUBLISHER, ("A4",))
    with pikepdf.open(io.BytesIO(made)) as document:
        tables = [table for table, _ in elements(document, "/Table")]
        heads = [[str(kid.S) for kid in table.K].count("/THead") for table in tables]
        assert heads == [0, 1, 1, 1], "facts, materials, cutting list, and one in the notes"
        rows = [each for each, above in elements(document, "/TR") if above[-1] == "/TBody"]
        assert len(rows) >= len(long.cutting) + len(long.materials)
        for table in tables:
            assert all(kid.P.objgen == table.objgen for kid in table.K)
        aside = [marked(page)[1].count("/Pagination") for page in document.pages]
        assert max(aside) > 3 == min(aside), "besides the foot, the head that is printed again"


def test_a_step_is_kept_together(tmp_path):
    """Steps of five lines each: the words of one never stand on two pages."""
    filler = "word " * 75
    stage = StageText(
        (Text("Long"),),
        tuple(
            StepText(number, SMALL.stages[0].steps[0].marks, (para(f"begin{number} {filler} end{number}"),))
            for number in range(1, 31)
        ),
    )
    (made,) = pdf(replace(SMALL, stages=(stage,)), THEME, PUBLISHER, ("A4",))
    (tmp_path / "long.pdf").write_bytes(made)
    pages = run("pdftotext", tmp_path / "long.pdf", "-").split("\f")
    for number in range(1, 31):
        (page,) = (page for page in pages if re.search(rf"\bbegin{number}\b", page))
        assert re.search(rf"\bend{number}\b", page)


def test_a_drawing_prints_at_its_true_size(tmp_path):
    """The layout drawing's hatched field is 112 mm wide; so is its clip in the finished page."""
    (made,) = pdf(replace(MUG_MAT, pieces=(layout_drawing(),)), THEME, PUBLISHER, ("Letter",))
    with pikepdf.open(io.BytesIO(made)) as document:
        figure, _ = (figure for figure, _ in elements(document, "/Figure"))  # the code of the page is last
        left, _, right, _ = map(float, figure.A.BBox)
        assert (right - left) * 25.4 / 72 == pytest.approx(120, abs=0.01)


def test_the_file_is_sound(tall, tmp_path):
    for paper, content in tall.items():
        (tmp_path / f"{paper}.pdf").write_bytes(content)
        assert "No syntax or stream encoding errors" in run("qpdf", "--check", tmp_path / f"{paper}.pdf")
