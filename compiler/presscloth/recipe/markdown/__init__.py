"""Markdown with exact places: the one adapter around markdown-it.

`body` transforms a text into blocks, `inlines` a passage and `prose` blocks into prose. CommonMark
with tables; raw HTML stays text. `{…}` is the one mark besides: it does not nest, holds at most 400
characters, and may run over the end of a line; code is left alone. Sources: CommonMark 0.31.2, and
for tables GitHub Flavored Markdown 0.29.
"""

from presscloth.recipe.markdown.reading import BraceNotClosed, ReadBraces, body, inlines, prose
from presscloth.recipe.markdown.tree import (
    Body,
    CodeBlock,
    FenceBlock,
    FenceNotClosed,
    HeadingBlock,
    ItemBlock,
    ListBlock,
    MarkdownBlock,
    NestedTooDeep,
    ParagraphBlock,
    QuoteBlock,
    RowBlock,
    RuleBlock,
    TableBlock,
)

__all__ = [
    "Body",
    "BraceNotClosed",
    "CodeBlock",
    "FenceBlock",
    "FenceNotClosed",
    "HeadingBlock",
    "ItemBlock",
    "ListBlock",
    "MarkdownBlock",
    "NestedTooDeep",
    "ParagraphBlock",
    "QuoteBlock",
    "ReadBraces",
    "RowBlock",
    "RuleBlock",
    "TableBlock",
    "body",
    "inlines",
    "prose",
]
