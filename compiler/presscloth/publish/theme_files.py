"""The files of a theme: style sheet, scripts and fonts."""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.printing.fonts import BROWSER_RULE, browser_font, font_faces, font_package
from presscloth.printing.look import Cut
from presscloth.printing.names import slug
from presscloth.printing.svg import drawing_styles
from presscloth.printing.theme import Theme

AS_THEY_ARE = (
    "screen.css",
    "catalogue.css",
    "page.js",
    "reckoning.js",
    "following.js",
    "choices.js",
    "choices.css",
    "search.js",
)


def theme_files(theme: Theme) -> Iterator[tuple[str, str | bytes]]:
    """The files by their names within the theme's folder; beside the fonts their licence, as it asks."""
    for name in AS_THEY_ARE:
        yield name, theme.text(name)
    for cut in theme.look.fonts:
        yield _font_name(cut), browser_font(cut)
        licence = font_package(cut.package) / "LICENSE"
        yield f"{cut.package}-licence.txt", licence.read_bytes()
    yield "drawings.css", drawing_styles(theme.look)
    yield "fonts.css", font_faces(theme.look, lambda _, cut: _font_name(cut), BROWSER_RULE)


def _font_name(cut: Cut) -> str:
    italic = "-italic" if cut.italic else ""
    return f"{slug(cut.family)}-{cut.weight}{italic}.ttf"
