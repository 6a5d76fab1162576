"""The one instance of markdown-it: CommonMark with tables and `{…}`, and without raw HTML."""

from __future__ import annotations

from functools import cache

from markdown_it import MarkdownIt

from presscloth.recipe.markdown.lines import Blocks
from presscloth.recipe.markdown.marks import Inlines
from presscloth.recipe.markdown.tree import DEEPEST


@cache
def markdown_it() -> MarkdownIt:
    """CommonMark with tables; what looks like HTML stays text."""
    md = MarkdownIt("commonmark")
    md.block = Blocks()
    md.inline = Inlines()
    md.configure("commonmark", {"html": False, "maxNesting": DEEPEST})
    md.enable(["table", "braces"])
    # It would merge text tokens and lose where each of them stands; nothing else needs it.
    md.disable("fragments_join")
    return md
