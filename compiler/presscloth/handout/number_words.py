"""A number as it is printed, taken apart for speaking."""

from __future__ import annotations

from presscloth.frozen import dataclass

MOST = 999_999
"""Numbers up to here are spoken; larger ones stand on no cutting table."""


@dataclass(frozen=True, slots=True)
class Number:
    """`1 1/4` is `Number(False, 1, (1, 4))`, `3.2` is `Number(False, 3, None, "2")`."""

    minus: bool
    whole: int
    fraction: tuple[int, int] | None = None
    decimals: str = ""

    @property
    def one(self) -> bool:
        """Whether it is one and nothing else, so that its unit stands in the singular."""
        return self.whole == 1 and self.fraction is None and not self.decimals
