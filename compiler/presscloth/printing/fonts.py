"""The fonts of a theme: plain cuts made from the variable fonts that packages carry.

A cut is made once in a process, in some hundredths of a second; to have each PDF make its own would
take as long as the layout of its pages.
"""

from __future__ import annotations

import io
from collections.abc import Callable
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

from presscloth.printing.look import Cut, Look, ThemeError

if TYPE_CHECKING:
    import uharfbuzz
    from fontTools.ttLib.tables._n_a_m_e import table__n_a_m_e as NameTable

FEATURES = ("kern", "liga", "ccmp", "locl", "mark", "mkmk", "frac", "numr", "dnom", "tnum", "lnum")

LEGAL_NAMES = (0, 13, 14)  # copyright, licence, the licence's address (OpenType `name` table)

# What a page on the web may need: Latin with its extensions, and the signs of the trade.
BROWSER_SIGNS = (*range(0x20, 0x180), *range(0x2010, 0x2027), *map(ord, "†•…′″⁄€™←↑→↓−√≤≥½⅓⅔¼¾⅛⅜⅝⅞πΩ"))
BROWSER_RULE = "font-display:swap;"


def font_package(package: str) -> Path:
    """The folder of a package that carries fonts."""
    try:
        return Path(str(files(package)))
    except ModuleNotFoundError as error:
        raise ThemeError(f"the package {package} with the fonts of the theme is not installed") from error


@cache
def paper_font(cut: Cut) -> bytes:
    """A cut with all its letters and features; WeasyPrint takes from it what a document needs."""
    import uharfbuzz

    face, wanted = _variable(cut)
    wanted.keep_everything()
    _pin(cut, face, wanted)
    return _made(uharfbuzz.subset(face, wanted))


@cache
def browser_font(cut: Cut) -> bytes:
    """A cut with the letters that pages need, under the family's own name.

    The licence of the fonts (SIL Open Font License 1.1, 3) keeps the original name for the
    unchanged font, so that what is made from it is called otherwise.
    """
    import uharfbuzz
    from fontTools.ttLib import TTFont

    face, wanted = _variable(cut)
    wanted.unicode_set.set(set(BROWSER_SIGNS))
    wanted.layout_feature_tag_set.set({int.from_bytes(tag.encode(), "big") for tag in FEATURES})
    wanted.name_id_set.set(set(LEGAL_NAMES))
    wanted.flags |= uharfbuzz.SubsetFlags.NO_HINTING
    _pin(cut, face, wanted)
    font = TTFont(io.BytesIO(_made(uharfbuzz.subset(face, wanted))), recalcTimestamp=False)
    _rename(font["name"], cut)
    written = io.BytesIO()
    font.save(written)
    return written.getvalue()


@cache
def few_letters(cut: Cut, letters: frozenset[str]) -> bytes:
    """A cut with these letters alone, some kilobytes, to be carried in a drawing's own file."""
    import uharfbuzz

    wanted = uharfbuzz.SubsetInput()
    wanted.unicode_set.set(set(map(ord, letters)))
    wanted.layout_feature_tag_set.clear()
    wanted.name_id_set.set(set(LEGAL_NAMES))
    wanted.flags |= uharfbuzz.SubsetFlags.NO_HINTING
    return _made(uharfbuzz.subset(uharfbuzz.Face(uharfbuzz.Blob(paper_font(cut))), wanted))


def font_faces(look: Look, address: Callable[[int, Cut], str], more: str = "") -> str:
    """An `@font-face` rule for each cut, `address` giving its place by number; `more` goes into each."""
    return "".join(
        f'@font-face{{font-family:"{cut.family}";font-style:{"italic" if cut.italic else "normal"};'
        f'font-weight:{cut.weight};{more}src:url("{address(number, cut)}")}}\n'
        for number, cut in enumerate(look.fonts)
    )


def _variable(cut: Cut) -> tuple[uharfbuzz.Face, uharfbuzz.SubsetInput]:
    import uharfbuzz

    file = font_package(cut.package) / "files" / cut.file
    if not file.is_file():
        raise ThemeError(f"the package {cut.package} has no font {cut.file}")
    return uharfbuzz.Face(uharfbuzz.Blob(file.read_bytes())), uharfbuzz.SubsetInput()


def _pin(cut: Cut, face: uharfbuzz.Face, wanted: uharfbuzz.SubsetInput) -> None:
    for axis, place in cut.axes:
        if not wanted.pin_axis_location(face, axis, place):
            raise ThemeError(f"the font {cut.file} has no axis {axis}")


def _made(face: uharfbuzz.Face) -> bytes:
    return bytes(face.blob.data)


def _rename(names: NameTable, cut: Cut) -> None:
    """Leave copyright and licence, and call the font by the theme's name for it."""
    style = "Italic" if cut.italic else "Regular"
    whole = f"{cut.family} {cut.weight} {style}"
    names.names = [name for name in names.names if name.nameID in LEGAL_NAMES]
    for number, words in ((1, cut.family), (2, style), (4, whole), (6, whole.replace(" ", ""))):
        names.setName(words, number, 3, 1, 0x409)
