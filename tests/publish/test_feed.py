"""The feed, held against the clauses of RFC 4287 and read by a general reader of feeds."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import datetime
from xml.etree import ElementTree

import feedparser
from publish.releases import CATALOGUE, NO_PDF, recipe

from presscloth.publish.entry import entry_of
from presscloth.publish.feed import feed_xml
from presscloth.publish.lists import in_order

ENTRIES = in_order(tuple(map(entry_of, CATALOGUE)))
FEED = feed_xml(ENTRIES, ENTRIES, NO_PDF)
ATOM = "{http://www.w3.org/2005/Atom}"  # RFC 4287, 2
ONE, SOME, ANY, MAYBE = (1, 1), (1, 99), (0, 99), (0, 1)
OF_FEED = {  # RFC 4287, 4.1.1: how often each element may stand in a feed
    "author": ANY, "category": ANY, "contributor": ANY, "generator": MAYBE, "icon": MAYBE, "logo": MAYBE,
    "id": ONE, "link": ANY, "rights": MAYBE, "subtitle": MAYBE, "title": ONE, "updated": ONE, "entry": ANY,
}  # fmt: skip
OF_ENTRY = {  # RFC 4287, 4.1.2
    "author": ANY, "category": ANY, "content": MAYBE, "contributor": ANY, "id": ONE, "link": ANY,
    "published": MAYBE, "rights": MAYBE, "source": MAYBE, "summary": MAYBE, "title": ONE, "updated": ONE,
}  # fmt: skip
MOMENT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ")  # RFC 4287, 3.3, with the capital T and Z


def faults(xml: str) -> list[str]:
    """What a feed does that RFC 4287 forbids."""
    root = ElementTree.fromstring(xml.encode())
    found = [] if root.tag == f"{ATOM}feed" else [f"root {root.tag}"]
    for element, allowed in ((root, OF_FEED), *((entry, OF_ENTRY) for entry in root.findall(f"{ATOM}entry"))):
        names = [child.tag.removeprefix(ATOM) for child in element]
        found += [f"no element {name}" for name in names if name not in allowed]
        found += [
            f"{name} {names.count(name)} times"
            for name, (least, most) in allowed.items()
            if not least <= names.count(name) <= most
        ]
        for name in ("updated", "published"):
            found += [
                f"{name} {each.text}" for each in element.findall(ATOM + name) if not _is_moment(each.text)
            ]
        alternates = [
            link.attrib for link in element.findall(f"{ATOM}link") if link.get("rel") == "alternate"
        ]
        kinds = [(each.get("type"), each.get("hreflang")) for each in alternates]
        found += ["two alternates alike"] if len(set(kinds)) < len(kinds) else []  # 4.1.1, 4.1.2
        found += (
            [] if alternates or element.find(f"{ATOM}content") is not None else ["neither link nor content"]
        )
        found += ["a link leads nowhere" for link in element.findall(f"{ATOM}link") if not link.get("href")]
    authors = root.findall(f"{ATOM}author/{ATOM}name")
    found += [] if authors and all(name.text for name in authors) else ["nobody wrote it"]  # 4.1.1, 3.2.1
    ids = [each.text for each in root.iter(f"{ATOM}id")]
    found += [f"id {each}" for each in ids if not re.fullmatch(r"https?://\S+", each or "")]  # 4.2.6
    return found + (["an id twice"] if len(set(ids)) < len(ids) else [])


def _is_moment(text: str | None) -> bool:
    return bool(MOMENT.fullmatch(text or "")) and datetime.fromisoformat((text or "")[:-1]) is not None


def test_it_keeps_the_rules_of_atom():
    assert faults(FEED) == []
    assert ElementTree.fromstring(FEED.encode()).find(f"{ATOM}link[@rel='self']").get("href") == (
        "https://tidewrack.example/feed.xml"
    )


def test_a_fault_would_be_seen():
    assert faults(FEED.replace("<updated>2027-08-02T", "<updated>2027-08-02 ", 1)) != []
    assert faults(FEED.replace("<author>", "<creator>").replace("</author>", "</creator>")) != []
    assert faults(FEED.replace("half-tide-quilt", "apron")) == ["an id twice"]


def test_a_reader_of_feeds_reads_it():
    read = feedparser.parse(FEED.encode())
    assert not read.bozo
    assert (read.version, read.feed.title, read.feed.author) == (
        "atom10", "Tidewrack sewing room", "Tidewrack sewing room",
    )  # fmt: skip
    assert [(entry.title, entry.updated, entry.published) for entry in read.entries] == [
        ("Half-Tide Quilt", "2027-08-02T00:00:00Z", "2027-07-01T00:00:00Z"),
        ("Apron", "2027-06-01T00:00:00Z", "2027-06-01T00:00:00Z"),
        ("Crème Pouch & <Friends>", "2027-06-01T00:00:00Z", "2027-06-01T00:00:00Z"),
        ("Straße Smørrebrød Cloth", "2026-12-01T00:00:00Z", "2026-12-01T00:00:00Z"),
    ]
    assert read.feed.updated == "2027-08-02T00:00:00Z"
    quilt = read.entries[0]
    assert quilt.link == quilt.id == "https://tidewrack.example/half-tide-quilt/index.html"
    assert [tag.term for tag in quilt.tags] == ["Patchwork", "quilting"]
    assert quilt.summary == "Eddies of light and dark."


def test_drafts_and_what_has_no_date_are_not_told_of():
    assert "Secret" not in FEED and "Bolster" not in FEED


def test_a_corrected_recipe_keeps_its_id_and_comes_first():
    before = (entry_of(recipe("apron", "Apron", "2027-01")), entry_of(recipe("mat", "Mat", "2027-02")))
    after = (replace(before[0], version="2", revised="2027-03-09"), before[1])
    first = feedparser.parse(feed_xml(before, before, NO_PDF).encode()).entries
    second = feedparser.parse(feed_xml(after, after, NO_PDF).encode()).entries
    assert [entry.title for entry in first] == ["Mat", "Apron"]
    assert (second[0].title, second[0].updated) == ("Apron", "2027-03-09T00:00:00Z")
    assert {entry.id for entry in first} == {entry.id for entry in second}


def test_without_releases_it_is_still_a_feed():
    assert faults(feed_xml((), (), NO_PDF)) == []


def test_signs_that_xml_forbids_are_left_out():
    odd = entry_of(recipe("odd", "A\x08pron\x00 \ufffe\U0001f9f5", "2027-01"))
    read = feedparser.parse(feed_xml((odd,), (odd,), NO_PDF).encode())
    assert not read.bozo and read.entries[0].title == "Apron 🧵"


def test_an_address_with_a_path():
    there = replace(NO_PDF, address="https://example.org/sewing/")
    assert "<id>https://example.org/sewing/apron/index.html</id>" in feed_xml(ENTRIES, ENTRIES, there)


def test_other_languages_are_links_of_one_entry():
    both = {"languages": (("en", "apron"), ("de", "apron-de"))}
    entries = (
        entry_of(recipe("apron", "Apron", "2027-01", **both)),
        entry_of(recipe("apron-de", "Schürze", "2027-01", language="de", **both)),
    )
    told = feed_xml(entries[:1], entries, NO_PDF)
    assert faults(told) == []
    (read,) = feedparser.parse(told.encode()).entries
    assert [(link.hreflang, link.href) for link in read.links] == [
        ("en", "https://tidewrack.example/apron/index.html"),
        ("de", "https://tidewrack.example/apron-de/index.html"),
    ]
