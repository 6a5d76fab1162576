"""The lists of a handout: what to buy, and what to cut."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from presscloth.cutting.buying import Purchase
from presscloth.edition import CutPiece, Edition, Evaluator
from presscloth.handout.bought import quantities, verdict, with_optional
from presscloth.handout.prose import Teller
from presscloth.handout.tree import Amount, CutLine, Inline, MaterialLine, Text
from presscloth.handout.wording import amount, form_word, note_word, shape_word, side_word
from presscloth.measure import Quantity, System
from presscloth.recipe.expression import Expression
from presscloth.recipe.materials import BY_LENGTH
from presscloth.recipe.prose import plain
from presscloth.recipe.tree import Form, Material, Note, NoteKind, Recipe, Shape
from presscloth.tongue import measured, named


def used_materials(
    recipe: Recipe, edition: Edition, keys_in_statements: frozenset[str]
) -> tuple[Material, ...]:
    """The materials that a size uses, in the order of the recipe; thread is used by every seam."""
    used = {key for piece in edition.pieces for key in piece.keys} | keys_in_statements
    return tuple(m for m in recipe.materials if m.key in used or m.form is Form.THREAD)


def material_lines(
    materials: Sequence[Material],
    purchases: Mapping[str, Purchase],
    evaluator: Evaluator,
    teller: Teller,
    optional: frozenset[str],
) -> tuple[MaterialLine, ...]:
    """The rows of the materials table; `optional` are the keys that only optional steps need."""

    def worded(expression: Expression | None) -> Amount | None:
        if expression is None:
            return None
        value = evaluator.step(expression)
        return amount(value, teller.systems) if isinstance(value, Quantity) else None

    bought = quantities(purchases, teller.systems)
    return tuple(
        MaterialLine(
            key=material.key,
            name=named(material.name),
            form=form_word(material.form),
            width=worded(material.width),
            quantity=bought.get(material.key),
            sold_by=worded(material.sold_by),
            notes=tuple(_note(note, teller) for note in material.notes),
            optional=material.key in optional,
            verdict=verdict(purchases.get(material.key)),
            with_optional=with_optional(purchases.get(material.key), teller.systems),
            length=worded(material.length),
        )
        for material in materials
    )


def _note(note: Note, teller: Teller) -> tuple[Inline, ...]:
    """A note that the compiler knows is worded by the handout, any other by the author."""
    if note.kind is None:
        return teller.inlines(note.prose)
    amount = plain(note.prose)[len(note.kind.value) :]
    return (Text(f"{note_word(note.kind)}{measured(amount)}"),)


def cut_lines(
    edition: Edition, materials: Mapping[str, Material], teller: Teller, belongs: Mapping[str, str]
) -> tuple[CutLine, ...]:
    """The rows of the cutting list, one for each piece and material.

    `belongs` says of a piece that it is optional or belongs to one way of sewing.
    """
    return tuple(line for piece in edition.pieces for line in _lines(piece, materials, teller, belongs))


def _lines(
    piece: CutPiece, materials: Mapping[str, Material], teller: Teller, belongs: Mapping[str, str]
) -> Iterator[CutLine]:
    notes = tuple(_note(n, teller) for n in piece.row.notes if n.kind is not NoteKind.MEASURE_FIRST)
    measure_first = any(note.kind is NoteKind.MEASURE_FIRST for note in piece.row.notes)
    for key in piece.keys:
        material = materials[key]
        yield CutLine(
            piece=named(piece.name),
            key=key,
            material=named(material.name),
            number=piece.count,
            sides=sides(piece, material.form, teller.systems),
            shape=shape_word(piece.shape),
            measure_first=measure_first,
            notes=notes,
            belongs=belongs.get(piece.name, ""),
        )


def sides(piece: CutPiece, form: Form, systems: Sequence[System]) -> tuple[tuple[str, Amount], ...]:
    """The cut sizes with their words: width and height, a length, a diameter, the side of a square."""

    def worded(side: Quantity) -> Amount:
        return amount(side, systems, cut=True)

    only = piece.width or piece.height
    if only is None:
        return ()
    if form in BY_LENGTH:
        return ((side_word("length"), worded(only)),)
    if piece.shape is Shape.CIRCLE:
        return ((side_word("diameter"), worded(only)),)
    if piece.shape in (Shape.HALF_SQUARE, Shape.QUARTER_SQUARE):
        return ((side_word("square"), worded(only)),)
    by_name = (("width", piece.width), ("height", piece.height))
    return tuple((side_word(word), worded(side)) for word, side in by_name if side is not None)
