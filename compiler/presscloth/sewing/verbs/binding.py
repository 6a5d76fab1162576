"""Binding and facing raw edges with strips."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from presscloth.measure import Quantity, length
from presscloth.problems import Problem
from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.lengths import NOTHING, less, longest, shortest, times, times_pi, total
from presscloth.sewing.things import (
    FINISHED,
    SIDES,
    Circle,
    Edge,
    Flat,
    Hollow,
    Long,
    Odd,
    Shape,
    Shaped,
    same_allowance,
)
from presscloth.sewing.verbs.laying import as_it_lay
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Side, Used, Work

FOR_THE_ENDS = length(150, 6)
"""What binding all round wants beyond the way round, to turn four corners and join the two ends
(common practice, no source)."""


class StripTooShort(Problem):
    """The strips do not reach along the edge that they bind or face.

    Joined end to end on the bias, each join takes as much as a strip is wide; all round, some is wanted
    for the corners and the last join (15 cm, 6 in, unless the statement says otherwise).

    Fails:

        ## Pieces
        | Piece | From | Cut | Width           | Height         |
        |-------|------|-----|-----------------|----------------|
        | cloth | A    | 1   | 30 cm (12 in)   | 30 cm (12 in)  |
        | strip | A    | 1   | 100 cm (40 in)  | 6 cm (2 3/8 in) |

        ## Steps
        1. Bind.

           ```sew
           mat = bind cloth with strip
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width           | Height         |
        |-------|------|-----|-----------------|----------------|
        | cloth | A    | 1   | 30 cm (12 in)   | 30 cm (12 in)  |
        | strip | A    | 2   | 100 cm (40 in)  | 6 cm (2 3/8 in) |

        ## Steps
        1. Bind.

           ```sew
           mat = bind cloth with 2 strip
           finish mat
           ```
    """

    count: int
    name: str
    reach: str
    wanted: str
    edge: str
    ends: str

    def message(self) -> str:
        ends = f", {self.ends} for the ends included" if self.ends else ""
        return f"{self.count} `{self.name}` reach {self.reach}; {self.edge} wants {self.wanted}{ends}"

    def hint(self) -> str:
        return "cut one more, or cut them longer"


def bind(work: Work) -> Made:
    """Bind raw edges with strips, all round or along the edges named: they are finished, the size stays.

    The strips, less their width for each diagonal join, must reach along the edges and, all round,
    over the ends too (published worked examples of binding; geometry).
    """
    return _finished(work, takes_allowance=False)


def face(work: Work) -> Made:
    """Face raw edges with strips that are turned to the wrong side: they are finished on the stitch line.

    The strips must reach as for binding; each faced edge loses its allowance (common practice).
    """
    return _finished(work, takes_allowance=True)


def _finished(work: Work, *, takes_allowance: bool) -> Made:
    used, named = work.one("thing"), work.edges("thing")
    if isinstance(used.shape, Odd):
        work.uncounted(work.one("strips"))
        return Made(used.shape, as_it_lay(used), of=("thing",))
    names = named or _names(used.shape)
    sides = _sides(work, used, names)
    for side in sides:
        work.must_be_raw(side, "bound" if not takes_allowance else "faced")
    round_it = not named or set(named) == set(SIDES)
    _hold_reach(work, sides, round_it=round_it, what=used.name)
    taken = {side.name: work.allowance(side) if takes_allowance else NOTHING for side in sides}
    work.seams.append(total(side.edge.length for side in sides))
    shape = finished_on(used.shape, taken)
    return Made(shape, as_it_lay(used), of=("thing",))


def _names(shape: Shape) -> tuple[str, ...]:
    if isinstance(shape, Hollow):
        return tuple(shape.ends)
    return tuple(shape.edges) if isinstance(shape, Shaped) else SIDES


def _sides(work: Work, used: Used, names: Sequence[str]) -> tuple[Side, ...]:
    if isinstance(used.shape, Circle):
        edge = Edge.plain(times_pi(used.shape.diameter), used.shape.rim)
        return (Side(used, "edge", edge, edge.length),)
    return tuple(work.side(used, name) for name in names)


def finished_on(shape: Shape, taken: dict[str, Quantity]) -> Shape:
    """A thing some of whose edges are finished, each after something was taken off there."""
    match shape:
        case Flat():
            across = tuple(taken[name] for name in ("left", "right") if name in taken)
            down = tuple(taken[name] for name in ("top", "bottom") if name in taken)
            made: dict[str, Edge] = {}
            for name in SIDES:
                edge = shape.edge(name)
                long = less(edge.length, *(across if name in ("top", "bottom") else down))
                made[name] = edge.finished(long) if name in taken else edge.long(long)
            return Flat(made["left"], made["right"], made["top"], made["bottom"], bow=shape.bow)
        case Shaped():
            return _shaped_finished_on(shape, taken)
        case Hollow():
            ends = {
                name: end.finished(end.length) if name in taken else end for name, end in shape.ends.items()
            }
            return replace(
                shape,
                width=less(shape.width, *(taken[n] for n in ("left", "right") if n in taken)),
                height=less(shape.height, *(taken[n] for n in ("top", "bottom") if n in taken)),
                ends=ends,
            )
        case Circle():
            return Circle(less(shape.diameter, *(times(2, lost) for lost in taken.values())), FINISHED)
        case _:
            return shape


def _shaped_finished_on(shape: Shaped, taken: dict[str, Quantity]) -> Shaped:
    """An outline some of whose edges are finished; how large it is stays known where all lose the same."""
    edges = {name: e.finished(e.length) if name in taken else e for name, e in shape.edges.items()}
    lost = next(iter(taken.values()), NOTHING)
    alike = set(taken) == set(edges) and all(same_allowance(each, lost) for each in taken.values())
    if not alike or shape.width is None or shape.height is None:
        return Shaped(edges)
    width, height = less(shape.width, times(2, lost)), less(shape.height, times(2, lost))
    return Shaped(edges, width, height, width, height)


def _hold_reach(work: Work, sides: Sequence[Side], *, round_it: bool, what: str) -> None:
    strips = work.one("strips")
    ends = FOR_THE_ENDS if round_it else NOTHING
    if work.has("ends"):
        ends = work.amount("ends")
    wanted = total((*(side.edge.length for side in sides), ends))
    reach = _reach(work, strips)
    if work.short_in(reach, wanted):
        work.report(
            StripTooShort(
                span=strips.span,
                count=strips.count,
                name=strips.name,
                reach=work.said(reach),
                wanted=work.said(wanted),
                edge=f"`{what}`" if round_it else f"{sides[0].name} of `{what}`",
                ends=work.said(ends) if any(ends[s] for s in work.systems) else "",
                labels=work.rows_of(strips, sides[0].used),
            )
        )


def _reach(work: Work, strips: Used) -> Quantity:
    """How far strips reach that are joined end to end on the bias."""
    match strips.shape:
        case Long(length=long):
            return times(strips.count, long)
        case Flat(width=width, height=height):
            joins = times(strips.count - 1, shortest((width, height)))
            return less(times(strips.count, longest((width, height))), joins)
        case _:
            return work.wrong_shape(strips, "a strip or a tape")


BIND = Verb(
    "bind",
    {
        "bind {thing:thing} with {strips:thing} [, with {ends:measure} for the ends]": bind,
        "bind {thing:edges} with {strips:thing} [, with {ends:measure} for the ends]": bind,
    },
    ResultRule.CHANGES_FIRST,
    changes="thing",
)
FACE = Verb(
    "face",
    {
        "face {thing:thing} with {strips:thing} [, with {ends:measure} for the ends]": face,
        "face {thing:edges} with {strips:thing} [, with {ends:measure} for the ends]": face,
    },
)
