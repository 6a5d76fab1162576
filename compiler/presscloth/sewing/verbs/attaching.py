"""What is sewn on, caught, inserted, tacked or filled in; and what is finished."""

from __future__ import annotations

from dataclasses import replace

from presscloth.measure import Kind, Quantity
from presscloth.problems import Problem
from presscloth.recipe.patterns import ResultRule
from presscloth.recipe.tree import Form
from presscloth.sewing.construction import Filled
from presscloth.sewing.lengths import half, less, times
from presscloth.sewing.measuring import measured
from presscloth.sewing.things import Flat, Hollow, Long, Odd
from presscloth.sewing.verbs.binding import finished_on
from presscloth.sewing.verbs.joining import sewn_against, tube
from presscloth.sewing.verbs.layering import fits
from presscloth.sewing.verbs.laying import as_it_lay, with_on_it
from presscloth.sewing.verbs.shaped import is_shaped, sewn_together
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Used, Work


class ZipTooShort(Problem):
    """A zip is shorter than the edge that it is sewn to.

    Fails:

        ## Materials
        | Key | Material      | Form   | Width          | Sold by        |
        |-----|---------------|--------|----------------|----------------|
        | A   | Cotton fabric | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | B   | Zip           | zip    |                | 5 cm (2 in)    |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |
        | zip   | B    | 1   |               | 20 cm (8 in)  |

        ## Steps
        1. Sew the zip in and hem.

           ```sew
           mat = zip zip between top of cloth and top of cloth, showing 1 cm (3/8 in)
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Materials
        | Key | Material      | Form   | Width          | Sold by        |
        |-----|---------------|--------|----------------|----------------|
        | A   | Cotton fabric | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | B   | Zip           | zip    |                | 5 cm (2 in)    |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |
        | zip   | B    | 1   |               | 30 cm (12 in) |

        ## Steps
        1. Sew the zip in and hem.

           ```sew
           mat = zip zip between top of cloth and top of cloth, showing 1 cm (3/8 in)
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    name: str
    has: str
    edge: str
    length: str

    def message(self) -> str:
        return f"`{self.name}` is {self.has}, shorter than {self.edge}, which is {self.length}"

    def hint(self) -> str:
        return "take a longer zip and shorten it, or state the length of the zip from the edge"


def attach(work: Work) -> Made:
    """Sew a thing onto another, which keeps its shape; what is attached is used up.

    Flat on flat it must fit inside, upright or turned by a quarter; all else is joined and not
    measured, and counted (common practice).
    """
    part, ground = work.one("part"), work.one("ground")
    flat = isinstance(ground.shape, Flat) and isinstance(part.shape, Flat)
    if not (flat and fits(work, part, ground)):
        work.uncounted(part, part.count)
    arrange = with_on_it(ground, part) if isinstance(ground.shape, Flat) else as_it_lay(ground)
    return Made(ground.shape, arrange, of=("ground",))


def tack(work: Work) -> Made:
    """Tack a raw edge to another, to be caught in its next seam: equally long, nothing is taken yet.

    For collars, piping and frills (common practice). What is tacked is used up with its edges.
    """
    edge = work.edge("edge")
    ground = edge.used
    if isinstance(work.one("part").shape, Long | Odd):
        work.uncounted(work.one("part"))
    else:
        part = work.edge("part")
        work.must_be_raw(part, "tacked")
        work.must_be_raw(edge, "tacked to")
        work.meet(part, edge)
    return Made(ground.shape, as_it_lay(ground), of=("edge",))


def insert(work: Work) -> Made:
    """Put a thing into an opening or along an edge.

    A zip is not shorter than the opening as it lies flat, and finishes it: the edge loses its allowance.
    All else is joined and not measured (common practice).
    """
    part, edge = work.one("part"), work.edge("edge")
    used = edge.used
    kept = Made(used.shape, as_it_lay(used), of=("edge",))
    if not (isinstance(part.shape, Long) and part.shape.form is Form.ZIP):
        work.uncounted(part, part.count)
        return kept
    opening = half(edge.seam) if isinstance(used.shape, Hollow) else edge.seam
    _hold_zip(work, part, part.shape.length, opening, f"the {edge.words}")
    work.seams.append(edge.seam)
    if edge.edge.rim is None or not edge.edge.rim.raw:
        return kept
    taken = work.allowance(edge)
    return replace(kept, shape=finished_on(used.shape, {edge.name: taken}))


def _hold_zip(work: Work, part: Used, has: Quantity, opening: Quantity, words: str) -> None:
    if work.short_in(has, opening):
        work.report(
            ZipTooShort(
                span=part.span,
                name=part.name,
                has=work.said(has),
                edge=words,
                length=work.said(opening),
                labels=work.rows_of(part),
            )
        )


def zip_between(work: Work) -> Made:
    """Sew a zip between two edges: each gives its allowance, and what shows of the zip is added.

    Both edges are equally long and the zip not shorter (common practice). Opposite edges of one thing
    make a tube; of what is cut by an outline, all other edges stay as they are.
    """
    part, one, other = work.one("zip"), work.edge("first"), work.edge("second")
    showing = work.amount("showing")
    taken = work.join(one, other)
    work.seams.append(other.seam)
    long = measured(part.shape, "length", finished=True)
    if long is None:
        work.uncounted(part)
    else:
        _hold_zip(work, part, long, one.seam, f"the {one.words}")
    lost = less(taken, half(showing))
    if is_shaped(one, other):
        made = sewn_together(work, one, other)
    elif work.closes:
        made = tube(one.used, work.flat(one.used), one.name, times(2, lost))
    else:
        made = sewn_against(work, one, other, lost)
    return replace(made, of=("first", "second"))


def fill(work: Work) -> Made:
    """Fill a thing with a weight of a filling, for one result; its size stays (common practice)."""
    used, filling = work.one("thing"), work.one("filling")
    weight = work.amount("weight", Kind.WEIGHT)
    work.filled.append(Filled(filling.name, weight, work.times, work.span))
    return Made(used.shape, as_it_lay(used), of=("thing",))


def finish(work: Work) -> Made:
    """Say which things are the finished articles; `finish A` finishes all A.

    Their sizes, without the allowances of raw edges, are the finished sizes that the handout prints
    (common practice).
    """
    return Made(Odd())


TACK = Verb("tack", {"tack {part:edge} to {edge:edge}": tack})
ZIP = Verb(
    "zip", {"zip {zip:thing} between {first:edge} and {second:edge}, showing {showing:measure}": zip_between}
)
ATTACH = Verb(
    "attach", {"attach {part:thing} to {ground:thing}": attach}, ResultRule.CHANGES_FIRST, changes="ground"
)
INSERT = Verb(
    "insert", {"insert {part:thing} in {edge:edge}": insert}, ResultRule.CHANGES_FIRST, changes="edge"
)
FILL = Verb(
    "fill",
    {"fill {thing:thing} with {weight:measure} of {filling:thing}": fill},
    ResultRule.CHANGES_FIRST,
    changes="thing",
)
FINISH = Verb("finish", {"finish {things:things}": finish}, ResultRule.NONE, takes_all=True)
