"""The ends between which a reader may choose, and at which of them cloth is cut from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from presscloth.edition import CutPiece, Edition, make_edition
from presscloth.frozen import dataclass
from presscloth.measure import Quantity, System
from presscloth.problems import Problems
from presscloth.sewing.proving import chosen_ends, unasked


@dataclass(frozen=True, slots=True)
class Reach:
    """How far a measure goes that is the reader's to choose.

    `grows` is whether some piece is larger at the lesser end than at the greater one, or more of it are
    cut: the sand above a waterline that is chosen. Then cloth must suffice at both ends.
    """

    least: Quantity
    most: Quantity
    grows: bool


def reaches(edition: Edition) -> Mapping[str, Reach]:
    """All measures that the reader may choose, by name, each tried with the others at their greatest."""
    ends: dict[str, list[Quantity]] = {}
    for end in chosen_ends(edition):
        for name, value in end.choices.items():
            ends.setdefault(name, []).append(value)
    most = {name: max(values, key=lambda value: value.metric) for name, values in ends.items()}
    found: dict[str, Reach] = {}
    for name, values in ends.items():
        least = min(values, key=lambda value: value.metric)
        grows = _grows(chosen(edition, most), chosen(edition, {**most, name: least}))
        found[name] = Reach(least, most[name], grows)
    return found


def to_suffice_for(edition: Edition) -> Iterator[Mapping[str, Quantity]]:
    """The choices for which cloth must suffice: all at their greatest, and those at their least that grow."""
    reach = reaches(edition)
    most = {name: each.most for name, each in reach.items()}
    if most:
        yield most
    for name, each in reach.items():
        if each.grows:
            yield {**most, name: each.least}


def chosen(edition: Edition, choices: Mapping[str, Quantity]) -> Edition:
    """The same size with measures chosen otherwise; what speaks of sewn things is not asked."""
    return make_edition(edition.recipe, edition.size, Problems(), unasked, choices)


def _grows(before: Edition, after: Edition) -> bool:
    known = {piece.name: piece for piece in before.pieces}
    return any(piece.name not in known or _larger(piece, known[piece.name]) for piece in after.pieces)


def _larger(piece: CutPiece, other: CutPiece) -> bool:
    sides = ((piece.width, other.width), (piece.height, other.height))
    return piece.count > other.count or any(
        side is not None and before is not None and any(side[system] > before[system] for system in System)
        for side, before in sides
    )
