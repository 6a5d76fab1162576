"""Transform the runs of an outline, in the numbers of one system, into its edges all round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import groupby, pairwise

from presscloth.frozen import dataclass
from presscloth.measure import System
from presscloth.measure.remembering import remembered
from presscloth.measure.rounding import SAME
from presscloth.outline.lengths import length
from presscloth.outline.shape import Closing, Contour, Traced
from presscloth.outline.stretches import (
    Direction,
    Point,
    Straight,
    Stretch,
    arc,
    curve,
    distance,
    mirrored,
    radius_of,
    turned_back,
)


@dataclass(frozen=True, slots=True)
class Bend:
    """An arc instead of a straight line: away from the piece or into it, by its rise or its radius."""

    outwards: bool
    by_radius: bool
    amount: Fraction


@dataclass(frozen=True, slots=True)
class RunGiven:
    """One run: where its points lie, each from the one before, and how it goes there.

    A run `back` goes straight to where the outline began, one `to_fold` level or straight up or down to
    the line through there. `notches` are measured from its start, None
    for its middle.
    """

    name: str
    steps: tuple[Point, ...]
    curved: bool
    bend: Bend | None
    leaving: Direction | None
    arriving: Direction | None
    back: bool
    to_fold: Direction | None
    allowance: Fraction
    notches: tuple[Fraction | None, ...]


@dataclass(frozen=True, slots=True)
class DoesNotClose:
    """The last run ends so far to the right of the start, and so far below it."""

    across: Fraction
    down: Fraction


@dataclass(frozen=True, slots=True)
class FoldAslant:
    """The line from the end of the last run to the start is neither upright nor level."""

    across: Fraction
    down: Fraction


@dataclass(frozen=True, slots=True)
class ArcCannotBe:
    """An arc over a chord rises by more than half of it, or has a radius of less than half of it."""

    run: int
    chord: Fraction


@dataclass(frozen=True, slots=True)
class GoesNowhere:
    """A run, or a part of one, ends where it begins."""

    run: int


@dataclass(frozen=True, slots=True)
class NotchOutside:
    run: int
    length: Fraction


@dataclass(frozen=True, slots=True)
class EdgeInPieces:
    """Two runs of one name do not follow each other."""

    name: str


Fault = DoesNotClose | FoldAslant | ArcCannotBe | GoesNowhere | NotchOutside | EdgeInPieces


@remembered(256)
def draft(runs: tuple[RunGiven, ...], closing: Closing, system: System) -> Contour | Fault:
    """Put runs together, one after the other from (0, 0), and close them.

    One that closes but for less than 1/1000 mm is closed. Bends need to know which side is the inside:
    runs may go round either way, and where their points lie on one line they go clockwise. The same
    runs give the very same contour, however often it is asked for.
    """
    points, problem = _points(runs)
    if problem is not None:
        return problem
    points, problem = _closed(points, closing, system)
    if problem is not None:
        return problem
    clockwise = _turn(points) >= 0
    edges: list[Traced] = []
    for number, (run, way) in enumerate(zip(runs, points, strict=True)):
        made = _traced(number, run, way, clockwise=clockwise)
        if not isinstance(made, Traced):
            return made
        edges.append(made)
    if not clockwise:
        edges = [_reversed(edge) for edge in reversed(edges)]
    whole = tuple(_joined(edges))
    if closing is Closing.ROUND:
        whole = _round_the_start(whole)
        contour = Contour(whole, whole, None)
    else:
        contour = _both_halves(whole)
    names = [edge.name for edge in contour.edges]
    apart = next((name for name in names if names.count(name) > 1), None)
    return contour if apart is None else EdgeInPieces(apart)


_Ways = list[list[Point]]


def _points(runs: Sequence[RunGiven]) -> tuple[_Ways, Fault | None]:
    """The points of each run, its start first."""
    at: Point = (Fraction(0), Fraction(0))
    found: _Ways = []
    for number, run in enumerate(runs):
        way = [at]
        for across, down in run.steps:
            at = (at[0] + across, at[1] + down)
            way.append(at)
        if run.back:
            at = (Fraction(0), Fraction(0))
            way.append(at)
        if run.to_fold is not None:
            at = (Fraction(0), at[1]) if run.to_fold[0] else (at[0], Fraction(0))
            way.append(at)
        if any(one == other for one, other in pairwise(way)):
            return found, GoesNowhere(number)
        found.append(way)
    return found, None


def _closed(ways: _Ways, closing: Closing, system: System) -> tuple[_Ways, Fault | None]:
    """The points with the last one where it should be, where it is but for the noise of a root."""
    start, (x, y) = ways[0][0], ways[-1][-1]
    near = SAME[system]
    if closing is Closing.ROUND:
        if abs(x) >= near or abs(y) >= near:
            return ways, DoesNotClose(x, y)
        ways[-1][-1] = start
    elif abs(x) < near and abs(y) >= near:
        ways[-1][-1] = (start[0], y)
    elif abs(y) < near and abs(x) >= near:
        ways[-1][-1] = (x, start[1])
    else:
        return ways, FoldAslant(x, y)
    return ways, None


def _turn(ways: _Ways) -> Fraction:
    """More than nothing where the points go round clockwise: the shoelace formula, y downwards."""
    points = [point for way in ways for point in way]
    around = [*points, points[0]]
    return sum((x * ny - nx * y for (x, y), (nx, ny) in pairwise(around)), Fraction(0))


def _traced(number: int, run: RunGiven, way: Sequence[Point], *, clockwise: bool) -> Traced | Fault:
    stretches = _stretches(run, way, clockwise=clockwise)
    if stretches is None:
        return ArcCannotBe(number, distance(way[0], way[-1]))
    long = sum((length(stretch) for stretch in stretches), Fraction(0))
    notches = tuple(long / 2 if notch is None else notch for notch in run.notches)
    if any(not 0 < notch < long for notch in notches):
        return NotchOutside(number, long)
    return Traced(run.name, stretches, long, run.allowance, notches, (number,))


def _stretches(run: RunGiven, way: Sequence[Point], *, clockwise: bool) -> tuple[Stretch, ...] | None:
    if run.curved:
        return tuple(curve(tuple(way), run.leaving, run.arriving))
    bend = run.bend
    if bend is None:
        return tuple(Straight(one, other) for one, other in pairwise(way))
    chord = distance(way[0], way[-1])
    if bend.amount <= 0 or (not bend.by_radius and 2 * bend.amount > chord):
        return None
    radius = bend.amount if bend.by_radius else radius_of(chord, bend.amount)
    found = arc(way[0], way[-1], radius, clockwise=bend.outwards == clockwise)
    return None if found is None else (found,)


def _reversed(edge: Traced) -> Traced:
    return replace(
        edge,
        stretches=tuple(turned_back(stretch) for stretch in reversed(edge.stretches)),
        notches=tuple(edge.length - notch for notch in reversed(edge.notches)),
    )


def _joined(edges: Sequence[Traced]) -> Iterator[Traced]:
    """Runs of one name that follow each other, made one edge."""
    for _, group in groupby(edges, key=lambda edge: edge.name):
        first, *others = group
        for other in others:
            first = _after(first, other)
        yield first


def _after(edge: Traced, other: Traced) -> Traced:
    return Traced(
        edge.name,
        (*edge.stretches, *other.stretches),
        edge.length + other.length,
        edge.allowance,
        (*edge.notches, *(edge.length + notch for notch in other.notches)),
        (*edge.runs, *other.runs),
    )


def _round_the_start(edges: tuple[Traced, ...]) -> tuple[Traced, ...]:
    """Where the last run has the name of the first, the two are one edge."""
    if len(edges) < 2 or edges[0].name != edges[-1].name:
        return edges
    return (_after(edges[-1], edges[0]), *edges[1:-1])


# -- halves --------------------------------------------------------------------------------------

_OVER = {
    "left": "right",
    "right": "left",
    "top": "bottom",
    "bottom": "top",
    "upper": "lower",
    "lower": "upper",
}


def _both_halves(half: tuple[Traced, ...]) -> Contour:
    """The half and its other side. An edge that ends on the fold goes on beyond it under its name.

    Every other edge is there twice: `side` as right side and left side, `right` as right and left.
    """
    start, end = half[0].stretches[0].start, half[-1].stretches[-1].end
    upright = start[0] == end[0]
    axis = start[0] if upright else start[1]
    others = [
        replace(
            _reversed(edge),
            stretches=tuple(mirrored(s, axis, upright=upright) for s in _reversed(edge).stretches),
        )
        for edge in reversed(half)
    ]
    # Clockwise, the right half begins at the upper end of the fold, the upper one at its left end.
    if upright:
        own, opposite = ("right", "left") if end[1] > start[1] else ("left", "right")
    else:
        own, opposite = ("upper", "lower") if end[0] > start[0] else ("lower", "upper")
    last = len(half) - 1
    named = [
        edge if number in (0, last) else replace(edge, name=_on_side(edge.name, own))
        for number, edge in enumerate(half)
    ]
    facing = [
        edge if number in (0, last) else replace(edge, name=_over(half[last - number].name, opposite))
        for number, edge in enumerate(others)
    ]
    if last == 0:
        return Contour((_after(facing[0], named[0]),), half, (start, end))
    around = (_after(facing[-1], named[0]), *named[1:-1], _after(named[-1], facing[0]), *facing[1:-1])
    return Contour(around, half, (start, end))


def _on_side(name: str, side: str) -> str:
    return name if _sided(name) else f"{side} {name}"


def _over(name: str, side: str) -> str:
    """The name of the edge that faces another over the fold."""
    if not _sided(name):
        return f"{side} {name}"
    return " ".join(_OVER.get(word, word) for word in name.split(" "))


def _sided(name: str) -> bool:
    return any(word in _OVER for word in name.split(" "))
