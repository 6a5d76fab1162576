"""Layouts as letters, and least layouts found by trying everything."""

from collections.abc import Iterator, Sequence
from itertools import product

from presscloth.cutting import Layout, Part


def picture(layout: Layout, parts: Sequence[Part]) -> str:
    """A line per unit of length from the cut end, a letter per unit of width; a dot is waste."""
    rows = [["."] * layout.width for _ in range(layout.length)]
    for placed in layout.placed:
        part = parts[placed.part]
        wide, high = (part.height, part.width) if placed.turned else (part.width, part.height)
        for y, x in product(range(placed.y, placed.y + high), range(placed.x, placed.x + wide)):
            rows[y][x] = part.name
    return "\n".join("".join(row) for row in rows)


def lies(part: Part) -> list[tuple[int, int]]:
    upright = (part.width, part.height)
    return list(dict.fromkeys([upright, upright[::-1]])) if part.turnable else [upright]


def pieces(parts: Sequence[Part]) -> list[Part]:
    return [part for part in parts for _ in range(part.quantity)]


def shortest_free(parts: Sequence[Part], width: int) -> int:
    """The least length, by trying every place on a grid of single units. Only for a few small pieces."""
    length = 1
    while not _fits_free(pieces(parts), width, length, 0):
        length += 1
    return length


def _fits_free(rest: Sequence[Part], width: int, length: int, taken: int) -> bool:
    if not rest:
        return True
    for wide, high in lies(rest[0]):
        row = (1 << wide) - 1
        block = sum(row << (y * width) for y in range(high))
        for x, y in product(range(width - wide + 1), range(length - high + 1)):
            place = block << (y * width + x)
            if not taken & place and _fits_free(rest[1:], width, length, taken | place):
                return True
    return False


def shortest_in_strips(parts: Sequence[Part], width: int) -> int:
    """The least length in strips, by trying every grouping and every turn. Only for a few pieces."""
    lengths = []
    for groups in _groupings(pieces(parts)):
        heights = [_strip_height(group, width) for group in groups]
        if None not in heights:
            lengths.append(sum(height for height in heights if height is not None))
    return min(lengths)


def _groupings(things: Sequence[Part]) -> Iterator[list[list[Part]]]:
    if not things:
        yield []
        return
    for groups in _groupings(things[1:]):
        yield [[things[0]], *groups]
        for at, group in enumerate(groups):
            yield [*groups[:at], [things[0], *group], *groups[at + 1 :]]


def _strip_height(group: Sequence[Part], width: int) -> int | None:
    heights = [
        max(high for _, high in turns)
        for turns in product(*(lies(part) for part in group))
        if sum(wide for wide, _ in turns) <= width
    ]
    return min(heights, default=None)
