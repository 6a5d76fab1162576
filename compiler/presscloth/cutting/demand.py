"""Transform a sewn edition into what it demands of its materials, in every way in which it is made."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from presscloth.cutting.chosen import to_suffice_for
from presscloth.cutting.sewn import filled, stitched
from presscloth.edition import CutPiece, Edition
from presscloth.frozen import dataclass
from presscloth.measure import Quantity
from presscloth.recipe.tree import Form, Material
from presscloth.sewing import Construction, Sewn
from presscloth.sewing.carrying import sew
from presscloth.sewing.ways import choices, ways

Counted = tuple[tuple[CutPiece, int], ...]
"""Pieces, each with how many are cut of it."""


@dataclass(frozen=True)
class Demand:
    """What one way takes: pieces by the key of their material, fillings by theirs, and the seams.

    `optional` says whether anything that is optional is done on this way.
    """

    pieces: Mapping[str, Counted]
    filled: Mapping[str, Quantity]
    stitched: Quantity | None
    optional: bool

    def asks(self, material: Material) -> tuple[object, ...]:
        """All that the purchase of a material depends on, so that equal demands are equal."""
        if material.form is Form.THREAD:
            return _known(self.stitched)
        return (*_known(self.filled.get(material.key)), *self._counts(material).items())

    def asks_more(self, other: Demand, material: Material) -> bool:
        """Whether every piece of the other one is cut here too, in the same size, and something more."""
        if material.form in (Form.THREAD, Form.FILLING):
            return False
        here, there = self._counts(material), other._counts(material)
        return here != there and all(count <= here.get(piece, 0) for piece, count in there.items())

    def _counts(self, material: Material) -> Mapping[tuple[object, ...], int]:
        """How many are cut of each piece of a material, a piece told by its name and its size."""
        found: Counter[tuple[object, ...]] = Counter()
        for piece, count in self.pieces.get(material.key, ()):
            if count:
                found[piece.name, *_known(piece.width), *_known(piece.height)] += count
        return found


def _known(quantity: Quantity | None) -> tuple[object, ...]:
    """A quantity by what is printed of it; where it comes from makes no difference."""
    if quantity is None:
        return (None,)
    return quantity.metric, quantity.imperial, quantity.physical, quantity.rooted, quantity.stated


def demands(sewn: Sewn) -> tuple[Demand, ...]:
    """What every way takes, with the measures as stated, and at the ends of what the reader may choose."""
    found = list(_of_ways(sewn.constructions))
    for tried in to_suffice_for(sewn.edition):
        edition = tried.edition
        if _sewn_alike(edition, sewn.edition):
            resized = [replace(each, edition=edition) for each in sewn.constructions]
        else:
            resized = [sew(edition, way, tried.choices, sewn.memory) for way in ways(edition)]
        found += _of_ways(resized)
    return tuple(found)


def _sewn_alike(edition: Edition, other: Edition) -> bool:
    """Whether two editions differ in the sizes of pieces alone, so that one need not be sewn anew."""
    by_sewing = any(material.form in (Form.THREAD, Form.FILLING) for material in edition.recipe.materials)
    counts = [[(piece.name, piece.count) for piece in each.pieces] for each in (edition, other)]
    return not by_sewing and counts[0] == counts[1]


def _of_ways(constructions: Sequence[Construction]) -> Iterator[Demand]:
    known = all(each.certain for each in constructions) and any(each.events for each in constructions)
    for each in constructions if known else constructions[:1]:
        edition = each.edition
        keys = dict.fromkeys(key for piece in edition.pieces for key in piece.keys)
        cut = {
            key: tuple(
                (piece, _cut(piece, key, each, constructions) if known else piece.count)
                for piece in edition.pieces
                if key in piece.keys
            )
            for key in keys
        }
        yield Demand(cut, filled(each), stitched(each), known and _does_optional(each))


def _cut(piece: CutPiece, key: str, way: Construction, ways: Sequence[Construction]) -> int:
    """How many of a piece a way asks to be cut: all of them but those that only other ways sew in."""
    used = (piece.name, key)
    return piece.count - max(each.used.get(used, 0) for each in ways) + way.used.get(used, 0)


def _does_optional(made: Construction) -> bool:
    return any(
        choice.optional and any(made.way.takes(unit) for unit in choice.among)
        for choice in choices(made.edition)
    )
