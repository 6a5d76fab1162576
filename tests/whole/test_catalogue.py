"""The catalogue of the shipped site: its search, its project, and every whole address that is told."""

from __future__ import annotations

import hashlib
import json
import re
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PIL import Image
from printing.pages import Page, words
from whole.shipped import SLUGS

ADDRESS = "https://tidewrack.example/"
ATOM = "{http://www.w3.org/2005/Atom}"


def read(site: Path, name: str) -> str:
    return (site / name).read_text(encoding="utf-8")


def test_every_whole_address_of_the_site_leads_to_a_file(shipped) -> None:
    """In pages, their data, the feed, the sitemap: an address of the site's own is a file of the site."""
    told: dict[str, set[str]] = {}
    for file in sorted(shipped.plain.rglob("*")):
        if file.suffix in (".html", ".xml", ".txt"):
            for address in re.findall(rf'{re.escape(ADDRESS)}[^"<>\s]*', file.read_text(encoding="utf-8")):
                told.setdefault(address.removeprefix(ADDRESS), set()).add(file.suffix)
    elsewhere = {name for name in told if name.startswith("video/")}  # not a file of the site
    missing = {name for name in told if not (shipped.plain / (name or "index.html")).is_file()} - elsewhere
    assert not missing
    assert {".html", ".xml", ".txt"} == set().union(*told.values())
    assert {f"{slug}/preview.png" for slug in SLUGS} <= set(told)


def test_the_feed_tells_of_every_recipe(shipped) -> None:
    feed = ElementTree.fromstring(read(shipped.plain, "feed.xml").encode())
    told = [entry.findtext(f"{ATOM}id") for entry in feed.findall(f"{ATOM}entry")]
    assert sorted(told) == [f"{ADDRESS}{slug}/index.html" for slug in SLUGS]
    moments = [entry.findtext(f"{ATOM}updated") for entry in feed.findall(f"{ATOM}entry")]
    assert moments == sorted(moments, reverse=True)


def test_the_tide_table_has_two_weeks(shipped) -> None:
    project = Page(read(shipped.plain, "projects/the-tide-table.html"))
    assert [words(each.text) for each in project.all("h2")] == ["Tide Table Runner", "Tide Table Napkins"]
    (links,) = Page(read(shipped.plain, "tide-table-runner/index.html")).all("nav", "parts")
    assert words(links.text) == "Week 1 of The Tide Table Week 2: Tide Table Napkins"
    assert not Page(read(shipped.plain, "slipway-apron/index.html")).all("nav", "parts")


@pytest.mark.parametrize("theme", ["plain-seam", "large-print"])
def test_every_preview_is_a_picture_of_its_own(shipped, theme) -> None:
    files = [shipped.of(theme) / slug / "preview.png" for slug in SLUGS]
    for file in files:
        with Image.open(file) as picture:
            assert (picture.format, picture.size) == ("PNG", (1200, 630))
        assert file.stat().st_size < 60_000
    assert len({hashlib.sha256(file.read_bytes()).digest() for file in files}) == len(SLUGS)


def test_data_for_search_engines_are_a_small_part_of_each_page(shipped) -> None:
    for slug in SLUGS:
        text = read(shipped.plain, f"{slug}/index.html")
        found = re.search(r'<script type="application/ld\+json">(.*?)</script>', text, re.DOTALL)
        assert found is not None
        assert len(found[1].encode()) < 8_000  # of the 150 kB that a page may weigh
        data = json.loads(found[1])
        steps = [step for part in data["step"] for step in part.get("itemListElement", [part])]
        assert data["@type"] == "HowTo" and data["supply"] and data["tool"]
        assert [step["position"] for step in steps] == sorted({step["position"] for step in steps})
        assert not re.search(r"[{}]", " ".join(step["text"] for step in steps))


@pytest.mark.browser
def test_the_search_finds_shipped_recipes_from_a_folder(shipped, browser) -> None:
    page = browser.new_context(offline=True).new_page()
    page.goto((shipped.plain / "index.html").as_uri())
    found = {}
    for query in ("runner", "napk", "bag", "binding quilt", "boxed corners", "walking foot", "zeppelin"):
        page.fill("input[name=q]", query)
        found[query] = page.locator(".found h3").all_inner_texts()
    assert found["runner"][0] == "Tide Table Runner"
    assert found["napk"] == ["Tide Table Napkins"]
    assert found["bag"][0] == "Harbour Kit Bag"
    assert set(found["binding quilt"][:2]) == {"Half-Tide Quilt", "Tide Table Runner"}
    assert found["boxed corners"] == ["Harbour Kit Bag"]
    assert {"Tide Table Runner", "Shingle Placemats"} <= set(found["walking foot"])
    assert found["zeppelin"] == []
    page.context.close()


def test_the_words_of_a_recipe_take_little(shipped) -> None:
    """Under 3 kB for each recipe, so that a hundred of them load like one page."""
    assert (shipped.plain / "catalogue-words.js").stat().st_size < 3_000 * len(SLUGS)
