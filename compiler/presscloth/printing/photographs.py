"""An author's picture to the pictures that are published: upright, no larger than needed, nothing but points.

A picture is drawn anew on white, in sRGB. So nothing of the author's file gets out but what can be seen:
no place, camera, date, name, preview or comment (Exif, XMP, IPTC), and no colour profile. A photograph
(JPEG, WebP) becomes a JPEG, a drawing (PNG, GIF) a PNG. The same file gives the same bytes.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING

from presscloth.frozen import dataclass
from presscloth.handout.tree import Image
from presscloth.printing.refused import PrintingRefused
from presscloth.proof.picture_files import Header, Unfit, look_at

if TYPE_CHECKING:
    from PIL.Image import Image as Points

PAGE_WIDTH = 800
"""Pixels: a little more than the column of text on a page is wide. A screen with finer pixels takes twice."""
PAPER_HEIGHT = 110.0
"""Millimetres: no picture is higher on paper, so that a step stays with it."""
FINEST = 300
"""Points to the inch on paper; a printer at home shows no more (common practice, no source)."""
COARSEST = 150
"""Points to the inch: a picture that has fewer than its place asks for is printed smaller, not coarser."""
QUALITY = 85
MILLIMETRES = 25.4
_PHOTOGRAPHS = ("JPEG", "WEBP")


@dataclass(frozen=True, slots=True)
class Variant:
    """One of the pictures that are published of one: its address in the site, and its sides in pixels."""

    name: str
    width: int
    height: int


@lru_cache(maxsize=512)
def _header(file: Path, changed: int) -> Header | Unfit:
    return look_at(file)


def header(picture: Image) -> Header:
    """What a picture's header says. Raises `PrintingRefused`, also for one that is not the recipe's own."""
    place = PurePosixPath(picture.name)
    if place.is_absolute() or ".." in place.parts or "\\" in picture.name or not place.name:
        raise PrintingRefused(f"the picture {picture.name} does not lie in its recipe's folder")
    try:
        changed = picture.file.stat().st_mtime_ns
    except OSError as error:
        raise PrintingRefused(
            f"the picture {picture.name} cannot be read ({type(error).__name__})"
        ) from error
    seen = _header(picture.file, changed)
    if isinstance(seen, Unfit):
        raise PrintingRefused(f"the picture {picture.name} {seen.why}")
    return seen


def for_page(picture: Image) -> tuple[Variant, ...]:
    """The variants for a page, the smaller first; one where the picture has no more points than that."""
    seen = header(picture)
    widths = sorted({min(seen.width, PAGE_WIDTH), min(seen.width, 2 * PAGE_WIDTH)})
    return tuple(_variant(picture, seen, width) for width in widths)


def _variant(picture: Image, seen: Header, width: int) -> Variant:
    place = PurePosixPath(picture.name)
    kind = place.suffix.removeprefix(".")
    end = "jpg" if seen.kind in _PHOTOGRAPHS else "png"
    name = place.with_name(f"{place.stem}-{kind}-{width}.{end}").as_posix()
    return Variant(name, width, _height(seen, width))


def _height(seen: Header, width: int) -> int:
    return max(1, (2 * seen.height * width + seen.width) // (2 * seen.width))


def on_paper(picture: Image, widest: float) -> tuple[float, float]:
    """How wide and high a picture stands on paper, in mm, where there is room for `widest`."""
    seen = header(picture)
    scale = min(
        widest / seen.width, PAPER_HEIGHT / seen.height, MILLIMETRES / COARSEST
    )  # mm for each point of the file
    return seen.width * scale, seen.height * scale


def page_file(picture: Image, variant: Variant) -> bytes:
    """The bytes of a variant for a page. Raises `PrintingRefused`."""
    return _published(picture, variant.width)


def paper_file(picture: Image, widest: float) -> bytes:
    """The bytes of a picture for paper: as many points as it can show where it stands, and no more."""
    wide, _ = on_paper(picture, widest)
    return _published(picture, min(header(picture).width, int(wide / MILLIMETRES * FINEST)))


def _published(picture: Image, width: int) -> bytes:
    """Unpack a picture and write it `width` pixels wide, with nothing else in it."""
    from PIL import Image as Pictures

    seen = header(picture)
    size = (max(1, width), _height(seen, max(1, width)))
    try:
        with _whole_files_only(), Pictures.open(picture.file, formats=[seen.kind]) as opened:
            opened.draft(None, (max(size), max(size)))  # a JPEG is unpacked no larger than it is wanted
            points = _upright(_on_white(opened), seen.orientation).resize(size, Pictures.Resampling.LANCZOS)
    except (OSError, ValueError, SyntaxError, MemoryError, Pictures.DecompressionBombError) as error:
        raise PrintingRefused(f"the picture {picture.name} cannot be unpacked ({error})") from error
    written = io.BytesIO()
    if seen.kind in _PHOTOGRAPHS:
        points.save(written, "JPEG", quality=QUALITY, optimize=True)
    else:
        points.save(written, "PNG", optimize=True)
    return written.getvalue()


@contextmanager
def _whole_files_only() -> Iterator[None]:
    """What a file lacks is an error here, though the PDF writer has the library fill it with grey."""
    from PIL import ImageFile

    was = ImageFile.LOAD_TRUNCATED_IMAGES
    ImageFile.LOAD_TRUNCATED_IMAGES = False
    try:
        yield
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = was


def _upright(opened: Points, orientation: int) -> Points:
    """The points as they are seen (CIPA DC-008, 4.6.5.1)."""
    from PIL.Image import Transpose

    turns = {
        2: Transpose.FLIP_LEFT_RIGHT,
        3: Transpose.ROTATE_180,
        4: Transpose.FLIP_TOP_BOTTOM,
        5: Transpose.TRANSPOSE,
        6: Transpose.ROTATE_270,
        7: Transpose.TRANSVERSE,
        8: Transpose.ROTATE_90,
    }
    return opened.transpose(turns[orientation]) if orientation in turns else opened


def _on_white(points: Points) -> Points:
    """A new picture in sRGB with the same points on white, and nothing else of the old one."""
    from PIL import Image as Pictures

    sheet = Pictures.new("RGB", points.size, "white")
    if points.has_transparency_data:
        seen = points.convert("RGBA")
        sheet.paste(_in_srgb(seen.convert("RGB"), points.info.get("icc_profile")), mask=seen.getchannel("A"))
    else:
        sheet.paste(_in_srgb(_eight_bits(points), points.info.get("icc_profile")))
    return sheet


def _eight_bits(points: Points) -> Points:
    """A grey picture of 16 bits in 8: its upper byte."""
    if points.mode.startswith("I"):
        return points.point(lambda value: value * (1 / 256)).convert("L")
    return points


def _in_srgb(points: Points, profile: bytes | None) -> Points:
    """Colours of a profile that the file carries, in sRGB; those of a profile that is broken as they are."""
    from PIL import ImageCms

    if profile:
        try:
            own = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            made = ImageCms.profileToProfile(points, own, ImageCms.createProfile("sRGB"), outputMode="RGB")
        except (ImageCms.PyCMSError, OSError):
            made = None
        if made is not None:
            return made
    return points.convert("RGB")
