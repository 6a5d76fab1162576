"""Run an example: complete it, prove it, and find every place of the result in the example again."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

from spec.notation import Example

from presscloth.dev import scaffold
from presscloth.handout.tree import Publisher
from presscloth.handout.wording import amount, systems_of
from presscloth.measure import Kind, Quantity, System, exact_text
from presscloth.pipeline import Proved, booklet, booklets_of, prove
from presscloth.printing.text import text as as_text
from presscloth.problems import Problems
from presscloth.problems.full import where_it_holds
from presscloth.problems.report import Reported, Variant, report
from presscloth.proof.measured import of_pieces
from presscloth.proof.size import WorkedSize
from presscloth.recipe.expression import Broken
from presscloth.recipe.reckoning import expression
from presscloth.recipe.statement import Choice, Slot, Statement
from presscloth.source import Passage, Source, Span

TRANSLATION_FILE = "recipe.de.md"
PUBLISHER = Publisher("Tidewrack sewing room", "", ("A4",), (), "plain-seam")

_UNITS = {
    Kind.LENGTH: ("mm", "in"),
    Kind.AREA: ("mm²", "in²"),
    Kind.WEIGHT: ("g", "oz"),
    Kind.NUMBER: ("", ""),
}


def write(example: Example, folder: Path) -> Path:
    """The example as a whole recipe in a folder of its own."""
    alone = folder / "recipes" / "example"  # with no other test's recipe beside it
    alone.mkdir(parents=True, exist_ok=True)
    path = scaffold.write("" if example.whole else example.text, alone)
    if example.whole:
        path.write_text(example.text, "utf-8")
    if example.translation:
        path.with_name(TRANSLATION_FILE).write_text(example.translation, "utf-8")
    return path


def run(example: Example, folder: Path) -> Proved:
    return prove(write(example, folder))


def reported(proved: Proved) -> tuple[Reported, ...]:
    if proved.recipe is None:
        return report(proved.problems)
    sizes = [size.name for size in proved.recipe.sizes]
    return report(proved.problems, sizes=sizes, systems=[s.value for s in proved.recipe.front.systems])


def said(variant: Variant) -> str:
    holds = where_it_holds(variant)
    return variant.problem.message() + (f" ({holds})" if holds else "")


@dataclass(frozen=True)
class Places:
    """Where each line of the completed recipe stands in the example."""

    lines: tuple[int | None, ...]

    def of(self, span: Span) -> tuple[int, int]:
        """Line and column of a place as a reader of the example counts them; 0 where it is not in it."""
        line, column = span.where
        if span.source.name.endswith(TRANSLATION_FILE):
            return line, column
        return self.lines[line - 1] or 0, column


_MARK = re.compile("\ue000(\\d+)\ue001")


def places(example: Example) -> Places:
    """Mark every line of an example, complete it, and see where the marks went."""
    lines = example.text.split("\n")
    if example.whole:
        return Places(tuple(range(1, len(lines) + 1)))
    marked = [line if _is_bare(line) else f"{line}\ue000{n}\ue001" for n, line in enumerate(lines, start=1)]
    bare = {line: n for n, line in reversed(list(enumerate(lines, start=1))) if _is_bare(line)}
    found: list[int | None] = []
    for line in scaffold.complete("\n".join(marked)).split("\n"):
        mark = _MARK.search(line)
        found.append(int(mark[1]) if mark else bare.get(line))
    return Places(tuple(found))


def _is_bare(line: str) -> bool:
    """A line that the scaffold looks at, which therefore cannot be marked."""
    return line.startswith("## ") or line.rstrip() in ("---", "")


def spelt(span: Span) -> str:
    """What stands at a place, on one line."""
    return " ".join(span.text.split())


def value(text: str, size: WorkedSize) -> Quantity:
    """What an expression comes to in one size, as things stood in the end."""
    problems = Problems()
    found = expression(Passage.of(Source("claim", text).span(0, len(text))), problems)
    assert problems.found() == (), f"`{text}` cannot be read: {problems.found()[0].message()}"
    quantity = size.value(found, None)
    assert not isinstance(quantity, Broken), f"`{text}` cannot be worked out"
    return quantity


def as_printed(text: str, size: WorkedSize) -> str:
    systems = systems_of(size.edition.recipe)
    return amount(value(text, size), systems, cut=text in of_pieces(size.edition.pieces)).text


def exactly(text: str, size: WorkedSize) -> str:
    """`190 mm, 15/2 in`; of a plain number that is the same in both systems, that number."""
    quantity = value(text, size)
    metric, imperial = (exact_text(quantity, system) for system in System)
    if quantity.kind is Kind.NUMBER and metric == imperial:
        return metric
    mm, inches = _UNITS[quantity.kind]
    return f"{metric} {mm}".rstrip() + ", " + f"{imperial} {inches}".rstrip()


def handouts(proved: Proved) -> dict[str, str]:
    """The handout of each size as one line of text."""
    found = booklet(proved, PUBLISHER).handouts
    return {handout.size: " ".join(as_text(handout).split()) for handout in found}


def translated(proved: Proved) -> str:
    """The translated handout of the first size as one line of text."""
    return " ".join(as_text(booklets_of(proved, PUBLISHER)[1].first).split())


def as_read(statement: Statement) -> str:
    """`hem: edges = bottom of cloth; first = 1 cm (3/8 in)`"""
    result = [f"makes = {spelt(statement.result.span)}"] if statement.result else []
    places = [f"{name} = {_slot(slot)}" for name, slot in statement.slots.items()]
    return f"{statement.verb}: {'; '.join([*result, *places])}"


def _slot(slot: Slot) -> str:
    return slot.words if isinstance(slot, Choice) else spelt(slot.span)
