"""The catalogue's lists, what it keeps between two runs, and the links between parts of a project."""

from __future__ import annotations

import json
from dataclasses import asdict, replace

import pytest
from printing.pages import Page, words
from printing.samples import BAG, MUG_MAT
from publish.releases import CATALOGUE, NO_PDF, NOWHERE, recipe

from presscloth.handout.tree import Booklet
from presscloth.publish.entry import CatalogueEntry, entry_of, read_entry, write_entry
from presscloth.publish.lists import by_craft, by_month, by_project, by_skill, in_order
from presscloth.publish.site import publish

ENTRIES = in_order(tuple(map(entry_of, CATALOGUE)))


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    folder = tmp_path_factory.mktemp("catalogue") / "site"
    publish(CATALOGUE, (), NO_PDF, folder)
    return folder


def page(site, name) -> Page:
    return Page((site / name).read_text(encoding="utf-8"))


def titles(listed) -> list[tuple[str, str, list[str]]]:
    return [(each.name, each.file, [entry.title for entry in each.entries]) for each in listed]


class TestLists:
    def test_the_order_is_by_month_then_by_title(self):
        assert [(month, [entry.slug for entry in held]) for month, held in by_month(ENTRIES)] == [
            ("September 2027", ["draft"]),
            ("July 2027", ["half-tide-quilt"]),
            ("June 2027", ["apron", "creme-pouch"]),
            ("December 2026", ["strasse"]),
            ("", ["undated"]),
        ]

    def test_a_recipe_stands_under_each_of_its_crafts(self):
        assert titles(by_craft(ENTRIES)) == [
            ("bags", "crafts/bags.html", ["Crème Pouch & <Friends>"]),
            ("dressmaking", "crafts/dressmaking.html", ["Apron"]),
            (
                "patchwork",
                "crafts/patchwork.html",
                ["Secret Quilt", "Half-Tide Quilt", "Straße Smørrebrød Cloth"],
            ),
            ("quilting", "crafts/quilting.html", ["Half-Tide Quilt"]),
        ]

    def test_capitals_do_not_make_another_skill(self):
        assert ("binding", "skills/binding.html", ["Half-Tide Quilt", "Apron"]) in titles(by_skill(ENTRIES))

    def test_names_with_one_address_get_two(self):
        entries = (entry_of(recipe("a", "A", "2027-01", skills=("Hems!", "hems", "hems"))),)
        assert titles(by_skill(entries)) == [
            ("hems", "skills/hems.html", ["A"]),
            ("Hems!", "skills/hems-2.html", ["A"]),
        ]

    def test_parts_of_a_project_are_by_week(self):
        parts = [
            recipe("c", "Cloth", "2027-01", part_of="Quay Table", week=10),
            recipe("a", "Arch", "2027-02", part_of="quay table", week=2),
            recipe("b", "Bench", "2027-03"),
        ]
        assert titles(by_project(in_order(tuple(map(entry_of, parts))))) == [
            ("quay table", "projects/quay-table.html", ["Arch", "Cloth"])
        ]


class TestEntries:
    def test_an_entry_is_read_as_it_was_written(self, tmp_path):
        for booklet in (*CATALOGUE, BAG):
            entry = entry_of(booklet)
            folder = tmp_path / entry.slug
            folder.mkdir()
            (folder / "entry.json").write_text(write_entry(entry), encoding="utf-8")
            assert read_entry(folder) == entry

    def test_what_it_knows_of_a_recipe_in_three_sizes(self):
        entry = entry_of(BAG)
        assert entry.sizes == ("Small", "Tall", "Large")
        assert entry.materials[:2] == ("Linen, oat", "Canvas, slate")
        assert "knitting needle, for the corners" in entry.tools
        assert entry.drawn
        assert "corners" in entry.words and "cm" not in entry.words

    def test_one_of_an_older_run_has_what_it_knew(self, tmp_path):
        known = ("slug", "title", "release", "version", "summary", "craft", "sizes", "draft")
        older = {name: value for name, value in asdict(ENTRIES[1]).items() if name in known}
        folder = tmp_path / "half-tide-quilt"
        folder.mkdir()
        (folder / "entry.json").write_text(json.dumps(older), encoding="utf-8")
        assert read_entry(folder) == CatalogueEntry(
            slug="half-tide-quilt",
            title="Half-Tide Quilt",
            release="2027-07",
            version="2",
            summary="Eddies of light and dark.",
            craft="Patchwork, quilting",
            sizes=(),
            draft=False,
        )

    @pytest.mark.parametrize(
        "broken",
        [{"sizes": "Small"}, {"skills": [1, "hems"]}, {"week": "two"}, {"words": None}, {"release": 7}],
    )
    def test_values_of_another_sort_are_passed_by(self, tmp_path, broken):
        folder = tmp_path / "apron"
        folder.mkdir()
        held = {**asdict(ENTRIES[2]), **broken}
        (folder / "entry.json").write_text(json.dumps(held), encoding="utf-8")
        entry = read_entry(folder)
        assert entry is not None and entry.title == "Apron"
        assert all(
            isinstance(word, str) for word in (*entry.sizes, *entry.skills, *entry.words, entry.release)
        )


class TestPages:
    def test_without_a_script_lists_lead_everywhere(self, site):
        index = page(site, "index.html")
        (form,) = index.all("form")
        assert "search" in form.attributes["class"]
        style = (site / "theme" / "catalogue.css").read_text(encoding="utf-8")
        assert "@media (scripting: none) { .search { display: none } }" in style
        chips = [
            each for each in index.all("a") if each.attributes["href"].startswith(("crafts/", "skills/"))
        ]
        assert [words(each.text) for each in chips] == [
            "bags 1", "dressmaking 1", "patchwork 3", "quilting 1",
            "binding 2", "gathering 1", "lining through a gap 1", "setting on point 1",
        ]  # fmt: skip
        assert {"crafts", "skills"} <= set(index.ids)

    def test_the_page_of_a_skill(self, site):
        binding = page(site, "skills/binding.html")
        assert words(binding.all("h1")[0].text) == "Binding"
        assert [words(each.text) for each in binding.all("h2")] == ["Half-Tide Quilt", "Apron"]
        assert [
            each.attributes["href"] for each in binding.all("a") if "index.html" in each.attributes["href"]
        ][-2:] == ["../half-tide-quilt/index.html", "../apron/index.html"]

    def test_a_recipe_in_another_language_says_so(self, site):
        (marked,) = [each for each in page(site, "index.html").all("div") if "lang" in each.attributes]
        assert marked.attributes["lang"] == "fr" and "Crème Pouch & <Friends>" in marked.text

    def test_no_project_no_heading_for_it(self, site):
        assert "projects" not in page(site, "index.html").ids
        assert not (site / "projects").exists()

    def test_a_publisher_without_address_has_no_whole_addresses(self, tmp_path):
        written = publish(CATALOGUE, (), NOWHERE, tmp_path / "site")
        assert not {"feed.xml", "sitemap.xml", "robots.txt", "apron/preview.png"} & set(written.files)
        for name in ("index.html", "apron/index.html", "skills/binding.html"):
            text = (tmp_path / "site" / name).read_text(encoding="utf-8")
            assert "og:" not in text and "application/atom+xml" not in text and "feed.xml" not in text

    @pytest.mark.parametrize("slug", ["crafts", "skills", "projects"])
    def test_no_recipe_takes_the_folder_of_a_list(self, tmp_path, slug):
        with pytest.raises(Exception, match="cannot be called"):
            publish((Booklet((replace(MUG_MAT, slug=slug),)),), (), NO_PDF, tmp_path / "site")


def part(slug: str, week: int) -> Booklet:
    return recipe(slug, slug.title(), f"2027-0{week}", part_of="Quay Table", week=week)


class TestLanguages:
    BOTH = (("en-GB", "apron"), ("de", "apron-de"))
    BOOKLETS = (
        recipe("apron", "Apron", "2027-01", language="en-GB", skills=("gathering",), languages=BOTH),
        recipe("apron-de", "Schürze", "2027-01", language="de", skills=("Kräuseln",), languages=BOTH),
        recipe("sac", "Sac", "2027-02", language="fr"),
    )

    @pytest.mark.parametrize(
        ("language", "titles", "other"),
        [
            ("en", ["Sac", "Apron"], ("apron-de", "de", "Deutsch: Schürze")),
            ("de-AT", ["Sac", "Schürze"], ("apron", "en-GB", "English: Apron")),
            ("pl", ["Sac", "Apron"], ("apron-de", "de", "Deutsch: Schürze")),
        ],
    )
    def test_each_recipe_is_shown_once_with_its_other_languages(self, tmp_path, language, titles, other):
        publish(self.BOOKLETS, (), replace(NO_PDF, language=language), tmp_path / "site")
        index = page(tmp_path / "site", "index.html")
        assert [words(each.text) for each in index.all("h3")] == titles
        (link,) = [each for each in index.all("a") if "li" in each.above and ": " in each.text]
        assert link.attributes["href"] == f"{other[0]}/index.html"
        assert (link.attributes["hreflang"], link.attributes["lang"]) == (other[1], other[1])
        assert words(link.text) == other[2]

    def test_lists_have_the_names_of_what_is_shown(self, tmp_path):
        written = publish(self.BOOKLETS, (), NO_PDF, tmp_path / "site")
        assert [name for name in written.files if name.startswith("skills/")] == ["skills/gathering.html"]

    def test_words_of_every_language_find_it(self, tmp_path):
        publish(self.BOOKLETS, (), NO_PDF, tmp_path / "site")
        script = (tmp_path / "site" / "catalogue-words.js").read_text(encoding="utf-8")
        assert '"schurze":[1,8]' in script and '"apron":[1,8]' in script and '"krauseln":[1,5]' in script

    def test_pages_tell_of_each_other(self, tmp_path):
        publish(self.BOOKLETS, (), NO_PDF, tmp_path / "site")
        for slug in ("apron", "apron-de"):
            links = [each.attributes for each in page(tmp_path / "site", f"{slug}/index.html").all("link")]
            assert [(each["hreflang"], each["href"]) for each in links if "hreflang" in each] == [
                ("en-GB", "../apron/index.html"),
                ("de", "../apron-de/index.html"),
            ]


class TestParts:
    def links(self, site, slug) -> list[tuple[str, str, str]]:
        navs = [
            each
            for each in page(site, f"{slug}/index.html").all("nav")
            if each.attributes.get("class") == "parts"
        ]
        return [
            (a.attributes.get("rel", ""), a.attributes["href"], words(a.text))
            for nav in navs
            for a in nav.inside
            if a.tag == "a"
        ]

    def test_each_part_leads_to_the_one_before_and_after(self, tmp_path):
        site = tmp_path / "site"
        publish((part("runner", 1), part("mats", 2), part("napkins", 4)), (), NO_PDF, site)
        project = ("", "../projects/quay-table.html", "Quay Table")
        assert self.links(site, "runner") == [project, ("next", "../mats/index.html", "Week 2: Mats")]
        assert self.links(site, "mats") == [
            project,
            ("prev", "../runner/index.html", "Week 1: Runner"),
            ("next", "../napkins/index.html", "Week 4: Napkins"),
        ]
        assert self.links(site, "napkins") == [project, ("prev", "../mats/index.html", "Week 2: Mats")]
        listed = page(site, "projects/quay-table.html")
        assert [words(each.text) for each in listed.all("p", "week")] == ["Week 1", "Week 2", "Week 4"]
        assert [words(each.text) for each in listed.all("h2")] == ["Runner", "Mats", "Napkins"]

    def test_a_page_that_was_kept_learns_of_the_next_part(self, tmp_path):
        site = tmp_path / "site"
        publish((part("runner", 1),), (), NO_PDF, site)
        alone = (site / "runner" / "index.html").read_bytes()
        publish((part("mats", 2),), ("runner",), NO_PDF, site)
        assert self.links(site, "runner")[-1] == ("next", "../mats/index.html", "Week 2: Mats")
        publish((), ("runner",), NO_PDF, site)
        assert (site / "runner" / "index.html").read_bytes() == alone

    def test_a_page_without_the_marks_stays_as_it_is(self, tmp_path):
        site = tmp_path / "site"
        publish((part("runner", 1),), (), NO_PDF, site)
        (site / "runner" / "index.html").write_text("<p>of an older theme</p>", encoding="utf-8")
        publish((part("mats", 2),), ("runner",), NO_PDF, site)
        assert (site / "runner" / "index.html").read_text(encoding="utf-8") == "<p>of an older theme</p>"

    def test_a_title_cannot_break_the_links(self, tmp_path):
        site = tmp_path / "site"
        bad = recipe("bad", r"\1 <!-- to here --> <b>", "2027-02", part_of="Quay Table", week=2)
        publish((part("runner", 1), bad), (), NO_PDF, site)
        publish((part("runner", 1),), ("bad",), NO_PDF, site)
        assert self.links(site, "runner")[-1][2] == r"Week 2: \1 <!-- to here --> <b>"

    def test_parts_in_a_language_lead_to_those_in_the_same(self, tmp_path):
        site = tmp_path / "site"
        runner = (("en", "runner"), ("de", "runner-de"))
        mats = (("en", "mats"), ("de", "mats-de"))
        known = {"part_of": "Quay Table", "week": 1}
        in_german = {"language": "de", "part_of": "Kaitisch"}
        booklets = (
            recipe("runner", "Runner", "2027-01", **known, languages=runner),
            recipe("runner-de", "Läufer", "2027-01", **{**known, **in_german}, languages=runner),
            recipe("napkins", "Napkins", "2027-01", **{**known, "week": 2}),
            recipe("mats", "Mats", "2027-01", **{**known, "week": 3}, languages=mats),
            recipe("mats-de", "Matten", "2027-01", **{**known, **in_german, "week": 3}, languages=mats),
        )
        publish(booklets, (), NO_PDF, site)
        assert self.links(site, "runner-de") == [
            ("", "../projects/quay-table.html", "Kaitisch"),
            ("next", "../napkins/index.html", "Woche 2: Napkins"),
        ]
        assert self.links(site, "mats-de")[1] == ("prev", "../napkins/index.html", "Woche 2: Napkins")
        assert [href for _, href, _ in self.links(site, "napkins")[1:]] == [
            "../runner/index.html",
            "../mats/index.html",
        ]
        publish((), ("runner", "runner-de", "mats", "mats-de"), NO_PDF, site)
        assert self.links(site, "runner-de")[1] == ("next", "../mats-de/index.html", "Woche 3: Matten")
        assert self.links(site, "mats-de")[1] == ("prev", "../runner-de/index.html", "Woche 1: Läufer")

    def test_what_is_no_part_has_no_links(self, tmp_path):
        publish((recipe("alone", "Alone", "2027-01"),), (), NO_PDF, tmp_path / "site")
        assert self.links(tmp_path / "site", "alone") == []
