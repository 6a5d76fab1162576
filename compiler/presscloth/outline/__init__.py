"""Geometry of pieces cut by an outline: runs with numbers in, seam line and cutting line out.

`draft` puts the runs of one system together, `lengths` measures them, `flattening` and `joints` give
the lines that are printed and laid out. Points are exact (x to the right, y downwards, in mm or in);
floats come in where a line is drawn, and nowhere before.
"""

from presscloth.outline.drafting import Bend, RunGiven, draft
from presscloth.outline.flattening import cutting_line, seam_line
from presscloth.outline.shape import Closing, Contour, Drafted, Edge, Traced

__all__ = [
    "Bend",
    "Closing",
    "Contour",
    "Drafted",
    "Edge",
    "RunGiven",
    "Traced",
    "cutting_line",
    "draft",
    "seam_line",
]
