"""Warnings that a recipe accepts, each by its name and with a reason."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from typing import ClassVar

from presscloth.problems import Label, Problem, Severity, subclasses
from presscloth.recipe.tree import Accepted
from presscloth.recipe.words import nearest


class AcceptedUnknown(Problem):
    """A recipe accepts a warning that does not exist.

    It would be taken for accepted, and the warning that was meant still stands.

    Fails:

        ---
        accept:
          - letter missing: the letters of the sample are kept
        ---

    Passes:

        ---
        title: Plain Cloth
        ---
    """

    name: str
    meant: str | None

    def message(self) -> str:
        return f"there is no warning called `{self.name}`"

    def hint(self) -> str:
        if self.meant:
            return f"write `{self.meant}` if that is meant, or take the line out"
        return "take the line out; `presscloth why` lists all names"


class ErrorAccepted(Problem):
    """A recipe accepts an error.

    An error means that the handout would be wrong: somebody would cut cloth by it. It can be put
    right, it cannot be accepted.

    Fails:

        ---
        accept:
          - pair disagrees: it was always like this
        ---

    Passes:

        ---
        title: Plain Cloth
        ---
    """

    name: str

    def message(self) -> str:
        return f"`{self.name}` is an error, and an error cannot be accepted"

    def hint(self) -> str:
        return "put right what it reports, and take this line out"


class AcceptedWithoutNeed(Problem):
    """A recipe accepts a warning that is not there.

    The reason has gone. Left standing, the line would hide the next warning of that name, which
    nobody has looked at yet.

    Fails:

        ---
        accept:
          - letters missing: the letters of the sample are kept
        ---

    Passes:

        ---
        accept:
          - letters missing: the letters of the sample are kept
        ---

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | B   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | B    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    severity: ClassVar[Severity] = Severity.WARNING
    name: str

    def message(self) -> str:
        if self.labels:
            return f"`{self.name}` is accepted a second time"
        return f"`{self.name}` is accepted, and no such warning was found"

    def hint(self) -> str:
        return "take this line out"


def accept(problems: Iterable[Problem], accepted: Sequence[Accepted]) -> tuple[Problem, ...]:
    """Take the accepted warnings out, and report acceptances that are wrong or that nothing needs.

    Names are looked up among all kinds of problem whose rooms have been imported; they may be typed
    with spaces or with hyphens.
    """
    found = tuple(problems)
    kinds = {kind.slug(): kind for kind in subclasses()}
    warnings = {slug for slug, kind in kinds.items() if kind.severity is Severity.WARNING}
    allowed = {_slug(each.name) for each in accepted} & warnings
    kept = tuple(problem for problem in found if problem.slug() not in allowed)
    return (*kept, *_wrongly_accepted(accepted, kinds, warnings, {problem.slug() for problem in found}))


def _wrongly_accepted(
    accepted: Sequence[Accepted], kinds: Mapping[str, type[Problem]], warnings: Set[str], found: Set[str]
) -> Iterator[Problem]:
    first: dict[str, Accepted] = {}
    for each in accepted:
        slug = _slug(each.name)
        if slug not in kinds:
            yield AcceptedUnknown(span=each.span, name=each.name, meant=nearest(slug, warnings))
        elif slug not in warnings:
            yield ErrorAccepted(span=each.span, name=each.name)
        elif slug in first:
            label = Label(first[slug].span, "accepted here already")
            yield AcceptedWithoutNeed(span=each.span, name=each.name, labels=(label,))
        elif slug not in found:
            yield AcceptedWithoutNeed(span=each.span, name=each.name)
        first.setdefault(slug, each)


def _slug(name: str) -> str:
    return "-".join(name.casefold().replace("-", " ").split())
