"""What statements came to, remembered, so that what comes to the same is not carried out again.

The ways through a recipe's steps, and the ends of what the reader may choose, differ in few places.
A statement that uses the very things that it used before, the same amounts being told to it, comes
to what it came to before. Only what went well is remembered: what goes wrong is worked out, and told
of, each time.
"""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.edition import CutPiece
from presscloth.frozen import dataclass
from presscloth.measure import Kind, Quantity, System
from presscloth.measure.following import is_following
from presscloth.recipe.expression import Broken, Expression
from presscloth.recipe.tree import Material
from presscloth.sewing.cut_things import cut_thing
from presscloth.sewing.reckoning import Page, Reckoning
from presscloth.sewing.things import Thing
from presscloth.sewing.work import Made, Work
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Told:
    """What a statement asked of its reckoning, and what it was told; `kind` is None for a count."""

    expression: Expression
    kind: Kind | None
    what: str
    value: Quantity | int | Broken

    def still(self, reckoning: Reckoning) -> bool:
        """Whether it would be told the same now. It asks, so that whoever counts on the asking is served."""
        if self.kind is None:
            return reckoning.count(self.expression, self.what) == self.value
        return _same(reckoning.amount(self.expression, self.kind, self.what), self.value)


def _same(one: object, other: object) -> bool:
    """Whether two are equal; what is followed, where it was reckoned alike and so is equal for any choice."""
    return one is other or ((not is_following() or hash(one) == hash(other)) and one == other)


class Noting:
    """A reckoning that notes what is asked of it."""

    def __init__(self, of: Reckoning) -> None:
        self._of = of
        self.told: list[Told] = []

    def amount(self, expression: Expression, kind: Kind, what: str) -> Quantity | Broken:
        value = self._of.amount(expression, kind, what)
        self.told.append(Told(expression, kind, what, value))
        return value

    def count(self, expression: Expression, what: str) -> int | Broken:
        value = self._of.count(expression, what)
        self.told.append(Told(expression, None, what, value))
        return value


@dataclass(frozen=True, slots=True)
class Outcome:
    """One statement, carried out without a problem: its work, what it made, and the thing that is."""

    work: Work
    made: Made
    thing: Thing | None

    def is_of(self, work: Work) -> bool:
        """Whether the work is this one: the very same things, in systems in which it was proved."""
        mine = self.work
        if (work.times, work.closes) != (mine.times, mine.closes) or work.used.keys() != mine.used.keys():
            return False
        return all(system in mine.systems for system in work.systems) and all(
            len(used) == len(mine.used[slot])
            and all(
                now.thing is then.thing and now.count == then.count
                for now, then in zip(used, mine.used[slot], strict=True)
            )
            for slot, used in work.used.items()
        )


class Memory:
    """What one size came to so far, exactly and on paper."""

    def __init__(self) -> None:
        self._outcomes: dict[Span, list[tuple[Outcome, Sequence[Told]]]] = {}
        self._cut: dict[tuple[Span, str], list[tuple[CutPiece, Thing]]] = {}
        self._pages = {system: Page(system) for system in System}

    def copy(self) -> Memory:
        """What is known so far, to which another may add without its being known here."""
        other = Memory()
        other._outcomes = {span: [*known] for span, known in self._outcomes.items()}
        other._cut = {key: [*known] for key, known in self._cut.items()}
        return other

    def outcome(self, work: Work, reckoning: Reckoning) -> Outcome | None:
        """What the same work came to, if it was done before and the same amounts are told to it now."""
        for outcome, told in self._outcomes.get(work.span, ()):
            if outcome.is_of(work) and all(each.still(reckoning) for each in told):
                return outcome
        return None

    def remember(self, outcome: Outcome, told: Sequence[Told]) -> None:
        self._outcomes.setdefault(outcome.work.span, []).append((outcome, told))

    def cut(self, piece: CutPiece, key: str, material: Material | None) -> Thing:
        """The thing that a piece is: the very same one each time that it is cut to the same size."""
        known = self._cut.setdefault((piece.span, key), [])
        thing = next((thing for before, thing in known if _same(before, piece)), None)
        if thing is None:
            thing = cut_thing(piece, material)
            known.append((piece, thing))
        return thing

    def page(self, system: System) -> Page:
        return self._pages[system]
