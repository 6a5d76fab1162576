"""Transform the pieces of a material into parts to lay out, in one system, in whole units.

A piece is laid out at the size at which it is printed, since that is what a maker cuts. The unit is
1/80 mm, which holds both systems exactly; what lies between two units is rounded up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, isqrt

from presscloth.cutting.parts import Part
from presscloth.edition import CutPiece
from presscloth.measure import Kind, Quantity, System, convert, printed
from presscloth.recipe.tree import Grain, Shape

PER_MM = 80


@dataclass(frozen=True, slots=True)
class Cloth:
    """What a material demands of its layout, in one system: usable width and repeat in units.

    `one_way` cloth keeps every piece the same way up; `repeat` is the height of its pattern, 0 for
    none: each piece then begins with the pattern, so that its height goes up to whole repeats.
    """

    width: int
    one_way: bool
    repeat: int


def units(length: Fraction, system: System) -> int:
    """A length of one system (mm or in) in 1/80 mm, rounded up."""
    millimetres = length if system is System.METRIC else convert(length, Kind.LENGTH, System.METRIC)
    return ceil(millimetres * PER_MM)


def length_of(units: int, system: System) -> Fraction:
    """A length in 1/80 mm in mm or in."""
    millimetres = Fraction(units, PER_MM)
    return millimetres if system is System.METRIC else convert(millimetres, Kind.LENGTH, System.IMPERIAL)


def as_cut(side: Quantity, system: System) -> int:
    """A cut size as it is printed, or as it is if that is more."""
    return units(max(side[system], printed(side, system, cut=True).value), system)


def part_of(piece: CutPiece, count: int, cloth: Cloth, system: System) -> Part | None:
    """What a piece takes of the cloth; None for a piece without a size.

    Two half-square triangles, or four quarter-square ones, nest in one square; a circle takes the
    square around it; a piece on the bias takes the upright rectangle around it (geometry).
    """
    if piece.width is None or count <= 0:
        return None
    width = as_cut(piece.width, system)
    height = width if piece.height is None else as_cut(piece.height, system)
    turnable = piece.grain is Grain.ANY and not cloth.one_way
    match piece.shape:
        case Shape.CIRCLE:
            height = width
        case Shape.HALF_SQUARE:
            count, height = -(-count // 2), width
        case Shape.QUARTER_SQUARE:
            count, height = -(-count // 4), width
        case Shape.RECTANGLE | Shape.OUTLINE:
            pass
    match piece.grain:
        case Grain.ACROSS:
            width, height = height, width
        case Grain.BIAS:
            width = height = _on_the_bias(width, height)
        case Grain.ALONG | Grain.ANY:
            pass
    if cloth.repeat:
        height = -(-height // cloth.repeat) * cloth.repeat
    return Part(piece.name, width, height, count, turnable)


def _on_the_bias(width: int, height: int) -> int:
    """The side of the upright square around a rectangle that lies at 45°: (w + h) / √2, rounded up."""
    return isqrt((width + height) ** 2 // 2) + 1


def parts_of(pieces: Sequence[tuple[CutPiece, int]], cloth: Cloth, system: System) -> tuple[Part, ...]:
    """The parts of several pieces, each with how many are cut."""
    found = (part_of(piece, count, cloth, system) for piece, count in pieces)
    return tuple(part for part in found if part is not None)
