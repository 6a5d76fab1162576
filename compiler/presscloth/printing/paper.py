"""Papers, and the one page that fits both.

A handout is laid out once, as wide as A4 and as high as Letter; each paper then gets a page box
around that layout, which lies in its middle. Sizes from ISO 216 (A4) and ANSI/ASME Y14.1 (Letter).
"""

from __future__ import annotations

from collections.abc import Mapping

PAPERS: Mapping[str, tuple[float, float]] = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}

LAYOUT_WIDTH, LAYOUT_HEIGHT = 210.0, 279.4


def points(millimetres: float) -> float:
    return millimetres * 72 / 25.4


def page_box(paper: str) -> tuple[float, float, float, float]:
    """The page of a paper around the layout, in points from the layout's lower left corner."""
    width, height = PAPERS[paper]
    beside, below = (width - LAYOUT_WIDTH) / 2, (height - LAYOUT_HEIGHT) / 2
    corners = (-beside, -below, LAYOUT_WIDTH + beside, LAYOUT_HEIGHT + below)
    left, bottom, right, top = (round(points(place), 3) for place in corners)
    return left, bottom, right, top
