"""Working a size out for one choice, and keeping the way of the reckoning."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from presscloth.drawing.deeds import Deed
from presscloth.drawing.pieces import draw_pieces
from presscloth.drawing.steps import draw_together
from presscloth.drawing.tree import Drawing
from presscloth.handout.build import Drawn, WorkedOut, make_handout, tongue_in
from presscloth.handout.choosing import Choice, DrawnWay, Offer, Way
from presscloth.handout.sewn import step_figures
from presscloth.handout.templates import template_sets
from presscloth.handout.tree import Figure, Handout, Publisher
from presscloth.measure import UNITS, Kind, Quantity, Stated, System, measure_text, number_text, printed
from presscloth.measure.followed import chosen, worded
from presscloth.measure.following import Chosen, Following, Guard, following
from presscloth.problems import Problem, Problems, Severity
from presscloth.proof import checks, widths
from presscloth.proof.size import WorkedSize, work_out_chosen
from presscloth.tongue import speaking
from presscloth.translation.tree import Translation

STATED = {System.METRIC: "stated in metric", System.IMPERIAL: "stated in imperial"}
"""1 where a value prints as it is stated, nothing where it was carried over."""


class Tracer:
    """Works a size out for one choice after the other; all share their nodes, `now`."""

    def __init__(
        self,
        size: WorkedSize,
        offers: Sequence[Offer],
        handout: Handout,
        publisher: Publisher,
        translation: Translation | None,
    ) -> None:
        self.size = size
        self.now = Following()
        self._offers = offers
        self._publisher = publisher
        self._translation = translation
        self._drawn = _drawn_in(handout)
        self._systems = handout.systems

    def trace(self, choice: Choice) -> Way:
        """The way in which the size is reckoned for a choice, with every guard that it hangs on.

        The handout keeps the drawings of the recipe's own values; those of the choice are drawn beside
        it, each with guards of its own.
        """
        with following(self.now), self.now.aside() as guards:
            problems = Problems()
            worked = work_out_chosen(self.size, quantities(self._offers, choice), problems)
            broken = tuple(dict.fromkeys(problem.message() for problem in errors(worked, problems)))
            if broken:
                return Way(tuple(guards), None, broken, (), ())
            handout = self._handout(worked)
            own = tuple(guards)
            with speaking(tongue_in(self.size.edition.recipe, self._translation)):
                pieces, steps = _drawn(worked, handout, self.now)
            return Way(own, handout, (), pieces, steps)

    def _handout(self, worked: WorkedSize) -> Handout:
        drawn = self._drawn
        if _on_templates(worked) != _on_templates(self.size):
            with speaking(tongue_in(self.size.edition.recipe, self._translation)):
                drawn = replace(drawn, templates=template_sets(worked.edition, self._systems))
        purchases = self.size.buying.purchases
        return make_handout(
            WorkedOut(worked.sewn, worked.evaluator, worked.settled, purchases, drawn, self._translation),
            self._publisher,
        )


def _on_templates(size: WorkedSize) -> tuple[object, ...]:
    """All that shows on the templates of a size, which are the recipe's own as long as it stays the same.

    Drawing them anew holds every number to its value, since templates cannot be followed on a page.
    """
    return tuple(
        (piece.name, piece.keys, piece.count, piece.grain, piece.outline.metric, piece.outline.imperial)
        for piece in size.edition.pieces
        if piece.outline is not None
    )


def _drawn_in(handout: Handout) -> Drawn:
    """The drawings that stand in a handout."""
    steps = {
        step.number: tuple(each for each in step.content if isinstance(each, Figure) and _is_drawn(each))
        for stage in handout.stages
        for step in stage.steps
    }
    return Drawn(handout.pieces, steps, handout.layouts, handout.templates)


def _is_drawn(figure: Figure) -> bool:
    return isinstance(figure.of, Drawing)


def errors(worked: WorkedSize, problems: Problems) -> Iterator[Problem]:
    """What would keep a handout from being written; checks are held only where all else is sound."""
    found = [problem for problem in problems.found() if problem.severity is Severity.ERROR]
    if not found:
        held = (
            *checks.hold(worked.edition, worked.value),
            *widths.hold(worked.edition, worked.evaluator),
        )
        found = [problem for problem in held if problem.severity is Severity.ERROR]
    yield from found


def quantities(offers: Sequence[Offer], choice: Choice) -> Mapping[str, Quantity]:
    """The measures of a choice as followed quantities, by their names."""
    found = {}
    for number, (offer, taken) in enumerate(zip(offers, choice, strict=True)):
        values = {s: chosen(number, s.value, taken[s]) for s in System}
        here = {s: chosen(number, STATED[s], Fraction(s in taken.stated)) for s in System}
        stated = {
            s: worded(stated_text, values[s], here[s], f"{offer.kind.value} {s.value}", offer.units[s])
            for s in System
        }
        found[offer.name] = Quantity(
            offer.kind,
            values[System.METRIC],
            values[System.IMPERIAL],
            about=offer.about,
            stated=None
            if offer.kind is Kind.NUMBER
            else Stated(stated[System.METRIC], stated[System.IMPERIAL]),
            origins=offer.own.origins,
        )
    return found


def variables(choice: Choice) -> Mapping[Chosen, Fraction]:
    """The values of what is chosen, as nodes ask for them."""
    found: dict[Chosen, Fraction] = {}
    for number, taken in enumerate(choice):
        found |= {Chosen(number, STATED[system]): Fraction(system in taken.stated) for system in System}
        found |= {Chosen(number, system.value): taken[system] for system in System}
    return found


def reaches(offers: Sequence[Offer]) -> Mapping[Chosen, tuple[Fraction, Fraction]]:
    """Between which values everything that is chosen lies."""
    found: dict[Chosen, tuple[Fraction, Fraction]] = {}
    for number, offer in enumerate(offers):
        found |= {Chosen(number, STATED[system]): (Fraction(0), Fraction(1)) for system in System}
        found |= {Chosen(number, s.value): (offer.least[s], offer.most[s]) for s in System}
    return found


def stated_text(value: Fraction, stated: Fraction, how: str, unit: str) -> str:
    """A chosen value: as it is stated, or as it is printed where it is carried over."""
    kind, system = how.split()
    if stated and unit:
        return measure_text(value / UNITS[unit].factor, unit)
    if not unit:
        return number_text(value)
    return printed(Quantity(Kind(kind), value, value), System(system)).text


def _drawn(
    worked: WorkedSize, handout: Handout, now: Following
) -> tuple[tuple[DrawnWay, ...], tuple[tuple[DrawnWay, ...], ...]]:
    """The drawings of the pieces and of the steps, in the order in which they stand in the handout."""
    with now.aside() as guards:
        drawings = draw_pieces(worked.edition.pieces, handout.systems)
    pieces = (DrawnWay(tuple(guards), drawings),)
    held: dict[int, tuple[Guard, ...]] = {}

    def draw(deeds: Sequence[Deed]) -> Drawing | None:
        with now.aside() as own:
            drawing = draw_together(deeds)
        held[id(drawing)] = tuple(own)
        return drawing

    figures = step_figures(worked.construction, handout.systems, draw)
    steps = [step.number for stage in handout.stages for step in stage.steps]
    shown = [figure.of for step in steps for figure in figures.get(step, ())]
    return pieces, tuple(
        (DrawnWay(held[id(drawing)], (drawing,)),) for drawing in shown if isinstance(drawing, Drawing)
    )
