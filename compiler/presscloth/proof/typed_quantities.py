"""Quantities of materials that an author typed by hand in prose, held against those worked out."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from presscloth.measure import UNITS, Kind, Quantity, System, printed
from presscloth.problems import Label, Problem
from presscloth.proof.size import WorkedSize
from presscloth.proof.subject import Subject
from presscloth.proof.typed import Typed, find
from presscloth.proof.typed_by_hand import place_of, runs
from presscloth.recipe.tree import Material
from presscloth.source import Span

_BUYS = re.compile(r"\b(needs?|needed|buy|bought|takes?|enough|wants?|requires?|uses?)\b", re.IGNORECASE)
_OF = re.compile(r"\s+of\s+(?P<what>[^.;:()]*)", re.IGNORECASE)
_NEAR = 4
"""So many words after `of` may name the material: `half a yard of good plain cotton`."""
_TELLS = 4
"""A word of fewer letters than this does not tell one material from another."""


class TypedQuantityTooSmall(Problem):
    """A quantity of a material that is typed by hand in prose does not hold the pieces.

    Somebody buys what the text says, and cannot cut everything from it.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 60 cm (24 in) | 60 cm (24 in) |

        ## Before you begin

        You need about half a yard of cotton.

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 60 cm (24 in) | 60 cm (24 in) |

        ## Before you begin

        You need {buy A} of cotton.
    """

    key: str
    material: str
    need: str
    buy: str

    def message(self) -> str:
        return (
            f"`{self.span.text}` of {self.material} is too little: "
            f"the pieces take {self.need}, and {self.buy} is bought"
        )

    def hint(self) -> str:
        return f"write `{{buy {self.key}}}`, which follows every size"


def hold(subject: Subject, size: WorkedSize) -> Iterator[Problem]:
    """Hold what prose outside the steps says is needed, against what the layouts of this size need.

    Nothing is laid out for a recipe whose prose types no quantity. A name that fits several materials
    is held against the one that needs least.
    """
    for run in subject.told:
        if run.step is not None:
            continue
        for text, places in runs(run.of):
            if not _BUYS.search(text):
                continue
            for typed in find(text):
                meant = _meant(text[typed.end :], subject.recipe.materials)
                if meant:
                    yield from _held(typed, meant, size, place_of(typed, places))


def _meant(rest: str, materials: Sequence[Material]) -> tuple[Material, ...]:
    """The materials that the words after a quantity may name."""
    match = _OF.match(rest)
    if match is None:
        return ()
    said = set(re.findall(r"\w+", match["what"].casefold())[:_NEAR])
    return tuple(material for material in materials if said & _words(material.name))


def _words(name: str) -> set[str]:
    return {word for word in re.findall(r"\w+", name.casefold()) if len(word) >= _TELLS}


def _held(typed: Typed, meant: Sequence[Material], size: WorkedSize, place: Span) -> Iterator[Problem]:
    purchases = [size.buying.purchases[m.key] for m in meant if m.key in size.buying.purchases]
    for value in typed.measures[0]:
        unit = UNITS[value.unit]
        system = unit.system
        known = [p for p in purchases if p.kind is unit.kind and p.kind is not Kind.NUMBER]
        if system is None or not known:
            continue
        least = min(known, key=lambda purchase: purchase.by_system[system].need)
        bought = least.by_system[system]
        if value.high * unit.factor < bought.need:
            yield TypedQuantityTooSmall(
                span=place,
                key=least.material.key,
                material=least.material.name,
                need=_said(bought.need, least.kind, system, bought=False),
                buy=_said(bought.buy, least.kind, system, bought=True),
                labels=(Label(least.material.span, "the material"),),
                systems=(system.value,),
                sizes=(size.edition.size.name,),
            )
            return


def _said(value: Fraction, kind: Kind, system: System, *, bought: bool) -> str:
    return printed(Quantity(kind, value, value), system, bought=bought).text
