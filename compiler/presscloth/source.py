"""Source: a text as its author wrote it, and places in it.

Places are character offsets; a line and a column are worked out only when somebody is shown one.
Text that reaches a reader with pieces missing (the prefix of a quoted line, the backslash of a
table cell's `\\|`) is carried as `Passage`, which knows for each character where it stands.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from functools import cached_property

from presscloth.frozen import dataclass

LONGEST_QUOTED = 120


@dataclass(frozen=True, eq=False)
class Source:
    """One file's text. `name` is what messages call it: the path as the user typed it."""

    name: str
    text: str

    @cached_property
    def line_starts(self) -> tuple[int, ...]:
        starts = [0]
        find = self.text.find
        at = find("\n")
        while at >= 0:
            starts.append(at + 1)
            at = find("\n", at + 1)
        return tuple(starts)

    def line_and_column(self, offset: int) -> tuple[int, int]:
        """Line and column of a character, both counted from 1."""
        line = bisect_right(self.line_starts, offset) - 1
        return line + 1, offset - self.line_starts[line] + 1

    def line_text(self, line: int) -> str:
        """The text of a line (counted from 1) without its end."""
        start = self.line_starts[line - 1]
        end = self.text.find("\n", start)
        return self.text[start:] if end < 0 else self.text[start:end]

    def span(self, start: int, end: int) -> Span:
        return Span(self, start, end)


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of a source, `start` to `end` (exclusive), in characters from the beginning."""

    source: Source
    start: int
    end: int

    @property
    def text(self) -> str:
        return self.source.text[self.start : self.end]

    @property
    def quoted(self) -> str:
        """The text as a message quotes it: on one line, its beginning where it is long."""
        words = " ".join(self.text[: 2 * LONGEST_QUOTED].split())
        return words if len(words) <= LONGEST_QUOTED else f"{words[:LONGEST_QUOTED].rstrip()}…"

    def to(self, other: Span) -> Span:
        """The stretch from the beginning of this one to the end of the other."""
        return Span(self.source, min(self.start, other.start), max(self.end, other.end))

    @property
    def where(self) -> tuple[int, int]:
        return self.source.line_and_column(self.start)


@dataclass(frozen=True, slots=True)
class Passage:
    """A run of characters from a source that need not stand together there.

    `places[i]` is the offset of `text[i]`; one more entry says where the passage ends.
    """

    source: Source
    text: str
    places: tuple[int, ...]

    @classmethod
    def of(cls, span: Span) -> Passage:
        return cls(span.source, span.text, tuple(range(span.start, span.end + 1)))

    def span(self, start: int = 0, end: int | None = None) -> Span:
        """The place of `text[start:end]`; an empty stretch is a place between two characters."""
        end = len(self.text) if end is None else end
        if end <= start:
            return Span(self.source, self.places[start], self.places[start])
        return Span(self.source, self.places[start], self.places[end - 1] + 1)

    def __getitem__(self, part: slice) -> Passage:
        start, end, _ = part.indices(len(self.text))
        end = max(start, end)
        last = self.places[end - 1] + 1 if end > start else self.places[start]
        return Passage(self.source, self.text[start:end], (*self.places[start:end], last))

    def strip(self) -> Passage:
        start = len(self.text) - len(self.text.lstrip())
        end = len(self.text.rstrip())
        return self[start : max(start, end)]

    def lines(self) -> Iterator[Passage]:
        start = 0
        while start <= len(self.text):
            end = self.text.find("\n", start)
            if end < 0:
                end = len(self.text)
            yield self[start:end]
            start = end + 1
