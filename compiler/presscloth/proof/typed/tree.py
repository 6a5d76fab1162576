"""What was found typed by hand in running text."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from presscloth.frozen import dataclass


class Nearness(Enum):
    """How closely the words mean what they say."""

    EXACT = "exact"
    ABOUT = "about"
    SCANT = "scant"
    GENEROUS = "generous"


@dataclass(frozen=True, slots=True)
class Value:
    """A value in one system: `2-3 cm` goes from 2 to 3; where no range is typed both ends are equal.

    `unit` is one of mm, cm, m, in, ft, yd, g, kg, oz, lb.
    """

    unit: str
    low: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Typed:
    """A run of text, from `start` up to `end`, that speaks of measures.

    `measures` has one entry for each length of the run: one for `1.25cm (1/2 in)`, two for
    `20 x 30 cm (8 x 12 in)`. An entry holds one value, or two that claim to be the same measure in
    the two systems, in the order in which they are typed.
    """

    start: int
    end: int
    measures: tuple[tuple[Value, ...], ...]
    nearness: Nearness

    @property
    def about(self) -> bool:
        """True where the words leave some room: about, roughly, scant, generous, or so."""
        return self.nearness is not Nearness.EXACT

    def pairs(self) -> tuple[tuple[Value, Value], ...]:
        """What must agree: each measure that is typed in both systems."""
        return tuple((one[0], one[1]) for one in self.measures if len(one) == 2)


@dataclass(frozen=True, slots=True)
class TypedCount:
    """A number of things typed by hand: `count` of `name`, spelled as the recipe spells it.

    `definite` is true where the words speak of all there are (`the 16 blocks`, `both handles`),
    false where they take some (`take 2 blocks`). The place covers the number and the name.
    """

    start: int
    end: int
    count: int
    name: str
    definite: bool
