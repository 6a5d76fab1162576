"""Transform an edition into what is to be bought: a quantity of each material, in both systems.

Every form is worked out as it is sold. Each system is worked out by itself, from the sizes that its
own handout prints, and rounded up in its own steps.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from presscloth.cutting.checker import check
from presscloth.cutting.laying import lay_out
from presscloth.cutting.parts import DoesNotFit, Layout, Part, Roll, Sheet, Way
from presscloth.cutting.pieces import Cloth, length_of, parts_of, units
from presscloth.cutting.problems import WiderThanCloth
from presscloth.cutting.sheets import lay_out_sheets
from presscloth.edition import CutPiece, Edition, Evaluator
from presscloth.measure import Kind, Quantity, System, printed
from presscloth.problems import Label, Problems
from presscloth.recipe.expression import Broken, Expression
from presscloth.recipe.materials import BY_LENGTH, FIXED, LAID_OUT
from presscloth.recipe.tree import Form, Material, Note, NoteKind


@dataclass(frozen=True, slots=True)
class Bought:
    """What is needed of a material in one system, and what to buy.

    In mm or in, g or oz, or a plain number, as `kind` of the purchase says. No layout needs less than
    `bound` once it is rounded up as shops sell; `proved` says that `buy` is the least.
    """

    need: Fraction
    buy: Fraction
    bound: Fraction
    proved: bool
    layouts: tuple[Layout, ...] = ()
    parts: tuple[Part, ...] = ()


@dataclass(frozen=True, slots=True)
class Purchase:
    """A material with what to buy of it, for each system.

    `lengths` are those of zips, one by one, with the step in which they are sold.
    """

    material: Material
    kind: Kind
    by_system: Mapping[System, Bought]
    way: Way = Way.FREE
    lengths: tuple[tuple[Quantity, Quantity], ...] = ()

    def sold_lengths(self, system: System) -> tuple[Fraction, ...]:
        """The lengths in which single things (zips) are bought, in steps of the shop."""
        return tuple(_in_steps(length[system], step[system]) for length, step in self.lengths)

    def quantity(self) -> Quantity:
        """What to buy, as one quantity."""
        metric, imperial = (self.by_system[s].buy for s in (System.METRIC, System.IMPERIAL))
        return Quantity(self.kind, metric, imperial)


Counts = Mapping[tuple[str, str], int]
"""How many of a piece are cut from a material, by their names; what is missing is as the list says."""


class Buyer:
    """Works out what an edition needs. `filled` are the weights that statements use, by key."""

    def __init__(
        self,
        edition: Edition,
        evaluator: Evaluator,
        problems: Problems,
        *,
        filled: Mapping[str, Quantity],
        stitched: Quantity | None,
        left_out: frozenset[str] = frozenset(),
    ) -> None:
        self._edition = edition
        self._evaluator = evaluator
        self._problems = problems
        self._filled = filled
        self._stitched = stitched
        self._left_out = left_out

    def purchases(self) -> Iterator[Purchase]:
        """What to buy of each material that this size uses, in the order of the recipe."""
        for material in self._edition.recipe.materials:
            purchase = self._purchase(material)
            if purchase is not None:
                yield purchase

    def _pieces(self, key: str) -> tuple[tuple[CutPiece, int], ...]:
        return tuple(
            (piece, piece.count + piece.spare)
            for piece in self._edition.pieces
            if key in piece.keys and piece.name not in self._left_out
        )

    def _purchase(self, material: Material) -> Purchase | None:
        pieces = self._pieces(material.key)
        if material.form is Form.FILLING:
            return self._by_weight(material)
        if material.form is Form.THREAD:
            return self._by_seams(material)
        if not pieces:
            return None
        if material.form in FIXED:
            return self._in_sheets(material, pieces)
        if material.form in LAID_OUT:
            return self._off_the_roll(material, pieces)
        if material.form in BY_LENGTH:
            return self._by_length(material, pieces)
        return self._by_count(material, pieces)

    # Laid out on cloth.

    def _off_the_roll(self, material: Material, pieces: Sequence[tuple[CutPiece, int]]) -> Purchase | None:
        step = self._step(material)
        if step is None:
            return None
        way = Way.STRIPS if _has(material, NoteKind.CUT_IN_STRIPS) else Way.FREE
        found: dict[System, Bought] = {}
        for system in System:
            cloth = self._cloth(material, system)
            if cloth is None:
                return None
            parts = parts_of(pieces, cloth, system)
            shrunk = self._kept_after_washing(material)
            # The layout is that of the washed cloth; what is bought is longer by what it loses.
            smaller = int(units(step[system], system) * shrunk)
            cut = lay_out(Roll(cloth.width), parts, way=way, step=max(1, smaller))
            if isinstance(cut, DoesNotFit):
                self._too_wide(material, pieces, parts, cut, system)
                return None
            _must_be_right(parts, (cut.layout,), cut.need, strips=way is Way.STRIPS)
            need, bound = (length_of(n, system) / shrunk for n in (cut.need, cut.bound))
            buy = _in_steps(need, step[system])
            least = _in_steps(bound, step[system])
            found[system] = Bought(need, buy, min(bound, need), least >= buy, (cut.layout,), parts)
        return Purchase(material, Kind.LENGTH, found, way)

    def _in_sheets(self, material: Material, pieces: Sequence[tuple[CutPiece, int]]) -> Purchase | None:
        found: dict[System, Bought] = {}
        for system in System:
            cloth = self._cloth(material, system)
            length = self._length(material.length)
            if cloth is None or length is None:
                return None
            parts = parts_of(pieces, cloth, system)
            kept = self._kept_after_washing(material)
            sheet = Sheet(cloth.width, int(units(length[system], system) * kept))
            cut = lay_out_sheets(sheet, parts)
            if isinstance(cut, DoesNotFit):
                self._too_wide(material, pieces, parts, cut, system)
                return None
            _must_be_right(parts, cut.layouts, sheet.length, strips=False)
            bought, bound = Fraction(cut.bought), Fraction(cut.bound)
            found[system] = Bought(bought, bought, bound, cut.proved, cut.layouts, parts)
        return Purchase(material, Kind.NUMBER, found)

    def _cloth(self, material: Material, system: System) -> Cloth | None:
        width = self._length(material.width)
        if width is None:
            return None
        usable = int(units(width[system], system) * self._kept_after_washing(material))
        repeat = self._noted(material, NoteKind.REPEAT)
        height = 0 if repeat is None else units(repeat[system], system)
        return Cloth(usable, _has(material, NoteKind.ONE_WAY), height)

    def _kept_after_washing(self, material: Material) -> Fraction:
        """The part of a length that is left after washing."""
        shrinks = self._noted(material, NoteKind.SHRINKS)
        return Fraction(1) if shrinks is None or shrinks.metric >= 1 else 1 - shrinks.metric

    def _too_wide(
        self,
        material: Material,
        pieces: Sequence[tuple[CutPiece, int]],
        parts: Sequence[Part],
        misfit: DoesNotFit,
        system: System,
    ) -> None:
        by_name = {piece.name: piece for piece, _ in pieces}
        for number in misfit.parts:
            part = parts[number]
            piece = by_name[part.name]
            width = self._length(material.width)
            assert width is not None
            across = length_of(part.width, system)
            other = length_of(part.height, system)
            length = Quantity(Kind.LENGTH, across, across)
            problem = WiderThanCloth(
                span=piece.span,
                piece=piece.name,
                across=printed(length, system).text,
                material=material.name,
                width=printed(width, system).text,
                turns=other <= width[system] and not _has(material, NoteKind.ONE_WAY),
                labels=(Label(material.span, "the cloth"),),
                systems=(system.value,),
                sizes=(self._edition.size.name,),
            )
            self._problems.add(problem)

    # Everything else.

    def _by_length(self, material: Material, pieces: Sequence[tuple[CutPiece, int]]) -> Purchase | None:
        """Tape and elastic by their length in all, zips one by one in the lengths that are sold."""
        step = self._step(material)
        if step is None:
            return None
        lengths = [(piece.height or piece.width, count) for piece, count in pieces]
        found: dict[System, Bought] = {}
        for system in System:
            each = [(length[system], count) for length, count in lengths if length is not None]
            need = sum((length * count for length, count in each), Fraction(0))
            if material.form is Form.ZIP:
                buy = sum((_in_steps(one, step[system]) * count for one, count in each), Fraction(0))
            else:
                buy = _in_steps(need, step[system])
            found[system] = Bought(need, buy, need, True)
        single = tuple(
            (length, step) for length, count in lengths if length is not None for _ in range(count)
        )
        return Purchase(material, Kind.LENGTH, found, lengths=single if material.form is Form.ZIP else ())

    def _by_count(self, material: Material, pieces: Sequence[tuple[CutPiece, int]]) -> Purchase:
        need = Fraction(sum(count for _, count in pieces))
        step = None if material.sold_by is None else self._evaluator.step(material.sold_by)
        found = {}
        for system in System:
            by = step[system] if isinstance(step, Quantity) and step.kind is Kind.NUMBER else Fraction(1)
            found[system] = Bought(need, _in_steps(need, by), need, True)
        return Purchase(material, Kind.NUMBER, found)

    def _by_weight(self, material: Material) -> Purchase | None:
        weight = self._filled.get(material.key)
        step = self._step(material)
        if weight is None or step is None or step.kind is not Kind.WEIGHT:
            return None
        found = {s: Bought(weight[s], _in_steps(weight[s], step[s]), weight[s], True) for s in System}
        return Purchase(material, Kind.WEIGHT, found)

    def _by_seams(self, material: Material) -> Purchase | None:
        """Thread: 2.5 times the seams (stitch type 301, common practice) and 15 % waste (published range)."""
        step = self._step(material)
        if self._stitched is None or step is None or step.kind is not Kind.LENGTH:
            return None
        found = {}
        for system in System:
            need = self._stitched[system] * Fraction(5, 2) * Fraction(115, 100)
            found[system] = Bought(need, _in_steps(need, step[system]), need, True)
        return Purchase(material, Kind.LENGTH, found)

    # Values.

    def _length(self, expression: Expression | None) -> Quantity | None:
        if expression is None:
            return None
        value = self._evaluator.of_kind(expression, Kind.LENGTH, f"`{expression.span.text}`")
        return None if isinstance(value, Broken) else value

    def _step(self, material: Material) -> Quantity | None:
        """The step in which it is sold, greater than nothing in both systems."""
        if material.sold_by is None:
            return None
        step = self._evaluator.step(material.sold_by)
        if isinstance(step, Broken) or step.metric <= 0 or step.imperial <= 0:
            return None
        return step

    def _noted(self, material: Material, kind: NoteKind) -> Quantity | None:
        note = _note(material, kind)
        if note is None or note.amount is None:
            return None
        value = self._evaluator.value(note.amount)
        return None if isinstance(value, Broken) else value


def _must_be_right(parts: Sequence[Part], layouts: Sequence[Layout], length: int, *, strips: bool) -> None:
    """Every layout passes the independent checker; one that does not is a fault of the engine."""
    faults = check(parts, layouts, length=length, strips=strips)
    if faults:
        raise AssertionError(f"a wrong layout: {faults[0]}")


def _in_steps(need: Fraction, step: Fraction) -> Fraction:
    """The next whole number of steps."""
    return ceil(need / step) * step


def _note(material: Material, kind: NoteKind) -> Note | None:
    return next((note for note in material.notes if note.kind is kind), None)


def _has(material: Material, kind: NoteKind) -> bool:
    return _note(material, kind) is not None
