"""What holds for every recipe, sound or not: places lie in the text and spell what they claim."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from html import unescape

from presscloth.measure import SPELLINGS
from presscloth.pipeline import Proved
from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Measured, Name, Number, Value
from presscloth.recipe.prose import Code, Measure, Words
from presscloth.recipe.reckoning import expression
from presscloth.recipe.tree import Piece, Recipe
from presscloth.source import Passage, Source, Span


def nodes(of: object) -> Iterator[object]:
    """A tree's node and everything in it."""
    match of:
        case Source() | Enum() | None:
            return
        case Piece():
            yield of
            # The sides bear names that nobody typed: `width of cloth`.
            for field in fields(of):
                if field.name not in ("width", "height"):
                    yield from nodes(getattr(of, field.name))
            for side in (of.width, of.height):
                if side is not None:
                    yield from nodes(side.expression)
        case tuple():
            for each in of:
                yield from nodes(each)
        case Mapping():
            for key, each in of.items():
                yield from nodes(key)
                yield from nodes(each)
        case Span():
            yield of
        case _ if is_dataclass(of):
            yield of
            for field in fields(of):
                yield from nodes(getattr(of, field.name))
        case _:
            return


def hold(proved: Proved) -> None:
    """Every promise that does not depend on what the recipe says."""
    for problem in proved.problems:
        hold_problem(problem, proved.recipe)
    if proved.recipe is not None:
        hold_recipe(proved.recipe)


def hold_recipe(recipe: Recipe) -> None:
    for node in nodes(recipe):
        if isinstance(node, Span):
            assert node.source is recipe.source
            assert 0 <= node.start <= node.end <= len(recipe.source.text), node
        else:
            wrong = misspelt(node)
            assert wrong is None, wrong


def misspelt(node: object) -> str | None:
    """What a node claims to say, where that is not what stands at its place."""
    match node:
        case Name(text=text, span=span):
            right = " ".join(span.text.replace("\\|", "|").split()) == text
        case Words(text=text, span=span):
            right = text in (span.text, unescape(span.text), span.text.removeprefix("\\"))
        case Code(text=text, span=span):
            right = span.text.startswith("`") and "".join(text.split()) in "".join(span.text.split())
        case Measure(span=span):
            right = span.text.startswith("{") and span.text.endswith("}")
        case Value(value=value, unit=unit, span=span):
            again = _again(span)
            typed = again.first if isinstance(again, Measured) else None
            right = typed is not None and (typed.value, typed.unit) == (value, unit) and unit in SPELLINGS
        case Number(value=value, span=span):
            again = _again(span)
            right = isinstance(again, Number) and again.value == value
        case _:
            return None
    return None if right else f"{node} stands where {span.text!r} does"


def _again(span: Span) -> object:
    """The expression that stands at a place, read once more by itself."""
    return expression(Passage.of(span), Problems())


def hold_problem(problem: Problem, recipe: Recipe | None) -> None:
    for span in (problem.span, *(label.span for label in problem.labels)):
        assert 0 <= span.start <= span.end <= len(span.source.text), problem
        if recipe is not None and not span.source.name.endswith("recipe.de.md"):
            assert span.source is recipe.source, problem
    for text in (problem.message(), problem.hint()):
        assert text.strip() == text != "", problem
        assert "\n" not in text, text
    if recipe is not None:
        assert set(problem.sizes) <= {size.name for size in recipe.sizes}, problem
    assert set(problem.systems) <= {"metric", "imperial"}, problem
