"""Transform a translation's file into its entries.

    ---
    language: de
    written in: metric
    ---

    ## Names

    | Recipe | Translation |
    |--------|-------------|
    | Small  | Klein       |

    ## Paragraphs

    > Press the seam open.

    Die Naht auseinanderbügeln.

The lines between the hyphens are read like a recipe's; `written in` says which system leads.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from presscloth.frozen import dataclass
from presscloth.measure import System
from presscloth.problems import Problems
from presscloth.recipe.front_yaml import Scalar, front_lines
from presscloth.source import Passage, Source, Span
from presscloth.translation.problems import TranslationUnread
from presscloth.translation.tree import Entry, NameEntry, TranslationText
from presscloth.translation.wanted import folded

NAMES, PARAGRAPHS, PUT_BY = "Names", "Paragraphs", "No longer in the recipe"
BEFORE = "> Before: "
KEYS = ("language", "written in")
_SYSTEMS = {system.value: system for system in System}
_HEADING = re.compile(r"^## +(.+?)[ \t]*$", re.MULTILINE)
_CELLS = re.compile(r"(?<!\\)\|")


@dataclass(frozen=True, slots=True)
class _Block:
    """Lines that stand together, quoted or not; `text` has no quotation marks."""

    quoted: bool
    text: str
    span: Span


def read_translation(source: Source, language: str, problems: Problems) -> TranslationText:
    """Read a file. What means nothing in it is reported, and everything else is read."""
    lines, body = front_lines(source, problems)
    leading: System | None = None
    unread: list[Span] = []
    for key, value in lines.pairs:
        if key.text == "written in" and isinstance(value, Scalar) and value.text in _SYSTEMS:
            leading = _SYSTEMS[value.text]
        elif key.text != "language" or not isinstance(value, Scalar) or value.text != language:
            unread.append(key.span.to(value.span))
    names: tuple[NameEntry, ...] = ()
    entries: list[Entry] = []
    put_by = ""
    for heading, span in _sections(source, body):
        if heading == NAMES:
            names = tuple(_names(span, unread))
        elif heading == PARAGRAPHS:
            entries += _entries(span, unread)
        elif heading == PUT_BY:
            put_by = span.text.strip("\n")
        elif span.text.strip():
            unread.append(span)
    for span in unread:
        problems.add(TranslationUnread(span=span))
    head = source.text[:body].rstrip("\n")
    return TranslationText(source, language, leading, names, tuple(entries), head, put_by, tuple(unread))


def _sections(source: Source, body: int) -> Iterator[tuple[str, Span]]:
    """Each heading with what stands below it; what stands before the first has an empty heading."""
    found = list(_HEADING.finditer(source.text, body))
    yield "", source.span(body, found[0].start() if found else len(source.text))
    for heading, after in pairwise((*found, None)):
        assert heading is not None
        yield heading[1], source.span(heading.end(), len(source.text) if after is None else after.start())


def _names(section: Span, unread: list[Span]) -> Iterator[NameEntry]:
    """The rows of the table, its head left out."""
    rows = [line for line in Passage.of(section).lines() if line.text.strip()]
    for number, row in enumerate(rows):
        cells = [cell.strip().replace("\\|", "|") for cell in _CELLS.split(row.text.strip())]
        if len(cells) != 4 or cells[0] or cells[-1]:
            unread.append(row.span())
        elif number > 1:
            yield NameEntry(folded(cells[1]), folded(cells[2]), row.strip().span())


def _entries(section: Span, unread: list[Span]) -> Iterator[Entry]:
    """A quotation, perhaps one that says what stood there before, perhaps a translation, and so on."""
    blocks = [*_blocks(section), None]
    original: _Block | None = None
    before = ""
    text: _Block | None = None
    for block in blocks:
        if block is not None and original is not None and block.quoted and block.text.startswith(BEFORE):
            before = block.text.removeprefix(BEFORE)
        elif block is None or block.quoted:
            if original is not None:
                yield Entry(original.text, before, Passage.of(text.span) if text else None, original.span)
            original, before, text = block, "", None
        elif original is None or text is not None:
            unread.append(block.span)
        else:
            text = block


def _blocks(section: Span) -> Iterator[_Block]:
    """Lines that stand together without an empty line between them, quoted ones apart from others."""
    held: list[Passage] = []
    quoted = False
    for line in [*Passage.of(section).lines(), None]:
        marked = line is not None and line.text.lstrip().startswith(">")
        ends = line is None or not line.text.strip() or marked != quoted
        if held and ends:
            yield _block(held, quoted)
            held = []
        if line is not None and line.text.strip():
            quoted = marked
            held.append(line)


def _block(lines: list[Passage], quoted: bool) -> _Block:
    span = lines[0].strip().span().to(lines[-1].strip().span())
    said = (line.text.lstrip().removeprefix(">") if quoted else line.text for line in lines)
    return _Block(quoted, folded(" ".join(said)), span)
