"""Parts of a longer project: each week once, and none left out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar

from presscloth.problems import Label, Problem, Severity
from presscloth.recipe.tree import FrontMatter


class WeekTwice(Problem):
    """Two recipes are the part of a project for the same week.

    Nobody could tell which of them is sewn first, and each would lead past the other.

    Fails: `part of: Half-Tide Quilt` and `week: 2` in two recipes of a folder.

    Passes: the same project in both, `week: 2` in one and `week: 3` in the other.
    """

    project: str
    week: int
    other: str

    def message(self) -> str:
        return f"week {self.week} of {self.project} is {self.other} already"

    def hint(self) -> str:
        return "give one of the two another week"


class WeekMissing(Problem):
    """A part of a project has no part for the week before.

    Readers who follow week by week would look for it. It is right where a week is meant to be free.

    Fails: `week: 1` in one recipe of a project, and `week: 3` in the next.

    Passes: `week: 1`, `week: 2` and `week: 3`, each in a recipe of its own.
    """

    severity: ClassVar[Severity] = Severity.WARNING
    project: str
    week: int

    def message(self) -> str:
        return f"{self.project} has a part for week {self.week} and none for week {self.week - 1}"

    def hint(self) -> str:
        return "number the weeks without a gap, or accept this with the reason"


def hold(front: FrontMatter, others: Mapping[str, FrontMatter]) -> Iterator[Problem]:
    """Hold the week of a part against the other recipes that lie beside it, by their short names."""
    if not front.part_of or not front.week:
        return
    span = front.spans["week"]
    parts = [other for _, other in sorted(others.items()) if _folded(other.part_of) == _folded(front.part_of)]
    for other in parts:
        if other.week == front.week:
            labels = (Label(other.spans["week"], "the other part"),)
            yield WeekTwice(
                span=span, labels=labels, project=front.part_of, week=front.week, other=other.title
            )
    if front.week > 1 and all(other.week != front.week - 1 for other in parts):
        yield WeekMissing(span=span, project=front.part_of, week=front.week)


def _folded(name: str) -> str:
    return " ".join(name.casefold().split())
