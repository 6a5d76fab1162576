"""Outlines from a few numbers: runs as tests write them."""

from __future__ import annotations

from fractions import Fraction

from presscloth.measure import System
from presscloth.outline import Bend, Closing, Contour, RunGiven, draft

RIGHT, LEFT, UP, DOWN = (1, 0), (-1, 0), (0, -1), (0, 1)


def run(
    name: str,
    *steps: tuple[object, object],
    arched: object = None,
    hollowed: object = None,
    radius: object = None,
    curved: bool = False,
    leaving: tuple[int, int] | None = None,
    arriving: tuple[int, int] | None = None,
    to_fold: tuple[int, int] | None = None,
    allowance: object = 10,
    notches: tuple[object, ...] = (),
) -> RunGiven:
    """A run by its steps to the right and downwards; `arched` and `hollowed` are rises unless `radius`."""
    amount = arched if arched is not None else hollowed
    bend = None
    if amount is not None or radius is not None:
        of = Fraction(str(amount if radius is None else radius))
        bend = Bend(hollowed is None, radius is not None, of)
    return RunGiven(
        name=name,
        steps=tuple((Fraction(str(x)), Fraction(str(y))) for x, y in steps),
        curved=curved,
        bend=bend,
        leaving=leaving,
        arriving=arriving,
        back=not steps and to_fold is None,
        to_fold=to_fold,
        allowance=Fraction(str(allowance)),
        notches=tuple(None if notch is None else Fraction(str(notch)) for notch in notches),
    )


def drafted(*runs: RunGiven, closing: Closing = Closing.ROUND, system: System = System.METRIC) -> Contour:
    found = draft(runs, closing, system)
    assert isinstance(found, Contour), found
    return found


def rectangle(width: object, height: object, allowance: object = 10) -> Contour:
    return drafted(
        run("top", (width, 0), allowance=allowance),
        run("right", (0, height), allowance=allowance),
        run("bottom", (f"-{width}", 0), allowance=allowance),
        run("left", allowance=allowance),
    )


def lengths(contour: Contour) -> dict[str, float]:
    return {edge.name: float(edge.length) for edge in contour.edges}
