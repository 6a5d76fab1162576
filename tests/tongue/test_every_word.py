"""No word of a handout or a page is English where the handout is not: all recipes in a made-up language."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import pytest
from tongue.pseudo import LANGUAGE, speak_it, translation_of, untold

from presscloth.handout.build import WorkedOut, make_handout
from presscloth.handout.chapters import chapters
from presscloth.handout.cues import cue_sheet
from presscloth.handout.kits import KitSheet
from presscloth.handout.tree import Booklet, Publisher
from presscloth.measure import System
from presscloth.pipeline import Proved, kits_of, prove
from presscloth.printing.cues import cues_html, cues_text
from presscloth.printing.html import html
from presscloth.printing.kits import as_page, as_text
from presscloth.printing.pdf import paper_html
from presscloth.printing.templates import templates_html
from presscloth.printing.text import text
from presscloth.printing.theme import open_theme
from presscloth.publish.catalogue import Catalogue, catalogue_html, list_html
from presscloth.publish.entry import entry_of

ROOT = Path(__file__).parents[2]
RECIPES = tuple(sorted((ROOT / "recipes").glob("*/recipe.md")))
PUBLISHER = Publisher(
    "⟪Publisher⟫", "https://x.example", ("A4",), (), "plain-seam", about="⟪About⟫", language=LANGUAGE
)
SEEN = ("alt", "aria-label", "title", "placeholder", "content")
UNSEEN = ("style", "script")
NAMES_OF_THINGS = {"PDF", "Atom", "English"}  # a form of files, a form of feeds, a language's own name


class Seen(HTMLParser):
    """What a page shows or has read aloud: its texts, and the attributes that are words."""

    def __init__(self) -> None:
        super().__init__()
        self.said: list[str] = []
        self._unseen = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._unseen += tag in UNSEEN
        given = dict(attrs)
        machines = tag == "meta" and (given.get("name") == "viewport" or "property" in given)
        machines |= given.get("name") == "color-scheme"
        for name, value in attrs:
            words = name in SEEN or (name.startswith("data-") and " " in (value or ""))
            if value and words and not machines:
                self.said.append(value)

    def handle_endtag(self, tag: str) -> None:
        self._unseen -= tag in UNSEEN

    def handle_data(self, data: str) -> None:
        if not self._unseen and data.strip():
            self.said.append(data)


def seen(page: str) -> str:
    """What is said, in order; a message with markup in it comes in several parts."""
    reader = Seen()
    reader.feed(page)
    return " ".join(reader.said)


@pytest.fixture(autouse=True)
def _known(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    speak_it(monkeypatch)
    yield


_PROVED: dict[Path, Proved] = {}


def proved(path: Path) -> Proved:
    if path not in _PROVED:
        _PROVED[path] = prove(path)
    return _PROVED[path]


def booklet(path: Path) -> Booklet:
    sound = proved(path)
    assert sound.recipe is not None
    translation = translation_of(sound.recipe)
    worked = (
        WorkedOut(size.sewn, size.evaluator, size.settled, size.buying.purchases, translation=translation)
        for size in sound.sizes
    )
    return Booklet(tuple(make_handout(each, PUBLISHER) for each in worked))


def hold(said: str) -> None:
    assert sorted(set(untold(said)) - NAMES_OF_THINGS) == []


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.parent.name)
def test_every_word_of_a_recipe_comes_from_the_catalogue_or_from_its_author(path: Path):
    whole = booklet(path)
    theme, large = open_theme("plain-seam"), open_theme("large-print")
    page = html(whole, theme, PUBLISHER, ("A4",))
    assert page.count("⟦") > 50
    hold(seen(page))
    for handout in whole.handouts:
        hold(text(handout))
        for each in (theme, large):
            hold(seen(paper_html(handout, each, PUBLISHER)))
        sheet = cue_sheet(handout)
        hold(cues_text(sheet))
        hold(seen(cues_html(sheet, theme, PUBLISHER)))
        for templates in handout.templates:
            hold(seen(templates_html(handout, templates, theme, PUBLISHER)))
    hold(" ".join(chapter.name for chapter in chapters(whole)))


def test_every_word_of_a_shop_sheet_comes_from_the_catalogue():
    sound = proved(ROOT / "recipes" / "slipway-apron" / "recipe.md")
    assert sound.recipe is not None
    recipe = replace(sound.recipe, front=replace(sound.recipe.front, language=LANGUAGE))
    sheet, _ = kits_of(recipe, sound.sizes[-1], 40, optional=True)
    hold_sheet(sheet, sound)


def hold_sheet(sheet: KitSheet, sound: Proved) -> None:
    assert sound.recipe is not None
    names = translation_of(sound.recipe).names
    marked = as_text(sheet), seen(as_page(sheet, open_theme("plain-seam"), PUBLISHER))
    for said in marked:
        for name in sorted(names, key=len, reverse=True):
            said = said.replace(name, "⟪⟫")
        hold(said)


def test_every_word_of_the_catalogue_comes_from_the_catalogue_of_words():
    entries = tuple(replace(entry_of(booklet(path)), drawn=False) for path in RECIPES)
    catalogue = Catalogue(entries, open_theme("plain-seam"), PUBLISHER, ())
    hold(seen(catalogue_html(catalogue)))
    for each in catalogue.lists:
        hold(seen(list_html(each, catalogue)))


def test_a_word_that_no_catalogue_knows_would_be_seen():
    assert untold("⟦cut {n} ⟪strap⟫ of 12 cm⟧ A 7 1/2 in × 3 cm") == ()
    assert untold("⟦cut⟧ and ⟪sew⟫ 3 cm wide") == ("and", "wide")
    assert seen('<p title="a b">c</p><script>d</script><img alt="e">') == "a b c e"
    assert System.METRIC.value not in NAMES_OF_THINGS
