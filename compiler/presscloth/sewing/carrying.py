"""Carrying out an edition's statements, one after another, in both systems at once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from presscloth.edition import SEAM, CutPiece, Edition, cut_piece
from presscloth.measure import Quantity, System
from presscloth.problems import Problem, Problems, Severity
from presscloth.recipe.patterns import ResultRule
from presscloth.recipe.statement import SewBlock, Statement
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
from presscloth.sewing.marked import left_out_with, where_left_out
from presscloth.sewing.number_problems import NameStillTaken
from presscloth.sewing.places import Place, changed, names_of_things
from presscloth.sewing.placing import Arrangement
from presscloth.sewing.reckoning import Exactly, OnPaper, Reckoning
from presscloth.sewing.remembering import Memory, Noting, Outcome
from presscloth.sewing.stock import Stock
from presscloth.sewing.stock_problems import (
    ThingLeftOver,
)
from presscloth.sewing.taking import Taking
from presscloth.sewing.things import NO_ARRANGEMENT, Thing
from presscloth.sewing.verbs import VERBS, Verb
from presscloth.sewing.ways import Way
from presscloth.sewing.work import Made, Refused, Used, Work
from presscloth.source import Span

_VERBS: Mapping[str, Verb] = {verb.name: verb for verb in VERBS}


def sew(
    edition: Edition,
    way: Way,
    choices: Mapping[str, Quantity] | None = None,
    memory: Memory | None = None,
) -> Construction:
    """Carry out an edition's statements exactly, one way through its steps.

    `choices` sets measures that are the reader's to choose; `memory` is what this size came to
    before, so that only what differs is carried out. Reports whatever does not meet, is used
    too often, or is left over of what was sewn; what is left of the pieces is judged over all ways.
    """
    systems = edition.recipe.front.systems
    return _Sewing(edition, way, systems, choices, memory or Memory()).carried_out()


def sew_on_paper(exact: Construction, system: System, memory: Memory | None = None) -> Construction:
    """Carry out the same statements as a maker does, from the sizes as they are printed in a system."""
    return _Sewing(exact.edition, exact.way, (system,), None, memory or Memory(), exact).carried_out()


class _Sewing:
    def __init__(
        self,
        edition: Edition,
        way: Way,
        systems: tuple[System, ...],
        choices: Mapping[str, Quantity] | None,
        memory: Memory,
        exact: Construction | None = None,
    ) -> None:
        self._edition = edition
        self._memory = memory
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
            self._reckoning = OnPaper(exact.reckoned.amounts, exact.reckoned.counts, memory.page(system))
            pieces = tuple(memory.page(system).piece(piece) for piece in pieces)
        self._taking = Taking(
            self._stock,
            self._reckoning,
            self._systems,
            self._asking,
            self._fetch,
            self._report,
            materials=self._materials,
            without=edition.without,
        )
        self._pieces: dict[str, CutPiece] = {}
        for piece in pieces:
            self._lay_out(piece)
        self._step = 0
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
        if self._asking.certain:
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
            certain=self._asking.certain,
            problems=self._problems.found(),
        )

    def _report(self, problem: Problem) -> None:
        self._problems.add(problem.in_size(self._edition.size.name))

    # Pieces.

    def _lay_out(self, piece: CutPiece) -> None:
        self._pieces[piece.name] = piece
        for key in piece.keys or ("",):
            thing = self._memory.cut(piece, key, self._materials.get(key))
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
                        self._asking.certain = False

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
        closes = self._taking.closes(statement)
        times = self._taking.times(statement, verb)
        if times == 0:
            return
        places = tuple(self._taking.places(statement, verb, times, closes=closes))
        used, taken, short = self._taking.take(places)
        cause = next((each.thing.cause for each in taken if each.thing.cause is not None), None)
        reckoning = Noting(self._reckoning)
        work = Work(
            statement=statement,
            used=used,
            times=times,
            reckoning=reckoning,
            problems=Problems(),
            systems=self._systems,
            closes=closes,
            has_seam=self._evaluator.defines(SEAM),
        )
        sound = cause is None and not short
        outcome = self._memory.outcome(work, self._reckoning) if sound else None
        if outcome is None:
            outcome = self._work_out(verb, work, cause, short=short)
            if sound and not work.problems.found():
                self._memory.remember(outcome, reckoning.told)
        else:
            self._remember(outcome.work)
        if outcome.thing is None:
            self._finish(statement, places, used, taken)
        else:
            self._put(outcome, outcome.thing, verb, taken)

    def _work_out(self, verb: Verb, work: Work, cause: Span | None, *, short: bool) -> Outcome:
        """Let a verb do its work, and hold what it made; what goes wrong is reported."""
        found = work.problems
        try:
            made = verb.ways[work.statement.pattern](work)
            seams_hold(work)
            self._remember(work)
            if cause is None and (short or _wrong(found)):
                cause = work.span
            thing = None if verb.result is ResultRule.NONE else self._made(work, verb, made, cause)
            return Outcome(work, made, thing)
        except Refused as refused:
            if refused.problem is not None:
                found.add(refused.problem)
            raise Refused from None
        finally:
            # What goes wrong with a thing that was made although something was wrong follows from that.
            before = None if cause == work.span else cause
            for problem in found.found():
                self._report(problem if before is None else replace(problem, cause=before))

    # Results.

    def _remember(self, work: Work) -> None:
        self._not_measured += work.not_measured
        self._filled += work.filled
        self._meetings += work.meetings
        self._folds |= work.folded
        self._seams += [Seam(self._step, length, work.times, work.span) for length in work.seams]

    def _made(self, work: Work, verb: Verb, made: Made, cause: Span | None) -> Thing:
        """The thing that a verb made, with what is remembered of what it was made of."""
        behind = [u for slot, us in work.used.items() for u in us if not made.of or slot in made.of]
        rows = tuple(dict.fromkeys(row for u in behind for row in u.thing.rows))
        before = sum(u.thing.gaps for u in behind)
        gaps = before + work.has("gap") if made.gaps is None else made.gaps
        every = [u.thing for us in work.used.values() for u in us]
        arrangement = Arrangement(made.arrange, tuple(thing.arrangement for thing in every))
        directed = made.directed or any(thing.directed for thing in every)
        thing = Thing(made.shape, arrangement, directed, gaps, rows, cause)
        problem = hold_made(work, thing, self._result_name(work.statement, verb))
        if problem is not None:
            raise Refused(problem)
        return thing

    def _put(self, outcome: Outcome, thing: Thing, verb: Verb, taken: tuple[Taken, ...]) -> None:
        """Put what was made into the stock."""
        statement, times = outcome.work.statement, outcome.work.times
        name = self._result_name(statement, verb)
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
        self._events.append(Event(self._step, statement, taken, stood, thing.arrangement))

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
        articles = [place for place in places if place.slot == "things"]
        for place, each in zip(articles, used["things"], strict=True):
            for problem in hold_finished(each.name, each.thing, place.span, self._systems):
                self._report(problem)
            self._finished.append(Finished(each.name, place.in_all, each.thing, self._step, place.span))
        self._events.append(Event(self._step, statement, taken, None, NO_ARRANGEMENT))

    def _hold_leftovers(self) -> None:
        for name, count, thing in self._stock.sewn_left():
            last = next(state for state in reversed(self._stock.states) if state.name == name)
            under = left_out_with(name, self._edition, self._way)
            self._report(
                ThingLeftOver(
                    span=last.span,
                    name=name,
                    left=count,
                    under=under,
                    cause=thing.cause,
                    labels=where_left_out(under),
                )
            )


def _wrong(found: Problems) -> bool:
    return any(problem.severity is Severity.ERROR for problem in found.found())
