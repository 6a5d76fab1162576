"""Our Markdown held against the examples of CommonMark, and against markdown-it left as it is.

Source: CommonMark 0.31.2, `spec.txt`, by its authors' own package `commonmark-spec`; the folder of that
package is named by PRESSCLOTH_COMMONMARK_SPEC. The other half is held against markdown-it-py itself.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from functools import cache
from html import escape, unescape
from pathlib import Path
from urllib.parse import unquote

import pytest
from markdown_it import MarkdownIt

from presscloth.problems import Problems
from presscloth.recipe.expression import Broken, Expression
from presscloth.recipe.markdown import (
    CodeBlock,
    FenceBlock,
    HeadingBlock,
    ListBlock,
    MarkdownBlock,
    ParagraphBlock,
    QuoteBlock,
    TableBlock,
    body,
    prose,
)
from presscloth.recipe.markdown.parser import markdown_it
from presscloth.recipe.prose import (
    Block,
    Code,
    Emphasis,
    Grid,
    Heading,
    How,
    Inline,
    LineBreak,
    Link,
    Listing,
    Measure,
    Paragraph,
    Picture,
    Quote,
    Rule,
    Verbatim,
    Words,
    plain,
)
from presscloth.source import Passage, Source

FOLDER = os.environ.get("PRESSCLOTH_COMMONMARK_SPEC")
_EXAMPLE = re.compile(r"^`{32} example\n(.*?)^\.\n.*?^`{32}$", re.MULTILINE | re.DOTALL)


@cache
def examples() -> tuple[str, ...]:
    if FOLDER is None:
        if os.environ.get("CI"):
            pytest.fail("PRESSCLOTH_COMMONMARK_SPEC names no folder with CommonMark's spec.txt")
        pytest.skip("needs CommonMark's spec.txt: PRESSCLOTH_COMMONMARK_SPEC names no folder")
    text = (Path(FOLDER) / "spec.txt").read_text("utf-8").replace("→", "\t")
    return tuple(_EXAMPLE.findall(text))


@cache
def as_it_is() -> MarkdownIt:
    return MarkdownIt("commonmark", {"html": False, "maxNesting": 20}).enable("table")


def no_expression(passage: Passage) -> tuple[Expression, tuple[How, ...]]:
    return Broken(passage.span()), ()


def texts(blocks: tuple[MarkdownBlock, ...]) -> Iterator[Passage]:
    """All passages, those that hold inline prose and those of code, in their order."""
    for block in blocks:
        match block:
            case HeadingBlock(text=text) | ParagraphBlock(text=text):
                yield text
            case FenceBlock(text=text) | CodeBlock(text=text):
                yield text
            case ListBlock(items=items):
                for item in items:
                    yield from texts(item.content)
            case QuoteBlock(content=content):
                yield from texts(content)
            case TableBlock(head=head, rows=rows):
                yield from head
                for row in rows:
                    yield from row.cells
            case _:
                pass


def leaves(of: tuple[Inline, ...]) -> Iterator[Words | Code]:
    for inline in of:
        match inline:
            case Words() | Code():
                yield inline
            case Emphasis(of=inner) | Link(of=inner) | Picture(alt=inner):
                yield from leaves(inner)
            case _:
                pass


def spelt(leaf: Words | Code) -> str:
    """What the characters at a leaf's place stand for, worked out from those characters alone."""
    typed = leaf.span.text
    if isinstance(leaf, Code):
        signs = re.match("`+", typed)
        assert signs is not None
        inside = re.sub(r"\n[> ]*", " ", typed[len(signs[0]) : -len(signs[0])])
        spaced = inside[:1] == inside[-1:] == " " and inside.strip(" ")
        return inside[1:-1] if spaced else inside
    if leaf.text == typed:
        return typed
    if typed.startswith("\\"):
        return typed[1:]
    return unescape(typed)


def test_there_are_as_many_examples_as_are_published():
    assert len(examples()) == 652


def test_without_braces_nothing_is_rendered_differently():
    without = [text for text in examples() if "{" not in text]
    assert len(without) > 640
    for text in without:
        assert markdown_it().render(text) == as_it_is().render(text), text


def test_the_passages_are_those_that_markdown_it_reads():
    for text in examples():
        blocks = body(Source("example", text), 0, Problems()).blocks
        read = [token for token in as_it_is().parse(text) if token.type in ("inline", "fence", "code_block")]
        ours = [passage.text.removesuffix("\n") for passage in texts(blocks)]
        assert ours == [token.content.removesuffix("\n") for token in read], text


def test_each_character_of_a_passage_stands_where_it_says():
    for text in examples():
        for passage in texts(body(Source("example", text), 0, Problems()).blocks):
            assert len(passage.places) == len(passage.text) + 1
            for character, place in zip(passage.text, passage.places, strict=False):
                assert text[place] in (character, "\t"), (text, passage.text)


def test_each_word_and_each_piece_of_code_is_spelt_at_its_place():
    seen = 0
    for text in examples():
        whole = body(Source("example", text), 0, Problems())
        for block in prose(whole.blocks, no_expression, Problems(), whole.references):
            for leaf in leaves(runs(block)):
                assert spelt(leaf) == leaf.text, (text, leaf)
                seen += 1
    assert seen > 1000


def test_our_prose_says_what_the_page_of_markdown_it_says():
    for text in examples():
        if "{" not in text:
            whole = body(Source("example", text), 0, Problems())
            blocks = prose(whole.blocks, no_expression, Problems(), whole.references)
            assert even("".join(map(page, blocks))) == even(as_it_is().render(text)), text


def runs(block: Block) -> tuple[Inline, ...]:
    match block:
        case Paragraph(of=of) | Heading(of=of):
            return of
        case Listing(items=items):
            return tuple(inline for item in items for inner in item for inline in runs(inner))
        case Quote(of=content):
            return tuple(inline for inner in content for inline in runs(inner))
        case Grid(head=head, rows=rows):
            return tuple(inline for row in (head, *rows) for cell in row for inline in cell)
        case Verbatim() | Rule():
            return ()


def page(block: Block) -> str:
    """A block as HTML, in the manner of CommonMark's examples."""
    match block:
        case Paragraph(of=of):
            return f"<p>{line(of)}</p>"
        case Heading(level=level, of=of):
            return f"<h{level}>{line(of)}</h{level}>"
        case Listing(items=items, start=start):
            inside = "".join(f"<li>{''.join(map(page, item))}</li>" for item in items)
            number = "" if start in (None, 1) else f' start="{start}"'
            return f"<ul>{inside}</ul>" if start is None else f"<ol{number}>{inside}</ol>"
        case Quote(of=content):
            return f"<blockquote>{''.join(map(page, content))}</blockquote>"
        case Verbatim(text=text, info=info):
            language = f' class="language-{escape(info.split()[0])}"' if info else ""
            return f"<pre><code{language}>{escape(text)}</code></pre>"
        case Rule():
            return "<hr />"
        case Grid():
            raise AssertionError("CommonMark has no tables")


def line(of: tuple[Inline, ...]) -> str:
    return "".join(map(mark, of))


def mark(inline: Inline) -> str:
    match inline:
        case Words(text=text):
            return escape(text)
        case Code(text=text):
            return f"<code>{escape(text)}</code>"
        case Emphasis(of=of, strong=strong):
            return f"<strong>{line(of)}</strong>" if strong else f"<em>{line(of)}</em>"
        case Link(to=to, of=of):
            return f'<a href="{escape(to)}">{line(of)}</a>'
        case Picture(file=file, alt=alt):
            return f'<img src="{escape(file)}" alt="{escape(plain(alt))}" />'
        case LineBreak(hard=hard):
            return "<br />" if hard else "\n"
        case Measure():
            raise AssertionError("no braces, no measure")


def even(html: str) -> str:
    """HTML without what prose does not keep: titles, whether a list is loose, spaces between tags."""
    html = re.sub(r' title="[^"]*"', "", html.replace("&#x27;", "'"))
    html = re.sub(r"</?p>", " ", html)
    html = re.sub(r'(?<=<img src=")[^"]*', lambda address: unquote(address[0]), html)
    html = re.sub(r"\s*(</?(?:ul|ol|li|blockquote|h\d|hr|br|pre)\b[^>]*>)\s*", r"\1", html)
    return re.sub(r"\s+", " ", html).strip()
