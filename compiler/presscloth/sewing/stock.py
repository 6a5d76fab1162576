"""What there is at a moment: how many of each thing, how each is, and how it was before."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from presscloth.frozen import dataclass
from presscloth.recipe.words import look_up
from presscloth.sewing.construction import Stood
from presscloth.sewing.things import Thing
from presscloth.source import Span


@dataclass
class Lot:
    """Some things that are all alike. `thing` is None where what made them could not be carried out."""

    thing: Thing | None
    count: int
    made: int
    piece: bool


@dataclass(frozen=True, slots=True)
class Drawn:
    """What was taken from the stock: `short` of what was wanted, of `made` in all with `left` before."""

    thing: Thing | None
    piece: bool
    made: int
    left: int
    short: bool


def _first(lots: list[Lot]) -> Thing | None:
    """The thing of the first lot of which something is left, else of the first."""
    return next((lot.thing for lot in lots if lot.count), lots[0].thing if lots else None)


class Stock:
    """Lots by name, each by the material's key where it matters, and every state that a thing was in."""

    def __init__(self, names: Iterable[str]) -> None:
        self.names: Mapping[str, str] = {name: name for name in names}
        self._lots: dict[str, dict[str, Lot]] = {}
        self.states: list[Stood] = []
        self.used: dict[tuple[str, str], int] = {}

    def called(self, name: str) -> str:
        """The author's spelling of a name."""
        return look_up(name, self.names) or name

    def cut(self, name: str, key: str, thing: Thing, count: int, row: Span) -> None:
        self._lots.setdefault(name, {})[key] = Lot(thing, count, count, piece=True)
        made = sum(lot.made for lot in self._lots[name].values())
        self.states.append(Stood(name, 0, made, thing, row))

    def has(self, name: str) -> bool:
        """Whether there are or were things of this name."""
        return name in self._lots

    def left(self, name: str, key: str | None = None) -> int:
        return sum(lot.count for lot in self._among(name, key))

    def made(self, name: str) -> int:
        """How many there were of a name when it was last made, or cut."""
        return next((state.count for state in reversed(self.states) if state.name == name), 0)

    def thing(self, name: str, key: str | None = None) -> Thing | None:
        """The thing of a name as it is now, or as it was when it was used up."""
        return _first(self._among(name, key))

    def spoilt(self, name: str) -> bool:
        return any(lot.thing is None for lot in self._lots.get(name, {}).values())

    def _among(self, name: str, key: str | None) -> list[Lot]:
        lots = self._lots.get(name, {})
        if key is None or len(lots) == 1:
            return list(lots.values())
        return [lot for of, lot in lots.items() if of == key] or list(lots.values())

    def take(self, name: str, key: str | None, count: int) -> Drawn:
        """Take so many, or as many as there are."""
        among = self._among(name, key)
        thing, left, wanted = _first(among), sum(lot.count for lot in among), count
        made = sum(lot.made for lot in among)
        piece = all(lot.piece for lot in among)
        for of, lot in self._lots[name].items():
            if lot in among and wanted:
                drawn = min(wanted, lot.count)
                lot.count -= drawn
                wanted -= drawn
                if lot.piece:
                    self.used[name, of] = self.used.get((name, of), 0) + drawn
        return Drawn(thing, piece, made, left, short=wanted > 0)

    def put(self, name: str, thing: Thing | None, count: int, step: int, span: Span) -> Stood:
        """Put new things into the stock; none of that name may be left."""
        self._lots[name] = {"": Lot(thing, count, count, piece=False)}
        stood = Stood(name, step, count, thing, span)
        self.states.append(stood)
        return stood

    def add(self, name: str, key: str, thing: Thing | None, count: int, step: int, span: Span) -> Stood:
        """Put changed things beside others of their name, which have another key."""
        self._lots[name][key] = Lot(thing, count, count, piece=False)
        stood = Stood(name, step, count, thing, span)
        self.states.append(stood)
        return stood

    def sewn_left(self) -> Iterable[tuple[str, int, Thing]]:
        """What was sewn and is left; what could not be carried out is not counted."""
        for name, lots in self._lots.items():
            for lot in lots.values():
                if lot.count and not lot.piece and lot.thing is not None:
                    yield name, lot.count, lot.thing
