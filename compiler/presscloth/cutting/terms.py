"""What a row of the materials says of its cloth and of its sale, worked out in one size."""

from __future__ import annotations

from dataclasses import field
from fractions import Fraction
from math import floor

from presscloth.cutting.pieces import Cloth, in_units, units, usable
from presscloth.edition import Evaluator
from presscloth.frozen import dataclass
from presscloth.measure import Kind, Quantity, System, convert
from presscloth.measure.units import UNITS
from presscloth.recipe.expression import Broken, Expression, Measured, Value
from presscloth.recipe.materials import BY_LENGTH, FIXED
from presscloth.recipe.tree import Material, Note, NoteKind

METRE, YARD = Fraction(1000), Fraction(9144, 10)
"""mm; NIST SP 811, Appendix B.8."""


@dataclass(frozen=True, slots=True)
class Terms:
    """Answers what a material says; None where it does not, or what it says is broken."""

    evaluator: Evaluator
    _cloths: dict[tuple[str, System], Cloth | None] = field(default_factory=dict, compare=False, repr=False)

    def step(self, material: Material) -> Quantity | None:
        """The step in which it is sold, greater than nothing in both systems."""
        if material.sold_by is None:
            return None
        step = self.evaluator.step(material.sold_by)
        return None if isinstance(step, Broken) or min(step.metric, step.imperial) <= 0 else step

    def cloth(self, material: Material, system: System) -> Cloth | None:
        """What its layouts must keep to in one system; asked by every demand, and worked out once."""
        key = material.key, system
        if key not in self._cloths:
            self._cloths[key] = self._cloth(material, system)
        return self._cloths[key]

    def _cloth(self, material: Material, system: System) -> Cloth | None:
        width = self._side(material, material.width)
        if width is None:
            return None
        repeat = self._noted(material, NoteKind.REPEAT)
        return Cloth(
            width=usable(width, system, self.kept_after_washing(material)),
            one_way=has(material, NoteKind.ONE_WAY),
            repeat=0 if repeat is None else units(repeat[system], system),
        )

    def width(self, material: Material) -> Quantity | None:
        return self._side(material, material.width)

    def length(self, material: Material) -> Quantity | None:
        """The length of a sheet, or of a tape that is sold in whole lengths."""
        return self._side(material, material.length)

    def usable_length(self, material: Material, system: System) -> int | None:
        """The length of a washed sheet in 1/80 mm."""
        long = self.length(material)
        if long is None:
            return None
        return floor(in_units(long[system], system) * self.kept_after_washing(material))

    def kept_after_washing(self, material: Material) -> Fraction:
        """The part of a length that is left after washing."""
        shrinks = self._noted(material, NoteKind.SHRINKS)
        return Fraction(1) if shrinks is None or not 0 <= shrinks.metric < 1 else 1 - shrinks.metric

    def _side(self, material: Material, expression: Expression | None) -> Quantity | None:
        """A side of cloth as it is sold.

        Sheets, fat quarters and tapes in whole lengths are made for one market or the other, by the metre
        or by the yard: half a metre here is half a yard there (common practice). What each measures is
        stated, so the two need not be the same length; but they are no farther apart than a metre and a
        yard, or one of them is misprinted.
        """
        if expression is None:
            return None
        if material.form in (*FIXED, *BY_LENGTH) and _pair_of_lengths(expression):
            sold = self.evaluator.step(expression)
            if isinstance(sold, Quantity) and _as_metre_and_yard(sold):
                return sold
        value = self.evaluator.of_kind(expression, Kind.LENGTH, f"`{expression.span.text}`")
        return None if isinstance(value, Broken) else value

    def _noted(self, material: Material, kind: NoteKind) -> Quantity | None:
        note = _note(material, kind)
        if note is None or note.amount is None:
            return None
        value = self.evaluator.value(note.amount)
        return None if isinstance(value, Broken) else value


def _pair_of_lengths(expression: Expression) -> bool:
    match expression:
        case Measured(first=first, second=Value() as second):
            return UNITS[first.unit].kind is UNITS[second.unit].kind is Kind.LENGTH
        case _:
            return False


def _as_metre_and_yard(pair: Quantity) -> bool:
    """Whether a pair of lengths is no farther apart than a metre and a yard are."""
    metric, imperial = pair.metric, convert(pair.imperial, Kind.LENGTH, System.METRIC)
    shorter, longer = sorted((metric, imperial))
    return shorter * METRE >= longer * YARD


def _note(material: Material, kind: NoteKind) -> Note | None:
    return next((note for note in material.notes if note.kind is kind), None)


def has(material: Material, kind: NoteKind) -> bool:
    """Whether a material has a note that the compiler knows."""
    return _note(material, kind) is not None
