"""The picture that goes with a link to a recipe: its name, its finished size, a drawing, the publisher.

1200 × 630 pixels, the shape in which previews are commonly shown (common practice, no source).
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from functools import cache
from typing import TYPE_CHECKING

from presscloth.handout.tree import Booklet, Handout, Publisher
from presscloth.printing.fonts import paper_font
from presscloth.printing.likeness import likeness, shown_size
from presscloth.printing.look import Cut
from presscloth.printing.markup import by_system
from presscloth.printing.raster import raster
from presscloth.printing.theme import Theme

if TYPE_CHECKING:
    from PIL.Image import Image
    from PIL.ImageDraw import ImageDraw
    from PIL.ImageFont import FreeTypeFont

PREVIEW_FILE = "preview.png"
WIDTH, HEIGHT = 1200, 630
EDGE = 64  # pixels from the sides
COLUMN = 580  # pixels, the width of the words beside a drawing
CARD = (700, 64, 1136, 566)  # left, top, right, bottom of the paper on which the drawing lies
CARD_EDGE = 28
TITLE_SIZES = (76, 66, 56, 48)
LEADING = 1.12  # of a title's lines, in parts of its size
STITCH, GAP = 18, 11  # pixels: the running stitch below the title
ABOVE_STITCH, BELOW_STITCH = 26, 34
LINE, SMALL_LINE = (34, 46), (26, 40)  # the size of letters and the height of their line
NAME = 32
LOWEST = HEIGHT - EDGE - NAME - 12  # words end above the publisher's name
FEWER_COLOURS = 64  # a picture of lines needs no more, and is a third as large


def preview(booklet: Booklet, theme: Theme, publisher: Publisher) -> bytes:
    """Draw the picture as PNG; the same recipe gives the same bytes."""
    from PIL import Image, ImageDraw

    card = theme.look.card
    picture = Image.new("RGB", (WIDTH, HEIGHT), card.ground)
    on = ImageDraw.Draw(picture)
    drawing = likeness(booklet)
    if drawing is not None:
        left, top, right, bottom = CARD
        on.rounded_rectangle(CARD, radius=10, fill=card.paper)
        size = (right - left - 2 * CARD_EDGE, bottom - top - 2 * CARD_EDGE)
        drawn = raster(drawing, theme.look, *size, card.paper)
        picture.paste(drawn, (left + CARD_EDGE, top + CARD_EDGE))
    _words(on, booklet, theme, publisher, COLUMN if drawing is not None else WIDTH - 2 * EDGE)
    return _png(picture)


def preview_words(booklet: Booklet, publisher: Publisher) -> str:
    """What stands in the picture, for whoever does not see it."""
    handout = shown_size(booklet)
    return ", ".join((booklet.first.title, *_measures(handout), publisher.name))


def _words(on: ImageDraw, booklet: Booklet, theme: Theme, publisher: Publisher, width: int) -> None:
    card = theme.look.card
    below = tuple(_below(booklet))
    room = LOWEST - EDGE - ABOVE_STITCH - BELOW_STITCH - sum(height for _, (_, height) in below)
    title, lines = _fitted(booklet.first.title, theme, width, room)
    down: float = EDGE
    for line in lines:
        on.text((EDGE, down), line, fill=card.ink, font=title, anchor="la")
        down += title.size * LEADING
    down += ABOVE_STITCH
    for across in range(EDGE, EDGE + width - STITCH, STITCH + GAP):
        on.line((across, down, across + STITCH, down), fill=card.accent, width=4)
    down += BELOW_STITCH
    for line, (size, height) in below:
        font = _font(_cut(theme, card.text, heaviest=False), size)
        on.text((EDGE, down), _cut_short(line, font, width), fill=card.soft, font=font, anchor="la")
        down += height
    name = _font(_cut(theme, card.text, heaviest=True), NAME)
    foot = (EDGE, HEIGHT - EDGE)
    on.text(foot, _cut_short(publisher.name, name, width), fill=card.accent, font=name, anchor="ls")


def _below(booklet: Booklet) -> Iterator[tuple[str, tuple[int, int]]]:
    """The lines below the title, each with the size of its letters and its height."""
    handout = shown_size(booklet)
    measures = _measures(handout)
    for line in measures:
        yield line, LINE
    if measures:
        yield " × ".join(name for name, _ in handout.finished[0].sides), SMALL_LINE
    if not handout.only_size:
        yield " · ".join(each.size for each in booklet.handouts), LINE


def _measures(handout: Handout) -> tuple[str, ...]:
    """The finished size of the first article, a line for each system."""
    if not handout.finished:
        return ()
    sides = handout.finished[0].sides
    systems = by_system(sides) if sides else None
    return tuple(" × ".join(texts) for _, texts in systems or ())


# -- letters -------------------------------------------------------------------------------------


def _fitted(title: str, theme: Theme, width: int, room: float) -> tuple[FreeTypeFont, tuple[str, ...]]:
    """The largest letters in which a title fits, and its lines; in the smallest it is cut short."""
    cut = _cut(theme, theme.look.card.title, heaviest=True)
    for size in TITLE_SIZES:
        font = _font(cut, size)
        lines = _lines(title, font, width)
        most = int(room // (size * LEADING))
        if len(lines) <= most and all(font.getlength(line) <= width for line in lines):
            return font, lines
    whole, rest = lines[: most - 1], " ".join(lines[most - 1 :])
    return font, tuple(_cut_short(line, font, width) for line in (*whole, rest) if line)


def _lines(text: str, font: FreeTypeFont, width: int) -> tuple[str, ...]:
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and font.getlength(longer) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


def _cut_short(line: str, font: FreeTypeFont, width: int) -> str:
    """A line as it is, or as much of it as there is room for and an ellipsis."""
    if font.getlength(line) <= width:
        return line
    while line and font.getlength(f"{line}…") > width:
        line = line[:-1].rstrip()
    return f"{line}…"


def _cut(theme: Theme, family: str, *, heaviest: bool) -> Cut:
    upright = [cut for cut in theme.look.fonts if not cut.italic]
    held = [cut for cut in upright if cut.family == family] or upright or list(theme.look.fonts)
    by_weight = sorted(held, key=lambda cut: cut.weight)
    return by_weight[-1 if heaviest else 0]


@cache
def _font(cut: Cut, size: int) -> FreeTypeFont:
    """Letters set one after another: finer setting depends on what a machine has installed."""
    from PIL import ImageFont

    return ImageFont.truetype(io.BytesIO(paper_font(cut)), size, layout_engine=ImageFont.Layout.BASIC)


def _png(picture: Image) -> bytes:
    from PIL import Image

    written = io.BytesIO()
    fewer = picture.quantize(FEWER_COLOURS, method=Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE)
    fewer.save(written, "PNG", optimize=True)
    return written.getvalue()
