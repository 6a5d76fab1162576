"""Warnings that a recipe accepts by name."""

from dataclasses import dataclass
from typing import ClassVar

import pytest

from presscloth.problems import Problem, Severity
from presscloth.proof.acceptance import AcceptedUnknown, AcceptedWithoutNeed, ErrorAccepted, accept
from presscloth.recipe.tree import Accepted
from presscloth.source import Source

SOURCE = Source("recipe.md", "accept:\n  - thread is loud: it is meant\n")
PLACE, HERE, THERE = SOURCE.span(0, 6), SOURCE.span(12, 26), SOURCE.span(28, 40)


class ThreadIsLoud(Problem):
    """A made-up warning."""

    severity: ClassVar[Severity] = Severity.WARNING

    def message(self) -> str:
        return "the thread is loud"

    def hint(self) -> str:
        return "choose another"


@dataclass(frozen=True, kw_only=True)
class ThreadIsMissing(ThreadIsLoud):
    """A made-up error."""

    severity: ClassVar[Severity] = Severity.ERROR


LOUD, MISSING = ThreadIsLoud(span=PLACE), ThreadIsMissing(span=PLACE)


def accepted(*names: str) -> list[Accepted]:
    return [Accepted(name, "it is meant", place) for name, place in zip(names, (HERE, THERE), strict=False)]


def test_nothing_accepted_changes_nothing():
    assert accept([LOUD, MISSING], []) == (LOUD, MISSING)


@pytest.mark.parametrize("name", ["thread-is-loud", "thread is loud", "Thread Is Loud"])
def test_an_accepted_warning_is_gone_wherever_it_was(name: str):
    assert accept([LOUD, MISSING, LOUD.in_size("Small")], accepted(name)) == (MISSING,)


def test_an_error_cannot_be_accepted():
    kept, told = accept([MISSING], accepted("thread-is-missing"))
    assert kept is MISSING
    assert told == ErrorAccepted(span=HERE, name="thread-is-missing")
    assert told.severity is Severity.ERROR


def test_an_error_cannot_be_accepted_even_where_there_is_none():
    assert accept([], accepted("thread-is-missing")) == (ErrorAccepted(span=HERE, name="thread-is-missing"),)


def test_what_nothing_needs_is_a_warning_itself():
    (told,) = accept([], accepted("thread-is-loud"))
    assert told == AcceptedWithoutNeed(span=HERE, name="thread-is-loud")
    assert told.severity is Severity.WARNING


def test_an_unknown_name_gets_the_nearest_warning_and_never_an_error():
    kept, told = accept([LOUD], accepted("thread is lout"))
    assert kept is LOUD
    assert told == AcceptedUnknown(span=HERE, name="thread is lout", meant="thread-is-loud")
    (told,) = accept([], accepted("thread is mising"))
    assert isinstance(told, AcceptedUnknown)
    assert told.meant != "thread-is-missing"


def test_the_second_of_two_is_not_needed():
    (told,) = accept([LOUD], accepted("thread-is-loud", "thread is loud"))
    assert isinstance(told, AcceptedWithoutNeed)
    assert told.span == THERE
    assert told.labels[0].span == HERE
    assert told.message() == "`thread is loud` is accepted a second time"
