"""The standing pages."""

import re
from pathlib import Path

import pytest
from printing.pages import Page, words
from printing.samples import PUBLISHER

from presscloth.printing.shipped import standing_folder
from presscloth.printing.theme import open_theme
from presscloth.publish.standing import standing_html, standing_pages

SHIPPED = standing_pages()


def page_of(tmp_path: Path, text: str) -> Page:
    (tmp_path / "page.md").write_text(text, encoding="utf-8")
    pages = standing_pages(tmp_path)
    return Page(standing_html(pages[0], pages, open_theme(), PUBLISHER))


def test_the_shipped_pages():
    assert [(page.name, page.title) for page in SHIPPED] == [
        ("glossary", "Glossary"),
        ("how-to-measure", "How to measure"),
        ("safety", "Safety"),
    ]


def test_the_glossary_has_the_words_of_the_trade():
    """Each term that the house settled on stands in bold at the head of its entry."""
    text = (standing_folder() / "glossary.md").read_text(encoding="utf-8")
    terms = {
        term.casefold() for entry in re.findall(r"^\*\*(.+?)\.\*\*", text, re.M) for term in entry.split(", ")
    }
    assert {
        "seam allowance", "right side", "grain", "selvedge", "nap", "wadding", "stabiliser", "interfacing",
        "stitch line",
    } <= terms  # fmt: skip


def test_safety_defers_to_the_rules_of_the_place():
    text = words((standing_folder() / "safety.md").read_text(encoding="utf-8"))
    assert "they do not replace anything. The rules of the place" in text


@pytest.mark.parametrize("name", ["glossary", "how-to-measure", "safety"])
def test_a_shipped_page_holds_together(name):
    (page,) = (page for page in SHIPPED if page.name == name)
    read = Page(standing_html(page, SHIPPED, open_theme(), PUBLISHER))
    assert words(read.all("h1")[0].text) == page.title
    assert read.heading_ranks.count(1) == 1
    assert len(read.ids) == len(set(read.ids))
    (here,) = (link for link in read.all("a") if "aria-current" in link.attributes)
    assert here.attributes["href"] == f"../standing/{name}.html"


def test_raw_html_is_shown_as_text(tmp_path):
    page = page_of(
        tmp_path, "# T\n\n<script>alert(1)</script>\n\nx <img src=x onerror=y> [l](javascript:z)\n"
    )
    assert not page.all("script") and not page.all("img")
    assert "<script>alert(1)</script>" in page.all("article")[0].text
    assert not [link for link in page.all("a") if "javascript" in link.attributes["href"]]


def test_headings_can_be_pointed_at(tmp_path):
    page = page_of(tmp_path, "# Words\n\n## Nap\n\nx\n\n## Nap\n\n## Content\n\n[up](page.md#nap)\n")
    assert [each.attributes["id"] for each in page.all("h2")] == ["nap", "nap-2", "content-2"]
    assert page.all("article")[0].inside[-1].attributes["href"] == "page.html#nap"


def test_a_page_without_a_title_is_called_by_its_file(tmp_path):
    assert words(page_of(tmp_path, "Only text.\n").all("h1")[0].text) == "page"


def test_tables_are_tables(tmp_path):
    page = page_of(tmp_path, "# T\n\n| a | b |\n|---|---|\n| 1 | 2 |\n")
    assert len(page.all("td")) == 2


def test_without_a_folder_the_shipped_pages_stand_in(tmp_path):
    assert standing_pages(tmp_path / "none") == SHIPPED
