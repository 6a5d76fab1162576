"""Transform a cut piece into the thing that lies on the table."""

from __future__ import annotations

from fractions import Fraction

from presscloth.edition import CutPiece
from presscloth.measure import Quantity
from presscloth.recipe.tree import Form, Grain, Material, NoteKind
from presscloth.recipe.tree import Shape as PieceShape
from presscloth.sewing.lengths import half, times_root_two
from presscloth.sewing.measuring import measured
from presscloth.sewing.placing import Arranged, Arrangement, Box, Part
from presscloth.sewing.shaping import shape_of
from presscloth.sewing.things import (
    Circle,
    Flat,
    Long,
    Rim,
    Shape,
    Shaped,
    State,
    Thing,
    Triangle,
    Whole,
    rectangle,
)

BY_LENGTH = (Form.TAPE, Form.ELASTIC, Form.ZIP)
WITHOUT_SIDES = (Form.NOTION, Form.FILLING, Form.THREAD)

ONE_WAY = "one way"


def cut_thing(piece: CutPiece, material: Material | None) -> Thing:
    """A piece as it comes from the cutting table: raw all round, its place and direction known."""
    shape = _shape(piece, Form.FABRIC if material is None else material.form)
    one_way = material is not None and any(note.kind is NoteKind.ONE_WAY for note in material.notes)
    way = ONE_WAY if one_way and piece.grain is not Grain.ANY else None

    def alone() -> Arranged:
        outline = piece.outline if isinstance(shape, Flat | Shaped) else None
        return Arranged(parts=(Part(piece.name, box_of(shape), 0, False, way, piece.span, outline),))

    return Thing(shape, Arrangement(alone), directed=way is not None, rows=(piece.span,))


def _shape(piece: CutPiece, form: Form) -> Shape:
    rim = Rim(State.RAW, piece.allowance)
    width, height = piece.width, piece.height
    if piece.outline is not None and form not in (*WITHOUT_SIDES, *BY_LENGTH):
        return shape_of(piece.outline)
    one = height or width
    if form in WITHOUT_SIDES or one is None:
        return Whole()
    if form in BY_LENGTH:
        return Long(one, form)
    match piece.shape:
        case PieceShape.CIRCLE:
            return Circle(width or one, rim)
        case PieceShape.HALF_SQUARE:
            side = width or one
            return Triangle(side, times_root_two(side), rim, quarter=False)
        case PieceShape.QUARTER_SQUARE:
            side = width or one
            return Triangle(half(times_root_two(side)), side, rim, quarter=True)
        case PieceShape.RECTANGLE | PieceShape.OUTLINE if width is None or height is None:
            return Long(one, form)
        case PieceShape.RECTANGLE | PieceShape.OUTLINE:
            return rectangle(width, height, rim)


def box_of(shape: Shape) -> Box | None:
    """The rectangle that a thing covers as it lies, in millimetres; None where it has no such size."""
    width, height = (measured(shape, side, finished=False) for side in ("width", "height"))
    if width is None or height is None:
        return None
    return Box(Fraction(0), Fraction(0), in_mm(width), in_mm(height))


def in_mm(q: Quantity) -> Fraction:
    return q.metric
