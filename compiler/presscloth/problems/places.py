"""Places as readers count them: a file, lines and columns from 1, the end exclusive."""

from __future__ import annotations

from presscloth.frozen import dataclass
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Place:
    """A stretch of a file. Columns count characters; `end_column` is the one behind the last."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


def place(span: Span) -> Place:
    line, column = span.source.line_and_column(span.start)
    end_line, end_column = span.source.line_and_column(span.end)
    return Place(span.source.name, line, column, end_line, end_column)
