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


@dataclass(frozen=True, slots=True)
class Tried:
    """A size as it is cut with all choices at their greatest, but for the one that is `lessened`."""

    choices: Mapping[str, Quantity]
    edition: Edition
    lessened: str | None = None


def reaches(edition: Edition) -> Mapping[str, Reach]:
    """All measures that the reader may choose, by name."""
    grows = {tried.lessened for tried in to_suffice_for(edition)}
    return {name: Reach(least, most, name in grows) for name, (least, most) in _ends(edition).items()}


def to_suffice_for(edition: Edition) -> Iterator[Tried]:
    """What cloth must suffice for: all at their greatest, and each at its least at which some piece grows."""
    ends = _ends(edition)
    if not ends:
        return
    greatest = {name: most for name, (_, most) in ends.items()}
    full = Tried(greatest, _chosen(edition, greatest))
    yield full
    for name, (least, _) in ends.items():
        choices = {**greatest, name: least}
        tried = Tried(choices, _chosen(edition, choices), name)
        if _grows(full.edition, tried.edition):
            yield tried


def _ends(edition: Edition) -> Mapping[str, tuple[Quantity, Quantity]]:
    """The lesser and the greater end of each measure that the reader may choose, by name."""
    ends: dict[str, list[Quantity]] = {}
    for end in chosen_ends(edition):
        for name, value in end.choices.items():
            ends.setdefault(name, []).append(value)
    by_metric = ((name, sorted(values, key=lambda value: value.metric)) for name, values in ends.items())
    return {name: (values[0], values[-1]) for name, values in by_metric}


def _chosen(edition: Edition, choices: Mapping[str, Quantity]) -> Edition:
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
