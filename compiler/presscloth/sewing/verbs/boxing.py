"""Boxing the corners of a pouch."""

from __future__ import annotations

from dataclasses import replace

from presscloth.measure import Quantity, compare
from presscloth.problems import Problem
from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.lengths import NOTHING, half, less, times, total
from presscloth.sewing.things import Hollow, State, same_allowance
from presscloth.sewing.verbs.laying import as_it_lay
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Used, Work


class CornersNotSewn(Problem):
    """Corners cannot be cut from the raw edges, because the bottom was folded or the seams differ.

    A square that is cut from the raw edges is opened along two seams. Where the bottom is a fold, one
    side of the square has an allowance and the other has none, and the cut edges do not meet.

    Fails:

        ## Steps
        1. Sew, box and hem.

           ```sew
           bag = fold cloth in half, join sides
           box corners of bag by cutting 4 cm (1 5/8 in) from the raw edges
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```

    Passes:

        ## Steps
        1. Sew, box and hem.

           ```sew
           bag = fold cloth in half, join sides
           box corners of bag by cutting 4 cm (1 5/8 in) from the stitch lines
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```
    """

    name: str
    why: str

    def message(self) -> str:
        return f"the corners of `{self.name}` cannot be cut from the raw edges: {self.why}"

    def hint(self) -> str:
        return "measure from the stitch lines, or say the depth: `box corners of … to 5 cm (2 in)`"


class BoxedAlready(Problem):
    """The corners of a pouch are boxed a second time.

    Fails:

        ## Steps
        1. Sew, box and hem.

           ```sew
           bag = fold cloth in half, join sides
           box corners of bag to 5 cm (2 in)
           box corners of bag to 5 cm (2 in)
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```

    Passes:

        ## Steps
        1. Sew, box and hem.

           ```sew
           bag = fold cloth in half, join sides
           box corners of bag to 5 cm (2 in)
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```
    """

    name: str

    def message(self) -> str:
        return f"`{self.name}` has a depth already"

    def hint(self) -> str:
        return "box it once, to the depth that it is to have"


def box_to(work: Work) -> Made:
    """Sew across the corners so that the pouch is DEPTH deep.

    The width loses the depth and the height half of it; a pouch that is closed all round loses that at
    both ends. What it measures around stays (geometry; published boxed-corner tutorials).
    """
    return _boxed(work, work.amount("depth"))


def box_by_cutting(work: Work) -> Made:
    """Cut a square of M out of each corner and sew the cut edges together.

    From the raw edges, with equal seams, the depth is 2 M; from the stitch lines, with a seam of s
    across the corner, it is 2 (M + s) (geometry; published boxed-corner tutorials).
    """
    used = work.one("thing")
    square = work.amount("square")
    hollow = work.hollow(used)
    if work.says("start") == "raw edges":
        _hold_seams(work, used, hollow)
        return _boxed(work, times(2, square))
    seam = work.amount("taking") if work.has("taking") else _side_seam(hollow)
    return _boxed(work, times(2, total((square, seam))))


def _side_seam(hollow: Hollow) -> Quantity:
    """What the side seams took."""
    taken = [rim.allowance for rim in hollow.closed.values() if rim.state is State.SEWN]
    return next((allowance for allowance in taken if allowance is not None), NOTHING)


def _hold_seams(work: Work, used: Used, hollow: Hollow) -> None:
    rims = tuple(hollow.closed.values())
    why: str | None = None
    if any(rim.state is not State.SEWN for rim in rims):
        why = "one side of each is a fold"
    elif any(not same_allowance(rims[0].allowance, rim.allowance) for rim in rims):
        why = "the seams beside each have different allowances"
    if why is not None:
        work.refuse(CornersNotSewn(span=work.span, name=used.name, why=why))


def _boxed(work: Work, depth: Quantity) -> Made:
    used = work.one("thing")
    hollow = work.hollow(used)
    if len(hollow.ends) > 1 or hollow.round:
        work.wrong_shape(used, "a pouch with corners")
    if hollow.depth is not None and any(compare(hollow.depth[s], NOTHING[s], s) for s in work.systems):
        work.refuse(BoxedAlready(span=work.span, name=used.name))
    mouth = next(iter(hollow.ends), None)
    lower = depth if mouth is None else half(depth)
    sideways = mouth in ("left", "right")
    boxed = replace(
        hollow,
        width=less(hollow.width, lower if sideways else depth),
        height=less(hollow.height, depth if sideways else lower),
        depth=depth,
    )
    work.seams.append(depth)
    return Made(boxed, as_it_lay(used))


_BY_CUTTING = (
    "box corners of {thing:thing} by cutting {square:measure} from the {start=raw edges|stitch lines}"
)
BOX = Verb(
    "box",
    {"box corners of {thing:thing} to {depth:measure}": box_to, _BY_CUTTING: box_by_cutting},
    ResultRule.CHANGES_FIRST,
    changes="thing",
)
