"""Problems for a terminal that has little room, and for editors that read one line each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from presscloth.problems.full import INKS, where_it_holds
from presscloth.problems.places import place
from presscloth.problems.report import Reported, in_one_row
from presscloth.problems.terminal import Ink, Pen, printable


def short(reported: Sequence[Reported], *, colour: bool = False) -> str:
    """One line each: `file:line:column: severity: message [name]`."""
    return "".join(f"{line}\n" for line in _lines(reported, Pen(colour)))


def _lines(reported: Sequence[Reported], pen: Pen) -> Iterator[str]:
    for variant in in_one_row(reported):
        problem = variant.problem
        where = pen(_one_line(str(place(problem.span))), Ink.PLACE)
        severity = pen(problem.severity.value, INKS[problem.severity])
        holds = where_it_holds(variant)
        said = _one_line(problem.message()) + (f" ({_one_line(holds)})" if holds else "")
        yield f"{where}: {severity}: {said} [{problem.slug()}]"


def _one_line(text: str) -> str:
    return " ".join(printable(text).split())
