"""The work that one statement asks for: the things that it uses, its amounts, and its seams.

A verb asks for what it needs; what it asks for in vain is reported and stops the statement there.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import field
from typing import NoReturn

from presscloth.edition import SEAM
from presscloth.frozen import dataclass
from presscloth.measure import Kind, Quantity, System, compare
from presscloth.problems import Label, Problem, Problems
from presscloth.recipe.expression import Broken, Expression, Name
from presscloth.recipe.statement import Amount, Choice, EdgesOf, Sides, Statement
from presscloth.sewing.construction import Filled, Meeting, NotMeasured
from presscloth.sewing.edge_problems import (
    AllowancesDiffer,
    AllowanceUnknown,
    EdgeNotRaw,
    NoSuchEdge,
)
from presscloth.sewing.lengths import NOTHING
from presscloth.sewing.measuring import edge_of, seam_length
from presscloth.sewing.meeting import judge
from presscloth.sewing.placing import Arranged
from presscloth.sewing.reckoning import Reckoning
from presscloth.sewing.shape_problems import WrongShape, what_it_is
from presscloth.sewing.things import (
    Edge,
    Flat,
    Hollow,
    Rim,
    Shape,
    Thing,
    neighbours,
    same_allowance,
)
from presscloth.sewing.wording import said
from presscloth.source import Span


class Refused(Exception):
    """A statement cannot be carried out; caught where statements are carried out, never seen outside."""

    def __init__(self, problem: Problem | None = None) -> None:
        self.problem = problem


@dataclass(frozen=True, slots=True)
class Used:
    """A thing that a statement uses, `count` of it for one result."""

    name: str
    count: int
    thing: Thing
    span: Span

    @property
    def shape(self) -> Shape:
        return self.thing.shape


@dataclass(frozen=True, slots=True)
class Side:
    """An edge of a used thing, as a seam finds it; `seam` is its length between the ends of stitching.

    `lies_on` names the edge on which it comes to lie, where its thing lies face down on another.
    """

    used: Used
    name: str
    edge: Edge
    seam: Quantity
    lies_on: str = ""

    @property
    def words(self) -> str:
        return f"{self.name} of `{self.used.name}`"

    @property
    def cut_like_sewn(self) -> bool:
        """Whether comparing the edge from corner to corner comes to the same, all ends being raw alike."""
        shape = self.used.shape
        if not isinstance(shape, Flat):
            return False
        return all(rim.raw for rim in neighbours(shape, self.name))


@dataclass(frozen=True, slots=True)
class Made:
    """What a statement makes; `arrange` works out how the used things lie in it, when that is asked.

    `directed` is true where it now matters which way up it is; `gaps` are given where they are not
    simply those of what was used. `of` names the places whose things it consists of; the others are
    held by it. None named: it consists of all.
    """

    shape: Shape
    arrange: Callable[[], Arranged] = Arranged
    directed: bool = False
    gaps: int | None = None
    of: tuple[str, ...] = ()


@dataclass
class Work:
    """One statement at work. `systems` are those that are proved, the author's first."""

    statement: Statement
    used: Mapping[str, tuple[Used, ...]]
    times: int
    reckoning: Reckoning
    problems: Problems
    systems: tuple[System, ...]
    closes: bool = False
    has_seam: bool = False
    seams: list[Quantity] = field(default_factory=list)
    meetings: list[Meeting] = field(default_factory=list)
    not_measured: list[NotMeasured] = field(default_factory=list)
    filled: list[Filled] = field(default_factory=list)
    folded: dict[Span, str] = field(default_factory=dict)
    _missed: list[tuple[Quantity, Quantity]] = field(default_factory=list)

    @property
    def span(self) -> Span:
        return self.statement.span

    @property
    def result_name(self) -> str | None:
        """The name of what is made, where it is given."""
        return None if self.statement.result is None else self.statement.result.name.text

    def refuse(self, problem: Problem | None = None) -> NoReturn:
        raise Refused(problem)

    def report(self, problem: Problem) -> None:
        self.problems.add(problem)

    # What stands in the places of the pattern.

    def one(self, slot: str) -> Used:
        """The thing in a place where one name stands."""
        return self.used[slot][0]

    def every(self, slot: str) -> tuple[Used, ...]:
        """The things of a list one by one, each as often as its number says."""
        return tuple(used for used in self.used[slot] for _ in range(used.count))

    def has(self, slot: str) -> bool:
        return slot in self.statement.slots

    def says(self, slot: str) -> str:
        """The words that were chosen in a place; an edge's name or names."""
        match self.statement.slots[slot]:
            case Choice(words=words):
                return words
            case EdgesOf(edges=edges) | Sides(edges=edges):
                return edges[0]
            case _:
                return ""

    def edges(self, slot: str) -> tuple[str, ...]:
        match self.statement.slots[slot]:
            case EdgesOf(edges=edges) | Sides(edges=edges):
                return tuple(dict.fromkeys(edges))
            case _:
                return ()

    def place(self, slot: str) -> Span:
        return self.statement.slots[slot].span

    def expression(self, slot: str) -> Expression:
        found = self.statement.slots[slot]
        assert isinstance(found, Amount)
        return found.of

    def amount(self, slot: str, kind: Kind = Kind.LENGTH) -> Quantity:
        expression = self.expression(slot)
        value = self.reckoning.amount(expression, kind, f"`{expression.span.text}`")
        return self.refuse() if isinstance(value, Broken) else value

    def whole(self, slot: str) -> int:
        expression = self.expression(slot)
        value = self.reckoning.count(expression, f"`{expression.span.text}`")
        return self.refuse() if isinstance(value, Broken) else value

    def usual_seam(self) -> Quantity | None:
        """The measure `seam`, for edges that are raw and have no allowance of their own."""
        if not self.has_seam:
            return None
        value = self.reckoning.amount(Name(SEAM, self.span), Kind.LENGTH, "the seam allowance")
        return value if isinstance(value, Quantity) else None

    # Shapes and edges.

    def said(self, q: Quantity) -> str:
        return said(q, self.systems)

    def wrong_shape(self, used: Used, wanted: str, way_out: str = "") -> NoReturn:
        found = what_it_is(used.shape)
        self.refuse(WrongShape(span=used.span, name=used.name, found=found, wanted=wanted, way_out=way_out))

    def flat(self, used: Used) -> Flat:
        return (
            used.shape
            if isinstance(used.shape, Flat)
            else self.wrong_shape(used, "a flat thing with four sides")
        )

    def hollow(self, used: Used) -> Hollow:
        if isinstance(used.shape, Hollow):
            return used.shape
        return self.wrong_shape(used, "a tube or a pouch")

    def side(self, used: Used, name: str) -> Side:
        edge, seam = edge_of(used.shape, name), seam_length(used.shape, name)
        if edge is None or seam is None:
            self.refuse(NoSuchEdge(span=used.span, edge=name, name=used.name, found=what_it_is(used.shape)))
        return Side(used, name, edge, seam)

    def edge(self, slot: str) -> Side:
        return self.side(self.one(slot), self.says(slot))

    # Seams.

    def must_be_raw(self, side: Side, doing: str = "joined") -> Rim:
        """The rim of an edge, which must be raw all along."""
        rim = side.edge.rim
        if rim is None or not rim.raw:
            state = "raw in part only" if rim is None else rim.state.value
            self.refuse(
                EdgeNotRaw(
                    span=side.used.span, edge=side.words, state=state, doing=doing, lies_on=side.lies_on
                )
            )
        return rim

    def allowance(self, *sides: Side) -> Quantity:
        """The allowance of a seam: that of its edges, or what the statement takes."""
        if self.has("taking"):
            return self.amount("taking")
        first, *others = sides
        for other in others:
            if not same_allowance(self._own(first), self._own(other)):
                self.refuse(self._differ(first, other))
        own = self._own(first)
        if own is None:
            self.refuse(AllowanceUnknown(span=self.span, edge=first.words))
        return own

    def _own(self, side: Side) -> Quantity | None:
        return None if side.edge.rim is None else side.edge.rim.allowance

    def _differ(self, one: Side, other: Side) -> Problem:
        def has(side: Side) -> str:
            own = self._own(side)
            return f"{side.words} has " + ("several" if own is None else self.said(own))

        return AllowancesDiffer(span=self.span, one=has(one), other=has(other))

    def join(self, one: Side, other: Side) -> Quantity:
        """Sew two raw edges together, and say what the seam takes of each."""
        self.must_be_raw(one)
        self.must_be_raw(other)
        taken = self.allowance(one, other)
        self.meet(one, other)
        self.seams.append(one.seam)
        return taken

    def meet(self, one: Side, other: Side, allowed: Quantity = NOTHING) -> None:
        """Hold two edges against each other between the ends of their stitching."""
        plain = one.cut_like_sewn and other.cut_like_sewn and self._same_ends(one, other)
        lengths = (one.edge.length, other.edge.length) if plain else (one.seam, other.seam)
        # The thing of fewer pieces first: its row is the likelier place of a slip.
        fewer, more = sorted((one.used.thing.rows, other.used.thing.rows), key=len)
        self.compare(one.words, other.words, lengths, allowed, (*fewer, *more), cut=plain)

    def _same_ends(self, one: Side, other: Side) -> bool:
        shapes = one.used.shape, other.used.shape
        if not (isinstance(shapes[0], Flat) and isinstance(shapes[1], Flat)):
            return False
        rims = (*neighbours(shapes[0], one.name), *neighbours(shapes[1], other.name))
        return all(same_allowance(rims[0].allowance, rim.allowance) for rim in rims)

    def compare(
        self,
        left: str,
        right: str,
        lengths: tuple[Quantity, Quantity],
        allowed: Quantity = NOTHING,
        rows: tuple[Span, ...] = (),
        *,
        cut: bool = False,
    ) -> None:
        """Hold two lengths that meet against each other; `ease` allows more."""
        ease = self.amount("ease") if self.has("ease") else allowed
        one, other = lengths
        meeting = Meeting(self.span, len(self.meetings), left, right, one, other, ease, rows)
        self.meetings.append(meeting)
        problem = judge(meeting, self.systems, cut=cut)
        # Where both sides of a thing miss by the same, that is said once.
        if problem is not None and lengths not in self._missed:
            self._missed.append(lengths)
            self.report(problem)

    def short_in(self, have: Quantity, wanted: Quantity) -> tuple[System, ...]:
        """The systems in which a length is shorter than another."""
        return tuple(s for s in self.systems if compare(have[s], wanted[s], s) < 0)

    # What else is remembered.

    def uncounted(self, used: Used, count: int = 1) -> None:
        """Say of a thing that it is joined and not measured."""
        self.not_measured.append(NotMeasured(used.name, count * self.times, used.span))

    def rows_of(self, *used: Used) -> tuple[Label, ...]:
        """The rows of Pieces behind things, as places of a problem."""
        rows = dict.fromkeys(row for each in used for row in each.thing.rows)
        return tuple(Label(row, "cut here") for row in rows)
