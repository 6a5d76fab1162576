"""A whole site: what is written, what is kept, the same bytes from any folder."""

import json
import os
import re
from dataclasses import replace
from pathlib import Path

import pytest
from printing.making import with_picture
from printing.pages import Page, words
from printing.samples import BAG, LARGE, MAT, MUG_MAT, PUBLISHER, SMALL, TALL

from presscloth.handout.tree import Booklet, Figure, Image
from presscloth.printing.pdf import PrintingRefused
from presscloth.publish.entry import read_entry
from presscloth.publish.site import publish
from presscloth.publish.swap import PublishRefused

NO_PDF = replace(PUBLISHER, papers=())


def tree(folder: Path) -> dict[str, bytes]:
    return {
        file.relative_to(folder).as_posix(): file.read_bytes() for file in folder.rglob("*") if file.is_file()
    }


@pytest.fixture(scope="module")
def whole(tmp_path_factory):
    """The site of two recipes with its PDFs, and what was told meanwhile."""
    folder = tmp_path_factory.mktemp("whole") / "published"
    told: list[tuple[int, int, str]] = []
    written = publish((BAG, MAT), (), PUBLISHER, folder, workers=2, progress=lambda *each: told.append(each))
    return folder, written, told


def test_every_file_has_its_place(whole):
    folder, written, _ = whole
    assert written.files == tuple(sorted(set(tree(folder)) - {".presscloth-site"}))
    assert set(written.files) >= {
        "index.html",
        "harbour-kit-bag/index.html",
        "harbour-kit-bag/harbour-kit-bag-small-a4.pdf",
        "harbour-kit-bag/harbour-kit-bag-tall-letter.pdf",
        "mug-mat/mug-mat-one-size-a4.pdf",
        "standing/glossary.html",
        "theme/screen.css",
        "theme/page.js",
        "theme/fontpkg_source_serif_4-licence.txt",
    }
    pdfs = [name for name in written.files if name.endswith(".pdf")]
    assert len([name for name in pdfs if "cue-sheet" not in name]) == 8
    assert [name for name in pdfs if "cue-sheet" in name] == [
        f"harbour-kit-bag/harbour-kit-bag-{size}-cue-sheet-{paper}.pdf"
        for size in ("large", "small", "tall")
        for paper in ("a4", "letter")
    ]  # the mat has no video


def test_progress_is_told_in_order(whole):
    assert whole[2] == [
        (1, 4, "Harbour Kit Bag, Small"),
        (2, 4, "Harbour Kit Bag, Tall"),
        (3, 4, "Harbour Kit Bag, Large"),
        (4, 4, "Mug Mat, One size"),
    ]


def test_every_link_in_the_site_leads_to_a_file_or_a_place_in_one(whole):
    folder, written, _ = whole
    pages = {
        name: Page((folder / name).read_text(encoding="utf-8"))
        for name in written.files
        if name.endswith(".html")
    }
    # The first page, 2 recipes, 3 standing pages in 2 languages, lists of 2 crafts and 3 skills.
    assert len(pages) == 14
    followed = 0
    for name, page in pages.items():
        for element in page.elements:
            for attribute in ("href", "src"):
                target = element.attributes.get(attribute)
                if target is None or re.match("https?:|mailto:|data:", target):
                    continue
                file, _, place = target.partition("#")
                led = os.path.normpath(os.path.join(os.path.dirname(name), file)) if file else name
                assert not target.startswith("/")
                assert led in written.files, f"{name}: {target}"
                assert not place or place in pages[led].ids
                followed += 1
    assert followed >= 50


def test_fonts_of_the_style_sheet_are_there(whole):
    folder, written, _ = whole
    sheet = (folder / "theme" / "fonts.css").read_text(encoding="utf-8")
    named = re.findall(r'url\("([^"]+)"\)', sheet)
    assert len(named) == 6
    assert all(f"theme/{name}" in written.files for name in named)
    assert not re.search(r"https?:|//", (folder / "theme" / "screen.css").read_text(encoding="utf-8"))


def test_no_place_of_the_machine_stands_in_any_file(whole):
    folder, _, _ = whole
    for name, content in tree(folder).items():
        assert b"file:" not in content, name
        assert str(folder.parent).encode() not in content, name


def test_another_folder_another_number_of_processes_the_same_bytes(whole, tmp_path):
    folder = tmp_path / "some where" / "else"
    publish((BAG, MAT), (), PUBLISHER, folder, workers=1)
    assert tree(folder) == tree(whole[0])


def test_the_catalogue_is_by_month_the_newest_first(tmp_path):
    booklets = tuple(
        Booklet((replace(MUG_MAT, slug=slug, title=title, release=release, draft=False),))
        for slug, title, release in (
            ("a", "Zigzag", "2026-12"),
            ("b", "Apron", "2027-05"),
            ("c", "bolster", "2027-05"),
            ("d", "Cushion", "2027-01"),
            ("e", "Drawing bag", ""),
        )
    )
    publish(booklets, (), NO_PDF, tmp_path / "site")
    page = Page((tmp_path / "site" / "index.html").read_text(encoding="utf-8"))
    heads = [words(each.text) for each in page.elements if each.tag in ("h2", "h3")]
    assert (heads[0], heads[-1]) == ("Found", "By craft")
    assert heads[1:-1] == [
        "May 2027", "Apron", "bolster", "January 2027", "Cushion", "December 2026", "Zigzag", "Not dated",
        "Drawing bag",
    ]  # fmt: skip


def test_the_catalogue_says_sizes_and_drafts(whole):
    text = words(Page((whole[0] / "index.html").read_text(encoding="utf-8")).all("main")[0].text)
    assert "bags · sizes Small, Tall, Large" in text
    assert "Mug Mat Draft" in text


def test_an_empty_site_says_so(tmp_path):
    publish((), (), NO_PDF, tmp_path / "site")
    assert "No recipe has been released yet." in (tmp_path / "site" / "index.html").read_text(
        encoding="utf-8"
    )


def test_kept_pages_stay_as_they_are_and_stay_in_the_catalogue(tmp_path):
    site = tmp_path / "site"
    publish((BAG, MAT), (), NO_PDF, site)
    (site / "harbour-kit-bag" / "harbour-kit-bag-small-a4.pdf").write_bytes(b"as it was")
    before = tree(site / "harbour-kit-bag")
    changed = Booklet((replace(MUG_MAT, title="Tea Mat"),))
    written = publish((changed,), ("harbour-kit-bag", "never-was"), NO_PDF, site)
    assert tree(site / "harbour-kit-bag") == before
    assert (written.kept, written.absent) == (("harbour-kit-bag",), ("never-was",))
    index = (site / "index.html").read_text(encoding="utf-8")
    assert "Harbour Kit Bag" in index and "Tea Mat" in index and "Mug Mat" not in index


def test_a_recipe_that_is_gone_is_gone(tmp_path):
    publish((BAG, MAT), (), NO_PDF, tmp_path / "site")
    publish((MAT,), (), NO_PDF, tmp_path / "site")
    assert not (tmp_path / "site" / "harbour-kit-bag").exists()
    assert "Harbour" not in (tmp_path / "site" / "index.html").read_text(encoding="utf-8")


@pytest.mark.parametrize("content", ["", "{", "[]", '{"slug": "mug-mat"}', None])
def test_an_entry_that_is_not_sound_is_no_entry(tmp_path, content):
    publish((MAT,), (), NO_PDF, tmp_path / "site")
    entry = tmp_path / "site" / "mug-mat" / "entry.json"
    assert read_entry(entry.parent).title == "Mug Mat"
    if content is None:
        entry.write_text(json.dumps({**json.loads(entry.read_text()), "slug": "other"}))
    else:
        entry.write_text(content)
    assert read_entry(entry.parent) is None


def test_pictures_lie_beside_the_page(tmp_path):
    pictured = Booklet((with_picture(MUG_MAT, tmp_path),))
    publish((pictured,), (), NO_PDF, tmp_path / "site")
    assert not (tmp_path / "site" / "mug-mat" / "corner.png").exists()
    assert (tmp_path / "site" / "mug-mat" / "corner-png-40.png").is_file()
    (image,) = Page((tmp_path / "site" / "mug-mat" / "index.html").read_text(encoding="utf-8")).all("img")
    assert image.attributes == {
        "src": "corner-png-40.png",
        "width": "40",
        "height": "30",
        "alt": "A boxed corner, seen from inside the bag",
        "loading": "lazy",
    }


@pytest.mark.parametrize("name", ["../out.png", "/etc/out.png", "a/../../out.png", "..\\out.png"])
def test_a_picture_cannot_be_written_elsewhere(tmp_path, name):
    (tmp_path / "corner.png").write_bytes(b"")
    figure = Figure(Image(tmp_path / "corner.png", name, "x"))
    with pytest.raises(PrintingRefused, match="does not lie in its recipe's folder"):
        publish((Booklet((replace(MUG_MAT, intro=(figure,)),)),), (), NO_PDF, tmp_path / "site")
    assert not (tmp_path / "site").exists()
    assert not (tmp_path / "out.png").exists()


def test_when_printing_is_refused_the_old_site_stays(tmp_path):
    site = tmp_path / "site"
    publish((MAT,), (), NO_PDF, site)
    before = tree(site)
    lost = Figure(Image(tmp_path / "gone.png", "gone.png", "gone"))
    with pytest.raises(PrintingRefused):
        publish((BAG, Booklet((replace(MUG_MAT, intro=(lost,)),))), (), NO_PDF, site)
    assert tree(site) == before
    assert [each.name for each in tmp_path.iterdir() if each.is_dir()] == ["site"]


def test_a_refusal_in_another_process_arrives(tmp_path, monkeypatch):
    """The pictures are sound when they are copied and gone when the workers print."""
    pictured = [with_picture(handout, tmp_path) for handout in (SMALL, TALL, LARGE)]
    real = publish.__globals__["_write_recipe"]

    def then_lose(*arguments):
        real(*arguments)
        (tmp_path / "corner.png").unlink()

    monkeypatch.setitem(publish.__globals__, "_write_recipe", then_lose)
    with pytest.raises(PrintingRefused, match=r"corner\.png cannot be read"):
        publish((Booklet(tuple(pictured)),), (), PUBLISHER, tmp_path / "site", workers=2)
    assert not (tmp_path / "site").exists()


@pytest.mark.parametrize("slug", ["theme", "standing", "index", "Über", "a/b", "..", ".x", ""])
def test_a_recipe_needs_an_address(tmp_path, slug):
    with pytest.raises(PublishRefused, match="cannot be called"):
        publish((Booklet((replace(MUG_MAT, slug=slug),)),), (), NO_PDF, tmp_path / "site")


def test_two_recipes_cannot_share_one(tmp_path):
    with pytest.raises(PublishRefused, match="two recipes are called `mug-mat`"):
        publish((MAT, MAT), (), NO_PDF, tmp_path / "site")
    with pytest.raises(PublishRefused, match="two recipes are called `mug-mat`"):
        publish((MAT,), ("mug-mat",), NO_PDF, tmp_path / "site")


def test_standing_pages_of_ones_own(tmp_path):
    (tmp_path / "standing").mkdir()
    (tmp_path / "standing" / "hours.md").write_text("# When we sew\n\nThursdays.\n", encoding="utf-8")
    written = publish((MAT,), (), NO_PDF, tmp_path / "site", standing=tmp_path / "standing")
    assert [name for name in written.files if name.startswith("standing/")] == ["standing/hours.html"]
    assert "When we sew" in (tmp_path / "site" / "mug-mat" / "index.html").read_text(encoding="utf-8")
