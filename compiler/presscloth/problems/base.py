"""What a problem is: something an author should know, with its place, its cause and one way out.

A problem is a value. The class of a problem stands beside the rule that reports it; its docstring
is its page, printed by `presscloth why NAME`, with an example that fails and one that passes.
"""

from __future__ import annotations

import re
from abc import ABC, abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum
from typing import ClassVar, Self, dataclass_transform

from presscloth.source import Span


class Severity(Enum):
    """An error keeps a handout from being written; a warning says: right, but perhaps not meant."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True)
class Label:
    """Another place that has to do with a problem, and a few words on what stands there."""

    span: Span
    text: str


@dataclass_transform(frozen_default=True, kw_only_default=True)
@dataclass(frozen=True, kw_only=True)
class Problem(ABC):
    """One problem at one place.

    Each kind of problem is a frozen dataclass with keywords only, without saying so: a kind is made
    one when the first of it is found. There are many kinds, a sound recipe has none of them, and
    making them all would take longer than proving the recipe.

    `labels` are the other places involved; `sizes` and `systems` name where it holds (none named:
    everywhere). `cause` is the place from which it follows when an earlier problem may already have
    been reported there: a problem whose cause is another problem's place hangs under that one.
    """

    severity: ClassVar[Severity] = Severity.ERROR

    span: Span
    labels: tuple[Label, ...] = ()
    sizes: tuple[str, ...] = ()
    systems: tuple[str, ...] = ()
    cause: Span | None = None

    def __new__(cls, *arguments: object, **words: object) -> Self:
        _made_a_dataclass(cls)
        return super().__new__(cls)

    @classmethod
    def title(cls) -> str:
        """The name in plain words: `PairDisagrees` is called `pair disagrees`."""
        return re.sub(r"(?<=[a-z0-9])(?=[A-Z])", " ", cls.__name__).lower()

    @classmethod
    def slug(cls) -> str:
        """The name as it is typed: `pair-disagrees`."""
        return cls.title().replace(" ", "-")

    @abstractmethod
    def message(self) -> str:
        """One line that stands alone: what is wrong, with the values."""

    @abstractmethod
    def hint(self) -> str:
        """One thing to do about it."""

    def in_size(self, size: str) -> Self:
        return replace(self, sizes=(size,))

    def in_systems(self, *systems: str) -> Self:
        return replace(self, systems=systems)


def _made_a_dataclass(kind: type[Problem]) -> None:
    """Make a kind of problem, and before it the kinds that it is built on, a dataclass; once."""
    for each in reversed(kind.__mro__):
        if issubclass(each, Problem) and "__dataclass_fields__" not in vars(each):
            dataclass(frozen=True, kw_only=True)(each)


def subclasses(of: type[Problem] = Problem) -> Iterator[type[Problem]]:
    """Every kind of problem that has been imported, parents before children."""
    for kind in of.__subclasses__():
        if not kind.__abstractmethods__:
            yield kind
        yield from subclasses(kind)


class Problems:
    """Where a stage drops what it finds, while it goes on."""

    def __init__(self) -> None:
        self._found: list[Problem] = []

    def add(self, problem: Problem) -> None:
        self._found.append(problem)

    def extend(self, problems: tuple[Problem, ...] | list[Problem]) -> None:
        self._found.extend(problems)

    def found(self) -> tuple[Problem, ...]:
        return tuple(self._found)
