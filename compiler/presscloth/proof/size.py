"""Working out one size: its edition, its construction, and what its prose prints."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from presscloth.edition import Edition, Evaluator, make_edition
from presscloth.edition.asking import find_piece, part_of_piece
from presscloth.measure import Quantity
from presscloth.problems import Problem, Problems
from presscloth.proof.measured import of_pieces, unneeded
from presscloth.proof.prose import Settled, settle
from presscloth.recipe.expression import Bought, Broken, Expression, PartOf
from presscloth.recipe.tree import Recipe, Size
from presscloth.recipe.walking import told


@dataclass(frozen=True, kw_only=True)
class NotWorkedOut(Problem):
    """A printed number needs what this version of the compiler does not work out yet.

    Fails:

        ## Steps
        1. The strip is {width of strip} wide.

           ```sew
           strip = fold cloth lengthways
           finish strip
           ```

    Passes:

        ## Steps
        1. The cloth is {width of cloth} wide.

           ```sew
           hem all of cloth by 1 cm (3/8 in) twice
           finish cloth
           ```
    """

    name: str
    what: str

    def message(self) -> str:
        return f"`{self.name}` is {self.what}; it is not worked out yet"

    def hint(self) -> str:
        return "name a measure or the cut size of a piece instead"


@dataclass(frozen=True)
class WorkedSize:
    """One size, worked out: the edition, its evaluator, what stands in its braces, its measures by name."""

    edition: Edition
    evaluator: Evaluator
    settled: Settled
    measures: Mapping[str, Quantity]

    def value(self, expression: Expression, step: int | None) -> Quantity | Broken:
        """The value of an expression as things stood after a step, or in the end."""
        return self.evaluator.value(expression)


def work_out(recipe: Recipe, size: Size, problems: Problems) -> WorkedSize:
    """Work out a size and everything that its prose prints."""
    cut: list[Edition] = []

    def ask(part: PartOf | Bought) -> Quantity | Broken:
        pieces = cut[0].pieces if cut else ()
        match part:
            case PartOf(part=word, finished=finished, of=name):
                piece = find_piece(name.text, pieces)
                found = part_of_piece(piece, word, finished=finished) if piece else None
                if found is not None:
                    return found
                problem = NotWorkedOut(span=part.span, name=name.text, what="sewn")
            case Bought(key=key):
                problem = NotWorkedOut(span=part.span, name=key.text, what="bought")
        problems.add(problem.in_size(size.name))
        return Broken(part.span)

    edition = make_edition(recipe, size, problems, ask)
    cut.append(edition)
    evaluator = edition.evaluator(ask, problems)
    settled = settle(
        edition, tuple(told(recipe)), lambda expression, _: evaluator.value(expression), problems
    )
    measures = {**unneeded(edition, evaluator, problems), **of_pieces(edition.pieces)}
    return WorkedSize(edition, evaluator, settled, measures)
