"""Transform what stands under Steps into stages and steps."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from presscloth.problems import Problem, Problems
from presscloth.recipe.definitions import ReadInlines
from presscloth.recipe.leads import read_lead
from presscloth.recipe.markdown import (
    FenceBlock,
    HeadingBlock,
    ItemBlock,
    ListBlock,
    MarkdownBlock,
    ParagraphBlock,
    QuoteBlock,
)
from presscloth.recipe.prose import Block, Inline
from presscloth.recipe.statement import SewBlock
from presscloth.recipe.tree import Lead, Part, Stage, Step
from presscloth.source import Passage, Span

ReadBlocks = Callable[[Sequence[MarkdownBlock]], tuple[Block, ...]]
ReadSew = Callable[[Passage], SewBlock]


class TextOutsideSteps(Problem):
    """Something stands under Steps that belongs to no step.

    It would not be numbered, and a maker who ticks off the steps would pass it by. Make it a
    numbered item, or indent it by three spaces so that it belongs to the step above.

    Fails:

        ## Steps
        Take your time.

        1. Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Take your time.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    def message(self) -> str:
        return "this stands under Steps and belongs to no step"

    def hint(self) -> str:
        return "number it (`1.`), or indent it by three spaces to make it part of the step above"


class NothingBeforeOr(Problem):
    """A step begins with `Or:` and there is no step before it.

    An alternative takes the place of the step before it.

    Fails:

        ## Steps
        1. Or: Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    def message(self) -> str:
        return "this step begins with `Or:`, and no step stands before it"

    def hint(self) -> str:
        return "take `Or:` away, or write the first way as the step before"


class SewOutsideSteps(Problem):
    """A `sew` block stands where no step is.

    The construction is carried out step by step; a statement outside would never be carried out.

    Fails:

        ## Notes

        ```sew
        hem all of cloth by 1.2 cm (1/2 in) twice
        finish cloth
        ```

    Passes:

        ## Steps
        1. Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    def message(self) -> str:
        return "this `sew` block belongs to no step"

    def hint(self) -> str:
        return "put it under a step, indented by three spaces"


def is_sew(block: MarkdownBlock) -> bool:
    return isinstance(block, FenceBlock) and block.info.split(" ")[0].casefold() == "sew"


def read_stages(
    content: Sequence[MarkdownBlock],
    blocks: ReadBlocks,
    inlines: ReadInlines,
    sew: ReadSew,
    problems: Problems,
) -> tuple[Stage, ...]:
    """The stages with their steps, numbered through."""
    stages: list[Stage] = []
    title: tuple[Inline, ...] = ()
    place: Span | None = None
    steps: list[Step] = []
    number = 0
    for block in content:
        match block:
            case HeadingBlock():
                if steps or title:
                    stages.append(Stage(title, tuple(steps), place or block.span))
                title, place, steps = inlines(block.text), block.span, []
            case ListBlock(ordered=True):
                place = place or block.span
                for item in block.items:
                    number += 1
                    steps.append(_step(number, item, blocks, sew, problems))
            case _:
                problems.add(TextOutsideSteps(span=block.span))
    if (steps or title) and place is not None:
        stages.append(Stage(title, tuple(steps), place))
    for step in stages[0].steps[:1] if stages else ():
        if step.lead.instead:
            problems.add(NothingBeforeOr(span=_first_line(step.span)))
    return tuple(stages)


def _first_line(span: Span) -> Span:
    line, _, _ = span.text.partition("\n")
    return Span(span.source, span.start, span.start + len(line.rstrip()))


def _step(number: int, item: ItemBlock, blocks: ReadBlocks, sew: ReadSew, problems: Problems) -> Step:
    lead = Lead()
    parts: list[Part] = []
    for group in _by_paragraph(item.content):
        own, content = _lead_of(group, problems)
        if not parts:
            lead, own = own, Lead()
        read: list[Block | SewBlock] = []
        for block in content:
            if isinstance(block, FenceBlock) and is_sew(block):
                read.append(sew(block.text))
            else:
                read.extend(blocks([block]))
        parts.append(Part(own, tuple(read), group[0].span.to(group[-1].span)))
    return Step(number, lead, tuple(parts), item.span)


def _by_paragraph(content: Sequence[MarkdownBlock]) -> Iterator[list[MarkdownBlock]]:
    """A paragraph begins a part; what is no paragraph belongs to the one above it."""
    group: list[MarkdownBlock] = []
    for block in content:
        if isinstance(block, ParagraphBlock) and group:
            yield group
            group = []
        group.append(block)
    if group:
        yield group


def _lead_of(group: list[MarkdownBlock], problems: Problems) -> tuple[Lead, list[MarkdownBlock]]:
    first = group[0]
    if not isinstance(first, ParagraphBlock):
        return Lead(), group
    lead, rest = read_lead(first.text, problems)
    return lead, [ParagraphBlock(rest, first.span), *group[1:]]


def sew_outside(content: Sequence[MarkdownBlock], problems: Problems) -> None:
    """Report `sew` blocks in a section that has no steps."""
    for block in content:
        if is_sew(block):
            problems.add(SewOutsideSteps(span=block.span))
        match block:
            case ListBlock(items=items):
                for item in items:
                    sew_outside(item.content, problems)
            case QuoteBlock(content=inner):
                sew_outside(inner, problems)
            case _:
                pass


def statements_under(content: Sequence[MarkdownBlock]) -> Iterator[Passage]:
    """The texts of all `sew` blocks in the steps, in order."""
    for block in content:
        if isinstance(block, FenceBlock) and is_sew(block):
            yield block.text
        elif isinstance(block, ListBlock):
            for item in block.items:
                yield from statements_under(item.content)
