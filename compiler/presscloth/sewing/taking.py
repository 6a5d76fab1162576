"""What a statement takes: how often it is carried out, and which things it uses then."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping

from presscloth.measure import System
from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Broken
from presscloth.recipe.statement import Counted, EdgesOf, Statement
from presscloth.sewing.asking import Asking
from presscloth.sewing.construction import Taken
from presscloth.sewing.number_problems import DoesNotComeOut, NumberOutOfPlace, TooManyAtOnce
from presscloth.sewing.places import Place, all_counted, changed, closes, too_few
from presscloth.sewing.reckoning import Reckoning
from presscloth.sewing.stock import Stock
from presscloth.sewing.stock_problems import NotCutHere, UsedBeforeMade
from presscloth.sewing.things import Thing, Whole
from presscloth.sewing.verbs import Verb
from presscloth.sewing.work import Refused, Used, Work

MOST_AT_ONCE = 2000
"""So many of a thing may a statement name for one result; nobody sews more at once."""

SOME_MATERIAL = Thing(Whole())
"""A material that a statement uses itself: a filling, a thread, a cord."""


class Taking:
    """Takes things out of a stock for statements.

    `materials` are the letters that may stand where a thing does, `without` the names of pieces that
    only other sizes have.
    """

    def __init__(
        self,
        stock: Stock,
        reckoning: Reckoning,
        systems: tuple[System, ...],
        asking: Asking,
        fetch: Callable[[str], None],
        report: Callable[[Problem], None],
        *,
        materials: Collection[str],
        without: Collection[str],
    ) -> None:
        self._stock = stock
        self._reckoning = reckoning
        self._systems = systems
        self._asking = asking
        self._fetch = fetch
        self._report = report
        self._materials = materials
        self._without = without

    def times(self, statement: Statement, verb: Verb) -> int:
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

    def closes(self, statement: Statement) -> bool:
        found = closes(statement, self._stock.called, self._stock.left)
        if isinstance(found, Problem):
            raise Refused(found)
        return found

    def places(self, statement: Statement, verb: Verb, times: int, *, closes: bool) -> Iterator[Place]:
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
        at_once = Work(statement, {}, times, self._reckoning, Problems(), self._systems).whole(slot)
        name = statement.result.name.text if statement.result else ""
        if at_once < 1 or times % at_once:
            raise Refused(
                DoesNotComeOut(span=statement.span, wanted=times, name=name, at_once=max(1, at_once))
            )
        return times // at_once

    def take(
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
                return SOME_MATERIAL
            if place.name in self._without:
                self._report(NotCutHere(span=place.span, name=place.name))
            elif self._asking.certain:
                self._report(UsedBeforeMade(span=place.span, name=place.name))
            return None
        return self._stock.thing(place.name, place.counted.key)
