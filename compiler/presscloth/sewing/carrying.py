"""Carrying out an edition's statements, one after another, in both systems at once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from presscloth.edition import SEAM, CutPiece, Edition, cut_piece
from presscloth.measure import Quantity, System
from presscloth.problems import Problem, Problems, Severity
from presscloth.recipe.expression import Broken
from presscloth.recipe.patterns import ResultRule
from presscloth.recipe.statement import Counted, EdgesOf, SewBlock, Statement
from presscloth.recipe.tree import Step
from presscloth.sewing.after import hold_finished, hold_made, seams_hold
from presscloth.sewing.asking import Asking
from presscloth.sewing.construction import (
    Construction,
    Event,
    Filled,
    Finished,
    Meeting,
    NotMeasured,
    Seam,
    Taken,
)
from presscloth.sewing.cut_things import cut_thing
from presscloth.sewing.number_problems import DoesNotComeOut, NameStillTaken, NumberOutOfPlace, TooManyAtOnce
from presscloth.sewing.places import Place, all_counted, changed, closes, names_of_things, too_few
from presscloth.sewing.placing import parts_of
from presscloth.sewing.reckoning import Exactly, OnPaper, Reckoning, piece_on_paper
from presscloth.sewing.stock import Stock
from presscloth.sewing.stock_problems import (
    NotCutHere,
    ThingLeftOver,
    UsedBeforeMade,
)
from presscloth.sewing.things import Thing, Whole
from presscloth.sewing.verbs import VERBS, Verb
from presscloth.sewing.ways import Way
from presscloth.sewing.work import Made, Refused, Used, Work
from presscloth.source import Span

MOST_AT_ONCE = 2000
"""So many of a thing may a statement name for one result; nobody sews more at once."""

_VERBS: Mapping[str, Verb] = {verb.name: verb for verb in VERBS}


def sew(edition: Edition, way: Way, choices: Mapping[str, Quantity] | None = None) -> Construction:
    """Carry out an edition's statements exactly, one way through its steps.

    `choices` sets measures that are the reader's to choose. Reports whatever does not meet, is used
    too often, or is left over of what was sewn; what is left of the pieces is judged over all ways.
    """
    return _Sewing(edition, way, edition.recipe.front.systems, choices).carried_out()


def sew_on_paper(exact: Construction, system: System) -> Construction:
    """Carry out the same statements as a maker does, from the sizes as they are printed in a system."""
    return _Sewing(exact.edition, exact.way, (system,), None, exact).carried_out()


class _Sewing:
    def __init__(
        self,
        edition: Edition,
        way: Way,
        systems: tuple[System, ...],
        choices: Mapping[str, Quantity] | None,
        exact: Construction | None = None,
    ) -> None:
        self._edition = edition
        self._way = way
        first = edition.recipe.front.written_in
        self._systems = tuple(sorted(systems, key=lambda system: system is not first))
        self._problems = Problems()
        self._materials = {material.key: material for material in edition.recipe.materials}
        self._stock = Stock(names_of_things(edition))
        self._asking = Asking(self._stock, self._materials, self._systems, self._fetch, self._report)
        self._evaluator = edition.evaluator(self._asking.answer, self._problems, choices)
        self._exactly = Exactly(self._evaluator) if exact is None else exact.reckoned
        self._reckoning: Reckoning = self._exactly
        pieces = edition.pieces
        if exact is not None:
            system = systems[0]
            self._reckoning = OnPaper(exact.reckoned.amounts, exact.reckoned.counts, system)
            pieces = tuple(piece_on_paper(piece, system) for piece in pieces)
        self._pieces: dict[str, CutPiece] = {}
        for piece in pieces:
            self._lay_out(piece)
        self._step = 0
        self._certain = True
        self._events: list[Event] = []
        self._finished: list[Finished] = []
        self._not_measured: list[NotMeasured] = []
        self._filled: list[Filled] = []
        self._seams: list[Seam] = []
        self._meetings: list[Meeting] = []
        self._folds: dict[Span, str] = {}

    def carried_out(self) -> Construction:
        for step in self._edition.steps:
            if self._way.takes(step):
                self._carry_step(step)
        for row in self._edition.recipe.pieces:
            self._fetch(row.name.text)
        if self._certain:
            self._hold_leftovers()
        order = {row.name.text: i for i, row in enumerate(self._edition.recipe.pieces)}
        pieces = tuple(sorted(self._pieces.values(), key=lambda piece: order[piece.name]))
        return Construction(
            edition=replace(self._edition, pieces=pieces),
            way=self._way,
            states=tuple(self._stock.states),
            events=tuple(self._events),
            finished=tuple(self._finished),
            not_measured=tuple(self._not_measured),
            filled=tuple(self._filled),
            seams=tuple(self._seams),
            used=dict(self._stock.used),
            settled=self._evaluator.settled,
            meetings=tuple(self._meetings),
            folds=self._folds,
            reckoned=self._exactly,
            certain=self._certain,
            problems=self._problems.found(),
        )

    def _report(self, problem: Problem) -> None:
        self._problems.add(problem.in_size(self._edition.size.name))

    # Pieces.

    def _lay_out(self, piece: CutPiece) -> None:
        self._pieces[piece.name] = piece
        for key in piece.keys or ("",):
            thing = cut_thing(piece, self._materials.get(key))
            self._stock.cut(piece.name, key, thing, piece.count - piece.spare, piece.span)

    def _fetch(self, name: str) -> None:
        """Work out a piece whose size only sewing can tell, when it is first used."""
        if self._stock.has(name) or name in self._edition.without:
            return
        for row in self._edition.recipe.pieces:
            if row.name.text == name:
                piece = cut_piece(row, self._evaluator)
                if piece is None:
                    self._stock.put(name, None, 0, 0, row.span)
                else:
                    self._lay_out(piece)

    # Statements.

    def _carry_step(self, step: Step) -> None:
        self._step = step.number
        for part in step.parts:
            if not self._way.takes(part):
                continue
            for block in part.content:
                if not isinstance(block, SewBlock):
                    continue
                for statement in block.statements:
                    if isinstance(statement, Statement):
                        self._carry(statement)
                    else:
                        self._certain = self._asking.certain = False

    def _carry(self, statement: Statement) -> None:
        self._asking.statement = statement
        verb = _VERBS[statement.verb]
        try:
            self._carry_out(statement, verb)
        except Refused as refused:
            if refused.problem is not None:
                self._report(refused.problem)
            self._spoil(statement, verb)

    def _spoil(self, statement: Statement, verb: Verb) -> None:
        """What cannot be carried out makes things of which nothing is known, and says no more of them."""
        if statement.result is not None:
            name = self._stock.called(statement.result.name.text)
        elif verb.changes is not None:
            name = self._stock.called(changed(statement, verb.changes).name.text)
        else:
            return
        self._stock.put(name, None, 1, self._step, statement.span)

    def _carry_out(self, statement: Statement, verb: Verb) -> None:
        closes = self._closes(statement)
        times = self._times(statement, verb)
        if times == 0:
            return
        places = tuple(self._places(statement, verb, times, closes=closes))
        used, taken, short = self._take(places)
        cause = next((each.thing.cause for each in taken if each.thing.cause is not None), None)
        found = Problems()
        work = Work(
            statement=statement,
            used=used,
            times=times,
            reckoning=self._reckoning,
            problems=found,
            systems=self._systems,
            closes=closes,
            has_seam=self._evaluator.defines(SEAM),
        )
        try:
            made = verb.ways[statement.pattern](work)
            seams_hold(work)
            self._remember(work)
            if cause is None and (short or _wrong(found)):
                cause = statement.span
            if verb.result is ResultRule.NONE:
                self._finish(statement, places, used, taken)
            else:
                self._make(work, verb, made, taken, cause)
        except Refused as refused:
            if refused.problem is not None:
                found.add(refused.problem)
            raise Refused from None
        finally:
            # What goes wrong with a thing that was made although something was wrong follows from that.
            before = None if cause == statement.span else cause
            for problem in found.found():
                self._report(problem if before is None else replace(problem, cause=before))

    def _times(self, statement: Statement, verb: Verb) -> int:
        """How often a statement is carried out: once for each result, or for each thing that changes."""
        if statement.result is not None:
            if statement.result.count is None:
                return 1
            count = self._reckoning.count(
                statement.result.count, f"the number of `{statement.result.name.text}`"
            )
            if isinstance(count, Broken):
                raise Refused
            return count
        if verb.changes is None:
            return 1
        first = changed(statement, verb.changes)
        name = self._stock.called(first.name.text)
        self._fetch(name)
        count = self._number(first)
        if count != 1:
            raise Refused(NumberOutOfPlace(span=first.span, name=name, count=count))
        return max(1, self._stock.left(name, first.key))

    def _number(self, counted: Counted) -> int:
        if counted.count is None:
            return 1
        count = self._reckoning.count(counted.count, f"the number of `{counted.name.text}`")
        if isinstance(count, Broken):
            raise Refused
        return count

    def _closes(self, statement: Statement) -> bool:
        found = closes(statement, self._stock.called, self._stock.left)
        if isinstance(found, Problem):
            raise Refused(found)
        return found

    def _places(self, statement: Statement, verb: Verb, times: int, *, closes: bool) -> Iterator[Place]:
        goes = times
        if verb.at_once is not None:
            goes = self._goes(statement, verb.at_once, times)
        implied = verb.implied(statement, self._number)
        edges = 0
        for slot, counted in all_counted(statement):
            name = self._stock.called(counted.name.text)
            per = implied.get(slot, 1) if counted.count is None else self._number(counted)
            if per > MOST_AT_ONCE:
                raise Refused(TooManyAtOnce(span=counted.span, name=name, count=per, most=MOST_AT_ONCE))
            edges += isinstance(statement.slots[slot], EdgesOf)
            if closes and edges == 2 and slot != "catching":
                yield Place(slot, counted, name, 1, 0)
                continue
            if verb.takes_all and counted.count is None:
                self._fetch(name)
                per = max(1, self._stock.left(name, counted.key))
            in_all = per if verb.in_all else per * goes
            yield Place(slot, counted, name, per, in_all)

    def _goes(self, statement: Statement, slot: str, times: int) -> int:
        """How often things are made that come out several at once."""
        at_once = Work(statement, {}, times, self._reckoning, self._problems, self._systems).whole(slot)
        name = statement.result.name.text if statement.result else ""
        if at_once < 1 or times % at_once:
            raise Refused(
                DoesNotComeOut(span=statement.span, wanted=times, name=name, at_once=max(1, at_once))
            )
        return times // at_once

    def _take(
        self, places: tuple[Place, ...]
    ) -> tuple[Mapping[str, tuple[Used, ...]], tuple[Taken, ...], bool]:
        """Take the things out of the stock; what is missing is reported, and its shape used all the same."""
        used: dict[str, tuple[Used, ...]] = {}
        taken: list[Taken] = []
        wanted: dict[tuple[str, str | None], list[Place]] = {}
        for place in places:
            wanted.setdefault((place.name, place.counted.key), []).append(place)
            thing = self._thing_for(place)
            if thing is not None:
                each = Used(place.name, place.per_result, thing, place.span)
                used[place.slot] = (*used.get(place.slot, ()), each)
                if place.in_all:
                    taken.append(Taken(place.name, place.in_all, thing))
        short = [self._draw(each) for each in wanted.values()]
        if sum(len(each) for each in used.values()) < len(places):
            raise Refused
        return used, tuple(taken), any(short)

    def _draw(self, places: list[Place]) -> bool:
        """Take all that a statement wants of one name; True when there are too few."""
        first = places[0]
        if not self._stock.has(first.name):
            return False
        wanted = sum(place.in_all for place in places)
        drawn = self._stock.take(first.name, first.counted.key, wanted)
        if drawn.short and drawn.thing is not None:
            self._report(too_few(first, wanted, drawn))
        return drawn.short

    def _thing_for(self, place: Place) -> Thing | None:
        """The thing in a place as it is now; None when nothing is known of it."""
        self._fetch(place.name)
        if not self._stock.has(place.name):
            if place.name in self._materials:
                return Thing(Whole())
            if place.name in self._edition.without:
                self._report(NotCutHere(span=place.span, name=place.name))
            elif self._certain:
                self._report(UsedBeforeMade(span=place.span, name=place.name))
            return None
        return self._stock.thing(place.name, place.counted.key)

    # Results.

    def _remember(self, work: Work) -> None:
        self._not_measured += work.not_measured
        self._filled += work.filled
        self._meetings += work.meetings
        self._folds |= work.folded
        self._seams += [Seam(self._step, length, work.times, work.span) for length in work.seams]

    def _make(self, work: Work, verb: Verb, made: Made, taken: tuple[Taken, ...], cause: Span | None) -> None:
        statement = work.statement
        behind = [u for slot, us in work.used.items() for u in us if not made.of or slot in made.of]
        rows = tuple(dict.fromkeys(row for u in behind for row in u.thing.rows))
        before = sum(u.thing.gaps for u in behind)
        gaps = before + work.has("gap") if made.gaps is None else made.gaps
        parts = parts_of(made.lying) if made.parts is None else made.parts
        thing = Thing(made.shape, parts, gaps, rows, cause)
        problem = hold_made(work, thing, self._result_name(statement, verb))
        if problem is not None:
            raise Refused(problem)
        name, times = self._result_name(statement, verb), work.times
        self._asking.hold(name, thing, statement)
        key = None if statement.result else changed(statement, verb.changes or "").key
        if key is not None:
            stood = self._stock.add(name, key, thing, times, self._step, statement.span)
        else:
            left = 0 if self._stock.spoilt(name) else self._stock.left(name)
            if left:
                self._stock.take(name, None, left)
                self._report(NameStillTaken(span=statement.span, name=name, left=left, made=times))
            stood = self._stock.put(name, thing, times, self._step, statement.span)
        self._events.append(Event(self._step, statement, taken, stood, made.lying, made.lines))

    def _result_name(self, statement: Statement, verb: Verb) -> str:
        if statement.result is not None:
            return self._stock.called(statement.result.name.text)
        return self._stock.called(changed(statement, verb.changes or "").name.text)

    def _finish(
        self,
        statement: Statement,
        places: tuple[Place, ...],
        used: Mapping[str, tuple[Used, ...]],
        taken: tuple[Taken, ...],
    ) -> None:
        for place, each in zip(places, used["things"], strict=True):
            for problem in hold_finished(each.name, each.thing, place.span, self._systems):
                self._report(problem)
            self._finished.append(Finished(each.name, place.in_all, each.thing, self._step, place.span))
        self._events.append(Event(self._step, statement, taken, None, (), ()))

    def _hold_leftovers(self) -> None:
        for name, count, thing in self._stock.sewn_left():
            last = next(state for state in reversed(self._stock.states) if state.name == name)
            self._report(ThingLeftOver(span=last.span, name=name, left=count, cause=thing.cause))


def _wrong(found: Problems) -> bool:
    return any(problem.severity is Severity.ERROR for problem in found.found())
