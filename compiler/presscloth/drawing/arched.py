"""A thing with a side cut by an outline: that side in front in its true line, the rest going back."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from presscloth.drawing.dimensions import LETTERS, across, both, breadth, breadth_aside, down, name_in
from presscloth.drawing.panels import Point, closed
from presscloth.drawing.reals import greater, lesser, on_page
from presscloth.drawing.silhouettes import Place, only_piece, silhouette
from presscloth.drawing.tree import Area, Drawing, Ink, Lettering, Shape
from presscloth.measure import Quantity, System
from presscloth.outline import Drafted
from presscloth.sewing.construction import Event
from presscloth.sewing.things import Hollow
from presscloth.tongue import named, say

BACK = 0.45
"""How far what lies a millimetre behind is moved on the page, to the right and upwards."""

MARGIN = 1.5
WIDEST, TALLEST = 46.0, 36.0


def side_set_in(event: Event) -> Drafted | None:
    """The outline of what a statement sets into an opening; None where it is a rectangle, round or a tube."""
    if event.statement.verb != "set in" or not event.used:
        return None
    piece = only_piece(event.used[0].thing.parts)
    return None if piece is None else piece.outline


def draw_arched(event: Event, hollow: Hollow, outline: Drafted, systems: Sequence[System]) -> Drawing | None:
    """What has such a side, seen a little from above, with its three dimensions."""
    upright = hollow.upright
    width, long = (hollow.width, hollow.height) if upright else (hollow.height, hollow.width)
    if hollow.depth is None or event.made is None:
        return None
    wide, tall, back = (on_page(each.metric) for each in (width, hollow.depth, long))
    scale = lesser(WIDEST / (wide + BACK * back), TALLEST / (tall + BACK * back))
    w, h, away = wide * scale, tall * scale, BACK * back * scale
    x, y = MARGIN, MARGIN + away
    name = named(event.made.name)
    words = _Words(width, hollow.depth, long, systems)
    shapes: list[Shape] = [
        *_going_back(silhouette(outline, Place(x, y, w, h)), away),
        name_in(name, "", x, y, w, h)[0],
        *across(x, x + w, y + h + 3.5, words.width),
        *down(y - away, y + h - away, x + w + away + 3.0, words.height),
        Lettering(x + w + away / 2 + 2.0, y + h - away / 2 + 4.0, words.back, LETTERS, anchor="start"),
    ]
    beside = greater(breadth_aside(words.height) + away, breadth(words.back) + away / 2)
    return Drawing(
        width=x + w + beside + 6,
        height=y + h + 9,
        shapes=tuple(shapes),
        alt=say(
            "{name}: {width} wide and {height} high in front, {back} from front to back.",
            name=name,
            width=words.width,
            height=words.height,
            back=words.back,
        ),
        caption=name,
    )


class _Words:
    """Its dimensions in both systems."""

    def __init__(self, width: Quantity, height: Quantity, back: Quantity, systems: Sequence[System]) -> None:
        self.width, self.height, self.back = (both(each, systems) for each in (width, height, back))


def _going_back(front: Sequence[Point], away: float) -> Iterator[Shape]:
    """A front, clockwise, and what of its sides is seen from the upper right."""
    for side in _sides_seen(front):
        behind = tuple((x + away, y - away) for x, y in side)
        yield Area((*side, *reversed(behind)), Ink.WRONG_SIDE, Ink.CUT)
    yield Area(tuple(front), Ink.CLOTH, Ink.CUT)


def _sides_seen(front: Sequence[Point]) -> Iterator[tuple[Point, ...]]:
    """Each run of a front's line over which its sides are turned to the upper right."""
    stretches = list(pairwise(closed(tuple(front))))
    hidden = next((n for n, (start, end) in enumerate(stretches) if not _is_seen(start, end)), 0)
    run: list[Point] = []
    for start, end in (*stretches[hidden:], *stretches[:hidden]):
        if _is_seen(start, end):
            run = [*(run or [start]), end]
        elif run:
            yield tuple(run)
            run = []
    if run:
        yield tuple(run)


def _is_seen(start: Point, end: Point) -> bool:
    """Whether the side over a stretch of the front's line, clockwise, is turned to the upper right."""
    return (end[0] - start[0]) + (end[1] - start[1]) > 0
