"""Programs that a machine may lack: a test that needs one is skipped by name, and fails in CI."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

FLAGS = (
    "--no-sandbox --disable-gpu --no-first-run --disable-background-networking "
    "--disable-component-update --disable-sync"
).split()


def lacking(what: str) -> None:
    """End the test: skipped here, failed where `CI` is set."""
    if os.environ.get("CI"):
        pytest.fail(f"{what} is not installed")
    pytest.skip(f"{what} is not installed")


def needs(program: str) -> str:
    """The path of a program; without it the test is skipped, or fails where `CI` is set."""
    found = shutil.which(program)
    if found is None:
        lacking(program)
    assert found is not None
    return found


def needs_package(name: str, file: str) -> Path:
    """A file of an npm package that lies in the folder PRESSCLOTH_NODE_MODULES (`.ci/run` makes one)."""
    found = Path(os.environ.get("PRESSCLOTH_NODE_MODULES", "/nowhere")) / name / file
    if not found.is_file():
        lacking(name)
    return found


def run(program: str, *arguments: str | Path) -> str:
    done = subprocess.run([needs(program), *map(str, arguments)], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout


@contextmanager
def opened_browser() -> Iterator[object]:
    """Chromium by playwright, closed at the end."""
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        lacking("playwright")
    program = needs("chromium")
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=program, args=FLAGS)
        yield opened
        opened.close()
