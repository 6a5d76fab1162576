"""Blocks that are left out with the paragraph or the step whose mark they stand under."""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.edition import Edition, statements
from presscloth.problems import Label
from presscloth.recipe.tree import Lead, Part, Step
from presscloth.recipe.words import look_up
from presscloth.sewing.places import all_counted
from presscloth.sewing.stock_problems import Marked
from presscloth.sewing.ways import Way


def left_out_with(name: str, edition: Edition, way: Way) -> Marked | None:
    """The first block that uses a thing of this name and is not done in this size and on this way."""
    for step, part in _not_done(edition, way):
        for statement in statements(part.content):
            for _, counted in all_counted(statement):
                if look_up(counted.name.text, {name: name}) is not None:
                    mark = marks_of(part.lead) or marks_of(step.lead)
                    return Marked(step.number, mark, statement.span) if mark else None
    return None


def where_left_out(under: Marked | None) -> tuple[Label, ...]:
    """The statement that is left out, as a place of a problem."""
    return () if under is None else (Label(under.span, f"left out with `{under.mark}`"),)


def _not_done(edition: Edition, way: Way) -> Iterator[tuple[Step, Part]]:
    for step in edition.recipe.steps:
        for part in step.parts:
            here = step.lead.holds_in(edition.size.name) and part.lead.holds_in(edition.size.name)
            if not (here and way.takes(step) and way.takes(part)):
                yield step, part


def marks_of(lead: Lead) -> str:
    """The lead words that leave something out, as an author writes them."""
    found = []
    if lead.only:
        found.append(f"{' and '.join(name.text for name in lead.only)} only:")
    if lead.without:
        found.append(f"Not {' and '.join(name.text for name in lead.without)}:")
    if lead.optional:
        found.append("Optional:")
    if lead.instead:
        found.append("Or:")
    return " ".join(found)
