"""The true-scale templates of a size: one set for each system that is printed."""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.drawing.templates import draw_templates
from presscloth.edition import Edition
from presscloth.handout.tree import TemplateSet
from presscloth.measure import System
from presscloth.tongue import named


def template_sets(edition: Edition, systems: Sequence[System]) -> tuple[TemplateSet, ...]:
    """The templates of the pieces that are cut by an outline, the leading system first; none without any.

    Each system has its own, since each is exact in itself: parts cut by the one meet parts cut by the same.
    """
    recipe = edition.recipe
    article = recipe.front.title
    if len(recipe.sizes) > 1:
        article = f"{article} · {named(edition.size.name)}"
    found = ((system, draw_templates(edition.pieces, article, system)) for system in systems)
    return tuple(TemplateSet(system, sheets) for system, sheets in found if sheets)
