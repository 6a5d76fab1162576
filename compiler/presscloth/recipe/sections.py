"""The sections of a recipe: which the compiler knows, and what stands under each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from presscloth.frozen import dataclass
from presscloth.problems import Label, Problem, Problems
from presscloth.recipe.definitions import NameNotAllowed, ReadInlines, definition, measured
from presscloth.recipe.expression import Broken, Name
from presscloth.recipe.lost import cause
from presscloth.recipe.markdown import (
    HeadingBlock,
    ItemBlock,
    ListBlock,
    MarkdownBlock,
    ParagraphBlock,
    TableBlock,
)
from presscloth.recipe.tables import CellEmpty, whole_row
from presscloth.recipe.tree import Definition, Size
from presscloth.recipe.words import look_up, nearest, why_no_name
from presscloth.source import Passage, Span

KNOWN = ("Sizes", "Measures", "Tools", "Materials", "Outlines", "Pieces", "Steps", "Checks")
ONE_SIZE = "One size"


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


class SizeNamedTwice(Problem):
    """Two rows of Sizes have the same name.

    Fails:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Small | 40 cm (16 in) |

    Passes:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Large | 40 cm (16 in) |
    """

    size: str

    def message(self) -> str:
        return f"the size `{self.size}` is listed twice"

    def hint(self) -> str:
        return "give one of the two another name, or take it out"


class SizeUnknown(Problem):
    """A size is named that Sizes does not list.

    A step for a size that does not exist would be printed on no handout.

    Fails:

        ## Steps
        1. Huge only: Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. One size only: Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    size: str
    known: tuple[str, ...]

    def message(self) -> str:
        return f"there is no size `{self.size}`"

    def hint(self) -> str:
        if self.known == (ONE_SIZE,):
            return "list it in `## Sizes`, or take it away: a recipe without Sizes has one size"
        meant = nearest(self.size, self.known)
        return f"write `{meant}`" if meant else f"the sizes are {', '.join(self.known)}"


class SizeWithoutValue(Problem):
    """A size has no value for a measure.

    Every size needs one. Where the measure does not exist in a size, a dash says so.

    Fails:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Large |               |

    Passes:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Large | 40 cm (16 in) |
    """

    size: str
    measure: str

    def message(self) -> str:
        return f"the size `{self.size}` has no value for `{self.measure}`"

    def hint(self) -> str:
        return "write the measure, or a dash `–` where it does not exist in this size"


class NoSizes(Problem):
    """The table under Sizes has no row, or its first column is not called Size.

    Fails:

        ## Sizes
        | Size  | side |
        |-------|------|

    Passes:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
    """

    def message(self) -> str:
        return "the table under Sizes lists no size"

    def hint(self) -> str:
        return "give it a first column `Size` and one row for each size; a recipe in one size needs no Sizes"


@dataclass(frozen=True, slots=True)
class SectionBlocks:
    """A section as it was cut out: its heading, and the blocks below."""

    heading: HeadingBlock
    content: tuple[MarkdownBlock, ...]


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
) -> tuple[Mapping[str, SectionBlocks], tuple[SectionBlocks, ...]]:
    """The known sections by name, and those that are only read."""
    known: dict[str, SectionBlocks] = {}
    others: list[SectionBlocks] = []
    for section in sections:
        heading = section.heading.text.text.strip()
        name = next((name for name in KNOWN if name.casefold() == heading.casefold()), None)
        if name is None:
            meant = nearest(heading, KNOWN)
            if meant is not None:
                place = section.heading.span
                problems.add(SectionNearlyKnown(span=place, heading=heading, meant=meant))
            others.append(section)
        elif name in known:
            earlier = Label(known[name].heading.span, "the first one")
            problems.add(SectionTwice(span=section.heading.span, heading=name, labels=(earlier,)))
        else:
            known[name] = section
    return known, tuple(others)


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
        if isinstance(block, TableBlock) and found is None:
            found = block
        else:
            problems.add(ContentUnexpected(span=block.span, section=name, wanted="one table"))
    if section is not None and found is None and not section.content:
        problems.add(ContentUnexpected(span=section.heading.span, section=name, wanted="one table"))
    return found


def read_measures(
    section: SectionBlocks | None, inlines: ReadInlines, problems: Problems
) -> tuple[Definition, ...]:
    found = (definition(text, inlines, problems) for _, text in items(section, "Measures", problems))
    return tuple(each for each in found if each is not None)


def read_sizes(section: SectionBlocks | None, place: Span, problems: Problems) -> tuple[Size, ...]:
    """The sizes with their measures; a recipe without Sizes has one, called `One size`."""
    table = the_table(section, "Sizes", problems)
    if table is None:
        return (Size(ONE_SIZE, {}, place),)
    if not table.head or table.head[0].text.strip().casefold() != "size" or not table.rows:
        problems.add(NoSizes(span=table.span))
        return (Size(ONE_SIZE, {}, place),)
    columns = [_column(cell, problems) for cell in table.head[1:]]
    sizes: dict[str, Size] = {}
    for row in table.rows:
        cells = whole_row(row.cells, len(table.head), row.span, problems)
        if cells is None:
            continue
        name = " ".join(cells[0].text.split())
        if look_up(name, sizes) is not None:
            problems.add(SizeNamedTwice(span=cells[0].span(), size=name))
            continue
        if not name:
            problems.add(CellEmpty(span=cells[0].span(), column="Size", row="this row"))
            continue
        measures = {
            column.text: _value(column, cell, name, problems)
            for column, cell in zip(columns, cells[1:], strict=True)
            if column is not None
        }
        sizes[name] = Size(name, measures, cells[0].span())
    return tuple(sizes.values()) or (Size(ONE_SIZE, {}, place),)


def _column(cell: Passage, problems: Problems) -> Name | None:
    name = Name(" ".join(cell.text.split()), cell.span())
    why = why_no_name(name.text) if name.text else "it is empty"
    if why is not None:
        problems.add(NameNotAllowed(span=name.span, name=name.text, why=why))
        return None
    return name


def _value(column: Name, cell: Passage, size: str, problems: Problems) -> Definition | None:
    text = cell.text.strip()
    if text in ("–", "-", "—"):
        return None
    if not text:
        problems.add(SizeWithoutValue(span=cell.span(), size=size, measure=column.text))
        return Definition(column, Broken(cell.span()), about=False, choice=None, note=(), span=cell.span())
    return measured(column, cell, (), cell.span(), problems)


def hold_sizes(
    named: Sequence[Name], sizes: Sequence[Size], lost: Sequence[Span], problems: Problems
) -> None:
    """Report names of sizes that Sizes does not list."""
    known = tuple(size.name for size in sizes)
    for name in named:
        if not any(name.text.casefold() == size.casefold() for size in known):
            because = cause(name.text, lost)
            problems.add(SizeUnknown(span=name.span, size=name.text, known=known, cause=because))


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
