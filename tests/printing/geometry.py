"""Read what is drawn in a PDF: lines with their places in millimetres, from the content of its pages."""

from __future__ import annotations

from dataclasses import dataclass

import pikepdf

Point = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]

LAYOUT_HEIGHT = 279.4
"""mm; the layout from whose lower left corner a page's places are measured, whatever the paper."""


@dataclass(frozen=True)
class Drawn:
    """A stroked run of lines: its points from the upper left corner of the layout, and its pen in mm."""

    points: tuple[Point, ...]
    width: float
    dash: tuple[float, ...]

    @property
    def closed(self) -> bool:
        return self.points[0] == self.points[-1]


def strokes(page: pikepdf.Page) -> list[Drawn]:
    """Everything that is stroked on a page, curves by their end points."""
    return _read(pikepdf.parse_content_stream(page), (1, 0, 0, 1, 0, 0))


def _times(one: Matrix, other: Matrix) -> Matrix:
    """One matrix, then the other (ISO 32000-1, 8.3.4)."""
    a, b, c, d, e, f = one
    p, q, r, s, t, u = other
    return (a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u)


def _read(content: list, matrix: Matrix) -> list[Drawn]:
    found: list[Drawn] = []
    kept: list[tuple[Matrix, float, tuple[float, ...]]] = []
    width, dash = 1.0, ()
    runs: list[list[Point]] = []

    def there(x: float, y: float) -> Point:
        a, b, c, d, e, f = matrix
        across, up = a * x + c * y + e, b * x + d * y + f
        return across * 25.4 / 72, LAYOUT_HEIGHT - up * 25.4 / 72

    for operands, operator in content:
        numbers = [float(each) for each in operands if isinstance(each, int | float) or _is_number(each)]
        match str(operator):
            case "q":
                kept.append((matrix, width, dash))
            case "Q":
                matrix, width, dash = kept.pop()
            case "cm":
                matrix = _times(tuple(numbers), matrix)
            case "w":
                width = numbers[0]
            case "d":
                dash = tuple(float(each) for each in operands[0])
            case "m":
                runs.append([there(*numbers)])
            case "l":
                runs[-1].append(there(*numbers))
            case "c":
                runs[-1].append(there(*numbers[-2:]))
            case "re":
                x, y, w, h = numbers
                corners = ((x, y), (x + w, y), (x + w, y + h), (x, y + h), (x, y))
                runs.append([there(*corner) for corner in corners])
            case "h":
                runs[-1].append(runs[-1][0])
            case "S" | "s" | "B" | "B*":
                if str(operator) == "s":
                    runs[-1].append(runs[-1][0])
                scale = abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]) ** 0.5 * 25.4 / 72
                pen = width * scale, tuple(each * scale for each in dash)
                found += [Drawn(tuple(run), *pen) for run in runs if len(run) > 1]
                runs = []
            case "n" | "f" | "f*":
                runs = []
    return found


def _is_number(each: object) -> bool:
    try:
        float(each)  # type: ignore[arg-type]
    except (TypeError, ValueError):
        return False
    return True
