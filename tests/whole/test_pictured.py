"""A recipe with photographs and a video, compiled: what is published, and what is not."""

from __future__ import annotations

import io
from pathlib import Path

import pikepdf
import pytest
from PIL import Image
from printing.camera import CAMERA, SECRETS, photograph
from printing.making import png
from printing.pages import Page, words
from printing.tagged import elements

from presscloth.dev import scaffold
from presscloth.pipeline import Compiled, compile_site

RECIPE = """\
---
video: https://tidewrack.example/video/cloth
---

## Steps

### The hem

1. At 1:30: Press {1.2 cm (1/2 in)} under.

   ![a corner, pressed {1.2 cm (1/2 in)} under](corner.jpg)
   Pressed by {1.2 cm (1/2 in)}.

2. At 4:15: Stitch it.

   ```sew
   hem all of cloth by 1.2 cm (1/2 in) twice
   finish cloth
   ```

## Notes

![the cloth on the line](shore/line.jpg)
"""


def make(folder: Path) -> Path:
    (folder / "recipes" / "cloth" / "shore").mkdir(parents=True)
    path = scaffold.write(RECIPE, folder / "recipes" / "cloth")
    photograph(path.parent / "corner.jpg", 2400, 1800)
    photograph(path.parent / "shore" / "line.jpg", 1000, 700, orientation=8)
    (folder / "site").mkdir()
    (folder / "site" / "publisher.yaml").write_text("address: https://tidewrack.example\npapers: [A4]\n")
    return path


def compiled(folder: Path) -> Compiled:
    done = compile_site([make(folder)], out=folder / "out", site=folder / "site", workers=1)
    assert done.problems == () and done.proved[0].problems == ()
    return done


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    folder = tmp_path_factory.mktemp("pictured")
    return folder / "out" / "cloth", compiled(folder).written


def test_the_files(site):
    pictures = {name for name in site[1] if name.endswith(".jpg")}
    assert pictures == {
        "cloth/corner-jpg-800.jpg",
        "cloth/corner-jpg-1600.jpg",
        "cloth/shore/line-jpg-700.jpg",
    }
    assert {"cloth/chapters.vtt", "cloth/cloth-one-size-cue-sheet-a4.pdf"} <= set(site[1])


def test_no_file_tells_of_the_camera_or_the_place(site):
    folder, names = site
    for name in names:
        content = (folder.parent / name).read_bytes()
        assert CAMERA.encode() not in content, name
        assert b"GPS" not in content or name.endswith((".ttf", ".js")), name
        if name.endswith(".jpg"):
            assert not [secret for secret in SECRETS if secret in content], name
            with Image.open(io.BytesIO(content)) as picture:
                assert len(picture.getexif()) == 0
    with pikepdf.open(folder / "cloth-one-size-a4.pdf") as document:
        held = [
            each.read_raw_bytes()
            for each in document.objects
            if isinstance(each, pikepdf.Stream) and each.get("/Subtype") == "/Image"
        ]
    assert len(held) == 2
    assert not [secret for secret in SECRETS for content in held if secret in content]


def test_the_page(site):
    page = Page((site[0] / "index.html").read_text(encoding="utf-8"))
    by_source = {image.attributes["src"]: image.attributes for image in page.all("img")}
    corner = by_source["corner-jpg-800.jpg"]
    assert corner["srcset"] == "corner-jpg-800.jpg 800w, corner-jpg-1600.jpg 1600w"
    assert (corner["width"], corner["height"]) == ("800", "600")
    assert corner["alt"] == "a corner, pressed 1.2 cm (1/2 in) under"
    line = by_source["shore/line-jpg-700.jpg"]
    assert (line["width"], line["height"], line.get("srcset")) == ("700", "1000", None)
    assert "Pressed by 1.2 cm (1/2 in)." in [words(each.text) for each in page.all("figcaption")]
    links = {each.attributes["href"] for each in page.all("a")}
    assert "https://tidewrack.example/video/cloth#t=90" in links
    assert "chapters.vtt" in links
    assert [link for link in links if "cue-sheet" in link] == ["cloth-one-size-cue-sheet-a4.pdf"]


def test_the_chapters(site):
    assert (site[0] / "chapters.vtt").read_text(encoding="utf-8").splitlines()[2:8] == [
        "1",
        "00:00:00.000 --> 00:01:30.000",
        "Plain Cloth",
        "",
        "2",
        "00:01:30.000 --> 00:04:15.000",
    ]


def test_the_pdf_has_alt_texts_and_captions(site):
    with pikepdf.open(site[0] / "cloth-one-size-a4.pdf") as document:
        figures = [str(each.get("/Alt", "")) for each, _ in elements(document, "/Figure")]
        assert "a corner, pressed 1.2 cm (1/2 in) under" in figures
        assert "the cloth on the line" in figures
        captions = [each for each, _ in elements(document, "/Caption")]
        assert len(captions) >= 2  # of the picture and of the code


def test_another_folder_gives_the_same_bytes(site, tmp_path):
    again = tmp_path / "some where else"
    again.mkdir()
    done = compiled(again)
    assert done.written == site[1]
    for name in done.written:
        assert (again / "out" / name).read_bytes() == (site[0].parent / name).read_bytes(), name


def test_a_picture_with_a_hole_keeps_the_site_as_it_was(tmp_path):
    """Its header and its end are sound, so a check lets it pass; compiling says what is wrong."""
    path = make(tmp_path)
    path.write_text(path.read_text().replace("corner.jpg", "corner.png"))
    whole = png(400, 300)
    (path.parent / "corner.png").write_bytes(whole.replace(whole[60:80], bytes(20)))
    done = compile_site([path], out=tmp_path / "out", site=tmp_path / "site", workers=1)
    (problem,) = done.problems
    assert problem.slug() == "site-not-written"
    assert "the picture corner.png cannot be unpacked" in problem.message()
    assert not (tmp_path / "out").exists()
