"""Notes on materials and pieces: those that the compiler knows, and text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import ClassVar

from presscloth.problems import Problem, Problems, Severity
from presscloth.recipe.definitions import ReadInlines
from presscloth.recipe.expression import Broken, Expression
from presscloth.recipe.reckoning import expression
from presscloth.recipe.tree import Note, NoteKind
from presscloth.recipe.words import nearest
from presscloth.source import Passage

MATERIAL_NOTES = (
    NoteKind.ONE_WAY,
    NoteKind.SHRINKS,
    NoteKind.REPEAT,
    NoteKind.JOINS_ALLOWED,
    NoteKind.CUT_IN_STRIPS,
    NoteKind.STRAIGHTENED,
)
PIECE_NOTES = (
    NoteKind.MEASURE_FIRST,
    NoteKind.ANY_GRAIN,
    NoteKind.ON_THE_FOLD,
    NoteKind.IN_PAIRS,
    NoteKind.SPARE,
)
_WITH_AMOUNT = (NoteKind.SHRINKS, NoteKind.REPEAT, NoteKind.SPARE)
_END = re.compile(r"[,;](?=\s)")


class NoteNearlyKnown(Problem):
    """A note nearly matches one that the compiler knows.

    As text it is only printed; spelt as the compiler knows it, it also decides how the cloth is laid
    out or what is cut.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Notes      |
        |-------|------|-----|---------------|---------------|------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) | any grains |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Notes     |
        |-------|------|-----|---------------|---------------|-----------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) | any grain |
    """

    severity: ClassVar[Severity] = Severity.WARNING
    meant: str

    def message(self) -> str:
        return f"the note `{self.span.quoted}` is nearly `{self.meant}`, and is only printed as it stands"

    def hint(self) -> str:
        return f"write `{self.meant}` if that is meant, or say it in other words"


class NoteWithoutAmount(Problem):
    """A note that wants a number or a measure has none.

    Fails:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        | Notes   |
        |-----|----------|--------|----------------|----------------|---------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) | shrinks |

    Passes:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        | Notes       |
        |-----|----------|--------|----------------|----------------|-------------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) | shrinks 3 % |
    """

    kind: str

    def message(self) -> str:
        return f"the note `{self.kind}` does not say how much"

    def hint(self) -> str:
        example = {"shrinks": "shrinks 3 %", "repeat": "repeat 32 cm (12 1/2 in)"}.get(self.kind, "spare 2")
        return f"write it with its amount, for example `{example}`"


def read_notes(
    passage: Passage, known: Sequence[NoteKind], inlines: ReadInlines, problems: Problems
) -> tuple[Note, ...]:
    """The notes of a cell, which stand between commas or semicolons."""
    notes = []
    start = 0
    for match in [*_END.finditer(passage.text), None]:
        part = passage[start : match.start() if match else len(passage.text)].strip()
        start = match.end() if match else start
        if part.text:
            notes.append(_note(part, known, inlines, problems))
    return tuple(notes)


def _note(part: Passage, known: Sequence[NoteKind], inlines: ReadInlines, problems: Problems) -> Note:
    words = part.text.casefold()
    for kind in known:
        if words == kind.value and kind not in _WITH_AMOUNT:
            return Note(kind, None, inlines(part), part.span())
        if kind in _WITH_AMOUNT and (words == kind.value or words.startswith(kind.value + " ")):
            amount = _amount(kind, part[len(kind.value) :].strip(), part, problems)
            return Note(kind, amount, inlines(part), part.span())
    meant = nearest(re.sub(r"[\d./%].*$", "", words).strip(), [kind.value for kind in known])
    if meant is not None:
        problems.add(NoteNearlyKnown(span=part.span(), meant=meant))
    return Note(None, None, inlines(part), part.span())


def _amount(kind: NoteKind, amount: Passage, part: Passage, problems: Problems) -> Expression:
    if not amount.text:
        problems.add(NoteWithoutAmount(span=part.span(), kind=kind.value))
        return Broken(part.span())
    return expression(amount, problems)
