"""The presenter's cue sheet: every step with its time, every measure in words, in large type."""

from __future__ import annotations

import io
import re
from dataclasses import replace

import pikepdf
import pytest
from printing.making import pair, para, words
from printing.pages import Page
from printing.samples import BAG, MUG_MAT, PUBLISHER, TALL
from printing.tagged import elements
from printing.tools import run

from presscloth.handout.cues import cue_sheet
from presscloth.handout.tree import (
    Booklet,
    Divider,
    Emphasis,
    Figure,
    Foreign,
    Grid,
    Heading,
    Image,
    Listing,
    Marks,
    NewLine,
    Quote,
    StageText,
    StepText,
    Text,
    Verbatim,
)
from presscloth.printing.cues import cues_html, cues_pdf, cues_text, heading
from presscloth.printing.html import cues_name, html
from presscloth.printing.paper import PAPERS, points
from presscloth.printing.theme import open_theme


def sheet_of(*content, marks=None):
    step = StepText(1, marks or Marks(), content)
    return cue_sheet(replace(MUG_MAT, stages=(StageText((), (step,)),)))


def said(*content, marks=None):
    (stage,) = sheet_of(*content, marks=marks).stages
    return stage.cues[0].said


def test_measures_are_spoken_and_other_numbers_are_not():
    strip = para("Sew strip 3 with ", pair("6 mm", "1/4 in"), " seams, then press.")
    assert said(strip) == ("Sew strip 3 with six millimetres or a quarter of an inch seams, then press.",)
    about = para("Leave ", pair("12.5 cm", "5 in", "about"), " open.")
    assert said(about) == ("Leave about twelve point five centimetres or five inches open.",)


def test_everything_that_a_step_can_hold_is_said(tmp_path):
    picture = Image(tmp_path / "corner.jpg", "corner.jpg", "a boxed corner")
    content = (
        Heading(1, words("The corner")),
        para("Fold ", Emphasis(words(pair("1 cm", "3/8 in")), strong=True), NewLine(), "twice."),
        Listing(((para("left"),), (para("right"),)), None),
        Quote((para("Slowly."),)),
        Verbatim("L R"),
        Grid((words("edge"), words("by")), ((words("left"), words(pair("2 cm", "3/4 in"))),)),
        Figure(picture),
        Figure(picture, words("Boxed by ", pair("4 cm", "1 1/2 in"))),
        Divider(),
        para("Und zuletzt ", Foreign("de", words(Text("die Kante."))), marks=Marks(at="9:02", care=True)),
    )
    assert said(*content) == (
        "The corner",
        "Fold one centimetre or three eighths of an inch twice.",
        "left",
        "right",
        "Slowly.",
        "L R",
        "edge, by",
        "left, two centimetres or three quarters of an inch",
        "Show: a boxed corner",
        "Show: Boxed by four centimetres or one and a half inches",
        "Take care. In the video at 9:02. Und zuletzt die Kante.",
    )


def test_steps_keep_their_times_and_order():
    sheet = cue_sheet(TALL)
    cues = [cue for stage in sheet.stages for cue in stage.cues]
    steps = [step for stage in TALL.stages for step in stage.steps if not step.elsewhere]
    assert [(cue.number, cue.at) for cue in cues] == [(step.number, step.marks.at) for step in steps]
    assert [cue.at for cue in cues if cue.at] == ["4:15", "9:02"]
    (care,) = (cue for cue in cues if cue.at == "9:02")
    assert "Take care" in care.marks


def test_what_another_size_does_is_left_out():
    steps = (StepText(1, Marks(), (), elsewhere="Large only"), StepText(2, Marks(), (para("Press."),)))
    (stage,) = cue_sheet(replace(MUG_MAT, stages=(StageText((), steps),))).stages
    assert [(cue.number, cue.said) for cue in stage.cues] == [(2, ("Press.",))]


def test_as_text():
    text = cues_text(cue_sheet(TALL))
    assert text.startswith("Harbour Kit Bag, Tall: cue sheet\n================================\n")
    assert re.search(r"^  4:15  3   \S", text, re.MULTILINE)
    assert all(len(line) <= 88 for line in text.splitlines())
    assert not re.search(r"\d (?:cm|mm|in|m|yd)\b", text)


def test_in_german():
    step = StepText(1, Marks(at="1:20"), (para("Nähte von ", pair("3,2 cm", "1 1/4 Zoll"), "."),))
    german = replace(MUG_MAT, language="de", stages=(StageText((), (step,)),), finished=())
    (stage,) = cue_sheet(german).stages
    assert stage.cues[0].said == ("Nähte von drei Komma zwei Zentimeter oder ein und ein viertel Zoll.",)


def test_the_page_has_no_figure_for_a_measure():
    page = cues_html(cue_sheet(TALL), open_theme(), PUBLISHER)
    assert heading(cue_sheet(TALL)) in page
    assert not re.search(r"\d (?:cm|mm|in|m|yd)\b", re.sub(r"<[^>]*>", "", page))


def test_names():
    assert cues_name(TALL, "tall", "Letter") == "harbour-kit-bag-tall-cue-sheet-letter.pdf"


@pytest.fixture(scope="module", params=["plain-seam", "large-print"])
def printed(request):
    return cues_pdf(TALL, open_theme(request.param), PUBLISHER, ("A4", "Letter"))


def test_both_papers_bear_the_same_sheet(printed):
    for paper, made in zip(("A4", "Letter"), printed, strict=True):
        with pikepdf.open(io.BytesIO(made)) as document:
            left, bottom, right, top = (float(place) for place in document.pages[0].MediaBox)
            width, height = PAPERS[paper]
            assert (round(right - left, 1), round(top - bottom, 1)) == (
                round(points(width), 1),
                round(points(height), 1),
            )
            cells = [str(each.A.Scope) for each, _ in elements(document, "/TH")]
            assert cells.count("/Column") >= 3 and "/Row" in cells


@pytest.mark.browser
def test_what_is_said_is_large(printed, tmp_path):
    """Every letter is 18 points high or more, what is said 20."""
    file = tmp_path / "cues.pdf"
    file.write_bytes(printed[0])
    boxes = run("pdftotext", "-bbox-layout", file, "-")
    heights = [
        float(found[2]) - float(found[1])
        for found in re.finditer(r'<word [^>]*yMin="([\d.]+)"[^>]*yMax="([\d.]+)"', boxes)
    ]
    assert len(heights) > 60
    assert min(heights) >= 18
    assert sorted(heights)[len(heights) // 2] >= 20


def test_the_same_bytes_again(printed):
    themes = ("plain-seam", "large-print")
    again = [cues_pdf(TALL, open_theme(theme), PUBLISHER, ("A4", "Letter")) for theme in themes]
    assert printed in again


def test_every_size_has_its_own_measures():
    texts = {cues_text(cue_sheet(handout)) for handout in BAG.handouts}
    assert len(texts) == len(BAG.handouts)


def test_the_page_lists_them_under_the_video():
    page = Page(html(BAG, open_theme(), PUBLISHER, ("A4", "Letter")))
    (listed,) = [each for each in page.all("details") if each.attributes.get("class") == "cues"]
    links = [(each.text, each.attributes["href"]) for each in listed.inside if each.tag == "a"]
    assert links == [
        (f"{size}, {paper} (PDF)", f"harbour-kit-bag-{size.lower()}-cue-sheet-{paper.lower()}.pdf")
        for size in ("Small", "Tall", "Large")
        for paper in ("A4", "Letter")
    ]
    silent = Booklet(tuple(replace(each, video="") for each in BAG.handouts))
    for none in (html(silent, open_theme(), PUBLISHER, ("A4",)), html(BAG, open_theme(), PUBLISHER)):
        assert "cue-sheet" not in none
