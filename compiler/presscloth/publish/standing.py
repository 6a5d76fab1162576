"""The pages that stand beside the recipes, from `site/standing/*.md` or those that are shipped."""

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


@dataclass(frozen=True, slots=True)
class StandingPage:
    """A page's name, its title (the first heading, else its name) and its content as HTML."""

    name: str
    title: str
    content: Markup


def standing_pages(folder: Path | None = None) -> tuple[StandingPage, ...]:
    """Read the pages of a folder by name; those that are shipped where there is no such folder."""
    held = folder if folder is not None and folder.is_dir() else standing_folder()
    return tuple(_page(file) for file in sorted(held.glob("*.md")))


def standing_links(pages: tuple[StandingPage, ...]) -> tuple[StandingLink, ...]:
    return tuple(StandingLink(page.name, page.title) for page in pages)


def standing_html(
    page: StandingPage, pages: tuple[StandingPage, ...], theme: Theme, publisher: Publisher
) -> str:
    return environment(theme).get_template("standing.html").render(
        page=page,
        publisher=publisher,
        standing=standing_links(pages),
        language="en",
        here=page.name,
        up="../",
    )  # fmt: skip


def _page(file: Path) -> StandingPage:
    """Markdown as it is, raw HTML shown as text; headings get ids so that pages can point there."""
    from markdown_it import MarkdownIt

    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    tokens = parser.parse(file.read_text(encoding="utf-8"))
    title = file.stem
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
                child.attrSet("href", _to_page(str(child.attrGet("href"))))
            elif child.type == "image":
                child.type, child.tag = "text", ""
    content = parser.renderer.render(tokens, parser.options, {})
    return StandingPage(slug(file.stem), title, Markup(content))


def _unlike(name: str, taken: set[str]) -> str:
    number, held = 2, name
    while held in taken:
        held, number = f"{name}-{number}", number + 1
    taken.add(held)
    return held


def _to_page(address: str) -> str:
    """A link to another page's text (`glossary.md#nap`) leads to the page."""
    file, mark, place = address.partition("#")
    return f"{file.removesuffix('.md')}.html{mark}{place}" if file.endswith(".md") else address
