"""What of a recipe wants words in another language: its names, and the paragraphs that are printed."""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.frozen import dataclass
from presscloth.recipe.naming import definitions
from presscloth.recipe.prose import Code, Inline, Words, plain
from presscloth.recipe.statement import SewBlock, Statement
from presscloth.recipe.tree import Definition, Recipe
from presscloth.recipe.walking import Where, inlines, told
from presscloth.recipe.words import EDGES
from presscloth.source import Span

UNPRINTED = frozenset((Where.MEASURE, Where.CHECK))
"""Notes on measures and reasons of Checks are for the author; only those on a choice are printed."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """A text that wants a translation: folded to one line, and its place; `of` is empty for a fact."""

    text: str
    span: Span
    of: tuple[Inline, ...] = ()


def folded(text: str) -> str:
    """A text on one line, by which it is known again."""
    return " ".join(text.split())


def has_words(of: tuple[Inline, ...]) -> bool:
    """Whether a run says anything besides measures."""
    return any(
        isinstance(each, Words | Code) and any(sign.isalpha() for sign in each.text) for each in inlines(of)
    )


def paragraphs(recipe: Recipe) -> tuple[Wanted, ...]:
    """The facts and runs of prose that are printed, in their order, each text once."""
    return tuple({each.text: each for each in reversed([*_paragraphs(recipe)])}.values())[::-1]


def _paragraphs(recipe: Recipe) -> Iterator[Wanted]:
    front = recipe.front
    for key, fact in (("title", front.title), ("summary", front.summary), ("credits", front.credits)):
        if fact:
            yield Wanted(folded(fact), _fact_place(recipe, key))
    for definition in _to_choose(recipe):
        if has_words(definition.note):
            span = definition.note[0].span.to(definition.note[-1].span)
            yield Wanted(folded(plain(definition.note)), span)
    for of in every_run(recipe):
        span = of[0].span.to(of[-1].span)
        yield Wanted(folded(span.text), span, of)


def _to_choose(recipe: Recipe) -> Iterator[Definition]:
    """The measures that the reader may choose, whose names and notes are on the page."""
    return (each for each in definitions(recipe.sizes, recipe.measures) if each.choice is not None)


def every_run(recipe: Recipe) -> Iterator[tuple[Inline, ...]]:
    """The runs of prose that are printed and have words in them."""
    return (run.of for run in told(recipe) if run.where not in UNPRINTED and has_words(run.of))


def names(recipe: Recipe) -> tuple[Wanted, ...]:
    """The short names, each once: facts in a word, sizes, materials, pieces, and what is sewn."""
    return tuple({each.text: each for each in reversed([*_names(recipe)])}.values())[::-1]


def _names(recipe: Recipe) -> Iterator[Wanted]:
    front = recipe.front
    facts = [("part of", (front.part_of,)), ("craft", tuple(front.craft.split(",")))]
    facts += [("skills", front.skills), ("time", (front.time,))]
    for key, values in facts:
        for value in values:
            if value.strip():
                yield Wanted(value.strip(), _fact_place(recipe, key))
    if len(recipe.sizes) > 1:
        for size in recipe.sizes:
            yield Wanted(size.name, size.span)
    for material in recipe.materials:
        yield Wanted(material.name, material.span)
    for piece in recipe.pieces:
        yield Wanted(piece.name.text, piece.name.span)
    for definition in _to_choose(recipe):
        yield Wanted(definition.name.text, definition.name.span)
    for outline in recipe.outlines:
        for run in outline.runs:
            if run.name.text not in EDGES:
                yield Wanted(run.name.text, run.name.span)
    for statement in _statements(recipe):
        if statement.result is not None:
            yield Wanted(statement.result.name.text, statement.result.name.span)


def _statements(recipe: Recipe) -> Iterator[Statement]:
    for stage in recipe.stages:
        for step in stage.steps:
            for part in step.parts:
                for block in part.content:
                    if isinstance(block, SewBlock):
                        yield from (each for each in block.statements if isinstance(each, Statement))


def _fact_place(recipe: Recipe, key: str) -> Span:
    return recipe.front.spans.get(key, recipe.source.span(0, 0))
