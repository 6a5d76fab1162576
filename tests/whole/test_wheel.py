"""The wheel holds what it must and nothing else, and works outside the checkout."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]

RECIPE = """\
---
title: Pebble Mat
release: 2027-03
written in: metric
language: en
sewn: yes
---

## Measures

- seam = 1 cm (3/8 in)

## Materials

| Key | Material     | Form   | Width          | Sold by        |
|-----|--------------|--------|----------------|----------------|
| A   | Cotton, sand | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |

## Pieces

| Piece | From | Cut | Width         | Height        |
|-------|------|-----|---------------|---------------|
| mat   | A    | 1   | 30 cm (12 in) | 40 cm (16 in) |

## Steps

1. Hem the mat all round by {seam} twice.

   ```sew
   hem all of mat by seam twice
   finish mat
   ```
"""


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, unpacked as an installer would."""
    folder = tmp_path_factory.mktemp("wheel")
    subprocess.run(
        [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(folder), str(ROOT)],
        check=True,
        capture_output=True,
    )
    (wheel,) = folder.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder / "site")
    return folder / "site"


def run(unpacked: Path, folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": str(unpacked), "NO_COLOR": "1"}
    return subprocess.run(
        [sys.executable, "-m", "presscloth", *arguments],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


def test_contents(unpacked: Path) -> None:
    top = {entry.name for entry in unpacked.iterdir()}
    assert {name for name in top if not name.endswith(".dist-info")} == {"presscloth"}
    assert (unpacked / "presscloth" / "_themes" / "plain-seam" / "look.yaml").is_file()
    assert (unpacked / "presscloth" / "_standing" / "glossary.md").is_file()
    assert (unpacked / "presscloth" / "_standing" / "glossary.de.md").is_file()
    assert (unpacked / "presscloth" / "tongue" / "words" / "de.po").is_file()
    assert (unpacked / "presscloth" / "py.typed").is_file()
    assert not (unpacked / "presscloth" / "dev").exists()
    assert not list(unpacked.rglob("*.ttf"))


def test_empty_folder_is_told_what_to_do(unpacked: Path, tmp_path: Path) -> None:
    done = run(unpacked, tmp_path, "compile")
    assert done.returncode == 2
    assert "recipes/kit-bag/recipe.md" in done.stderr
    assert not (tmp_path / "site").exists()


def test_makes_a_site(unpacked: Path, tmp_path: Path) -> None:
    folder = tmp_path / "recipes" / "pebble-mat"
    folder.mkdir(parents=True)
    (folder / "recipe.md").write_text(RECIPE, encoding="utf-8")
    done = run(unpacked, tmp_path, "compile", "--no-pdf")
    assert done.returncode == 0, done.stdout + done.stderr
    page = (tmp_path / "site" / "published" / "pebble-mat" / "index.html").read_text(encoding="utf-8")
    assert "Pebble Mat" in page
    assert "30 cm" in page
