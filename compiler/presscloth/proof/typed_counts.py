"""Numbers of things that were typed by hand, held against the cutting list and the statements."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping

from presscloth.edition import Edition, Evaluator, statements
from presscloth.measure import as_count
from presscloth.problems import Label, Problem
from presscloth.proof.subject import Subject
from presscloth.proof.typed import TypedCount, find_counts
from presscloth.proof.typed_by_hand import place_of, runs
from presscloth.recipe.expression import Broken, Expression
from presscloth.recipe.matching import counted_in
from presscloth.recipe.tree import Step
from presscloth.recipe.walking import Where
from presscloth.recipe.words import look_up


class TypedCountDiffers(Problem):
    """A number of things that was typed by hand is not the number that there is.

    A maker who is told to sew the sixteen blocks, and has cut twelve, looks for the other four.

    Fails:

        ## Steps
        1. Hem the 3 cloths.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem the cloth.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    name: str
    typed: int
    known: tuple[int, ...]

    def message(self) -> str:
        return f"`{self.span.quoted}` is typed by hand, and of `{self.name}` there are {self._said()}"

    def hint(self) -> str:
        return f"write {self._said()}, or correct the cutting list"

    def _said(self) -> str:
        return " or ".join(str(number) for number in self.known)


def hold(subject: Subject, edition: Edition, evaluator: Evaluator) -> Iterator[Problem]:
    """Hold typed numbers in the steps of one size.

    A number fits when so many are cut, or when a statement of the step takes, makes or uses so many
    for one. Reports nothing on things of which nothing is known, nor on some of them (`take 2 blocks`)
    in a step whose statements do not speak of them.
    """
    cut = _cut(edition)
    names = (*cut, *edition.without, *_results(edition))
    for run in subject.told:
        if run.where is not Where.STEP or run.step is None or not run.in_size(edition.size.name):
            continue
        used = _used(run.step, evaluator)
        for text, places in runs(run.of):
            for typed in find_counts(text, names):
                here = look_up(typed.name, used) or frozenset()
                known = here | (look_up(typed.name, cut) or frozenset())
                if typed.count not in known and _contradicts(typed, known, here):
                    yield TypedCountDiffers(
                        span=place_of(typed, places),
                        name=typed.name,
                        typed=typed.count,
                        known=tuple(sorted(known)),
                        labels=_rows(typed.name, edition),
                        sizes=(edition.size.name,),
                    )


def _contradicts(typed: TypedCount, known: frozenset[int], here: frozenset[int]) -> bool:
    """Whether a number that is not among the known ones contradicts them.

    `the 16 blocks` speaks of all; `2 tabs to each side` of a share, which must go into one of the
    known numbers, and only where the step's own statements speak of them; `one strip` says nothing.
    """
    if typed.definite:
        return bool(known)
    shares = any(number % typed.count == 0 for number in known) if typed.count else False
    return bool(here) and typed.count > 1 and not shares


def _rows(name: str, edition: Edition) -> tuple[Label, ...]:
    piece = look_up(name, {piece.name: piece for piece in edition.pieces})
    return () if piece is None else (Label(piece.row.cut.span, "cut"),)


def _cut(edition: Edition) -> Mapping[str, frozenset[int]]:
    """How many of each piece are cut: from each material or from all, with the spare ones or without."""
    found = {}
    for piece in edition.pieces:
        every = piece.count * max(1, len(piece.keys))
        found[piece.name] = frozenset(
            {piece.count, every, piece.count + piece.spare, every + piece.spare * max(1, len(piece.keys))}
        )
    return found


def _results(edition: Edition) -> Iterator[str]:
    for step in edition.steps:
        for part in step.parts:
            for statement in statements(part.content):
                if statement.result is not None:
                    yield statement.result.name.text


def _used(step: Step, evaluator: Evaluator) -> Mapping[str, frozenset[int]]:
    """How many of each thing the statements of a step take, make, or use for one."""
    found: dict[str, set[int]] = defaultdict(set)
    for part in step.parts:
        for statement in statements(part.content):
            times = _number(statement.result.count, evaluator) if statement.result else 1
            if statement.result is not None:
                found[statement.result.name.text].add(times)
            for counted in (each for slot in statement.slots.values() for each in counted_in(slot)):
                number = _number(counted.count, evaluator)
                found[counted.name.text].update((number, number * times))
    return {name: frozenset(numbers - {0}) for name, numbers in found.items()}


def _number(count: Expression | None, evaluator: Evaluator) -> int:
    """A number in a statement: one where none stands, none where it cannot be worked out."""
    if count is None:
        return 1
    value = evaluator.value(count)
    found = 0 if isinstance(value, Broken) else as_count(value)
    return found if isinstance(found, int) else 0
