"""Hems, bands folded over an edge, and what is drawn through them."""

from __future__ import annotations

from dataclasses import replace

from presscloth.measure import Quantity
from presscloth.problems import Problem
from presscloth.recipe.patterns import ResultRule
from presscloth.recipe.tree import Form
from presscloth.sewing.lengths import half, less, times, times_pi, total
from presscloth.sewing.measuring import measured, stitched
from presscloth.sewing.things import (
    FINISHED,
    FOLDED,
    OPPOSITE,
    SIDES,
    Circle,
    Edge,
    Flat,
    Hollow,
    Long,
    Odd,
    Shaped,
    with_edge,
)
from presscloth.sewing.verbs.binding import finished_on
from presscloth.sewing.verbs.joining import unmeasured
from presscloth.sewing.verbs.laying import against, as_it_lay, lies_along, turned_to
from presscloth.sewing.verbs.setting_in import hold_fullness
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Side, Used, Work


class CordTooShort(Problem):
    """A cord or tape is shorter than what it is drawn through, or an elastic is not shorter.

    A cord that ends inside its casing cannot be pulled; an elastic that is as long as its casing
    gathers nothing.

    Fails:

        ## Materials
        | Key | Material      | Form   | Width          | Sold by        |
        |-----|---------------|--------|----------------|----------------|
        | A   | Cotton fabric | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | B   | Cord          | tape   |                | 10 cm (1/8 yd) |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | cord  | B    | 1   |               | 20 cm (8 in)  |

        ## Steps
        1. Hem and draw the cord in.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           draw cord through top of cloth
           finish cloth
           ```

    Passes:

        ## Materials
        | Key | Material      | Form   | Width          | Sold by        |
        |-----|---------------|--------|----------------|----------------|
        | A   | Cotton fabric | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | B   | Cord          | tape   |                | 10 cm (1/8 yd) |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | cord  | B    | 1   |               | 60 cm (24 in) |

        ## Steps
        1. Hem and draw the cord in.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           draw cord through top of cloth
           finish cloth
           ```
    """

    name: str
    has: str
    through: str
    length: str
    elastic: bool

    def message(self) -> str:
        is_ = "not shorter than" if self.elastic else "shorter than"
        return f"`{self.name}` is {self.has}, {is_} {self.through}, which is {self.length}"

    def hint(self) -> str:
        return "cut the elastic shorter" if self.elastic else "cut it longer"


def hem(work: Work) -> Made:
    """Turn edges under and stitch: they are finished, and the thing is shorter by what is turned.

    Once takes M, twice takes 2 M, `by M, then N` takes M + N of each edge (common practice). An edge
    beside it is shorter by as much, as where it stands square to it; on a slanted corner by a little more
    than that, which is not reckoned.
    """
    used = work.one("edges")
    by = work.amount("by")
    if work.has("twice"):
        by = times(2, by)
    elif work.has("then"):
        by = total((by, work.amount("then")))
    names = work.edges("edges")
    if isinstance(used.shape, Odd):
        return Made(Odd(used.shape.width, used.shape.height, FINISHED), as_it_lay(used))
    if isinstance(used.shape, Circle):
        edge = Edge.plain(times_pi(used.shape.diameter), used.shape.rim)
        sides: tuple[Side, ...] = (Side(used, "edge", edge, edge.length),)
    else:
        sides = tuple(work.side(used, name) for name in _open_edges(used, names))
    for side in sides:
        work.must_be_raw(side, "hemmed")
        work.seams.append(side.edge.length)
    shape = finished_on(used.shape, {side.name: by for side in sides})
    return Made(shape, as_it_lay(used))


def _open_edges(used: Used, names: tuple[str, ...]) -> tuple[str, ...]:
    """`all of` a tube or a pouch means its open ends."""
    if isinstance(used.shape, Hollow | Shaped) and set(names) == set(SIDES):
        return tuple(used.shape.ends if isinstance(used.shape, Hollow) else used.shape.edges)
    return names


def band(work: Work) -> Made:
    """Sew a band to an edge and fold it over: the edge is finished, the thing higher by the band.

    A band that lies open is folded in half: its height less two allowances, halved, is seen. The two
    edges are equally long; `gathered`, the thing's is 1.2 to 3 times as long (common practice).
    """
    edge, strip = work.edge("edge"), work.one("band")
    if unmeasured((strip,)):
        work.uncounted(strip)
        return Made(edge.used.shape, as_it_lay(edge.used), of=("edge",))
    if not isinstance(edge.used.shape, Hollow):
        work.flat(edge.used)
    meeting, far, deep = _band_edge(work, strip, edge)
    work.must_be_raw(edge, "banded")
    work.must_be_raw(meeting, "sewn on as a band")
    taken = work.allowance(edge, meeting)
    if work.has("gathered"):
        hold_fullness(work, edge, meeting)
    else:
        work.meet(edge, meeting)
    work.seams.append(meeting.seam)
    closed = far.rim is not None and not far.rim.raw
    seen = less(deep, taken) if closed else half(less(deep, times(2, taken)))
    return Made(_banded(work, edge, meeting, seen, taken), as_it_lay(edge.used))


def _band_edge(work: Work, strip: Used, edge: Side) -> tuple[Side, Edge, Quantity]:
    """The edge of a band that is sewn on, the one opposite, and how far it is from one to the other."""
    if isinstance(edge.used.shape, Hollow):
        hollow = work.hollow(strip)
        name = OPPOSITE[edge.name] if OPPOSITE[edge.name] in hollow.ends else next(iter(hollow.ends))
        deep = hollow.height if name in ("top", "bottom") else hollow.width
        return work.side(strip, name), hollow.ends.get(OPPOSITE[name], hollow.ends[name]), deep
    flat = work.flat(strip)
    name = "bottom" if lies_along(flat, edge.edge.length) else "right"
    rim = flat.edge(name).rim
    if rim is None or not rim.raw:
        name = OPPOSITE[name]
    deep = flat.height if name in ("top", "bottom") else flat.width
    return work.side(strip, name), flat.edge(OPPOSITE[name]), deep


def _banded(work: Work, edge: Side, meeting: Side, seen: Quantity, taken: Quantity) -> Flat | Hollow:
    """The thing with its band on; the band's fold is the new outer edge."""
    shape = edge.used.shape
    if isinstance(shape, Hollow):
        upright = edge.name in ("top", "bottom")
        grown = less(total((shape.height if upright else shape.width, seen)), taken)
        return replace(
            shape,
            height=grown if upright else shape.height,
            width=shape.width if upright else grown,
            ends={**shape.ends, edge.name: edge.edge.finished(meeting.edge.length, FOLDED)},
        )
    strip, _ = turned_to(work.flat(meeting.used), meeting.name, edge.name)
    deep = total((seen, taken))
    if edge.name in ("top", "bottom"):
        strip = replace(strip, left=strip.left.long(deep), right=strip.right.long(deep))
    else:
        strip = replace(strip, top=strip.top.long(deep), bottom=strip.bottom.long(deep))
    outer = strip.edge(edge.name)
    strip = with_edge(strip, edge.name, outer.finished(outer.length, FOLDED))
    return against(work.flat(edge.used), edge.name, strip, taken)


def draw_through(work: Work) -> Made:
    """Draw a cord, a tape or an elastic through a casing.

    A cord or tape is not shorter than what it runs through, an elastic is shorter (common practice).
    Through a tube or a pouch it runs round, through a flat thing along its top.
    """
    used = work.one("through")
    if isinstance(used.shape, Hollow):
        return _drawn(work, used, used.shape.around, f"the way round `{used.name}`")
    if isinstance(used.shape, Flat):
        return _drawn(work, used, stitched(used.shape, "top"), f"the top of `{used.name}`")
    work.uncounted(work.one("drawn"), work.one("drawn").count)
    return Made(used.shape, as_it_lay(used), of=("through",))


def draw_through_edge(work: Work) -> Made:
    """Draw a cord, a tape or an elastic through a casing along an edge; lengths as above."""
    side = work.edge("through")
    return _drawn(work, side.used, side.seam, f"the {side.words}")


def _drawn(work: Work, used: Used, casing: Quantity, words: str) -> Made:
    drawn = work.one("drawn")
    elastic = isinstance(drawn.shape, Long) and drawn.shape.form is Form.ELASTIC
    long = measured(drawn.shape, "length", finished=True)
    if long is None:
        work.uncounted(drawn, drawn.count)
    else:
        # An elastic of the same length does not gather; a cord of the same length just reaches.
        shorter = work.short_in(long, casing)
        wrong = len(shorter) < len(work.systems) if elastic else bool(shorter)
        if wrong:
            work.report(
                CordTooShort(
                    span=drawn.span,
                    name=drawn.name,
                    has=work.said(long),
                    through=words,
                    length=work.said(casing),
                    elastic=elastic,
                    labels=work.rows_of(drawn, used),
                )
            )
    return Made(used.shape, as_it_lay(used), of=("through",))


HEM = Verb(
    "hem",
    {
        "hem {edges:edges} by {by:measure} [twice]": hem,
        "hem {edges:edges} by {by:measure}, then {then:measure}": hem,
    },
    ResultRule.CHANGES_FIRST,
    changes="edges",
)
BAND = Verb(
    "band",
    {"band {edge:edge} [, gathered,] with {band:thing}": band},
    ResultRule.CHANGES_FIRST,
    changes="edge",
)
DRAW = Verb(
    "draw",
    {
        "draw {drawn:thing} through {through:thing}": draw_through,
        "draw {drawn:thing} through {through:edge}": draw_through_edge,
    },
    ResultRule.CHANGES_FIRST,
    changes="through",
)
