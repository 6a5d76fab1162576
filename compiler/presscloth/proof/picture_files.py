"""What a picture's file is, seen from its header and its end; nothing is unpacked.

A file of a few kilobytes may unpack to gigabytes, so the number of points is read from the header first
and held against a limit. Compiling unpacks what has passed here (`printing/photographs.py`).
"""

from __future__ import annotations

import io
import warnings
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from presscloth.frozen import dataclass

if TYPE_CHECKING:
    from PIL.Image import Image

LARGEST_FILE = 20_000_000
"""Bytes in the file of a picture."""
MOST_POINTS = 60_000_000
"""Points in a picture: what a camera takes, and 180 MB once unpacked."""

KINDS: Mapping[str, str] = {
    ".png": "PNG", ".jpg": "JPEG", ".jpeg": "JPEG", ".webp": "WEBP", ".gif": "GIF",
}  # fmt: skip
"""The kinds that are printed, by the end of a file's name. SVG is a program more than a picture: it may
draw for hours and ask for other files, and none is taken."""

TURNED = range(5, 9)
"""Values of Exif's Orientation with which width and height change places (CIPA DC-008, 4.6.5)."""
ORIENTATION = 0x0112

_TAIL = 64_000
"""How far before its end a JPEG may close: some cameras write more behind it."""


@dataclass(frozen=True, slots=True)
class Header:
    """What a picture's header says: its kind, and its sides in points as it is seen, upright.

    `orientation` is Exif's, 1 to 8: how the points that are stored lie to what is seen.
    """

    kind: str
    width: int
    height: int
    orientation: int = 1


@dataclass(frozen=True, slots=True)
class Unfit:
    """Why a picture cannot be printed, after its name, and what to do about it."""

    why: str
    way: str


def look_at(file: Path) -> Header | Unfit:
    """Read a picture's header. Everything that can be told without unpacking is told."""
    try:
        if file.stat().st_size > LARGEST_FILE:
            return Unfit(f"is larger than {LARGEST_FILE // 1_000_000} MB", "save it smaller")
        content = file.read_bytes()
    except OSError as error:
        return Unfit(f"cannot be read ({type(error).__name__})", "see that the file is there and may be read")
    return header_of(content, KINDS.get(file.suffix.casefold(), ""))


def header_of(content: bytes, named: str) -> Header | Unfit:
    """The same for a file's bytes; `named` is the kind that its name promises."""
    from PIL import Image as Pictures
    from PIL import UnidentifiedImageError

    broken = Unfit("cannot be read as a picture", "save it again as JPEG or PNG")
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error", Pictures.DecompressionBombWarning)
            picture = Pictures.open(io.BytesIO(content), formats=sorted(set(KINDS.values())))
    except (Pictures.DecompressionBombError, Pictures.DecompressionBombWarning):
        return _too_many_points()
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError):
        return broken
    with picture:
        kind = picture.format or ""
        width, height = picture.size
        if width * height > MOST_POINTS:
            return _too_many_points()
        if kind != named:
            return Unfit(f"is a {kind} by what stands in it", "give its name the ending of what it is")
        if getattr(picture, "is_animated", False):
            return Unfit("moves, and paper does not", "save one of its frames as a picture of its own")
        if not _ends(content, kind):
            return Unfit("breaks off before its end", "copy or save it again; a part of the file is missing")
        orientation = _orientation(picture, content)
    if orientation in TURNED:
        width, height = height, width
    return Header(kind, width, height, orientation)


def _orientation(picture: Image, content: bytes) -> int:
    """How the points lie, 1 where nothing is said that Exif knows."""
    from PIL import Image as Pictures

    exif = Pictures.Exif()
    if picture.format == "PNG":  # asked for it, the library would unpack the whole picture first
        exif.load(_png_exif(content))
    else:
        exif = picture.getexif()
    said = exif.get(ORIENTATION)
    return said if isinstance(said, int) and 1 <= said <= 8 else 1


def _png_exif(content: bytes) -> bytes:
    """The chunk eXIf of a PNG, before its points or behind them (ISO/IEC 15948, 5.3 and 11.3.3.2)."""
    at = 8
    while at + 8 <= len(content):
        length = int.from_bytes(content[at : at + 4], "big")
        if content[at + 4 : at + 8] == b"eXIf":
            return b"Exif\0\0" + content[at + 8 : at + 8 + length]
        at += length + 12
    return b""


def _too_many_points() -> Unfit:
    return Unfit(
        f"has more than {MOST_POINTS // 1_000_000} million points",
        "save it smaller; 2000 points across are plenty for a page",
    )


def _ends(content: bytes, kind: str) -> bool:
    """Whether a file has the end that its kind asks for.

    JPEG: the marker EOI (ITU-T T.81, B.1.1.3). PNG: the chunk IEND (ISO/IEC 15948, 11.2.5). GIF: the
    trailer (GIF89a, 27). WebP: the length in its RIFF header (RFC 9649, 2.4).
    """
    match kind:
        case "JPEG":
            return b"\xff\xd9" in content[-_TAIL:]
        case "PNG":
            return b"IEND\xae\x42\x60\x82" in content[-_TAIL:]
        case "GIF":
            return content.rstrip(b"\0").endswith(b"\x3b")
        case _:
            return len(content) >= int.from_bytes(content[4:8], "little") + 8
