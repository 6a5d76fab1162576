"""Cut a rectangle to pieces: parts whose least length is known, because they fill it without a gap."""

from __future__ import annotations

from presscloth.cutting.chance import Chance
from presscloth.cutting.parts import Part

Box = tuple[int, int, int, int]
"""x, y, width, height."""

_LEAST = 2  # no piece is narrower or lower


def straight(width: int, length: int, pieces: int, seed: int) -> list[Box]:
    """Boxes made by straight cuts right through, each through the largest box left."""
    chance = Chance(seed)
    boxes: list[Box] = [(0, 0, width, length)]
    while len(boxes) < pieces:
        x, y, wide, high = _taken(boxes)
        if wide < 2 * _LEAST and high < 2 * _LEAST:
            boxes.append((x, y, wide, high))
            break
        if wide > high or high < 2 * _LEAST:
            at = _LEAST + chance.below(wide - 2 * _LEAST + 1)
            boxes += [(x, y, at, high), (x + at, y, wide - at, high)]
        else:
            at = _LEAST + chance.below(high - 2 * _LEAST + 1)
            boxes += [(x, y, wide, at), (x, y + at, wide, high - at)]
    return boxes


def pinwheels(width: int, length: int, pieces: int, seed: int) -> list[Box]:
    """Boxes made by cutting the largest box left into four round a fifth, which no straight cut parts."""
    chance = Chance(seed)
    boxes: list[Box] = [(0, 0, width, length)]
    while len(boxes) < pieces:
        x, y, wide, high = _taken(boxes)
        if wide < 3 * _LEAST or high < 3 * _LEAST:
            boxes.append((x, y, wide, high))
            break
        left = _LEAST + chance.below(wide - 3 * _LEAST + 1)
        right = left + _LEAST + chance.below(wide - left - 2 * _LEAST + 1)
        low = _LEAST + chance.below(high - 3 * _LEAST + 1)
        top = low + _LEAST + chance.below(high - low - 2 * _LEAST + 1)
        boxes += [
            (x, y, right, low),
            (x + right, y, wide - right, top),
            (x + left, y + top, wide - left, high - top),
            (x, y + low, left, high - low),
            (x + left, y + low, right - left, top - low),
        ]
    return boxes


def _taken(boxes: list[Box]) -> Box:
    """Take the largest box away."""
    return boxes.pop(max(range(len(boxes)), key=lambda at: boxes[at][2] * boxes[at][3]))


def as_parts(boxes: list[Box], *, turnable: bool = False) -> list[Part]:
    """The boxes as parts, equal ones together."""
    counts: dict[tuple[int, int], int] = {}
    for _, _, wide, high in boxes:
        counts[wide, high] = counts.get((wide, high), 0) + 1
    return [
        Part(f"{wide} × {high}", wide, high, count, turnable)
        for (wide, high), count in sorted(counts.items())
    ]
