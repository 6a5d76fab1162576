"""The shipped translation: whole, in its own language on paper too, with its numbers and units."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pikepdf
import pytest
from printing.tools import run

from presscloth.handout.tree import Publisher
from presscloth.measure import System
from presscloth.pipeline import Proved, booklets_of, prove
from presscloth.printing.html import html
from presscloth.printing.pdf import pdf
from presscloth.printing.text import text
from presscloth.printing.theme import open_theme
from presscloth.translation.wanted import every_run, names, paragraphs

ROOT = Path(__file__).parents[2]
PUBLISHER = Publisher("Tidewrack sewing room", "", ("A4",), (), "plain-seam")


@pytest.fixture(scope="module")
def runner() -> Proved:
    return prove(ROOT / "recipes" / "tide-table-runner" / "recipe.md")


def test_every_paragraph_and_name_is_translated(runner: Proved):
    assert runner.recipe is not None
    (german,) = runner.translations
    assert (german.language, german.leading) == ("de", System.METRIC)
    assert [problem.message() for problem in runner.problems] == []
    facts = {each.text for each in paragraphs(runner.recipe) if not each.of}
    assert set(german.names) == facts | {each.text for each in names(runner.recipe)}
    assert len(german.runs) == len(list(every_run(runner.recipe)))


def test_the_german_handout_says_what_the_english_one_does(runner: Proved):
    english, german = (booklet.handouts[1] for booklet in booklets_of(runner, PUBLISHER))
    assert (english.size, german.size) == ("Medium", "Mittel")
    assert (english.systems[0], german.systems[0]) == (System.IMPERIAL, System.METRIC)
    in_english, in_german = (" ".join(text(each).split()) for each in (english, german))
    assert "7. Measure the column down its middle" in in_english
    assert "7. Die Mittelbahn in der Mitte messen" in in_german
    assert "11 1/2 in (29.2 cm) wide and 53 1/2 in (134.2 cm) long" in in_english
    assert "29,2 cm (11 1/2 Zoll) breit und 134,2 cm (53 1/2 Zoll) lang" in in_german
    assert "180 cm (1 7/8 Yards)" in in_german
    # Each figure of the one stands in the other, whatever leads: the trade measures are the same. How
    # often differs, since a name that does not fit into its piece is told below the drawing.
    inches = [set(re.findall(r"\d[\d /]*(?= in\b| Zoll)", each)) for each in (in_english, in_german)]
    assert inches[0] == inches[1] and len(inches[0]) > 20


def test_pages_lead_to_each_other_and_name_their_language(runner: Proved):
    pages = [html(each, open_theme("plain-seam"), PUBLISHER) for each in booklets_of(runner, PUBLISHER)]
    assert ['<html lang="en-GB">' in pages[0], '<html lang="de">' in pages[1]] == [True, True]
    for page in pages:
        assert 'hreflang="de" href="../tide-table-runner-de/index.html"' in page
        assert 'hreflang="en-GB" href="../tide-table-runner/index.html"' in page


@pytest.fixture(scope="module")
def paper(runner: Proved) -> bytes:
    handout = booklets_of(runner, PUBLISHER)[1].handouts[0]
    (content,) = pdf(handout, open_theme("plain-seam"), PUBLISHER, ("A4",))
    return content


def test_the_paper_knows_its_language(paper: bytes):
    with pikepdf.open(io.BytesIO(paper)) as read:
        assert str(read.Root.Lang) == "de"
        assert str(read.docinfo["/Title"]) == "Tischläufer Gezeitentafel, Klein"


@pytest.mark.browser
def test_the_paper_counts_in_german_and_breaks_long_words(paper: bytes, tmp_path: Path):
    file = tmp_path / "klein.pdf"
    file.write_bytes(paper)
    said = run("pdftotext", file, "-")
    assert re.search(r"Seite 1 von \d+", said)
    assert "Page" not in said
    assert re.search(r"[a-zäöüß][-\u2010]\n[a-zäöüß]", said)
