"""Everything that is checked before anything is printed: one file per check, a list of all checks here."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from presscloth.problems import Problem, Problems
from presscloth.proof import (
    checks,
    choices,
    finished,
    language,
    materials,
    near_pairs,
    pictures,
    stated,
    times,
    typed_by_hand,
    typed_counts,
    typed_quantities,
    widths,
)
from presscloth.proof.acceptance import accept
from presscloth.proof.size import WorkedSize
from presscloth.proof.subject import Subject
from presscloth.proof.unread import under_unread_statements
from presscloth.recipe.tree import Recipe
from presscloth.sewing.proving import hold_sizes

OF_RECIPE: tuple[Callable[[Subject], Iterator[Problem]], ...] = (
    language.check,
    materials.check,
    pictures.check,
    stated.check,
    near_pairs.check,
    times.check,
    typed_by_hand.check,
)
"""Checks that look at the recipe as a whole."""

OF_SIZE: tuple[Callable[[Subject, WorkedSize], Iterator[Problem]], ...] = (
    lambda subject, size: checks.hold(size.edition, size.value),
    lambda subject, size: choices.hold(size.edition, size.value),
    lambda subject, size: finished.hold(size),
    lambda subject, size: widths.hold(size.edition, size.evaluator),
    lambda subject, size: typed_counts.hold(subject, size.edition, size.evaluator),
    lambda subject, size: typed_quantities.hold(subject, size),
)
"""Checks that look at one size."""


def hold_recipe(recipe: Recipe, sizes: Sequence[WorkedSize], problems: Problems) -> None:
    """Carry out every check."""
    subject = Subject(recipe, tuple(size.edition for size in sizes))
    for check in OF_RECIPE:
        problems.extend(list(check(subject)))
    problems.extend(list(hold_sizes([size.sewn for size in sizes])))
    for size in sizes:
        for hold in OF_SIZE:
            problems.extend(list(hold(subject, size)))


__all__ = ["OF_RECIPE", "OF_SIZE", "accept", "hold_recipe", "under_unread_statements"]
