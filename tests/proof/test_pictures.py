"""Which pictures are refused, from their first and last bytes alone."""

from __future__ import annotations

import zlib
from pathlib import Path

import pytest
from PIL import Image as Pictures
from printing.camera import as_bytes, corners, photograph
from printing.making import png

from presscloth.dev import scaffold
from presscloth.pipeline import prove
from presscloth.proof import picture_files
from presscloth.proof.picture_files import Header, Unfit, look_at

STEP = """\
## Steps

1. Look: ![the corner]({name})

   ```sew
   hem all of cloth by 1.2 cm (1/2 in) twice
   finish cloth
   ```
"""


def refused(file: Path) -> str:
    found = look_at(file)
    assert isinstance(found, Unfit)
    return found.why


def written(folder: Path, name: str, content: bytes) -> Path:
    (folder / name).write_bytes(content)
    return folder / name


def header_only(width: int, height: int) -> bytes:
    """A PNG that says how large it is and holds a single row: its end is there, its points are not."""
    whole = png(1, 1)
    head = b"IHDR" + width.to_bytes(4, "big") + height.to_bytes(4, "big") + whole[24:29]
    return whole[:12] + head + zlib.crc32(head).to_bytes(4, "big") + whole[33:]


def test_a_sound_picture_says_how_large_it_is_upright(tmp_path):
    assert look_at(photograph(tmp_path / "a.jpg", 80, 60)) == Header("JPEG", 80, 60)
    assert look_at(photograph(tmp_path / "b.jpg", 80, 60, orientation=6)) == Header("JPEG", 60, 80, 6)
    assert look_at(written(tmp_path, "c.png", png(7, 5))) == Header("PNG", 7, 5)


@pytest.mark.parametrize(
    ("width", "height"), [(100_000, 100_000), (30_000, 30_000), (2_000_000_000, 2), (10_000, 6_001)]
)
def test_a_bomb_is_refused_before_it_is_unpacked(tmp_path, monkeypatch, width, height):
    monkeypatch.setattr(Pictures.Image, "load", lambda self: pytest.fail("unpacked"))
    assert refused(written(tmp_path, "bomb.png", header_only(width, height))) == (
        "has more than 60 million points"
    )


def test_sixty_million_points_are_taken(tmp_path):
    assert look_at(written(tmp_path, "large.png", header_only(10_000, 6_000))) == Header("PNG", 10_000, 6_000)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "GIF", "WEBP"])
@pytest.mark.parametrize("kept", [0.3, 0.6, 0.98])
def test_a_file_that_breaks_off_is_refused(tmp_path, kind, kept):
    name = f"a.{kind.lower()}"
    whole = as_bytes(corners(400, 300).effect_spread(9), kind)
    assert isinstance(look_at(written(tmp_path, name, whole)), Header)
    why = refused(written(tmp_path, name, whole[: int(len(whole) * kept)]))
    assert why in ("breaks off before its end", "cannot be read as a picture")


def test_a_name_that_promises_another_kind(tmp_path):
    assert refused(written(tmp_path, "a.jpg", png(4, 4))) == "is a PNG by what stands in it"


@pytest.mark.parametrize("kind", ["GIF", "PNG", "WEBP"])
def test_what_moves_is_refused(tmp_path, kind):
    frames = [corners(40, 30), corners(40, 30).rotate(180)]
    moving = as_bytes(frames[0], kind, save_all=True, append_images=frames[1:], duration=100)
    assert refused(written(tmp_path, f"a.{kind.lower()}", moving)) == "moves, and paper does not"


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\x89PNG\r\n\x1a\n",
        b"GIF89a",
        b"\xff\xd8\xff",
        b"<svg/>",
        b"RIFF\xff\xff\xff\xffWEBP",
        b"BM" * 40,
    ],
)
def test_what_is_no_picture(tmp_path, content):
    assert refused(written(tmp_path, "a.png", content)) == "cannot be read as a picture"


def test_too_large_a_file_is_not_even_read(tmp_path, monkeypatch):
    monkeypatch.setattr(picture_files, "LARGEST_FILE", 100)
    monkeypatch.setattr(Path, "read_bytes", lambda self: pytest.fail("read"))
    file = tmp_path / "a.png"
    with open(file, "wb") as large:
        large.write(bytes(101))
    assert refused(file).startswith("is larger than")


SVG_BOMB = b"""<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script><g id="a"/>
<g id="b"><use href="#a"/><use href="#a"/></g><image href="file:///etc/hostname"/></svg>"""


@pytest.mark.parametrize(
    ("name", "content", "problem", "says"),
    [
        ("corner.png", header_only(50_000, 50_000), "picture-unfit", "has more than 60 million points"),
        ("corner.jpg", b"", "picture-unfit", "cannot be read as a picture"),
        ("corner.svg", SVG_BOMB, "picture-missing", "is of a kind that is not printed"),
        ("corner.png", SVG_BOMB, "picture-unfit", "cannot be read as a picture"),
    ],
)
def test_a_check_reports_it_at_its_place(tmp_path, name, content, problem, says):
    path = scaffold.write(STEP.format(name=name), tmp_path)
    written(tmp_path, name, content)
    (found,) = prove(path).problems
    assert (found.slug(), found.span.text) == (problem, f"![the corner]({name})")
    assert found.message().startswith(f"the picture `{name}` {says}")


def test_a_check_unpacks_nothing(tmp_path, monkeypatch):
    path = scaffold.write(STEP.format(name="corner.jpg"), tmp_path)
    photograph(tmp_path / "corner.jpg")
    monkeypatch.setattr(Pictures.Image, "load", lambda self: pytest.fail("unpacked"))
    assert prove(path).problems == ()
