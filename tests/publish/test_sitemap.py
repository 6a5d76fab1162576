"""The sitemap, held against the protocol (sitemaps.org, 0.9), and against the pages that there are."""

from __future__ import annotations

import re
from dataclasses import replace
from urllib.parse import urlsplit
from xml.etree import ElementTree

from publish.releases import CATALOGUE, NO_PDF

from presscloth.publish.site import publish
from presscloth.publish.sitemap import robots_txt

NAMESPACE = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
DAY = re.compile(r"\d{4}(-\d\d(-\d\d)?)?")  # W3C Datetime, the forms without a time of day


def listed(site) -> dict[str, str]:
    """The pages of a sitemap with the day of their last change; asserts what the protocol demands."""
    root = ElementTree.fromstring((site / "sitemap.xml").read_bytes())
    assert root.tag == f"{NAMESPACE}urlset"
    found = {}
    for url in root:
        assert url.tag == f"{NAMESPACE}url"
        names = [child.tag.removeprefix(NAMESPACE) for child in url]
        assert names in (["loc"], ["loc", "lastmod"])
        address = urlsplit(url[0].text)
        assert (address.scheme, address.netloc) == ("https", "tidewrack.example")  # whole, all on one host
        assert len(url[0].text) < 2048  # characters; the protocol's limit
        assert len(names) == 1 or DAY.fullmatch(url[1].text)
        found[address.path.removeprefix("/")] = url[1].text if len(names) == 2 else ""
    assert len(found) == len(root)
    return found


def test_every_page_that_is_no_draft_and_no_other_file(tmp_path):
    site = tmp_path / "site"
    written = publish(CATALOGUE, (), NO_PDF, site)
    pages = {name for name in written.files if name.endswith(".html")}
    assert set(listed(site)) == pages - {"draft/index.html"}


def test_days_are_those_of_the_recipes(tmp_path):
    publish(CATALOGUE, (), NO_PDF, tmp_path / "site")
    days = listed(tmp_path / "site")
    assert days["half-tide-quilt/index.html"] == "2027-08-02"
    assert days["apron/index.html"] == "2027-06-01"
    assert days["undated/index.html"] == "" == days["standing/glossary.html"]
    assert days["skills/binding.html"] == "2027-08-02"
    assert days["crafts/dressmaking.html"] == "2027-06-01"
    assert days["index.html"] == "2027-08-02"  # the draft of September does not count


def test_a_kept_recipe_stays_in_everything(tmp_path):
    site = tmp_path / "site"
    publish(CATALOGUE, (), NO_PDF, site)
    files = ("sitemap.xml", "feed.xml", "catalogue-words.js", "index.html", "skills/binding.html")
    before = {name: (site / name).read_bytes() for name in files}
    slugs = tuple(sorted(booklet.first.slug for booklet in CATALOGUE))
    publish((), slugs, NO_PDF, site)
    assert {name: (site / name).read_bytes() for name in files} == before


def test_robots_are_led_to_it_where_they_look():
    assert robots_txt(NO_PDF).splitlines()[-1] == "Sitemap: https://tidewrack.example/sitemap.xml"
    assert robots_txt(replace(NO_PDF, address="https://example.org/sewing")) == ""
