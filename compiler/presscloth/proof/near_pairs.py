"""Pairs that agree and yet lie further apart than their halves are round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import ClassVar

from presscloth.measure import UNITS, Kind, System, agreement, convert, decimal_text, measure_text
from presscloth.measure.rounding import half_up
from presscloth.problems import Problem, Severity
from presscloth.proof.stated import stated_measures, steps_of_rounding
from presscloth.proof.subject import Subject
from presscloth.recipe.expression import Measured, Value

METRIC_GRIDS = tuple(map(Fraction, (100, 50, 10, 5, 1)))
"""What a metric half is rounded to, in mm: ten and five centimetres, one, a half, a millimetre."""

INCH_GRIDS = tuple(Fraction(1, part) for part in (1, 2, 4, 8, 16))


class PairCouldBeNearer(Problem):
    """A pair agrees, but neither half is what the other comes to when it is rounded as coarsely.

    15 cm (6 in) is round: 6 in comes to 15.2 cm, and 15 is the nearest whole five centimetres. 86 cm and
    33 1/2 in are neither round nor near: one of the two has a wrong digit, or one was changed and the
    other was not.

    Fails:

        ## Measures
        - drop = 86 cm (33 1/2 in)

    Passes:

        ## Measures
        - drop = 85 cm (33 1/2 in)
    """

    severity: ClassVar[Severity] = Severity.WARNING

    pair: str
    metric: str
    comes_to: str
    imperial: str
    is_near: str

    def message(self) -> str:
        return (
            f"`{self.pair}` is neither round nor near: {self.metric} comes to {self.comes_to}, "
            f"and {self.imperial} to {self.is_near}"
        )

    def hint(self) -> str:
        return "see which of the two is meant, and write the other half to it"


class StepsFarApart(Problem):
    """The halves of a step of rounding are more than twice as large as each other.

    They need not agree: each maker rounds to what the own ruler shows. But one of 5 cm beside one of
    1/4 in is a wrong unit or a wrong digit, and one of the two makers gets another thing.

    Fails:

        ## Measures
        - drop = round up(21 cm (8 1/4 in) to 5 cm (1/4 in))

    Passes:

        ## Measures
        - drop = round up(21 cm (8 1/4 in) to 5 mm (1/4 in))
    """

    severity: ClassVar[Severity] = Severity.WARNING

    step: str
    times: str

    def message(self) -> str:
        return f"one half of the step `{self.step}` is {self.times} times as large as the other"

    def hint(self) -> str:
        return "see whether a unit or a digit is wrong; steps like 5 mm (1/4 in) are nearly alike"


def check(subject: Subject) -> Iterator[Problem]:
    """Hold the halves of stated pairs of lengths against each other: those that are not about, and steps."""
    for step in steps_of_rounding(subject):
        problem = _held_step(step)
        if problem is not None:
            yield problem
    for pair in stated_measures(subject):
        problem = _held(pair)
        if problem is not None:
            yield problem


def _held(pair: Measured) -> Problem | None:
    if pair.second is None or UNITS[pair.first.unit].kind is not Kind.LENGTH:
        return None
    halves = dict(_own(value) for value in (pair.first, pair.second))
    if len(halves) < 2:
        return None
    metric, imperial = halves[System.METRIC], halves[System.IMPERIAL]
    if not metric or not imperial or agreement(metric, imperial, Kind.LENGTH, about=False) is not None:
        return None
    in_mm, in_inches = (
        convert(value, Kind.LENGTH, system)
        for value, system in ((imperial, System.METRIC), (metric, System.IMPERIAL))
    )
    grids = _grid(metric, METRIC_GRIDS), _grid(imperial, INCH_GRIDS)
    if abs(metric - in_mm) <= grids[0] / 2 or abs(imperial - in_inches) <= grids[1] / 2:
        return None
    return PairCouldBeNearer(
        span=pair.span,
        pair=pair.span.quoted,
        metric=measure_text(metric / 10, "cm"),
        comes_to=measure_text(half_up(in_inches, grids[1]), "in"),
        imperial=measure_text(imperial, "in"),
        is_near=measure_text(half_up(in_mm, grids[0]) / 10, "cm"),
    )


def _held_step(step: Measured) -> Problem | None:
    if step.second is None:
        return None
    halves = dict(_own(value) for value in (step.first, step.second))
    if len(halves) < 2 or not all(halves.values()):
        return None
    metric = halves[System.METRIC]
    other = convert(halves[System.IMPERIAL], UNITS[step.first.unit].kind, System.METRIC)
    times = max(metric, other) / min(metric, other)
    return (
        StepsFarApart(span=step.span, step=step.span.quoted, times=decimal_text(times, 1))
        if times > 2
        else None
    )


def _own(value: Value) -> tuple[System, Fraction]:
    unit = UNITS[value.unit]
    return unit.system, value.value * unit.factor


def _grid(value: Fraction, grids: Sequence[Fraction]) -> Fraction:
    """The coarsest grid on which a value lies; the finest where it lies on none."""
    return next((grid for grid in grids if value % grid == 0), grids[-1])
