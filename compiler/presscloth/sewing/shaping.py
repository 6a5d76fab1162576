"""Transform a worked-out outline into the shape that lies on the table.

The seam line of an outline is what it is drawn with, so that the length of an edge is known between
the ends of its stitching, whatever the corners are.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from presscloth.measure import Quantity, System, same_length
from presscloth.outline import Drafted
from presscloth.outline.shape import circle_of
from presscloth.sewing.lengths import NOTHING, less, total
from presscloth.sewing.things import CLOCKWISE, Circle, Edge, Flat, Rim, Shape, Shaped, State


def shape_of(outline: Drafted) -> Shape:
    """A circle where it is one, a flat thing where its edges are the four sides, else what it is."""
    metric, imperial = circle_of(outline.metric), circle_of(outline.imperial)
    if metric is not None and imperial is not None:
        return _circle(outline, metric, imperial)
    rims = {edge.name: Rim(State.RAW, edge.allowance) for edge in outline.edges}
    if _is_four_sided(tuple(rims)):
        return _flat(outline, rims)
    edges = {edge.name: Edge.plain(edge.length, rims[edge.name]) for edge in outline.edges}
    return Shaped(edges, outline.width, outline.height, outline.across, outline.down)


def _circle(outline: Drafted, metric: Fraction, imperial: Fraction) -> Circle:
    """The circle, its allowance taken in."""
    allowance = outline.edges[0].allowance
    diameter = replace(
        outline.width,
        metric=2 * (metric + allowance.metric),
        imperial=2 * (imperial + allowance.imperial),
    )
    return Circle(diameter, Rim(State.RAW, allowance))


def _is_four_sided(names: tuple[str, ...]) -> bool:
    if set(names) != set(CLOCKWISE):
        return False
    first = names.index(CLOCKWISE[0])
    return names[first:] + names[:first] == CLOCKWISE


def _flat(outline: Drafted, rims: dict[str, Rim]) -> Flat:
    """Four sides, each as long as its seam line and the allowances of its two neighbours."""
    allowances = {edge.name: edge.allowance for edge in outline.edges}
    edges: dict[str, Edge] = {}
    for edge in outline.edges:
        beside = ("left", "right") if edge.name in ("top", "bottom") else ("top", "bottom")
        long = total((edge.length, *(allowances[name] for name in beside)))
        edges[edge.name] = Edge(long, rims[edge.name], rims[edge.name], rims[edge.name])
    flat = Flat(edges["left"], edges["right"], edges["top"], edges["bottom"])
    return replace(flat, bow=(_bow(flat.width, outline.width), _bow(flat.height, outline.height)))


def _bow(edge: Quantity, side: Quantity) -> Quantity:
    """By how much an edge is longer than the piece is wide or high; nothing where it runs straight."""
    if all(same_length(edge[system], side[system], system) for system in System):
        return NOTHING
    return less(edge, side)
