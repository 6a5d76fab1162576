"""The sections of a recipe: which the compiler knows, and what stands under each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from presscloth.frozen import dataclass
from presscloth.problems import Label, Problem, Problems
from presscloth.recipe.definitions import ReadInlines, definition
from presscloth.recipe.markdown import (
    HeadingBlock,
    ItemBlock,
    ListBlock,
    MarkdownBlock,
    ParagraphBlock,
    TableBlock,
)
from presscloth.recipe.tables import TableInTwo
from presscloth.recipe.tree import Definition
from presscloth.recipe.words import nearest
from presscloth.source import Passage, Span

KNOWN = ("Sizes", "Measures", "Tools", "Materials", "Outlines", "Pieces", "Steps", "Checks")


class SectionNearlyKnown(Problem):
    """A heading nearly matches a section that the compiler knows.

    As it stands, everything under it is only printed: no measure, no piece and no step in it counts.

    Fails:

        ## Measure
        - band = 5 cm (2 in)

    Passes:

        ## Measures
        - band = 5 cm (2 in)
    """

    heading: str
    meant: str

    def message(self) -> str:
        return f"the heading `{self.heading}` is nearly `{self.meant}`, and what stands below is only printed"

    def hint(self) -> str:
        return f"write `## {self.meant}` if that is meant, or choose a heading that is not so near"


class SectionTwice(Problem):
    """A section stands twice in a recipe.

    Fails:

        ## Measures
        - band = 5 cm (2 in)

        ## Measures
        - strip = 5 cm (2 in)

    Passes:

        ## Measures
        - band = 5 cm (2 in)
        - strip = 5 cm (2 in)
    """

    heading: str

    def message(self) -> str:
        return f"the section {self.heading} stands twice"

    def hint(self) -> str:
        return "put everything under the first of the two headings"


class ContentUnexpected(Problem):
    """Something stands in a section that cannot be reckoned with there.

    Measures, Tools and Checks are lists, Sizes, Materials and Pieces are tables, one in each. What
    is neither would not be seen by the compiler, though an author may count on it.

    Fails:

        ## Tools

        A sewing machine and an iron.

    Passes:

        ## Tools
        - sewing machine, iron
    """

    section: str
    wanted: str

    def message(self) -> str:
        return f"under {self.section} stands something other than {self.wanted}"

    def hint(self) -> str:
        return f"write {self.wanted} there, and put remarks into a section of their own, such as `## Notes`"


@dataclass(frozen=True, slots=True)
class SectionBlocks:
    """A section as it was cut out: its heading, and the blocks below."""

    heading: HeadingBlock
    content: tuple[MarkdownBlock, ...]

    @property
    def span(self) -> Span:
        """The whole section."""
        return self.heading.span.to(self.content[-1].span) if self.content else self.heading.span


def cut(blocks: Sequence[MarkdownBlock]) -> tuple[tuple[MarkdownBlock, ...], tuple[SectionBlocks, ...]]:
    """What stands before the first section, and the sections."""
    intro: list[MarkdownBlock] = []
    sections: list[SectionBlocks] = []
    content = intro
    for block in blocks:
        if isinstance(block, HeadingBlock) and block.level == 2:
            if sections:
                sections[-1] = SectionBlocks(sections[-1].heading, tuple(content))
            content = []
            sections.append(SectionBlocks(block, ()))
        else:
            content.append(block)
    if sections:
        sections[-1] = SectionBlocks(sections[-1].heading, tuple(content))
    return tuple(intro), tuple(sections)


def sort_out(
    sections: Sequence[SectionBlocks], problems: Problems
) -> tuple[Mapping[str, SectionBlocks], tuple[SectionBlocks, ...], tuple[Span, ...]]:
    """The known sections by name, those that are only read, and the places of those that are neither.

    One that is nearly known, or known and there already, is left out: what it names is lost.
    """
    known: dict[str, SectionBlocks] = {}
    others: list[SectionBlocks] = []
    lost: list[Span] = []
    for section in sections:
        heading = section.heading.text.text.strip()
        place = section.heading.span
        name = next((name for name in KNOWN if name.casefold() == heading.casefold()), None)
        meant = nearest(heading, KNOWN) if name is None else None
        if name is not None and name not in known:
            known[name] = section
        elif name is not None:
            earlier = Label(known[name].heading.span, "the first one")
            problems.add(SectionTwice(span=place, heading=name, labels=(earlier,)))
            lost.append(section.span)
        elif meant is not None:
            problems.add(SectionNearlyKnown(span=place, heading=heading, meant=meant))
            lost.append(section.span)
        else:
            others.append(section)
    return known, tuple(others), tuple(lost)


def items(
    section: SectionBlocks | None, name: str, problems: Problems
) -> Iterator[tuple[ItemBlock, Passage]]:
    """The items of a section's lists, each with its text."""
    for block in section.content if section else ():
        if not isinstance(block, ListBlock):
            problems.add(ContentUnexpected(span=block.span, section=name, wanted="a list"))
            continue
        for item in block.items:
            match item.content:
                case (ParagraphBlock(text=text),):
                    yield item, text
                case _:
                    problems.add(
                        ContentUnexpected(span=item.span, section=name, wanted="a list of short items")
                    )


def the_table(section: SectionBlocks | None, name: str, problems: Problems) -> TableBlock | None:
    """The one table of a section."""
    found: TableBlock | None = None
    for block in section.content if section else ():
        match block:
            case TableBlock() if found is None:
                found = block
            case ParagraphBlock(text=text) if found is not None and text.text.startswith("|"):
                problems.add(TableInTwo(span=block.span, section=name))
            case _:
                problems.add(ContentUnexpected(span=block.span, section=name, wanted="one table"))
    if section is not None and found is None and not section.content:
        problems.add(ContentUnexpected(span=section.heading.span, section=name, wanted="one table"))
    return found


def read_measures(
    section: SectionBlocks | None, inlines: ReadInlines, problems: Problems
) -> tuple[Definition, ...]:
    found = (definition(text, inlines, problems) for _, text in items(section, "Measures", problems))
    return tuple(each for each in found if each is not None)


def split_items(passage: Passage) -> Iterator[Passage]:
    """The things of a list that stand between commas; a comma in brackets does not part them."""
    depth = start = 0
    for at, character in enumerate(passage.text + ","):
        if character in "([{":
            depth += 1
        elif character in ")]}":
            depth -= 1
        elif character == "," and depth <= 0:
            part = passage[start:at].strip()
            if part.text:
                yield part
            start = at + 1
