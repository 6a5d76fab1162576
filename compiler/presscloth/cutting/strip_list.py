"""Read the order of cutting off a layout in strips: which strips come off first, and what each gives."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from presscloth.cutting.laid import Lying, OnCloth
from presscloth.frozen import dataclass


@dataclass(frozen=True, slots=True)
class CutStrips:
    """`number` equal strips, `height` in 1/80 mm, and how many of which piece are cut from each."""

    number: int
    height: int
    pieces: tuple[tuple[str, int], ...]


def strips_of(cloths: Sequence[OnCloth]) -> tuple[CutStrips, ...]:
    """The strips of layouts in strips, highest first; equal ones together."""
    found: Counter[tuple[int, tuple[tuple[str, int], ...]]] = Counter()
    for cloth in cloths:
        rows: dict[int, list[Lying]] = {}
        for piece in cloth.pieces:
            rows.setdefault(min(y for _, y in piece.corners), []).append(piece)
        for begins, row in rows.items():
            height = max(y for piece in row for _, y in piece.corners) - begins
            found[height, tuple(sorted(Counter(piece.name for piece in row).items()))] += 1
    ordered = sorted(found.items(), key=lambda each: (-each[0][0], each[0][1]))
    return tuple(CutStrips(number, height, pieces) for (height, pieces), number in ordered)
