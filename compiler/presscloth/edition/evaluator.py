"""Working out expressions in one size, in both systems at once.

A name is settled when it is first needed, and then stays. What an expression says of things
(`width of panel`) is asked of whoever knows the things at that moment.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from typing import assert_never

from presscloth.edition.problems import (
    BecomesNothing,
    BeyondReckoning,
    CountNotWhole,
    DividesByNothing,
    MeasuresNothing,
    NotInThisSize,
    PairDisagrees,
    RootOfNegative,
    StepUnclear,
    UnlikeMeasures,
    WrongKind,
    a,
)
from presscloth.measure import (
    UNITS,
    BeyondReach,
    Disagreement,
    DividedByNothing,
    Fault,
    Kind,
    NoSuchProduct,
    NoSuchQuotient,
    NotACount,
    Quantity,
    RootOfLess,
    RootOfWrongKind,
    StepOfNothing,
    StepWanted,
    System,
    Unlike,
    Vanishes,
    WhyNot,
    add,
    as_count,
    carried_over,
    divide,
    greatest,
    multiply,
    negate,
    number,
    number_text,
    pi,
    root,
    rounded,
    smallest,
    stated_pair,
    stated_step,
    subtract,
)
from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import (
    Bought,
    Broken,
    Expression,
    Extreme,
    Measured,
    Name,
    Negative,
    Number,
    PartOf,
    Pi,
    Reckoned,
    Root,
    Rounded,
    Sign,
    Value,
)
from presscloth.recipe.tree import Definition, Recipe, Size
from presscloth.recipe.words import look_up
from presscloth.source import Span

AskThings = Callable[[PartOf | Bought], Quantity | Broken]
"""Answers what an expression says of a thing, or of what is to be bought; reports what it cannot."""

DEEPEST = 120

_SIGNS = {Sign.PLUS: add, Sign.MINUS: subtract, Sign.TIMES: multiply, Sign.OVER: divide}


class Evaluator:
    """Works out expressions of one recipe in one size.

    `choices` sets measures that are the reader's to choose to other values than stated. `systems`
    are those in which the recipe is published; what goes wrong in the other alone does not matter.
    Problems go to `problems`, marked with the size; a part that is `Broken` has been reported.
    """

    def __init__(
        self,
        recipe: Recipe,
        size: Size,
        ask: AskThings,
        problems: Problems,
        choices: Mapping[str, Quantity] | None = None,
    ) -> None:
        self.systems = recipe.front.systems
        self.outlines = recipe.outlines
        self._size = size
        self._ask = ask
        self._problems = problems
        self._unknown = recipe.unknown
        self._definitions: Mapping[str, Definition | None] = {
            **size.measures,
            **{definition.name.text: definition for definition in recipe.measures},
        }
        self._settled: dict[str, Quantity | Broken] = dict(choices or {})
        self._settling: list[str] = []

    @property
    def settled(self) -> Mapping[str, Quantity]:
        """The measures that have been needed so far, by the author's spelling."""
        return {name: q for name, q in self._settled.items() if isinstance(q, Quantity)}

    @contextmanager
    def reporting_to(self, problems: Problems) -> Iterator[None]:
        """For a while, let problems go elsewhere; what breaks meanwhile breaks again when it is needed."""
        usual, self._problems = self._problems, problems
        before = dict(self._settled)
        try:
            yield
        finally:
            self._problems = usual
            whole = {name: q for name, q in self._settled.items() if isinstance(q, Quantity)}
            self._settled = {**whole, **before}

    def defines(self, name: str) -> bool:
        """Whether this size has a measure of that name."""
        return look_up(name, self._definitions) is not None

    def report(self, problem: Problem) -> Broken:
        self._problems.add(problem.in_size(self._size.name))
        return Broken(problem.span)

    def measure(self, name: Name) -> Quantity | Broken:
        """The value of a name; a name that nothing bears has been reported by the reader."""
        found = look_up(name.text, {spelt: spelt for spelt in self._definitions})
        if found is None:
            return Broken(name.span)
        if found in self._settled:
            return self._settled[found]
        definition = self._definitions[found]
        if definition is None:
            return self.report(NotInThisSize(span=name.span, name=name.text, size=self._size.name))
        if found in self._settling:
            return Broken(name.span)
        if len(self._settling) >= DEEPEST:
            return self.report(BeyondReckoning(span=name.span))
        self._settling.append(found)
        value = self.defined(definition)
        self._settling.pop()
        self._settled[found] = value
        return value

    def defined(self, definition: Definition) -> Quantity | Broken:
        """The value that a definition gives, about where it says so."""
        value = self.value(definition.expression, about=definition.about)
        if isinstance(value, Quantity) and definition.about:
            return replace(value, about=True)
        return value

    def value(self, expression: Expression, *, about: bool = False) -> Quantity | Broken:
        """Work out an expression. `about` widens what a stated pair may differ by."""
        match expression:
            case Broken():
                return expression
            case Number(value=value):
                return number(value)
            case Measured():
                return self._stated(expression, about)
            case Name():
                return self.measure(expression)
            case PartOf(of=of) if of.span in self._unknown:
                return Broken(expression.span)
            case PartOf() | Bought():
                return self._ask(expression)
            case Pi():
                return pi()
            case Negative(of=of):
                inner = self.value(of, about=about)
                return inner if isinstance(inner, Broken) else negate(inner)
            case Reckoned():
                return self._reckoned(expression, about)
            case Extreme(among=among, greatest=most):
                values = [self.value(each, about=about) for each in among]
                good = [value for value in values if isinstance(value, Quantity)]
                if len(good) < len(values):
                    return Broken(expression.span)
                return self._result(greatest(good) if most else smallest(good), expression.span)
            case Root(of=of):
                inner = self.value(of, about=about)
                return inner if isinstance(inner, Broken) else self._result(root(inner), expression.span)
            case Rounded():
                return self._rounded(expression, about)
        assert_never(expression)

    def _stated(self, stated: Measured, about: bool) -> Quantity | Broken:
        first, second = stated.first, stated.second
        if second is None:
            carried = carried_over(
                first.value, first.unit, exactly=stated.exactly, about=about, span=stated.span
            )
            if isinstance(carried, Vanishes) and carried.to not in self.systems:
                return self._stated(replace(stated, exactly=True), about)
            if isinstance(carried, Vanishes):
                return self.report(
                    BecomesNothing(
                        span=stated.span, stated=carried.stated, system=carried.to.value, grid=carried.grid
                    )
                )
            return carried
        metric, imperial = _by_system(first, second)
        pair = stated_pair(
            metric.value, metric.unit, imperial.value, imperial.unit, about=about, span=stated.span
        )
        if isinstance(pair, Disagreement):
            return self.report(PairDisagrees(span=stated.span, disagreement=pair))
        return pair

    def _reckoned(self, expression: Reckoned, about: bool) -> Quantity | Broken:
        left = self.value(expression.left, about=about)
        right = self.value(expression.right, about=about)
        if isinstance(left, Broken) or isinstance(right, Broken):
            return Broken(expression.span)
        result = _SIGNS[expression.sign](left, right)
        if isinstance(result, DividedByNothing):
            divisor = expression.right.span
            return self.report(
                DividesByNothing(
                    span=divisor, divisor=divisor.quoted, systems=tuple(s.value for s in result.systems)
                )
            )
        return self._result(result, expression.span)

    def _rounded(self, expression: Rounded, about: bool) -> Quantity | Broken:
        of = self.value(expression.of, about=about)
        step = None if expression.step is None else self.step(expression.step)
        if isinstance(of, Broken) or isinstance(step, Broken):
            return Broken(expression.span)
        result = rounded(expression.direction, of, step)
        if isinstance(result, Unlike):
            kinds = (result.left.value, result.right.value)
            return self.report(StepUnclear(span=expression.span, kinds=kinds))
        return self._result(result, expression.span)

    def step(self, expression: Expression) -> Quantity | Broken:
        """The value of a step (of rounding, of sale), whose two halves need not agree."""
        match expression:
            case Measured(first=first, second=Value() as second):
                metric, imperial = _by_system(first, second)
                return stated_step(
                    metric.value, metric.unit, imperial.value, imperial.unit, span=expression.span
                )
            case _:
                return self.value(expression)

    def _result(self, result: Quantity | Fault, span: Span) -> Quantity | Broken:
        if isinstance(result, Quantity):
            return result
        return self.report(problem_of(result, span))

    def count(self, expression: Expression, what: str) -> int | Broken:
        """The value as a number of things; `what` names it in messages: ``the number of `strip` ``."""
        value = self.value(expression)
        if isinstance(value, Broken):
            return value
        if len(self.systems) == 1:
            only = value[self.systems[0]]
            value = replace(value, metric=only, imperial=only)
        count = as_count(value)
        if isinstance(count, int) and count >= 0:
            return count
        why = "is less than nothing" if isinstance(count, int) else _why_no_count(count)
        return self.report(CountNotWhole(span=expression.span, what=what, why=why))

    def of_kind(self, expression: Expression, kind: Kind, what: str) -> Quantity | Broken:
        """The value, which must be of a kind; `what` names it in messages."""
        value = self.value(expression)
        if isinstance(value, Broken) or value.kind is kind:
            return value
        return self.report(
            WrongKind(span=expression.span, what=what, found=value.kind.value, wanted=kind.value)
        )


def _by_system(first: Value, second: Value) -> tuple[Value, Value]:
    """The metric half of a pair, and the imperial one."""
    return (first, second) if UNITS[first.unit].system is System.METRIC else (second, first)


def _why_no_count(count: NotACount) -> str:
    match count.why:
        case WhyNot.NOT_A_NUMBER:
            return f"is {a(count.quantity.kind.value)}, and should be a plain number"
        case WhyNot.DIFFERS:
            metric, imperial = number_text(count.quantity.metric), number_text(count.quantity.imperial)
            return f"is {metric} in metric and {imperial} in imperial"
        case WhyNot.NOT_WHOLE:
            return f"comes out as {number_text(count.quantity.metric)}"
    assert_never(count.why)


def problem_of(fault: Fault, span: Span) -> Problem:
    """The problem that a fault in reckoning is, at its place."""
    match fault:
        case Unlike(left=left, right=right):
            return UnlikeMeasures(span=span, left=left.value, right=right.value)
        case NoSuchProduct(left=left, right=right):
            return MeasuresNothing(span=span, what=f"{a(left.value)} times {a(right.value)}")
        case NoSuchQuotient(left=left, right=right):
            return MeasuresNothing(span=span, what=f"{a(left.value)} divided by {a(right.value)}")
        case RootOfWrongKind(kind=kind):
            return MeasuresNothing(span=span, what=f"the root of {a(kind.value)}")
        case DividedByNothing(systems=systems):
            names = tuple(system.value for system in systems)
            return DividesByNothing(span=span, divisor=span.quoted, systems=names)
        case RootOfLess(systems=systems):
            return RootOfNegative(span=span, systems=tuple(system.value for system in systems))
        case StepOfNothing() | StepWanted():
            return StepUnclear(span=span)
        case BeyondReach():
            return BeyondReckoning(span=span)
    assert_never(fault)
