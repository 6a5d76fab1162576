"""A drawing as SVG text, to stand inside a page or by itself.

Widths and heights are in millimetres with a viewBox to match, so that one unit is one millimetre. On
paper everything that decides the look stands in attributes, for page style does not reach into a
drawing there. A web page has many drawings: there the look is in classes, one for each ink, and
`drawing_styles` writes their style sheet once.
"""

from __future__ import annotations

from html import escape
from math import atan2, ceil, cos, floor, hypot, pi, sin

from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.frozen import dataclass
from presscloth.printing.look import InkLook, Look
from presscloth.printing.svg_joining import Box, Kind, Mark, joined

Points = tuple[tuple[float, float], ...]

ARROW_HEAD = 2.2  # mm, the length of an arrow's head
CAP_TO_SIZE = 0.35  # half the height of a capital, in parts of the letters' size
WIDE_LETTER = 0.62  # no text is wider than this, in parts of its size, for each letter
USUAL_SIZE = 2.9  # mm: letters in a page's drawings are of this size where nothing else is said
HATCH_ANGLE = pi / 4


@dataclass(frozen=True, slots=True)
class Pen:
    """How shapes are written: the look in classes or in attributes; places to so many decimals of a mm."""

    look: Look
    classes: bool
    decimals: int

    def place(self, value: float) -> str:
        """A number of millimetres without needless zeros."""
        text = f"{value:.{self.decimals}f}".rstrip("0").rstrip(".")
        return "0" if text in ("-0", "") else text

    def run(self, points: Points, closed: bool = False) -> str:
        """A run of straight lines as a path: its start, then the way from each point to the next."""
        whole = [self._whole(point) for point in points]
        if closed and whole[-1] == whole[0]:
            whole.pop()
        x, y = whole[0]
        return f"M{self._short(x)}{self._apart(y)}{self._way(whole)}" + ("z" if closed else "")

    def further(self, points: Points, after: tuple[float, float]) -> str:
        """A run that begins some way from where the pen stands, `after` the point that it drew last."""
        x, y = self._whole(after)
        whole = [self._whole(point) for point in points]
        to_x, to_y = whole[0]
        return f"m{self._short(to_x - x)}{self._apart(to_y - y)}{self._way(whole)}"

    def _whole(self, point: tuple[float, float]) -> tuple[int, int]:
        unit = 10**self.decimals
        return round(point[0] * unit), round(point[1] * unit)

    def _way(self, whole: list[tuple[int, int]]) -> str:
        """From each point to the next, in the smallest unit that is written."""
        x, y = whole[0]
        parts = []
        slanting = False
        for to_x, to_y in whole[1:]:
            across, down = to_x - x, to_y - y
            if across and down:  # the letter l need not be said again
                start = self._apart(across) if slanting else f"l{self._short(across)}"
                parts.append(start + self._apart(down))
            else:
                parts.append(f"h{self._short(across)}" if across else f"v{self._short(down)}")
            slanting = bool(across and down)
            x, y = to_x, to_y
        return "".join(parts)

    def _short(self, units: int) -> str:
        text = self.place(units / 10**self.decimals)
        return text.replace("0.", ".", 1) if text.startswith(("0.", "-0.")) else text

    def _apart(self, units: int) -> str:
        """A second number, told apart from the first by its own sign or by a space."""
        text = self._short(units)
        return text if text.startswith("-") else f" {text}"

    def paint(self, fill: Ink | None, edge: Ink | None) -> str:
        """The attributes of a shape that is filled, edged, or both."""
        if self.classes:
            names = " ".join(_class(ink) for ink in (fill, edge) if ink is not None)
            return f' class="{names}"'
        filled = f' fill="{escape(self.look.inks[fill].fill)}"' if fill is not None else ""
        return filled + (_stroke(self.look.inks[edge], self) if edge is not None else "")


def svg(
    drawing: Drawing, look: Look, ident: str, widest: float, classes: bool = False, head: str = ""
) -> str:
    """Write a drawing as SVG, its look in attributes or, for a web page, in classes.

    `ident` begins every id inside and must be unique in the page. The drawing is as large as the
    look wants it, and no wider than `widest` mm; it is scaled as a whole, its letters too. `head` stands
    before what is drawn: a file by itself has its letters there.
    """
    pen = Pen(look, classes, decimals=1 if classes else 3)
    scale = scale_of(drawing, look, widest)
    marks = [mark for shape in drawing.shapes for mark in _marks(shape, pen)]
    shown = "".join(_element(mark, pen, f"{ident}-{place}") for place, mark in enumerate(joined(marks)))
    high = "" if classes else f' height="{pen.place(drawing.height * scale)}mm"'  # a page gives it itself
    return (
        f"<svg{_root(pen)}"
        f' width="{pen.place(drawing.width * scale)}mm"{high}'
        f' viewBox="0 0 {pen.place(drawing.width)} {pen.place(drawing.height)}">'
        f"<title>{escape(drawing.alt or drawing.caption)}</title>"
        f"{head}{shown}</svg>"
    )


def scale_of(drawing: Drawing, look: Look, widest: float) -> float:
    """How much a drawing is enlarged: as the look wants it, as far as it fits into `widest` mm."""
    tallest = look.drawings.tall or float("inf")
    return min(look.drawings.scale, widest / drawing.width, tallest / drawing.height)


def drawing_styles(look: Look) -> str:
    """The style sheet for drawings whose look is in classes."""
    pen = Pen(look, classes=True, decimals=3)
    letters = look.lettering
    rules = [
        "svg.drawing { fill: none; stroke-linejoin: round; text-anchor: middle;"
        f" font-size: {pen.place(USUAL_SIZE)}px }}",
        f".drawing text {{ fill: {letters.colour}; font-family: {_family(look)}; stroke: none }}",
        ".drawing .bold { font-weight: 600 }",
        ".drawing .from { text-anchor: start }",
    ]
    for ink, inked in look.inks.items():
        dash = f"; stroke-dasharray: {' '.join(map(pen.place, inked.dash))}" if inked.dash else ""
        line = [f"stroke: {inked.colour}; stroke-width: {pen.place(inked.line)}{dash}"] if inked.line else []
        fill = [f"fill: {inked.fill}"] if inked.fill != "none" else []
        rules.append(f".drawing .{_class(ink)} {{ {'; '.join(fill + line)} }}")
    return "\n".join(rules) + "\n"


def _root(pen: Pen) -> str:
    """What every shape takes over from the drawing as a whole."""
    if pen.classes:
        return ' class="drawing" role="img"'
    return (
        ' xmlns="http://www.w3.org/2000/svg" role="img" fill="none" stroke-linejoin="round"'
        f' text-anchor="middle" font-family="{escape(_family(pen.look), quote=True)}"'
    )


def _class(ink: Ink) -> str:
    return ink.value.replace(" ", "-")


def _family(look: Look) -> str:
    return f"{look.lettering.family}, {look.lettering.instead}"


# -- shapes --------------------------------------------------------------------------------------


def _marks(shape: Shape, pen: Pen) -> tuple[Mark, ...]:
    match shape:
        case Line(points, ink):
            return (Mark(Kind.LINES, pen.paint(None, ink), _box(points), pen.run(points)),)
        case Area(points, ink, edge):
            return _filled(pen.run(points, closed=True), _box(points), ink, edge, pen)
        case Disc(x, y, radius, ink, edge):
            box = (x - radius, y - radius, x + radius, y + radius)
            return _filled(_circle(x, y, radius, pen), box, ink, edge, pen)
        case Arrow(start, end, ink, both):
            return _arrow(start, end, both, ink, pen)
        case Lettering():
            return (_lettering(shape, pen),)


def _filled(outline: str, box: Box, ink: Ink, edge: Ink | None, pen: Pen) -> tuple[Mark, ...]:
    """A filled or hatched outline with its edge."""
    inked = pen.look.inks[ink]
    fill = ink if inked.fill != "none" else None
    if not inked.hatch:
        kind = Kind.LINES if fill is None else Kind.FILLING
        return (Mark(kind, pen.paint(fill, edge), box, outline),) if fill or edge else ()
    filled = (Mark(Kind.FILLING, pen.paint(fill, None), box, outline),) if fill else ()
    edged = (Mark(Kind.LINES, pen.paint(None, edge), box, outline),) if edge else ()
    return (*filled, Mark(Kind.HATCHING, pen.paint(None, ink), box, outline, inked.hatch), *edged)


def _circle(x: float, y: float, radius: float, pen: Pen) -> str:
    half = f"a{pen.place(radius)} {pen.place(radius)} 0 1 0 "
    across = pen.place(2 * radius)
    return f"M{pen.place(x - radius)} {pen.place(y)}{half}{across} 0{half}-{across} 0z"


def _hatch(box: Box, distance: float, pen: Pen) -> str:
    """Slanting lines over a box, `distance` mm apart; neighbouring areas share their raster."""
    left, top, right, bottom = box
    step = distance / sin(HATCH_ANGLE)
    first, last = ceil((left + top) / step), floor((right + bottom) / step)
    runs = []
    for number in range(first, last + 1):
        total = number * step  # the line on which x + y is this much
        start = (max(left, total - bottom), min(bottom, total - left))
        end = (min(right, total - top), max(top, total - right))
        runs.append(pen.run((start, end)))
    return "".join(runs)


def _arrow(
    start: tuple[float, float], end: tuple[float, float], both: bool, ink: Ink, pen: Pen
) -> tuple[Mark, ...]:
    """The shaft and its heads in one path; a head is never dashed."""
    head = _head(start, end)
    path = pen.run((start, end)) + pen.further(head, after=end)
    if both:
        path += pen.further(_head(end, start), after=head[-1])
    return (Mark(Kind.LINES, pen.paint(None, ink), _box((start, end)), path),)


def _head(start: tuple[float, float], end: tuple[float, float]) -> Points:
    """An open head at `end`, never longer than a third of its arrow."""
    along = atan2(end[1] - start[1], end[0] - start[0])
    length = min(ARROW_HEAD, hypot(end[0] - start[0], end[1] - start[1]) / 3)
    barbs = [
        (end[0] - length * cos(along + turn), end[1] - length * sin(along + turn))
        for turn in (-pi / 7, pi / 7)
    ]
    return barbs[0], end, barbs[1]


def _lettering(words: Lettering, pen: Pen) -> Mark:
    x, y = pen.place(words.x), pen.place(words.y + words.size * CAP_TO_SIZE)
    turned = (
        f' transform="rotate({pen.place(words.turned)} {x} {pen.place(words.y)})"' if words.turned else ""
    )
    text = f'<text x="{x}" y="{y}"{turned}>{escape(words.text)}</text>'
    return Mark(Kind.WORDS, _hand(words, pen), _box_of_words(words), text)


def _hand(words: Lettering, pen: Pen) -> str:
    """The attributes that say how words are written."""
    if not pen.classes:
        anchor = f' text-anchor="{escape(words.anchor)}"' if words.anchor != "middle" else ""
        weight = ' font-weight="600"' if words.bold else ""
        colour = f' fill="{escape(pen.look.lettering.colour)}"'
        return f' font-size="{pen.place(words.size)}"{anchor}{colour}{weight}'
    kinds = [name for name, holds in (("bold", words.bold), ("from", words.anchor == "start")) if holds]
    anchor = ' text-anchor="end"' if words.anchor == "end" else ""
    size = f' font-size="{pen.place(words.size)}"' if words.size != USUAL_SIZE else ""
    return (f' class="{" ".join(kinds)}"' if kinds else "") + anchor + size


def _box_of_words(words: Lettering) -> Box:
    """A box that holds the words, whichever way they are turned and from wherever they run."""
    long = len(words.text) * words.size * WIDE_LETTER / (2 if words.anchor == "middle" else 1)
    high = words.size * 0.6
    if abs(words.turned) == 90:
        across, down = high, long
    else:
        across, down = long, high if words.turned == 0 else long
    return words.x - across, words.y - down, words.x + across, words.y + down


def _element(mark: Mark, pen: Pen, ident: str) -> str:
    match mark.kind:
        case Kind.WORDS if not mark.paint:
            return mark.path
        case Kind.WORDS if mark.path.count("<text") == 1:
            return mark.path.replace("<text", f"<text{mark.paint}", 1)
        case Kind.WORDS:
            return f"<g{mark.paint}>{mark.path}</g>"
        case Kind.LINES | Kind.FILLING:
            return f'<path{mark.paint} d="{mark.path}"/>'
        case Kind.HATCHING if pen.classes:
            return _patterned(mark, pen, ident)
        case Kind.HATCHING:
            return (
                f'<clipPath id="{ident}"><path d="{mark.path}"/></clipPath>'
                f'<path{mark.paint} d="{"".join(_hatch(box, mark.hatch, pen) for box in mark.boxes)}"'
                f' clip-path="url(#{ident})"/>'
            )


def _patterned(mark: Mark, pen: Pen, ident: str) -> str:
    """A hatch as browsers draw it, from one line that is repeated; paper's writer knows no patterns."""
    distance = pen.place(mark.hatch)
    return (
        f'<pattern id="{ident}" width="{distance}" height="{distance}" patternUnits="userSpaceOnUse"'
        f' patternTransform="rotate(45)"><path{mark.paint} d="M0 0v{distance}"/></pattern>'
        f'<path fill="url(#{ident})" d="{mark.path}"/>'
    )


def _stroke(inked: InkLook, pen: Pen) -> str:
    dash = f' stroke-dasharray="{" ".join(pen.place(part) for part in inked.dash)}"' if inked.dash else ""
    return f' stroke="{escape(inked.colour)}" stroke-width="{pen.place(inked.line)}"{dash}'


def _box(points: Points) -> Box:
    across, down = [x for x, _ in points], [y for _, y in points]
    return min(across), min(down), max(across), max(down)
