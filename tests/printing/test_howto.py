"""The data of a page for search engines: names of schema.org, times of ISO 8601, safe in a script element."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import timedelta

import pytest
from isoduration import parse_duration
from printing.making import words
from printing.pages import Page
from printing.samples import BAG, MAT, MUG_MAT, PUBLISHER
from pyld import jsonld

from presscloth.handout.tree import Booklet, StageText
from presscloth.printing.durations import duration
from presscloth.printing.howto import howto
from presscloth.printing.html import html
from presscloth.printing.theme import open_theme
from presscloth.tongue import speaking, tongue_of

NOWHERE = replace(PUBLISHER, address="")

# The properties of each type that a page may use. Source: schema.org, the pages of HowTo (with those of
# CreativeWork and Thing), HowToSection, HowToStep, HowToSupply, HowToTool and Organization.
PROPERTIES = {
    "HowTo": set(
        "name description url image inLanguage datePublished dateModified version size keywords publisher"
        " totalTime supply tool step".split()
    ),
    "HowToSection": {"name", "itemListElement"},
    "HowToStep": {"position", "text"},
    "HowToSupply": {"name", "requiredQuantity"},
    "HowToTool": {"name"},
    "Organization": {"name"},
}


def data(booklet: Booklet, publisher=PUBLISHER) -> dict:
    """The data as a browser's parser finds them in the page."""
    page = Page(html(booklet, open_theme(), publisher))
    (script,) = [each for each in page.all("script") if each.attributes.get("type") == "application/ld+json"]
    return json.loads(script.text)


def nodes(value):
    """Every node of a type, inside out."""
    if isinstance(value, list):
        for each in value:
            yield from nodes(each)
    elif isinstance(value, dict):
        for each in value.values():
            yield from nodes(each)
        yield value


@pytest.mark.parametrize("booklet", [BAG, MAT], ids=["bag", "mat"])
def test_every_name_is_one_of_schema_org(booklet):
    for node in nodes(data(booklet)):
        kind = node["@type"]
        assert set(node) - {"@type", "@context"} <= PROPERTIES[kind], kind
        assert all(value not in ("", [], None) for value in node.values())


def test_what_it_says_of_the_size_that_somebody_has_sewn():
    bag = data(BAG)
    assert (bag["@context"], bag["@type"], bag["name"]) == ("https://schema.org", "HowTo", "Harbour Kit Bag")
    assert (bag["size"], bag["inLanguage"], bag["datePublished"]) == ("Tall", "en", "2027-05")
    assert bag["totalTime"] == "PT5H"
    assert bag["url"] == "https://tidewrack.example/harbour-kit-bag/index.html"
    assert bag["image"] == "https://tidewrack.example/harbour-kit-bag/preview.png"
    assert {"@type": "HowToSupply", "name": "Linen, oat", "requiredQuantity": "40 cm (1/2 yd)"} in bag[
        "supply"
    ]
    assert bag["tool"][-1] == {"@type": "HowToTool", "name": "knitting needle, for the corners"}
    steps = [step for section in bag["step"] for step in section.get("itemListElement", [section])]
    assert [step["position"] for step in steps] == [1, 2, 3, 4, 5, 6, 7, 8, 8, 9]  # two ways for step 8
    assert any("22 cm (8 3/4 in)" in step["text"] for step in steps)  # a measure of the tall size, as printed
    assert all(section["@type"] == "HowToSection" for section in bag["step"] if "itemListElement" in section)


def test_stages_without_a_title_are_no_sections():
    plain = Booklet((replace(MUG_MAT, stages=tuple(StageText((), each.steps) for each in MUG_MAT.stages)),))
    assert {step["@type"] for step in data(plain)["step"]} == {"HowToStep"}


def test_without_an_address_nothing_pretends_to_have_one():
    bag = data(BAG, NOWHERE)
    assert "url" not in bag and "image" not in bag
    assert bag["name"] == "Harbour Kit Bag"


def test_a_general_processor_of_json_ld_reads_the_same():
    """pyld expands it with a context of one line, as schema.org's own maps every name to its address."""
    read = data(BAG)
    expanded = jsonld.expand({**read, "@context": {"@vocab": "https://schema.org/"}})
    (node,) = expanded
    assert node["@type"] == ["https://schema.org/HowTo"]
    assert node["https://schema.org/totalTime"] == [{"@value": "PT5H"}]
    assert len(node["https://schema.org/supply"]) == len(BAG.first.materials)
    assert len(node["https://schema.org/step"]) == len(BAG.handouts[1].stages)


@pytest.mark.parametrize(
    ("words", "minutes"),
    [
        ("5 hours", 300),
        ("1 hour", 60),
        ("45 minutes", 45),
        ("2 h 30 min", 150),
        ("2 hours and 15 minutes", 135),
        ("about 3 hours", 180),
        ("1 1/2 hours", 90),
        ("2½ hours", 150),
        ("½ hour", 30),
        ("1.5 hours", 90),
        ("90 min", 90),
        ("36 hours", 2160),
    ],
)
def test_times_are_durations(words, minutes):
    """isoduration is the oracle for the form; the minutes are worked out by hand."""
    read = parse_duration(duration(words))
    assert timedelta(
        seconds=int(read.time.seconds), minutes=int(read.time.minutes), hours=int(read.time.hours)
    ) == (timedelta(minutes=minutes))


@pytest.mark.parametrize(
    "words",
    ["", "an afternoon", "two evenings and a Saturday", "5", "2 to 3 hours", "a fortnight of evenings",
     "2 days", "hours", "5 hours, without hurry", "about", "1 1/3 hours"],
)  # fmt: skip
def test_what_is_no_time_is_left_out(words):
    assert duration(words) == ""


@pytest.mark.parametrize(
    ("words", "minutes"),
    [("3 Stunden", 180), ("etwa 2,5 Stunden", 150), ("1 Stunde und 30 Minuten", 90), ("ca. 1½ Std.", 90),
     ("45 Min.", 45), ("ungefähr 2 1/2 Stunden", 150), ("5 hours", 300)],
)  # fmt: skip
def test_times_are_read_in_the_language_of_the_page(words, minutes):
    """A translation may have kept the recipe's own words, so that English is read in every language."""
    with speaking(tongue_of("de")):
        read = parse_duration(duration(words))
    assert timedelta(minutes=int(read.time.minutes), hours=int(read.time.hours)) == timedelta(minutes=minutes)


def test_what_is_no_time_is_none_in_another_language_either():
    with speaking(tongue_of("de")):
        read = [duration(each) for each in ("zwei Abende", "2.5 Stunden", "Stunden", "2 bis 3 Stunden")]
    assert read == ["", "", "", ""]
    assert duration("3 Stunden") == ""


def test_nothing_can_end_the_script_element():
    bad = replace(
        MUG_MAT,
        title="</script><script>alert(1)</script><!-- <script>",
        summary="]]> & \u2028 </SCRIPT >",
        tools=(words("\\u003c/script>"),),
    )
    written = howto(Booklet((bad,)), PUBLISHER)
    assert "<" not in written and ">" not in written and "&" not in written
    read = data(Booklet((bad,)))
    assert (read["name"], read["description"]) == (bad.title, bad.summary)
    assert read["tool"][0]["name"] == "\\u003c/script>"


def test_what_goes_with_a_link():
    page = Page(html(BAG, open_theme(), PUBLISHER))
    told = {
        each.attributes["property"]: each.attributes["content"]
        for each in page.all("meta")
        if "property" in each.attributes
    }
    assert told == {  # names by the Open Graph protocol (ogp.me): basic, optional, and those of an image
        "og:type": "article",
        "og:site_name": "Tidewrack sewing room",
        "og:title": "Harbour Kit Bag",
        "og:description": "A lined bag with a boxed base and a stitched-out badge in its front.",
        "og:url": "https://tidewrack.example/harbour-kit-bag/index.html",
        "og:image": "https://tidewrack.example/harbour-kit-bag/preview.png",
        "og:image:type": "image/png",
        "og:image:width": "1200",
        "og:image:height": "630",
        "og:image:alt": "Harbour Kit Bag, 22 cm × 27.5 cm × 7.5 cm, 8 3/4 in × 10 3/4 in × 3 in, "
        "Tidewrack sewing room",
    }
    alone = Page(html(BAG, open_theme(), NOWHERE))
    assert not [each for each in alone.all("meta") if "property" in each.attributes]
