"""Words that the language keeps for itself, and how names are compared."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from typing import Generic, TypeVar

from presscloth.measure import SPELLINGS

T = TypeVar("T")

EDGES = ("left", "right", "top", "bottom")
SIDES = ("width", "height", "depth", "around", "length", "count")
PARTS = frozenset((*EDGES, *SIDES, "long side", "finished"))

SMALL_WORDS = frozenset(
    "of to by in into on with from at and over through between twice half wide high".split()
)
"""The words between the things in a pattern; none of them can stand in a name."""

FUNCTIONS = frozenset(("min", "max", "sqrt", "pi", "round", "exactly", "within"))


def forms(name: str) -> tuple[str, ...]:
    """The spellings under which a name is found: as it is, and with its plural taken off or put on."""
    word = " ".join(name.casefold().split())
    found = [word]
    if word.endswith("s"):
        found.append(word[:-1])
    if word.endswith("es"):
        found.append(word[:-2])
    found += [word + "s", word + "es"]
    return tuple(found)


def look_up(name: str, among: Mapping[str, T]) -> T | None:
    """Find a name: the exact spelling wins, then case and a plural do not matter."""
    return among[name] if name in among else Names(among).find(name)


class Names(Generic[T]):
    """Names that are gathered one after another and looked up in between, as `look_up` does."""

    def __init__(self, known: Mapping[str, T] | None = None) -> None:
        self._spelt: dict[str, T] = {}
        self._folded: dict[str, T] = {}
        for name, value in (known or {}).items():
            self.add(name, value)

    def add(self, name: str, value: T) -> None:
        """Take a name in; of two that differ by capitals alone the first is found by other spellings."""
        self._spelt[name] = value
        self._folded.setdefault(name.casefold(), value)

    def find(self, name: str) -> T | None:
        if name in self._spelt:
            return self._spelt[name]
        return next((self._folded[form] for form in forms(name) if form in self._folded), None)


def nearest(name: str, among: Iterable[str]) -> str | None:
    """The name that somebody who typed `name` probably meant: `hem` for `hme`, `seam` for `sem`."""
    known = {other.casefold(): other for other in among}
    letters = sorted(name.casefold())
    found = [other for other in known if sorted(other) == letters]
    found = found or get_close_matches(name.casefold(), known, n=1, cutoff=0.72)
    return known[found[0]] if found else None


def why_no_name(name: str) -> str | None:
    """Why these words cannot be a name, in words that end `cannot be a name: …`; None if they can."""
    words = name.split(" ")
    if name.casefold() in PARTS:
        return f"`{name}` always means a part of a thing"
    for word in words:
        small = word.casefold()
        if not word[:1].isalpha():
            return f"`{word}` does not begin with a letter"
        if small in SMALL_WORDS or small in FUNCTIONS:
            return f"`{word}` has a meaning of its own in the language"
        if word in SPELLINGS:
            return f"`{word}` is a unit"
    return None
