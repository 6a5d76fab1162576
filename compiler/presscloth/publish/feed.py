"""The feed of releases, for whoever wants to be told of them: Atom (RFC 4287).

Its dates are those of the recipes and never the clock's: a recipe without a day of revision counts
from the first day of its month of release.
"""

from __future__ import annotations

from collections.abc import Iterator
from xml.etree import ElementTree
from xml.etree.ElementTree import Element, SubElement

from presscloth.handout.tree import Publisher
from presscloth.printing.howto import page_address
from presscloth.printing.names import RELEASE
from presscloth.publish.entry import CatalogueEntry
from presscloth.publish.lists import others_of

FEED_FILE = "feed.xml"
ATOM = "http://www.w3.org/2005/Atom"
XML_LANGUAGE = "{http://www.w3.org/XML/1998/namespace}lang"
BEFORE_ALL = "1970-01-01"  # a feed must have a date (RFC 4287, 4.1.1), one without releases too


def changed_on(entry: CatalogueEntry) -> str:
    """The day on which this version of a recipe came out, empty where it has no date."""
    return entry.revised or _released_on(entry)


def feed_xml(
    shown: tuple[CatalogueEntry, ...], entries: tuple[CatalogueEntry, ...], publisher: Publisher
) -> str:
    """Write the releases, those that changed last first; drafts and what has no date are left out.

    A recipe's id is its address, which stays the same from version to version. Each is told of once,
    as it is `shown`; its other languages, out of `entries`, are links.
    """
    told = sorted(
        (entry for entry in shown if not entry.draft and changed_on(entry)), key=changed_on, reverse=True
    )
    home = page_address(publisher, "")
    feed = Element("feed", {"xmlns": ATOM})
    _text(feed, "id", home)
    _text(feed, "title", publisher.name)
    if publisher.about:
        _text(feed, "subtitle", publisher.about)
    _text(feed, "updated", _moment(changed_on(told[0]) if told else BEFORE_ALL))
    _text(SubElement(feed, "author"), "name", publisher.name)
    SubElement(feed, "link", {"rel": "self", "href": page_address(publisher, FEED_FILE)})
    SubElement(feed, "link", {"rel": "alternate", "type": "text/html", "href": home})
    for entry in told:
        feed.append(_entry(entry, others_of(entry, entries), publisher))
    ElementTree.indent(feed)
    return f'<?xml version="1.0" encoding="utf-8"?>\n{ElementTree.tostring(feed, encoding="unicode")}\n'


def _entry(entry: CatalogueEntry, others: tuple[CatalogueEntry, ...], publisher: Publisher) -> Element:
    address = page_address(publisher, f"{entry.slug}/index.html")
    element = Element("entry", {XML_LANGUAGE: entry.language})
    _text(element, "id", address)
    _text(element, "title", entry.title)
    _text(element, "updated", _moment(changed_on(entry)))
    if _released_on(entry):
        _text(element, "published", _moment(_released_on(entry)))
    for each in (entry, *others):
        to = page_address(publisher, f"{each.slug}/index.html")
        language = {"hreflang": each.language} if others else {}
        SubElement(element, "link", {"rel": "alternate", "type": "text/html", **language, "href": to})
    for craft in entry.crafts:
        SubElement(element, "category", {"term": craft})
    _text(element, "summary", entry.summary or entry.title)
    return element


def _text(above: Element, name: str, text: str) -> None:
    SubElement(above, name).text = "".join(_of_xml(text))


def _of_xml(text: str) -> Iterator[str]:
    """What may stand in XML 1.0 (2.2); a title hardly has anything else."""
    return (
        sign for sign in text if sign in "\t\n\r" or " " <= sign <= "\ud7ff" or "\ue000" <= sign not in "￾￿"
    )


def _released_on(entry: CatalogueEntry) -> str:
    return f"{entry.release}-01" if RELEASE.fullmatch(entry.release) else ""


def _moment(day: str) -> str:
    """The beginning of a day as RFC 3339 writes it."""
    return f"{day}T00:00:00Z"
