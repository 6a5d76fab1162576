"""The list of pages for search engines (sitemaps.org, protocol 0.9), and where they find it."""

from __future__ import annotations

from collections.abc import Iterator
from urllib.parse import quote, urlsplit
from xml.etree import ElementTree
from xml.etree.ElementTree import Element, SubElement

from presscloth.handout.tree import Publisher
from presscloth.printing.howto import page_address
from presscloth.publish.entry import CatalogueEntry
from presscloth.publish.feed import changed_on
from presscloth.publish.lists import CatalogueList

SITEMAP_FILE = "sitemap.xml"
SITEMAP = "http://www.sitemaps.org/schemas/sitemap/0.9"


def sitemap_xml(
    entries: tuple[CatalogueEntry, ...],
    lists: tuple[CatalogueList, ...],
    standing: tuple[str, ...],
    publisher: Publisher,
) -> str:
    """Write the pages of a site, each with the day of its last change where the recipes tell it.

    A list is as new as the newest of its recipes. Drafts are left out. `standing` are the files of
    the standing pages.
    """
    root = Element("urlset", {"xmlns": SITEMAP})
    for file, day in _pages(tuple(entry for entry in entries if not entry.draft), lists, standing):
        url = SubElement(root, "url")
        SubElement(url, "loc").text = page_address(publisher, quote(file))
        if day:
            SubElement(url, "lastmod").text = day
    ElementTree.indent(root)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{ElementTree.tostring(root, encoding="unicode")}\n'


def robots_txt(publisher: Publisher) -> str:
    """Where the sitemap is; empty where the site is not at the root of its host, for nobody looks there."""
    if urlsplit(publisher.address).path.strip("/"):
        return ""
    return f"User-agent: *\nAllow: /\n\nSitemap: {page_address(publisher, SITEMAP_FILE)}\n"


def _pages(
    entries: tuple[CatalogueEntry, ...], lists: tuple[CatalogueList, ...], standing: tuple[str, ...]
) -> Iterator[tuple[str, str]]:
    yield "index.html", _newest(entries)
    for each in lists:
        released = tuple(entry for entry in each.entries if not entry.draft)
        if released:
            yield each.file, _newest(released)
    for entry in entries:
        yield f"{entry.slug}/index.html", changed_on(entry)
    for file in standing:
        yield file, ""


def _newest(entries: tuple[CatalogueEntry, ...]) -> str:
    return max(map(changed_on, entries), default="")
