"""Draw the pieces of a size that are cut by an outline at full size, on sheets that fit every paper."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from math import atan2, cos, degrees, hypot, pi, sin

from presscloth.drawing.clipping import Point
from presscloth.drawing.edge_words import edge_word
from presscloth.drawing.sheets import Plane, Sheet, on_sheets, sheets_needed
from presscloth.drawing.tree import Ink, Lettering, Line
from presscloth.edition import CutPiece
from presscloth.measure import System
from presscloth.outline import Closing, Contour, cutting_line, seam_line
from presscloth.outline.flattening import box, in_mm, notch
from presscloth.outline.halves import beside
from presscloth.recipe.tree import Grain, NoteKind
from presscloth.tongue import listed, named, say

SMALL = 3.2
FOLD_WORDS = 4.0
SPECK = 0.001
"""mm; no line on paper is as short."""
NAMED_AT = 0.4
"""A name stands a little before the middle of its edge, where sheets often meet."""

INSIDE = 4.5
"""mm; how far the name of an edge stands inside its seam line."""


def draw_templates(pieces: Sequence[CutPiece], article: str, system: System) -> tuple[Sheet, ...]:
    """Every template of a size in the numbers of one system, sheet by sheet, true to scale.

    Seam lines are dashed, cutting lines solid; each sheet has the squares by which to see that it was
    printed at full size. A template is turned where that takes fewer sheets; pieces that are cut alike
    share one.
    """
    found: list[Sheet] = []
    for alike in _shared(pieces):
        either = (_plane(alike, article, system, turned=turned) for turned in (False, True))
        found += on_sheets(min(either, key=sheets_needed))
    return tuple(found)


def _shared(pieces: Sequence[CutPiece]) -> Iterator[tuple[CutPiece, ...]]:
    """The pieces that are cut by an outline, those together that are cut by the same line and grain."""
    groups: dict[tuple[str, Grain, tuple[tuple[Fraction, Fraction], ...]], list[CutPiece]] = {}
    for piece in pieces:
        if piece.outline is not None:
            allowances = tuple((e.allowance.metric, e.allowance.imperial) for e in piece.outline.edges)
            groups.setdefault((piece.outline.name, piece.grain, allowances), []).append(piece)
    for group in groups.values():
        yield tuple(group)


def _plane(alike: Sequence[CutPiece], article: str, system: System, *, turned: bool) -> Plane:
    """A template on a plane as large as it is, before it is cut into sheets."""
    piece = alike[0]
    assert piece.outline is not None
    contour = piece.outline[system]
    on_fold = piece.outline.closing is Closing.FOLD
    cut = cutting_line(contour, system)
    axis = _axis(contour, system) if on_fold else None
    if axis is not None:
        at, across, beyond = axis
        cut = beside(cut, at, across=across, beyond=beyond)
    place = _Placed(cut, turned=turned)
    edges = contour.drawn if on_fold else contour.edges
    lines = [*_cut_lines(place.all(cut), None if axis is None else place.axis(axis))]
    letterings = []
    for edge in edges:
        seam = place.all(seam_line(edge, system))
        if edge.allowance > 0:
            lines.append(Line(seam, Ink.SEAM))
        letterings.append(_edge_name(edge.name, seam))
        for along in edge.notches:
            lines.append(Line(place.all(_notched(*notch(edge, float(along), system))), Ink.CUT))
    if on_fold:
        letterings += [_along_fold(line) for line in lines if line.ink is Ink.FOLD]
    return Plane(
        piece=_names(alike),
        words=tuple(_words(alike, article, on_fold=on_fold)),
        cut=place.all(cut),
        lines=tuple(lines),
        letterings=tuple(letterings),
        grain=_grain(piece.grain, turned=turned),
    )


def _axis(contour: Contour, system: System) -> tuple[float, bool, bool]:
    """Where the fold lies, whether it is upright, and whether the drawn half lies beyond it."""
    assert contour.fold is not None
    (x, y), (far_x, _) = (in_mm(point, system) for point in contour.fold)
    across = x == far_x
    points = [point for edge in contour.drawn for point in seam_line(edge, system)]
    left, top, right, bottom = box(points)
    return (x, True, right - x > x - left) if across else (y, False, bottom - y > y - top)


class _Placed:
    """Moves a template to the corner of its plane, turned clockwise by a quarter if that is wanted."""

    def __init__(self, cut: Sequence[Point], *, turned: bool) -> None:
        self._turned = turned
        self._left, self._top, _, _ = box([self._turn(point) for point in cut])

    def _turn(self, point: Point) -> Point:
        return (-point[1], point[0]) if self._turned else point

    def __call__(self, point: Point) -> Point:
        x, y = self._turn(point)
        return x - self._left, y - self._top

    def all(self, points: Sequence[Point]) -> tuple[Point, ...]:
        return tuple(self(point) for point in points)

    def axis(self, axis: tuple[float, bool, bool]) -> tuple[float, bool]:
        """Where the fold lies on the plane, and whether it is upright there."""
        at, across, _ = axis
        x, y = self((at, at))
        upright = across != self._turned
        return (x if upright else y), upright


def _cut_lines(cut: Sequence[Point], axis: tuple[float, bool] | None) -> Iterator[Line]:
    """The cutting line, closed; on the fold it is open, and the fold is drawn by itself."""
    around = [*cut, cut[0]]
    if axis is None:
        yield Line(tuple(around), Ink.CUT)
        return
    at, upright = axis
    on_fold = [abs(point[0 if upright else 1] - at) < 1e-6 for point in around]
    run: list[Point] = []
    runs: list[list[Point]] = []
    for (one, on), (other, also_on) in pairwise(zip(around, on_fold, strict=True)):
        if on and also_on:
            if hypot(other[0] - one[0], other[1] - one[1]) > SPECK:
                yield Line((one, other), Ink.FOLD)
            runs.append(run)
            run = []
        else:
            run = run or [one]
            run.append(other)
    if runs and run and runs[0] and run[-1] == runs[0][0]:
        runs[0] = [*run[:-1], *runs[0]]
        run = []
    for each in (*runs, run):
        if each:
            yield Line(tuple(each), Ink.CUT)


def _along_fold(fold: Line) -> Lettering:
    """Words inside the fold, which runs clockwise as the cutting line does."""
    x, y, along = _on(fold.points, NAMED_AT)
    inwards = along + pi / 2
    upright = abs(cos(along)) < 0.5
    at = x + INSIDE * cos(inwards), y + INSIDE * sin(inwards)
    return Lettering(*at, say("place on the fold"), FOLD_WORDS, turned=-90.0 if upright else 0.0)


def _notched(seam: Point, cut: Point) -> tuple[Point, Point]:
    """A notch runs from the cutting line to 3 mm beyond the seam line, or 4 mm in where both are one."""
    across, down = seam[0] - cut[0], seam[1] - cut[1]
    long = hypot(across, down)
    if long == 0:
        return cut, cut
    far = (long + 3.0) / long
    return cut, (cut[0] + across * far, cut[1] + down * far)


def _edge_name(name: str, seam: Sequence[Point]) -> Lettering:
    """The name of an edge inside its seam line, along it and never upside down."""
    x, y, along = _on(seam, NAMED_AT)
    inwards = along + pi / 2  # the line runs clockwise, with the piece at its right
    turned = along if cos(along) > -1e-9 else along + pi
    return Lettering(
        x + INSIDE * cos(inwards), y + INSIDE * sin(inwards), edge_word(name), SMALL, turned=degrees(turned)
    )


def _on(line: Sequence[Point], part: float) -> tuple[float, float, float]:
    """The point at a part of the way along a line, and the direction in which it runs there."""
    left = part * sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(line))
    for (x, y), (far_x, far_y) in pairwise(line):
        long = hypot(far_x - x, far_y - y)
        if left <= long:
            step = left / long
            return x + (far_x - x) * step, y + (far_y - y) * step, atan2(far_y - y, far_x - x)
        left -= long
    return *line[-1], 0.0


def _grain(grain: Grain, *, turned: bool) -> float | None:
    """The direction of the grain on the plane, in degrees from upright; None where it may lie anyhow."""
    quarter = 90.0 if turned else 0.0
    match grain:
        case Grain.ALONG:
            return quarter
        case Grain.ACROSS:
            return 90.0 - quarter
        case Grain.BIAS:
            return 45.0 + quarter
        case Grain.ANY:
            return None


def _names(alike: Sequence[CutPiece]) -> str:
    return listed([named(piece.name) for piece in alike])


def _words(alike: Sequence[CutPiece], article: str, *, on_fold: bool) -> Iterator[str]:
    """The lines on a template: name, article and size, how many to cut, fold, allowances."""
    yield _names(alike)
    yield article
    for piece in alike:
        yield _cut_words(piece, alone=len(alike) == 1)
    if on_fold:
        yield say("place on the fold")
    outline = alike[0].outline
    assert outline is not None
    with_allowance = [edge.allowance.metric > 0 for edge in outline.edges]
    if all(with_allowance):
        yield say("seam allowances are included")
    elif any(with_allowance):
        yield say("seam allowances are included where a dashed line runs inside")
    else:
        yield say("no seam allowance")


def _cut_words(piece: CutPiece, *, alone: bool) -> str:
    """`cut 2 from A`, `cut 2 from A, in pairs`; with the name where several share a template."""
    keys = listed(piece.keys)
    if any(note.kind is NoteKind.IN_PAIRS for note in piece.row.notes):
        words = say("cut {n} from {keys}, in pairs", n=piece.count, keys=keys)
    else:
        words = say("cut {n} from {keys}", n=piece.count, keys=keys)
    return words if alone else f"{named(piece.name)}: {words}"
