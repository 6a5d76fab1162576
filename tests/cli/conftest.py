"""A folder with recipes in it, and commands run there as processes of their own."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from presscloth.dev import scaffold

sys.path.insert(0, str(Path(__file__).parent))

from running import Answer, Run, Write, surroundings


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path


@pytest.fixture
def write(folder: Path) -> Write:
    """Write a recipe below `recipes/`, completed from a fragment."""

    def write(slug: str, fragment: str) -> Path:
        place = folder / "recipes" / slug
        place.mkdir(parents=True)
        return scaffold.write(fragment, place)

    return write


@pytest.fixture
def run(folder: Path) -> Run:
    """Run one command in the folder."""

    def run(*arguments: str, **more: str) -> Answer:
        done = subprocess.run(
            [sys.executable, "-m", "presscloth", *arguments],
            cwd=folder,
            env=surroundings(**more),
            capture_output=True,
            timeout=120,
            check=False,
        )
        return Answer(done.returncode, done.stdout.decode("utf-8"), done.stderr.decode("utf-8"))

    return run
