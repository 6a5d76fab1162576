"""Statements that were not carried out: what sewing reports after one follows from it.

One may be unreadable, belong to a step for a size that does not exist, or stand outside the steps
because a line of backticks is missing or is indented otherwise. The compiler sews on without it, so
that an edge which it would have hemmed stays raw and a piece which it would have used is left over.
An author mends the one thing, and is told once.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from presscloth.problems import Problem
from presscloth.proof.checks import CheckDiffers, CheckFails
from presscloth.recipe.expression import Broken, Compared
from presscloth.recipe.markdown import FenceNotClosed
from presscloth.recipe.matching import parts_in
from presscloth.recipe.statement import SewBlock
from presscloth.recipe.steps import TextOutsideSteps
from presscloth.recipe.tree import Recipe, Step
from presscloth.sewing.stock_problems import ThingLeftOver
from presscloth.source import Span


def under_unread_statements(recipe: Recipe, problems: Sequence[Problem]) -> Iterator[Problem]:
    """The same problems of sewing, hung under the first statement or step that could not be read.

    What is wrong in a statement before that one is wrong by itself. Where a fence is lost, all fences
    after it open what they should close.
    """
    fences = (each.span for each in problems if isinstance(each, FenceNotClosed))
    fence = min(fences, key=_start, default=None)
    torn = (each.span for each in problems if _tears(each))
    unread = min((*_unread(recipe), *torn), key=_start, default=None)
    blocks = tuple(block for step in recipe.steps for block in _blocks(step))
    of_things = frozenset(_checks_of_things(recipe))

    def may_follow(problem: Problem) -> bool:
        return _of_sewing(problem) or (_of_a_check(problem) and problem.span in of_things)

    for problem in problems:
        if fence is not None and _tears(problem) and fence.start < problem.span.start:
            yield replace(problem, cause=problem.cause or fence)
        elif unread is None or not may_follow(problem) or _wrong_by_itself(problem, unread, blocks):
            yield problem
        else:
            yield replace(problem, cause=problem.cause or unread)


def _tears(problem: Problem) -> bool:
    """Whether it takes statements out of the steps in which they were meant to stand."""
    return isinstance(problem, FenceNotClosed | TextOutsideSteps)


def _start(span: Span) -> int:
    return span.start


def _unread(recipe: Recipe) -> Iterator[Span]:
    """The places of unknown sizes before steps, and those of statements that are broken."""
    for step in recipe.steps:
        leads = (step.lead, *(part.lead for part in step.parts))
        named = (name.span for lead in leads for name in (*lead.only, *lead.without))
        yield from (span for span in named if span in recipe.unknown)
        statements = (statement for block in _blocks(step) for statement in block.statements)
        yield from (each.span for each in statements if isinstance(each, Broken))


def _blocks(step: Step) -> Iterator[SewBlock]:
    for part in step.parts:
        yield from (block for block in part.content if isinstance(block, SewBlock))


def _of_sewing(problem: Problem) -> bool:
    """Whether sewing found it; what is wrong with a measure by itself does not follow from a statement."""
    return type(problem).__module__.startswith("presscloth.sewing.")


def _of_a_check(problem: Problem) -> bool:
    return isinstance(problem, CheckFails | CheckDiffers)


def _checks_of_things(recipe: Recipe) -> Iterator[Span]:
    """The author's checks that speak of things, which would be otherwise if all had been carried out."""
    for check in recipe.checks:
        of = check.compared
        if isinstance(of, Compared) and any(True for side in (of.left, of.right) for _ in parts_in(side)):
            yield of.span


def _wrong_by_itself(problem: Problem, unread: Span, blocks: tuple[SewBlock, ...]) -> bool:
    """Whether it is wrong in a statement before `unread`; what is left over is so only in the end."""
    place = problem.span.start
    in_a_block = any(block.span.start <= place < block.span.end for block in blocks)
    return in_a_block and place < unread.start and not isinstance(problem, ThingLeftOver)
