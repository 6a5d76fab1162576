"""Draw the pieces of a size: each with its letter, its name, how many, its size and its grain."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from presscloth.drawing.reals import greater, lesser, letters, on_page
from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.edition import CutPiece
from presscloth.frozen import dataclass
from presscloth.measure import Quantity, System, printed
from presscloth.outline import Drafted, cutting_line, seam_line
from presscloth.outline.flattening import box as extent
from presscloth.outline.flattening import thinned
from presscloth.recipe import tree as recipe
from presscloth.tongue import measured, named, say

ROOM = 180.0
"""Width of a drawing in mm; fits between the margins of A4 and Letter."""

TALLEST = 34.0
WIDEST = 44.0
LEAST = 4.0
LETTERS = 2.9
LEADING = 3.9
GAP = 7.0
CLOSE = 0.05
"""mm on the page; how near a curve in a small drawing keeps to its true line."""


@dataclass(frozen=True, slots=True)
class _Box:
    """A piece with the size at which it is drawn, in mm, and the lines of words below it."""

    piece: CutPiece
    width: float
    height: float
    words: tuple[str, ...]

    @property
    def room(self) -> float:
        """How wide it stands on the page, words included."""
        return greater(self.width, greater(*(letters(line) for line in self.words)) * LETTERS * 0.52)


def draw_pieces(pieces: Sequence[CutPiece], systems: Sequence[System]) -> tuple[Drawing, ...]:
    """One drawing for each row of pieces, all to one scale, as they lie on the cloth.

    A piece without a size (a button) is not drawn. What would be thinner than 4 mm is drawn 4 mm
    thick, and the caption says so.
    """
    drawn = [piece for piece in pieces if piece.width is not None or piece.height is not None]
    if not drawn:
        return ()
    scale = _scale(drawn)
    boxes = [_box(piece, scale, systems) for piece in drawn]
    *rows, last = _rows(boxes)
    caption = say("Drawn to one scale.")
    if any(_thickened(piece, scale) for piece in drawn):
        caption = say("Drawn to one scale; thin pieces are drawn thicker than they are.")
    return (*(_row(row, "") for row in rows), _row(last, caption))


def _extent(piece: CutPiece) -> tuple[float, float]:
    """Width and height in mm; a circle is as high as it is wide, a length is a strip."""
    width = on_page(piece.width.metric) if piece.width else 0.0
    height = on_page(piece.height.metric) if piece.height else 0.0
    if piece.shape is recipe.Shape.RECTANGLE:
        return width, height
    return width, height or width


def _scale(pieces: Sequence[CutPiece]) -> float:
    extents = [_extent(piece) for piece in pieces]
    widest = greater(*(width for width, _ in extents)) or 1.0
    tallest = greater(*(height for _, height in extents)) or 1.0
    return lesser(WIDEST / widest, TALLEST / tallest)


def _thickened(piece: CutPiece, scale: float) -> bool:
    return lesser(*(side * scale for side in _extent(piece))) < LEAST


def _box(piece: CutPiece, scale: float, systems: Sequence[System]) -> _Box:
    width, height = (greater(LEAST, side * scale) for side in _extent(piece))
    letters = "/".join(piece.keys)
    name = f"{letters} · {named(piece.name)}" if letters else named(piece.name)
    return _Box(
        piece, width, height, (name, say("cut {number}", number=piece.count), *size_words(piece, systems))
    )


def size_words(piece: CutPiece, systems: Sequence[System]) -> tuple[str, ...]:
    """The cut size, a line for each system: `21 cm × 26 cm`, `8 1/4 in × 10 1/4 in`."""
    sides = [side for side in (piece.width, piece.height) if isinstance(side, Quantity)]
    return tuple(" × ".join(measured(printed(s, system, cut=True).text) for s in sides) for system in systems)


def _rows(boxes: Sequence[_Box]) -> Iterator[list[_Box]]:
    row: list[_Box] = []
    used = 0.0
    for box in boxes:
        if row and used + GAP + box.room > ROOM:
            yield row
            row, used = [], 0.0
        row.append(box)
        used += box.room + (GAP if len(row) > 1 else 0.0)
    yield row


def _row(row: Sequence[_Box], caption: str) -> Drawing:
    tall = greater(*(box.height for box in row))
    lines = max(len(box.words) for box in row)
    shapes: list[Shape] = []
    x = 0.5
    for box in row:
        shapes += _piece(box, x + box.room / 2, tall + 0.5)
        x += box.room + GAP
    said = "; ".join(box.words[0] for box in row)  # their measures stand in the cutting list
    return Drawing(
        width=lesser(ROOM + 1.0, x - GAP + 0.5),
        height=tall + 1.0 + 1.5 + lines * LEADING,
        shapes=tuple(shapes),
        alt=say("Pieces to cut, drawn to one scale: {pieces}.", pieces=said),
        caption=caption,
    )


def _piece(box: _Box, middle: float, bottom: float) -> Iterator[Shape]:
    left, top = middle - box.width / 2, bottom - box.height
    right = left + box.width
    match box.piece.shape:
        case recipe.Shape.CIRCLE:
            yield Disc(middle, bottom - box.width / 2, box.width / 2, Ink.CLOTH, Ink.CUT)
        case recipe.Shape.HALF_SQUARE:
            yield Area(((left, top), (left, bottom), (right, bottom)), Ink.CLOTH, Ink.CUT)
            yield Line(((left, top), (right, top), (right, bottom)), Ink.HIDDEN)
        case recipe.Shape.QUARTER_SQUARE:
            centre = (middle, (top + bottom) / 2)
            yield Area(((left, bottom), centre, (right, bottom)), Ink.CLOTH, Ink.CUT)
            yield Line(((left, bottom), (left, top), (right, top), (right, bottom)), Ink.HIDDEN)
        case recipe.Shape.OUTLINE if box.piece.outline is not None:
            yield from _shaped(box.piece.outline, (left, top), box.width)
        case recipe.Shape.RECTANGLE | recipe.Shape.OUTLINE:
            corners = ((left, top), (right, top), (right, bottom), (left, bottom))
            yield Area(corners, Ink.CLOTH, Ink.CUT)
    yield from _grain(box, middle, (top + bottom) / 2)
    for i, words in enumerate(box.words):
        y = bottom + 1.5 + (i + 0.8) * LEADING
        yield Lettering(middle, y, words, LETTERS, bold=i == 0)


def _shaped(outline: Drafted, corner: tuple[float, float], width: float) -> Iterator[Shape]:
    """A piece in its true shape, its seam line inside, in the numbers of the metric system."""
    cut = cutting_line(outline.metric, System.METRIC)
    left, top, right, _ = extent(cut)
    scale = width / (right - left)
    close = CLOSE * (right - left) / WIDEST

    def there(points: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
        return tuple((corner[0] + (x - left) * scale, corner[1] + (y - top) * scale) for x, y in points)

    yield Area(there(thinned(cut, close)), Ink.CLOTH, Ink.CUT)
    for edge in outline.metric.edges:
        if edge.allowance <= 0:
            continue  # it is cut where it is sewn
        yield Line(there(thinned(seam_line(edge, System.METRIC), close)), Ink.SEAM)


def _grain(box: _Box, x: float, y: float) -> Iterator[Shape]:
    """The grain arrow: along the selvedge is up the page."""
    reach = lesser(12.0, 0.6 * lesser(box.width, box.height) if _slanted(box) else _along(box))
    match box.piece.grain:
        case recipe.Grain.ALONG:
            yield Arrow((x, y + reach / 2), (x, y - reach / 2), Ink.GRAIN, both=True)
        case recipe.Grain.ACROSS:
            yield Arrow((x - reach / 2, y), (x + reach / 2, y), Ink.GRAIN, both=True)
        case recipe.Grain.BIAS:
            part = reach / 2**1.5
            yield Arrow((x - part, y + part), (x + part, y - part), Ink.GRAIN, both=True)
        case recipe.Grain.ANY:
            return


def _slanted(box: _Box) -> bool:
    return box.piece.grain is recipe.Grain.BIAS


def _along(box: _Box) -> float:
    return 0.7 * (box.width if box.piece.grain is recipe.Grain.ACROSS else box.height)
