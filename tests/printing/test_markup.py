"""Words and blocks as HTML."""

import re

import pytest
from printing.making import pair, para, plain, words

from presscloth.handout.tree import (
    Amount,
    Code,
    Divider,
    Emphasis,
    Grid,
    Heading,
    Link,
    Listing,
    Marks,
    NewLine,
    Quote,
    Text,
    Verbatim,
)
from presscloth.measure import System
from presscloth.printing.markup import Marker, by_system
from presscloth.printing.theme import open_theme

LOOK = open_theme().look
WEB = Marker(LOOK, web=True, ids="")
PAPER = Marker(LOOK, web=False, ids="")


def bare(markup: str) -> str:
    return re.sub("<[^>]+>", "", markup)


@pytest.mark.parametrize("marker", [WEB, PAPER])
@pytest.mark.parametrize(
    ("amount", "text"),
    [
        (pair("19 cm", "7 1/2 in"), "19 cm (7 1/2 in)"),
        (pair("15 cm", "6 in", "about"), "about 15 cm (6 in)"),
        (plain("12"), "12"),
        (Amount((("7 1/2 in", System.IMPERIAL), ("19 cm", System.METRIC))), "7 1/2 in (19 cm)"),
    ],
)
def test_the_words_of_an_amount_stay_its_words(marker, amount, text):
    assert bare(marker.amount(amount)) == text == amount.text


def test_each_measure_is_held_together_and_its_fraction_built():
    assert str(PAPER.amount(pair("19 cm", "7 1/2 in"))) == (
        '<span class="measure">19 cm</span> '
        '<span class="measure">(7 <span class="fraction">1/2</span> in)</span>'
    )


def test_on_the_web_a_system_and_its_brackets_can_be_hidden():
    assert str(WEB.amount(pair("1 cm", "3/8 in"))) == (
        '<span class="metric">1 cm</span>'
        '<span class="imperial"><span class="both"> (</span>'
        '<span class="fraction">3/8</span> in<span class="both">)</span></span>'
    )


def test_a_plain_number_belongs_to_no_system():
    assert "metric" not in WEB.amount(plain("12")) and "imperial" not in WEB.amount(plain("12"))


def test_sides_stand_line_by_line_in_each_system():
    sides = (("width", pair("12 cm", "4 3/4 in")), ("height", pair("30 cm", "12 in")))
    lines = re.findall(r'<span class="line">(.*?)</span></span>', str(PAPER.sides(sides)))
    assert [bare(line) for line in lines] == ["12 cm × 30 cm", "4 3/4 in × 12 in"]
    assert [bare(str(PAPER.sides_in(system, sides, True))) for system in System] == [
        "12 cm × 30 cm",
        "4 3/4 in × 12 in",
    ]


def test_sides_that_do_not_share_their_systems_are_kept_whole():
    sides = (("width", pair("12 cm", "4 3/4 in")), ("height", plain("3")))
    assert by_system(sides) is None
    assert bare(str(PAPER.sides(sides))) == "12 cm (4 3/4 in) × 3"
    assert bare(str(PAPER.sides_in(System.METRIC, sides, leading=True))) == "12 cm (4 3/4 in) × 3"
    assert str(PAPER.sides_in(System.IMPERIAL, sides, leading=False)) == ""


def test_nothing_that_an_author_writes_becomes_a_tag():
    nasty = '<script>alert("x")</script>'
    shown = PAPER.inline(words(nasty, Code(nasty), Emphasis((Text(nasty),), strong=True), plain(nasty)))
    assert "<script" not in shown
    assert shown.count("&lt;script&gt;") == 4


@pytest.mark.parametrize(
    ("to", "web", "paper"),
    [
        ("https://tidewrack.example/a", True, True),
        ("mailto:room@tidewrack.example", True, True),
        ("#steps", True, False),
        ("../standing/glossary.html#nap", True, False),
        ("javascript:alert(1)", False, False),
        ("file:///etc/passwd", False, False),
        ("data:text/html,x", False, False),
        ("//elsewhere.example", False, False),
        ("/etc/passwd", False, False),
        ("", False, False),
    ],
)
def test_links_lead_only_where_they_may(to, web, paper):
    link = (Link(to, words("there")),)
    for marker, leads in ((WEB, web), (PAPER, paper)):
        shown = str(marker.inline(link))
        assert bare(shown) == "there"
        assert ("<a " in shown) is leads


def test_marks_are_labels_in_words():
    marks = Marks(
        optional=True, care=True, alternative=True, at="4:15", at_link="https://tidewrack.example/v"
    )
    assert bare(str(PAPER.marks(marks))) == "Or Optional Take care In the video at 4:15"
    assert 'href="https://tidewrack.example/v"' in PAPER.marks(marks)
    assert "<a" not in PAPER.marks(Marks(at="9:02"))
    assert PAPER.marks(Marks()) == ""


def test_blocks_have_their_meaning():
    blocks = (
        Heading(1, words("A")),
        Heading(9, words("B")),
        Listing(((para("one"),), (para("two"), Quote((para("q"),)))), 3),
        Listing(((para("dot"),),), None),
        Verbatim("a < b\n"),
        Divider(),
        para("x", NewLine(), "y", marks=Marks(care=True)),
    )
    shown = str(PAPER.blocks(blocks, 3))
    assert "<h3>A</h3>" in shown and "<h6>B</h6>" in shown
    assert '<ol start="3">\n<li>one</li>\n<li><p>two</p>' in shown
    assert "<ul>\n<li>dot</li>" in shown
    assert "<pre><code>a &lt; b\n</code></pre>" in shown
    assert "<hr>" in shown and "x<br>y" in shown
    assert shown.index('<p class="marks">') < shown.index("x<br>y")


def test_a_table_says_what_its_heads_head():
    shown = str(PAPER.blocks((Grid((words("Field"), words("Thread")), ((words("1"), words("2")),)),), 2))
    assert shown.count('<th scope="col">') == 2
    assert shown.count("<td>") == 2
