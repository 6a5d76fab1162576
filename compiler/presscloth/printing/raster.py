"""A drawing as pixels. It is drawn several times too large and reduced, which makes its edges smooth."""

from __future__ import annotations

from itertools import pairwise
from math import atan2, ceil, cos, floor, hypot, pi, sin
from typing import TYPE_CHECKING

from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.printing.look import InkLook, Look
from presscloth.printing.svg import ARROW_HEAD

if TYPE_CHECKING:
    from PIL.Image import Image
    from PIL.ImageDraw import ImageDraw

Points = tuple[tuple[float, float], ...]

FINER = 4  # times as many pixels each way as are wanted
THINNEST = 1.5  # pixels: a line that is thinner can hardly be seen
HEAD_TURNS = (-pi / 7, pi / 7)


def raster(drawing: Drawing, look: Look, width: int, height: int, ground: str) -> Image:
    """Draw on a box of pixels, as large as fits and in its middle. Letters are left out."""
    from PIL import Image, ImageDraw

    box = Image.new("RGB", (width * FINER, height * FINER), ground)
    scale = min(width / drawing.width, height / drawing.height) * FINER
    at = (
        (width * FINER - drawing.width * scale) / 2,
        (height * FINER - drawing.height * scale) / 2,
    )
    pen = _Pen(box, ImageDraw.Draw(box), look, scale, at)
    for shape in drawing.shapes:
        pen.draw(shape)
    return box.reduce(FINER)


class _Pen:
    """Draws shapes that are given in mm."""

    def __init__(
        self, box: Image, draw: ImageDraw, look: Look, scale: float, at: tuple[float, float]
    ) -> None:
        self.box, self.on, self.look, self.scale, self.at = box, draw, look, scale, at

    def draw(self, shape: Shape) -> None:
        match shape:
            case Line(points, ink):
                self.run(self.placed(points), self.look.inks[ink])
            case Area(points, ink, edge):
                outline = self.placed(points)
                self.filled(outline, self.look.inks[ink])
                if edge is not None:
                    self.run((*outline, outline[0]), self.look.inks[edge])
            case Disc(x, y, radius, ink, edge):
                self.draw(Area(_round(x, y, radius), ink, edge))
            case Arrow(start, end, ink, both):
                self.arrow(start, end, ink)
                if both:
                    self.arrow(end, start, ink)
            case Lettering():
                pass

    def placed(self, points: Points) -> Points:
        return tuple((self.at[0] + x * self.scale, self.at[1] + y * self.scale) for x, y in points)

    def filled(self, outline: Points, look: InkLook) -> None:
        if look.fill != "none":
            self.on.polygon(outline, fill=look.fill)
        if look.hatch:
            self.hatched(outline, look)

    def hatched(self, outline: Points, look: InkLook) -> None:
        """Slanting lines that show through a mask in the shape of the outline."""
        from PIL import Image, ImageDraw

        mask = Image.new("1", self.box.size)
        ImageDraw.Draw(mask).polygon(outline, fill=1)
        lines = self.box.copy()
        pen = _Pen(lines, ImageDraw.Draw(lines), self.look, self.scale, self.at)
        left, right = min(x for x, _ in outline), max(x for x, _ in outline)
        top, bottom = min(y for _, y in outline), max(y for _, y in outline)
        step = look.hatch * self.scale / sin(pi / 4)
        for number in range(ceil((left + top) / step), floor((right + bottom) / step) + 1):
            total = number * step  # the line on which x + y is this much
            pen.run(((total - bottom, bottom), (total - top, top)), look)
        self.box.paste(lines, mask=mask)

    def arrow(self, start: tuple[float, float], end: tuple[float, float], ink: Ink) -> None:
        along = atan2(end[1] - start[1], end[0] - start[0])
        length = min(ARROW_HEAD, hypot(end[0] - start[0], end[1] - start[1]) / 3)
        barbs = [
            (end[0] - length * cos(along + turn), end[1] - length * sin(along + turn)) for turn in HEAD_TURNS
        ]
        self.run(self.placed((start, end)), self.look.inks[ink])
        self.run(self.placed((barbs[0], end, barbs[1])), self.look.inks[ink])

    def run(self, points: Points, look: InkLook) -> None:
        """A line through points, dashed where the ink is."""
        if not look.line:
            return
        thick = round(max(look.line * self.scale, THINNEST * FINER))
        dashes = tuple(part * self.scale for part in look.dash)
        for run in _dashed(points, dashes) if dashes else (points,):
            self.on.line(run, fill=look.colour, width=thick, joint="curve")


def _round(x: float, y: float, radius: float) -> Points:
    corners = 96
    turns = (2 * pi * number / corners for number in range(corners))
    return tuple((x + radius * cos(turn), y + radius * sin(turn)) for turn in turns)


def _dashed(points: Points, dashes: tuple[float, ...]) -> list[Points]:
    """The parts of a run on which the pen is down: `dashes` are lengths on and off in turn."""
    found: list[Points] = []
    number, left = 0, dashes[0]
    for (x, y), (to_x, to_y) in pairwise(points):
        whole = hypot(to_x - x, to_y - y)
        done = 0.0
        while whole - done > 1e-9:
            step = min(left, whole - done)
            if number % 2 == 0:
                found.append(
                    tuple(
                        (x + (to_x - x) * part / whole, y + (to_y - y) * part / whole)
                        for part in (done, done + step)
                    )
                )
            done, left = done + step, left - step
            if left <= 1e-9:
                number += 1
                left = dashes[number % len(dashes)]
    return found
