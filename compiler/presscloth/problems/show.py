"""How problems are shown: in full or short for people, as JSON or SARIF for programs."""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum

from presscloth.problems.report import Reported


class Format(Enum):
    """The value is what is typed after `--format`."""

    TEXT = "text"
    SHORT = "short"
    JSON = "json"
    SARIF = "sarif"


def show(reported: Sequence[Reported], form: Format, *, width: int = 100, colour: bool = False) -> str:
    """All that is reported in one of the formats; `width` and `colour` matter to people only."""
    match form:
        case Format.TEXT:
            from presscloth.problems.full import full

            return full(reported, width=width, colour=colour)
        case Format.SHORT:
            from presscloth.problems.short import short

            return short(reported, colour=colour)
        case Format.JSON:
            from presscloth.problems.as_json import as_json

            return as_json(reported)
        case Format.SARIF:
            from presscloth.problems.sarif import sarif

            return sarif(reported)
