"""Settling what prose prints: every `{…}` of a recipe in one size.

A measure in a step is what it was after the last statement up to that step; elsewhere it is what it
was in the end.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from presscloth.edition import CutPiece, Edition
from presscloth.frozen import dataclass
from presscloth.measure import Kind, Quantity, number_text
from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Broken, Expression, Name
from presscloth.recipe.prose import How, Measure
from presscloth.recipe.walking import Told, inlines
from presscloth.recipe.words import look_up
from presscloth.source import Span

ValueAfter = Callable[[Expression, int | None], Quantity | Broken]
"""The value of an expression as things stood after a step; None: as they stood in the end."""


class AreaPrinted(Problem):
    """An area is printed where a reader expects a length.

    Nobody measures an area with a tape. Two lengths were multiplied that were meant to be added, or
    one of them was meant to be a plain number.

    Fails:

        ## Steps
        1. Hem it by {seam × seam}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem it by {2 × seam}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` is an area, not a length"

    def hint(self) -> str:
        return "multiply by a plain number, or print the two lengths one after the other"


class NumberDiffers(Problem):
    """A plain number comes out differently in the two systems.

    A number has no unit, so one figure is printed for both; but here there are two. `round up` makes
    it one that suffices in both.

    Fails:

        ## Measures
        - band = 7 cm (2 3/4 in)

        ## Steps
        1. Mark it {band / seam} times.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Measures
        - band = 7 cm (2 3/4 in)

        ## Steps
        1. Mark it {round up(band / seam)} times.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    metric: str
    imperial: str

    def message(self) -> str:
        return f"`{self.span.quoted}` is {self.metric} in metric and {self.imperial} in imperial"

    def hint(self) -> str:
        return "put `round up( )` around it, or print a length"


class PieceNotHere(Problem):
    """A piece is named in a size that does not cut it.

    Fails:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Large | 40 cm (16 in) |

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Sizes |
        |-------|------|-----|---------------|---------------|-------|
        | cloth | A    | 1   | side          | side          |       |
        | tab   | A    | 1   | 5 cm (2 in)   | 5 cm (2 in)   | Large |

        ## Steps
        1. Large only: Sew the tab on.

           ```sew
           hem all of tab by 1 cm (3/8 in)
           attach tab to cloth
           ```

        2. Hem the cloth, but not {tab}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem {cloth}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    piece: str

    def message(self) -> str:
        return f"`{self.piece}` is named here, and this size does not cut it"

    def hint(self) -> str:
        return "mark the paragraph with the sizes that have it, such as `Large only:`"


@dataclass(frozen=True, slots=True)
class Named:
    """A piece whose name is printed."""

    piece: CutPiece


Settled = Mapping[Span, Quantity | Named]
"""What stands in each pair of braces, by its place; what is broken is absent and has been reported."""


def measures_in(runs: Sequence[Told], size: str) -> Iterator[tuple[Measure, Told]]:
    """The braces that are printed in a size."""
    for run in runs:
        if run.in_size(size):
            for inline in inlines(run.of):
                if isinstance(inline, Measure):
                    yield inline, run


def settle(edition: Edition, runs: Sequence[Told], value: ValueAfter, problems: Problems) -> Settled:
    """Work out every pair of braces in one size. Reports what cannot be printed."""
    size = edition.size.name
    pieces = {piece.name: piece for piece in edition.pieces}
    settled: dict[Span, Quantity | Named] = {}
    for measure, run in measures_in(runs, size):
        step = None if run.step is None else run.step.number
        found: Quantity | Named | Broken | None = _named(measure, edition, pieces, problems)
        if found is None:
            found = _printable(value(measure.expression, step), measure, edition, problems)
        if not isinstance(found, Broken):
            settled[measure.span] = found
    return settled


def _named(
    measure: Measure, edition: Edition, pieces: Mapping[str, CutPiece], problems: Problems
) -> Named | Broken | None:
    """The piece that braces name; None where they hold a measure."""
    expression = measure.expression
    if not isinstance(expression, Name):
        return None
    piece = look_up(expression.text, pieces)
    if piece is not None:
        return Named(piece)
    if look_up(expression.text, {name: name for name in edition.without}) is None:
        return None
    problem = PieceNotHere(span=expression.span, piece=expression.text)
    problems.add(problem.in_size(edition.size.name))
    return Broken(measure.span)


def _printable(
    value: Quantity | Broken, measure: Measure, edition: Edition, problems: Problems
) -> Quantity | Broken:
    if isinstance(value, Broken):
        return value
    place, size = measure.expression.span, edition.size.name
    if value.kind is Kind.AREA:
        problems.add(AreaPrinted(span=place).in_size(size))
        return Broken(place)
    asked_for_one = How.METRIC in measure.how or How.IMPERIAL in measure.how
    one_system = asked_for_one or len(edition.recipe.front.systems) == 1
    if value.kind is Kind.NUMBER and value.metric != value.imperial and not one_system:
        metric, imperial = number_text(value.metric), number_text(value.imperial)
        problems.add(NumberDiffers(span=place, metric=metric, imperial=imperial).in_size(size))
        return Broken(place)
    return value
