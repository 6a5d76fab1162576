"""What a page needs to follow the reader's choices in one size."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from presscloth.drawing.tree import Drawing
from presscloth.frozen import dataclass
from presscloth.handout.tree import Handout
from presscloth.measure import UNITS, Kind, Quantity, System
from presscloth.measure.following import Following, Guard

STEPS: Mapping[tuple[Kind, System], Fraction] = {
    (Kind.LENGTH, System.METRIC): Fraction(1),
    (Kind.LENGTH, System.IMPERIAL): Fraction(1, 8),
    (Kind.WEIGHT, System.METRIC): Fraction(5),
    (Kind.WEIGHT, System.IMPERIAL): Fraction(1, 4),
    (Kind.NUMBER, System.METRIC): Fraction(1),
    (Kind.NUMBER, System.IMPERIAL): Fraction(1),
}
"""The steps in which a reader types: mm, 1/8 in, 5 g, 1/4 oz, whole numbers."""


@dataclass(frozen=True, slots=True)
class Offer:
    """A measure that the reader may choose between `least` and `most`; the recipe's own value is `own`.

    `label` is its name in the language of the handout; `units` are those in which it is typed: the
    author's own where the value is stated.
    """

    name: str
    label: str
    note: str
    own: Quantity
    least: Quantity
    most: Quantity
    about: bool
    units: Mapping[System, str]

    @property
    def kind(self) -> Kind:
        return self.own.kind

    def in_unit(self, system: System, quantity: Quantity) -> Fraction:
        """A value as the number that is typed for it."""
        return quantity[system] / self.factor(system)

    def factor(self, system: System) -> Fraction:
        unit = self.units[system]
        return UNITS[unit].factor if unit else Fraction(1)

    def step(self, system: System) -> Fraction:
        """From one value that a reader would type to the next, in mm, in, g, oz or as a number."""
        return STEPS[self.kind, system]


@dataclass(frozen=True, slots=True)
class Taken:
    """What a typed value is in both systems (mm, in, g, oz or a number).

    `stated` are the systems in which it stands as an author would state it: the one in which it was
    typed, or both where they are a pair; elsewhere it was carried over.
    """

    metric: Fraction
    imperial: Fraction
    stated: tuple[System, ...]

    def __getitem__(self, system: System) -> Fraction:
        return self.metric if system is System.METRIC else self.imperial


@dataclass(frozen=True, slots=True)
class DrawnWay:
    """How one drawing, or the drawings of the pieces together, are drawn as long as the guards hold."""

    guards: tuple[Guard, ...]
    drawings: tuple[Drawing, ...]


@dataclass(frozen=True, slots=True)
class Way:
    """One way of reckoning, as long as its guards hold.

    `handout` has marked texts wherever a number follows the choice; it is None where the choice breaks
    something, and `broken` says what, in marked texts too. `pieces` are the ways of drawing the
    pieces, `steps` those of each drawing in the steps, in the order of the page.
    """

    guards: tuple[Guard, ...]
    handout: Handout | None
    broken: tuple[str, ...]
    pieces: tuple[DrawnWay, ...]
    steps: tuple[tuple[DrawnWay, ...], ...]


@dataclass(frozen=True)
class Followable:
    """A size with what the reader may choose in it; the first way is that of the recipe's own values."""

    size: str
    offers: tuple[Offer, ...]
    following: Following
    ways: tuple[Way, ...]


Choice = tuple[Taken, ...]
"""A value for each offer of a size."""
