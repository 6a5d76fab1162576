"""Try all choices of strips within a length, where there are few enough: a proof or a better layout."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import Enum
from operator import sub

from presscloth.cutting.purse import Purse
from presscloth.cutting.strips import Strip, Strips

_NODE_COST = 4  # what looking at one strip costs, in pieces laid


class Verdict(Enum):
    """What trying came to when it found no strips."""

    IMPOSSIBLE = "there are none"
    UNDECIDED = "the purse is empty"


def strips_within(strips: Strips, length: int, purse: Purse) -> tuple[Strip, ...] | Verdict:
    """Strips for all pieces no longer than `length` in all, or whether it is certain there are none."""
    trial = _Trial(strips, length, purse)
    if trial.visit(strips.quantities, 0):
        return tuple(trial.chosen)
    return Verdict.UNDECIDED if purse.left <= 0 else Verdict.IMPOSSIBLE


class _Trial:
    """Depth first: the piece that needs the highest strip goes into every strip that it could be in.

    Only strips to which no other piece could be added are tried, at each height: to fill a strip up
    never makes the rest longer.
    """

    def __init__(self, strips: Strips, length: int, purse: Purse) -> None:
        self._strips = strips
        self._length = length
        self._purse = purse
        self._seen: dict[tuple[int, ...], int] = {}
        self.chosen: list[Strip] = []

    def visit(self, rest: tuple[int, ...], length: int) -> bool:
        """Whether the rest finds room after strips of this length; then `chosen` are the strips."""
        if not any(rest):
            return True
        reach = self._strips.reach
        tallest = max(range(len(rest)), key=lambda number: reach[number] if rest[number] else 0)
        tried: set[Strip] = set()
        for counts in self._full_strips(tallest, rest):
            self._purse.left -= _NODE_COST
            if self._purse.left <= 0:
                return False
            strip = self._strips.trimmed(counts)
            total = length + strip.height
            after = tuple(map(sub, rest, counts))
            if strip in tried or not self._promising(after, total):
                continue
            tried.add(strip)
            self.chosen.append(strip)
            if self.visit(after, total):
                return True
            self.chosen.pop()
        return False

    def _promising(self, rest: tuple[int, ...], length: int) -> bool:
        """Whether these pieces may find room, and were not tried before after no longer strips."""
        if length + self._strips.least_for(rest) > self._length:
            return False
        if self._seen.get(rest, length + 1) <= length:
            return False
        self._seen[rest] = length
        return True

    def _full_strips(self, part: int, rest: tuple[int, ...]) -> Iterator[tuple[int, ...]]:
        for height in self._strips.heights:
            widths = self._strips.widths_at(height)
            room = self._strips.width - widths[part]
            if room >= 0:
                counts = [0] * len(rest)
                counts[part] = 1
                order = sorted((n for n in range(len(rest)) if rest[n]), key=lambda n: -widths[n])
                yield from _filled(order, widths, rest, counts, room, room + 1)


def _filled(
    order: Sequence[int],
    widths: Sequence[int],
    rest: Sequence[int],
    counts: list[int],
    room: int,
    left_out: int,
) -> Iterator[tuple[int, ...]]:
    """All ways to fill up the room from the rest so that nothing more fits, widest pieces first.

    `left_out` is the least width of a piece that was left out so far.
    """
    if not order:
        yield tuple(counts)
        return
    number, others = order[0], order[1:]
    laid, width = counts[number], widths[number]
    there = rest[number] - laid
    most = min(there, room // width)
    for more in range(most, -1, -1):
        free = room - more * width
        narrowest = left_out if more == there else min(left_out, width)
        if not others and free >= narrowest:
            break
        counts[number] = laid + more
        yield from _filled(others, widths, rest, counts, free, narrowest)
    counts[number] = laid
