"""Finished sizes, held between the two systems."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import ClassVar

from presscloth.measure import Kind, Quantity, apart, decimal_text, printed
from presscloth.measure.quantity import System
from presscloth.problems import Label, Problem, Severity
from presscloth.proof.size import WorkedSize
from presscloth.sewing.measuring import measured

LEAST = Fraction(5)
"""mm; below this no difference of a finished size is questioned."""

SHARE = Fraction(25, 1000)


class FinishedSizesDiffer(Problem):
    """The finished article comes out in two sizes, one in metric and one in imperial.

    Each system is right in itself, and its makers get parts that meet; but the handout speaks of one
    article. Many small differences of stated pairs have added up, all to the same side.

    Fails:

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by 1 cm (3/8 in), then 1 cm (3/8 in)
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in), then 1.2 cm (1/2 in)
           finish cloth
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING
    name: str
    side: str
    metric: str
    imperial: str
    difference: str

    def message(self) -> str:
        return (
            f"the {self.side} of the finished `{self.name}` is {self.metric} in metric and "
            f"{self.imperial} in imperial, {self.difference} apart"
        )

    def hint(self) -> str:
        return "look at the pairs behind it, and choose halves that lie nearer to each other"


def hold(size: WorkedSize) -> Iterator[Problem]:
    """A finished size may differ by 5 mm or 2.5 % of the larger, whichever is more; beyond, a warning."""
    if len(size.edition.recipe.front.systems) < 2:
        return
    for article in size.construction.finished:
        for side in ("width", "height", "depth"):
            value = measured(article.thing.shape, side, finished=True)
            if value is not None and value.kind is Kind.LENGTH and _too_far(value):
                difference, _ = apart(value.metric, value.imperial, Kind.LENGTH)
                yield FinishedSizesDiffer(
                    span=article.span,
                    name=article.name,
                    side=side,
                    metric=printed(value.computed(), System.METRIC).text,
                    imperial=printed(value.computed(), System.IMPERIAL).text,
                    difference=f"{decimal_text(difference, 1)} mm",
                    labels=tuple(Label(span, "stated here") for span in value.origins),
                    sizes=(size.edition.size.name,),
                )


def _too_far(value: Quantity) -> bool:
    difference, share = apart(value.metric, value.imperial, Kind.LENGTH)
    return difference > LEAST and share > SHARE
