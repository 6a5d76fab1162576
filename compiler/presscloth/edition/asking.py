"""What can be said of a piece as it is cut."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from presscloth.edition.edition import CutPiece
from presscloth.measure import Quantity, add, greatest, number, subtract
from presscloth.recipe.words import look_up


def find_piece(name: str, pieces: Sequence[CutPiece]) -> CutPiece | None:
    """A piece by its name, with the letter of its material before it or without (`A pocket`)."""
    by_name: Mapping[str, CutPiece] = {piece.name: piece for piece in pieces}
    found = look_up(name, by_name)
    if found is None:
        key, _, rest = name.partition(" ")
        found = look_up(rest, by_name) if rest else None
        if found is not None and key not in found.keys:
            return None
    return found


def part_of_piece(piece: CutPiece, part: str, *, finished: bool) -> Quantity | None:
    """A measure of a piece as it is cut; `finished` takes the allowances off. None: it has no such part."""
    sides = {"width": piece.width, "height": piece.height, "top": piece.width, "bottom": piece.width}
    sides |= {"left": piece.height, "right": piece.height}
    if part == "count":
        return number(piece.count * max(1, len(piece.keys)))
    if part == "length":
        both = [side for side in (piece.width, piece.height) if side is not None]
        longest = greatest(both) if both else None
        value = longest if isinstance(longest, Quantity) else None
    else:
        value = sides.get(part)
    if value is None or not finished or piece.allowance is None:
        return value
    both_ends = add(piece.allowance, piece.allowance)
    less = subtract(value, both_ends) if isinstance(both_ends, Quantity) else None
    return replace(less, stated=None) if isinstance(less, Quantity) else None
