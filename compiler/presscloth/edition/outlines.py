"""Transform an outline as it is written into the outline of a piece in one size, in both systems."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction

from presscloth.edition.evaluator import Evaluator
from presscloth.edition.outline_problems import (
    ArcImpossible,
    EdgeInPieces,
    FoldNotStraight,
    OutlineDoesNotClose,
    RunGoesNowhere,
)
from presscloth.edition.problems import BeyondReckoning
from presscloth.edition.seam_line_problems import (
    AllowanceCrosses,
    NotchOutsideEdge,
    OutlineCrossesItself,
    OutlineWithoutAllowance,
)
from presscloth.frozen import dataclass
from presscloth.measure import Kind, Quantity, System, add, convert, length, printed
from presscloth.measure.remembering import remembered
from presscloth.outline import Bend, Closing, Contour, Drafted, Edge, RunGiven, draft, drafting
from presscloth.outline.flattening import box, cutting_line, seam_line
from presscloth.outline.joints import crosses_itself
from presscloth.outline.stretches import Straight
from presscloth.problems import Problem
from presscloth.recipe.expression import Broken, Expression
from presscloth.recipe.outline import Move, OutlineText, Run
from presscloth.source import Span

FARTHEST = 10**7
"""mm or in; nothing that is cut by a template reaches as far."""

ROUGH = 0.1
"""mm; the lines are as close as this to their curves where they are only looked at for crossings."""


@dataclass(frozen=True, slots=True)
class _Valued:
    """A run with its measures worked out; each leg as (right, down)."""

    run: Run
    legs: tuple[tuple[Quantity, Quantity], ...]
    bend: Quantity | None
    notches: tuple[Quantity | None, ...]
    allowance: Quantity

    @property
    def measures(self) -> tuple[Quantity, ...]:
        given = (*(side for leg in self.legs for side in leg), self.bend)
        return tuple(each for each in given if each is not None)


_NOTHING = length(0, 0)


def draft_piece(
    outline: OutlineText, piece: str, allowance: Quantity | None, evaluator: Evaluator
) -> Drafted | Broken:
    """Work out an outline for a piece, whose seam allowance is added outside the seam line.

    Reports what does not close, crosses itself or cannot be drawn, in the system in which it does not.
    """
    runs = _runs(outline, piece, allowance, evaluator)
    if runs is None:
        return Broken(outline.span)
    contours: dict[System, Contour] = {}
    boxes: dict[System, tuple[Fraction, ...]] = {}
    broken = False
    for system in System:
        given = tuple(_given(run, system, evaluator.systems) for run in runs)
        found = draft(given, Closing(outline.closed.value), system)
        problem = (
            _crossing(outline, piece, found, system)
            if isinstance(found, Contour)
            else _problem(found, outline, runs, system)
        )
        if problem is not None and system in evaluator.systems:
            evaluator.report(problem.in_systems(system.value))
            broken = True
        if isinstance(found, Contour):
            contours[system], boxes[system] = found, _boxes(found, system)
    if broken or len(contours) < len(System):
        return Broken(outline.span)
    return _drafted(outline, runs, contours, boxes)


def _drafted(
    outline: OutlineText,
    runs: Sequence[_Valued],
    contours: dict[System, Contour],
    boxes: dict[System, tuple[Fraction, ...]],
) -> Drafted:
    metric, imperial = contours[System.METRIC], contours[System.IMPERIAL]
    edges = []
    for one, other in zip(metric.edges, imperial.edges, strict=True):
        behind = [runs[number] for number in one.runs]
        # A run that only goes back depends on all others.
        like = _all_of(behind if all(run.measures for run in behind) else runs)
        exact = all(isinstance(stretch, Straight) for stretch in one.stretches)
        long = replace(like, metric=one.length, imperial=other.length, rooted=like.rooted or not exact)
        edges.append(Edge(one.name, long, length(one.allowance, other.allowance)))
    whole = replace(_all_of(runs), rooted=True)
    width, height, across, down = (
        replace(whole, metric=one, imperial=other)
        for one, other in zip(boxes[System.METRIC], boxes[System.IMPERIAL], strict=True)
    )
    closing = Closing(outline.closed.value)
    return Drafted(outline.name.text, closing, tuple(edges), width, height, across, down, metric, imperial)


def _all_of(runs: Sequence[_Valued]) -> Quantity:
    """A length that has the flags and the places of all measures in some runs."""
    found = _NOTHING
    for run in runs:
        for measure in run.measures:
            both = add(found, measure)
            found = both if isinstance(both, Quantity) else found
    return found


# -- the measures of the runs --------------------------------------------------------------------


def _runs(
    outline: OutlineText, piece: str, allowance: Quantity | None, evaluator: Evaluator
) -> tuple[_Valued, ...] | None:
    """Every run worked out; None where something in one is broken, which has been reported."""
    whole = True
    found: list[_Valued] = []

    def measure(expression: Expression, what: str) -> Quantity:
        nonlocal whole
        value = evaluator.of_kind(expression, Kind.LENGTH, what)
        if isinstance(value, Broken):
            whole = False
            return _NOTHING
        return value

    for run in outline.runs:
        what = f"a measure of `{run.name.text}`"
        before = found[-1] if found and found[-1].run.name.text == run.name.text else None
        own = _allowance(run, before, allowance, measure)
        if own is None or any(own[system] < 0 for system in evaluator.systems):
            evaluator.report(OutlineWithoutAllowance(span=run.span, piece=piece, edge=run.name.text))
            return None
        found.append(
            _Valued(
                run,
                tuple(_leg(leg, what, measure) for leg in run.legs),
                None if run.arched is None else measure(run.arched.amount, what),
                tuple(None if notch is None else measure(notch, what) for notch in run.notches),
                own,
            )
        )
    far = next((run for run in found if _is_beyond(run)), None)
    if far is not None:
        evaluator.report(BeyondReckoning(span=far.run.span))
        return None
    return tuple(found) if whole else None


def _is_beyond(valued: _Valued) -> bool:
    measures = (*valued.measures, valued.allowance, *(notch for notch in valued.notches if notch))
    return any(abs(measure[system]) > FARTHEST for measure in measures for system in System)


_Measure = Callable[[Expression, str], Quantity]


def _allowance(
    run: Run, before: _Valued | None, usual: Quantity | None, measure: _Measure
) -> Quantity | None:
    if run.bare:
        return _NOTHING
    if run.allowance is not None:
        return measure(run.allowance, f"the allowance of `{run.name.text}`")
    return usual if before is None else before.allowance


def _leg(leg: tuple[Move, ...], what: str, measure: _Measure) -> tuple[Quantity, Quantity]:
    """How far a leg goes to the right, and how far down."""
    across, down = _NOTHING, _NOTHING
    for move in leg:
        by = measure(move.by, what)
        right, below = move.towards.step
        signed = replace(by, metric=by.metric * (right + below), imperial=by.imperial * (right + below))
        across, down = (signed, down) if right else (across, signed)
    return across, down


def _given(valued: _Valued, system: System, published: tuple[System, ...]) -> RunGiven:
    """The run in the numbers of one system; one that is not published has those of the other, converted.

    What was carried over run by run for nobody to see need not close.
    """
    run, arched = valued.run, valued.run.arched

    def number(of: Quantity) -> Fraction:
        return of[system] if system in published else convert(of[system.other], Kind.LENGTH, system)

    bend = None
    if arched is not None and valued.bend is not None:
        bend = Bend(arched.outwards, arched.by_radius, number(valued.bend))
    return RunGiven(
        name=run.name.text,
        steps=tuple((number(across), number(down)) for across, down in valued.legs),
        curved=run.curved,
        bend=bend,
        leaving=None if run.leaving is None else run.leaving.step,
        arriving=None if run.arriving is None else run.arriving.step,
        back=not run.legs and run.to_fold is None,
        to_fold=None if run.to_fold is None else run.to_fold.step,
        allowance=number(valued.allowance),
        notches=tuple(None if notch is None else number(notch) for notch in valued.notches),
    )


# -- what is wrong -------------------------------------------------------------------------------


def _problem(fault: drafting.Fault, outline: OutlineText, runs: Sequence[_Valued], system: System) -> Problem:
    def said(value: Fraction) -> str:
        return printed(length(value, value), system).text

    name, last = outline.name.text, outline.runs[-1].span

    def at(run: int) -> tuple[Span, str]:
        return runs[run].run.span, runs[run].run.name.text

    match fault:
        case drafting.DoesNotClose(across=across, down=down):
            return OutlineDoesNotClose(span=last, outline=name, gap=_gap(across, down, said))
        case drafting.FoldAslant(across=across, down=down):
            return FoldNotStraight(span=last, outline=name, gap=_gap(across, down, said))
        case drafting.ArcCannotBe(run=run, chord=chord):
            arched = runs[run].run.arched
            by_radius = arched is not None and arched.by_radius
            span, edge = at(run)
            return ArcImpossible(span=span, edge=edge, chord=said(chord), by_radius=by_radius)
        case drafting.GoesNowhere(run=run):
            span, edge = at(run)
            return RunGoesNowhere(span=span, edge=edge)
        case drafting.NotchOutside(run=run, length=long):
            span, edge = at(run)
            return NotchOutsideEdge(span=span, edge=edge, length=said(long))
        case drafting.EdgeInPieces(name=edge):
            return EdgeInPieces(span=outline.name.span, outline=name, edge=edge)


def _gap(across: Fraction, down: Fraction, said: Callable[[Fraction], str]) -> str:
    """`1 cm to the right and 2 mm below`"""
    sides = []
    if across:
        sides.append(f"{said(abs(across))} to the {'right' if across > 0 else 'left'}")
    if down:
        sides.append(f"{said(abs(down))} {'down' if down > 0 else 'up'}")
    return " and ".join(sides) or "nothing"


def _crossing(outline: OutlineText, piece: str, contour: Contour, system: System) -> Problem | None:
    """Whether the seam line, or the cutting line around it, crosses itself."""
    edges = _crossed_edges(contour, system)
    if edges is not None:
        return OutlineCrossesItself(span=outline.name.span, outline=outline.name.text, edges=edges)
    if _crosses_outside(contour, system):
        return AllowanceCrosses(span=outline.name.span, piece=piece)
    return None


@remembered(256)
def _crossed_edges(contour: Contour, system: System) -> tuple[str, str] | None:
    """The edges at which a seam line crosses itself."""
    points: list[tuple[float, float]] = []
    owners: list[str] = []
    for edge in contour.edges:
        line = seam_line(edge, system, ROUGH)[:-1]
        points += line
        owners += [edge.name] * len(line)
    crossed = crosses_itself(points)
    return None if crossed is None else (owners[crossed[0]], owners[crossed[1]])


@remembered(256)
def _crosses_outside(contour: Contour, system: System) -> bool:
    """Whether a cutting line crosses itself."""
    return crosses_itself(cutting_line(contour, system, ROUGH)) is not None


@remembered(256)
def _boxes(contour: Contour, system: System) -> tuple[Fraction, ...]:
    """Width and height of the cutting line, and of the seam line, in mm or in, to 1/10000 mm."""
    seam = [point for edge in contour.edges for point in seam_line(edge, system, ROUGH)]
    found: list[Fraction] = []
    for points in (cutting_line(contour, system, ROUGH), seam):
        left, top, right, bottom = box(points)
        found += [_to_system(right - left, system), _to_system(bottom - top, system)]
    return tuple(found)


def _to_system(millimetres: float, system: System) -> Fraction:
    exact = Fraction(round(millimetres * 10_000), 10_000)
    return exact if system is System.METRIC else convert(exact, Kind.LENGTH, System.IMPERIAL)
