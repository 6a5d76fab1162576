"""The words that a step, a paragraph or a check may begin with: `Optional:`, `Large only:`, `At 4:15:`."""

from __future__ import annotations

import re
from dataclasses import replace

from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Name
from presscloth.recipe.tree import Lead
from presscloth.source import Passage


class SizesBothWays(Problem):
    """Lead words name sizes both ways: some `only`, and some `Not`.

    Which sizes are left is not plain to a reader either. Say it one way.

    Fails:

        ## Steps
        1. One size only: Not One size: Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. One size only: Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    def message(self) -> str:
        return "these lead words name sizes with `only` and with `Not` at once"

    def hint(self) -> str:
        return "keep the one that says it all"


_LEAD = re.compile(
    r"""\s*(?: (?P<optional>Optional) | (?P<instead>Or) | (?P<care>Take\ care)
          | At\ (?P<at>\d{1,3}:\d\d(?::\d\d)?)
          | (?P<only>[^\W\d_][^:.;!?{}]{0,120}?)\ only
          | Not\ (?P<without>[^:.;!?{}]{1,120}?)
        )\s*:(?=\s|$)""",
    re.VERBOSE | re.IGNORECASE,
)
_BETWEEN = re.compile(r"\s*(?:,\s*and\b|,|\band\b)\s*")


def read_lead(passage: Passage, problems: Problems) -> tuple[Lead, Passage]:
    """The lead words at the beginning of a passage, in any order, and what follows them."""
    lead = Lead()
    while match := _LEAD.match(passage.text):
        lead = _with(lead, match, passage)
        passage = passage[match.end() :].strip()
    if lead.only and lead.without:
        problems.add(SizesBothWays(span=lead.only[0].span.to(lead.without[-1].span)))
    return lead, passage


def _with(lead: Lead, match: re.Match[str], passage: Passage) -> Lead:
    if match["optional"]:
        return replace(lead, optional=True)
    if match["instead"]:
        return replace(lead, instead=True)
    if match["care"]:
        return replace(lead, care=True)
    if match["at"]:
        return replace(lead, at=_seconds(match["at"]))
    if match["only"]:
        return replace(lead, only=(*lead.only, *names_in_list(passage[slice(*match.span("only"))])))
    return replace(lead, without=(*lead.without, *names_in_list(passage[slice(*match.span("without"))])))


def _seconds(clock: str) -> int:
    seconds = 0
    for part in clock.split(":"):
        seconds = seconds * 60 + int(part)
    return seconds


def names_in_list(passage: Passage) -> tuple[Name, ...]:
    """`Small, Medium and Tall`, each name with its place."""
    names = []
    start = 0
    for match in [*_BETWEEN.finditer(passage.text), None]:
        end = match.start() if match else len(passage.text)
        name = passage[start:end].strip()
        if name.text:
            names.append(Name(" ".join(name.text.split()), name.span()))
        start = match.end() if match else end
    return tuple(names)
