"""Programs that a machine may lack: a test that needs one is skipped by name, and fails in CI."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest


def needs(program: str) -> str:
    """The path of a program; without it the test is skipped, or fails where `CI` is set."""
    found = shutil.which(program)
    if found is None:
        if os.environ.get("CI"):
            pytest.fail(f"{program} is not installed")
        pytest.skip(f"{program} is not installed")
    return found


def run(program: str, *arguments: str | Path) -> str:
    done = subprocess.run([needs(program), *map(str, arguments)], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout
