"""The pages that stand beside the recipes, from `site/standing/*.md` or those that are shipped.

`safety.de.md` is `safety.md` in German; a page in German leads there, and where there is no such file to
the one without a language in its name.
"""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

from markupsafe import Markup

from presscloth.frozen import dataclass
from presscloth.handout.tree import Publisher
from presscloth.printing.html import StandingLink
from presscloth.printing.names import slug
from presscloth.printing.shipped import standing_folder
from presscloth.printing.theme import Theme, environment
from presscloth.tongue import speaking, tongue_of


@dataclass(frozen=True, slots=True)
class StandingPage:
    """A page's name, its title (the first heading, else its name) and its content as HTML.

    `of` is the name of the page that it is a translation of, its own where it is none.
    """

    name: str
    title: str
    content: Markup
    language: str
    of: str


def standing_pages(folder: Path | None = None, language: str = "en") -> tuple[StandingPage, ...]:
    """Read the pages of a folder by name; those that are shipped where there is no such folder.

    `language` is that of the pages of a folder whose names tell none; those that are shipped are English.
    """
    if folder is not None and folder.is_dir():
        return tuple(_page(file, language) for file in sorted(folder.glob("*.md")))
    return tuple(_page(file, "en") for file in sorted(standing_folder().glob("*.md")))


def standing_links(pages: tuple[StandingPage, ...], language: str) -> tuple[StandingLink, ...]:
    """A link to every page, in this language where there is one."""
    shown = {page.of: page for page in pages if page.of == page.name}
    shown |= {page.of: page for page in pages if _alike(page.language, language)}
    return tuple(
        StandingLink(page.name, page.title, "" if _alike(page.language, language) else page.language)
        for page in shown.values()
    )


def _alike(one: str, other: str) -> bool:
    """Whether two tags name one language, its regions and scripts apart: `en` and `en-GB`."""
    return one.lower().split("-")[0] == other.lower().split("-")[0]


def standing_html(
    page: StandingPage, pages: tuple[StandingPage, ...], theme: Theme, publisher: Publisher
) -> str:
    with speaking(tongue_of(page.language)):
        return environment(theme).get_template("standing.html").render(
            page=page,
            versions=tuple(each for each in pages if each.of == page.of),
            publisher=publisher,
            standing=standing_links(pages, page.language),
            language=page.language,
            here=page.name,
            up="../",
        )  # fmt: skip


def _page(file: Path, language: str) -> StandingPage:
    """Markdown as it is, raw HTML shown as text; headings get ids so that pages can point there."""
    from markdown_it import MarkdownIt

    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    tokens = parser.parse(file.read_text(encoding="utf-8"))
    of, _, own_language = file.stem.partition(".")
    title = of
    taken = {"content"}
    if [token.type for token in tokens[:2]] == ["heading_open", "inline"] and tokens[0].tag == "h1":
        title = tokens[1].content
        tokens = tokens[3:]
    for token, words in pairwise(tokens):
        if token.type == "heading_open":
            token.attrSet("id", _unlike(slug(words.content), taken))
    for token in tokens:
        for child in token.children or ():
            if child.type == "link_open":
                child.attrSet("href", _to_page(str(child.attrGet("href")), file.parent, own_language))
            elif child.type == "image":
                child.type, child.tag = "text", ""
    content = parser.renderer.render(tokens, parser.options, {})
    return StandingPage(slug(file.stem), title, Markup(content), own_language or language, slug(of))


def _unlike(name: str, taken: set[str]) -> str:
    number, held = 2, name
    while held in taken:
        held, number = f"{name}-{number}", number + 1
    taken.add(held)
    return held


def _to_page(address: str, folder: Path, language: str) -> str:
    """A link to another page's text (`glossary.md#nap`) leads to the page, in the same language if it can."""
    file, mark, place = address.partition("#")
    if not file.endswith(".md"):
        return address
    translated = f"{file.removesuffix('.md')}.{language}.md"
    name = translated if language and (folder / translated).is_file() else file
    return f"{slug(name.removesuffix('.md'))}.html{mark}{place}"
