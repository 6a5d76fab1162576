"""The true-scale templates of a size: one set for each system that is printed."""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.drawing.templates import draw_templates
from presscloth.edition import Edition
from presscloth.handout.tree import Caution, TemplateSet
from presscloth.measure import System
from presscloth.tongue import listed, named, say


def template_sets(edition: Edition, systems: Sequence[System]) -> tuple[TemplateSet, ...]:
    """The templates of the pieces that are cut by an outline, the leading system first; none without any.

    Each system has its own, since each is exact in itself: parts cut by the one meet parts cut by the same.
    """
    recipe = edition.recipe
    article = named(recipe.front.title)
    if len(recipe.sizes) > 1:
        article = f"{article} · {named(edition.size.name)}"
    found = ((system, draw_templates(edition.pieces, article, system)) for system in systems)
    return tuple(TemplateSet(system, sheets) for system, sheets in found if sheets)


def template_note(sets: Sequence[TemplateSet]) -> tuple[Caution, ...]:
    """What to know before a template is printed; nothing where there is none."""
    if not sets:
        return ()
    pieces = listed(tuple(dict.fromkeys(sheet.piece for sheet in sets[0].sheets)))
    text = say(
        "Those of {pieces} are files of their own, at full size, beside this handout. Print them at "
        "100 %, and measure both test squares before you cut.",
        pieces=pieces,
    )
    if len(sets) > 1:
        text += " " + say("There is a set for each system; cut all of one article by the same.")
    return (Caution(say("Templates"), text),)
