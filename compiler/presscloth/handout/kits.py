"""Word a shop's sheet: what many kits of one size take when they are cut together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from presscloth.cutting.buying import Purchase
from presscloth.cutting.demand import Counted
from presscloth.drawing.layouts import draw_sections
from presscloth.frozen import dataclass
from presscloth.handout.bought import layouts_of, verdict, worded
from presscloth.handout.lists import sides
from presscloth.handout.orders import cut_orders
from presscloth.handout.tree import Amount, CutOrder, LayoutRow
from presscloth.handout.wording import amount, form_word, shape_word
from presscloth.measure import Kind, Quantity, System, length, number_text
from presscloth.tongue import counted_number, named

OF_THE_SHOP = length(10, Fraction(9, 2))
"""What is saved is told in whole centimetres and eighths of a yard, never more than it is."""

OF_THE_RULER = length(10, Fraction(1, 8))
"""What is left is told in whole centimetres and eighths of an inch."""


@dataclass(frozen=True, slots=True)
class KitCut:
    """One piece from one material: how many for all kits, its shape and its sides."""

    piece: str
    number: int
    shape: str
    sides: tuple[tuple[str, Amount], ...]


@dataclass(frozen=True, slots=True)
class KitMaterial:
    """One material of all kits: for one kit alone, for all together, and what that saves and leaves.

    `saved` is against as many single kits; it and `left` are None where there is nothing to tell.
    """

    key: str
    name: str
    form: str
    width: Amount | None
    single: Amount
    together: Amount
    saved: Amount | None
    left: Amount | None
    verdict: str
    cuts: tuple[KitCut, ...]
    orders: tuple[CutOrder, ...]
    layouts: tuple[LayoutRow, ...]


@dataclass(frozen=True, slots=True)
class KitSheet:
    """The sheet for `number` kits of one size."""

    slug: str
    title: str
    size: str
    number: int
    optional: bool
    language: str
    systems: tuple[System, ...]
    materials: tuple[KitMaterial, ...]


@dataclass(frozen=True, slots=True)
class Kits:
    """What was worked out: purchases for one kit and for all, by key, and the width of each cloth."""

    number: int
    single: Mapping[str, Purchase]
    together: Mapping[str, Purchase]
    widths: Mapping[str, Quantity]


def kit_materials(kits: Kits, systems: Sequence[System]) -> Iterator[KitMaterial]:
    """The materials in the order of the recipe."""
    for key, together in kits.together.items():
        width = kits.widths.get(key)
        material = together.material
        yield KitMaterial(
            key=key,
            name=named(material.name),
            form=form_word(material.form),
            width=None if width is None else amount(width, systems),
            single=worded(kits.single[key], systems),
            together=worded(together, systems),
            saved=_worded(together.kind, saved(kits, key), systems, bought=True),
            left=_worded(Kind.LENGTH, left(together), systems, bought=False),
            verdict=verdict(together),
            cuts=tuple(_cuts(together, systems)),
            orders=cut_orders({key: together}, systems),
            layouts=tuple(layouts_of(together, systems, draw_sections)),
        )


def saved(kits: Kits, key: str) -> Mapping[System, Fraction]:
    """What is saved of a material against as many kits that are each bought by themselves."""
    one, all_ = kits.single[key].by_system, kits.together[key].by_system
    return {system: kits.number * one[system].buy - all_[system].buy for system in System}


def left(purchase: Purchase) -> Mapping[System, Fraction]:
    """The length that is left whole at the end of the cloth, in mm and in; nothing of other forms."""
    if purchase.kind is not Kind.LENGTH or not any(b.cloths for b in purchase.by_system.values()):
        return dict.fromkeys(System, Fraction(0))
    return {system: bought.buy - bought.need for system, bought in purchase.by_system.items()}


def _worded(
    kind: Kind, values: Mapping[System, Fraction], systems: Sequence[System], *, bought: bool
) -> Amount | None:
    """A saving in the shop's words, or a remainder by the ruler, rounded down, in the systems in which it
    is anything; None where it is nothing."""
    told = dict(values)
    if kind is Kind.LENGTH:
        grid = OF_THE_SHOP if bought else OF_THE_RULER
        told = {system: value // grid[system] * grid[system] for system, value in values.items()}
    some = [system for system in systems if told[system] > 0]
    if not some:
        return None
    if kind is not Kind.NUMBER:
        quantity = Quantity(kind, told[System.METRIC], told[System.IMPERIAL])
        return amount(quantity, some, bought=bought)
    if len({told[system] for system in systems}) == 1:
        return Amount(((counted_number(number_text(told[some[0]])), None),))
    return Amount(tuple((counted_number(number_text(told[system])), system) for system in some))


def _cuts(purchase: Purchase, systems: Sequence[System]) -> Iterator[KitCut]:
    pieces: Counted = purchase.by_system[systems[0]].pieces
    for piece, number in pieces:
        cut_sides = sides(piece, purchase.material.form, systems)
        yield KitCut(named(piece.name), number, shape_word(piece.shape), cut_sides)
