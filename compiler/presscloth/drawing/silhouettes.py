"""The true line of a piece that is cut by an outline, where it lies in a drawing of what is sewn."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from presscloth.drawing.panels import Point
from presscloth.frozen import dataclass
from presscloth.measure import System
from presscloth.outline import Drafted, cutting_line, seam_line
from presscloth.outline.flattening import box, thinned
from presscloth.sewing.placing import Part

CLOSE = 0.002
"""Of the width of a piece: how near a curve in a drawing of a step keeps to its true line."""


@dataclass(frozen=True, slots=True)
class Place:
    """A rectangle on the page that a piece fills, turned clockwise by so many quarters."""

    x: float
    y: float
    width: float
    height: float
    quarters: int = 0

    def at(self, across: float, down: float) -> Point:
        """Where a point lies that is so far across and down the piece, both from 0 to 1."""
        for _ in range(self.quarters % 4):
            across, down = 1.0 - down, across
        return self.x + self.width * across, self.y + self.height * down


def only_piece(parts: Iterable[Part]) -> Part | None:
    """The piece cut by an outline of which alone a thing consists, as it is seen from the front."""
    seen = [part for part in parts if not part.back]
    return seen[0] if len(seen) == 1 and seen[0].outline is not None and seen[0].box is not None else None


def silhouette(outline: Drafted, place: Place) -> tuple[Point, ...]:
    """The line on which a piece is cut, in the numbers of the metric system."""
    return _there(outline, cutting_line(outline.metric, System.METRIC), place)


def stitched(outline: Drafted, edges: Sequence[str], place: Place) -> tuple[tuple[Point, ...], ...]:
    """The seam lines of the edges of these names."""
    return tuple(
        _there(outline, seam_line(edge, System.METRIC), place)
        for edge in outline.metric.edges
        if edge.name in edges
    )


def _there(outline: Drafted, points: Sequence[Point], place: Place) -> tuple[Point, ...]:
    left, top, right, bottom = box(cutting_line(outline.metric, System.METRIC))
    wide, high = right - left, bottom - top
    return tuple(
        place.at((x - left) / wide, (y - top) / high) for x, y in thinned(points, CLOSE * max(wide, high))
    )
