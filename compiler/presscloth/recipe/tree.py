"""The recipe as a tree: what an author wrote, with the place of everything, before any size."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from pathlib import Path

from presscloth.frozen import dataclass
from presscloth.measure import System
from presscloth.recipe.expression import Broken, Compared, Expression, Name
from presscloth.recipe.outline import OutlineText
from presscloth.recipe.prose import Block, Inline
from presscloth.recipe.statement import SewBlock
from presscloth.source import Source, Span


class Audience(Enum):
    """Who will use the article."""

    ADULT = "adult"
    CHILD = "child"
    BABY = "baby"


@dataclass(frozen=True, slots=True)
class Accepted:
    """A warning that the author accepts, by its hyphenated name, with a reason."""

    name: str
    reason: str
    span: Span


@dataclass(frozen=True, slots=True)
class FrontMatter:
    """Facts about the publication. `spans` holds the place of each value by its key.

    `audience` maps a size's name to its audience, `None` to that of every other size.
    `sewn` names the sizes that somebody has sewn from this text; None when all of them were.
    `revised` is the day of this version (`2027-06-14`), empty where none is given. `part_of` names the
    longer project of which this is the part for `week`; without one it is empty, and the week 0.
    """

    title: str
    release: str
    version: str
    revised: str
    part_of: str
    week: int
    summary: str
    written_in: System
    systems: tuple[System, ...]
    language: str
    skills: tuple[str, ...]
    craft: str
    time: str
    audience: Mapping[str | None, Audience]
    sewn: tuple[str, ...] | None
    video: str | None
    credits: str
    accept: tuple[Accepted, ...]
    held: bool
    spans: Mapping[str, Span]


@dataclass(frozen=True, slots=True)
class Definition:
    """A measure's definition: in a list item, in a cell of Sizes, or as the side of a piece.

    `choice` is the range of a measure that is the reader's to choose; `note` is what stands after
    the colon.
    """

    name: Name
    expression: Expression
    about: bool
    choice: tuple[Expression, Expression] | None
    note: tuple[Inline, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Size:
    """A row of Sizes; a measure that does not exist in this size (a dash) is None."""

    name: str
    measures: Mapping[str, Definition | None]
    span: Span


class Form(Enum):
    """How a material is sold and used; it decides how its quantity is worked out."""

    FABRIC = "fabric"
    WADDING = "wadding"
    INTERFACING = "interfacing"
    STABILISER = "stabiliser"
    SHEET = "sheet"
    FAT_QUARTER = "fat quarter"
    TAPE = "tape"
    ELASTIC = "elastic"
    ZIP = "zip"
    NOTION = "notion"
    FILLING = "filling"
    THREAD = "thread"


class NoteKind(Enum):
    """Notes on materials and pieces that the compiler knows; every other note is text."""

    ONE_WAY = "one way"
    SHRINKS = "shrinks"
    REPEAT = "repeat"
    JOINS_ALLOWED = "joins allowed"
    CUT_IN_STRIPS = "cut in strips"
    STRAIGHTENED = "straightened"
    MEASURE_FIRST = "measure first"
    ANY_GRAIN = "any grain"
    ON_THE_FOLD = "on the fold"
    IN_PAIRS = "in pairs"
    SPARE = "spare"


@dataclass(frozen=True, slots=True)
class Note:
    """One note; `amount` is the percentage, the repeat or the number of spares."""

    kind: NoteKind | None
    amount: Expression | None
    prose: tuple[Inline, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Material:
    """A row of Materials. `width` is the usable width; `sold_by` is a step, not a measure."""

    key: str
    name: str
    form: Form
    width: Expression | None
    length: Expression | None
    sold_by: Expression | None
    notes: tuple[Note, ...]
    span: Span
    key_span: Span


class Shape(Enum):
    RECTANGLE = "rectangle"
    CIRCLE = "circle"
    HALF_SQUARE = "half-square triangle"
    QUARTER_SQUARE = "quarter-square triangle"
    OUTLINE = "outline"


class Grain(Enum):
    """Where a piece's height lies: along the selvedge, across, on the bias, or anywhere."""

    ALONG = "along"
    ACROSS = "across"
    BIAS = "bias"
    ANY = "any"


@dataclass(frozen=True, slots=True)
class Piece:
    """A row of Pieces. `width` and `height` are cut sizes; None where the form has none.

    `cut` is the number from each of the `keys`; `sizes` is None where the steps tell it.
    """

    name: Name
    keys: tuple[Name, ...]
    cut: Expression
    width: Definition | None
    height: Definition | None
    shape: Shape
    outline: str | None
    grain: Grain
    allowance: Expression | None
    sizes: tuple[Name, ...] | None
    notes: tuple[Note, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Lead:
    """The words that a step, a paragraph or a check may begin with.

    `only` and `without` name sizes as written; `at` is the time in the video in seconds.
    """

    optional: bool = False
    instead: bool = False
    care: bool = False
    only: tuple[Name, ...] = ()
    without: tuple[Name, ...] = ()
    at: int | None = None

    def holds_in(self, size: str) -> bool:
        """Whether what follows belongs to this size."""
        if self.only:
            return any(name.text.casefold() == size.casefold() for name in self.only)
        return all(name.text.casefold() != size.casefold() for name in self.without)


@dataclass(frozen=True, slots=True)
class Part:
    """A paragraph of a step with what stands below it; left out, it takes that along."""

    lead: Lead
    content: tuple[Block | SewBlock, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Step:
    """A step, numbered through the whole recipe. The first part's lead words are the step's."""

    number: int
    lead: Lead
    parts: tuple[Part, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Stage:
    """A stretch of the work under one heading; steps before any heading have no title."""

    title: tuple[Inline, ...]
    steps: tuple[Step, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Check:
    """`- turning gap <= front height - base: why`."""

    lead: Lead
    compared: Compared | Broken
    reason: tuple[Inline, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Section:
    """A section that is only read: its heading and what stands below."""

    title: tuple[Inline, ...]
    content: tuple[Block, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Recipe:
    """A whole recipe. `slug` names it in addresses; `folder` is where its pictures lie.

    `measures` are in the order written; `notes` are the sections that are only read, `tools` the
    items of Tools one by one. `lost` are the rows and items that could not be read, `unknown` the
    places of names that nothing bears and of sizes that there are not; both have been reported.
    """

    slug: str
    source: Source
    folder: Path | None
    front: FrontMatter
    intro: tuple[Block, ...]
    sizes: tuple[Size, ...]
    measures: tuple[Definition, ...]
    tools: tuple[tuple[Inline, ...], ...]
    materials: tuple[Material, ...]
    pieces: tuple[Piece, ...]
    stages: tuple[Stage, ...]
    checks: tuple[Check, ...]
    notes: tuple[Section, ...]
    outlines: tuple[OutlineText, ...] = ()
    lost: tuple[Span, ...] = ()
    unknown: frozenset[Span] = frozenset()

    @property
    def steps(self) -> tuple[Step, ...]:
        return tuple(step for stage in self.stages for step in stage.steps)
