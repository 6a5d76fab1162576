"""Recipes of a few rows, proved, for what is to be bought."""

from __future__ import annotations

from pathlib import Path

from presscloth.cutting.workshop import PLAIN, Workshop
from presscloth.pipeline import Proved, prove_source
from presscloth.problems import Problems
from presscloth.proof.size import WorkedSize
from presscloth.source import Source

HEAD = """\
---
title: Quay Things
release: 2027-01
written in: metric
language: en
---

"""
MATERIALS = """\
## Materials

| Key | Material | Form | Width | Length | Sold by | Notes |
|-----|----------|------|-------|--------|---------|-------|
{}

"""
PIECES = """\
## Pieces

| Piece | From | Cut | Width | Height | Shape | Grain | Notes |
|-------|------|-----|-------|--------|-------|-------|-------|
{}

"""


def proved(
    materials: str, pieces: str, steps: str = "1. Cut.", measures: str = "", workshop: Workshop = PLAIN
) -> Proved:
    """A recipe from rows; cells that a row of pieces leaves out are empty."""
    rows = "\n".join(f"| {row} {'| ' * (8 - row.count('|') - 1)}|" for row in pieces.splitlines())
    text = HEAD
    text += f"## Measures\n\n{measures}\n\n" if measures else ""
    text += MATERIALS.format("\n".join(f"| {row} |" for row in materials.splitlines()))
    text += PIECES.format(rows) + f"## Steps\n\n{steps}\n"
    return prove_source(Source("recipe.md", text), Path("recipe.md"), Problems(), workshop)


def only(
    materials: str, pieces: str, steps: str = "1. Cut.", measures: str = "", workshop: Workshop = PLAIN
) -> WorkedSize:
    """The only size of a recipe that has no errors."""
    found = proved(materials, pieces, steps, measures, workshop)
    assert found.sound, [problem.message() for problem in found.problems]
    return found.sizes[0]
