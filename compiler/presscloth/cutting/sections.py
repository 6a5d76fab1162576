"""Transform a long layout into sections that are small enough to be drawn, the equal ones counted.

Wherever no piece lies across, the cloth may be cut straight through, and the order of what is cut apart
does not matter. What cannot be cut apart and is long all the same is shown in parts one after another.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from presscloth.cutting.laid import Lying, OnCloth
from presscloth.cutting.outlines import Point

_LONGEST = 2  # widths of the cloth: no section is longer, so that its pieces can be read
_LEAST = 1  # widths of the cloth: nearer to its beginning no section is parted


def sections(cloth: OnCloth) -> tuple[tuple[OnCloth, int], ...]:
    """The sections of a layout, each with how often it is cut, in the order in which they are first met.

    Short ones are put together in equal numbers. A piece that lies across the end of a section is shown
    as far as it goes, and its `rest` in the next one.
    """
    found: list[tuple[OnCloth, int]] = []
    for section, times in Counter(_apart(cloth)).items():
        together = _in_a_row(section, times)
        whole = _repeated(section, together)
        if whole.length <= _LONGEST * cloth.width:
            found.append((whole, times // together))
        else:
            found += [(part, times) for part in _parts(whole)]
    return tuple(found)


def _apart(cloth: OnCloth) -> Iterator[OnCloth]:
    """The cloth cut straight through wherever no piece lies across."""
    start = end = 0
    held: list[Lying] = []
    for piece in sorted(cloth.pieces, key=_begins):
        if held and _begins(piece) >= end:
            yield _moved(cloth.width, start, end, held)
            start, held = end, []
        held.append(piece)
        end = max(end, _ends(piece))
    if held:
        yield _moved(cloth.width, start, end, held)


def _in_a_row(section: OnCloth, times: int) -> int:
    """How many of a short section are shown one behind the other: a number that goes into all of them."""
    most = max(1, section.width // section.length)
    return next(number for number in range(min(most, times), 0, -1) if times % number == 0)


def _repeated(section: OnCloth, times: int) -> OnCloth:
    pieces = tuple(
        _shifted(piece, number * section.length) for number in range(times) for piece in section.pieces
    )
    return OnCloth(section.width, section.length * times, pieces)


def _parts(section: OnCloth) -> Iterator[OnCloth]:
    """A long section in parts, each ending where the fewest pieces lie across."""
    width, start = section.width, 0
    while section.length - start > _LONGEST * width:
        ends = sorted({_ends(piece) for piece in section.pieces})
        near = [end for end in ends if _LEAST * width <= end - start <= _LONGEST * width]
        across = {at: sum(_begins(piece) < at < _ends(piece) for piece in section.pieces) for at in near}
        at = min(near, key=lambda end: (across[end], -end), default=start + _LONGEST * width)
        yield _moved(width, start, at, section.pieces)
        start = at
    yield _moved(width, start, section.length, section.pieces)


def _moved(width: int, start: int, end: int, pieces: Sequence[Lying]) -> OnCloth:
    """What lies from `start` to `end`, as a cloth that begins at 0."""
    within = [piece for piece in pieces if _begins(piece) < end and _ends(piece) > start]
    shown = (
        replace(
            piece,
            corners=_between(piece.corners, start, end),
            rest=piece.rest or _begins(piece) < start,
        )
        for piece in within
    )
    return OnCloth(width, end - start, tuple(_shifted(piece, -start) for piece in shown))


def _between(corners: Sequence[Point], start: int, end: int) -> tuple[Point, ...]:
    """The part of an outline between two lines across the cloth (I. E. Sutherland, G. W. Hodgman,
    "Reentrant polygon clipping", Communications of the ACM 17 (1974), from memory)."""
    return _beyond(tuple(_beyond(tuple(corners), start, 1)), end, -1)


def _beyond(corners: tuple[Point, ...], line: int, sign: int) -> tuple[Point, ...]:
    kept: list[Point] = []
    for (x, y), (next_x, next_y) in zip(corners, (*corners[1:], corners[0]), strict=True):
        inside, next_inside = (y - line) * sign >= 0, (next_y - line) * sign >= 0
        if inside:
            kept.append((x, y))
        if inside != next_inside:
            crossing = (x + (next_x - x) * (line - y) // (next_y - y), line)
            if crossing not in ((x, y), (next_x, next_y)):
                kept.append(crossing)
    return tuple(kept)


def _shifted(piece: Lying, by: int) -> Lying:
    return replace(piece, corners=tuple((x, y + by) for x, y in piece.corners))


def _begins(piece: Lying) -> int:
    return min(y for _, y in piece.corners)


def _ends(piece: Lying) -> int:
    return max(y for _, y in piece.corners)
