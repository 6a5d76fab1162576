"""Text on a terminal: how wide characters stand, what must not reach it as it is, and colour."""

from __future__ import annotations

import unicodedata
from enum import Enum

from presscloth.frozen import dataclass

TAB = 4
"""Columns from one tab stop to the next, as a source line is shown."""

_TURNING = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""Marks that turn the direction of writing, with which a line can be made to look like another."""


def printable(text: str) -> str:
    """The text with every character made visible that would steer a terminal, tabs and line ends apart."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_visible(character) for character in text)


def _visible(character: str) -> str:
    if character in "\n\t":
        return character
    if character < " ":
        return chr(ord("␀") + ord(character))
    if character in _TURNING or unicodedata.category(character) in ("Cc", "Cs", "Zl", "Zp"):
        return "\N{REPLACEMENT CHARACTER}"
    return character


def columns(character: str) -> int:
    """How many columns a character takes: two for a wide one, none for one that joins the one before."""
    if unicodedata.category(character) in ("Mn", "Me", "Cf"):
        return 0
    return 2 if unicodedata.east_asian_width(character) in ("W", "F") else 1


@dataclass(frozen=True, slots=True)
class Laid:
    """A line laid out in columns: what is shown for each character, and the column where it begins.

    `at` has one entry more, where the line ends. A tab is shown as spaces.
    """

    shown: tuple[str, ...]
    at: tuple[int, ...]


def lay(line: str) -> Laid:
    shown: list[str] = []
    at = [0]
    for character in line:
        if character == "\t":
            shown.append(" " * (TAB - at[-1] % TAB))
            at.append(at[-1] + len(shown[-1]))
        else:
            shown.append(printable(character))
            at.append(at[-1] + columns(shown[-1]))
    return Laid(tuple(shown), tuple(at))


def underlined(line: str, start: int, end: int, width: int) -> tuple[str, str]:
    """A line, and below it the marks under its characters from `start` to `end`.

    A line wider than `width` columns is cut around the place, with `…` where something is left out.
    An empty stretch gets one mark, between two characters or behind the last.
    """
    laid = lay(line)
    place = laid.at[start]
    marked = max(1, laid.at[end] - place)
    first, last = _window(laid, place, marked, width)
    before = "…" if first > 0 else ""
    after = "…" if last < len(laid.shown) else ""
    text = before + "".join(laid.shown[first:last]) + after
    indent = len(before) + place - laid.at[first]
    return text.rstrip(), " " * indent + "^" * min(marked, max(1, len(before) + width - indent))


def _window(laid: Laid, place: int, marked: int, width: int) -> tuple[int, int]:
    """Which characters are shown: all where they have room, else those around the place."""
    whole = laid.at[-1]
    if whole <= width:
        return 0, len(laid.shown)
    left = max(0, min(place - max(width // 4, (width - marked) // 2), whole - width))
    first = next(n for n in range(len(laid.shown)) if laid.at[n] >= left and laid.at[n + 1] > laid.at[n])
    last = max(n for n in range(first, len(laid.at)) if laid.at[n] <= laid.at[first] + width)
    return first, last


class Ink(Enum):
    """Colours by what they mark; the value is the terminal's own code for it."""

    ERROR = "1;31"
    WARNING = "1;33"
    PLACE = "1"
    FAINT = "2"
    HINT = "36"


@dataclass(frozen=True, slots=True)
class Pen:
    """Writes in colour, or plainly."""

    colour: bool = False

    def __call__(self, text: str, ink: Ink) -> str:
        return f"\x1b[{ink.value}m{text}\x1b[0m" if self.colour and text else text
