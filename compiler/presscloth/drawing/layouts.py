"""Draw a cutting layout: the cloth with its selvedges, the pieces as they lie, what is left hatched.

The cloth lies across the page, its selvedges above and below, as it lies on a long table.
"""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.cutting.buying import Purchase
from presscloth.cutting.laid import Lying, OnCloth
from presscloth.cutting.pieces import length_of
from presscloth.drawing.dimensions import LETTERS, across, breadth, down, name_in
from presscloth.drawing.tree import Area, Arrow, Drawing, Ink, Line, Shape
from presscloth.measure import Kind, Quantity, System, printed

WIDEST, TALLEST = 70.0, 48.0
MARGIN = 1.5


def draw_layouts(purchase: Purchase, system: System) -> tuple[Drawing, ...]:
    """One drawing for each length or sheet of cloth, in the sizes of one system."""
    drawn = [layout for layout in purchase.by_system[system].cloths if layout.pieces]
    return tuple(
        _layout(purchase, layout, system, number if len(drawn) > 1 else None)
        for number, layout in enumerate(drawn, start=1)
    )


def _layout(purchase: Purchase, layout: OnCloth, system: System, number: int | None) -> Drawing:
    scale = min(WIDEST / layout.length, TALLEST / layout.width)
    long, wide = layout.length * scale, layout.width * scale
    x, y = MARGIN, MARGIN
    corners = ((x, y), (x + long, y), (x + long, y + wide), (x, y + wide))
    shapes: list[Shape] = [Area(corners, Ink.WASTE)]
    legend: list[str] = []
    for piece in layout.pieces:
        shapes += _piece(piece, scale, (x, y), legend)
    shapes += [Line(corners[:2], Ink.SELVEDGE), Line(corners[2:], Ink.SELVEDGE)]
    words = said(layout.length, system), said(layout.width, system)
    shapes += across(x, x + long, y + wide + 3.5, words[0])
    shapes += down(y, y + wide, x + long + 3.5, words[1])
    shapes.append(Arrow((x, y + wide + 10), (x + min(long, 14.0), y + wide + 10), Ink.GRAIN, both=True))
    name = f"{purchase.material.key} {purchase.material.name}"
    which = f", {number}" if number is not None else ""
    return Drawing(
        width=x + long + 6 + breadth(words[1]),
        height=y + wide + 13,
        shapes=tuple(shapes),
        alt=alt(name, layout, words),
        caption="; ".join([f"{name}{which}", *dict.fromkeys(legend)]),
    )


def said(units: int, system: System) -> str:
    """A length in 1/80 mm as it is printed, rounded up to what a ruler shows."""
    value = length_of(units, system)
    return printed(Quantity(Kind.LENGTH, value, value, physical=True), system, cut=True).text


def _piece(piece: Lying, scale: float, origin: tuple[float, float], legend: list[str]) -> Iterator[Shape]:
    corners = tuple((origin[0] + y * scale, origin[1] + x * scale) for x, y in piece.corners)
    left, top = min(x for x, _ in corners), min(y for _, y in corners)
    long, wide = max(x for x, _ in corners) - left, max(y for _, y in corners) - top
    yield Area(corners, Ink.CLOTH, Ink.CUT)
    mark = str(piece.part + 1)
    name, told = name_in(piece.name, mark, left, top, long, wide)
    if min(long, wide) >= LETTERS:
        yield name
    if not told:
        legend.append(f"{mark} {piece.name}")


def alt(name: str, layout: OnCloth, words: tuple[str, str]) -> str:
    """The layout in words, from the same data: how many of each piece lie on what cloth."""
    counts: dict[str, int] = {}
    for piece in layout.pieces:
        counts[piece.name] = counts.get(piece.name, 0) + 1
    listed = ", ".join(f"{count} {part}" for part, count in counts.items())
    return f"Cutting layout for {name}: on {words[0]} of cloth, {words[1]} wide, lie {listed}."
