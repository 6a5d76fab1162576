"""Begin a translation's file, or bring it up to date with its recipe; nothing that stands in it is lost."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from presscloth.recipe.tree import Recipe
from presscloth.translation.holding import match
from presscloth.translation.reading import BEFORE, NAMES, PARAGRAPHS, PUT_BY
from presscloth.translation.tree import Entry, NameEntry, TranslationText
from presscloth.translation.wanted import names, paragraphs


def updated(recipe: Recipe, language: str, text: TranslationText | None) -> str:
    """The file with every text of the recipe in its order.

    What is translated stays; what has changed since keeps its translation below a quotation of what was
    translated. What the recipe no longer says, and what could not be read, is put by at the end.
    """
    given = text.entries if text else ()
    matched = match(paragraphs(recipe), given)
    parts = [text.head if text else f"---\nlanguage: {language}\n---"]
    parts += [f"## {NAMES}", "\n".join(_table(recipe, text.names if text else ()))]
    parts.append(f"## {PARAGRAPHS}")
    for wanted, entry, changed in matched.wanted:
        parts.append(f"> {wanted.text}")
        if entry is not None and changed and entry.text is not None:
            parts.append(f"> {BEFORE}{entry.before or entry.original}")
        if entry is not None and entry.text is not None:
            parts.append(entry.text.text)
    put_by = list(_put_by(recipe, text, matched.unused))
    if put_by:
        parts += [f"## {PUT_BY}", *put_by]
    return "\n\n".join(parts) + "\n"


def _table(recipe: Recipe, given: Sequence[NameEntry]) -> Iterator[str]:
    """The table of names, its columns as wide as their longest cell."""
    called = {entry.name: entry.called for entry in given}
    rows = [("Recipe", "Translation"), *((each.text, called.get(each.text, "")) for each in names(recipe))]
    cells = [tuple(cell.replace("|", "\\|") for cell in row) for row in rows]
    wide = [max(len(row[column]) for row in cells) for column in (0, 1)]
    head, *body = (f"| {name.ljust(wide[0])} | {said.ljust(wide[1])} |" for name, said in cells)
    yield head
    yield f"|{'-' * (wide[0] + 2)}|{'-' * (wide[1] + 2)}|"
    yield from body


def _put_by(recipe: Recipe, text: TranslationText | None, unused: Sequence[Entry]) -> Iterator[str]:
    """What was put by before, then what nothing in the recipe wants any more."""
    if text is None:
        return
    if text.put_by:
        yield text.put_by
    known = {each.text for each in names(recipe)}
    yield from (f"> {entry.name}\n\n{entry.called}" for entry in text.names if _stray(entry, known))
    for entry in unused:
        yield f"> {entry.original}" + (f"\n\n{entry.text.text}" if entry.text else "")
    yield from (span.text.strip() for span in text.unread if span.text.strip() not in text.head)


def _stray(entry: NameEntry, known: set[str]) -> bool:
    return entry.name not in known and entry.called != ""
