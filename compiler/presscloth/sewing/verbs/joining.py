"""Joining edge to edge: rows, columns, one edge to another, pouches, and lapping."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import NoReturn

from presscloth.measure import Quantity
from presscloth.recipe.statement import Choice, Counted, Statement, Things
from presscloth.sewing.lengths import half, less, longest, times, total
from presscloth.sewing.measuring import measured, stitched_diameter
from presscloth.sewing.placing import Arranged, somewhere
from presscloth.sewing.things import (
    OPPOSITE,
    SEWN,
    SIDES,
    Circle,
    Edge,
    Flat,
    Hollow,
    Long,
    Odd,
    Rim,
    Shaped,
    State,
    Triangle,
    Whole,
    together,
)
from presscloth.sewing.verbs.centring import join_centred
from presscloth.sewing.verbs.corners import join_triangles
from presscloth.sewing.verbs.joining_problems import (
    BetweenMiscounted,
    LapTooWide,
    NothingToJoin,
    RawEdgeLapped,
    SidesMakeNoPouch,
)
from presscloth.sewing.verbs.laying import (
    against,
    as_it_lay,
    face_to_face,
    in_a_column,
    in_a_row,
    lay,
    lying_in_line,
    sewn_from,
    turned_to,
)
from presscloth.sewing.verbs.shaped import is_shaped, join_shaped, pouch_of_shaped, sewn_together
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Side, Used, Work

MIRRORED = {"left": "right", "right": "left", "top": "top", "bottom": "bottom"}


def not_flat(work: Work, used: Used) -> NoReturn:
    """Only flat things are joined edge to edge."""
    if isinstance(used.shape, Hollow):
        way_out = "join it while it is flat; `fold A in half, join sides` closes both ends of what it becomes"
        work.wrong_shape(
            used, "flat things; a tube is sewn to another with `set A into bottom of B`", way_out
        )
    work.wrong_shape(used, "flat things")


def face_down(work: Work, first: Used, second: Used, name: str) -> tuple[Side, Side]:
    """An edge of a thing, and the edge of a second one that comes to lie on it, right sides together.

    The second is turned over sideways: its right edge lies at the left.
    """
    side, other = work.side(first, name), work.side(second, MIRRORED[name])
    return side, other if other.name == name else replace(other, lies_on=side.words)


def unmeasured(used: Sequence[Used]) -> bool:
    """Whether the outline of one of these is not known, so that nothing can be compared."""
    return any(isinstance(each.shape, Odd | Whole | Long) for each in used)


def not_measured(work: Work, used: Sequence[Used]) -> Made:
    """Sewn together without anything to measure by: all but the first are counted."""
    for each in used[1:]:
        work.uncounted(each)
    return Made(Odd(), sewn_from(*used))


def join_in_line(work: Work) -> Made:
    """A row of flat things, whose heights must be equal, or a column, whose widths must be.

    Each seam takes its allowance from both sides: n things lose 2 (n − 1) allowances (common practice).
    """
    return _in_line(work, work.every("parts"))


def join_with_between(work: Work) -> Made:
    """A row or column with other things between the first ones, and at the ends where it says so.

    A number before the things between must be the number of places; without one, it is meant. Each seam
    takes its allowance from both sides (published sashing formula; common practice).
    """
    parts = work.every("parts")
    between = work.one("between")
    at_the_ends = work.says("where") != "between"
    places = len(parts) + 1 if at_the_ends else len(parts) - 1
    if between.count != places:
        work.refuse(
            BetweenMiscounted(span=between.span, name=between.name, given=between.count, places=places)
        )
    found: list[Used] = [between] if at_the_ends else []
    for i, part in enumerate(parts):
        found.append(part)
        if at_the_ends or i < len(parts) - 1:
            found.append(between)
    return _in_line(work, found)


def places_between(statement: Statement, number: Callable[[Counted], int]) -> Mapping[str, int]:
    """As many things as there are places between the others, and at the ends where it says so."""
    parts, where = statement.slots.get("parts"), statement.slots.get("where")
    if not isinstance(parts, Things) or not isinstance(where, Choice):
        return {}
    count = sum(number(each) for each in parts.of)
    return {"between": count - 1 if where.words == "between" else count + 1}


def _in_line(work: Work, parts: Sequence[Used]) -> Made:
    if len(parts) < 2:
        work.refuse(NothingToJoin(span=work.span, name=work.one("parts").name))
    if unmeasured(parts):
        return not_measured(work, parts)
    across = work.says("way") == "side by side"
    flats = tuple(each.shape if isinstance(each.shape, Flat) else not_flat(work, each) for each in parts)
    near, far = ("right", "left") if across else ("bottom", "top")
    taken = tuple(work.join(work.side(one, near), work.side(other, far)) for one, other in pairwise(parts))
    flat = in_a_row(flats, taken) if across else in_a_column(flats, taken)
    return Made(flat, lambda: lying_in_line(parts, [0] * len(parts), taken, across=across))


def join_edges(work: Work) -> Made:
    """One edge sewn to another: the first thing stays as it lay, the second is turned to meet it.

    Opposite edges of one thing make a tube. Two triangles make a square or a larger triangle (geometry).
    Both edges are raw and equally long between the ends of their stitching (common practice).
    """
    first, second = work.one("first"), work.one("second")
    if unmeasured((first, second)):
        return not_measured(work, (first, second))
    if isinstance(first.shape, Shaped) or isinstance(second.shape, Shaped):
        return join_shaped(work)
    if isinstance(first.shape, Triangle) or isinstance(second.shape, Triangle):
        return join_triangles(work)
    for used in (first, second):
        if not isinstance(used.shape, Flat):
            not_flat(work, used)
    one, other = work.edge("first"), work.edge("second")
    taken = work.join(one, other)
    if work.closes:
        return tube(first, work.flat(first), one.name, times(2, taken))
    return sewn_against(work, one, other, taken)


def sewn_against(work: Work, one: Side, other: Side, taken: Quantity) -> Made:
    """Two flat things, the second turned so that its edge meets the edge of the first."""
    flat, quarters = turned_to(work.flat(other.used), other.name, one.name)
    made = against(work.flat(one.used), one.name, flat, taken)
    pairs = [(one.used, 0), (other.used, quarters)]
    if one.name in ("top", "left"):
        pairs.reverse()
    across = one.name in ("left", "right")
    used, turns = [p[0] for p in pairs], [p[1] for p in pairs]
    return Made(made, lambda: lying_in_line(used, turns, (taken,), across=across))


def tube(used: Used, flat: Flat, edge: str, lost: Quantity) -> Made:
    """A flat thing whose opposite edges are sewn together; `lost` is what that takes of the way round."""
    upright = edge in ("left", "right")
    names = ("top", "bottom") if upright else ("left", "right")
    ends = {name: _ring(flat.edge(name), less(flat.edge(name).length, lost)) for name in names}
    across = half(longest(end.length for end in ends.values()))
    hollow = Hollow(
        width=across if upright else flat.width,
        height=flat.height if upright else across,
        depth=None,
        ends=ends,
        closed={edge: SEWN, OPPOSITE[edge]: SEWN},
    )
    return Made(hollow, lambda: Arranged((lay(used),), parts=somewhere(used.thing.parts)))


def _ring(edge: Edge, length: Quantity) -> Edge:
    """An edge that runs round an opening."""
    return edge.long(length)


def join_all_round(work: Work) -> Made:
    """Two flat things sewn together all round, right sides in, and turned: a closed pouch.

    Equal widths and heights; it loses an allowance at each side (common practice).
    """
    first, second = work.one("first"), work.one("second")
    if isinstance(first.shape, Circle) and isinstance(second.shape, Circle):
        return _round_pouch(work, first.shape, second.shape)
    if isinstance(first.shape, Shaped):
        return pouch_of_shaped(work, tuple(first.shape.edges))
    return _pouch(work, SIDES)


def _round_pouch(work: Work, one: Circle, other: Circle) -> Made:
    first, second = work.one("first"), work.one("second")
    sides = tuple(
        Side(used, "edge", Edge.plain(circle.diameter, circle.rim), stitched_diameter(circle))
        for used, circle in ((first, one), (second, other))
    )
    taken = work.join(*sides)
    across = less(one.diameter, times(2, taken))
    hollow = Hollow(across, across, None, {}, dict.fromkeys(SIDES, SEWN), round=True)
    return Made(hollow, as_it_lay(first))


def join_on_sides(work: Work) -> Made:
    """Two flat things sewn together on the sides named, right sides in, and turned.

    Three sides make a pouch that is open at the fourth, two opposite ones a tube; each sewn side loses
    its allowance (common practice).
    """
    sides = work.edges("sides")
    if isinstance(work.one("first").shape, Shaped):
        return pouch_of_shaped(work, sides)
    opposite = len(sides) == 2 and OPPOSITE.get(sides[0]) == sides[1]
    if len(sides) < 3 and not opposite:
        work.refuse(SidesMakeNoPouch(span=work.place("sides"), sides=sides))
    return _pouch(work, sides)


def _pouch(work: Work, sides: Sequence[str]) -> Made:
    first, second = work.one("first"), work.one("second")
    if unmeasured((first, second)):
        return not_measured(work, (first, second))
    front, back = work.flat(first), work.flat(second)
    taken = {name: work.join(*face_down(work, first, second, name)) for name in sides}
    hollow = Hollow(
        width=less(front.width, *_of(taken, "left", "right")),
        height=less(front.height, *_of(taken, "top", "bottom")),
        depth=None,
        ends={name: _mouth(front, back, name, taken) for name in SIDES if name not in sides},
        closed={name: Rim(State.SEWN, amount) for name, amount in taken.items()},
    )
    return Made(hollow, face_to_face(first, second))


def _of(taken: Mapping[str, Quantity], *names: str) -> tuple[Quantity, ...]:
    return tuple(taken[name] for name in names if name in taken)


def _mouth(front: Flat, back: Flat, name: str, taken: Mapping[str, Quantity]) -> Edge:
    """The open end of a pouch: what the seams leave of both edges, and their rim if they are alike."""
    beside = ("left", "right") if name in ("top", "bottom") else ("top", "bottom")
    near, far = front.edge(name), back.edge(MIRRORED[name])
    lost = times(2, total(_of(taken, *beside)))
    rim = None if near.rim is None or far.rim is None else together((near.rim, far.rim))
    return Edge(less(total((near.length, far.length)), lost), rim, near.first, near.last)


def lap(work: Work) -> Made:
    """Two flat things lapped by M: together they are narrower by M (common practice).

    The lapped edges must be finished or folded and equally long, and M narrower than either thing.
    """
    over, under = work.edge("over"), work.edge("under")
    by = work.amount("by")
    for side in (over, under):
        if side.edge.rim is None or side.edge.rim.raw:
            work.refuse(RawEdgeLapped(span=side.used.span, edge=side.words))
        across = _across(work, side)
        if across is not None and (work.short_in(across, by) or not work.short_in(by, across)):
            work.refuse(
                LapTooWide(
                    span=work.place("by"), lap=work.said(by), name=side.used.name, width=work.said(across)
                )
            )
    work.meet(over, under)
    work.seams.append(over.seam)
    if is_shaped(over, under):
        return sewn_together(work, over, under)
    if work.closes:
        return tube(over.used, work.flat(over.used), over.name, by)
    return sewn_against(work, over, under, half(by))


def _across(work: Work, side: Side) -> Quantity | None:
    """How far a thing reaches from an edge; of what is cut by an outline, at most, where that is known."""
    if isinstance(side.used.shape, Shaped):
        return measured(side.used.shape, "length", finished=False)
    flat = work.flat(side.used)
    return flat.width if side.name in ("left", "right") else flat.height


JOIN = Verb(
    "join",
    {
        "join {parts:things} {way=side by side|top to bottom}": join_in_line,
        "join {parts:things} with {between:thing} {where=between|between and at the ends}"
        " {way=side by side|top to bottom}": join_with_between,
        "join {first:edge} to {second:edge}": join_edges,
        "join {first:edge} to {second:edge}, centred": join_centred,
        "join {first:thing} to {second:thing} all round": join_all_round,
        "join {first:thing} to {second:thing} on {sides:sides}": join_on_sides,
    },
    implied=places_between,
)
LAP = Verb("lap", {"lap {over:edge} over {under:edge} by {by:measure}": lap})
