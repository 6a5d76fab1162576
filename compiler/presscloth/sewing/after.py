"""What is held against every statement once it is carried out: gaps, what seams catch, what is left."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import ClassVar

from presscloth.measure import Quantity, System, compare
from presscloth.problems import Label, Problem, Severity
from presscloth.recipe.statement import Caught
from presscloth.sewing.lengths import NOTHING, longest, times, total
from presscloth.sewing.measuring import edge_of, measured
from presscloth.sewing.shape_problems import NothingLeft
from presscloth.sewing.things import (
    SIDES,
    Circle,
    Edge,
    Flat,
    Hollow,
    Long,
    Odd,
    Shape,
    Shaped,
    Thing,
    Triangle,
    Whole,
)
from presscloth.sewing.wording import listed, said, several
from presscloth.sewing.work import Work
from presscloth.source import Span


class GapTooLong(Problem):
    """A turning gap is not shorter than the seam in which it is left.

    Nothing would be left of the seam to hold the two sides together.

    Fails:

        ## Steps
        1. Sew.

           ```sew
           bag = fold cloth in half, join sides, leaving 15 cm (6 in) open
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```

    Passes:

        ## Steps
        1. Sew.

           ```sew
           bag = fold cloth in half, join sides, leaving 8 cm (3 1/8 in) open
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```
    """

    gap: str
    seam: str | None

    def message(self) -> str:
        if self.seam is None:
            return f"a gap of {self.gap} is left open, but there is no seam to leave it in"
        return f"the gap of {self.gap} is not shorter than its seam, which is {self.seam}"

    def hint(self) -> str:
        return "leave a shorter gap, or leave it in a longer seam"


class CaughtTooLong(Problem):
    """What a seam catches is together longer than the seam.

    Straps and flaps lie side by side in the seam; some of them would find no place in it.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |
        | flap  | A    | 4   | 10 cm (4 in)  | 10 cm (4 in)  |

        ## Steps
        1. Sew.

           ```sew
           mat = join top of cloth to top of cloth, catching top of 4 flap
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |
        | flap  | A    | 2   | 10 cm (4 in)  | 10 cm (4 in)  |

        ## Steps
        1. Sew.

           ```sew
           mat = join top of cloth to top of cloth, catching top of 2 flap
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    caught: str
    length: str
    seam: str | None

    def message(self) -> str:
        if self.seam is None:
            return f"there is no seam to catch {self.caught}"
        return f"{self.caught} are together {self.length} long; the seam that catches them is {self.seam}"

    def hint(self) -> str:
        return "catch fewer or narrower things, or catch them in a longer seam"


class RawEdgeShows(Problem):
    """A raw edge is left on the finished article.

    It would fray. Hem, bind, face or line it; if it is meant to stay raw, as on felt, accept this
    warning with a reason.

    Fails:

        ## Steps
        1. Hem it.

           ```sew
           hem left, right, top of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING

    name: str
    edges: tuple[str, ...]

    def message(self) -> str:
        if not self.edges:
            return f"the edge of the finished `{self.name}` is raw"
        verb = "is" if len(self.edges) == 1 else "are"
        return f"{listed(self.edges)} of the finished `{self.name}` {verb} raw"

    def hint(self) -> str:
        return "hem, bind, face or line it"


class EndsUpsideDown(Problem):
    """A piece whose direction matters ends upside down on the finished article.

    In `join bottom of A to bottom of B` the second thing is turned to meet the first; folding turns
    the lower half over. Join another edge, or accept this warning where the direction is meant.

    Fails:

        ## Materials
        | Key | Material      | Form   | Width          | Sold by        | Notes   |
        |-----|---------------|--------|----------------|----------------|---------|
        | A   | Cotton fabric | fabric | 110 cm (43 in) | 10 cm (1/8 yd) | one way |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Sew.

           ```sew
           mat = join top of cloth to top of cloth
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Materials
        | Key | Material      | Form   | Width          | Sold by        | Notes   |
        |-----|---------------|--------|----------------|----------------|---------|
        | A   | Cotton fabric | fabric | 110 cm (43 in) | 10 cm (1/8 yd) | one way |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Sew.

           ```sew
           mat = join 2 cloth top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING

    part: str
    way: str
    name: str
    behind: bool

    def message(self) -> str:
        where = "on the back of" if self.behind else "on"
        return f"`{self.part}` ({self.way}) ends upside down {where} the finished `{self.name}`"

    def hint(self) -> str:
        return "turn it where it is joined, or accept this with a reason"


def seams_hold(work: Work) -> None:
    """Hold a turning gap and what is caught against the longest seam of the statement.

    No seam may be without length, as one between two allowances that take all there is.
    """
    for length in work.seams:
        less = tuple(s for s in work.systems if compare(length[s], NOTHING[s], s) <= 0)
        if less:
            name, value = work.result_name or work.statement.verb, said(length, less)
            problem = NothingLeft(span=work.span, name=name, side="seam", value=value)
            work.refuse(replace(problem, systems=_named(less, work.systems)))
    if not (work.has("gap") or work.has("catching")):
        return
    seam = longest(work.seams) if work.seams else None
    seam_said = None if seam is None else work.said(seam)
    if work.has("gap"):
        gap = work.amount("gap")
        if any(compare(gap[s], (seam or NOTHING)[s], s) >= 0 for s in work.systems):
            work.report(GapTooLong(span=work.place("gap"), gap=work.said(gap), seam=seam_said))
    if work.has("catching"):
        caught = _caught(work)
        if seam is None or work.short_in(seam, caught):
            names = listed(several(used.count, used.name) for used in work.used["catching"])
            work.report(
                CaughtTooLong(
                    span=work.place("catching"), caught=names, length=work.said(caught), seam=seam_said
                )
            )


def _caught(work: Work) -> Quantity:
    """How long the edges are together that a seam catches; what has no such edge is counted."""
    found: list[Quantity] = []
    slot = work.statement.slots["catching"]
    edges = slot.of if isinstance(slot, Caught) else ()
    for used, of in zip(work.used["catching"], edges, strict=True):
        edge = edge_of(used.shape, of.edges[0])
        if edge is None:
            work.uncounted(used, used.count)
        else:
            found.append(times(used.count, edge.length))
    return total(found)


def sides_of(shape: Shape) -> Iterator[tuple[str, Quantity]]:
    """The measures of a thing that must be greater than nothing."""
    match shape:
        case Flat():
            yield "width", shape.width
            yield "height", shape.height
            for name in SIDES:
                yield f"{name} edge", shape.edge(name).length
        case Hollow():
            yield "width", shape.width
            yield "height", shape.height
            if shape.depth is not None:
                yield "depth", shape.depth
        case Circle():
            yield "diameter", shape.diameter
        case Triangle():
            yield "leg", shape.leg
        case Shaped():
            for name, edge in shape.edges.items():
                yield f"edge `{name}`", edge.length
        case Long():
            yield "length", shape.length
        case Odd() | Whole():
            return


def hold_made(work: Work, thing: Thing, name: str) -> Problem | None:
    """Whether something is left of what was made, in both systems."""
    if isinstance(thing.shape, Flat) and thing.shape.is_something:
        return None
    for word, side in sides_of(thing.shape):
        less = tuple(system for system in work.systems if compare(side[system], NOTHING[system], system) <= 0)
        if less:
            labels = tuple(Label(row, "cut here") for row in thing.rows)
            return NothingLeft(
                span=work.span,
                name=name,
                side=word,
                value=said(side, less),
                labels=labels,
                systems=_named(less, work.systems),
            )
    return None


def _named(some: tuple[System, ...], every: tuple[System, ...]) -> tuple[str, ...]:
    return () if len(some) == len(every) else tuple(system.value for system in some)


def hold_finished(name: str, thing: Thing, span: Span, systems: tuple[System, ...]) -> Iterator[Problem]:
    """What is held against a finished article: that something of it is left between raw edges.

    Raw edges themselves are questioned, and pieces that are upside down.
    """
    for word in ("width", "height"):
        side = measured(thing.shape, word, finished=True)
        less = tuple(s for s in systems if side is not None and compare(side[s], NOTHING[s], s) <= 0)
        if side is not None and less:
            value = said(side, less)
            yield NothingLeft(
                span=span, name=name, side=f"finished {word}", value=value, systems=_named(less, systems)
            )
    raw = raw_edges(thing.shape)
    if raw is not None:
        yield RawEdgeShows(span=span, name=name, edges=raw)
    seen: set[tuple[str, bool]] = set()
    for part in thing.parts if thing.directed else ():
        if part.way is not None and part.turned == 2 and (part.name, part.back) not in seen:
            seen.add((part.name, part.back))
            label = Label(part.row, "cut here")
            yield EndsUpsideDown(
                span=span, part=part.name, way=part.way, name=name, behind=part.back, labels=(label,)
            )


def raw_edges(shape: Shape) -> tuple[str, ...] | None:
    """The edges that are raw, in whole or in part; of a round thing no name; None where none is."""
    match shape:
        case Flat():
            raw = [name for name in SIDES if _frays(shape.edge(name))]
        case Hollow(ends=ends):
            raw = [name for name in dict.fromkeys((*SIDES, *ends)) if name in ends and _frays(ends[name])]
        case Shaped(edges=edges):
            raw = [name for name, edge in edges.items() if _frays(edge)]
        case Circle(rim=rim) | Triangle(rim=rim):
            return () if rim.raw else None
        case Long() | Whole() | Odd():
            return None
    return tuple(raw) or None


def _frays(edge: Edge) -> bool:
    return edge.rim is None or edge.rim.raw
