"""Slips as authors make them, one at a time, each as an edit of a recipe's text.

Every maker reads the recipe's tree and yields edits at the places where such a slip would be made.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from presscloth.edition import statements
from presscloth.measure import UNITS, System, measure_text
from presscloth.recipe.expression import Expression, Measured, Name, Number, Reckoned, Sign, Value, within
from presscloth.recipe.matching import counted_in, names_of
from presscloth.recipe.naming import definitions
from presscloth.recipe.prose import Measure
from presscloth.recipe.statement import Caught, EdgesOf, Statement
from presscloth.recipe.tree import Piece, Recipe
from presscloth.recipe.walking import Where, inlines, told
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Slip:
    """One slip: what kind it is, and the edits that make it (place and new text), in order.

    `values` are the places of the values that slip, whole: a pair with both its halves, the whole of a
    cell. A slip of a name, an edge, a count or a step has none.
    """

    kind: str
    edits: tuple[tuple[Span, str], ...]
    values: tuple[Span, ...] = ()

    def made_in(self, text: str) -> str:
        for span, new in sorted(self.edits, key=lambda edit: edit[0].start, reverse=True):
            text = text[: span.start] + new + text[span.end :]
        return text

    @property
    def told(self) -> str:
        place = self.edits[0][0]
        line, column = place.where
        return f"{line}:{column} `{_shortly(place.text)}` → `{_shortly(self.edits[0][1])}`"


def _shortly(words: str) -> str:
    words = " ".join(words.split())
    return words if len(words) <= 40 else f"{words[:37]}…"


Maker = Callable[[Recipe], Iterator[Slip]]


def _cells(recipe: Recipe) -> Iterator[tuple[Piece, Expression]]:
    """The cut sizes, one cell after the other."""
    for piece in recipe.pieces:
        for side in (piece.width, piece.height):
            if side is not None:
                yield piece, side.expression


def allowances(recipe: Recipe) -> Iterator[Slip]:
    """A seam allowance lost or doubled in one cell."""
    for _, cell in _cells(recipe):
        whole = (cell.span,)
        for part in within(cell):
            match part:
                case Reckoned(sign=Sign.TIMES, left=Number(value=n, span=at), right=Name(text="seam")):
                    yield Slip("allowance lost", ((at, str(n - 1)),), whole)
                    yield Slip("allowance doubled", ((at, str(2 * n)),), whole)
                case Reckoned(sign=Sign.PLUS, left=left, right=Name(text="seam") as right):
                    lost = Span(left.span.source, left.span.end, right.span.end)
                    yield Slip("allowance lost", ((lost, ""),), whole)
                    yield Slip("allowance doubled", ((right.span, "2 × seam"),), whole)
                case _:
                    pass


def _values(recipe: Recipe) -> Iterator[tuple[Value, Measured]]:
    """Every stated value, with the pair or single value that it is part of."""
    cells = (expression for _, expression in _cells(recipe))
    everywhere = (definition.expression for definition in definitions(recipe.sizes, recipe.measures))
    for expression in (*everywhere, *cells):
        for part in within(expression):
            if isinstance(part, Measured):
                yield part.first, part
                if part.second is not None:
                    yield part.second, part


def fractions(recipe: Recipe) -> Iterator[Slip]:
    """A 1/2 for a 1/4, and the other way round."""
    for value, whole in _values(recipe):
        for there, wrong in (("1/2", "1/4"), ("1/4", "1/2")):
            if re.search(rf"(^|\s){there}\b", value.typed):
                typed = value.typed.replace(there, wrong)
                yield Slip("1/2 for 1/4", ((value.span, typed),), (whole.span,))


def digits(recipe: Recipe) -> Iterator[Slip]:
    """One digit typed wrong."""
    for value, whole in _values(recipe):
        for match in re.finditer(r"\d", value.typed):
            at = value.span.start + match.start()
            new = str((int(match.group()) + 1) % 10)
            if new == "0" and value.typed[match.end() : match.end() + 1] in ("", " ", "/"):
                new = "8"
            place = Span(value.span.source, at, at + 1)
            yield Slip("a digit", ((place, new),), (whole.span,))


def units(recipe: Recipe) -> Iterator[Slip]:
    """An inch for a centimetre."""
    swapped = {"cm": "in", "in": "cm", "mm": "cm"}
    for value, whole in _values(recipe):
        if value.unit in swapped:
            typed = re.sub(r"\s*(cm|mm|in|inch|inches|\"|″)$", f" {swapped[value.unit]}", value.typed)
            if typed != value.typed:
                yield Slip("inch for centimetre", ((value.span, typed),), (whole.span,))


def rows(recipe: Recipe) -> Iterator[Slip]:
    """The sizes of two neighbouring rows swapped."""
    for one, other in zip(recipe.pieces, recipe.pieces[1:], strict=False):
        edits: list[tuple[Span, str]] = []
        for mine, theirs in ((one.width, other.width), (one.height, other.height)):
            if mine is not None and theirs is not None and mine.span.text != theirs.span.text:
                edits += [(mine.span, theirs.span.text), (theirs.span, mine.span.text)]
        if edits:
            yield Slip("rows swapped", tuple(edits), tuple(span for span, _ in edits))


def _statements(recipe: Recipe) -> Iterator[Statement]:
    for step in recipe.steps:
        for part in step.parts:
            yield from statements(part.content)


def counts(recipe: Recipe) -> Iterator[Slip]:
    """A count off by one, in the cutting list or in a statement."""
    numbers = [piece.cut for piece in recipe.pieces]
    for statement in _statements(recipe):
        if statement.result is not None and statement.result.count is not None:
            numbers.append(statement.result.count)
        for slot in statement.slots.values():
            numbers += [counted.count for counted in counted_in(slot) if counted.count is not None]
    for number in numbers:
        match number:
            case Number(value=value, span=span) if value.denominator == 1:
                yield Slip("count off by one", ((span, str(value + 1)),))
                if value > 1:
                    yield Slip("count off by one", ((span, str(value - 1)),))
            case _:
                pass


def wrong_names(recipe: Recipe) -> Iterator[Slip]:
    """A wrong piece in a statement: the next one of the cutting list."""
    pieces = [piece.name.text for piece in recipe.pieces]
    if len(pieces) < 2:
        return
    for statement in _statements(recipe):
        for slot in statement.slots.values():
            for name, measure in names_of(slot):
                if not measure:
                    others = [piece for piece in pieces if piece != name.text]
                    at = pieces.index(name.text) if name.text in pieces else 0
                    yield Slip("wrong piece", ((name.span, others[at % len(others)]),))


def wrong_edges(recipe: Recipe) -> Iterator[Slip]:
    """A wrong edge in a statement: its neighbour."""
    neighbour = {"top": "right", "right": "bottom", "bottom": "left", "left": "top"}
    for statement in _statements(recipe):
        for slot in statement.slots.values():
            caught = slot.of if isinstance(slot, Caught) else (slot,)
            for each in caught:
                if isinstance(each, EdgesOf) and len(each.edges) == 1 and each.edges[0] in neighbour:
                    edge = each.edges[0]
                    place = Span(each.span.source, each.span.start, each.span.start + len(edge))
                    yield Slip("wrong edge", ((place, neighbour[edge]),))


def steps_dropped(recipe: Recipe) -> Iterator[Slip]:
    """A step that is missing; its number stays, so that the list goes on."""
    for step in recipe.steps:
        if any(True for part in step.parts for _ in statements(part.content)):
            yield Slip("step dropped", ((step.span, f"{step.number}. Have a cup of tea.\n\n"),))


def pairs(recipe: Recipe) -> Iterator[Slip]:
    """A pair that disagrees: one half as it would be for half as much again."""
    for value, whole in _values(recipe):
        if whole.second is not None:
            unit = UNITS[value.unit]
            grown = value.value * Fraction(3, 2)
            new = measure_text(grown, unit.name)
            yield Slip("pair disagrees", ((value.span, new),), (whole.span,))


def typed(recipe: Recipe) -> Iterator[Slip]:
    """A number typed by hand in a step, where a measure stood in braces."""
    for run in told(recipe):
        if run.where is not Where.STEP:
            continue
        for inline in inlines(run.of):
            if isinstance(inline, Measure):
                if isinstance(inline.expression, Name) and inline.expression.text in _piece_names(recipe):
                    continue
                system = recipe.front.written_in
                new = "12.3 cm" if system is System.METRIC else "4 7/8 in"
                yield Slip("typed by hand", ((inline.span, new),))


def _piece_names(recipe: Recipe) -> frozenset[str]:
    return frozenset(piece.name.text for piece in recipe.pieces)


MAKERS: tuple[Maker, ...] = (
    allowances,
    fractions,
    digits,
    units,
    rows,
    counts,
    wrong_names,
    wrong_edges,
    steps_dropped,
    pairs,
    typed,
)
