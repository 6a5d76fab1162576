"""What may be spent on searching: work is counted, never timed, so that a layout is always the same."""

from __future__ import annotations

from presscloth.frozen import dataclass


@dataclass
class Purse:
    """What is `left` to spend; 1 is about the work of laying one piece."""

    left: int
