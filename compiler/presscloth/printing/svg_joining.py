"""The marks of a drawing joined into as few elements as show the same.

A quilt has hundreds of patches that look alike. Marks with the same paint become one path where the
order does not show: an outline that is filled may join others only where it lies beside them, and no
mark may pass another that it touches on the way.
"""

from __future__ import annotations

from dataclasses import replace
from enum import Enum

from presscloth.frozen import dataclass

Box = tuple[float, float, float, float]

LOOK_BACK = 8  # how many elements back a mark may look for one that it can join
TOUCHING = 0.02  # mm: boxes that overlap no further lie beside each other


class Kind(Enum):
    """What a mark is made of, which decides what may be drawn over it unseen."""

    LINES = "lines"
    FILLING = "filling"  # an outline, filled, and edged perhaps
    HATCHING = "hatching"  # an outline to be hatched
    WORDS = "words"


@dataclass(frozen=True, slots=True)
class Mark:
    """One mark: its kind and paint, the box around it, and its path (for words, the text elements).

    `hatch` is how far hatch lines lie apart in mm; `others` are the boxes of the marks joined to it.
    """

    kind: Kind
    paint: str
    box: Box
    path: str
    hatch: float = 0
    others: tuple[Box, ...] = ()

    @property
    def boxes(self) -> tuple[Box, ...]:
        return (self.box, *self.others)


def joined(marks: list[Mark]) -> list[Mark]:
    """Join marks; what lies above or below what stays as it was."""
    groups: list[list[Mark]] = []
    for mark in marks:
        group = _to_join(mark, groups)
        if group is None:
            groups.append([mark])
        else:
            group.append(mark)
    return [_as_one(group) for group in groups]


def _to_join(mark: Mark, groups: list[list[Mark]]) -> list[Mark] | None:
    """The latest group that a mark can join, passing only marks that it does not touch."""
    for group in reversed(groups[-LOOK_BACK:]):
        touching = _touches(mark, group)
        alike = (mark.kind, mark.paint, mark.hatch) == (group[0].kind, group[0].paint, group[0].hatch)
        if alike and not (touching and mark.kind is Kind.FILLING):
            return group
        if touching:
            return None
    return None


def _touches(mark: Mark, group: list[Mark]) -> bool:
    left, top, right, bottom = mark.box
    return any(
        left + TOUCHING < other.box[2]
        and other.box[0] + TOUCHING < right
        and top + TOUCHING < other.box[3]
        and other.box[1] + TOUCHING < bottom
        for other in group
    )


def _as_one(group: list[Mark]) -> Mark:
    first, *others = group
    if not others:
        return first
    return replace(
        first, path="".join(mark.path for mark in group), others=tuple(mark.box for mark in others)
    )
