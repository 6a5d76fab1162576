"""Expressions: what an author may write where a measure belongs, as a tree.

Every node carries its span. A `Broken` node stands for a part that could not be read and has been
reported; whatever contains it is left alone by later stages.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum
from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.measure import Direction
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Broken:
    """A part that could not be read; its problem has been reported."""

    span: Span


@dataclass(frozen=True, slots=True)
class Number:
    """A plain number; `percent` when it was written with a % sign (the value is already 1/100)."""

    value: Fraction
    span: Span
    percent: bool = False


@dataclass(frozen=True, slots=True)
class Value:
    """A number with its unit as it was typed: `2 1/2 in`. `unit` is the unit's short name."""

    value: Fraction
    unit: str
    span: Span

    @property
    def typed(self) -> str:
        return self.span.text


@dataclass(frozen=True, slots=True)
class Measured:
    """A stated value: a pair `1.25 cm (1/2 in)` or a single value, perhaps `exactly`."""

    first: Value
    second: Value | None
    span: Span
    exactly: bool = False


@dataclass(frozen=True, slots=True)
class Name:
    """A name of one or several words, spelt as the author spelt it."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class PartOf:
    """A measure of a thing: `width of panel`, `finished height of top`, `top of apron`."""

    part: str
    finished: bool
    of: Name
    span: Span


@dataclass(frozen=True, slots=True)
class Bought:
    """`buy A`: the quantity to buy of a material."""

    key: Name
    span: Span


@dataclass(frozen=True, slots=True)
class Pi:
    span: Span


@dataclass(frozen=True, slots=True)
class Negative:
    of: Expression
    span: Span


class Sign(Enum):
    """The four signs of reckoning; `÷` is read as `/`."""

    PLUS = "+"
    MINUS = "−"
    TIMES = "×"
    OVER = "/"


@dataclass(frozen=True, slots=True)
class Reckoned:
    """Two expressions with a sign between."""

    sign: Sign
    left: Expression
    right: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Extreme:
    """`min(…)` or `max(…)`."""

    greatest: bool
    among: tuple[Expression, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Root:
    of: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Rounded:
    """`round up(x to step)`; without a step, to whole ones."""

    direction: Direction
    of: Expression
    step: Expression | None
    span: Span


Expression = (
    Broken | Number | Measured | Name | PartOf | Bought | Pi | Negative | Reckoned | Extreme | Root | Rounded
)


def within(expression: Expression) -> Iterator[Expression]:
    """An expression and everything that stands in it, from left to right."""
    yield expression
    match expression:
        case Negative(of=of) | Root(of=of):
            yield from within(of)
        case Reckoned(left=left, right=right):
            yield from within(left)
            yield from within(right)
        case Extreme(among=among):
            for each in among:
                yield from within(each)
        case Rounded(of=of, step=step):
            yield from within(of)
            if step is not None:
                yield from within(step)
        case Broken() | Number() | Measured() | Name() | PartOf() | Bought() | Pi():
            pass


class Comparison(Enum):
    EQUAL = "="
    LESS = "<"
    AT_MOST = "<="
    AT_LEAST = ">="
    MORE = ">"
    WITHIN = "within"


@dataclass(frozen=True, slots=True)
class Compared:
    """`left <= right`, or `left within M of right`."""

    comparison: Comparison
    left: Expression
    right: Expression
    margin: Expression | None
    span: Span
