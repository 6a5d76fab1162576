"""Commands run as processes of their own, and fragments that they are run on."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import presscloth

PACKAGE = Path(presscloth.__file__).parents[1]

SOUND = ""
WRONG = "## Measures\n- base = 7.5 cm (2 in)\n- strip = 2 × base\n"
QUESTIONED = "## Measures\n- band = 10 cm (4 in)\n- strip = 10 cm\n"


@dataclass(frozen=True)
class Answer:
    code: int
    out: str
    err: str


Run = Callable[..., Answer]
Write = Callable[[str, str], Path]


def surroundings(**more: str) -> dict[str, str]:
    """The environment of a process that finds the compiler, and is told nothing about colour."""
    kept = {name: value for name, value in os.environ.items() if name not in ("NO_COLOR", "PRESSCLOTH_DEBUG")}
    return {**kept, "PYTHONPATH": str(PACKAGE), **more}
