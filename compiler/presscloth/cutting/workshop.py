"""What a workshop does with all its cloth, where the notes of a material do not say."""

from __future__ import annotations

from pathlib import Path

from presscloth.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Workshop:
    """How a workshop cuts, and where it keeps layouts that it has found.

    `strips`: fabric is cut in full-width strips first. `straightened`: the cut end is straightened,
    so that an exact fit is not enough. Without `kept_in` no layout is kept; what is laid out is the
    same either way.
    """

    strips: bool = False
    straightened: bool = False
    kept_in: Path | None = None


PLAIN = Workshop()
"""A workshop without habits: any layout will do, an exact fit is enough, and nothing is kept."""
