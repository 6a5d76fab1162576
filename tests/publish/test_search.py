"""The search: what each word weighs, and what the page finds, held against a plain ranking in Python.

The ranking here is written from the rule alone and shares nothing with the page's script: the words
of each field, their weights, whole words twice, beginnings once, every longer word needed.
"""

from __future__ import annotations

import json
import random
import re
import unicodedata

import pytest
from publish.releases import CATALOGUE, NOWHERE, recipe

from presscloth.publish.entry import entry_of
from presscloth.publish.lists import in_order
from presscloth.publish.search import weights, words_script
from presscloth.publish.site import publish
from presscloth.publish.words import folded, words_of

ENTRIES = in_order(tuple(map(entry_of, CATALOGUE)))


def plainly(text: str) -> list[str]:
    """Words without capitals and accents, by the standard library's own case folding."""
    apart = unicodedata.normalize("NFKD", text.casefold().replace("ø", "o"))
    return re.findall(r"[^\W_]+", "".join(sign for sign in apart if not unicodedata.combining(sign)))


def by_hand(query: str) -> list[str]:
    """The titles that a query finds, in their order."""
    typed = list(dict.fromkeys(plainly(query)))
    needed = [word for word in typed if len(word) > 2] or typed
    found = []
    for number, booklet in enumerate(sorted(CATALOGUE, key=lambda b: b.first.title.casefold())):
        first = booklet.first
        fields = [
            (8, [first.title]),
            (5, [*first.craft.split(","), *first.skills]),
            (3, [first.summary]),
            (2, ["point turner"] if first.tools else []),
        ]
        said = set(plainly(" ".join(part.text for part in first.stages[0].steps[0].content[0].of)))
        said |= {"work"}

        def weighs(word: str, fields=fields, said=said) -> int:
            everywhere = {each for _, texts in fields for text in texts for each in plainly(text)} | said
            best = 0
            for held in everywhere:
                if held.startswith(word):
                    weight = sum(w for w, texts in fields if held in {e for t in texts for e in plainly(t)})
                    weight += held in said and len(held) > 2
                    best = max(best, weight * (2 if held == word else 1))
            return best

        if all(weighs(word) for word in needed):
            found.append((-sum(map(weighs, typed)), first.release, number, first.title))
    newest = sorted(found, key=lambda each: each[1], reverse=True)
    return [title for *_, title in sorted(newest, key=lambda each: each[0])]


@pytest.mark.parametrize(
    ("text", "bare"),
    [
        ("Crème BRÛLÉE", "creme brulee"),
        ("Straße", "strasse"),
        ("Smørrebrød", "smorrebrod"),
        ("Ærø", "aero"),
        ("ﬁne № 5", "fine no 5"),
        ("Ǆ", "dz"),
        ("İstanbul ılık", "istanbul ilik"),
        ("ΚΌΣΜΟΣ κόσμος", "κοσμοσ κοσμοσ"),
        ("½ in", "1⁄2 in"),
    ],
)
def test_capitals_and_accents_do_not_matter(text, bare):
    assert folded(text) == bare


def test_words_are_cut_at_what_is_no_letter():
    assert words_of("Half-Tide_Quilt's 2nd “edge”") == ("half", "tide", "quilt", "s", "2nd", "edge")


def test_a_word_weighs_by_where_it_stands():
    found = weights(entry_of(CATALOGUE[0]))
    assert found["quilt"] == 8 + 1  # title and step
    assert found["binding"] == 5 + 1  # skill and step
    assert found["quilting"] == 5  # craft
    assert found["eddies"] == 3
    assert found["seams"] == 1
    assert "by" not in found  # a short word of a step
    assert weights(entry_of(CATALOGUE[1]))["turner"] == 2


def test_the_script_is_json_with_a_name_and_small():
    script = words_script(ENTRIES, ENTRIES)
    name, _, rest = script.partition(" = ")
    held = json.loads(rest.removesuffix(";\n"))
    assert name == "globalThis.catalogueWords"
    assert held["words"]["quilt"] == [0, 8, 1, 9, 5, 1]
    assert list(held["words"]) == sorted(held["words"])


def test_forty_recipes_of_much_text_take_few_bytes():
    """A tenth of a page: the index grows with the words that there are, not with the text."""
    chance = random.Random(7)
    vocabulary = [f"{chance.choice('bcdfgl')}{chance.choice('aeiou')}{number}x" for number in range(900)]
    many = tuple(
        recipe(f"r{number}", f"Title {number}", "2027-01", " ".join(chance.choices(vocabulary, k=600)))
        for number in range(40)
    )
    text = sum(600 * 6 for _ in many)
    entries = in_order(tuple(map(entry_of, many)))
    script = words_script(entries, entries)
    assert len(script) < text
    assert script.count('"') < 2 * 1000


@pytest.fixture(scope="module")
def opened(browser, tmp_path_factory):
    """The catalogue opened from its folder, with every request to a network refused and counted."""
    folder = tmp_path_factory.mktemp("search") / "site"
    publish(CATALOGUE, (), NOWHERE, folder)
    context = browser.new_context(offline=True)
    page = context.new_page()
    page.faults = []
    page.on("pageerror", lambda error: page.faults.append(str(error)))
    page.on("requestfailed", lambda request: page.faults.append(request.url))
    page.goto((folder / "index.html").as_uri())
    yield page
    assert page.faults == []
    context.close()


def found(page, query: str) -> list[str]:
    page.fill("input[name=q]", query)
    return page.locator(".found h3").all_inner_texts()


WORDS = (
    "quilt Quilting bind CREME crème strasse straße smorre po a the gap zip p s h se t dressm QU in for "
    "éléphants brodes"
).split()


@pytest.mark.browser
class TestInTheBrowser:
    def test_the_best_comes_first(self, opened):
        assert found(opened, "quilt") == [
            "Half-Tide Quilt",  # in its title and in a step, whole: 2 × (8 + 1)
            "Secret Quilt Draft",  # in its title, whole: 2 × 8
            "Apron",  # the beginning of a word of the summary: 3
            "Bolster",  # in a step, whole: 2 × 1
            "Crème Pouch & <Friends>",  # the beginning of a word of a step: 1
        ]

    def test_every_query_finds_what_the_plain_ranking_finds(self, opened):
        chance = random.Random(2027)
        queries = [*WORDS, *(" ".join(chance.sample(WORDS, chance.randint(2, 3))) for _ in range(120))]
        several = 0
        for query in queries:
            titles = [title.removesuffix(" Draft") for title in found(opened, query)]
            assert titles == by_hand(query), query
            several += len(titles) > 1
        assert several >= 20  # the comparison is of orders, not of empty lists

    def test_the_number_is_told_and_nothing_found_in_words(self, opened):
        status = opened.get_by_role("status")
        found(opened, "")
        assert status.inner_text() == "6 recipes"
        assert opened.locator(".months").is_visible() and not opened.locator(".found").is_visible()
        found(opened, "straße")
        assert status.inner_text() == "1 recipe"
        assert not opened.locator(".months").is_visible()
        assert found(opened, "velvet") == []
        assert status.inner_text() == "No recipe has all of that."

    def test_craft_and_skill_narrow_it(self, opened):
        found(opened, "")
        opened.select_option("select[name=craft]", label="patchwork")
        assert opened.locator(".found h3").all_inner_texts() == [
            "Secret Quilt Draft", "Half-Tide Quilt", "Straße Smørrebrød Cloth",
        ]  # fmt: skip
        opened.select_option("select[name=skill]", label="binding")
        assert opened.locator(".found h3").all_inner_texts() == ["Half-Tide Quilt"]
        assert found(opened, "secret") == []
        opened.select_option("select[name=craft]", "")
        opened.select_option("select[name=skill]", "")
        assert found(opened, "secret") == ["Secret Quilt Draft"]

    def test_a_month_narrows_it(self, opened):
        found(opened, "")
        opened.select_option("select[name=month]", label="July 2027")
        in_july = [each.first.title for each in CATALOGUE if each.first.release == "2027-07"]
        assert sorted(opened.locator(".found h3").all_inner_texts()) == sorted(in_july) != []
        assert "Half-Tide Quilt" in found(opened, "quilt")
        opened.select_option("select[name=month]", "")

    def test_by_keyboard_alone(self, opened):
        found(opened, "")
        opened.get_by_role("searchbox", name="Search").focus()
        opened.keyboard.type("creme")
        opened.keyboard.press("Enter")
        assert opened.get_by_role("status").inner_text() == "1 recipe"
        for _ in range(4):  # past month, craft and skill
            opened.keyboard.press("Tab")
        focused = opened.evaluate("[document.activeElement.textContent, document.activeElement.href]")
        assert focused[0] == "Crème Pouch & <Friends>"
        assert focused[1].endswith("/creme-pouch/index.html")

    def test_roles_and_names_for_screen_readers(self, opened):
        assert opened.get_by_role("search").count() == 1
        assert opened.get_by_role("searchbox", name="Search").is_visible()
        assert opened.get_by_role("combobox", name="Craft").is_visible()
        assert opened.get_by_role("combobox", name="Skill").is_visible()

    def test_a_query_in_the_address(self, opened):
        address = opened.url.split("?")[0]
        opened.goto(f"{address}?q=stra%C3%9Fe")
        assert opened.locator(".found h3").all_inner_texts() == ["Straße Smørrebrød Cloth"]

    def test_without_scripts_there_is_no_form(self, browser, opened):
        context = browser.new_context(java_script_enabled=False)
        page = context.new_page()
        page.goto(opened.url.split("?")[0])
        assert not page.locator("form").is_visible()
        assert page.locator(".months h3").count() == 6
        assert page.get_by_role("link", name="binding 2").is_visible()
        context.close()


TITLES = (
    "Çiğ İğne Kılıfı", "Túi Vải Đựng Kéo", "Łódź Żółw", "Fußbänkchen ẞ", "Ærøskøbing", "Þórður", "Œuvre",
    "ΣΆΚΟΣ ΤΗΣ ΘΆΛΑΣΣΑΣ", "Сумка Йод Ёлка", "縫い物の袋", "바느질 가방", "सिलाई थैला", "حقيبة خياطة",
    "ﬁﬂ ﬀ", "Ⅻ Ⓢⓔⓦ", "ＦＵＬＬ",
    "Dvořák’s Çà", "naïve coöperation", "Ǆ Ǉ", "ſtitch", "K Å", "x² ½",
)  # fmt: skip


@pytest.mark.browser
def test_the_page_folds_words_as_the_index_does(browser, tmp_path):
    """Every title is found as it is typed, in small letters, and in large ones, in any script."""
    booklets = tuple(recipe(f"r{number}", title, "2027-01") for number, title in enumerate(TITLES))
    publish(booklets, (), NOWHERE, tmp_path / "site")
    page = browser.new_page()
    page.goto((tmp_path / "site" / "index.html").as_uri())
    for title in TITLES:
        for typed in (title, title.lower(), unicodedata.normalize("NFD", title)):
            assert title in found(page, typed), typed
    page.close()
