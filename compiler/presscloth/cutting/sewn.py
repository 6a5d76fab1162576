"""What a construction tells of quantities: fillings by weight, and the length of all its seams."""

from __future__ import annotations

from collections.abc import Mapping

from presscloth.measure import Quantity, add, length
from presscloth.sewing import Construction
from presscloth.sewing.lengths import times


def filled(construction: Construction) -> Mapping[str, Quantity]:
    """The weight of each filling that is used, by the key of its material."""
    found: dict[str, Quantity] = {}
    for each in construction.filled:
        weight = times(each.count, each.weight)
        before = found.get(each.key)
        both = weight if before is None else add(before, weight)
        if isinstance(both, Quantity):
            found[each.key] = both
    return found


def stitched(construction: Construction) -> Quantity | None:
    """The length of all seams together; None where no seam is known."""
    if not construction.seams:
        return None
    whole = length(0, 0)
    for seam in construction.seams:
        both = add(whole, times(seam.count, seam.length))
        if isinstance(both, Quantity):
            whole = both
    return whole
