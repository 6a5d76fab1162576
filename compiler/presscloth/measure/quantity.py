"""What is measured: numbers, lengths, areas and weights, each with a value in both systems."""

from __future__ import annotations

from dataclasses import replace
from enum import Enum
from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.source import Span


class System(Enum):
    """A measuring system. Every recipe is worked out in both, each exact in itself."""

    METRIC = "metric"
    IMPERIAL = "imperial"

    @property
    def other(self) -> System:
        return System.IMPERIAL if self is System.METRIC else System.METRIC


class Kind(Enum):
    """What sort of thing a quantity measures; the value is the word that messages use."""

    NUMBER = "number"
    LENGTH = "length"
    AREA = "area"
    WEIGHT = "weight"


@dataclass(frozen=True, slots=True)
class Stated:
    """How the author wrote a value, tidied (`1½"` is `1 1/2 in`); None where it was carried over."""

    metric: str | None
    imperial: str | None

    def __getitem__(self, system: System) -> str | None:
        return self.metric if system is System.METRIC else self.imperial


@dataclass(frozen=True, slots=True)
class Quantity:
    """One quantity, worked out twice.

    `metric` is in mm, mm² or g, `imperial` in in, in² or oz; a number has a value in each system
    too, since a ratio of two lengths may differ. `stated` is there only for a value that stands in
    the recipe as it is, `origins` are the places of all stated values that it was worked out from.
    `about` marks a measure that need not be exact, `physical` one that holds a value stated as
    `exactly` (a stitch field, a buckle), `rooted` one into which a root or pi entered.
    """

    kind: Kind
    metric: Fraction
    imperial: Fraction
    about: bool = False
    physical: bool = False
    rooted: bool = False
    stated: Stated | None = None
    origins: tuple[Span, ...] = ()

    def __getitem__(self, system: System) -> Fraction:
        return self.metric if system is System.METRIC else self.imperial

    def computed(self) -> Quantity:
        """The same amount, no longer as the author wrote it."""
        return self if self.stated is None else replace(self, stated=None)


def number(value: Fraction | int) -> Quantity:
    return Quantity(Kind.NUMBER, Fraction(value), Fraction(value))


def length(metric: Fraction | int, imperial: Fraction | int) -> Quantity:
    """A length from millimetres and inches."""
    return Quantity(Kind.LENGTH, Fraction(metric), Fraction(imperial))
