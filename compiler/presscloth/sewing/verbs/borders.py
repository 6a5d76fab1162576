"""Borders, butted or mitred."""

from __future__ import annotations

from dataclasses import replace

from presscloth.measure import Quantity
from presscloth.problems import Problem
from presscloth.sewing.lengths import less, times, times_root_two, total
from presscloth.sewing.things import Flat, rectangle, turned
from presscloth.sewing.verbs.laying import in_a_column, in_a_row, in_the_middle, lies_along
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Used, Work


class BordersMiscounted(Problem):
    """A border wants two strips for the sides and two for the ends.

    Numbers inside a statement are for one result: `border A with 2 B, 2 C`, mitred also
    `border A with 4 B, mitred`. Strips that are pieced are joined first.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | side  | A    | 1   | 5 cm (2 in)   | 30 cm (12 in) |
        | end   | A    | 2   | width of cloth + 2 × width of side - 4 × seam | 5 cm (2 in) |

        ## Steps
        1. Border and hem.

           ```sew
           mat = border cloth with side, 2 end
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | side  | A    | 2   | 5 cm (2 in)   | 30 cm (12 in) |
        | end   | A    | 2   | width of cloth + 2 × width of side - 4 × seam | 5 cm (2 in) |

        ## Steps
        1. Border and hem.

           ```sew
           mat = border cloth with 2 side, 2 end
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    name: str
    given: int
    wanted: int

    def message(self) -> str:
        return f"a border takes {self.wanted} `{self.name}`, and {self.given} is named"

    def hint(self) -> str:
        return f"write `{self.wanted} {self.name}`"


class MitreTooShort(Problem):
    """A mitred border strip is too short for its corners.

    It must reach along the edge, round both corners by the finished width of the border, and 2√2 seam
    allowances further, for the slanting seams. Most makers add some centimetres more and trim.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | strip | A    | 4   | 5 cm (2 in)   | 35 cm (14 in) |

        ## Steps
        1. Border and hem.

           ```sew
           mat = border cloth with 4 strip, mitred
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | strip | A    | 4   | 5 cm (2 in)   | 45 cm (18 in) |

        ## Steps
        1. Border and hem.

           ```sew
           mat = border cloth with 4 strip, mitred
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    name: str
    has: str
    wants: str
    edge: str

    def message(self) -> str:
        return f"`{self.name}` is {self.has} long; mitred, {self.edge} wants {self.wants}"

    def hint(self) -> str:
        return "cut it longer; what is over is trimmed after the corners are sewn"


def border(work: Work) -> Made:
    """Sew strips to left and right, then to top and bottom: larger by the borders less four allowances.

    A strip is as long as the edge that it meets: the sides as the thing is high, the ends as it is wide
    with the side strips on (published instructions on border lengths). Mitred, each reaches at least
    edge + 2 × border + 2√2 × seam (published instructions on mitred borders; geometry).
    """
    if work.has("mitred"):
        return border_mitred(work)
    thing, sides, ends = (work.one(slot) for slot in ("thing", "sides", "ends"))
    for strips in (sides, ends):
        _hold_count(work, strips, 2)
    flat = work.flat(thing)
    side = _laid(work, sides, flat.left.length, upright=True)
    left = work.join(work.side(thing, "left"), work.side(side, "right"))
    right = work.join(work.side(thing, "right"), work.side(side, "left"))
    middle = _as(thing, in_a_row((work.flat(side), flat, work.flat(side)), (left, right)))
    end = _laid(work, ends, work.flat(middle).top.length, upright=False)
    top = work.join(work.side(middle, "top"), work.side(end, "bottom"))
    bottom = work.join(work.side(middle, "bottom"), work.side(end, "top"))
    made = in_a_column((work.flat(end), work.flat(middle), work.flat(end)), (top, bottom))
    return _bordered(work, thing, made)


def _hold_count(work: Work, strips: Used, wanted: int) -> None:
    if strips.count != wanted:
        work.refuse(BordersMiscounted(span=strips.span, name=strips.name, given=strips.count, wanted=wanted))


def _as(used: Used, shape: Flat) -> Used:
    return replace(used, thing=replace(used.thing, shape=shape))


def _laid(work: Work, strips: Used, edge: Quantity, *, upright: bool) -> Used:
    """A strip laid upright or across, turned where its other side comes nearer to the edge."""
    strip = work.flat(strips)
    is_upright = not lies_along(strip, edge)
    return strips if is_upright is upright else _as(strips, turned(strip, 1))


def border_mitred(work: Work) -> Made:
    """A border whose corners are sewn on the slant.

    Each strip reaches at least edge + 2 × border + 2√2 × seam, `border` as it is seen (published
    instructions on mitred borders; geometry).
    """
    thing, sides = work.one("thing"), work.one("sides")
    ends = work.one("ends") if work.has("ends") else sides
    for strips in (sides, ends) if work.has("ends") else (sides,):
        _hold_count(work, strips, 2 if work.has("ends") else 4)
    flat = work.flat(thing)
    side = _laid(work, sides, flat.left.length, upright=True)
    end = _laid(work, ends, flat.top.length, upright=False)
    inner, outer = work.side(thing, "left"), work.side(side, "right")
    for edge in (inner, outer, work.side(end, "bottom")):
        work.must_be_raw(edge)
    taken = work.allowance(inner, outer, work.side(end, "bottom"))
    wide, high = work.flat(side).width, work.flat(end).height
    _hold_mitre(work, thing, side, work.flat(side).height, flat.left.length, high, taken)
    _hold_mitre(work, thing, end, work.flat(end).width, flat.top.length, wide, taken)
    work.seams += [flat.left.length, flat.top.length]
    lost = times(4, taken)
    rim = work.must_be_raw(outer)
    width = less(total((flat.width, times(2, wide))), lost)
    height = less(total((flat.height, times(2, high))), lost)
    return _bordered(work, thing, rectangle(width, height, rim))


def _hold_mitre(
    work: Work, thing: Used, strip: Used, has: Quantity, edge: Quantity, cut: Quantity, taken: Quantity
) -> None:
    seen = less(cut, times(2, taken))
    wants = total((edge, times(2, seen), times(2, times_root_two(taken))))
    if work.short_in(has, wants):
        work.report(
            MitreTooShort(
                span=strip.span,
                name=strip.name,
                has=work.said(has),
                wants=work.said(wants),
                edge=f"an edge of `{thing.name}` of {work.said(edge)}",
                labels=work.rows_of(strip, thing),
            )
        )


def _bordered(work: Work, thing: Used, made: Flat) -> Made:
    """What is bordered lies in the middle."""
    return Made(made, in_the_middle(thing, made.width, made.height))


BORDER = Verb(
    "border",
    {
        "border {thing:thing} with {sides:thing}, {ends:thing} [, mitred]": border,
        "border {thing:thing} with {sides:thing}, mitred": border_mitred,
    },
)
