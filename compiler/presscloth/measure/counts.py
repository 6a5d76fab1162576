"""Counts: how many, the same number whichever system the maker follows."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.measure.quantity import Kind, Quantity
from presscloth.measure.rounding import half_up, same_number


class WhyNot(Enum):
    """What keeps a quantity from being a count."""

    NOT_A_NUMBER = "not a number"
    DIFFERS = "differs between the systems"
    NOT_WHOLE = "not whole"


@dataclass(frozen=True, slots=True)
class NotACount:
    """A quantity that cannot say how many; both its values stand in `quantity`."""

    why: WhyNot
    quantity: Quantity


def as_count(q: Quantity) -> int | NotACount:
    """Take a plain number that is whole and equal in both systems as a count, which may be below nothing."""
    if q.kind is not Kind.NUMBER:
        return NotACount(WhyNot.NOT_A_NUMBER, q)
    if not same_number(q.metric, q.imperial, rooted=q.rooted):
        return NotACount(WhyNot.DIFFERS, q)
    nearest = int(half_up(q.metric, Fraction(1)))
    if not same_number(q.metric, Fraction(nearest), rooted=q.rooted):
        return NotACount(WhyNot.NOT_WHOLE, q)
    return nearest
