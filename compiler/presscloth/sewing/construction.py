"""Construction: everything that was made of an edition's pieces, in order, and what was found."""

from __future__ import annotations

from collections.abc import Mapping

from presscloth.edition import Edition
from presscloth.frozen import dataclass
from presscloth.measure import Quantity, number
from presscloth.problems import Problem
from presscloth.recipe.statement import Statement
from presscloth.recipe.words import look_up
from presscloth.sewing.measuring import measured
from presscloth.sewing.placing import Arrangement, Line, Lying
from presscloth.sewing.reckoning import Exactly
from presscloth.sewing.things import Thing
from presscloth.sewing.ways import Way
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Stood:
    """A thing as it stood after a statement of a step; step 0 is as it was cut.

    `thing` is None where what made it could not be carried out. `count` is how many were made.
    """

    name: str
    step: int
    count: int
    thing: Thing | None
    span: Span


@dataclass(frozen=True, slots=True)
class Taken:
    """How many of a thing a statement used, and how it was."""

    name: str
    count: int
    thing: Thing


@dataclass(frozen=True, slots=True)
class Event:
    """A statement that was carried out: what it used in all, what it made, how the parts lie in one.

    `made` is None for `finish`. `lying` and `lines` are in millimetres of the metric system.
    """

    step: int
    statement: Statement
    used: tuple[Taken, ...]
    made: Stood | None
    arrangement: Arrangement

    @property
    def lying(self) -> tuple[Lying, ...]:
        return self.arrangement.lying

    @property
    def lines(self) -> tuple[Line, ...]:
        return self.arrangement.lines


@dataclass(frozen=True, slots=True)
class Finished:
    """A finished article, `count` of it."""

    name: str
    count: int
    thing: Thing
    step: int
    span: Span


@dataclass(frozen=True, slots=True)
class NotMeasured:
    """Things that were joined to another without anything to measure by."""

    name: str
    count: int
    span: Span


@dataclass(frozen=True, slots=True)
class Filled:
    """A weight of a filling that was used."""

    key: str
    weight: Quantity
    count: int
    span: Span


@dataclass(frozen=True, slots=True)
class Seam:
    """A seam that was sewn in a step, `count` times; `length` is that of its stitching."""

    step: int
    length: Quantity
    count: int
    span: Span


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two edges that were held against each other by the `index`-th seam of a statement.

    `left` and `right` name them; `one` and `other` are their lengths between the ends of the
    stitching, `allowed` is by how much they may differ. `behind` are the rows of Pieces from which the
    two come, the likelier place of a slip first.
    """

    span: Span
    index: int
    left: str
    right: str
    one: Quantity
    other: Quantity
    allowed: Quantity
    behind: tuple[Span, ...]

    @property
    def rows(self) -> tuple[Span, ...]:
        """The rows behind the two, each once."""
        return tuple(dict.fromkeys(self.behind))

    @property
    def key(self) -> tuple[Span, int]:
        return self.span, self.index


@dataclass(frozen=True)
class Construction:
    """What one way through an edition's steps makes.

    `edition` holds all pieces, those too whose size only sewing could tell. `states` are in the
    order in which they came about. `used` says how many of each piece were sewn in, by the piece's
    name and its material's key. `folds` says of each statement that folds lengthways or across which
    side it halves. `settled` are the measures that the statements needed. `certain`
    is False where statements could not be read, so that what is left over says nothing.
    """

    edition: Edition
    way: Way
    states: tuple[Stood, ...]
    events: tuple[Event, ...]
    finished: tuple[Finished, ...]
    not_measured: tuple[NotMeasured, ...]
    filled: tuple[Filled, ...]
    seams: tuple[Seam, ...]
    used: Mapping[tuple[str, str], int]
    settled: Mapping[str, Quantity]
    meetings: tuple[Meeting, ...]
    folds: Mapping[Span, str]
    reckoned: Exactly
    certain: bool
    problems: tuple[Problem, ...]

    def at(self, name: str, step: int | None = None) -> Stood | None:
        """A thing as it stood after a step; without a step, as it last stood."""
        until = [state for state in self.states if step is None or state.step <= step]
        found = look_up(name, {state.name: state for state in until})
        if found is None:
            _, _, rest = name.partition(" ")
            found = look_up(rest, {state.name: state for state in until}) if rest else None
        return found

    def part(self, name: str, part: str, *, finished: bool, step: int | None = None) -> Quantity | None:
        """A measure of a thing as it stood after a step; None where there is none."""
        stood = self.at(name, step)
        if stood is None or stood.thing is None:
            return None
        if part == "count":
            return number(stood.count)
        return measured(stood.thing.shape, part, finished=finished)
