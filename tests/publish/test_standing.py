"""The standing pages."""

import re
from pathlib import Path

import pytest
from printing.pages import Page, words
from printing.samples import PUBLISHER

from presscloth.printing.shipped import standing_folder
from presscloth.printing.theme import open_theme
from presscloth.publish.standing import standing_html, standing_links, standing_pages

SHIPPED = tuple(page for page in standing_pages() if page.language == "en")


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
    assert standing_pages(tmp_path / "none") == standing_pages()


def test_a_translation_by_its_file_name(tmp_path: Path):
    (tmp_path / "nap.md").write_text("# Nap\n\n[Grain](grain.md#bias) [Bolt](bolt.md)\n", encoding="utf-8")
    (tmp_path / "nap.de.md").write_text("# Strich\n\n[Fadenlauf](grain.md#bias) [B](bolt.md)\n", "utf-8")
    (tmp_path / "grain.md").write_text("# Grain\n", encoding="utf-8")
    (tmp_path / "grain.de.md").write_text("# Fadenlauf\n", encoding="utf-8")
    (tmp_path / "bolt.md").write_text("# Bolt\n", encoding="utf-8")
    pages = {page.name: page for page in standing_pages(tmp_path)}
    strich = pages["nap-de"]
    assert (strich.title, strich.language, strich.of) == ("Strich", "de", "nap")
    assert 'href="grain-de.html#bias"' in strich.content
    assert 'href="bolt.html"' in strich.content
    assert 'href="grain.html#bias"' in pages["nap"].content
    every = tuple(pages.values())
    german = {(link.name, link.title, link.language) for link in standing_links(every, "de-AT")}
    assert german == {
        ("nap-de", "Strich", ""),
        ("grain-de", "Fadenlauf", ""),
        ("bolt", "Bolt", "en"),
    }
    assert {link.title for link in standing_links(every, "en-GB")} == {"Nap", "Grain", "Bolt"}
    page = standing_html(strich, every, open_theme("plain-seam"), PUBLISHER)
    assert '<html lang="de">' in page
    assert '<a href="nap.html" lang="en" hreflang="en">English</a>' in page
    assert "Zum Inhalt springen" in page
    assert '<a href="../standing/bolt.html" lang="en" hreflang="en">Bolt</a>' in page


def test_what_is_shipped_is_there_in_german():
    pages = standing_pages(None, "de")
    assert {page.of for page in pages if page.language == "de"} == {page.of for page in pages}
    assert {page.name for page in pages if page.language == "en"} == {"glossary", "how-to-measure", "safety"}
