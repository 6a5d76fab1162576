"""The patterns of the verbs, and what may stand in their places.

A pattern is written as an author would write the statement, with places in braces:

    join {parts:things} {way=side by side|top to bottom}
    border {top:thing} with {first:thing}, {second:thing}[, mitred]

`{name:kind}` is a place, `{name=these words|or those}` a choice, `[…]` may be left out. The kinds:

    thing    a name, perhaps with a number before it      number   a plain number
    things   a list of such names                         measure  a measure
    edge     `bottom of front`                            caught   a list of such edges
    edges    `left, right, bottom of apron`, `all of …`   sides    `left, right, bottom`
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from enum import Enum
from functools import cache

from presscloth.frozen import dataclass

KINDS = ("thing", "things", "edge", "edges", "sides", "caught", "measure", "number")


class ResultRule(Enum):
    """Whether a statement with this verb names what it makes."""

    NEEDED = "needed"
    CHANGES_FIRST = "changes its first thing"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class VerbForm:
    """A verb as the recipe reader knows it: its name, its patterns, and whether it names a result."""

    verb: str
    patterns: tuple[str, ...]
    result: ResultRule = ResultRule.NEEDED


@dataclass(frozen=True, slots=True)
class Literal:
    """A word or a comma that must stand there."""

    word: str


@dataclass(frozen=True, slots=True)
class Place:
    name: str
    kind: str


@dataclass(frozen=True, slots=True)
class OneOf:
    name: str
    ways: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Maybe:
    """A part that may be left out; `flag` names it where it holds words only."""

    of: tuple[Element, ...]
    flag: str | None


Element = Literal | Place | OneOf | Maybe

TAILS: Mapping[str, str] = {
    "taking": ", taking {taking:measure}",
    "ease": ", with {ease:measure} ease",
    "gap": ", leaving {gap:measure} open",
    "catching": ", catching {catching:caught}",
}
"""What may stand after a comma at the end of any statement."""

_ELEMENT = re.compile(r"\{(\w+)(?::(\w+)|=([^}]*))\}|\[([^\]]*)\]|,|[^\s,{}\[\]]+")


@cache
def elements(pattern: str) -> tuple[Element, ...]:
    """Read a pattern. A pattern that is not well formed is a fault of the compiler: ValueError."""
    found: list[Element] = []
    for match in _ELEMENT.finditer(pattern):
        name, kind, ways, maybe = match.groups()
        if kind is not None:
            if kind not in KINDS:
                raise ValueError(f"no kind of place: {kind}")
            found.append(Place(name, kind))
        elif ways is not None:
            found.append(OneOf(name, tuple(tuple(way.split()) for way in ways.split("|"))))
        elif maybe is not None:
            inner = elements(maybe)
            words_only = all(isinstance(element, Literal) for element in inner)
            flag = " ".join(e.word for e in inner if isinstance(e, Literal) and e.word != ",")
            found.append(Maybe(inner, flag if words_only else None))
        else:
            found.append(Literal(match.group()))
    return tuple(found)


_EXAMPLES: Mapping[str, str] = {
    "thing": "{}",
    "things": "{}, {}, {}",
    "edge": "{edge} of {}",
    "edges": "left, right of {}",
    "sides": "left, right, bottom",
    "caught": "top of {}",
    "measure": "2 cm (3/4 in)",
    "number": "2",
}
"""What may stand in a place, `{}` for the letter of a thing."""


def spoken(pattern: str) -> str:
    """A pattern as messages show it: an example in each place, choices with a stroke between.

    `join bottom of A to top of B`, `hem left, right of A by 2 cm (3/4 in) [twice]`
    """
    letters, edges = iter("ABCDEFGH"), iter(("bottom", "top") * 4)

    def example(match: re.Match[str]) -> str:
        text = _EXAMPLES[match[1]]
        if "{edge}" in text:
            text = text.replace("{edge}", next(edges))
        return re.sub(r"\{\}", lambda _: next(letters), text)

    shown = re.sub(r"\{\w+:(\w+)\}", example, pattern)
    shown = re.sub(r"\{\w+=([^}]*)\}", lambda match: match[1].replace("|", " | "), shown)
    return shown.replace(" [, ", "[, ")
