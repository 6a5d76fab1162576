"""Problems for people: each with its source line, the places that have to do with it, and one way out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from presscloth.problems.base import Label, Severity
from presscloth.problems.places import place
from presscloth.problems.report import Reported, Variant, one_by_one
from presscloth.problems.terminal import Ink, Pen, printable, underlined
from presscloth.source import Span

MOST_SHOWN = 6
"""Of what follows from one problem; it goes when that one is mended, and `--format short` lists all of it."""

INKS = {Severity.ERROR: Ink.ERROR, Severity.WARNING: Ink.WARNING}


def full(reported: Sequence[Reported], *, width: int = 100, colour: bool = False) -> str:
    """All problems in full. `width` is the number of columns there are, `colour` for a terminal only."""
    pen = Pen(colour)
    blocks = ["\n".join(_block(one, pen, width)) for one in reported]
    if blocks:
        slug = next(iter(one_by_one(reported))).problem.slug()
        blocks.append(f"`presscloth why NAME` explains a problem: presscloth why {slug}")
    return "".join(f"{block}\n\n" for block in blocks)


def _block(one: Reported, pen: Pen, width: int) -> Iterator[str]:
    problem = one.problem
    yield _head(one, pen)
    yield f"  {_said(one.all_variants[0])}"
    yield from _frame(problem.span, pen, width, INKS[one.severity])
    for variant in one.variants:
        yield f"  {_said(variant)}"
    for label in problem.labels:
        yield from _label(label, problem.span, pen, width)
    yield pen(f"  hint: {printable(problem.hint())}", Ink.HINT)
    if one.under:
        yield "  What follows from it:"
        others = tuple(one_by_one(one.under))
        shown = others if len(others) <= MOST_SHOWN + 1 else others[:MOST_SHOWN]
        for other in shown:
            yield from _consequence(other, pen)
        if len(shown) < len(others):
            yield f"  - and {len(others) - len(shown)} more"


def _head(one: Reported, pen: Pen) -> str:
    where = pen(printable(str(place(one.problem.span))), Ink.PLACE)
    severity = pen(one.severity.value, INKS[one.severity])
    return f"{where}: {severity}: {one.problem.title()}"


def _said(variant: Variant) -> str:
    holds = where_it_holds(variant)
    return printable(variant.problem.message() + (f" ({holds})" if holds else ""))


def where_it_holds(variant: Variant) -> str:
    """`Small and Tall, in metric`; nothing where it holds everywhere."""
    parts = []
    if variant.sizes:
        parts.append(_listed(variant.sizes))
    if variant.systems:
        parts.append(f"in {_listed(variant.systems)}")
    return ", ".join(parts)


def _listed(names: Sequence[str]) -> str:
    return " and ".join(part for part in (", ".join(names[:-1]), names[-1]) if part)


def _frame(span: Span, pen: Pen, width: int, ink: Ink) -> Iterator[str]:
    """The source line with marks under the place; of a longer stretch the first line."""
    if not span.source.text:
        return
    where = place(span)
    line = span.source.line_text(where.line).rstrip("\r")
    start = min(where.column - 1, len(line))
    end = where.end_column - 1 if where.end_line == where.line else len(line)
    number, blank = f"{where.line:5} |", " " * 5 + " |"
    text, marks = underlined(line, start, max(start, min(end, len(line))), max(20, width - len(number) - 2))
    more = f" to line {where.end_line}" if where.end_line > where.line else ""
    yield f"{pen(number, Ink.FAINT)} {text}"
    yield f"{pen(blank, Ink.FAINT)} {pen(marks, ink)}{more}"


def _label(label: Label, beside: Span, pen: Pen, width: int) -> Iterator[str]:
    where = place(label.span)
    other_file = label.span.source is not beside.source
    yield f"  {printable(f'{where.file}, ' if other_file else '')}line {where.line}: {printable(label.text)}"
    yield from _frame(label.span, pen, width, Ink.FAINT)


def _consequence(one: Reported, pen: Pen) -> Iterator[str]:
    yield f"  - {_head(one, pen)}"
    for variant in one.all_variants:
        yield f"    {_said(variant)}"
