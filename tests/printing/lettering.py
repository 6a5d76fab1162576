"""How large the words of a finished PDF are: every piece of text with its size on the paper in points."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

import pikepdf

Matrix = tuple[float, float, float, float, float, float]
PLAIN: Matrix = (1, 0, 0, 1, 0, 0)


def times(one: Matrix, other: Matrix) -> Matrix:
    """The matrix that does `one` and then `other`: ISO 32000-1, 8.3.3."""
    a, b, c, d, e, f = one
    g, h, i, j, k, m = other
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + m)


def sizes(page: pikepdf.Page | pikepdf.Object, drawn_on: Matrix = PLAIN) -> Iterator[float]:
    """The size in points of every text that is shown on a page, forms within it too."""
    place, kept = drawn_on, []
    size, line = 0.0, PLAIN
    for operands, operator in pikepdf.parse_content_stream(page):
        match str(operator):
            case "q":
                kept.append((place, size))
            case "Q":
                place, size = kept.pop()
            case "cm":
                place = times(_matrix(operands), place)
            case "BT":
                line = PLAIN
            case "Tf":
                size = float(operands[1])
            case "Tm":
                line = _matrix(operands)
            case "Tj" | "TJ" if size:
                _, _, c, d, _, _ = times(line, place)
                yield size * hypot(c, d)
            case "Do":
                form = page.Resources.XObject[operands[0]]
                if form.get("/Subtype") == "/Form":
                    yield from sizes(form, times(_matrix(form.get("/Matrix", PLAIN)), place))


def _matrix(operands: object) -> Matrix:
    a, b, c, d, e, f = (float(each) for each in operands)  # type: ignore[attr-defined]
    return a, b, c, d, e, f
