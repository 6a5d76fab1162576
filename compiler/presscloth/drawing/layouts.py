"""Draw a cutting layout: the cloth with its selvedges, the pieces as they lie, what is left hatched.

The cloth lies in one layer across the page, its selvedges above and below, as it lies on a long table;
the cut end is at the left. Pieces bear their name and size, or a number that the caption explains.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from presscloth.cutting.buying import Purchase
from presscloth.cutting.laid import Lying, OnCloth
from presscloth.cutting.pieces import PER_MM, as_cut, length_of
from presscloth.cutting.sections import sections
from presscloth.cutting.terms import has
from presscloth.drawing.dimensions import LETTERS, across, breadth, breadth_aside, down
from presscloth.drawing.pieces import size_words
from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.edition import CutPiece
from presscloth.measure import Kind, Quantity, System, printed
from presscloth.outline import cutting_line
from presscloth.outline.flattening import box as extent
from presscloth.outline.flattening import thinned
from presscloth.recipe import tree
from presscloth.recipe.materials import FIXED
from presscloth.recipe.tree import NoteKind
from presscloth.tongue import many, measured, named, say

WIDEST, TALLEST = 64.0, 40.0
TALLER = 1.6
"""How much taller a drawing may grow, so that a number finds room on its narrowest piece."""

LARGE = 1.5
"""How much larger a section for many kits is drawn: it has more and smaller pieces."""

SLIVER = 0.02
CLOSE = 0.05
"""mm on the page: by how much a box may miss a piece's size; how near a line keeps to its curve."""

NARROW = 4.0
"""mm on the page: the marks of pieces no broader than this stand in turns at three places."""

MARGIN = 1.5
ARROW = 14.0

Box = tuple[float, float, float, float]
"""Left, top, breadth and depth of what a piece takes on the page, in mm."""


def draw_layouts(purchase: Purchase, system: System, what_for: str = "") -> tuple[Drawing, ...]:
    """One drawing for each length or sheet of cloth that differs, in the sizes of one system.

    `what_for` is said with the material's name (`with the optional pocket`).
    """
    alike = Counter(cloth for cloth in purchase.by_system[system].cloths if cloth.pieces)
    return _drawn(purchase, system, what_for, tuple(alike.items()), 1.0)


def draw_sections(purchase: Purchase, system: System) -> tuple[Drawing, ...]:
    """As `draw_layouts`, for many kits: a long cloth in sections, each with how often it is cut."""
    if purchase.material.form in FIXED:
        return draw_layouts(purchase, system)
    found = [each for cloth in purchase.by_system[system].cloths for each in sections(cloth)]
    return _drawn(purchase, system, "", found, LARGE)


def _drawn(
    purchase: Purchase,
    system: System,
    what_for: str,
    cloths: Sequence[tuple[OnCloth, int]],
    larger: float,
) -> tuple[Drawing, ...]:
    """A drawing for each cloth, with how often it is cut."""
    pieces = {piece.name: piece for piece, _ in purchase.by_system[system].pieces}
    return tuple(
        _Layout(
            purchase,
            cloth,
            system,
            pieces,
            _called(purchase, what_for, number, len(cloths), times),
            larger,
        ).drawn()
        for number, (cloth, times) in enumerate(cloths, start=1)
    )


def said(units: int, system: System) -> str:
    """A length in 1/80 mm as it is printed, rounded up to what a ruler shows."""
    value = length_of(units, system)
    return measured(printed(Quantity(Kind.LENGTH, value, value, physical=True), system, cut=True).text)


def _called(purchase: Purchase, what_for: str, number: int, of: int, times: int) -> str:
    """`C Lining cotton, 1 of 2, cut 3 like this`"""
    material = purchase.material
    name = f"{material.key} {named(material.name)}"
    parts = [
        name,
        what_for,
        say("{number} of {all}", number=number, all=of) if of > 1 else "",
        say("cut {number} like this", number=times) if times > 1 else "",
    ]
    return ", ".join(part for part in parts if part)


class _Layout:
    """One layout on its way to a drawing; `name` is what it is called, `larger` how much it is enlarged."""

    def __init__(
        self,
        purchase: Purchase,
        cloth: OnCloth,
        system: System,
        pieces: Mapping[str, CutPiece],
        name: str,
        larger: float,
    ) -> None:
        self._purchase, self._cloth, self._system = purchase, cloth, system
        self._pieces, self._name = pieces, name
        self._scale = larger * _scale(cloth)
        self._legend: dict[str, None] = {}

    def drawn(self) -> Drawing:
        cloth = self._cloth
        long, wide = cloth.length * self._scale, cloth.width * self._scale
        right, bottom = MARGIN + long, MARGIN + wide
        corners = ((MARGIN, MARGIN), (right, MARGIN), (right, bottom), (MARGIN, bottom))
        shapes: list[Shape] = [Area(corners, Ink.WASTE)]
        for number, piece in enumerate(cloth.pieces):
            shapes += self._piece(number, piece)
        shapes += [Line(corners[:2], Ink.SELVEDGE), Line(corners[2:], Ink.SELVEDGE)]
        words = said(cloth.length, self._system), said(cloth.width, self._system)
        shapes += across(MARGIN, right, bottom + 3.5, words[0])
        shapes += down(MARGIN, bottom, right + 3.5, words[1])
        shapes += self._grain(bottom + 11)
        return Drawing(
            width=max(right + 6 + breadth_aside(words[1]), MARGIN + ARROW + 2 + breadth(self._grain_words)),
            height=bottom + 14,
            shapes=tuple(shapes),
            alt=self._alt(words),
            caption="; ".join([self._name, *self._legend]),
        )

    @property
    def _grain_words(self) -> str:
        return say("grain and nap, one way") if self._one_way else say("grain")

    @property
    def _one_way(self) -> bool:
        return has(self._purchase.material, NoteKind.ONE_WAY)

    def _grain(self, y: float) -> Iterator[Shape]:
        """The grain; with one head only where the cloth has a nap or a pattern that goes one way."""
        yield Arrow((MARGIN, y), (MARGIN + ARROW, y), Ink.GRAIN, both=not self._one_way)
        yield Lettering(MARGIN + ARROW + 1.5, y, self._grain_words, LETTERS, anchor="start")

    def _piece(self, number: int, lying: Lying) -> Iterator[Shape]:
        corners = tuple((MARGIN + y * self._scale, MARGIN + x * self._scale) for x, y in lying.corners)
        left, top = min(x for x, _ in corners), min(y for _, y in corners)
        long, deep = max(x for x, _ in corners) - left, max(y for _, y in corners) - top
        piece = self._pieces[lying.name]
        # Circles and squares take as much along as across, unless a section shows a part of them.
        whole = abs(long - deep) < 0.01
        if piece.shape is tree.Shape.CIRCLE and piece.width is not None and whole:
            radius = as_cut(piece.width, self._system) * self._scale / 2
            yield Disc(left + long / 2, top + deep / 2, radius, Ink.CLOTH, Ink.CUT)
        elif (shape := self._in_box(piece, (left, top, long, deep))) and len(corners) == 4:
            yield Line((*corners, corners[0]), Ink.HIDDEN)
            yield Area(shape, Ink.CLOTH, Ink.CUT)
        else:
            yield Area(corners, Ink.CLOTH, Ink.CUT)
        if whole and piece.shape in (tree.Shape.HALF_SQUARE, tree.Shape.QUARTER_SQUARE):
            yield Line((corners[0], corners[2]), Ink.CUT)
        if whole and piece.shape is tree.Shape.QUARTER_SQUARE:
            yield Line((corners[1], corners[3]), Ink.CUT)
        yield from self._lettered(number, lying, piece, (left, top, long, deep))

    def _in_box(self, piece: CutPiece, box: Box) -> tuple[tuple[float, float], ...] | None:
        """A piece that is cut by an outline, in the box that it was laid out by; upright, or turned."""
        if piece.outline is None or piece.width is None or piece.height is None:
            return None
        left, top, long, deep = box
        wide, high = (as_cut(side, self._system) * self._scale for side in (piece.width, piece.height))
        upright = abs(long - high) < SLIVER and abs(deep - wide) < SLIVER
        if not upright and not (abs(long - wide) < SLIVER and abs(deep - high) < SLIVER):
            return None  # a section shows only a part of it
        line = cutting_line(piece.outline[self._system], self._system)
        first_x, first_y, _, _ = extent(line)
        scale = self._scale * PER_MM
        points = [((x - first_x) * scale, (y - first_y) * scale) for x, y in thinned(line, CLOSE / scale)]
        return tuple((left + y, top + x) if upright else (left + x, top + high - y) for x, y in points)

    def _lettered(self, number: int, lying: Lying, piece: CutPiece, box: Box) -> Iterator[Shape]:
        """Name and size where they fit, level or upright; else a mark, or nothing on a sliver.

        `number` is that of the lying piece: the marks of narrow ones side by side would read as one, so
        they do not stand side by side.
        """
        size = size_words(piece, (self._system,))[0]
        plain = piece.shape is tree.Shape.RECTANGLE and len(lying.corners) == 4
        mark = str(lying.part + 1)
        shown = list(_in_box((named(lying.name), size), box)) if plain else []
        if not shown:
            self._legend[f"{mark}: {named(lying.name)} {size}"] = None
            shown = list(_in_box((mark,), _apart(box, number), bold=True))
        yield from shown

    def _alt(self, words: tuple[str, str]) -> str:
        """The layout in words, from the same data: how many of each piece lie on what cloth."""
        counts = Counter(lying.name for lying in self._cloth.pieces if not lying.rest)
        listed = ", ".join(self._counted(name, count) for name, count in counts.items())
        values = {"name": self._name, "length": words[0], "width": words[1], "pieces": listed}
        if self._one_way:
            return say(
                "Cutting layout for {name}: on {length} of cloth, {width} wide, one way, lie {pieces}.",
                **values,
            )
        return say("Cutting layout for {name}: on {length} of cloth, {width} wide, lie {pieces}.", **values)

    def _counted(self, name: str, count: int) -> str:
        piece = self._pieces[name]
        size = size_words(piece, (self._system,))[0]
        match piece.shape:
            case tree.Shape.HALF_SQUARE | tree.Shape.QUARTER_SQUARE:
                return many(
                    "{n} square of {size} for {piece}",
                    "{n} squares of {size} for {piece}",
                    count,
                    size=size,
                    piece=named(name),
                )
            case tree.Shape.CIRCLE:
                return say("{count} {piece}, {size} across", count=count, piece=named(name), size=size)
            case _:
                return f"{count} {named(name)}, {size}"


def _scale(cloth: OnCloth) -> float:
    """How many mm on the page a unit of the cloth takes: more where its pieces are narrow."""
    usual = min(WIDEST / cloth.length, TALLEST / cloth.width)
    extents = (
        max(along) - min(along) for piece in cloth.pieces for along in zip(*piece.corners, strict=True)
    )
    narrowest = min(extents, default=cloth.width)
    wanted = (breadth("0") + 0.5) / narrowest
    return max(usual, min(wanted, WIDEST / cloth.length, TALLER * TALLEST / cloth.width))


def _apart(box: Box, number: int) -> Box:
    """The part of a narrow box in which its mark stands: one of three, in turns."""
    left, top, long, deep = box
    if min(long, deep) > NARROW or max(long, deep) < NARROW * 3:
        return box
    turn = number % 3
    if long > deep:
        return left + turn * long / 3, top, long / 3, deep
    return left, top + turn * deep / 3, long, deep / 3


def _in_box(lines: Sequence[str], box: Box, *, bold: bool = False) -> Iterator[Shape]:
    """Lines of words in the middle of a box, level or upright; nothing where they do not fit."""
    left, top, long, deep = box
    middle, centre = left + long / 2, top + deep / 2
    spare = 0.4 if bold else 1.0  # a number alone may stand close to the edge
    broad, high = max(map(breadth, lines)) + spare, len(lines) * LETTERS + spare - 0.4
    level = broad <= long and high <= deep
    if not level and not (broad <= deep and high <= long):
        return
    for number, words in enumerate(lines):
        off = (number - (len(lines) - 1) / 2) * (LETTERS + 0.4)
        x, y = (middle, centre + off) if level else (middle + off, centre)
        yield Lettering(x, y, words, LETTERS, turned=0.0 if level else -90.0, bold=bold)
