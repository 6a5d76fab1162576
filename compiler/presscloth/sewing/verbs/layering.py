"""Cloth upon cloth: lining, sandwiches, bagging out, laying a part on another, fusing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from presscloth.measure import Kind, Quantity, compare
from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.lengths import less, shared, shortest, times, total
from presscloth.sewing.measuring import stitched_diameter, taken_off
from presscloth.sewing.things import FINISHED, SIDES, Circle, Edge, Flat, Hollow, Odd, Rim, Shaped, State
from presscloth.sewing.verbs.joining import face_down, not_measured, unmeasured
from presscloth.sewing.verbs.joining_problems import NothingToJoin
from presscloth.sewing.verbs.layering_problems import (
    CannotBeTurned,
    DoesNotFit,
    GapTwice,
    LayerTooSmall,
    NoTurningGap,
)
from presscloth.sewing.verbs.laying import as_it_lay, in_the_middle, with_on_it
from presscloth.sewing.verbs.shaped import bag_out_shaped, meeting_all_round
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Side, Used, Work


def line(work: Work) -> Made:
    """Sew a lining into a pouch or tube along its open edges, right sides together, and turn it.

    Both are equally wide around, equally deep and, without their allowances, equally high; exactly
    one gap was left to turn them through. The opening is finished and loses its allowance (common
    practice).
    """
    outer, lining = work.one("outer"), work.one("lining")
    shell, inner = work.hollow(outer), work.hollow(lining)
    if set(shell.ends) != set(inner.ends) or not shell.ends:
        work.wrong_shape(lining, f"one that is open at the same edges as `{outer.name}`")
    gaps = outer.thing.gaps + lining.thing.gaps + work.has("gap")
    if gaps == 0 and len(shell.ends) == 1:
        work.report(NoTurningGap(span=work.span, name=work.result_name or outer.name))
    elif gaps > 1:
        work.report(GapTwice(span=work.span, name=work.result_name or outer.name, gaps=gaps))
    taken = {name: work.join(work.side(outer, name), work.side(lining, name)) for name in shell.ends}
    _hold_same(work, outer, lining, shell, inner)
    hollow = replace(
        shell,
        width=less(shell.width, *(taken[n] for n in ("left", "right") if n in taken)),
        height=less(shell.height, *(taken[n] for n in ("top", "bottom") if n in taken)),
        ends={name: end.finished(end.length) for name, end in shell.ends.items()},
    )
    return Made(hollow, as_it_lay(outer), gaps=0)


def _hold_same(work: Work, outer: Used, lining: Used, shell: Hollow, inner: Hollow) -> None:
    """Hold depth and height of the lining against the outer thing's."""
    rows = (*lining.thing.rows, *outer.thing.rows)
    pairs = [("height", _inside(shell), _inside(inner))]
    if shell.depth is not None and inner.depth is not None:
        pairs.append(("depth", shell.depth, inner.depth))
    elif shell.depth is not None or inner.depth is not None:
        work.wrong_shape(lining, f"one that is boxed as `{outer.name}` is")
    for word, one, other in pairs:
        words = (f"{word} of `{outer.name}`", f"{word} of `{lining.name}`")
        work.compare(*words, (one, other), rows=rows)


def _inside(hollow: Hollow) -> Quantity:
    """How far a thing reaches from its openings' stitch lines."""
    if hollow.upright:
        return less(hollow.height, *(taken_off(end.rim) for end in hollow.ends.values()))
    return less(hollow.width, *(taken_off(end.rim) for end in hollow.ends.values()))


def layer(work: Work) -> Made:
    """Lay flat things upon each other for quilting, the first on top: a sandwich as large as its lowest.

    Each reaches at least the overhang beyond the first on every side and is not smaller than the one
    above (common practice). `taking up` shrinks it as quilting does. What is cut by an outline is layered
    edge on edge.
    """
    layers = work.every("layers")
    if len(layers) < 2:
        work.refuse(NothingToJoin(span=work.span, name=work.one("layers").name))
    if isinstance(layers[0].shape, Shaped):
        return layer_shaped(work, layers)
    flats = tuple(work.flat(used) for used in layers)
    overhang = work.amount("overhang") if work.has("overhang") else None
    for i in range(1, len(layers)):
        _hold_layer(work, layers[i], layers[0], overhang)
        if i > 1:
            _hold_layer(work, layers[i], layers[i - 1], None)
    width, height = flats[-1].width, flats[-1].height
    least = (shortest(flat.width for flat in flats), shortest(flat.height for flat in flats))
    if work.has("share"):
        share = work.amount("share", Kind.NUMBER)
        width, height = _shrunk(width, share), _shrunk(height, share)
        least = (_shrunk(least[0], share), _shrunk(least[1], share))
    top = flats[0].left.rim
    rim = Rim(State.RAW, None if top is None else top.allowance)
    side, end = Edge.plain(height, rim), Edge.plain(width, rim)
    return Made(Flat(side, side, end, end, least=least), in_the_middle(layers[0], width, height))


def layer_shaped(work: Work, layers: Sequence[Used]) -> Made:
    """Layers of one outline upon each other, edge on edge; they are sewn as one thing after that."""
    first, *others = layers
    if work.has("overhang") or work.has("share"):
        work.wrong_shape(first, "a rectangle, of which is known how far it stands out and what is taken up")
    for lower in others:
        for one, other in meeting_all_round(work, first, lower):
            work.compare(one.words, other.words, (one.seam, other.seam), rows=lower.thing.rows)
    return Made(first.shape, as_it_lay(first))


def _shrunk(side: Quantity, share: Quantity) -> Quantity:
    """What quilting leaves of a side when it takes up a share of it."""
    return less(side, shared(share, side))


def _hold_layer(work: Work, lower: Used, upper: Used, overhang: Quantity | None) -> None:
    low, top = work.flat(lower), work.flat(upper)
    for side, has, over in (("wide", low.width, top.width), ("high", low.height, top.height)):
        wants = over if overhang is None else total((over, times(2, overhang)))
        if work.short_in(has, wants):
            work.report(
                LayerTooSmall(
                    span=lower.span,
                    name=lower.name,
                    side=side,
                    has=work.said(has),
                    wants=work.said(wants),
                    above=upper.name,
                    labels=work.rows_of(lower, upper),
                )
            )
            return


def bag_out(work: Work) -> Made:
    """Sew two flat things together right sides in, turn them and press: one flat thing of two layers.

    Each sewn side loses its allowance and is finished; a side that is left open stays raw (common
    practice).
    """
    first, second = work.one("first"), work.one("second")
    if unmeasured((first, second)):
        return not_measured(work, (first, second))
    is_open = work.edges("open") if work.has("open") else ()
    if not is_open and not work.has("gap"):
        work.report(CannotBeTurned(span=work.span, name=work.result_name or first.name))
    if isinstance(first.shape, Shaped):
        return bag_out_shaped(work, is_open)
    if isinstance(first.shape, Circle) and isinstance(second.shape, Circle):
        return _round_bagged(work, first, first.shape, second, second.shape)
    front = work.flat(first)
    work.flat(second)
    taken = {name: work.join(*face_down(work, first, second, name)) for name in SIDES if name not in is_open}
    return Made(_turned_out(front, taken), as_it_lay(first), gaps=0)


def _turned_out(flat: Flat, taken: dict[str, Quantity]) -> Flat:
    """A flat thing whose sewn sides lie on the stitch line."""
    across = tuple(taken[name] for name in ("left", "right") if name in taken)
    down = tuple(taken[name] for name in ("top", "bottom") if name in taken)
    made: dict[str, Edge] = {}
    for name in SIDES:
        edge = flat.edge(name)
        length = less(edge.length, *(across if name in ("top", "bottom") else down))
        made[name] = edge.finished(length) if name in taken else edge.long(length)
    return Flat(made["left"], made["right"], made["top"], made["bottom"], bow=flat.bow)


def _round_bagged(work: Work, first: Used, one: Circle, second: Used, other: Circle) -> Made:
    sides = (
        Side(used, "edge", Edge.plain(circle.diameter, circle.rim), stitched_diameter(circle))
        for used, circle in ((first, one), (second, other))
    )
    taken = work.join(*sides)
    return Made(Circle(less(one.diameter, times(2, taken)), FINISHED), as_it_lay(first), gaps=0)


def lay_on(work: Work) -> Made:
    """Lay one flat thing on another with edges level; it is held there until the next seam.

    The edges that lie level must be raw and equally long (common practice).
    """
    part, ground = work.one("part"), work.one("ground")
    for name in work.edges("sides"):
        one, other = work.side(part, name), work.side(ground, name)
        work.must_be_raw(one, "laid level")
        work.must_be_raw(other, "laid level")
        lengths = (one.edge.length, other.edge.length)
        rows = (*part.thing.rows, *ground.thing.rows)
        work.compare(one.words, other.words, lengths, rows=rows, cut=True)
    return Made(ground.shape, with_on_it(ground, part), of=("ground",))


def fuse(work: Work) -> Made:
    """Fuse one flat thing to another, which must not be smaller, upright or turned by a quarter.

    Interfacing that reaches beyond its cloth is fused to the board (common practice).
    """
    part, ground = work.one("part"), work.one("ground")
    for _ in range(part.count):
        if not fits(work, part, ground):
            work.uncounted(part)
    return Made(ground.shape, as_it_lay(ground), of=("ground",))


def fits(work: Work, part: Used, ground: Used) -> bool:
    """Hold a flat thing against the flat ground it is put onto; False when they cannot be compared."""
    small, large = _size(part), _size(ground)
    if small is None or large is None:
        return False
    for system in work.systems:
        upright = all(compare(s[system], g[system], system) <= 0 for s, g in zip(small, large, strict=True))
        lying = all(
            compare(s[system], g[system], system) <= 0 for s, g in zip(small, reversed(large), strict=True)
        )
        if not upright and not lying:
            work.report(
                DoesNotFit(
                    span=part.span,
                    name=part.name,
                    size=f"{work.said(small[0])} × {work.said(small[1])}",
                    ground=ground.name,
                    ground_size=f"{work.said(large[0])} × {work.said(large[1])}",
                    labels=work.rows_of(part, ground),
                )
            )
            break
    return True


def _size(used: Used) -> tuple[Quantity, Quantity] | None:
    match used.shape:
        case Flat(width=width, height=height):
            return width, height
        case Circle(diameter=diameter):
            return diameter, diameter
        case Shaped(width=Quantity() as width, height=Quantity() as height):
            return width, height
        case Odd(width=Quantity() as width, height=Quantity() as height):
            return width, height
        case _:
            return None


LINE = Verb("line", {"line {outer:thing} with {lining:thing}": line})
LAYER = Verb(
    "layer",
    {"layer {layers:things} [, overhanging {overhang:measure}] [, taking up {share:measure}]": layer},
)
BAG_OUT = Verb("bag out", {"bag out {first:thing} with {second:thing} [, {open:sides} open]": bag_out})
LAY = Verb("lay", {"lay {part:thing} on {ground:thing}, {sides:sides} level": lay_on})
FUSE = Verb("fuse", {"fuse {part:thing} to {ground:thing}": fuse}, ResultRule.CHANGES_FIRST, changes="ground")
