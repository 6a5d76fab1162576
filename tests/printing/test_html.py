"""The web page of a recipe: what stands on it, in which order, and that it holds together."""

import re
from dataclasses import replace
from itertools import pairwise

import pytest
from printing.making import para
from printing.making import words as words_of
from printing.pages import Page, words
from printing.samples import BAG, LARGE, MAT, MUG_MAT, PUBLISHER, SMALL, TALL

from presscloth.handout.tree import Booklet
from presscloth.measure import System
from presscloth.printing.html import StandingLink, html
from presscloth.printing.theme import open_theme

THEME = open_theme()
STANDING = (StandingLink("glossary", "Glossary"), StandingLink("safety", "Safety"))


def page_of(booklet: Booklet, papers: tuple[str, ...] = ("A4", "Letter")) -> Page:
    return Page(html(booklet, THEME, PUBLISHER, papers, STANDING))


BAG_PAGE, MAT_PAGE = page_of(BAG), page_of(MAT)
PAGES = pytest.mark.parametrize("page", [BAG_PAGE, MAT_PAGE], ids=["bag", "mat"])


@PAGES
def test_ids_are_unique(page):
    assert len(page.ids) == len(set(page.ids))
    assert len(page.ids) > 5


@PAGES
def test_headings_never_skip_a_rank(page):
    ranks = page.heading_ranks
    assert ranks[0] == 1 and ranks.count(1) == 1
    assert all(below <= above + 1 for above, below in pairwise(ranks))


@PAGES
def test_every_anchor_and_label_leads_somewhere(page):
    for element in page.elements:
        for name in ("href", "for", "aria-labelledby"):
            target = element.attributes.get(name, "")
            if name == "href" and not target.startswith("#"):
                continue
            if target:
                assert target.removeprefix("#") in page.ids


@PAGES
def test_nothing_is_fetched_from_elsewhere(page):
    fetched = [each.attributes["src"] for each in page.elements if "src" in each.attributes]
    beside = [address for address in fetched if "/" not in address]
    assert all(re.fullmatch(r"[a-z-]+-(pieces|layout)-[0-9a-z-]+\.svg", address) for address in beside)
    fetched = [address for address in fetched if address not in beside]
    links = [each.attributes for each in page.all("link")]
    fetched += [each["href"] for each in links if each["rel"] not in ("alternate", "icon")]
    assert fetched
    assert all(address.startswith("../theme/") for address in fetched)


@PAGES
def test_landmarks_and_skip_link(page):
    assert [len(page.all(tag)) for tag in ("main", "nav")] == [1, 1]
    first_link = page.all("a")[0]
    assert first_link.attributes["href"] == "#content" == "#" + page.all("main")[0].attributes["id"]
    assert page.all("html")[0].attributes["lang"] == "en"


@PAGES
def test_every_header_cell_has_a_scope_and_every_box_a_name(page):
    assert all(cell.attributes["scope"] in ("col", "row") for cell in page.all("th"))
    for box in page.all("input"):
        named = box.attributes.get("aria-label") or "label" in box.above
        assert named


def test_sections_follow_the_work():
    headings = [words(each.text) for each in MAT_PAGE.all("h2")]
    assert headings == ["Materials", "Cutting list", "Steps"]
    bag = [words(each.text) for each in BAG_PAGE.all("section", "size")[0].inside if each.tag == "h3"]
    assert bag == ["Materials", "Cutting list", "The pieces", "Steps"]


def test_the_intro_stands_once_as_far_as_it_is_the_same():
    """The first paragraph is every size's, the second says another measure in each."""
    sizes = tuple(
        replace(SMALL, size=size, intro=(para("Once."), para(f"Size {size}.")), stages=())
        for size in ("One", "Two")
    )
    page = page_of(Booklet(sizes))
    intros = [words(each.text) for each in page.all("div", "intro")]
    assert intros == ["Once.", "Size One.", "Size Two."]


def test_what_is_the_same_in_all_sizes_stands_once():
    once = [
        words(each.text) for each in BAG_PAGE.all("h2") if "size-name" not in each.attributes.get("class", "")
    ]
    assert once == ["Before you start", "Tools", "When you sell what you sew"]
    own = replace(LARGE, tools=(*LARGE.tools, words_of("thimble")), cautions=LARGE.cautions[:1], notes=())
    page = page_of(Booklet((SMALL, own)))
    small, large = page.all("section", "size")
    for size, least in ((small, SMALL), (large, own)):
        headings = [words(each.text) for each in size.inside if each.tag == "h3"]
        assert "Tools" in headings
        assert ("When you sell what you sew" in headings) == bool(least.notes)
    common = page.all("section", "before")[0]
    assert LARGE.cautions[0].text in words(common.text)
    assert all(each.text in words(small.text) for each in SMALL.cautions[1:])
    assert SMALL.cautions[0].text not in words(small.text)


def test_all_sizes_stand_in_their_order_and_can_be_chosen():
    assert [each.attributes["id"] for each in BAG_PAGE.all("section", "size")] == [
        "size-small",
        "size-tall",
        "size-large",
    ]
    radios = [box.attributes for box in BAG_PAGE.all("input") if box.attributes["type"] == "radio"]
    assert [box["id"] for box in radios] == [
        "choose-all",
        "choose-small",
        "choose-tall",
        "choose-large",
        "system-both",
        "system-metric",
        "system-imperial",
    ]
    assert [box["id"] for box in radios if "checked" in box] == ["choose-all", "system-both"]
    style = BAG_PAGE.all("style")[0].text
    assert "body:has(#choose-tall:checked) .size:not(#size-tall) { display: none }" in style


def test_one_size_in_one_system_offers_no_choice():
    assert not [box for box in MAT_PAGE.all("input") if box.attributes["type"] == "radio"]
    assert "Before you start" not in MAT_PAGE.all("main")[0].text
    assert "One size" not in [words(each.text) for each in MAT_PAGE.all("h2")]


def test_each_size_says_whether_it_has_been_sewn():
    small, tall, _ = (words(each.text) for each in BAG_PAGE.all("section", "size"))
    assert "Worked out, not yet sewn in this size" in small
    assert "Sewn and checked in this size" in tall
    assert "Sewn and checked" not in small


def test_only_a_proved_handout_claims_a_proof():
    assert "proved" in BAG_PAGE.all("main")[0].text
    assert "proved" not in MAT_PAGE.all("main")[0].text


def test_what_does_not_exist_is_not_printed():
    heads = [words(each.text) for each in MAT_PAGE.all("th") if each.attributes["scope"] == "col"]
    assert heads == ["Key", "Material", "Done", "Piece", "From", "Cut", "Metric, width × height"]
    rows = [words(each.text) for each in MAT_PAGE.all("th") if each.attributes["scope"] == "row"]
    assert "Skills" not in rows and "Time" not in rows and "Video" not in rows


def test_a_column_comes_back_with_its_first_value():
    line = replace(MUG_MAT.materials[0], quantity=SMALL.materials[0].quantity)
    page = page_of(Booklet((replace(MUG_MAT, materials=(line, MUG_MAT.materials[1])),)))
    assert "Quantity" in [words(each.text) for each in page.all("th")]
    assert "40 cm" in page.all("main")[0].text


def test_steps_are_numbered_through_the_stages():
    tall = BAG_PAGE.all("section", "size")[1]
    starts = [each.attributes["start"] for each in tall.inside if each.tag == "ol"]
    values = [each.attributes["value"] for each in tall.inside if "value" in each.attributes]
    assert starts == ["1", "3", "7"]
    assert values == ["1", "2", "3", "4", "5", "6", "7", "8", "8", "9"]
    small = BAG_PAGE.all("section", "size")[0]
    assert "6" not in [each.attributes.get("value") for each in small.inside], "step 6 is not for Small"


def test_the_numbers_of_a_page_are_those_of_the_handout():
    for section, handout in zip(BAG_PAGE.all("section", "size"), (SMALL, TALL, LARGE), strict=True):
        text = words(section.text)
        for line in handout.cutting:
            first = line.sides[0][1].texts
            assert all(measure in text for measure, _ in first)
        assert all(line.name in text for line in handout.materials)


def test_what_all_sizes_share_is_said_once():
    assert BAG_PAGE.all("main")[0].text.count("Every volunteer") == 1
    own = replace(TALL, intro=(para("Only for the tall one."),))
    page = page_of(Booklet((SMALL, own)))
    assert page.all("main")[0].text.count("Every volunteer") == 1
    assert "Only for the tall one." in page.all("section", "size")[1].text


def test_the_papers_lie_beside_the_page():
    pdfs = [each.attributes["href"] for each in BAG_PAGE.all("a") if "PDF" in each.text]
    links = [each for each in pdfs if "cue-sheet" not in each]  # those stand under the video
    assert len(pdfs) == 12
    assert links[:2] == ["harbour-kit-bag-small-a4.pdf", "harbour-kit-bag-small-letter.pdf"]
    assert len(links) == 6
    assert not [each for each in page_of(BAG, ()).all("a") if "PDF" in each.text]


def test_two_sizes_whose_names_read_alike_stay_apart():
    page = page_of(Booklet((replace(SMALL, size="A+"), replace(TALL, size="A-"))))
    assert [each.attributes["id"] for each in page.all("section", "size")] == ["size-a", "size-a-2"]
    assert len(page.ids) == len(set(page.ids))


def test_a_title_cannot_break_the_page():
    bad = replace(MUG_MAT, title='</title><script>x</script>"', summary='"><img src=x>', size="<b>")
    page = page_of(Booklet((bad,)))
    assert [each.attributes.get("type", "") for each in page.all("script")] == ["", "application/ld+json"]
    assert not page.all("img")
    assert words(page.all("h1")[0].text) == '</title><script>x</script>"'


def test_the_leading_system_is_first_in_the_choice():
    page = page_of(Booklet((replace(SMALL, systems=(System.IMPERIAL, System.METRIC)),)))
    radios = [box.attributes["id"] for box in page.all("input") if box.attributes.get("name") == "system"]
    assert radios == ["system-both", "system-imperial", "system-metric"]


def test_no_link_runs_a_script():
    bad = "javascript:alert(1)"
    page = page_of(Booklet(tuple(replace(handout, video=bad) for handout in BAG.handouts)))
    assert bad in page.all("main")[0].text
    assert not [link for link in page.all("a") if link.attributes["href"].startswith("javascript")]
