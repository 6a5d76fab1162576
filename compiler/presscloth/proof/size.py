"""Working out one size: its edition, its construction in every way, and what its prose prints."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cached_property
from typing import TYPE_CHECKING

from presscloth.cutting.workshop import PLAIN, Workshop
from presscloth.edition import Edition, Evaluator, make_edition
from presscloth.frozen import dataclass
from presscloth.measure import Quantity
from presscloth.problems import Problem, Problems
from presscloth.proof.measured import of_pieces, of_things, unneeded
from presscloth.proof.prose import Named, Settled, settle
from presscloth.recipe.expression import Bought, Broken, Expression, PartOf
from presscloth.recipe.tree import Recipe, Size
from presscloth.recipe.walking import Told, told
from presscloth.sewing import Construction, Sewn, prove_sewing
from presscloth.sewing.proving import unasked
from presscloth.sewing.shape_problems import NoSuchMeasure, NotYetThere, what_it_is
from presscloth.source import Span

if TYPE_CHECKING:  # nothing is laid out before somebody asks what to buy
    from presscloth.cutting.buying import Purchase
    from presscloth.cutting.demand import Demand


class PrintedDiffers(Problem):
    """A printed measure depends on whether an optional step is done, or on which way is taken.

    One handout is printed for all of them, so that some makers would read a wrong number. Print it
    inside the step that decides it, or name the earlier state of the thing.

    Fails:

        ## Steps
        1. Optional: Trim the cloth.

           ```sew
           trim cloth to 20 cm (8 in) by 20 cm (8 in)
           ```

        2. Hem the cloth, which is {width of cloth} wide.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Optional: Trim the cloth to {20 cm (8 in)}.

           ```sew
           trim cloth to 20 cm (8 in) by 20 cm (8 in)
           ```

        2. Hem the cloth.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    way: str

    def message(self) -> str:
        return f"`{self.span.quoted}` comes out otherwise {self.way}"

    def hint(self) -> str:
        return "print it in the step that decides it, or give the later state a name of its own"


class NotBought(Problem):
    """`buy` names a material of which no quantity is worked out.

    Fails:

        ## Steps
        1. Wash all {buy B} of it.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Wash all {buy A} of it.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    key: str

    def message(self) -> str:
        return f"no quantity is worked out for `{self.key}`"

    def hint(self) -> str:
        return (
            "write the letter of a material that is listed, with its width and the step in which it is sold"
        )


class Buying:
    """What a size asks for in the shop, whichever way its steps are gone through.

    Where the reader has chosen, what was bought before stays: it is `enough` for any choice.
    """

    def __init__(self, sewn: Sewn, workshop: Workshop, enough: Buying | None = None) -> None:
        self.sewn = sewn
        self.workshop = workshop
        self._enough = enough

    @cached_property
    def purchases(self) -> Mapping[str, Purchase]:
        """What to buy of each material, by its key; worked out when it is first asked for."""
        if self._enough is not None:
            return self._enough.purchases
        return self._bought(1, lambda demand: True)

    def kits(self, number: int, *, optional: bool) -> Mapping[str, Purchase]:
        """What to buy for so many articles laid out together, with what is optional or without."""
        found = self._bought(number, lambda demand: optional or not demand.optional)
        return {key: purchase.full() for key, purchase in found.items()}

    def _bought(self, times: int, counts: Callable[[Demand], bool]) -> Mapping[str, Purchase]:
        from presscloth.cutting.buying import Buyer
        from presscloth.cutting.demand import demands
        from presscloth.cutting.terms import Terms

        edition = self.sewn.edition
        quiet = Problems()  # what does not fit is reported by a check of its own
        terms = Terms(edition.evaluator(unasked, quiet, self.sewn.fullest.settled))
        asked = tuple(demand for demand in demands(self.sewn) if counts(demand))
        buyer = Buyer(edition.recipe.materials, asked, terms, self.workshop, times)
        return {purchase.material.key: purchase for purchase in buyer.purchases()}


class Asked:
    """Answers what expressions say of things, as they stood after a step of one construction."""

    def __init__(self, construction: Construction, buying: Buying, problems: Problems) -> None:
        self._construction = construction
        self._buying = buying
        self._step: int | None = None
        edition = construction.edition
        self.evaluator: Evaluator = edition.evaluator(self._answer, problems, construction.settled)

    def value(self, expression: Expression, step: int | None) -> Quantity | Broken:
        """The value of an expression after a step; None: in the end."""
        self._step = step
        return self.evaluator.value(expression)

    def _answer(self, asked: PartOf | Bought) -> Quantity | Broken:
        match asked:
            case Bought(key=key):
                purchase = self._buying.purchases.get(key.text)
                if purchase is None:
                    return self.evaluator.report(NotBought(span=asked.span, key=key.text))
                return purchase.quantity()
            case PartOf(part=part, finished=finished, of=of):
                return self._part(asked, part, of.text, finished=finished)

    def _part(self, asked: PartOf, part: str, name: str, *, finished: bool) -> Quantity | Broken:
        made = self._construction
        stood = made.at(name, self._step)
        if stood is None:
            return self.evaluator.report(NotYetThere(span=asked.span, name=name))
        value = made.part(name, part, finished=finished, step=self._step)
        if value is not None:
            return value
        if stood.thing is None:
            return Broken(asked.span)
        found = what_it_is(stood.thing.shape)
        return self.evaluator.report(NoSuchMeasure(span=asked.span, name=name, part=part, found=found))


@dataclass(frozen=True)
class WorkedSize:
    """One size, worked out.

    `sewn` holds every way through its steps; prose, measures and lists follow the fullest one.
    """

    edition: Edition
    sewn: Sewn
    asked: Asked
    buying: Buying
    settled: Settled
    measures: Mapping[str, Quantity]

    @property
    def construction(self) -> Construction:
        return self.sewn.fullest

    @property
    def evaluator(self) -> Evaluator:
        return self.asked.evaluator

    def value(self, expression: Expression, step: int | None) -> Quantity | Broken:
        return self.asked.value(expression, step)

    @cached_property
    def cut_sizes(self) -> frozenset[str]:
        """The names of the measures that are cut sizes still, of pieces that nothing has changed."""
        last = self.construction.at
        still = (p for p in self.edition.pieces if (s := last(p.name)) is None or s.step == 0)
        return frozenset(of_pieces(tuple(still)))


def work_out(recipe: Recipe, size: Size, problems: Problems, workshop: Workshop = PLAIN) -> WorkedSize:
    """Work out a size, sew it in every way, and settle everything that its prose prints."""
    edition = make_edition(recipe, size, problems, unasked)
    sewn = prove_sewing(edition)
    return _settled(sewn, Buying(sewn, workshop), problems)


def work_out_chosen(size: WorkedSize, choices: Mapping[str, Quantity], problems: Problems) -> WorkedSize:
    """Work a size out again as the reader has chosen; what to buy stays."""
    recipe = size.edition.recipe
    edition = make_edition(recipe, size.edition.size, problems, unasked, choices)
    sewn = prove_sewing(edition, choices, size.sewn.memory)
    return _settled(sewn, Buying(sewn, size.buying.workshop, size.buying), problems)


def _settled(sewn: Sewn, buying: Buying, problems: Problems) -> WorkedSize:
    problems.extend(sewn.problems)
    edition = sewn.fullest.edition
    runs = tuple(told(edition.recipe))
    asked = Asked(sewn.fullest, buying, problems)
    settled = settle(edition, runs, asked.value, problems)
    _hold_ways(edition, buying, runs, settled, problems)
    measures = {
        **unneeded(edition, asked.evaluator, problems),
        **of_pieces(edition.pieces),
        **of_things(sewn.fullest),
    }
    return WorkedSize(edition, sewn, asked, buying, settled, measures)


def _hold_ways(
    edition: Edition, buying: Buying, runs: tuple[Told, ...], settled: Settled, problems: Problems
) -> None:
    """Hold what is printed against every other way in which it is read."""
    told_already: set[Span] = set()
    for other in buying.sewn.constructions[1:]:
        quiet = Problems()
        taken = tuple(run for run in runs if _is_done(run, other))
        now = settle(edition, taken, Asked(other, buying, quiet).value, quiet)
        for span, value in now.items():
            before = settled.get(span)
            if span not in told_already and before is not None and not _same(before, value):
                told_already.add(span)
                problems.add(PrintedDiffers(span=span, way=other.way.words, sizes=(edition.size.name,)))


def _is_done(run: Told, construction: Construction) -> bool:
    """Whether a run of prose is read by those who go this way."""
    if run.step is None or run.part is None:
        return True
    return construction.way.takes(run.step) and construction.way.takes(run.part)


def _same(one: Quantity | Named, other: Quantity | Named) -> bool:
    if isinstance(one, Named) or isinstance(other, Named):
        return one == other
    return (one.kind, one.metric, one.imperial) == (other.kind, other.metric, other.imperial)
