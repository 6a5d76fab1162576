"""The order of cutting for what is cut in strips: `Cut 3 strips 12.5 cm (5 in) wide; from each, …`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from presscloth.cutting.buying import Purchase
from presscloth.cutting.demand import Counted
from presscloth.cutting.parts import Way
from presscloth.cutting.pieces import length_of
from presscloth.cutting.strip_list import CutStrips, strips_of
from presscloth.handout.bought import optional_words
from presscloth.handout.tree import Amount, CutOrder, Inline, Text
from presscloth.handout.wording import amount
from presscloth.measure import Kind, Quantity, System
from presscloth.recipe.tree import Shape
from presscloth.tongue import listed, many, named, say

WIDTH = "\0"
"""Stands for the width while a line is worded, since a width is more than a text."""


def cut_orders(purchases: Mapping[str, Purchase], systems: Sequence[System]) -> tuple[CutOrder, ...]:
    """The orders of all materials that are cut in strips; one for both systems where they are alike."""
    found: list[CutOrder] = []
    for purchase in purchases.values():
        if purchase.way is not Way.STRIPS:
            continue
        plainly = named(purchase.material.name)
        with_it = f"{plainly}, {optional_words(purchase)}"
        found += _orders(purchase.to_cut(), systems, with_it if purchase.with_room else plainly)
        if purchase.with_optional:
            found += _orders(purchase.full(), systems, with_it)
    return tuple(found)


def _orders(purchase: Purchase, systems: Sequence[System], name: str) -> Iterator[CutOrder]:
    strips = {system: strips_of(purchase.by_system[system].cloths) for system in systems}
    alike = len({tuple((each.number, each.pieces) for each in found) for found in strips.values()}) == 1
    for group in [tuple(systems)] if alike else [(system,) for system in systems]:
        pieces = purchase.by_system[group[0]].pieces
        rows = zip(*(strips[system] for system in group), strict=True)
        yield CutOrder(
            key=purchase.material.key,
            material=name,
            system=None if alike else group[0],
            lines=tuple(_line(row, group, pieces) for row in rows),
        )


def _line(row: Sequence[CutStrips], systems: Sequence[System], pieces: Counted) -> tuple[Inline, ...]:
    first = row[0]
    shapes = {piece.name: piece.shape for piece, _ in pieces}
    pieces_said = listed([_given(named(name), count, shapes[name]) for name, count in first.pieces])
    words = many(
        "Cut {n} strip {width} wide; from it, cut {pieces}.",
        "Cut {n} strips {width} wide; from each, cut {pieces}.",
        first.number,
        width=WIDTH,
        pieces=pieces_said,
    )
    before, after = words.split(WIDTH)
    return Text(before), _wide(row, systems), Text(after)


def _given(name: str, count: int, shape: Shape) -> str:
    """What is cut from a strip; a square is cut into triangles afterwards."""
    match shape:
        case Shape.HALF_SQUARE:
            return many(
                "{n} square for {piece}, cut across into two",
                "{n} squares for {piece}, cut across into two",
                count,
                piece=name,
            )
        case Shape.QUARTER_SQUARE:
            return many(
                "{n} square for {piece}, cut across both ways into four",
                "{n} squares for {piece}, cut across both ways into four",
                count,
                piece=name,
            )
        case _:
            return say("{count} {piece}", count=count, piece=name)


def _wide(row: Sequence[CutStrips], systems: Sequence[System]) -> Amount:
    heights = {system: length_of(strips.height, system) for strips, system in zip(row, systems, strict=True)}
    some = next(iter(heights.values()))
    metric, imperial = (heights.get(system, some) for system in (System.METRIC, System.IMPERIAL))
    return amount(Quantity(Kind.LENGTH, metric, imperial, physical=True), systems, cut=True)
