"""Proving fragments in tests: what is reported, shortly."""

from __future__ import annotations

from pathlib import Path

from spec.running import reported

from presscloth.dev import scaffold
from presscloth.pipeline import prove
from presscloth.problems.report import Reported

Told = tuple[str, str, str]
"""The name of a problem, what stands at its place, and its message."""


def found(fragment: str, folder: Path) -> tuple[Reported, ...]:
    return reported(prove(scaffold.write(fragment, folder)))


def told(fragment: str, folder: Path) -> list[Told]:
    return [
        (one.problem.slug(), " ".join(one.problem.span.text.split()), one.problem.message())
        for one in found(fragment, folder)
    ]


def step(prose: str, statements: str = "hem all of cloth by 1.2 cm (1/2 in) twice") -> str:
    lines = "".join(f"   {line}\n" for line in statements.split("\n"))
    return f"## Steps\n\n1. {prose}\n\n   ```sew\n{lines}   finish cloth\n   ```\n"
