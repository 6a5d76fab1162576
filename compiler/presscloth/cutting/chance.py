"""Random numbers that are the same everywhere and always.

The standard library promises its sequence for `random()` only, not for what is built on it; a layout
in print must not change with the Python that made it.
"""

from __future__ import annotations

_WORD = (1 << 64) - 1


class Chance:
    """Xorshift with the shifts 13, 7, 17: G. Marsaglia, "Xorshift RNGs", J. Stat. Software 8 (2003)."""

    def __init__(self, seed: int) -> None:
        self._state = (seed * 2654435769 + 88172645463325252) & _WORD or 1

    def below(self, limit: int) -> int:
        """A number from 0 to `limit` - 1."""
        state = self._state
        state ^= (state << 13) & _WORD
        state ^= state >> 7
        state ^= (state << 17) & _WORD
        self._state = state
        return (state >> 11) % limit
