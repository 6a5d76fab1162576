"""Statements: what stands in a `sew` block, read against the verbs' patterns.

A statement keeps which pattern it was read by and what stood in each of its places; what that
means at the machine is the business of the verb.
"""

from __future__ import annotations

from collections.abc import Mapping

from presscloth.frozen import dataclass
from presscloth.recipe.expression import Broken, Expression, Name
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Counted:
    """A name with the number that may stand before it: `3 block`, `(4 × across) block`, `badge`.

    `count` is None where no number stands. `key` is the material's letter in `A pocket`.
    """

    name: Name
    count: Expression | None
    key: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class EdgesOf:
    """`bottom of front`, `left, right, bottom of apron`, `all of cloth`; edges in the order written."""

    edges: tuple[str, ...]
    of: Counted
    span: Span


@dataclass(frozen=True, slots=True)
class Sides:
    """Edges without a thing: `on left, right, bottom`."""

    edges: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Choice:
    """The words that were chosen where a pattern leaves a choice, or an optional part that is there."""

    words: str
    span: Span


@dataclass(frozen=True, slots=True)
class Things:
    """A list of things, as in `join side strip, badge, side strip side by side`."""

    of: tuple[Counted, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Caught:
    """A list of edges that a seam catches: `top of 2 strap, top of flap`."""

    of: tuple[EdgesOf, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Amount:
    """A measure or a plain number."""

    of: Expression
    span: Span


Slot = Counted | EdgesOf | Sides | Choice | Things | Caught | Amount


@dataclass(frozen=True, slots=True)
class Result:
    """`4 row =`: the name that the statement makes, and how many there are afterwards."""

    name: Name
    count: Expression | None
    span: Span


@dataclass(frozen=True, slots=True)
class Statement:
    """One statement. `verb` is the verb's name, `pattern` the pattern by which it was read.

    `slots` holds what stood in the pattern's places by their names, and likewise what stood after
    a comma at the end (`taking`, `ease`, `gap`, `catching`).
    """

    verb: str
    pattern: str
    result: Result | None
    slots: Mapping[str, Slot]
    span: Span


@dataclass(frozen=True, slots=True)
class SewBlock:
    """A `sew` block; what could not be read is a `Broken` in its place."""

    statements: tuple[Statement | Broken, ...]
    span: Span
