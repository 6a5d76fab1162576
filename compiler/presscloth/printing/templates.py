"""The true-scale templates of one size as a tagged PDF for each paper.

One tile of a template fits between the margins of A4 and of Letter, so that both papers have the same
sheets, from one layout; nothing in it is scaled (`PrintScaling` says none).
"""

from __future__ import annotations

from dataclasses import replace

from markupsafe import Markup

from presscloth.drawing.sheets import Sheet
from presscloth.frozen import dataclass
from presscloth.handout.tree import Handout, Publisher, TemplateSet
from presscloth.printing.pdf import print_page
from presscloth.printing.svg import svg
from presscloth.printing.theme import Theme, environment
from presscloth.tongue import speaking, tongue_of


@dataclass(frozen=True, slots=True)
class Page:
    """What the page needs for one sheet."""

    sheet: Sheet
    drawing: Markup


def templates_pdf(
    handout: Handout, templates: TemplateSet, theme: Theme, publisher: Publisher, on: tuple[str, ...]
) -> tuple[bytes, ...]:
    """Write the templates of a size in one system, for each paper in `on`, in that order."""
    page = templates_html(handout, templates, theme, publisher)
    return print_page(page, theme, "sheets.css", {}, on)


def templates_html(handout: Handout, templates: TemplateSet, theme: Theme, publisher: Publisher) -> str:
    """The page as the PDF writer is given it: one section for each sheet, its drawing at full size."""
    true = replace(theme.look.drawings, scale=1.0, tall=0.0)  # whatever a theme asks of other drawings
    look = replace(theme.look, drawings=true)
    pages = tuple(
        Page(sheet, Markup(svg(sheet.drawing, look, f"sheet-{place}", sheet.drawing.width)))
        for place, sheet in enumerate(templates.sheets, start=1)
    )
    with speaking(tongue_of(handout.language)):
        return (
            environment(theme)
            .get_template("sheets.html")
            .render(
                h=handout,
                system=templates.system if len(handout.templates) > 1 else None,
                pages=pages,
                publisher=publisher,
                family=theme.look.lettering.family,
            )
        )
