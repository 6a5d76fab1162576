"""Take parts of one size for one part: to the engine it makes no difference which is which."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from presscloth.cutting.parts import Layout, Part, Placed
from presscloth.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Alike:
    """`parts`, each of them different from all others, and which of the true ones each stands for."""

    parts: tuple[Part, ...]
    meant: tuple[tuple[int, ...], ...]
    true: tuple[Part, ...]

    def told_apart(self, layouts: Sequence[Layout]) -> tuple[Layout, ...]:
        """The layouts of the true parts: of places that are alike, the first part gets the first ones."""
        true = self.true
        waiting = [iter([n for n in meant for _ in range(true[n].quantity)]) for meant in self.meant]
        return tuple(
            replace(
                layout, placed=tuple(self._true(each, next(waiting[each.part])) for each in layout.placed)
            )
            for layout in layouts
        )

    def _true(self, placed: Placed, number: int) -> Placed:
        turned = placed.turned != (self.true[number].width != self.parts[placed.part].width)
        return Placed(number, placed.x, placed.y, turned)


def alike(parts: Sequence[Part]) -> Alike:
    """Join the parts of one size that may be turned alike, a turned one being of the same size."""
    groups: dict[tuple[int, int, bool], list[int]] = {}
    for number, part in enumerate(parts):
        width, height = part.width, part.height
        if part.turnable and height < width:
            width, height = height, width
        groups.setdefault((width, height, part.turnable), []).append(number)
    joined = tuple(
        replace(parts[group[0]], quantity=sum(parts[number].quantity for number in group))
        for group in groups.values()
    )
    return Alike(joined, tuple(map(tuple, groups.values())), tuple(parts))
