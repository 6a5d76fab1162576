"""Pictures as a camera writes them, made up point by point: a gradient, with a place and a camera's name."""

from __future__ import annotations

import io
from pathlib import Path

from PIL import Image, ImageCms

CAMERA = "Tidewrack Lantern 3"
PLACE = ((54, 1), (12, 1), (3417, 100))
SECRETS = (CAMERA.encode(), b"Exif", b"xmpmeta", b"Photoshop", b"ICC_PROFILE", b"iCCP", b"eXIf", b"tEXt")
"""Bytes that stand in what a camera writes, and in nothing that is published."""

XMP = b'<x:xmpmeta xmlns:x="adobe:ns:meta/">made by Tidewrack Lantern 3</x:xmpmeta>'


def corners(width: int, height: int, mode: str = "RGB") -> Image.Image:
    """A picture whose corners differ: red top left, green top right, blue bottom left, white the last."""
    small = Image.new("RGB", (2, 2))
    small.putdata([(220, 30, 30), (30, 200, 30), (30, 30, 220), (240, 240, 240)])
    return small.resize((width, height), Image.Resampling.NEAREST).convert(mode)


def exif(orientation: int = 1) -> Image.Exif:
    found = Image.Exif()
    found[0x010F] = CAMERA
    found[0x0112] = orientation
    found.get_ifd(0x8825).update({1: "N", 2: (54.0, 12.0, 34.17), 3: "E", 4: (7.0, 3.0, 1.5)})
    return found


def profile() -> bytes:
    return ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()


def photograph(file: Path, width: int = 2400, height: int = 1800, orientation: int = 1) -> Path:
    """A JPEG with everything that a camera and an editor add to one."""
    corners(width, height).save(
        file,
        "JPEG",
        exif=exif(orientation),
        icc_profile=profile(),
        xmp=XMP,
        comment=CAMERA.encode(),
    )
    return file


def as_bytes(picture: Image.Image, kind: str, **words: object) -> bytes:
    written = io.BytesIO()
    picture.save(written, kind, **words)
    return written.getvalue()
