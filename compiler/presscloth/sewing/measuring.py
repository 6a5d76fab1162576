"""What can be measured of a thing: its sides and edges, with the allowances of raw edges or without.

Edges that meet are compared between the ends of their stitching. A raw neighbour takes its
allowance off an edge; a finished, folded or sewn one takes nothing.
"""

from __future__ import annotations

from presscloth.measure import Quantity
from presscloth.sewing.lengths import NOTHING, half, less, longest, times, times_pi, times_root_two, total
from presscloth.sewing.things import (
    LONG_SIDE,
    SIDES,
    Circle,
    Edge,
    Flat,
    Hollow,
    Long,
    Odd,
    Rim,
    Shape,
    Shaped,
    Triangle,
    Whole,
    neighbours,
)


def taken_off(rim: Rim | None) -> Quantity:
    """What a raw edge takes off what meets it; nothing where its allowance is not known."""
    return NOTHING if rim is None else rim.taken_off


def stitched(flat: Flat, name: str) -> Quantity:
    """The length of a flat thing's edge between the ends of its stitching."""
    one, other = neighbours(flat, name)
    return flat.edge(name).between(one, other)


def stitched_leg(triangle: Triangle) -> Quantity:
    """A leg between the ends of its stitching: at the point it loses √2 + 1 allowances, at the corner one."""
    allowance = taken_off(triangle.rim)
    return less(triangle.leg, times(2, allowance), times_root_two(allowance))


def stitched_long_side(triangle: Triangle) -> Quantity:
    return times_root_two(stitched_leg(triangle))


def edge_of(shape: Shape, name: str) -> Edge | None:
    """An edge by its name; None where the shape has no such edge, or it was closed."""
    match shape:
        case Flat() if name in SIDES:
            return shape.edge(name)
        case Hollow():
            return shape.ends.get(name)
        case Triangle() if name == LONG_SIDE:
            return Edge.plain(shape.long_side, shape.rim)
        case Triangle() if name in shape.legs:
            return Edge.plain(shape.leg, shape.rim)
        case Shaped():
            return shape.edges.get(name)
        case _:
            return None


def seam_length(shape: Shape, name: str) -> Quantity | None:
    """How long the stitching along an edge is."""
    match shape:
        case Flat() if name in SIDES:
            return stitched(shape, name)
        case Hollow() if name in shape.ends:
            return shape.ends[name].length
        case Triangle() if name == LONG_SIDE:
            return stitched_long_side(shape)
        case Triangle() if name in shape.legs:
            return stitched_leg(shape)
        case Shaped() if name in shape.edges:
            return shape.edges[name].length
        case _:
            return None


def measured(shape: Shape, part: str, *, finished: bool) -> Quantity | None:
    """`width`, `height`, `depth`, `around`, `length` or an edge of a thing; None where it has none.

    `finished` leaves out the allowances of raw edges.
    """
    match part:
        case "width":
            return _width(shape, finished=finished)
        case "height":
            return _height(shape, finished=finished)
        case "depth":
            return shape.depth if isinstance(shape, Hollow) else None
        case "around":
            return _around(shape, finished=finished)
        case "length":
            if isinstance(shape, Long):
                return shape.length
            sides = (_width(shape, finished=finished), _height(shape, finished=finished))
            known = tuple(side for side in sides if side is not None)
            return longest(known) if known else None
        case _:
            if finished:
                return seam_length(shape, part)
            edge = edge_of(shape, part)
            return None if edge is None else edge.length


def _width(shape: Shape, *, finished: bool) -> Quantity | None:
    match shape:
        case Flat() if finished:
            return less(longest((stitched(shape, "top"), stitched(shape, "bottom"))), shape.bow[0])
        case Hollow() if finished:
            return less(shape.width, *_raw_ends(shape, ("left", "right")))
        case Flat() | Hollow() | Odd():
            return shape.width
        case Circle():
            return stitched_diameter(shape) if finished else shape.diameter
        case Triangle():
            if shape.quarter:
                return stitched_long_side(shape) if finished else shape.long_side
            return stitched_leg(shape) if finished else shape.leg
        case Shaped():
            return shape.across if finished else shape.width
        case Long() | Whole():
            return None


def _height(shape: Shape, *, finished: bool) -> Quantity | None:
    match shape:
        case Flat() if finished:
            return less(longest((stitched(shape, "left"), stitched(shape, "right"))), shape.bow[1])
        case Hollow() if finished:
            return less(shape.height, *_raw_ends(shape, ("top", "bottom")))
        case Flat() | Hollow() | Odd():
            return shape.height
        case Circle():
            return stitched_diameter(shape) if finished else shape.diameter
        case Triangle():
            wide = _width(shape, finished=finished)
            return half(wide) if shape.quarter and wide is not None else wide
        case Shaped():
            return shape.down if finished else shape.height
        case Long() | Whole():
            return None


def _raw_ends(hollow: Hollow, names: tuple[str, ...]) -> tuple[Quantity, ...]:
    """The allowances of those ends that are raw."""
    return tuple(taken_off(hollow.ends[name].rim) for name in names if name in hollow.ends)


def stitched_diameter(circle: Circle) -> Quantity:
    return less(circle.diameter, times(2, taken_off(circle.rim)))


def _around(shape: Shape, *, finished: bool) -> Quantity | None:
    """The way round: of a flat thing along its edges, of a tube or pouch round its opening."""
    match shape:
        case Flat():
            sides = (stitched(shape, s) if finished else shape.edge(s).length for s in SIDES)
            return total(sides)
        case Hollow():
            return shape.around
        case Circle():
            return times_pi(stitched_diameter(shape) if finished else shape.diameter)
        case Triangle() if finished:
            return total((stitched_leg(shape), stitched_leg(shape), stitched_long_side(shape)))
        case Triangle():
            return total((shape.leg, shape.leg, shape.long_side))
        case Shaped():
            return total(edge.length for edge in shape.edges.values())
        case Long() | Whole() | Odd():
            return None
