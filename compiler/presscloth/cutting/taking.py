"""What one demand takes of one material in one system, each form as it is sold."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from math import ceil, floor
from pathlib import Path

from presscloth.cutting.demand import Counted, Demand
from presscloth.cutting.laid import OnCloth, Selling, on_roll, on_sheets
from presscloth.cutting.parts import DoesNotFit, Part, Sheet, Way
from presscloth.cutting.pieces import Pieces, as_cut, in_units, length_of, pieces_of
from presscloth.cutting.terms import Terms, has
from presscloth.frozen import dataclass
from presscloth.measure import Kind, Quantity, System
from presscloth.recipe.tree import Form, Material, NoteKind

THREAD_PER_SEAM = Fraction(5, 2)
"""Thread in a seam of stitch type 301, needle and bobbin together (common practice, no source)."""

THREAD_WASTED = Fraction(15, 100)
"""Ends and bobbins: the upper end of the published range of 10 to 15 % (apparel engineering)."""


@dataclass(frozen=True, slots=True)
class Bought:
    """What is needed of a material in one system, and what to buy.

    In mm or in, g or oz, or a plain number, as `kind` of the purchase says. No layout needs less than
    `bound` once it is rounded up as shops sell; `proved` says that `buy` is the least. `lengths` are
    those of zips as they are sold, one by one; `pieces` are those that are cut, with their numbers.
    """

    need: Fraction
    buy: Fraction
    bound: Fraction
    proved: bool
    cloths: tuple[OnCloth, ...] = ()
    lengths: tuple[Fraction, ...] = ()
    pieces: Counted = ()


Take = Callable[[Demand, System], Bought | None]
"""None: nothing is taken, or nobody can say how much."""


@dataclass(frozen=True, slots=True)
class Cutting:
    """How a material is cut: its terms, in strips or freely, how many articles at once, what is kept."""

    material: Material
    terms: Terms
    way: Way
    straightened: bool
    times: int
    kept_in: Path | None

    def wanted(self, demand: Demand) -> Counted:
        """The pieces that are cut of it, for all articles."""
        cut = demand.pieces.get(self.material.key, ())
        return tuple((piece, count * self.times) for piece, count in cut if count)

    def laid_out(self, demand: Demand, system: System) -> tuple[int, Pieces] | None:
        """The usable width and the pieces for it; None where nothing is cut."""
        cloth = self.terms.cloth(self.material, system)
        if cloth is None:
            return None
        pieces = pieces_of(self.wanted(demand), cloth, system)
        return (cloth.width, pieces) if pieces.parts else None

    def lengths(self, demand: Demand, system: System) -> list[tuple[Fraction, int]]:
        """The lengths of pieces that have a length only, each with how many are cut."""
        sides = ((piece.height or piece.width, count) for piece, count in self.wanted(demand))
        return [(side[system], count) for side, count in sides if side is not None]


@dataclass(frozen=True, slots=True)
class OffTheRoll:
    """Cloth by its length, from a layout."""

    cutting: Cutting
    step: Quantity

    def __call__(self, demand: Demand, system: System) -> Bought | None:
        cutting = self.cutting
        found = cutting.laid_out(demand, system)
        if found is None:
            return None
        width, pieces = found
        kept, step = cutting.terms.kept_after_washing(cutting.material), self.step[system]
        # The layout is that of the washed cloth; what is bought is longer by what it loses.
        selling = Selling(in_units(step, system) * kept, cutting.straightened)
        laid = on_roll(width, pieces, cutting.way, selling, cutting.kept_in)
        if isinstance(laid, DoesNotFit):
            return None  # which has been reported, before anything was laid out
        need = length_of(laid.length, system) / kept
        bound = min(laid.least * step, need)
        return Bought(
            need=need,
            buy=laid.bought * step,
            bound=bound,
            proved=laid.least >= laid.bought,
            cloths=laid.cloths,
            pieces=cutting.wanted(demand),
        )


@dataclass(frozen=True, slots=True)
class InSheets:
    """Sheets and fat quarters by their number, from layouts."""

    cutting: Cutting

    def __call__(self, demand: Demand, system: System) -> Bought | None:
        cutting = self.cutting
        found = cutting.laid_out(demand, system)
        long = cutting.terms.usable_length(cutting.material, system)
        if found is None or long is None:
            return None
        width, pieces = found
        laid = on_sheets(Sheet(width, long), pieces, cutting.way, cutting.kept_in)
        if isinstance(laid, DoesNotFit):
            return None
        number, least = Fraction(laid.bought), Fraction(laid.least)
        return Bought(
            need=number,
            buy=number,
            bound=least,
            proved=least >= number,
            cloths=laid.cloths,
            pieces=cutting.wanted(demand),
        )


@dataclass(frozen=True, slots=True)
class InLengths:
    """Tape that is sold in whole lengths: pieces are cut from each, or joined where the notes allow it."""

    cutting: Cutting
    length: Quantity

    def __call__(self, demand: Demand, system: System) -> Bought | None:
        each = self.cutting.lengths(demand, system)
        if not each:
            return None
        least = ceil(total(each) / self.length[system])
        wanted = self.cutting.wanted(demand)
        if has(self.cutting.material, NoteKind.JOINS_ALLOWED):
            return Bought(Fraction(least), Fraction(least), Fraction(least), True, pieces=wanted)
        sheet = Sheet(1, floor(in_units(self.length[system], system)))
        laid = on_sheets(sheet, self._as_strips(demand, system), Way.FREE, self.cutting.kept_in)
        if isinstance(laid, DoesNotFit):
            return None
        number, least = laid.bought, max(least, laid.least)
        return Bought(Fraction(number), Fraction(number), Fraction(least), least >= number, pieces=wanted)

    def _as_strips(self, demand: Demand, system: System) -> Pieces:
        """The pieces as strips one unit wide, so that lengths are laid out as sheets are."""
        parts = tuple(
            Part(piece.name, 1, as_cut(side, system), count)
            for piece, count in self.cutting.wanted(demand)
            if (side := piece.height or piece.width) is not None
        )
        return Pieces(parts, (), None, sum(part.area for part in parts), 0)


@dataclass(frozen=True, slots=True)
class ByLength:
    """Tape and elastic by their length in all, zips one by one in the lengths that are sold."""

    cutting: Cutting
    step: Quantity

    def __call__(self, demand: Demand, system: System) -> Bought | None:
        each, step = self.cutting.lengths(demand, system), self.step[system]
        if not each:
            return None
        need, wanted = total(each), self.cutting.wanted(demand)
        if self.cutting.material.form is not Form.ZIP:
            return Bought(need, in_steps(need, step), need, True, pieces=wanted)
        lengths = tuple(in_steps(one, step) for one, count in each for _ in range(count))
        return Bought(need, sum(lengths, Fraction(0)), need, True, lengths=lengths, pieces=wanted)


@dataclass(frozen=True, slots=True)
class ByNumber:
    """Notions by their number, in the packs in which they are sold."""

    cutting: Cutting
    step: Quantity | None

    def __call__(self, demand: Demand, system: System) -> Bought | None:
        need = Fraction(sum(count for _, count in self.cutting.wanted(demand)))
        if not need:
            return None
        by = self.step[system] if self.step is not None and self.step.kind is Kind.NUMBER else Fraction(1)
        return Bought(need, in_steps(need, by), need, True)


@dataclass(frozen=True, slots=True)
class ByWeight:
    """Fillings by their weight."""

    cutting: Cutting
    step: Quantity

    def __call__(self, demand: Demand, system: System) -> Bought | None:
        weight = demand.filled.get(self.cutting.material.key)
        if weight is None:
            return None
        need = weight[system] * self.cutting.times
        return Bought(need, in_steps(need, self.step[system]), need, True)


@dataclass(frozen=True, slots=True)
class BySeams:
    """Thread by the seams that it sews."""

    cutting: Cutting
    step: Quantity

    def __call__(self, demand: Demand, system: System) -> Bought | None:
        if demand.stitched is None:
            return None
        need = demand.stitched[system] * self.cutting.times * THREAD_PER_SEAM * (1 + THREAD_WASTED)
        return Bought(need, in_steps(need, self.step[system]), need, True)


def total(lengths: Sequence[tuple[Fraction, int]]) -> Fraction:
    """All lengths together."""
    return sum((each * count for each, count in lengths), Fraction(0))


def in_steps(need: Fraction, step: Fraction) -> Fraction:
    """The next whole number of steps."""
    return ceil(need / step) * step
