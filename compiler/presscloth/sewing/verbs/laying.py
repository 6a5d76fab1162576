"""Laying things out in what is made of them, and putting flat things together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from presscloth.measure import Quantity
from presscloth.sewing.cut_things import box_of, in_mm
from presscloth.sewing.lengths import less, times, total
from presscloth.sewing.placing import NOWHERE, Box, Line, Lying, Mark, parts_moved, parts_turned, within
from presscloth.sewing.things import OPPOSITE, Flat, one_after_the_other, quarters_to, turned
from presscloth.sewing.work import Used


def lay(used: Used, x: Fraction = NOWHERE, y: Fraction = NOWHERE, quarters: int = 0) -> Lying:
    """A thing that lies with its upper left corner at a place, turned clockwise by quarters."""
    box = box_of(used.shape)
    if box is None:
        return Lying(used.name, Box(x, y, NOWHERE, NOWHERE), quarters, False, used.thing.parts)
    parts = parts_moved(parts_turned(used.thing.parts, quarters, box.width, box.height), x, y)
    width, height = (box.height, box.width) if quarters % 2 else (box.width, box.height)
    return Lying(used.name, Box(x, y, width, height), quarters, False, parts)


def in_a_row(flats: Sequence[Flat], taken: Sequence[Quantity]) -> Flat:
    """Flat things side by side; `taken` is what each seam between them takes of each of its sides."""
    lost = times(2, total(taken))
    return Flat(
        left=flats[0].left,
        right=flats[-1].right,
        top=one_after_the_other(tuple(flat.top for flat in flats), lost),
        bottom=one_after_the_other(tuple(flat.bottom for flat in flats), lost),
        bow=(total(flat.bow[0] for flat in flats), _outer_bow(flats[0], flats[-1])[1]),
    )


def _outer_bow(first: Flat, last: Flat) -> tuple[Quantity, Quantity]:
    """The bow of the longer of two outer edges, from side to side and from top to bottom."""
    across = first if first.top.length.metric >= last.bottom.length.metric else last
    down = first if first.left.length.metric >= last.right.length.metric else last
    return across.bow[0], down.bow[1]


def in_a_column(flats: Sequence[Flat], taken: Sequence[Quantity]) -> Flat:
    """Flat things one below the other; the last seam is remembered."""
    lost = times(2, total(taken))
    above = total(flat.height for flat in flats[:-1])
    return Flat(
        left=one_after_the_other(tuple(flat.left for flat in flats), lost),
        right=one_after_the_other(tuple(flat.right for flat in flats), lost),
        top=flats[0].top,
        bottom=flats[-1].bottom,
        seam_at=less(above, lost, times(-1, taken[-1])) if taken else None,
        bow=(_outer_bow(flats[0], flats[-1])[0], total(flat.bow[1] for flat in flats)),
    )


def against(flat: Flat, edge: str, other: Flat, taken: Quantity) -> Flat:
    """A flat thing with another, turned already, sewn to one of its edges."""
    match edge:
        case "bottom":
            return in_a_column((flat, other), (taken,))
        case "top":
            return in_a_column((other, flat), (taken,))
        case "right":
            return in_a_row((flat, other), (taken,))
        case _:
            return in_a_row((other, flat), (taken,))


def turned_to(flat: Flat, own: str, edge: str) -> tuple[Flat, int]:
    """A flat thing turned so that its `own` edge meets the `edge` of another, and by how many quarters."""
    quarters = quarters_to(own, OPPOSITE[edge])
    return turned(flat, quarters), quarters


def lying_in_line(
    used: Sequence[Used], quarters: Sequence[int], taken: Sequence[Quantity], *, across: bool
) -> tuple[tuple[Lying, ...], tuple[Line, ...]]:
    """How things lie that are sewn side by side (`across`) or one below the other, and the seams."""
    lying: list[Lying] = []
    seams: list[Fraction] = []
    at = NOWHERE
    for i, each in enumerate(used):
        laid = lay(each, at if across else NOWHERE, NOWHERE if across else at, quarters[i])
        lying.append(laid)
        if i < len(taken):
            at += (laid.box.width if across else laid.box.height) - 2 * in_mm(taken[i])
            seams.append(at + in_mm(taken[i]))
    far = max((each.box.height if across else each.box.width) for each in lying)
    lines = tuple(
        Line(Mark.SEAM, (s, NOWHERE), (s, far)) if across else Line(Mark.SEAM, (NOWHERE, s), (far, s))
        for s in seams
    )
    return tuple(_between_seams(each, i, seams, across=across) for i, each in enumerate(lying)), lines


def _between_seams(laid: Lying, i: int, seams: Sequence[Fraction], *, across: bool) -> Lying:
    """A thing in a row or column, of which nothing is seen beyond the seams beside it."""
    box = laid.box
    near, far = (box.x, box.x + box.width) if across else (box.y, box.y + box.height)
    start, end = (seams[i - 1] if i else near), (seams[i] if i < len(seams) else far)
    return replace(laid, parts=within(laid.parts, start, end, across=across))


def lies_along(strip: Flat, edge: Quantity) -> bool:
    """Whether a strip is laid to an edge with its width; else with its height, which comes nearer to it."""
    return abs(strip.width.metric - edge.metric) <= abs(strip.height.metric - edge.metric)
