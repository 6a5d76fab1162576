"""What stands between braces in prose: `{front width + seam, about}`, `{buy A}`."""

from __future__ import annotations

from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Broken, Expression
from presscloth.recipe.prose import How
from presscloth.recipe.reckoning import ExpressionReader
from presscloth.recipe.words import nearest
from presscloth.source import Passage


class PrintedHow(Problem):
    """What follows the comma in braces does not say how a measure is printed.

    Fails:

        ## Steps
        1. Hem the cloth by {seam, metrical}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem the cloth by {seam, metric}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    meant: str | None

    def message(self) -> str:
        return f"`{self.span.quoted}` does not say how the measure is printed"

    def hint(self) -> str:
        if self.meant:
            return f"write `{self.meant}`"
        return f"after the comma may stand {', '.join(how.value for how in How)}"


def in_braces(passage: Passage, problems: Problems) -> tuple[Expression, tuple[How, ...]]:
    """The expression between two braces, and how it is to be printed."""
    reader = ExpressionReader(passage, problems)
    expression = reader.expression()
    hows: list[How] = []
    while not isinstance(expression, Broken) and reader.takes(","):
        token = reader.takes(*(how.value for how in How))
        if token is None:
            rest = reader.rest() if reader.next else passage
            meant = nearest(rest.text, [how.value for how in How])
            problems.add(PrintedHow(span=rest.span(), meant=meant))
            return Broken(passage.span()), ()
        hows.append(How(token.text))
    return reader.finish(expression) if not isinstance(expression, Broken) else expression, tuple(hows)
