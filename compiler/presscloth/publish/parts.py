"""The links between the parts of a longer project.

A part is often published before the next one is there, and its page stays when that is compiled
alone. So the links are put into a page that is finished, between two marks, each time anew.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from presscloth.printing.theme import Theme, environment
from presscloth.publish.entry import CatalogueEntry
from presscloth.publish.lists import by_project, in_language, one_of_each, others_of
from presscloth.tongue import speaking, tongue_of

FROM, TO = "<!-- the parts of the project -->", "<!-- to here -->"
_BETWEEN = re.compile(f"{re.escape(FROM)}.*?{re.escape(TO)}", re.DOTALL)


def parts_html(entries: tuple[CatalogueEntry, ...], language: str, theme: Theme) -> dict[str, str]:
    """The links of each part of a project, by its short name; in each language to parts in the same."""
    template = environment(theme).get_template("parts.html")
    found = {}
    for project in by_project(one_of_each(entries, language)):
        parts = project.entries
        for before, part, after in zip((None, *parts), parts, (*parts[1:], None), strict=False):
            for entry in (part, *others_of(part, entries)):
                with speaking(tongue_of(entry.language)):
                    found[entry.slug] = template.render(
                        project=project,
                        entry=entry,
                        before=before and in_language(before, entries, entry.language),
                        after=after and in_language(after, entries, entry.language),
                    )
    return found


def linked_pages(
    entries: tuple[CatalogueEntry, ...], language: str, theme: Theme, site: Path
) -> Iterator[tuple[str, str]]:
    """The pages of recipes whose links to other parts are not yet as they should be, by their names."""
    links = parts_html(entries, language, theme)
    for entry in entries:
        name = f"{entry.slug}/index.html"
        page = (site / name).read_text(encoding="utf-8")
        linked = _between_marks(page, f"\n{links[entry.slug]}" if entry.slug in links else "")
        if linked != page:
            yield name, linked


def _between_marks(page: str, text: str) -> str:
    """A page with a text between the marks; as it is where it has none."""
    return _BETWEEN.sub(lambda _: f"{FROM}{text}{TO}", page)
