"""Laying things out in what is made of them, and putting flat things together."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction

from presscloth.measure import Quantity
from presscloth.sewing.cut_things import box_of, in_mm
from presscloth.sewing.lengths import less, times, total
from presscloth.sewing.placing import (
    NOWHERE,
    Arranged,
    Box,
    Line,
    Lying,
    Mark,
    parts_moved,
    parts_turned,
    somewhere,
    within,
)
from presscloth.sewing.things import OPPOSITE, Edge, Flat, one_after_the_other, quarters_to, turned
from presscloth.sewing.work import Used


def lay(used: Used, x: Fraction = NOWHERE, y: Fraction = NOWHERE, quarters: int = 0) -> Lying:
    """A thing that lies with its upper left corner at a place, turned clockwise by quarters."""
    box = box_of(used.shape)
    if box is None:
        return Lying(used.name, Box(x, y, NOWHERE, NOWHERE), quarters, False, used.thing.parts)
    parts = parts_moved(parts_turned(used.thing.parts, quarters, box.width, box.height), x, y)
    width, height = (box.height, box.width) if quarters % 2 else (box.width, box.height)
    return Lying(used.name, Box(x, y, width, height), quarters, False, parts)


def as_it_lay(used: Used) -> Callable[[], Arranged]:
    """What is made lies as the thing lay that it is made of."""
    return lambda: Arranged((lay(used),), parts=used.thing.parts)


def face_to_face(near: Used, far: Used) -> Callable[[], Arranged]:
    """Two things lie upon each other, right sides in: once turned, the second is seen from behind."""

    def arrange() -> Arranged:
        second = lay(far)
        behind = tuple(replace(part, back=True) for part in second.parts)
        return Arranged((lay(near), replace(second, back=True, parts=behind)))

    return arrange


def with_on_it(ground: Used, part: Used) -> Callable[[], Arranged]:
    """What is made lies as the ground lay; what is put on it lies somewhere there."""
    return lambda: Arranged((lay(ground),), parts=(*ground.thing.parts, *somewhere(part.thing.parts)))


def in_the_middle(used: Used, width: Quantity, height: Quantity) -> Callable[[], Arranged]:
    """A thing lies in the middle of what is made, `width` by `height`."""

    def arrange() -> Arranged:
        size = lay(used).box
        x, y = (in_mm(width) - size.width) / 2, (in_mm(height) - size.height) / 2
        return Arranged((lay(used, x, y),))

    return arrange


def sewn_from(*used: Used) -> Callable[[], Arranged]:
    """What is made has the parts of all that was used; where each of them lies nobody knows."""
    return lambda: Arranged(parts=tuple(part for each in used for part in somewhere(each.thing.parts)))


def in_a_row(flats: Sequence[Flat], taken: Sequence[Quantity]) -> Flat:
    """Flat things side by side; `taken` is what each seam between them takes of each of its sides."""
    tops, bottoms = tuple(flat.top for flat in flats), tuple(flat.bottom for flat in flats)
    top, bottom = _both(tops, bottoms, taken)
    bow = total(flat.bow[0] for flat in flats), _outer_bow(flats[0], flats[-1])[1]
    return Flat(flats[0].left, flats[-1].right, top, bottom, bow=bow)


def _both(ones: tuple[Edge, ...], others: tuple[Edge, ...], taken: Sequence[Quantity]) -> tuple[Edge, Edge]:
    """Two opposite edges, each made of several; one and the same where they are made of the very same."""
    lost = times(2, total(taken))
    one = one_after_the_other(ones, lost)
    if all(each is other for each, other in zip(ones, others, strict=True)):
        return one, one
    return one, one_after_the_other(others, lost)


def _outer_bow(first: Flat, last: Flat) -> tuple[Quantity, Quantity]:
    """The bow of the longer of two outer edges, from side to side and from top to bottom."""
    if not (first.bowed or last.bowed):
        return first.bow
    across = first if first.top.length.metric >= last.bottom.length.metric else last
    down = first if first.left.length.metric >= last.right.length.metric else last
    return across.bow[0], down.bow[1]


def in_a_column(flats: Sequence[Flat], taken: Sequence[Quantity]) -> Flat:
    """Flat things one below the other; the last seam is remembered."""
    left, right = _both(tuple(flat.left for flat in flats), tuple(flat.right for flat in flats), taken)
    lost = times(2, total(taken))
    above = total(flat.height for flat in flats[:-1])
    return Flat(
        left=left,
        right=right,
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
) -> Arranged:
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
    seen = tuple(_between_seams(each, i, seams, across=across) for i, each in enumerate(lying))
    return Arranged(seen, lines)


def _between_seams(laid: Lying, i: int, seams: Sequence[Fraction], *, across: bool) -> Lying:
    """A thing in a row or column, of which nothing is seen beyond the seams beside it."""
    box = laid.box
    near, far = (box.x, box.x + box.width) if across else (box.y, box.y + box.height)
    start, end = (seams[i - 1] if i else near), (seams[i] if i < len(seams) else far)
    return replace(laid, parts=within(laid.parts, start, end, across=across))


def lies_along(strip: Flat, edge: Quantity) -> bool:
    """Whether a strip is laid to an edge with its width; else with its height, which comes nearer to it."""
    return abs(strip.width.metric - edge.metric) <= abs(strip.height.metric - edge.metric)
