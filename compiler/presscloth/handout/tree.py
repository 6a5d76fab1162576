"""The handout as a tree: one recipe in one size, worded, ready for any writer.

Everything that depends on the size, on what is optional and on how quantities are worded has been
settled; a writer only chooses how it looks.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from presscloth.cutting.workshop import PLAIN, Workshop
from presscloth.drawing.sheets import Sheet
from presscloth.drawing.tree import Drawing
from presscloth.frozen import dataclass
from presscloth.measure import System

if TYPE_CHECKING:
    from presscloth.handout.choosing import Followable


@dataclass(frozen=True, slots=True)
class Amount:
    """A quantity in words, one text per system that is printed, the leading system first.

    `before` is a word that goes before it (`about`). `19 cm (7 1/2 in)` is
    `Amount((("19 cm", METRIC), ("7 1/2 in", IMPERIAL)))`; a plain number has one text and no system.
    """

    texts: tuple[tuple[str, System | None], ...]
    before: str = ""

    @property
    def text(self) -> str:
        first, *others = (text for text, _ in self.texts)
        words = " ".join([first, *(f"({other})" for other in others)])
        return f"{self.before} {words}" if self.before else words


@dataclass(frozen=True, slots=True)
class Text:
    text: str


@dataclass(frozen=True, slots=True)
class Emphasis:
    of: tuple[Inline, ...]
    strong: bool


@dataclass(frozen=True, slots=True)
class Code:
    text: str


@dataclass(frozen=True, slots=True)
class Link:
    to: str
    of: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Image:
    """A picture of the author's: its file, its address in the site, and its words."""

    file: Path
    name: str
    alt: str


@dataclass(frozen=True, slots=True)
class NewLine:
    pass


@dataclass(frozen=True, slots=True)
class Foreign:
    """Words in another language than the handout's: what has not been translated yet."""

    language: str
    of: tuple[Inline, ...]


Inline = Text | Amount | Emphasis | Code | Link | Image | NewLine | Foreign


@dataclass(frozen=True, slots=True)
class Marks:
    """What stands before a step or a paragraph: `Optional`, `Take care`, the time in the video.

    Marks by size are resolved and never printed. `at` is worded (`4:15`); `at_link` is the address
    that leads there, if any.
    """

    optional: bool = False
    care: bool = False
    alternative: bool = False
    at: str = ""
    at_link: str = ""


@dataclass(frozen=True, slots=True)
class Paragraph:
    of: tuple[Inline, ...]
    marks: Marks = Marks()


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading inside prose; `level` counts from 1 below the section that it stands in."""

    level: int
    of: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Listing:
    items: tuple[tuple[Block, ...], ...]
    start: int | None


@dataclass(frozen=True, slots=True)
class Quote:
    of: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Verbatim:
    text: str


@dataclass(frozen=True, slots=True)
class Grid:
    head: tuple[tuple[Inline, ...], ...]
    rows: tuple[tuple[tuple[Inline, ...], ...], ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing or a picture that stands by itself."""

    of: Drawing | Image
    caption: tuple[Inline, ...] = ()


@dataclass(frozen=True, slots=True)
class Divider:
    pass


Block = Paragraph | Heading | Listing | Quote | Verbatim | Grid | Figure | Divider


@dataclass(frozen=True, slots=True)
class Finished:
    """A finished article: how many, its name (empty when it is the only one) and its sides in order.

    `sides` pairs each amount with the word for it: width, height, depth, or around.
    """

    count: int
    name: str
    sides: tuple[tuple[str, Amount], ...]


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution that tools, materials or the audience call for."""

    about: str
    text: str


@dataclass(frozen=True, slots=True)
class MaterialLine:
    """A row of the materials table. `quantity` is None where it is not worked out.

    `length` is that of a sheet, or of a tape that is sold in whole lengths.
    `verdict` says of a quantity whether less could do; `optional` that only an optional step needs it;
    `with_optional` how much to buy instead where optional pieces are made too, after the words for it.
    """

    key: str
    name: str
    form: str
    width: Amount | None
    quantity: Amount | None
    sold_by: Amount | None
    notes: tuple[tuple[Inline, ...], ...]
    optional: bool = False
    verdict: str = ""
    with_optional: tuple[str, Amount] | None = None
    length: Amount | None = None


@dataclass(frozen=True, slots=True)
class CutLine:
    """A row of the cutting list: one piece from one material.

    `sides` are the amounts in order (width, height; one for a circle's diameter or a tape's length).
    `measure_first` asks the maker to measure before cutting; `belongs` is empty or says that it is
    optional or belongs to one way.
    """

    piece: str
    key: str
    material: str
    number: int
    sides: tuple[tuple[str, Amount], ...]
    shape: str
    measure_first: bool
    notes: tuple[tuple[Inline, ...], ...]
    belongs: str = ""


@dataclass(frozen=True, slots=True)
class CutOrder:
    """What is cut off one material in full-width strips, in order; in one system, or alike in all."""

    key: str
    material: str
    system: System | None
    lines: tuple[tuple[Inline, ...], ...]


@dataclass(frozen=True, slots=True)
class StepText:
    """A step; one that this size does not have says in `elsewhere` which sizes do (`Large only`)."""

    number: int
    marks: Marks
    content: tuple[Block, ...]
    elsewhere: str = ""


@dataclass(frozen=True, slots=True)
class StageText:
    """A stage of the work; the first may have no title."""

    title: tuple[Inline, ...]
    steps: tuple[StepText, ...]


@dataclass(frozen=True, slots=True)
class SectionText:
    title: tuple[Inline, ...]
    content: tuple[Block, ...]


LayoutRow = tuple[tuple[System, Figure], ...]
"""A cutting layout in each system, side by side; systems may need different numbers of sheets."""


@dataclass(frozen=True, slots=True)
class TemplateSet:
    """The templates of a size at full size, sheet by sheet, in the numbers of one system."""

    system: System
    sheets: tuple[Sheet, ...]


@dataclass(frozen=True, slots=True)
class Handout:
    """One recipe in one size.

    `longest` says, for each measure that the reader may choose, for which choice quantities suffice.
    `revised` is the day of this version (`2027-06-14`) or empty; `part_of` and `week` tell of which
    longer project it is a part, empty and 0 where it is none. `languages` are all languages in which
    the recipe is published, its own first, each with the short name under which it stands; empty where
    there is only one.
    """

    slug: str
    title: str
    size: str
    only_size: bool
    version: str
    release: str
    language: str
    summary: str
    craft: str
    skills: tuple[str, ...]
    time: str
    audience: str
    credits: str
    video: str
    draft: bool
    sewn: bool
    proved: bool
    systems: tuple[System, ...]
    finished: tuple[Finished, ...]
    cautions: tuple[Caution, ...]
    intro: tuple[Block, ...]
    materials: tuple[MaterialLine, ...]
    tools: tuple[tuple[Inline, ...], ...]
    cutting: tuple[CutLine, ...]
    pieces: tuple[Figure, ...]
    stages: tuple[StageText, ...]
    notes: tuple[SectionText, ...]
    layouts: tuple[LayoutRow, ...] = ()
    orders: tuple[CutOrder, ...] = ()
    templates: tuple[TemplateSet, ...] = ()
    longest: tuple[tuple[Inline, ...], ...] = ()
    revised: str = ""
    part_of: str = ""
    week: int = 0
    languages: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Booklet:
    """One recipe in all its sizes, in the order of the recipe; `choices` is empty, or tells of each size
    what the reader may choose in it.
    """

    handouts: tuple[Handout, ...]
    choices: tuple[Followable | None, ...] = ()

    @property
    def first(self) -> Handout:
        return self.handouts[0]


@dataclass(frozen=True, slots=True)
class Publisher:
    """Who publishes, and how: from `site/publisher.yaml`.

    `papers` are `A4` and `Letter`; `systems` the systems printed, the leading one first, empty to
    follow each recipe; `address` the site's public address, empty when there is none. `workshop` is
    how cloth is cut where a recipe does not say. `language` is that of the pages around the recipes,
    and of `about`.
    """

    name: str
    address: str
    papers: tuple[str, ...]
    systems: tuple[System, ...]
    theme: str
    about: str = ""
    workshop: Workshop = PLAIN
    language: str = "en"
