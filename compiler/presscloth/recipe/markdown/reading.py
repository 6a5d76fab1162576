"""Transform passages and blocks into prose."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import field
from types import MappingProxyType
from urllib.parse import unquote

from markdown_it.token import Token

from presscloth.frozen import dataclass
from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Expression
from presscloth.recipe.markdown.lines import PLACING, Placing, assembled, normalised
from presscloth.recipe.markdown.marks import LONGEST_BRACES, TOO_DEEP
from presscloth.recipe.markdown.parser import markdown_it
from presscloth.recipe.markdown.tree import (
    DEEPEST,
    Body,
    CodeBlock,
    FenceBlock,
    HeadingBlock,
    ListBlock,
    MarkdownBlock,
    NestedTooDeep,
    ParagraphBlock,
    QuoteBlock,
    RuleBlock,
    TableBlock,
)
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
)
from presscloth.source import Passage, Source

ReadBraces = Callable[[Passage], tuple[Expression, tuple[How, ...]]]
"""Reads what stands between two braces; reports what it cannot read and gives `Broken` for it."""

NO_REFERENCES: Mapping[str, str] = MappingProxyType({})


class BraceNotClosed(Problem):
    """A measure in braces has no closing brace.

    The maker would read the name of the measure with a brace before it, and no number. Write `}`
    where the measure ends; a brace that is only a brace is written `\\{`.

    Fails:

        ## Notes

        Every seam takes {seam of cloth.

    Passes:

        ## Notes

        Every seam takes {seam} of cloth.
    """

    def message(self) -> str:
        return "a `{` begins here, and no `}` ends it in the same paragraph"

    def hint(self) -> str:
        limit = f"within {LONGEST_BRACES} signs"
        return f"write a `}}` after the measure, {limit}; a brace that is only a brace is written `\\{{`"


def body(source: Source, start: int, problems: Problems) -> Body:
    """Transform a text, from the character `start` on, into its blocks.

    Reports what stands too deep and fences that are never closed.
    """
    text, offsets = normalised(source.text, start)
    found: dict[str, dict[str, str]] = {}
    env = {PLACING: Placing(source, offsets, problems), "references": found}
    tokens: list[Token] = []
    md = markdown_it()
    md.block.parse(text, md, env, tokens)
    references = {label: definition["href"] for label, definition in found.items()}
    return Body(tuple(assembled(iter(tokens))), MappingProxyType(references))


def inlines(
    passage: Passage,
    expression: ReadBraces,
    problems: Problems,
    references: Mapping[str, str] = NO_REFERENCES,
) -> tuple[Inline, ...]:
    """Transform a passage into inline prose. Reports braces never closed and marks too deep."""
    known = {label: {"href": to, "title": ""} for label, to in references.items()}
    env: dict[str, object] = {"references": known}
    md = markdown_it()
    tokens = md.inline.parse(passage.text, md, env, [])
    reading = _Reading(expression)
    found = reading.read(passage, tokens)
    if reading.unclosed is not None:
        problems.add(BraceNotClosed(span=reading.unclosed.span(0, 1)))
    if reading.too_deep is not None:
        problems.add(NestedTooDeep(span=reading.too_deep.span(0, 1)))
    elif TOO_DEEP in env:
        problems.add(NestedTooDeep(span=passage.span()))
    return found


@dataclass(slots=True)
class _Open:
    """A mark that is open: its token, and what stands inside so far.

    What is too deep to be a mark of its own shares `inside` with the mark around it.
    """

    token: Token | None = None
    inside: list[Inline] = field(default_factory=list)
    too_deep: bool = False


@dataclass(slots=True)
class _Reading:
    """Reading one passage; `unclosed` and `too_deep` are the first such things found in it."""

    expression: ReadBraces
    unclosed: Passage | None = None
    too_deep: Passage | None = None

    def read(self, passage: Passage, tokens: Sequence[Token]) -> tuple[Inline, ...]:
        opened = [_Open()]
        run = (0, 0)
        for token in tokens:
            start, end = token.meta["at"]
            if token.type == "text" and not _autolinked(opened[-1]):
                if token.content:
                    if run[1] != start:
                        opened[-1].inside += self._words(passage, *run)
                        run = (start, start)
                    run = (run[0], end)
                continue
            opened[-1].inside += self._words(passage, *run)
            run = (end, end)
            if token.nesting > 0:
                opened.append(self._open(token, passage[start:end], opened))
            elif token.nesting < 0:
                closed = opened.pop()
                if not closed.too_deep:
                    opened[-1].inside.append(_marked(passage, closed, end))
            else:
                opened[-1].inside.append(self._single(passage, token, start, end))
        opened[-1].inside += self._words(passage, *run)
        return tuple(opened[0].inside)

    def _open(self, token: Token, place: Passage, opened: Sequence[_Open]) -> _Open:
        if len(opened) <= DEEPEST:
            return _Open(token)
        self.too_deep = self.too_deep or place
        return _Open(token, opened[-1].inside, too_deep=True)

    def _words(self, passage: Passage, start: int, end: int) -> Iterator[Words]:
        """Plain text; where its characters do not stand together in the source, in pieces that do."""
        brace = passage.text.find("{", start, end)
        if brace >= 0:
            self.unclosed = self.unclosed or passage[brace:end]
        places = passage.places
        first = start
        for at in range(start + 1, end + 1):
            if at == end or places[at] != places[at - 1] + 1:
                yield Words(passage.text[first:at], passage.span(first, at))
                first = at

    def _single(self, passage: Passage, token: Token, start: int, end: int) -> Inline:
        span = passage.span(start, end)
        match token.type:
            case "softbreak" | "hardbreak":
                return LineBreak(token.type == "hardbreak", span)
            case "code_inline":
                return Code(token.content, span)
            case "braces":
                return Measure(*self.expression(passage[start + 1 : end - 1]), span)
            case "image":
                alt = passage[start + 2 : start + 2 + len(token.content)]
                file = unquote(str(token.attrs["src"]))
                title = str(token.attrs.get("title", ""))
                return Picture(file, self.read(alt, token.children or ()), span, title)
            case "text":
                return Words(token.content, passage.span(start + 1, end - 1))
            case _:
                return Words(token.content, span)


def _autolinked(mark: _Open) -> bool:
    return mark.token is not None and mark.token.markup == "autolink"


def _marked(passage: Passage, closed: _Open, end: int) -> Inline:
    assert closed.token is not None
    start, _ = closed.token.meta["at"]
    of = tuple(closed.inside)
    match closed.token.type:
        case "link_open":
            return Link(str(closed.token.attrs["href"]), of, passage.span(start, end))
        case "strong_open":
            # Markdown-it makes the mark of the two inner signs; the outer ones are left empty.
            return Emphasis(of, True, passage.span(start - 1, end + 1))
        case _:
            return Emphasis(of, False, passage.span(start, end))


def prose(
    blocks: Sequence[MarkdownBlock],
    expression: ReadBraces,
    problems: Problems,
    references: Mapping[str, str] = NO_REFERENCES,
) -> tuple[Block, ...]:
    """Transform blocks into prose."""

    def text(passage: Passage) -> tuple[Inline, ...]:
        return inlines(passage, expression, problems, references)

    return tuple(_block(block, text) for block in blocks)


def _block(block: MarkdownBlock, text: Callable[[Passage], tuple[Inline, ...]]) -> Block:
    match block:
        case HeadingBlock(level=level, text=passage, span=span):
            return Heading(level, text(passage), span)
        case ParagraphBlock(text=passage, span=span):
            return Paragraph(text(passage), span)
        case ListBlock(start=start, items=items, span=span):
            inside = tuple(tuple(_block(each, text) for each in item.content) for item in items)
            return Listing(inside, start, span)
        case QuoteBlock(content=content, span=span):
            return Quote(tuple(_block(each, text) for each in content), span)
        case FenceBlock(info=info, text=passage, span=span):
            return Verbatim(passage.text, info, span)
        case CodeBlock(text=passage, span=span):
            return Verbatim(passage.text, "", span)
        case TableBlock(head=head, rows=rows, span=span):
            cells = tuple(tuple(map(text, row.cells)) for row in rows)
            return Grid(tuple(map(text, head)), cells, span)
        case RuleBlock(span=span):
            return Rule(span)
