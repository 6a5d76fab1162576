"""Transform the pieces of a material into parts to lay out, in one system, in whole units.

A piece is laid out at the size at which it is printed, since that is what a maker cuts. The unit is
1/80 mm, which holds both systems exactly; what lies between two units is rounded up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil, floor, isqrt

from presscloth.cutting.outlines import Outline, around_circle
from presscloth.cutting.parts import Part, lies_of
from presscloth.cutting.shaped import covering, least_area, least_extent
from presscloth.edition import CutPiece
from presscloth.frozen import dataclass
from presscloth.measure import Kind, Quantity, System, convert, printed
from presscloth.measure.followed import most_of
from presscloth.measure.remembering import remembered
from presscloth.outline import Closing
from presscloth.recipe.tree import Grain, NoteKind, Shape

PER_MM = 80

LESS_THAN_PI = Fraction(333, 106)
"""Below pi, so that the area of a circle is never taken for more than it is (geometry)."""


@dataclass(frozen=True, slots=True)
class Cloth:
    """What a material demands of its layout, in one system: usable width and repeat in units.

    `one_way` cloth keeps every piece the same way up; `repeat` is the height of its pattern, 0 for
    none: each piece then begins with the pattern, so that its height goes up to whole repeats.
    """

    width: int
    one_way: bool
    repeat: int


@dataclass(frozen=True, slots=True)
class Pieces:
    """What is laid out: every piece as a rectangle, and as an outline where that lies closer.

    `outlines` is empty when all pieces are upright rectangles. `within` has for every piece a rectangle
    inside it, or None where it has to be looked for inside the outline; all of it is None when all pieces
    are upright rectangles. `area` is no more than that of all pieces, and `reach` no more than the length
    that the longest of them takes.
    """

    parts: tuple[Part, ...]
    outlines: tuple[Outline, ...]
    within: tuple[Part | None, ...] | None
    area: int
    reach: int


def units(length: Fraction, system: System) -> int:
    """A length of one system (mm or in) in 1/80 mm, rounded up."""
    return ceil(in_units(length, system))


def in_units(length: Fraction, system: System) -> Fraction:
    """A length of one system (mm or in) in 1/80 mm."""
    millimetres = length if system is System.METRIC else convert(length, Kind.LENGTH, System.METRIC)
    return millimetres * PER_MM


def length_of(units: int, system: System) -> Fraction:
    """A length in 1/80 mm in mm or in."""
    millimetres = Fraction(units, PER_MM)
    return millimetres if system is System.METRIC else convert(millimetres, Kind.LENGTH, System.IMPERIAL)


@remembered(4096)
def as_cut(side: Quantity, system: System) -> int:
    """A cut size as it is printed, or as it is if that is more."""
    return units(most_of((side[system], printed(side, system, cut=True).value)), system)


def usable(width: Quantity, system: System, kept: Fraction) -> int:
    """The width of a cloth of which a part is `kept` in the wash, as it is printed or as it is.

    A piece as wide as its cloth is printed as its cloth is, and fits.
    """
    return floor(in_units(max(width[system], printed(width, system).value), system) * kept)


def pieces_of(wanted: Sequence[tuple[CutPiece, int]], cloth: Cloth, system: System) -> Pieces:
    """What is laid out for several pieces, each with how many are cut; those without a size left out."""
    found = [(piece, part) for piece, count in wanted if (part := part_of(piece, count, cloth, system))]
    parts = tuple(part for _, part in found)
    uneven = any(
        piece.shape in (Shape.CIRCLE, Shape.OUTLINE) or piece.grain is Grain.BIAS for piece, _ in found
    )
    return Pieces(
        parts=parts,
        outlines=tuple(outline for each in found for outline in _outlines(*each, cloth, system))
        if uneven and not cloth.repeat
        else (),
        within=tuple(_within(*each, system) for each in found) if uneven else None,
        area=sum(_area(piece, part, system) for piece, part in found),
        reach=max((_reach(piece, part, cloth, system) for piece, part in found), default=0),
    )


def part_of(piece: CutPiece, count: int, cloth: Cloth, system: System) -> Part | None:
    """What a piece takes of the cloth; None for a piece without a size.

    Two half-square triangles, or four quarter-square ones, nest in one square; a circle takes the
    square around it; a piece on the bias takes the upright rectangle around it (geometry).
    """
    if piece.width is None or count <= 0:
        return None
    width, height = _sides(piece, system)
    turnable = piece.grain is Grain.ANY and not cloth.one_way
    match piece.shape:
        case Shape.HALF_SQUARE:
            count = -(-count // 2)
        case Shape.QUARTER_SQUARE:
            count = -(-count // 4)
        case Shape.CIRCLE | Shape.RECTANGLE | Shape.OUTLINE:
            pass
    match piece.grain:
        case Grain.ACROSS:
            width, height = height, width
        case Grain.BIAS if piece.shape is not Shape.CIRCLE:
            width = height = _slant(width) + _slant(height)
        case Grain.BIAS | Grain.ALONG | Grain.ANY:
            pass
    if cloth.repeat:
        height = -(-height // cloth.repeat) * cloth.repeat
    return Part(piece.name, width, height, count, turnable)


def _sides(piece: CutPiece, system: System) -> tuple[int, int]:
    """Width and height as cut; those of a circle, and of the square that triangles are cut from, are one."""
    assert piece.width is not None
    width = as_cut(piece.width, system)
    equal = piece.height is None or piece.shape not in (Shape.RECTANGLE, Shape.OUTLINE)
    return (width, width) if equal or piece.height is None else (width, as_cut(piece.height, system))


def _slant(side: int) -> int:
    """What a side that lies at 45° takes across and along: side / √2, rounded up."""
    return isqrt(side * side // 2) + 1


def _outlines(piece: CutPiece, part: Part, cloth: Cloth, system: System) -> tuple[Outline, ...]:
    """A piece as outlines that cover it: one, or one and its mirrored twin where it is cut in pairs."""
    outline = _outline(piece, part, cloth, system)
    twins = outline.quantity // 2
    lopsided = piece.outline is not None and piece.outline.closing is Closing.ROUND
    pairs = any(note.kind is NoteKind.IN_PAIRS for note in piece.row.notes)
    if not (lopsided and pairs and twins):
        return (outline,)
    wide = max(x for x, _ in outline.points)
    mirrored = tuple((wide - x, y) for x, y in reversed(outline.points))
    return (
        replace(outline, quantity=outline.quantity - twins),
        replace(outline, points=mirrored, quantity=twins),
    )


def _outline(piece: CutPiece, part: Part, cloth: Cloth, system: System) -> Outline:
    """A piece as an outline that covers it; one on the bias leans either way where the cloth allows it."""
    width, height = _sides(piece, system)
    if piece.shape is Shape.CIRCLE:
        return Outline(part.name, around_circle(width), part.quantity)
    if piece.grain is Grain.BIAS:
        across, along = _slant(width), _slant(height)
        corners = ((along, 0), (across + along, across), (across, across + along), (0, along))
        return Outline(part.name, corners, part.quantity, (0,) if cloth.one_way else (0, 90))
    if piece.outline is not None:
        angles = _angles(piece.grain, one_way=cloth.one_way)
        return Outline(part.name, covering(piece.outline, system, width, height), part.quantity, angles)
    corners = ((0, 0), (part.width, 0), (part.width, part.height), (0, part.height))
    return Outline(part.name, corners, part.quantity, (0, 90) if part.turnable else (0,))


def _angles(grain: Grain, *, one_way: bool) -> tuple[int, ...]:
    """How a piece may lie: with its grain along the cloth, and upside down where the cloth allows it."""
    match grain:
        case Grain.ANY if not one_way:
            return 0, 90, 180, 270
        case Grain.ACROSS:
            return (90,) if one_way else (90, 270)
        case _:
            return (0,) if one_way else (0, 180)


def _within(piece: CutPiece, part: Part, system: System) -> Part | None:
    """A rectangle inside a piece, lying as the piece may; None for one that is cut by an outline.

    In a circle, and in a strip on the bias, it is the square of which the diameter, or the width of the
    strip, is the diagonal (geometry).
    """
    if piece.outline is not None:
        return None
    if piece.shape is not Shape.CIRCLE and piece.grain is not Grain.BIAS:
        return part
    side = isqrt(min(_sides(piece, system)) ** 2 // 2)
    return replace(part, width=side, height=side)


def _area(piece: CutPiece, part: Part, system: System) -> int:
    if piece.outline is not None:
        return least_area(piece.outline, system) * part.quantity
    if piece.shape is not Shape.CIRCLE and piece.grain is not Grain.BIAS:
        return part.area
    width, height = _sides(piece, system)
    if piece.shape is Shape.CIRCLE:
        return floor(LESS_THAN_PI * width * width / 4) * part.quantity
    return width * height * part.quantity


def _reach(piece: CutPiece, part: Part, cloth: Cloth, system: System) -> int:
    """The least length of cloth that holds one of a piece."""
    if piece.grain is Grain.BIAS and piece.shape is not Shape.CIRCLE:
        return isqrt(sum(_sides(piece, system)) ** 2 // 2)
    if piece.outline is not None:
        wide, high = least_extent(piece.outline, system)
        if piece.grain is Grain.ACROSS:
            wide, high = high, wide
        part = replace(part, width=wide, height=high)
    return min((along for across, along in lies_of(part) if across <= cloth.width), default=part.height)
