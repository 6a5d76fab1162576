"""Sewing what is cut by an outline: edges with names of their own, as long as their seam lines."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from presscloth.measure import Quantity
from presscloth.recipe.outline import over
from presscloth.sewing.lengths import total
from presscloth.sewing.shape_problems import WrongShape, what_it_is
from presscloth.sewing.things import FINISHED, SIDES, Edge, Flat, Hollow, Rim, Shaped, State
from presscloth.sewing.verbs.laying import as_it_lay, face_to_face, sewn_from
from presscloth.sewing.work import Made, Side, Used, Work

ALIKE = "a thing cut by an outline with the same edges"


def join_shaped(work: Work) -> Made:
    """An edge of an outline sewn to an edge of its length; all other edges of both stay as they are.

    Of two edges of one name, that of the second thing takes the thing's name before it (`gusset top`).
    """
    one, other = work.edge("first"), work.edge("second")
    work.join(one, other)
    return sewn_together(work, one, other)


def is_shaped(*sides: Side) -> bool:
    """Whether one of two things that meet is cut by an outline with edges of its own."""
    return any(isinstance(side.used.shape, Shaped) for side in sides)


def sewn_together(work: Work, one: Side, other: Side) -> Made:
    """What two things have left of their edges, once they are sewn together along one of each.

    One of them cannot be sewn to itself: what became of its other edges nobody could say.
    """
    if work.closes:
        work.wrong_shape(one.used, "a rectangle to make a tube of")
    edges = {name: edge for name, edge in _edges(work, one.used).items() if name != one.name}
    for name, edge in _edges(work, other.used).items():
        if name != other.name:
            edges[f"{other.used.name} {name}" if name in edges else name] = edge
    return Made(Shaped(edges), sewn_from(one.used, other.used))


def _edges(work: Work, used: Used) -> Mapping[str, Edge]:
    """The edges of a thing, each as long as its stitching."""
    match used.shape:
        case Shaped(edges=edges):
            return edges
        case Flat():
            return {name: work.side(used, name).edge.long(work.side(used, name).seam) for name in SIDES}
        case _:
            return work.wrong_shape(used, "a flat thing or one cut by an outline")


def pouch_of_shaped(work: Work, sides: Sequence[str]) -> Made:
    """Two pieces of one outline sewn together right sides in and turned: open at the edges not named.

    The second lies face down on the first: where an edge is a left one, it meets the right one.
    """
    first, second, front = _pair(work)
    taken = {name: work.join(*_meeting(work, first, second, name)) for name in sides}
    ends: dict[str, Edge] = {}
    for name, edge in front.edges.items():
        if name not in taken:
            far = _meeting(work, first, second, name)[1]
            ends[name] = edge.long(total((edge.length, far.seam)))
    width, height = _stitched(work, first, front)
    hollow = Hollow(
        width=width,
        height=height,
        depth=None,
        ends=ends,
        closed={name: Rim(State.SEWN, amount) for name, amount in taken.items()},
    )
    return Made(hollow, face_to_face(first, second))


def bag_out_shaped(work: Work, is_open: Sequence[str]) -> Made:
    """Two pieces of one outline sewn round and turned: each sewn edge is finished, on its seam line."""
    first, second, front = _pair(work)
    edges: dict[str, Edge] = {}
    for name, edge in front.edges.items():
        if name in is_open:
            edges[name] = edge
        else:
            work.join(*_meeting(work, first, second, name))
            edges[name] = Edge.plain(edge.length, FINISHED)
    across, down = _stitched(work, first, front)
    return Made(Shaped(edges, across, down, across, down), as_it_lay(first), gaps=0)


def meeting_all_round(work: Work, upper: Used, lower: Used) -> Iterator[tuple[Side, Side]]:
    """The edges of two things of one outline that lie upon each other, the right side of both up."""
    for name in _alike(work, upper, lower).edges:
        yield work.side(upper, name), work.side(lower, name)


def _pair(work: Work) -> tuple[Used, Used, Shaped]:
    """The two things, which must have the same edges."""
    first, second = work.one("first"), work.one("second")
    return first, second, _alike(work, first, second)


def _alike(work: Work, first: Used, second: Used) -> Shaped:
    """The outline of the first, whose edges the second must have too."""
    front, back = first.shape, second.shape
    if not isinstance(front, Shaped):
        return work.wrong_shape(first, ALIKE)
    if not isinstance(back, Shaped) or set(front.edges) != set(back.edges):
        problem = WrongShape(
            span=second.span, name=second.name, found=what_it_is(back), wanted=f"{ALIKE} as `{first.name}`"
        )
        return work.refuse(problem)
    return front


def _meeting(work: Work, first: Used, second: Used, name: str) -> tuple[Side, Side]:
    """An edge of the first thing, and the one of the second that lies on it."""
    back = second.shape
    facing = over(name) if "left" in name.split() or "right" in name.split() else name
    known = isinstance(back, Shaped) and facing in back.edges
    return work.side(first, name), work.side(second, facing if known else name)


def _stitched(work: Work, used: Used, shaped: Shaped) -> tuple[Quantity, Quantity]:
    """How wide and how high a piece is from seam line to seam line."""
    if shaped.across is None or shaped.down is None:
        return work.wrong_shape(used, "a single piece cut by an outline")
    return shaped.across, shaped.down
