"""Setting a round, a rectangle or a tube into an open end, and gathering."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from presscloth.measure import Quantity, compare, length
from presscloth.problems import Problem
from presscloth.sewing.lengths import half, less, times, times_pi, total
from presscloth.sewing.measuring import stitched, stitched_diameter
from presscloth.sewing.things import (
    OPPOSITE,
    SEWN,
    SIDES,
    Circle,
    Edge,
    Flat,
    Hollow,
    Odd,
    Rim,
    Shaped,
    together,
)
from presscloth.sewing.verbs.joining import not_measured, sewn_against, unmeasured
from presscloth.sewing.verbs.laying import as_it_lay
from presscloth.sewing.verbs.shaped import sewn_together
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Side, Used, Work

ROUND_EASE = length(2, Fraction(1, 16))
"""By how much a round may miss what it is set into (common practice, no source)."""

LEAST_FULLNESS = Fraction(6, 5)
MOST_FULLNESS = Fraction(3)
"""How much longer a gathered edge is (published tables of fullness: 1.5 to 3; 1.2 is a light ease)."""


class FullnessUnusual(Problem):
    """A gathered edge is hardly longer than the one that it is gathered to, or far longer.

    Below 1.2 times nothing is gathered, the cloth only puckers; beyond 3 times it no longer goes under
    the presser foot. Where the two are to be equally long, `join` them.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | frill | A    | 1   | 34 cm (13 1/2 in) | 12 cm (4 3/4 in)  |
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Gather and hem.

           ```sew
           mat = gather top of frill to bottom of cloth
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | frill | A    | 1   | 60 cm (24 in) | 12 cm (4 3/4 in)  |
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Gather and hem.

           ```sew
           mat = gather top of frill to bottom of cloth
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    gathered: str
    edge: str
    ratio: str

    def message(self) -> str:
        return f"{self.gathered} is {self.ratio} times as long as {self.edge}; gathers want 1.2 to 3 times"

    def hint(self) -> str:
        return "cut what is gathered 1.5 to 2 times as long, or join the two where they are equal"


def set_in(work: Work) -> Made:
    """Sew a round, a rectangle or a tube into an open end of a tube or a pouch.

    On the stitch line, the way round the opening is π times the round's diameter (within 2 mm or
    1/16 in), all four sides of the rectangle, or the way round the tube (geometry).
    """
    part, opening = work.one("part"), work.edge("edge")
    outer = work.hollow(opening.used)
    match part.shape:
        case Circle():
            across = stitched_diameter(part.shape)
            rim = Edge.plain(times_pi(across), part.shape.rim)
            taken = _sew_in(work, Side(part, "edge", rim, rim.length), opening, ROUND_EASE)
            return _closed(work, outer, opening, taken, across, across, is_round=True)
        case Flat():
            return _rectangle(work, part, part.shape, outer, opening)
        case Shaped():
            return _shaped(work, part, part.shape, outer, opening)
        case Hollow():
            return _tube(work, part, part.shape, outer, opening)
        case Odd():
            return not_measured(work, (opening.used, part))
        case _:
            return work.wrong_shape(part, "a round, a rectangle or a tube")


def _sew_in(work: Work, side: Side, opening: Side, allowed: Quantity | None = None) -> Quantity:
    work.must_be_raw(side, "set in")
    work.must_be_raw(opening, "set in")
    taken = work.allowance(opening, side)
    if allowed is None:
        work.meet(side, opening)
    else:
        work.meet(side, opening, allowed)
    work.seams.append(opening.seam)
    return taken


def _rectangle(work: Work, part: Used, flat: Flat, outer: Hollow, opening: Side) -> Made:
    rims = tuple(flat.edge(name).rim for name in SIDES)
    known = tuple(rim for rim in rims if rim is not None)
    rim = together(known) if len(known) == len(rims) else None
    round_it = total(stitched(flat, name) for name in SIDES)
    edge = Edge(round_it, rim, flat.left.first, flat.left.last)
    taken = _sew_in(work, Side(part, "edge", edge, round_it), opening)
    return _closed(work, outer, opening, taken, stitched(flat, "top"), stitched(flat, "left"))


def _shaped(work: Work, part: Used, shaped: Shaped, outer: Hollow, opening: Side) -> Made:
    """A piece cut by an outline, sewn in all round: its seam lines together are the way round."""
    rims = tuple(edge.rim for edge in shaped.edges.values() if edge.rim is not None)
    round_it = total(edge.length for edge in shaped.edges.values())
    edge = Edge(round_it, together(rims), rims[0], rims[0])
    taken = _sew_in(work, Side(part, "edge", edge, round_it), opening)
    across, down = shaped.across or round_it, shaped.down or round_it
    return _closed(work, outer, opening, taken, across, down)


def _closed(
    work: Work,
    outer: Hollow,
    opening: Side,
    taken: Quantity,
    width: Quantity,
    depth: Quantity,
    *,
    is_round: bool = False,
) -> Made:
    """A tube or pouch with one end closed by a bottom."""
    upright = opening.name in ("top", "bottom")
    along = less(outer.height if upright else outer.width, taken)
    ends = {name: end for name, end in outer.ends.items() if name != opening.name}
    hollow = Hollow(
        width=width if upright else along,
        height=along if upright else width,
        depth=depth,
        ends=ends,
        closed={**outer.closed, opening.name: Rim(SEWN.state, taken)},
        round=is_round,
    )
    return Made(hollow, as_it_lay(opening.used))


def _tube(work: Work, part: Used, inner: Hollow, outer: Hollow, opening: Side) -> Made:
    """A tube that lengthens another; its far end stays open."""
    own = OPPOSITE[opening.name]
    if own not in inner.ends:
        own = next(iter(inner.ends), own)
    side = work.side(part, own)
    taken = _sew_in(work, side, opening)
    ends = _with_far_end(outer, opening.name, inner, own)
    upright = opening.name in ("top", "bottom")
    reach = inner.height if own in ("top", "bottom") else inner.width
    along = less(total((outer.height if upright else outer.width, reach)), times(2, taken))
    hollow = Hollow(
        width=outer.width if upright else along,
        height=along if upright else outer.height,
        depth=outer.depth,
        ends=ends,
        closed=outer.closed,
    )
    return Made(hollow, as_it_lay(opening.used))


def _with_far_end(outer: Hollow, opening: str, inner: Hollow, own: str) -> Mapping[str, Edge]:
    """The ends of a tube in whose opening another tube is sewn: the far end of that one takes its place."""
    ends = {name: end for name, end in outer.ends.items() if name != opening}
    for name, end in inner.ends.items():
        if name != own:
            ends[opening] = end
    return ends


def gather(work: Work) -> Made:
    """Gather an edge to a shorter one and sew them together: as `join`, with 1.2 to 3 times the length.

    The far edge of what is gathered keeps its length (published tables of fullness). Tubes are
    gathered to an open end.
    """
    gathered, edge = work.edge("gathered"), work.edge("edge")
    if unmeasured((gathered.used, edge.used)):
        return not_measured(work, (edge.used, gathered.used))
    work.must_be_raw(gathered, "gathered")
    work.must_be_raw(edge, "gathered to")
    taken = work.allowance(edge, gathered)
    hold_fullness(work, gathered, edge)
    work.seams.append(edge.seam)
    if isinstance(gathered.used.shape, Hollow):
        return _tubes(work, gathered, edge, taken)
    if isinstance(gathered.used.shape, Shaped) or isinstance(edge.used.shape, Shaped):
        return sewn_together(work, edge, gathered)
    work.flat(gathered.used)
    work.flat(edge.used)
    return sewn_against(work, gathered, edge, taken)


def hold_fullness(work: Work, gathered: Side, edge: Side) -> None:
    for system in work.systems:
        long, short = gathered.seam[system], edge.seam[system]
        enough = compare(LEAST_FULLNESS * short, long, system) <= 0
        if not (enough and compare(long, MOST_FULLNESS * short, system) <= 0):
            ratio = long / short if short > 0 else Fraction(0)
            work.report(
                FullnessUnusual(
                    span=work.span,
                    gathered=gathered.words,
                    edge=edge.words,
                    ratio=f"{float(ratio):.2f}",
                    labels=work.rows_of(gathered.used, edge.used),
                )
            )
            return


def _tubes(work: Work, gathered: Side, edge: Side, taken: Quantity) -> Made:
    """A tube gathered to the open end of another."""
    inner, outer = work.hollow(gathered.used), work.hollow(edge.used)
    hollow = Hollow(
        width=half(max((inner.around, outer.around), key=lambda q: q.metric)),
        height=less(total((outer.height, inner.height)), times(2, taken)),
        depth=None,
        ends=_with_far_end(outer, edge.name, inner, gathered.name),
        closed=outer.closed,
    )
    return Made(hollow, as_it_lay(edge.used))


SET_IN = Verb("set in", {"set {part:thing} into {edge:edge}": set_in})
GATHER = Verb("gather", {"gather {gathered:edge} to {edge:edge}": gather})
