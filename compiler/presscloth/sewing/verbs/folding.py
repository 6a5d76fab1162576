"""Folding, alone or with the seams that close what was folded."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from presscloth.measure import Quantity, compare
from presscloth.sewing.cut_things import box_of, in_mm
from presscloth.sewing.lengths import half, less, times, total
from presscloth.sewing.measuring import stitched
from presscloth.sewing.placing import Arranged, Box, Line, Mark, Part, folded_up, seen_in
from presscloth.sewing.things import (
    FOLDED,
    OPPOSITE,
    Edge,
    Flat,
    Hollow,
    Long,
    Rim,
    State,
    alike,
)
from presscloth.sewing.verbs.folding_problems import FoldUnclear, OpeningUneven, SeamNotInTheMiddle
from presscloth.sewing.verbs.joining import tube
from presscloth.sewing.verbs.laying import as_it_lay, lay
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Used, Work


def fold(work: Work) -> Made:
    """Fold in half, or in four with the raw edges inside.

    Lengthways halves the shorter side, across the longer one, side to side the width, top to bottom
    the height; `in four` leaves a quarter, with both edges folded (common practice). The fold lies at
    the top or the left, and what is seen stays as it lay. A tape is halved by a fold across.
    """
    used = work.one("thing")
    shape = used.shape
    parts_of = 4 if work.has("in four") else 2
    if isinstance(shape, Long):
        lengthways = work.says("way") in ("lengthways", "side to side")
        length = shape.length if lengthways else times(Fraction(1, parts_of), shape.length)
        return Made(Long(length, shape.form), as_it_lay(used))
    flat = work.flat(used)
    across = _halves_width(work, used, flat)
    folded = _narrowed(flat, parts_of) if across else _lowered(flat, parts_of)

    def arrange() -> Arranged:
        lines, seen = _fold_lines(used, parts_of, across=across), _seen(used, parts_of, across=across)
        return Arranged((lay(used),), lines, seen)

    return Made(folded, arrange)


def _halves_width(work: Work, used: Used, flat: Flat) -> bool:
    """Whether a fold halves the width; it must be clear in all systems."""
    way = work.says("way")
    if way in ("side to side", "top to bottom"):
        return way == "side to side"
    sides = {compare(flat.width[s], flat.height[s], s) for s in work.systems}
    if len(sides) > 1 or 0 in sides:
        width, height = work.said(flat.width), work.said(flat.height)
        work.refuse(FoldUnclear(span=work.span, name=used.name, width=width, height=height, way=way))
    narrow = sides == {-1}
    halves = narrow if way == "lengthways" else not narrow
    work.folded[work.span] = "width" if halves else "height"
    return halves


def _closed(one: Edge, other: Edge, in_four: bool) -> Edge:
    """The edge that lies opposite a fold: the two edges that come together, or a fold again."""
    if in_four:
        return one.finished(one.length, FOLDED)
    if one.rim is not None and other.rim is not None and alike(one.rim, other.rim):
        return one
    return Edge(one.length, None, one.first, one.last)


def _narrowed(flat: Flat, by: int) -> Flat:
    share = Fraction(1, by)
    return Flat(
        left=flat.left.finished(flat.left.length, FOLDED),
        right=_closed(flat.right, flat.left, by == 4),
        top=flat.top.long(times(share, flat.top.length)),
        bottom=flat.bottom.long(times(share, flat.bottom.length)),
        seam_at=flat.seam_at,
    )


def _lowered(flat: Flat, by: int) -> Flat:
    share = Fraction(1, by)
    return Flat(
        left=flat.left.long(times(share, flat.left.length)),
        right=flat.right.long(times(share, flat.right.length)),
        top=flat.top.finished(flat.top.length, FOLDED),
        bottom=_closed(flat.bottom, flat.top, by == 4),
    )


def _fold_lines(used: Used, by: int, *, across: bool) -> tuple[Line, ...]:
    box = box_of(used.shape)
    if box is None:
        return ()
    shares = [Fraction(i, by) for i in range(1, by)]
    zero = Fraction(0)
    if across:
        return tuple(Line(Mark.FOLD, (box.width * s, zero), (box.width * s, box.height)) for s in shares)
    return tuple(Line(Mark.FOLD, (zero, box.height * s), (box.width, box.height * s)) for s in shares)


def _seen(used: Used, by: int, *, across: bool) -> tuple[Part, ...]:
    """The parts that are still seen from the front: those right of the fold, or below it."""
    box = box_of(used.shape)
    if box is None:
        return used.thing.parts
    width, height = (box.width / by, box.height) if across else (box.width, box.height / by)
    return seen_in(used.thing.parts, Box(box.width - width, box.height - height, width, height))


def fold_and_join_sides(work: Work) -> Made:
    """Fold in half at the bottom, the far half turned over, and sew both sides: a pouch, open at the top.

    It is as wide as the stitch lines are apart, and half as high as the flat thing, the opening's
    allowance included (geometry). Top and bottom must be alike; `at the seam`, the last seam must lie
    in the middle.
    """
    used = work.one("thing")
    flat = work.flat(used)
    _hold_opening(work, used, flat)
    middle = half(flat.height)
    if work.has("at the seam"):
        _hold_seam(work, used, flat, middle)
    taken = {name: _side_seam(work, used, name) for name in ("left", "right")}
    lost = total(taken.values())
    width = less(flat.width, lost)
    mouth = less(total((flat.top.length, flat.bottom.length)), times(2, lost))
    hollow = Hollow(
        width=width,
        height=middle,
        depth=None,
        ends={"top": flat.top.long(mouth)},
        closed={"bottom": FOLDED, **{name: Rim(State.SEWN, t) for name, t in taken.items()}},
    )

    def arrange() -> Arranged:
        laid = lay(used)
        window = Box(in_mm(taken["left"]), Fraction(0), in_mm(width), in_mm(middle))
        parts = seen_in(folded_up(used.thing.parts, in_mm(middle)), window)
        fold_line = Line(Mark.FOLD, (Fraction(0), in_mm(middle)), (laid.box.width, in_mm(middle)))
        return Arranged((laid,), (fold_line, *_side_lines(laid.box, taken)), parts)

    return Made(hollow, arrange)


def _side_lines(box: Box, taken: dict[str, Quantity]) -> tuple[Line, ...]:
    left, right = in_mm(taken["left"]), box.width - in_mm(taken["right"])
    return tuple(Line(Mark.SEAM, (x, Fraction(0)), (x, box.height)) for x in (left, right))


def _side_seam(work: Work, used: Used, name: str) -> Quantity:
    """Sew one side, its upper half to its lower one."""
    side = work.side(used, name)
    work.must_be_raw(side)
    taken = work.allowance(side)
    work.seams.append(half(side.seam))
    return taken


def _hold_opening(work: Work, used: Used, flat: Flat) -> None:
    top, bottom = flat.top, flat.bottom
    even = top.rim is not None and bottom.rim is not None and alike(top.rim, bottom.rim)
    same = all(compare(top.length[s], bottom.length[s], s) == 0 for s in work.systems)
    if not (even and same):
        work.refuse(
            OpeningUneven(
                span=work.span,
                name=used.name,
                one=f"top {_words(work, top, stitched(flat, 'top'))}",
                other=f"bottom {_words(work, bottom, stitched(flat, 'bottom'))}",
                labels=work.rows_of(used),
            )
        )


def _words(work: Work, edge: Edge, seam: Quantity) -> str:
    state = "partly raw" if edge.rim is None else edge.rim.state.value
    allowance = edge.rim.allowance if edge.rim is not None else None
    with_it = f" with {work.said(allowance)}" if allowance is not None else ""
    return f"{state}{with_it}, {work.said(seam)} long"


def _hold_seam(work: Work, used: Used, flat: Flat, middle: Quantity) -> None:
    seam = flat.seam_at
    if seam is None or any(compare(seam[s], middle[s], s) for s in work.systems):
        work.report(
            SeamNotInTheMiddle(
                span=work.place("at the seam"),
                name=used.name,
                seam=None if seam is None else work.said(seam),
                middle=work.said(middle),
                labels=work.rows_of(used),
            )
        )


def fold_and_join_long_edges(work: Work) -> Made:
    """Fold lengthways and sew the long edges together: a tube, which is turned.

    Its way round is the shorter side less two allowances (geometry).
    """
    used = work.one("thing")
    flat = work.flat(used)
    sides = {compare(flat.width[s], flat.height[s], s) for s in work.systems}
    if len(sides) > 1 or 0 in sides:
        width, height = work.said(flat.width), work.said(flat.height)
        work.refuse(FoldUnclear(span=work.span, name=used.name, width=width, height=height, way="lengthways"))
    edge = "left" if sides == {-1} else "top"
    work.folded[work.span] = "width" if edge == "left" else "height"
    one, other = work.side(used, edge), work.side(used, OPPOSITE[edge])
    taken = work.join(one, other)
    made = tube(used, flat, edge, times(2, taken))

    def arrange() -> Arranged:
        return replace(made.arrange(), lines=_fold_lines(used, 2, across=edge == "left"))

    return Made(made.shape, arrange)


FOLD = Verb(
    "fold",
    {
        "fold {thing:thing} {way=lengthways|across|side to side|top to bottom} [in four]": fold,
        "fold {thing:thing} in half [at the seam], join sides": fold_and_join_sides,
        "fold {thing:thing} lengthways, join the long edges": fold_and_join_long_edges,
    },
)
