"""Going through all prose of a recipe, with where it stands."""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum

from presscloth.frozen import dataclass
from presscloth.recipe.prose import (
    Block,
    Code,
    Emphasis,
    Grid,
    Heading,
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
from presscloth.recipe.statement import SewBlock
from presscloth.recipe.tree import Part, Recipe, Step


class Where(Enum):
    """In what part of a recipe prose stands."""

    INTRO = "introduction"
    TOOLS = "tools"
    MEASURE = "note on a measure"
    MATERIAL = "note on a material"
    PIECE = "note on a piece"
    STEP = "step"
    CHECK = "reason of a check"
    SECTION = "section"


@dataclass(frozen=True, slots=True)
class Told:
    """A run of prose: one paragraph, cell, item or heading, with the step and part that it belongs to."""

    of: tuple[Inline, ...]
    where: Where
    step: Step | None = None
    part: Part | None = None

    def in_size(self, size: str) -> bool:
        """Whether it is printed in this size."""
        if self.step is None or self.part is None:
            return True
        return self.step.lead.holds_in(size) and self.part.lead.holds_in(size)


def told(recipe: Recipe) -> Iterator[Told]:
    """All prose of a recipe, in the order in which it stands there, the front matter apart."""
    for run in _runs(recipe.intro):
        yield Told(run, Where.INTRO)
    for definition in recipe.measures:
        if definition.note:
            yield Told(definition.note, Where.MEASURE)
    for tool in recipe.tools:
        yield Told(tool, Where.TOOLS)
    for material in recipe.materials:
        yield from (Told(note.prose, Where.MATERIAL) for note in material.notes if note.kind is None)
    for piece in recipe.pieces:
        yield from (Told(note.prose, Where.PIECE) for note in piece.notes if note.kind is None)
    for stage in recipe.stages:
        if stage.title:
            yield Told(stage.title, Where.STEP)
        for step in stage.steps:
            for part in step.parts:
                for run in _runs(tuple(b for b in part.content if not isinstance(b, SewBlock))):
                    yield Told(run, Where.STEP, step, part)
    for check in recipe.checks:
        if check.reason:
            yield Told(check.reason, Where.CHECK)
    for section in recipe.notes:
        yield Told(section.title, Where.SECTION)
        for run in _runs(section.content):
            yield Told(run, Where.SECTION)


def _runs(blocks: tuple[Block, ...]) -> Iterator[tuple[Inline, ...]]:
    for block in blocks:
        match block:
            case Paragraph(of=of) | Heading(of=of):
                yield of
            case Listing(items=items):
                for item in items:
                    yield from _runs(item)
            case Quote(of=inner):
                yield from _runs(inner)
            case Grid(head=head, rows=rows):
                yield from head
                for row in rows:
                    yield from row
            case Verbatim() | Rule():
                pass


def inlines(of: tuple[Inline, ...]) -> Iterator[Inline]:
    """All inline pieces of a run, those inside others too."""
    for inline in of:
        yield inline
        match inline:
            case Emphasis(of=inner) | Link(of=inner) | Picture(alt=inner):
                yield from inlines(inner)
            case Words() | Measure() | Code() | LineBreak():
                pass
