"""Stated values held against each other: one distance should be said in one way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import chain
from typing import ClassVar

from presscloth.edition import statements
from presscloth.measure import UNITS, Quantity, System, agreement, carried_over, measure_text, printed
from presscloth.problems import Label, Problem, Severity
from presscloth.proof.subject import Subject
from presscloth.recipe.expression import Compared, Expression, Measured, Rounded, Value, within
from presscloth.recipe.naming import definitions
from presscloth.recipe.outline import expressions
from presscloth.recipe.prose import Measure
from presscloth.recipe.statement import Amount, Counted, Slot, Things
from presscloth.recipe.walking import inlines


class CarriedOverElsewhere(Problem):
    """A single value is carried over to something else than the same value in a pair.

    The same length would be cut as two lengths in the other system, and what is cut from the one
    will not meet what is cut from the other. State it once, give it a name, and use the name.

    Fails:

        ## Measures
        - band = 10 cm (4 in)
        - strip = 10 cm

    Passes:

        ## Measures
        - band = 10 cm (4 in)
        - strip = band
    """

    severity: ClassVar[Severity] = Severity.WARNING
    single: str
    carried: str
    pair: str

    def message(self) -> str:
        return f"`{self.single}` is carried over to {self.carried}, and elsewhere it stands as `{self.pair}`"

    def hint(self) -> str:
        return f"write `{self.pair}` here too, or give the measure a name and use the name"


class SaidInTwoWays(Problem):
    """The same distance is said with two different pairs.

    A reader who compares the two wonders which is right, and one who changes systems between them
    cuts two lengths. Give it a name, or write the same pair.

    Fails:

        ## Steps
        1. Press {1.2 cm (1/2 in)} under, and again {1.3 cm (1/2 in)}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Press {1.2 cm (1/2 in)} under, and again {1.2 cm (1/2 in)}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING
    here: str
    earlier: str

    def message(self) -> str:
        return f"`{self.here}` is said here, and `{self.earlier}` elsewhere, for the same distance"

    def hint(self) -> str:
        return "write the same pair in both places, or give the measure a name"


def check(subject: Subject) -> Iterator[Problem]:
    """Hold single values against pairs, and pairs in what is read against each other."""
    everywhere = [*_in_definitions(subject), *_in_what_is_read(subject)]
    yield from _carried(everywhere)
    yield from _two_ways(_in_what_is_read(subject))
    for expression in _formulas(subject):
        yield from _two_ways([m for m in within(expression) if isinstance(m, Measured)])


def stated_measures(subject: Subject) -> list[Measured]:
    """Every stated value of a recipe that need not be about: in formulas, prose, statements and Checks."""
    recipe = subject.recipe
    about = {d.expression.span for d in definitions(recipe.sizes, recipe.measures) if d.about}
    formulas = (each for each in _formulas(subject) if each.span not in about)
    return [*_stated(formulas), *_in_what_is_read(subject)]


def steps_of_rounding(subject: Subject) -> Iterator[Measured]:
    """The stated steps to which formulas round."""
    for expression in _formulas(subject):
        for part in within(expression):
            if isinstance(part, Rounded) and isinstance(part.step, Measured):
                yield part.step


def _formulas(subject: Subject) -> Iterator[Expression]:
    recipe = subject.recipe
    for definition in definitions(recipe.sizes, recipe.measures):
        yield definition.expression
    for piece in recipe.pieces:
        yield from (side.expression for side in (piece.width, piece.height) if side is not None)
        if piece.allowance is not None:
            yield piece.allowance
    for outline in recipe.outlines:
        yield from expressions(outline)


def _in_definitions(subject: Subject) -> list[Measured]:
    return _stated(_formulas(subject))


def _in_what_is_read(subject: Subject) -> list[Measured]:
    """Values in braces, in statements and in Checks."""
    braces = (
        inline.expression for run in subject.told for inline in inlines(run.of) if isinstance(inline, Measure)
    )
    in_blocks = (
        expression
        for step in subject.recipe.steps
        for part in step.parts
        for statement in statements(part.content)
        for slot in statement.slots.values()
        for expression in _in_slot(slot)
    )
    checked = (
        side
        for check in subject.recipe.checks
        if isinstance(check.compared, Compared)
        for side in (check.compared.left, check.compared.right, check.compared.margin)
        if side is not None
    )
    return _stated(chain(braces, in_blocks, checked))


def _in_slot(slot: Slot) -> Iterator[Expression]:
    match slot:
        case Amount(of=expression):
            yield expression
        case Counted(count=count) if count is not None:
            yield count
        case Things(of=things):
            for thing in things:
                yield from _in_slot(thing)
        case _:
            return


def _stated(expressions: Iterator[Expression]) -> list[Measured]:
    """Stated values that are measures; the steps of rounding are none."""
    found = []
    for expression in expressions:
        steps = {m for r in within(expression) if isinstance(r, Rounded) and r.step for m in within(r.step)}
        found += [m for m in within(expression) if isinstance(m, Measured) and m not in steps]
    return found


def _own(value: Value) -> tuple[System, Fraction]:
    """A value in mm, in, g or oz, with its system."""
    unit = UNITS[value.unit]
    return unit.system, value.value * unit.factor


def _carried(stated: Sequence[Measured]) -> Iterator[Problem]:
    pairs = [m for m in stated if m.second is not None]
    for single in stated:
        if single.second is not None or single.exactly:
            continue
        first = single.first
        carried = carried_over(first.value, first.unit, span=single.span)
        if not isinstance(carried, Quantity):
            continue
        system, value = _own(first)
        for pair in pairs:
            assert pair.second is not None
            halves = dict((_own(pair.first), _own(pair.second)))
            same_kind = UNITS[pair.first.unit].kind is carried.kind
            if same_kind and halves[system] == value and halves[system.other] != carried[system.other]:
                yield CarriedOverElsewhere(
                    span=single.span,
                    single=single.span.quoted,
                    carried=printed(carried, system.other).text,
                    pair=_as_pair(pair),
                    labels=(Label(pair.span, "stated as a pair here"),),
                )
                break


def _two_ways(stated: Sequence[Measured]) -> Iterator[Problem]:
    seen: dict[tuple[System, Fraction], Measured] = {}
    for pair in stated:
        if pair.second is None or not _may_agree(pair.first, pair.second):
            continue
        halves = {_own(pair.first): pair, _own(pair.second): pair}
        for half in halves:
            earlier = seen.setdefault(half, pair)
            if earlier.second is None:
                continue
            if {_own(earlier.first), _own(earlier.second)} != set(halves):
                label = Label(earlier.span, "said here in another way")
                yield SaidInTwoWays(
                    span=pair.span, here=_as_pair(pair), earlier=_as_pair(earlier), labels=(label,)
                )
                break


def _may_agree(first: Value, second: Value) -> bool:
    """Whether two halves are near enough for a pair; one that disagrees is reported for that alone."""
    values = {UNITS[half.unit].system: _own(half)[1] for half in (first, second)}
    kind = UNITS[first.unit].kind
    return agreement(values[System.METRIC], values[System.IMPERIAL], kind, about=True) is None


def _as_pair(pair: Measured) -> str:
    assert pair.second is not None
    first = measure_text(pair.first.value, pair.first.unit)
    return f"{first} ({measure_text(pair.second.value, pair.second.unit)})"
