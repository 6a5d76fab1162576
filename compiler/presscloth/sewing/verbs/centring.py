"""Joining the middle of a longer edge to a shorter one: a bib on a waistband."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from presscloth.measure import Quantity
from presscloth.problems import Problem
from presscloth.sewing.cut_things import in_mm
from presscloth.sewing.lengths import half, less, times, total
from presscloth.sewing.placing import Arranged, Lying, parts_moved
from presscloth.sewing.things import Edge, Flat, one_after_the_other
from presscloth.sewing.verbs.laying import against, lying_in_line, turned_to
from presscloth.sewing.work import Made, Side, Work


class NothingToCentre(Problem):
    """Two edges are joined centred, and neither is longer than the other in both systems.

    Fails:

        ## Pieces
        | Piece     | From | Cut | Width         | Height        |
        |-----------|------|-----|---------------|---------------|
        | bib       | A    | 1   | 40 cm (16 in) | 20 cm (8 in)  |
        | waistband | A    | 1   | 40 cm (16 in) | 12 cm (4 3/4 in) |

        ## Steps
        1. Join and hem.

           ```sew
           apron = join bottom of bib to top of waistband, centred
           hem all of apron by 1.2 cm (1/2 in)
           finish apron
           ```

    Passes:

        ## Pieces
        | Piece     | From | Cut | Width         | Height        |
        |-----------|------|-----|---------------|---------------|
        | bib       | A    | 1   | 20 cm (8 in)  | 20 cm (8 in)  |
        | waistband | A    | 1   | 40 cm (16 in) | 12 cm (4 3/4 in) |

        ## Steps
        1. Join and hem.

           ```sew
           apron = join bottom of bib to top of waistband, centred
           hem all of apron by 1.2 cm (1/2 in)
           finish apron
           ```
    """

    one: str
    other: str
    lengths: tuple[str, str]

    def message(self) -> str:
        one, other = self.lengths
        return f"{self.one} is {one} and {self.other} {other}: neither lies within the other"

    def hint(self) -> str:
        return "leave out `, centred` where both are to be equally long, or make one of them shorter"


def join_centred(work: Work) -> Made:
    """The shorter edge lies in the middle of the longer one, within it: a bib on a waistband.

    What is left of the longer edge, half at each end, belongs to the sides of what is made, which are
    longer by it (common practice). The first thing stays as it lay.
    """
    one, other = work.edge("first"), work.edge("second")
    flats = work.flat(one.used), work.flat(other.used)
    for side in (one, other):
        work.must_be_raw(side)
    taken = work.allowance(one, other)
    shorter, longer = _in_order(work, one, other)
    work.seams.append(shorter.seam)
    ledge = half(less(longer.edge.length, shorter.edge.length))
    turned, quarters = turned_to(flats[1], other.name, one.name)
    straight = against(flats[0], one.name, turned, taken)
    pairs = [(one, flats[0], 0), (other, turned, quarters)]
    if one.name in ("top", "left"):
        pairs.reverse()
    across = one.name in ("left", "right")
    step = Edge.plain(ledge, work.must_be_raw(longer))
    made = _with_ledges(straight, [flat for _, flat, _ in pairs], step, taken, across=across)
    is_shorter = [side is shorter for side, _, _ in pairs]

    def arrange() -> Arranged:
        used, quarters = [side.used for side, _, _ in pairs], [turns for _, _, turns in pairs]
        straight = lying_in_line(used, quarters, (taken,), across=across)
        return replace(straight, lying=_moved(straight.lying, is_shorter, in_mm(ledge), across=across))

    return Made(made, arrange)


def _in_order(work: Work, one: Side, other: Side) -> tuple[Side, Side]:
    """The shorter edge and the longer one; which is which must be so in both systems."""
    shorter_in = work.short_in(one.edge.length, other.edge.length)
    longer_in = work.short_in(other.edge.length, one.edge.length)
    if len(shorter_in) == len(work.systems):
        return one, other
    if len(longer_in) == len(work.systems):
        return other, one
    return work.refuse(
        NothingToCentre(
            span=work.span,
            one=one.words,
            other=other.words,
            lengths=(work.said(one.edge.length), work.said(other.edge.length)),
            labels=work.rows_of(one.used, other.used),
        )
    )


def _with_ledges(
    straight: Flat, flats: Sequence[Flat], ledge: Edge, taken: Quantity, *, across: bool
) -> Flat:
    """The sides of what is made, with what is left of the longer edge between those of the two things."""
    lost = times(2, taken)
    first, last = flats
    if across:
        top = one_after_the_other((first.top, ledge, last.top), lost)
        bottom = one_after_the_other((first.bottom, ledge, last.bottom), lost)
        bow = total((straight.bow[0], ledge.length)), straight.bow[1]
        return replace(straight, top=top, bottom=bottom, bow=bow)
    left = one_after_the_other((first.left, ledge, last.left), lost)
    right = one_after_the_other((first.right, ledge, last.right), lost)
    bow = straight.bow[0], total((straight.bow[1], ledge.length))
    return replace(straight, left=left, right=right, bow=bow)


def _moved(
    lying: Sequence[Lying], is_shorter: Sequence[bool], by: Fraction, *, across: bool
) -> tuple[Lying, ...]:
    """The shorter thing moved to the middle."""
    x, y = (Fraction(0), by) if across else (by, Fraction(0))
    return tuple(
        replace(each, box=each.box.moved(x, y), parts=parts_moved(each.parts, x, y)) if moves else each
        for each, moves in zip(lying, is_shorter, strict=True)
    )
