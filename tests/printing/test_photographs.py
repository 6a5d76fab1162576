"""Photographs: sized for their use, upright, in sRGB, with nothing in them but what can be seen."""

from __future__ import annotations

import io
import shutil
import subprocess
from pathlib import Path

import pikepdf
import pytest
from PIL import Image as Pictures
from PIL import ImageFile
from printing.camera import CAMERA, SECRETS, as_bytes, corners, exif, photograph, profile
from printing.making import png, words
from printing.samples import MUG_MAT, PUBLISHER
from printing.tools import needs

from presscloth.handout.tree import Figure, Image
from presscloth.printing.pdf import pdf
from presscloth.printing.photographs import for_page, on_paper, page_file, paper_file
from presscloth.printing.refused import PrintingRefused
from presscloth.printing.theme import open_theme


def image(file: Path) -> Image:
    return Image(file, file.name, "A boxed corner")


def seen(content: bytes) -> Pictures.Image:
    return Pictures.open(io.BytesIO(content)).convert("RGB")


def colours(picture: Pictures.Image) -> list[str]:
    """What is seen in the four corners: the strongest channel, or `white`."""
    wide, high = picture.size
    places = [(wide // 8, high // 8), (7 * wide // 8, high // 8), (wide // 8, 7 * high // 8)]
    names = []
    for place in (*places, (7 * wide // 8, 7 * high // 8)):
        red, green, blue = picture.getpixel(place)
        bright = min(red, green, blue) > 150
        names.append("white" if bright else "rgb"[max(range(3), key=(red, green, blue).__getitem__)])
    return names


def test_a_page_takes_two_widths_and_paper_what_it_can_show(tmp_path):
    picture = image(photograph(tmp_path / "corner.jpg"))
    assert [(each.name, each.width, each.height) for each in for_page(picture)] == [
        ("corner-jpg-800.jpg", 800, 600),
        ("corner-jpg-1600.jpg", 1600, 1200),
    ]
    for variant in for_page(picture):
        assert seen(page_file(picture, variant)).size == (variant.width, variant.height)
    wide, high = on_paper(picture, 148)
    assert (round(wide, 2), round(high, 2)) == (146.67, 110)  # 4 : 3, no higher than 110 mm
    printed = seen(paper_file(picture, 148))
    assert printed.width == 1732  # 146.67 mm at 300 points to the inch
    assert printed.width / (wide / 25.4) <= 300


def test_a_small_picture_is_never_enlarged(tmp_path):
    file = tmp_path / "thread.png"
    file.write_bytes(png(300, 100))
    (only,) = for_page(image(file))
    assert (only.name, only.width, only.height) == ("thread-png-300.png", 300, 100)
    assert seen(paper_file(image(file), 148)).size == (300, 100)
    wide, high = on_paper(image(file), 148)
    assert (round(wide, 1), round(high, 1)) == (50.8, 16.9)  # 150 points to the inch


def test_two_files_that_differ_by_their_kind_have_names_of_their_own(tmp_path):
    names = set()
    for name, kind in (("a.jpg", "JPEG"), ("a.jpeg", "JPEG"), ("a.webp", "WEBP"), ("a.png", "PNG")):
        (tmp_path / name).write_bytes(as_bytes(corners(40, 30), kind))
        names |= {each.name for each in for_page(image(tmp_path / name))}
    assert names == {"a-jpg-40.jpg", "a-jpeg-40.jpg", "a-webp-40.jpg", "a-png-40.png"}


def test_nothing_of_the_camera_gets_out(tmp_path):
    file = photograph(tmp_path / "corner.jpg")
    own = file.read_bytes()
    assert all(secret in own for secret in (CAMERA.encode(), b"Exif", b"xmpmeta", b"ICC_PROFILE"))
    with Pictures.open(file) as taken:
        assert taken.getexif().get_ifd(0x8825)[1] == "N"
    made = [page_file(image(file), each) for each in for_page(image(file))] + [paper_file(image(file), 148)]
    for content in made:
        assert not [secret for secret in SECRETS if secret in content]
        opened = Pictures.open(io.BytesIO(content))
        assert dict(opened.getexif()) == {}
        assert set(opened.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}


def test_a_png_keeps_no_text_and_no_profile(tmp_path):
    from PIL.PngImagePlugin import PngInfo

    notes = PngInfo()
    notes.add_text("Author", CAMERA)
    file = tmp_path / "corner.png"
    file.write_bytes(
        as_bytes(corners(900, 600), "PNG", pnginfo=notes, exif=exif(), icc_profile=profile(), dpi=(72, 72))
    )
    assert CAMERA.encode() in file.read_bytes()
    for variant in for_page(image(file)):
        content = page_file(image(file), variant)
        assert not [secret for secret in SECRETS if secret in content]
        assert Pictures.open(io.BytesIO(content)).info == {}


UPRIGHT = ["r", "g", "b", "white"]
# How a camera stores what was seen upright, for each value of Exif's Orientation (CIPA DC-008, 4.6.5.1):
# the operation that undoes it is the published one, so the file is made by its inverse.
STORED = {
    1: None,
    2: Pictures.Transpose.FLIP_LEFT_RIGHT,
    3: Pictures.Transpose.ROTATE_180,
    4: Pictures.Transpose.FLIP_TOP_BOTTOM,
    5: Pictures.Transpose.TRANSPOSE,
    6: Pictures.Transpose.ROTATE_90,  # shown turned clockwise by 90 degrees; Pillow turns the other way
    7: Pictures.Transpose.TRANSVERSE,
    8: Pictures.Transpose.ROTATE_270,
}


@pytest.mark.parametrize("orientation", STORED)
def test_a_picture_stands_upright_however_the_camera_was_held(tmp_path, orientation):
    picture = corners(600, 400)
    turn = STORED[orientation]
    stored = picture if turn is None else picture.transpose(turn)
    file = tmp_path / "held.jpg"
    stored.save(file, "JPEG", exif=exif(orientation), quality=95)
    (variant,) = for_page(image(file))
    assert (variant.width, variant.height) == (600, 400)
    made = seen(page_file(image(file), variant))
    assert made.size == (600, 400)
    assert colours(made) == UPRIGHT


@pytest.mark.parametrize(
    ("kind", "mode", "name"),
    [
        ("JPEG", "CMYK", "a.jpg"),
        ("JPEG", "L", "a.jpg"),
        ("PNG", "P", "a.png"),
        ("PNG", "RGBA", "a.png"),
        ("PNG", "1", "a.png"),
        ("WEBP", "RGB", "a.webp"),
        ("GIF", "P", "a.gif"),
    ],
)
def test_every_way_of_keeping_colours_comes_out_in_rgb(tmp_path, kind, mode, name):
    (tmp_path / name).write_bytes(as_bytes(corners(80, 60, mode), kind))
    (variant,) = for_page(image(tmp_path / name))
    made = Pictures.open(io.BytesIO(page_file(image(tmp_path / name), variant)))
    assert made.mode == "RGB"
    if mode not in ("L", "1"):
        assert colours(made) == UPRIGHT
    else:
        assert colours(made)[-1] == "white"


def test_sixteen_bits_become_eight_without_being_cut_off(tmp_path):
    file = tmp_path / "grey.png"
    file.write_bytes(as_bytes(Pictures.new("I;16", (40, 40), 0x6480), "PNG"))
    (variant,) = for_page(image(file))
    assert seen(page_file(image(file), variant)).getpixel((20, 20)) == (0x64, 0x64, 0x64)


def test_what_is_clear_lies_on_white(tmp_path):
    file = tmp_path / "clear.png"
    file.write_bytes(as_bytes(Pictures.new("RGBA", (40, 40), (10, 20, 30, 0)), "PNG"))
    (variant,) = for_page(image(file))
    assert seen(page_file(image(file), variant)).getpixel((20, 20)) == (255, 255, 255)


def test_the_colours_of_a_profile_are_kept(tmp_path):
    """A profile that changes nothing changes nothing; one that is broken does not stop the picture."""
    made = {}
    for name, icc in (("none", None), ("sRGB", profile()), ("broken", b"no profile at all")):
        file = tmp_path / f"{name}.png"
        file.write_bytes(as_bytes(corners(80, 60), "PNG", **({"icc_profile": icc} if icc else {})))
        (variant,) = for_page(image(file))
        made[name] = seen(page_file(image(file), variant))
    assert made["none"].tobytes() == made["broken"].tobytes()
    assert colours(made["sRGB"]) == UPRIGHT
    lab = ImageLab.of(corners(80, 60))
    file = tmp_path / "linear.jpg"
    file.write_bytes(lab)
    (variant,) = for_page(image(file))
    _, green, blue = seen(page_file(image(file), variant)).getpixel((10, 10))
    assert green > 60 and blue > 60  # 30 of 255 in linear light is 95 in sRGB (IEC 61966-2-1)


class ImageLab:
    """A JPEG whose profile says that its numbers are linear light."""

    @staticmethod
    def of(picture: Pictures.Image) -> bytes:
        found = bytearray(profile())
        place = found.find(b"rTRC")
        start = int.from_bytes(found[place + 4 : place + 8], "big")
        size = int.from_bytes(found[place + 8 : place + 12], "big")
        # ICC.1:2022, 10.18: a curve of type `para`, function 0, Y = X ** g; here g is 1.
        assert size >= 16
        found[start : start + 16] = b"para" + bytes(4) + bytes([0, 0, 0, 0]) + (1 << 16).to_bytes(4, "big")
        return as_bytes(picture, "JPEG", icc_profile=bytes(found), quality=95)


def test_the_same_file_gives_the_same_bytes_in_any_folder(tmp_path):
    first = image(photograph(tmp_path / "corner.jpg"))
    (tmp_path / "some where").mkdir()
    second = image(Path(shutil.copy(first.file, tmp_path / "some where" / "corner.jpg")))
    for one, other in zip(for_page(first), for_page(second), strict=True):
        assert page_file(first, one) == page_file(second, other)
    assert paper_file(first, 148) == paper_file(second, 148)


@pytest.mark.parametrize("behind", [False, True])
def test_a_png_says_how_it_was_held_before_or_behind_its_points(tmp_path, behind):
    whole = as_bytes(corners(60, 40).transpose(STORED[6]), "PNG", exif=exif(6))
    at = whole.index(b"eXIf") - 4
    length = int.from_bytes(whole[at : at + 4], "big") + 12
    chunk, rest = whole[at : at + length], whole[:at] + whole[at + length :]
    file = tmp_path / "held.png"
    file.write_bytes(rest[:-12] + chunk + rest[-12:] if behind else whole)
    (variant,) = for_page(image(file))
    made = seen(page_file(image(file), variant))
    assert (made.size, colours(made)) == ((60, 40), UPRIGHT)


@pytest.mark.parametrize("lenient", [False, True])
def test_a_file_whose_middle_is_missing_is_refused(tmp_path, monkeypatch, lenient):
    """Its header and its end are there; only unpacking tells. WeasyPrint asks Pillow to be lenient."""
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", lenient)
    whole = png(400, 400)
    broken = whole.replace(whole[60:80], bytes(20))
    (tmp_path / "hole.png").write_bytes(broken)
    (variant,) = for_page(image(tmp_path / "hole.png"))
    with pytest.raises(PrintingRefused, match=r"the picture hole\.png cannot be unpacked"):
        page_file(image(tmp_path / "hole.png"), variant)
    assert lenient is ImageFile.LOAD_TRUNCATED_IMAGES


# -- on paper --------------------------------------------------------------------------------------


@pytest.mark.parametrize("theme", ["plain-seam", "large-print"])
@pytest.mark.browser
def test_on_paper_no_picture_is_finer_than_the_paper_shows(tmp_path, theme):
    from dataclasses import replace

    figure = Figure(image(photograph(tmp_path / "corner.jpg", 4000, 3000, orientation=6)), words("Boxed"))
    (made,) = pdf(replace(MUG_MAT, intro=(figure,)), open_theme(theme), PUBLISHER, ("A4",))
    assert not [
        secret for secret in SECRETS if secret in made and secret != b"xmpmeta"
    ]  # the PDF has its own
    assert b"GPS" not in made
    file = tmp_path / "made.pdf"
    file.write_bytes(made)
    listed = subprocess.run(
        [needs("pdfimages"), "-list", str(file)], capture_output=True, text=True, check=True
    ).stdout
    rows = [line.split() for line in listed.splitlines()[2:]]
    assert len(rows) == 1
    width, height, across, down = (int(rows[0][place]) for place in (3, 4, 12, 13))
    assert height > width  # it was held upright
    assert 290 <= across <= 300 and 290 <= down <= 300
    with pikepdf.open(io.BytesIO(made)) as document:
        (shown,) = [
            each
            for each in document.objects
            if isinstance(each, pikepdf.Stream) and each.get("/Subtype") == "/Image"
        ]
        assert shown.ColorSpace == "/DeviceRGB"
        assert "/Metadata" not in shown
