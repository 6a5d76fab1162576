"""Cutting cloth on the bias: strips of full length, or one long strip from a square sewn to a tube."""

from __future__ import annotations

from presscloth.measure import Quantity, compare
from presscloth.problems import Problem
from presscloth.sewing.lengths import less, longest, shortest, times, times_root_two
from presscloth.sewing.things import Rim, rectangle
from presscloth.sewing.verbs.laying import sewn_from
from presscloth.sewing.verbs.trimming import hold_segments, holds
from presscloth.sewing.verbs.units import NotSquare
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Used, Work


class BiasTooWide(Problem):
    """A bias strip is so wide that the cloth does not give one.

    A strip of full length runs at 45° from one long side of the cloth to the other, and takes √2 times its
    width of the longer side; the shorter side is lost at the slanting ends.

    Fails:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | square | A    | 1   | 50 cm (20 in) | 50 cm (20 in) |

        ## Steps
        1. Cut the strip, and bind.

           ```sew
           strip = cut continuous bias 40 cm (16 in) wide from square
           hem all of strip by 1 cm (3/8 in)
           finish strip
           ```

    Passes:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | square | A    | 1   | 50 cm (20 in) | 50 cm (20 in) |
        | cloth  | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Cut the strip, and bind.

           ```sew
           strip = cut continuous bias 5 cm (2 in) wide from square
           bind cloth with strip
           finish cloth
           ```
    """

    wide: str
    name: str
    size: str

    def message(self) -> str:
        return f"`{self.name}`, {self.size}, gives no bias strip that is {self.wide} wide"

    def hint(self) -> str:
        return "cut narrower strips, or a larger piece"


def cut_bias(work: Work) -> Made:
    """Cut strips at 45°, of full length: from one long side of the cloth to the other.

    Each takes √2 times its width of the longer side, and is √2 times as long as the shorter side; so many
    fit as that goes into the longer side less the shorter one (geometry). All things named are used up.
    """
    used, width = work.one("from"), work.amount("width")
    flat = work.flat(used)
    long, short = longest((flat.width, flat.height)), shortest((flat.width, flat.height))
    hold_segments(work, used, less(long, short), times_root_two(width))
    rim = work.must_be_raw(work.side(used, "left"), "cut up")
    return _strip(times_root_two(short), width, rim, used)


def cut_continuous_bias(work: Work) -> Made:
    """Cut a square on the diagonal, sew it to a slanting sheet and that to a tube, and cut round and round.

    A square of D with a seam of s gives n = (D − 2 s)/(w√2) rows, whole ones only, and one strip of
    2 n² w (published worked example of continuous bias; geometry).
    """
    used, width = work.one("from"), work.amount("width")
    flat = work.flat(used)
    if any(compare(flat.width[s], flat.height[s], s) for s in work.systems):
        sides = work.said(flat.width), work.said(flat.height)
        work.refuse(NotSquare(span=used.span, name=used.name, width=sides[0], height=sides[1]))
    side = work.side(used, "left")
    rim = work.must_be_raw(side, "cut up")
    inside = less(flat.width, times(2, work.allowance(side)))
    rows = min(holds(inside, times_root_two(width), system) for system in work.systems)
    if rows < 1:
        size = f"{work.said(flat.width)} × {work.said(flat.height)}"
        work.refuse(BiasTooWide(span=work.place("width"), wide=work.said(width), name=used.name, size=size))
    work.seams += [times_root_two(inside), inside]
    return _strip(times(2 * rows * rows, width), width, rim, used)


def _strip(long: Quantity, width: Quantity, rim: Rim, used: Used) -> Made:
    return Made(rectangle(long, width.computed(), rim), sewn_from(used))


CUT_BIAS = Verb("cut bias", {"cut bias {width:measure} wide from {from:thing}": cut_bias}, in_all=True)
CUT_CONTINUOUS_BIAS = Verb(
    "cut continuous bias", {"cut continuous bias {width:measure} wide from {from:thing}": cut_continuous_bias}
)
