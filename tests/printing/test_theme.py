"""Themes: found by name, complete, refused with a reason."""

from io import BytesIO
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from presscloth.drawing.tree import Ink
from presscloth.printing.fonts import browser_font, paper_font
from presscloth.printing.look import Cut, ThemeError, read_look
from presscloth.printing.shipped import standing_folder, themes_folder
from presscloth.printing.theme import open_theme, theme_names

LOOK_TEXT = (themes_folder() / "plain-seam" / "look.yaml").read_text(encoding="utf-8")
FONTS = pytest.mark.parametrize(
    "cut", open_theme().look.fonts, ids=lambda cut: f"{cut.family} {cut.weight} {cut.italic}"
)


def test_the_shipped_folders_are_found():
    assert (themes_folder() / "plain-seam" / "print.css").is_file()
    assert (standing_folder() / "glossary.md").is_file()


def test_themes_are_found_by_name():
    assert "plain-seam" in theme_names()
    assert open_theme("plain-seam").name == "plain-seam"
    with pytest.raises(ThemeError, match=r"no theme plain-seem; there are .*plain-seam"):
        open_theme("plain-seem")


def test_an_own_theme_takes_what_it_lacks_from_the_default(tmp_path):
    (tmp_path / "ours").mkdir()
    (tmp_path / "ours" / "look.yaml").write_text(
        LOOK_TEXT.replace('"#d5dcdd"', '"#cccccc"'), encoding="utf-8"
    )
    theme = open_theme("ours", tmp_path)
    assert theme.look.inks[Ink.WRONG_SIDE].fill == "#cccccc"
    assert theme.file("print.css") == themes_folder() / "plain-seam" / "print.css"
    with pytest.raises(ThemeError, match=r"no file nothing\.css"):
        theme.file("nothing.css")


@pytest.mark.parametrize(
    ("change", "to", "said"),
    [
        ("  cut: {", "  cutt: {", "no entry `cutt`"),
        ("  hidden: {colour", "  # {colour", "inks lacks hidden"),
        ("line: 0.5}", "line: wide}", "cut: line must be a number"),
        ("line: 0.5}", "line: -1}", "cut: line must be a number"),
        ("hatch: 1.8", "hutch: 1.8", "no entry `hutch`"),
        ("dash: [1.8, 1.1]", "dash: dotted", "dash is a list"),
        ('colour: "#1a2528"}\n\n', "}\n\n", "lettering lacks colour"),
        ("inks:", "inks: [", "cannot be read"),
        ("in text: 168, ", "", "drawings lacks in text"),
        ("fonts:\n", "fonts: []\nx:\n", "no entry `x`"),
    ],
)
def test_a_look_that_cannot_be_read_says_where(tmp_path: Path, change, to, said):
    assert change in LOOK_TEXT
    file = tmp_path / "look.yaml"
    file.write_text(LOOK_TEXT.replace(change, to, 1), encoding="utf-8")
    with pytest.raises(ThemeError, match=said):
        read_look(file)


# What is printed must be in the fonts: eighths, inch and foot marks, the sign of multiplication.
SIGNS = "0123456789/″′×→−–—·•“”‘’€½¼¾⅛⅜⅝⅞"


@FONTS
@pytest.mark.parametrize("make", [paper_font, browser_font])
def test_a_font_has_the_signs_of_the_trade_and_built_fractions(cut, make):
    font = TTFont(BytesIO(make(cut)))
    assert not set(map(ord, SIGNS)) - set(font.getBestCmap())
    features = {record.FeatureTag for record in font["GSUB"].table.FeatureList.FeatureRecord}
    assert {"frac", "numr", "dnom"} <= features
    assert "fvar" not in font, "a plain cut"
    assert font["OS/2"].usWeightClass == dict(cut.axes)["wght"]


def test_columns_of_figures_stand_straight():
    """The digits of the text font are equally wide by `tnum`, those of the label font as they are."""
    for cut in open_theme().look.fonts:
        font = TTFont(BytesIO(paper_font(cut)))
        names = [font.getBestCmap()[ord(digit)] for digit in "0123456789"]
        if "tnum" in {record.FeatureTag for record in font["GSUB"].table.FeatureList.FeatureRecord}:
            continue
        assert len({font["hmtx"][name][0] for name in names}) == 1


@FONTS
def test_a_font_for_browsers_is_small_and_has_a_name_of_its_own(cut):
    content = browser_font(cut)
    assert len(content) < 80_000
    names = TTFont(BytesIO(content))["name"]
    assert names.getDebugName(1) == cut.family
    assert "Source" not in (names.getDebugName(4) + names.getDebugName(6))
    assert "Open Font License" in names.getDebugName(13)


def test_bold_is_heavier():
    """The stem of the letter l, measured in the outlines."""
    stems = {}
    for cut in open_theme().look.fonts:
        font = TTFont(BytesIO(paper_font(cut)))
        glyph = font["glyf"][font.getBestCmap()[ord("|")]]
        stems[cut.family, cut.weight, cut.italic] = (glyph.xMax - glyph.xMin) / font["head"].unitsPerEm
    for family in ("Plain Seam Text", "Plain Seam Label"):
        assert stems[family, 600, False] > 1.2 * stems[family, 400, False]


def test_a_font_that_is_not_there_is_named():
    with pytest.raises(ThemeError, match="fontpkg_none with the fonts"):
        paper_font(Cut("X", 400, False, "fontpkg_none", "x.ttf", ()))
    with pytest.raises(ThemeError, match=r"has no font x\.ttf"):
        paper_font(Cut("X", 400, False, "fontpkg_source_sans_3", "x.ttf", ()))
    with pytest.raises(ThemeError, match="has no axis opsz"):
        paper_font(Cut("X", 400, False, "fontpkg_source_sans_3", "SourceSans3[wght].ttf", (("opsz", 9),)))
