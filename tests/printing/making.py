"""Short ways to write handouts by hand."""

from __future__ import annotations

import struct
import zlib
from dataclasses import replace
from pathlib import Path

from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line
from presscloth.handout.tree import (
    Amount,
    CutLine,
    Figure,
    Handout,
    Image,
    Inline,
    Marks,
    Paragraph,
    StepText,
    Text,
)
from presscloth.measure import System


def pair(metric: str, imperial: str, before: str = "") -> Amount:
    return Amount(((metric, System.METRIC), (imperial, System.IMPERIAL)), before)


def plain(text: str) -> Amount:
    return Amount(((text, None),))


def words(*parts: str | Inline) -> tuple[Inline, ...]:
    return tuple(Text(part) if isinstance(part, str) else part for part in parts)


def para(*parts: str | Inline, marks: Marks | None = None) -> Paragraph:
    return Paragraph(words(*parts), marks or Marks())


def step(number: int, *parts: str | Inline, marks: Marks | None = None) -> StepText:
    return StepText(number, marks or Marks(), (para(*parts),))


def piece_drawing(name: str, width: float, height: float, across: str, down: str) -> Figure:
    """A piece with its stitch line, its grain and its dimensions."""
    left, top, allowance = 12.0, 4.0, 3.0
    right, bottom = left + width, top + height
    drawing = Drawing(
        right + 4,
        bottom + 11,
        (
            Area(((left, top), (right, top), (right, bottom), (left, bottom)), Ink.CLOTH, Ink.CUT),
            Line(
                (
                    (left + allowance, top + allowance),
                    (right - allowance, top + allowance),
                    (right - allowance, bottom - allowance),
                    (left + allowance, bottom - allowance),
                    (left + allowance, top + allowance),
                ),
                Ink.SEAM,
            ),
            Arrow((left + 8, top + 7), (left + 8, bottom - 7), Ink.GRAIN, both=True),
            Lettering((left + right) / 2, (top + bottom) / 2, name, 4.2, bold=True),
            Arrow((left, bottom + 3), (right, bottom + 3), Ink.DIMENSION, both=True),
            Lettering((left + right) / 2, bottom + 6.5, across, 3.2),
            Arrow((left - 4, top), (left - 4, bottom), Ink.DIMENSION, both=True),
            Lettering(left - 7, (top + bottom) / 2, down, 3.2, turned=-90),
        ),
        alt=f"The piece {name}, {across} wide and {down} high, its grain arrow upright.",
        caption=f"{name}, allowances included",
    )
    return Figure(drawing)


def layout_drawing() -> Figure:
    """A cutting layout with waste, a selvedge, a fold and a round piece."""
    shapes = (
        Area(((4, 4), (116, 4), (116, 58), (4, 58)), Ink.WASTE),
        Area(((6, 6), (50, 6), (50, 40), (6, 40)), Ink.CLOTH, Ink.CUT),
        Area(((52, 6), (96, 6), (96, 40), (52, 40)), Ink.WRONG_SIDE, Ink.CUT),
        Disc(106, 20, 8, Ink.CLOTH, Ink.CUT),
        Line(((6, 23), (50, 23)), Ink.FOLD),
        Line(((52, 30), (96, 30)), Ink.HIDDEN),
        Line(((4, 4), (116, 4)), Ink.SELVEDGE),
        Line(((4, 58), (116, 58)), Ink.SELVEDGE),
        Lettering(28, 15, "back", 4, bold=True),
        Lettering(74, 15, "front", 4, bold=True),
        Lettering(106, 20, "base", 3),
    )
    alt = "Back and front side by side across the cloth, the round base beside them; the rest is waste."
    return Figure(
        Drawing(120, 62, shapes, alt), words("How the pieces lie on ", pair("145 cm", "57 in"), " canvas")
    )


def cut(
    piece: str,
    key: str,
    material: str,
    number: int,
    *sides: tuple[str, Amount],
    shape: str = "",
    measure_first: bool = False,
    notes: tuple[str, ...] = (),
    belongs: str = "",
) -> CutLine:
    return CutLine(
        piece,
        key,
        material,
        number,
        sides,
        shape,
        measure_first,
        tuple(words(note) for note in notes),
        belongs,
    )


def wide_high(width: Amount, height: Amount) -> tuple[tuple[str, Amount], tuple[str, Amount]]:
    return (("width", width), ("height", height))


def with_picture(handout: Handout, folder: Path, width: int = 40, height: int = 30) -> Handout:
    """The same handout with a photograph in its introduction, written into `folder`."""
    file = folder / "corner.png"
    file.write_bytes(png(width, height))
    picture = Figure(
        Image(file, "corner.png", "A boxed corner, seen from inside the bag"), words("A boxed corner")
    )
    return replace(handout, intro=(*handout.intro, picture))


def png(width: int, height: int) -> bytes:
    """A grey PNG written by hand (ISO/IEC 15948: signature, IHDR, IDAT, IEND)."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    header = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    rows = zlib.compress((b"\0" + b"\xb4" * width) * height)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")
