"""The author's own Checks, held in both systems."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import assert_never

from presscloth.edition import Edition
from presscloth.edition.problems import UnlikeMeasures
from presscloth.measure import Kind, Quantity, System, compare, decimal_text, number_text, printed
from presscloth.problems import Problem
from presscloth.proof.prose import ValueAfter
from presscloth.recipe.expression import Broken, Compared, Comparison
from presscloth.recipe.prose import plain
from presscloth.recipe.tree import Check


class CheckFails(Problem):
    """A check of the author's own does not hold.

    The reason that stands beside it says what would go wrong at the sewing table.

    Fails:

        ## Measures
        - gap = 10 cm (4 in)

        ## Checks
        - gap >= 12 cm (4 3/4 in): a hand must pass

    Passes:

        ## Measures
        - gap = 12 cm (4 3/4 in)

        ## Checks
        - gap >= 10 cm (4 in): a hand must pass
    """

    check: str
    left: str
    right: str
    reason: str

    def message(self) -> str:
        why = f" ({self.reason})" if self.reason else ""
        return f"`{self.check}` does not hold: {self.left} against {self.right}{why}"

    def hint(self) -> str:
        return "change one of the two measures, or the check if it asks too much"


class CheckDiffers(Problem):
    """A check holds in one system and fails in the other.

    The makers who follow one of the two handouts would have a thing that does not work.

    Fails:

        ## Measures
        - gap = 10 cm (4 in)

        ## Checks
        - gap <= exactly 101 mm: it lies under the plate

    Passes:

        ## Measures
        - gap = 10 cm (4 in)

        ## Checks
        - gap <= exactly 110 mm: it lies under the plate
    """

    check: str
    left: str
    right: str
    fails_in: str
    holds_in: str
    reason: str

    def message(self) -> str:
        why = f" ({self.reason})" if self.reason else ""
        return (
            f"`{self.check}` holds in {self.holds_in} and fails in {self.fails_in}: "
            f"{self.left} against {self.right}{why}"
        )

    def hint(self) -> str:
        return f"change the {self.fails_in} half of one of the two measures, so that it holds in both"


def hold(edition: Edition, value: ValueAfter) -> Iterator[Problem]:
    """Hold every check that this size has, as things stood in the end."""
    for check in edition.recipe.checks:
        if check.lead.holds_in(edition.size.name) and isinstance(check.compared, Compared):
            yield from (p.in_size(edition.size.name) for p in _hold(check, check.compared, edition, value))


def _hold(check: Check, compared: Compared, edition: Edition, value: ValueAfter) -> Iterator[Problem]:
    left, right = value(compared.left, None), value(compared.right, None)
    margin = None if compared.margin is None else value(compared.margin, None)
    if isinstance(left, Broken) or isinstance(right, Broken) or isinstance(margin, Broken):
        return
    if left.kind is not right.kind or (margin is not None and margin.kind is not left.kind):
        yield UnlikeMeasures(span=compared.span, left=left.kind.value, right=right.kind.value)
        return
    systems = edition.recipe.front.systems
    failing = [s for s in systems if not holds(compared.comparison, left, right, margin, s)]
    if not failing:
        return
    said_left, said_right = zip(*(_said(left, right, system) for system in failing), strict=True)
    fails = CheckFails(
        span=compared.span,
        systems=tuple(system.value for system in failing),
        check=compared.span.quoted,
        left=" / ".join(dict.fromkeys(said_left)),
        right=" / ".join(dict.fromkeys(said_right)),
        reason=plain(check.reason),
    )
    yield fails if len(failing) == len(systems) else _differs(fails, failing[0])


def _differs(fails: CheckFails, system: System) -> CheckDiffers:
    """The same failure, which is there in one system alone."""
    return CheckDiffers(
        span=fails.span,
        systems=fails.systems,
        check=fails.check,
        left=fails.left,
        right=fails.right,
        fails_in=system.value,
        holds_in=system.other.value,
        reason=fails.reason,
    )


def _said(left: Quantity, right: Quantity, system: System) -> tuple[str, str]:
    """Both sides as they are printed; where that shows no difference, to a thousandth."""
    if left.kind is Kind.NUMBER:
        return number_text(left[system]), number_text(right[system])
    first, second = (printed(side.computed(), system).text for side in (left, right))
    if first != second or left.kind is not Kind.LENGTH:
        return first, second
    unit = "mm" if system is System.METRIC else "in"
    return f"{decimal_text(left[system], 3)} {unit}", f"{decimal_text(right[system], 3)} {unit}"


def holds(
    comparison: Comparison, left: Quantity, right: Quantity, margin: Quantity | None, system: System
) -> bool:
    """Whether a comparison holds in one system; lengths within 1/1000 mm of each other are the same."""
    a, b = left[system], right[system]
    if comparison is Comparison.WITHIN:
        assert margin is not None
        return _order(abs(a - b), margin[system], left.kind, system) <= 0
    order = _order(a, b, left.kind, system)
    match comparison:
        case Comparison.EQUAL:
            return order == 0
        case Comparison.LESS:
            return order < 0
        case Comparison.AT_MOST:
            return order <= 0
        case Comparison.MORE:
            return order > 0
        case Comparison.AT_LEAST:
            return order >= 0
    assert_never(comparison)


def _order(a: Fraction, b: Fraction, kind: Kind, system: System) -> int:
    if kind is Kind.LENGTH:
        return compare(a, b, system)
    return (a > b) - (a < b)
