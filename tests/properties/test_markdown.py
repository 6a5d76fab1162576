"""What holds of every Markdown text, however odd it is."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator
from functools import cache
from types import FrameType

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from presscloth.problems import Problems
from presscloth.recipe.expression import Expression, Name
from presscloth.recipe.markdown import (
    Body,
    CodeBlock,
    FenceBlock,
    HeadingBlock,
    ItemBlock,
    ListBlock,
    MarkdownBlock,
    NestedTooDeep,
    ParagraphBlock,
    QuoteBlock,
    RowBlock,
    TableBlock,
    body,
    inlines,
    prose,
)
from presscloth.recipe.markdown.parser import markdown_it
from presscloth.recipe.prose import Code, Emphasis, How, Inline, Link, Measure, Picture, Words
from presscloth.source import Passage, Source, Span

PREFIXES = ("", "", "", "> ", ">", "- ", "* ", "1. ", "12) ", "  ", "   ", "    ", "\t", " \t", "# ", "## ")
SIGNS = (
    "cloth", " ", "  ", "\t", "½", "ö", "*", "**", "_", "`", "``", "[", "]", "](a)", "![", "[r]", "(", ")",
    "{seam}", "{2 * a}", "{", "}", "\\{", "\\|", "|", " | ", "\\", "\\*", "&amp;", "&", "<https://a.example>",
    "<b>", "#", " ##", "!", "1.", "-", "\u00a0", "\0",
)  # fmt: skip
WHOLE = (
    "",
    "",
    "---",
    "===",
    "***",
    "|---|---|",
    "| a | b\\|c |",
    "|-",
    "```",
    "```sew",
    "~~~",
    "[r]: /b",
    "<!--",
)

lines = st.one_of(
    st.tuples(
        st.lists(st.sampled_from(PREFIXES), max_size=3), st.lists(st.sampled_from(SIGNS), max_size=7)
    ).map(lambda parts: "".join((*parts[0], *parts[1]))),
    st.tuples(st.lists(st.sampled_from(PREFIXES), max_size=2), st.sampled_from(WHOLE)).map(
        lambda parts: "".join((*parts[0], parts[1]))
    ),
)
ends = st.sampled_from(("\n", "\n", "\n", "  \n", "\\\n", "\r\n", "\r"))
texts = st.lists(st.tuples(lines, ends).map("".join), max_size=12).map("".join)


@cache
def as_it_is() -> MarkdownIt:
    return MarkdownIt("commonmark", {"html": False, "maxNesting": 20}).enable("table")


def name_in_braces(passage: Passage) -> tuple[Expression, tuple[How, ...]]:
    return Name(passage.text, passage.span()), ()


def read(text: str) -> Body:
    return body(Source("text", text), 0, Problems())


def within(block: MarkdownBlock | ItemBlock | RowBlock) -> Iterator[MarkdownBlock | ItemBlock | RowBlock]:
    match block:
        case ListBlock(items=items):
            yield from items
        case QuoteBlock(content=content) | ItemBlock(content=content):
            yield from content
        case TableBlock(rows=rows):
            yield from rows
        case _:
            pass


def walked(
    among: Iterator[MarkdownBlock | ItemBlock | RowBlock],
) -> Iterator[MarkdownBlock | ItemBlock | RowBlock]:
    for block in among:
        yield block
        yield from walked(within(block))


def passages(whole: Body) -> Iterator[tuple[Passage, bool, Span]]:
    """Every passage, whether it is inline prose, and the place of its block."""
    for block in walked(iter(whole.blocks)):
        match block:
            case HeadingBlock(text=text, span=span) | ParagraphBlock(text=text, span=span):
                yield text, True, span
            case FenceBlock(text=text, span=span) | CodeBlock(text=text, span=span):
                yield text, False, span
            case TableBlock(head=cells, span=span) | RowBlock(cells=cells, span=span):
                yield from ((cell, True, span) for cell in cells)
            case _:
                pass


def flat(of: tuple[Inline, ...]) -> Iterator[Inline]:
    for inline in of:
        yield inline
        match inline:
            case Emphasis(of=inner) | Link(of=inner) | Picture(alt=inner):
                yield from flat(inner)
            case _:
                pass


def inside(inner: Span, outer: Span) -> bool:
    return outer.start <= inner.start <= inner.end <= outer.end


@given(texts)
@example("> \t x\n")
@example("- a\n\n\t\tb\n")
@example("| a | b |\r\n|---|---|\r\n| \\| | | c\r\n")
@example("- - \t> a\n")
def test_each_character_stands_where_its_passage_says(text: str):
    for passage, is_prose, span in passages(read(text)):
        assert len(passage.places) == len(passage.text) + 1
        assert list(passage.places) == sorted(passage.places)
        for character, place in zip(passage.text, passage.places, strict=False):
            typed = text[place]
            assert typed == character or (character, typed) in ((" ", "\t"), ("\n", "\r"), ("\ufffd", "\0"))
        assert not is_prose or not passage.text or inside(passage.span(), span)


@given(texts)
@example("-\n\n- a\n")
@example("> > a\n> ```\n")
@example("1. [r]: /b\n2. a\n")
def test_blocks_stand_in_the_text_in_order_and_inside_one_another(text: str):
    def hold(among: Iterator[MarkdownBlock | ItemBlock | RowBlock], start: int, end: int) -> None:
        for block in among:
            assert start <= block.span.start <= block.span.end <= end
            hold(within(block), block.span.start, block.span.end)
            start = block.span.end

    hold(iter(read(text).blocks), 0, len(text))


@given(texts)
def test_the_passages_are_those_that_markdown_it_reads(text: str):
    """Against markdown-it-py itself, which fills rows up to the width of the table, and cuts them off."""
    expected = [
        token.content.removesuffix("\n")
        for token in as_it_is().parse(text)
        if token.type in ("inline", "fence", "code_block")
    ]
    found = []
    width = 0
    for block in walked(iter(read(text).blocks)):
        match block:
            case TableBlock(head=head):
                width = len(head)
                found += [cell.text for cell in head]
            case RowBlock(cells=cells):
                found += [*(cell.text for cell in cells), *[""] * width][:width]
            case HeadingBlock() | ParagraphBlock() | FenceBlock() | CodeBlock():
                found.append(block.text.text.removesuffix("\n"))
            case _:
                pass
    assert found == expected


@given(texts.map(lambda text: text.replace("{", "")))
def test_without_braces_nothing_is_rendered_differently(text: str):
    assert markdown_it().render(text) == as_it_is().render(text)


@given(texts)
@example("| a |\n|---|\n| x\\|y \\{ {a\\|b} |\n")
@example("> ![a {b\n> c} `d`](e) f\n")
@example("***a* b**\n")
def test_prose_is_spelt_at_its_place(text: str):
    whole = read(text)
    for passage, is_prose, span in passages(whole):
        if not is_prose:
            continue
        end = 0
        found = inlines(passage, name_in_braces, Problems(), whole.references)
        for inline in found:
            assert end <= inline.span.start
            assert inside(inline.span, span) or not inline.span.text
            end = inline.span.end
        for inline in flat(found):
            match inline:
                case Words(text=words, span=place):
                    special = re.fullmatch(r"\\.|&\w+;|https://a\.example", place.text, re.DOTALL)
                    assert special or words.replace("\ufffd", "\0") == place.text
                case Code(span=place):
                    assert place.text[0] == place.text[-1] == "`"
                case Measure(expression=Name(text=name), span=place):
                    assert place.text[0] + place.text[-1] == "{}"
                    typed = place.text.replace("\\|", "|").replace("\0", "\ufffd")
                    assert all(word in typed for word in name.split())
                case Emphasis(strong=strong, span=place):
                    sign = place.text[0]
                    assert sign in "*_"
                    assert place.text.endswith(sign * (2 if strong else 1))
                case Link(span=place):
                    assert place.text[0] + place.text[-1] in ("[]", "[)", "<>")
                case Picture(span=place):
                    assert place.text[:2] == "!["
                case _:
                    pass


@given(texts)
def test_no_word_is_lost_or_said_twice(text: str):
    """Each `cloth` of a passage is said once; no address in these texts has the word."""
    whole = read(text)
    for passage, is_prose, _ in passages(whole):
        if is_prose:
            found = inlines(passage, name_in_braces, Problems(), whole.references)
            assert "".join(map(said, flat(found))).count("cloth") == passage.text.count("cloth")


def said(inline: Inline) -> str:
    match inline:
        case Words(text=text) | Code(text=text) | Measure(expression=Name(text=text)):
            return text
        case _:
            return ""


@given(texts, st.integers(0, 20))
def test_what_stands_before_the_body_moves_every_place_and_nothing_else(text: str, before: int):
    moved = body(Source("text", "\n" * before + text), before, Problems())
    there = [(passage.text, passage.places) for passage, _, _ in passages(moved)]
    here = [(p.text, tuple(place + before for place in p.places)) for p, _, _ in passages(read(text))]
    assert there == here


def work(text: str) -> int:
    """How many calls it takes to read a text into prose."""
    calls = 0

    def count(frame: FrameType, event: str, argument: object) -> None:
        nonlocal calls
        calls += event in ("call", "c_call")

    problems = Problems()
    before = sys.getprofile()
    sys.setprofile(count)
    try:
        whole = body(Source("text", text), 0, problems)
        prose(whole.blocks, name_in_braces, problems, whole.references)
    finally:
        sys.setprofile(before)
    return calls


HOSTILE = {
    "open braces": "{",
    "open braces with words": "{a ",
    "measures": "{a} ",
    "open brackets": "[",
    "open links": "[a](",
    "open pictures": "![",
    "stars": "*a **b ",
    "underscores": "a_",
    "open code": "`a",
    "backslashes": "\\",
    "strokes": "|a",
    "escaped strokes": "\\|",
    "lines": "a\n",
    "quoted lines": "> a\n",
    "items": "- a\n",
    "open labels": "[a\n",
    "definitions": "[a]: /b\n",
    "fences": "```\n",
}


@pytest.mark.parametrize("piece", HOSTILE.values(), ids=HOSTILE.keys())
def test_twice_the_text_is_twice_the_work(piece: str):
    head = "|a|b|\n|-|-|\n" if "|" in piece else ""
    assert work(head + piece * 1000) < 2.1 * work(head + piece * 500)


def test_fifty_thousand_open_braces_take_a_few_calls_each():
    assert work("{" * 50_000) < 50 * 50_000


@pytest.mark.parametrize("sign", ["> ", "- ", "1. ", "[", "![", "*a **a "])
def test_deep_nesting_takes_no_more_work_than_its_length(sign: str):
    problems = Problems()
    text = sign * 10_000 + "a"
    whole = body(Source("text", text), 0, problems)
    prose(whole.blocks, name_in_braces, problems, whole.references)
    assert {type(problem) for problem in problems.found()} <= {NestedTooDeep}
    assert work(sign * 2000 + "a") < 2.1 * work(sign * 1000 + "a")
