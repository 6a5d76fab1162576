"""Statements that could not be read: what sewing reports after one follows from it.

The compiler sews on without the statement, so that an edge which it would have hemmed stays raw and
a piece which it would have used is left over. An author mends the statement, and is told once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from presscloth.edition import Edition
from presscloth.problems import Problem
from presscloth.recipe.expression import Broken
from presscloth.recipe.statement import SewBlock
from presscloth.source import Span


def under_unread_statements(edition: Edition, problems: Iterable[Problem]) -> Iterator[Problem]:
    """The same problems of sewing, hung under the first statement that could not be read.

    What is wrong in a statement before that one is wrong by itself.
    """
    blocks = tuple(_blocks(edition))
    places = (each.span for block in blocks for each in block.statements if isinstance(each, Broken))
    unread = next(places, None)
    for problem in problems:
        if unread is None or not _of_sewing(problem) or _lies_before(problem.span, unread, blocks):
            yield problem
        else:
            yield replace(problem, cause=problem.cause or unread)


def _of_sewing(problem: Problem) -> bool:
    """Whether sewing found it; what is wrong with a measure by itself does not follow from a statement."""
    return type(problem).__module__.startswith("presscloth.sewing.")


def _blocks(edition: Edition) -> Iterator[SewBlock]:
    for step in edition.steps:
        for part in step.parts:
            yield from (block for block in part.content if isinstance(block, SewBlock))


def _lies_before(place: Span, unread: Span, blocks: tuple[SewBlock, ...]) -> bool:
    in_a_block = any(block.span.start <= place.start < block.span.end for block in blocks)
    return in_a_block and place.start < unread.start
