"""A drawing as SVG text, to stand inside a page or by itself.

Widths and heights are in millimetres with a viewBox to match, so that one unit is one millimetre.
Everything that decides the look stands in attributes: page style does not reach into a drawing.
"""

from __future__ import annotations

from html import escape
from math import atan2, ceil, cos, floor, hypot, pi, sin

from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.printing.look import InkLook, Look

Points = tuple[tuple[float, float], ...]

ARROW_HEAD = 2.2  # mm, the length of an arrow's head
CAP_TO_SIZE = 0.35  # half the height of a capital, in parts of the letters' size
HATCH_ANGLE = pi / 4


def svg(drawing: Drawing, look: Look, ident: str, widest: float) -> str:
    """Write a drawing as SVG.

    `ident` begins every id inside and must be unique in the page. The drawing is as large as the
    look wants it, and no wider than `widest` mm; it is scaled as a whole, its letters too.
    """
    scale = min(look.drawings.scale, widest / drawing.width)
    title = escape(drawing.alt or drawing.caption)
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="{ident}-title"'
        f' width="{_n(drawing.width * scale)}mm" height="{_n(drawing.height * scale)}mm"'
        f' viewBox="0 0 {_n(drawing.width)} {_n(drawing.height)}">'
        f'<title id="{ident}-title">{title}</title>'
    )
    body = "".join(
        _shape(shape, look, f"{ident}-{place}") for place, shape in enumerate(drawing.shapes, start=1)
    )
    return f"{head}{body}</svg>"


def _shape(shape: Shape, look: Look, ident: str) -> str:
    match shape:
        case Line(points, ink):
            return f'<path d="{_run(points)}" fill="none"{_stroke(look.inks[ink])}/>'
        case Area(points, ink, edge):
            outline = f"{_run(points)}Z"
            return _filled(f'<path d="{outline}"', _box(points), ink, edge, look, ident)
        case Disc(x, y, radius, ink, edge):
            round_box = (x - radius, y - radius, x + radius, y + radius)
            circle = f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(radius)}"'
            return _filled(circle, round_box, ink, edge, look, ident)
        case Arrow(start, end, ink, both):
            return _arrow(start, end, both, look.inks[ink])
        case Lettering():
            return _lettering(shape, look)


def _filled(
    outline: str, box: tuple[float, float, float, float], ink: Ink, edge: Ink | None, look: Look, ident: str
) -> str:
    """A filled or hatched outline and, over it, its edge."""
    inked = look.inks[ink]
    parts = [f'{outline} fill="{escape(inked.fill)}"/>'] if inked.fill != "none" else []
    if inked.hatch:
        parts.append(
            f'<clipPath id="{ident}-clip">{outline}/></clipPath>'
            f'<path d="{_hatch(box, inked.hatch)}" clip-path="url(#{ident}-clip)" fill="none"'
            f"{_stroke(inked)}/>"
        )
    if edge is not None:
        parts.append(f'{outline} fill="none"{_stroke(look.inks[edge])}/>')
    return "".join(parts)


def _hatch(box: tuple[float, float, float, float], distance: float) -> str:
    """Slanting lines over a box, `distance` mm apart; neighbouring areas share their raster."""
    left, top, right, bottom = box
    step = distance / sin(HATCH_ANGLE)
    first, last = ceil((left + top) / step), floor((right + bottom) / step)
    runs = []
    for number in range(first, last + 1):
        total = number * step  # the line on which x + y is this much
        start = (max(left, total - bottom), min(bottom, total - left))
        end = (min(right, total - top), max(top, total - right))
        runs.append(_run((start, end)))
    return "".join(runs)


def _arrow(start: tuple[float, float], end: tuple[float, float], both: bool, inked: InkLook) -> str:
    heads = _head(start, end) + (_head(end, start) if both else "")
    shaft = f'<path d="{_run((start, end))}" fill="none"{_stroke(inked)}/>'
    solid = f' stroke="{escape(inked.colour)}" stroke-width="{_n(inked.line)}" stroke-linecap="round"'
    return f'{shaft}<path d="{heads}" fill="none"{solid}/>'


def _head(start: tuple[float, float], end: tuple[float, float]) -> str:
    """An open head at `end`, never longer than a third of its arrow."""
    along = atan2(end[1] - start[1], end[0] - start[0])
    length = min(ARROW_HEAD, hypot(end[0] - start[0], end[1] - start[1]) / 3)
    barbs = [
        (end[0] - length * cos(along + turn), end[1] - length * sin(along + turn))
        for turn in (-pi / 7, pi / 7)
    ]
    return _run((barbs[0], end, barbs[1]))


def _lettering(words: Lettering, look: Look) -> str:
    baseline = words.y + words.size * CAP_TO_SIZE
    turned = f' transform="rotate({_n(words.turned)} {_n(words.x)} {_n(words.y)})"' if words.turned else ""
    weight = ' font-weight="600"' if words.bold else ""
    family = escape(f"{look.lettering.family}, {look.lettering.instead}", quote=True)
    return (
        f'<text x="{_n(words.x)}" y="{_n(baseline)}" font-family="{family}" font-size="{_n(words.size)}"'
        f' text-anchor="{escape(words.anchor)}" fill="{escape(look.lettering.colour)}"{weight}{turned}>'
        f"{escape(words.text)}</text>"
    )


def _stroke(inked: InkLook) -> str:
    dash = f' stroke-dasharray="{" ".join(_n(part) for part in inked.dash)}"' if inked.dash else ""
    return (
        f' stroke="{escape(inked.colour)}" stroke-width="{_n(inked.line)}"'
        f' stroke-linejoin="round" stroke-linecap="butt"{dash}'
    )


def _box(points: Points) -> tuple[float, float, float, float]:
    across, down = [x for x, _ in points], [y for _, y in points]
    return min(across), min(down), max(across), max(down)


def _run(points: Points) -> str:
    return "M" + "L".join(f"{_n(x)} {_n(y)}" for x, y in points)


def _n(value: float) -> str:
    """A number of millimetres to the thousandth, without needless zeros."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
