"""The design sheet's figures, computed anew, and what its colours must reach."""

import re
from itertools import combinations

import pytest

from presscloth.printing.shipped import themes_folder

FOLDER = themes_folder()
SCREEN = (FOLDER / "plain-seam" / "screen.css").read_text(encoding="utf-8")
SHEET = (FOLDER / "README.md").read_text(encoding="utf-8")


def luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.2: https://www.w3.org/TR/WCAG22/#dfn-relative-luminance"""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    dark, light = sorted(map(luminance, (one, other)))
    return (light + 0.05) / (dark + 0.05)


def palettes() -> tuple[dict[str, str], dict[str, str], dict[str, str]]:
    """The variables of the light, the dark and the printed palette, in the order of the style sheet."""
    found = [
        dict(re.findall(r"--([\w-]+): (#[0-9a-f]{6})", block))
        for block in re.findall(r":root \{(.*?)\}", SCREEN, re.DOTALL)
    ]
    light, dark, printed = (palette for palette in found if palette)
    return light, dark, printed


def test_the_formula_gives_the_known_extremes():
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize("palette", palettes(), ids=["light", "dark", "printed"])
def test_colours_of_text_stand_out(palette):
    for name in ("ink", "soft", "accent"):
        assert contrast(palette[name], palette["ground"]) >= 4.5
        assert contrast(palette[name], palette["field"]) >= 4.5
    assert contrast(palette["care"], palette["on-care"]) >= 4.5


def test_paper_has_the_light_palette():
    light, _, printed = palettes()
    assert {**light, "field": "#ffffff"} == printed


def test_the_design_sheet_says_what_is_so():
    light, dark, _ = palettes()
    rows = re.findall(r"^\| (ink|soft|accent), .*?\| `(.+?)` \| (.+?) \| `(.+?)` \| (.+?) \|$", SHEET, re.M)
    assert len(rows) == 3
    for name, in_light, on_light, in_dark, on_dark in rows:
        assert (in_light, in_dark) == (light[name], dark[name])
        assert on_light == f"{contrast(in_light, light['ground']):.1f}"
        assert on_dark == f"{contrast(in_dark, dark['ground']):.1f}"


@pytest.mark.parametrize("theme", ["plain-seam", "large-print"])
def test_colours_on_paper_stand_out(theme):
    sheet = (FOLDER / theme / "print.css").read_text(encoding="utf-8")
    colours = set(re.findall(r"[{;]\s*color: (#[0-9a-f]{6})", sheet)) - {"#ffffff"}
    assert colours
    assert all(contrast(colour, "#ffffff") >= 4.5 for colour in colours)


def test_large_print_is_large():
    sheet = (FOLDER / "large-print" / "print.css").read_text(encoding="utf-8")
    sizes = [float(size) for size in re.findall(r"(?:font|font-size): (?:600 )?([\d.]+)pt", sheet)]
    assert len(sizes) >= 8 and min(sizes) >= 18
    rules = re.sub(r"/\*.*?\*/", "", sheet, flags=re.DOTALL)
    assert not re.search(r"italic|oblique|column|flex|grid|float", rules)


@pytest.mark.parametrize("theme", ["plain-seam", "large-print"])
def test_inks_that_lie_side_by_side_differ_in_more_than_colour(theme):
    from presscloth.printing.theme import open_theme

    inks = open_theme(theme).look.inks
    for one, other in combinations(inks.values(), 2):
        assert (one.line, one.dash, one.fill, one.hatch) != (other.line, other.dash, other.fill, other.hatch)
