"""Transform what an edition demands into what is to be bought of each material, in both systems.

Every form is worked out as it is sold. Each system is worked out by itself, from the sizes that its
own handout prints, and rounded up in its own steps. What is bought is enough for every way through
the steps and for every choice that is left to the reader; what only optional steps need is said apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import field

from presscloth.cutting.demand import Demand
from presscloth.cutting.parts import Way
from presscloth.cutting.taking import (
    Bought,
    ByLength,
    ByNumber,
    BySeams,
    ByWeight,
    Cutting,
    InLengths,
    InSheets,
    OffTheRoll,
    Take,
)
from presscloth.cutting.terms import Terms, has
from presscloth.cutting.workshop import PLAIN, Workshop
from presscloth.frozen import dataclass
from presscloth.measure import Kind, Quantity, System, length
from presscloth.recipe.materials import BY_LENGTH, FIXED, LAID_OUT
from presscloth.recipe.tree import Form, Material, NoteKind

THREAD_STEP = length(1000, 36)
"""The step in which thread is counted where nothing says how it is sold: a metre, a yard."""

BySystem = Mapping[System, Bought]


@dataclass(frozen=True, slots=True)
class Purchase:
    """A material with what to buy of it, for each system.

    `with_optional` is what to buy instead where all that is optional is made too, if that is more, and
    `with_room` how that is cut where it takes no more; `optional` names the pieces that make the
    difference.
    """

    material: Material
    kind: Kind
    by_system: BySystem
    way: Way = Way.FREE
    with_optional: BySystem = field(default_factory=dict)
    optional: tuple[str, ...] = ()
    with_room: BySystem = field(default_factory=dict)

    def quantity(self) -> Quantity:
        """What to buy, as one quantity."""
        metric, imperial = (self.by_system[system].buy for system in (System.METRIC, System.IMPERIAL))
        return Quantity(self.kind, metric, imperial)

    def full(self) -> Purchase:
        """The purchase with all that is optional."""
        return Purchase(self.material, self.kind, self.with_optional or self.by_system, self.way)

    def to_cut(self) -> Purchase:
        """The purchase as it is cut: with what is optional where there is room for it."""
        return Purchase(self.material, self.kind, self.with_room or self.by_system, self.way)


@dataclass(frozen=True, slots=True)
class Buyer:
    """Works out what demands come to. `times` is how many articles are made, laid out together."""

    materials: Sequence[Material]
    demands: Sequence[Demand]
    terms: Terms
    workshop: Workshop = PLAIN
    times: int = 1

    def purchases(self) -> Iterator[Purchase]:
        """What to buy of each material that this size uses, in the order of the recipe."""
        for material in self.materials:
            purchase = self._purchase(material)
            if purchase is not None:
                yield purchase

    def _purchase(self, material: Material) -> Purchase | None:
        cutting = self._cutting(material)
        sold = self._sold(cutting)
        if sold is None:
            return None
        kind, take = sold
        asked = _distinct(self.demands, material)
        taken = [(demand.optional, _in_both(take, demand)) for demand in asked]
        everything = _greatest([bought for _, bought in taken])
        enough = _greatest([bought for optional, bought in taken if not optional])
        if everything is None:
            return None
        if enough is None:
            return Purchase(material, kind, everything, cutting.way)
        optional = self._only_optional(material)
        if all(everything[system].buy <= enough[system].buy for system in System):
            return Purchase(material, kind, enough, cutting.way, {}, optional, everything if optional else {})
        return Purchase(material, kind, enough, cutting.way, everything, optional)

    def _cutting(self, material: Material) -> Cutting:
        """How a material is cut: as its notes say, or else as the workshop cuts its cloth."""
        cloth = material.form in (Form.FABRIC, Form.FAT_QUARTER)
        strips = has(material, NoteKind.CUT_IN_STRIPS) or (cloth and self.workshop.strips)
        straightened = has(material, NoteKind.STRAIGHTENED) or (cloth and self.workshop.straightened)
        way = Way.STRIPS if strips else Way.FREE
        return Cutting(material, self.terms, way, straightened, self.times, self.workshop.kept_in)

    def _sold(self, cutting: Cutting) -> tuple[Kind, Take] | None:
        """What is counted of a material, and how what a demand takes of it is worked out."""
        form = cutting.material.form
        step = self.terms.step(cutting.material)
        if form in FIXED:
            return Kind.NUMBER, InSheets(cutting)
        if form is Form.NOTION:
            return Kind.NUMBER, ByNumber(cutting, step)
        if form is Form.THREAD:
            return Kind.LENGTH, BySeams(cutting, THREAD_STEP if step is None else step)
        if form in BY_LENGTH and (whole := self.terms.length(cutting.material)) is not None:
            return Kind.NUMBER, InLengths(cutting, whole)
        wanted = Kind.WEIGHT if form is Form.FILLING else Kind.LENGTH
        if step is None or step.kind is not wanted:
            return None
        if form in LAID_OUT:
            return wanted, OffTheRoll(cutting, step)
        return wanted, ByWeight(cutting, step) if form is Form.FILLING else ByLength(cutting, step)

    def _only_optional(self, material: Material) -> tuple[str, ...]:
        """The pieces of a material of which more are cut where something optional is made."""
        most: dict[bool, dict[str, int]] = {True: {}, False: {}}
        for demand in self.demands:
            for piece, count in demand.pieces.get(material.key, ()):
                so_far = most[demand.optional]
                so_far[piece.name] = max(count, so_far.get(piece.name, 0))
        return tuple(name for name, count in most[True].items() if count > most[False].get(name, 0))


def _distinct(demands: Sequence[Demand], material: Material) -> tuple[Demand, ...]:
    """Demands without those that ask the same of a material as an earlier one, or a part of another's.

    What holds all pieces of one demand holds those of another that wants no other and no more of them.
    """
    found: dict[object, Demand] = {}
    for demand in demands:
        found.setdefault((demand.optional, demand.asks(material)), demand)
    each = tuple(found.values())
    return tuple(one for one in each if not any(_holds(other, one, material) for other in each))


def _holds(whole: Demand, part: Demand, material: Material) -> bool:
    """Whether a demand asks more of a material than another, which need not be worked out then."""
    return (part.optional or not whole.optional) and whole.asks_more(part, material)


def _in_both(take: Take, demand: Demand) -> Mapping[System, Bought | None]:
    return {system: take(demand, system) for system in System}


def _greatest(taken: Sequence[Mapping[System, Bought | None]]) -> BySystem | None:
    """The greatest purchase that any demand asks for, in each system by itself."""
    found: dict[System, Bought] = {}
    for system in System:
        known = [bought for each in taken if (bought := each[system]) is not None]
        if not known:
            return None
        found[system] = max(known, key=lambda bought: (bought.buy, bought.need))
    return found
