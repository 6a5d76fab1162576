"""From a text to blocks: markdown-it's own rules, each followed by a look at where it stood.

Block tokens carry lines and no columns, and a rule that has returned is the last to know how much
of each line belonged to the containers around it. So each rule is wrapped: right after it has
found something, the block is made from the lines as the rule saw them.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from markdown_it import MarkdownIt, rules_block
from markdown_it.common.utils import MD_TRIM_CHARS, unescapeAll
from markdown_it.parser_block import ParserBlock, RuleFuncBlockType
from markdown_it.rules_block import StateBlock
from markdown_it.token import Token
from markdown_it.utils import EnvType

from presscloth.frozen import dataclass
from presscloth.problems import Problems
from presscloth.recipe.markdown.tree import (
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
from presscloth.source import Passage, Source, Span

PLACING = "placing"
"""Under this name a text's `Placing` travels through markdown-it."""


@dataclass(frozen=True, slots=True)
class Placing:
    """Where each character of a normalised text stands in the source, and where problems go."""

    source: Source
    offsets: Sequence[int]
    problems: Problems


_LINE_END = re.compile(r"\r\n?")


def normalised(text: str, start: int) -> tuple[str, Sequence[int]]:
    """The text from `start` on with plain line ends, and the offset of each of its characters."""
    body = text[start:].replace("\0", "\ufffd")
    if "\r" not in body:
        return body, range(start, len(text) + 1)
    offsets: list[int] = []
    at = 0
    for end in _LINE_END.finditer(body):
        offsets += range(start + at, start + end.start() + 1)
        at = end.end()
    offsets += range(start + at, len(text) + 1)
    return _LINE_END.sub("\n", body), offsets


class Lines(StateBlock):
    """Markdown-it's view of the lines, which also says where things stand."""

    def __init__(self, src: str, md: MarkdownIt, env: EnvType, tokens: list[Token]) -> None:
        super().__init__(src, md, env, tokens)
        placing = env.get(PLACING)
        self.placing: Placing = placing or Placing(Source("", src), range(len(src) + 1), Problems())

    def begin(self, line: int) -> int:
        """The first character of a line inside the containers around it."""
        return self.bMarks[line] + self.tShift[line]

    def passage(self, start: int, end: int) -> Passage:
        """A stretch of the text that stands together."""
        return self.placed(self.src[start:end], range(start, end), end)

    def placed(self, text: str, at: Sequence[int], end: int) -> Passage:
        offsets = self.placing.offsets
        places = [offsets[i] for i in at]
        places.append(places[-1] + 1 if places else offsets[end])
        return Passage(self.placing.source, text, tuple(places))

    def text(self, first: int, after: int, indent: int) -> Passage:
        """Whole lines with their ends, less their containers' prefixes and so much indent.

        Where a tab is wider than the indent, spaces stand for what is left of it, at its place.
        """
        texts: list[str] = []
        at: list[int] = []
        for line in range(first, after):
            text = self.getLines(line, line + 1, indent, True)
            end = min(self.eMarks[line] + 1, len(self.src))
            spaces = 0
            while not self.src.endswith(text[spaces:], 0, end):
                spaces += 1
            start = end - len(text) + spaces
            texts.append(text)
            at += [start - 1] * spaces
            at += range(start, end)
        return self.placed("".join(texts), at, min(self.bMarks[first], len(self.src)))

    def span(self, first: int, after: int) -> Span:
        """The place of a block's lines, less the blank ones at its end."""
        last = after - 1
        while last > first and self.isEmpty(last):
            last -= 1
        begin = self.begin(first)
        return trimmed(self.passage(begin, max(begin, self.eMarks[last]))).span()


def trimmed(passage: Passage) -> Passage:
    """Without the blank characters that Markdown strips from text (a no-break space stays)."""
    start = len(passage.text) - len(passage.text.lstrip(MD_TRIM_CHARS))
    return passage[start : max(start, len(passage.text.rstrip(MD_TRIM_CHARS)))]


Make = Callable[[Lines, Sequence[Token], int], MarkdownBlock]
"""Makes a block of the tokens which a rule pushed and the line at which it began."""


def _paragraph(lines: Lines, tokens: Sequence[Token], first: int) -> ParagraphBlock:
    text = trimmed(lines.text(first, lines.line, lines.blkIndent))
    return ParagraphBlock(text, text.span())


def _heading(lines: Lines, tokens: Sequence[Token], first: int) -> HeadingBlock:
    opening, inline, _ = tokens
    start = lines.begin(first) + len(opening.markup)
    rest = lines.passage(start, lines.eMarks[first])
    blank = len(rest.text) - len(rest.text.lstrip(MD_TRIM_CHARS))
    text = rest[blank : blank + len(inline.content)]
    return HeadingBlock(len(opening.markup), text, lines.span(first, lines.line))


def _underlined(lines: Lines, tokens: Sequence[Token], first: int) -> HeadingBlock:
    text = trimmed(lines.text(first, lines.line - 1, lines.blkIndent))
    return HeadingBlock(1 if tokens[0].markup == "=" else 2, text, lines.span(first, lines.line))


def _code(lines: Lines, tokens: Sequence[Token], first: int) -> CodeBlock:
    return CodeBlock(lines.text(first, lines.line, lines.blkIndent + 4), lines.span(first, lines.line))


def _fence(lines: Lines, tokens: Sequence[Token], first: int) -> FenceBlock:
    token = tokens[0]
    whole = lines.text(first + 1, lines.line, lines.sCount[first])
    span = lines.span(first, lines.line)
    if len(whole.text) == len(token.content):
        opening = trimmed(lines.passage(lines.begin(first), lines.eMarks[first]))
        lines.placing.problems.add(FenceNotClosed(span=opening.span()))
    return FenceBlock(unescapeAll(token.info).strip(), whole[: len(token.content)], span)


def _rule(lines: Lines, tokens: Sequence[Token], first: int) -> RuleBlock:
    return RuleBlock(lines.span(first, lines.line))


def _table(lines: Lines, tokens: Sequence[Token], first: int) -> TableBlock:
    rows = tuple(_row(lines, line) for line in range(first + 2, lines.line))
    return TableBlock(_row(lines, first).cells, rows, lines.span(first, lines.line))


def _row(lines: Lines, line: int) -> RowBlock:
    row = trimmed(lines.passage(lines.begin(line), lines.eMarks[line]))
    cells = [*_cells(lines, lines.begin(line), lines.eMarks[line])]
    return RowBlock(tuple(map(trimmed, cells)), row.span())


def _cells(lines: Lines, start: int, end: int) -> Iterator[Passage]:
    """Cut a row at its `|`; in an escaped one the backslash goes and the `|` stays.

    What is empty before the first and after the last `|` is no cell.
    """
    text = lines.src[start:end]
    end = start + len(text.rstrip(MD_TRIM_CHARS))
    start += len(text) - len(text.lstrip(MD_TRIM_CHARS))
    at: list[int] = []
    cell_start = start
    for place in range(start, end + 1):
        if place < end and lines.src[place] != "|":
            at.append(place)
        elif place < end and place > start and lines.src[place - 1] == "\\":
            at[-1:] = [place]
        else:
            at_an_end = cell_start == start or place == end
            if at or not at_an_end:
                yield lines.placed("".join(lines.src[i] for i in at), at, place)
            at, cell_start = [], place + 1


def _leaf(rule: RuleFuncBlockType, make: Make) -> RuleFuncBlockType:
    """A rule that, having found a block without others inside, says what it is and where."""

    def placed(state: StateBlock, first: int, after: int, silent: bool) -> bool:
        assert isinstance(state, Lines)
        known = len(state.tokens)
        found = rule(state, first, after, silent)
        if found and not silent:
            pushed = state.tokens[known:]
            pushed[0].meta["block"] = make(state, pushed, first)
        return found

    return placed


def _container(rule: RuleFuncBlockType) -> RuleFuncBlockType:
    """A rule that, having found a quote or a list, says where it and its items begin."""

    def placed(state: StateBlock, first: int, after: int, silent: bool) -> bool:
        assert isinstance(state, Lines)
        known = len(state.tokens)
        span = None if silent else state.span(first, first + 1)
        found = rule(state, first, after, silent)
        if found and not silent:
            opening, *inside = state.tokens[known:]
            opening.meta["span"] = span
            for token in inside:
                if token.type == "list_item_open" and token.level == opening.level + 1 and token.map:
                    line = token.map[0]
                    token.meta["span"] = state.span(line, line + 1)
        return found

    return placed


class Blocks(ParserBlock):
    """Markdown-it's block parser with rules that say where they found what."""

    def __init__(self) -> None:
        super().__init__()
        above = ["paragraph", "reference", "blockquote"]
        leaves: tuple[tuple[str, RuleFuncBlockType, Make, list[str]], ...] = (
            ("table", rules_block.table, _table, ["paragraph", "reference"]),
            ("code", rules_block.code, _code, []),
            ("fence", rules_block.fence, _fence, [*above, "list"]),
            ("hr", rules_block.hr, _rule, [*above, "list"]),
            ("heading", rules_block.heading, _heading, above),
            ("lheading", rules_block.lheading, _underlined, []),
            ("paragraph", rules_block.paragraph, _paragraph, []),
        )
        for name, rule, make, alt in leaves:
            self.ruler.at(name, _leaf(rule, make), {"alt": alt})
        self.ruler.at("blockquote", _container(rules_block.blockquote), {"alt": [*above, "list"]})
        self.ruler.at("list", _container(rules_block.list_block), {"alt": above})

    def parse(self, src: str, md: MarkdownIt, env: EnvType, outTokens: list[Token]) -> list[Token] | None:
        if not src:
            return None
        state = Lines(src, md, env, outTokens)
        self.tokenize(state, state.line, state.lineMax)
        return state.tokens

    def tokenize(self, state: StateBlock, startLine: int, endLine: int) -> None:
        """Markdown-it leaves out what stands too deep; say so."""
        assert isinstance(state, Lines)
        if state.level >= state.md.options.maxNesting:
            state.placing.problems.add(NestedTooDeep(span=state.span(startLine, startLine + 1)))
        super().tokenize(state, startLine, endLine)


_ENDS = ("blockquote_close", "list_item_close", "bullet_list_close", "ordered_list_close")


def assembled(tokens: Iterator[Token]) -> Iterator[MarkdownBlock]:
    """The blocks up to the end of the container that they stand in."""
    for token in tokens:
        if "block" in token.meta:
            block: MarkdownBlock = token.meta["block"]
            yield block
        elif token.type == "blockquote_open":
            content = tuple(assembled(tokens))
            yield QuoteBlock(content, _around(token, content))
        elif token.type in ("bullet_list_open", "ordered_list_open"):
            items = tuple(_items(tokens))
            start = int(token.attrs.get("start", 1)) if token.type == "ordered_list_open" else None
            yield ListBlock(start, items, _around(token, items))
        elif token.type in _ENDS:
            return


def _items(tokens: Iterator[Token]) -> Iterator[ItemBlock]:
    for token in tokens:
        if token.type != "list_item_open":
            return
        content = tuple(assembled(tokens))
        yield ItemBlock(content, _around(token, content))


def _around(token: Token, content: Sequence[MarkdownBlock | ItemBlock]) -> Span:
    """From the sign with which a container begins to the end of what stands in it."""
    first_line: Span = token.meta["span"]
    if not content:
        return first_line
    return Span(first_line.source, first_line.start, max(first_line.start + 1, content[-1].span.end))
