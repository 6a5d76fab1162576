"""Keep the folder of kept layouts within bounds: what was used longest ago goes first.

The time at which a file was changed says when it was used last. What was used within a day stays
whatever the folder holds, so that nothing is taken away that a compile has just used, in this process or
another; and whoever finds a file gone works its answer out anew.
"""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from pathlib import Path

MOST_FILES = 4000
MOST_BYTES = 64 * 1024 * 1024
DAY = 24 * 60 * 60
"""Seconds."""


def used(file: Path) -> None:
    """Note that a file was used, once a day at most."""
    try:
        if time.time() - file.stat().st_mtime > DAY / 2:
            os.utime(file)
    except OSError:
        return  # gone, or not ours to touch


def tidy(folder: Path, *, most_files: int = MOST_FILES, most_bytes: int = MOST_BYTES) -> None:
    """Take files away, those used longest ago first, until no more are left than may be.

    A file that was written aside and never renamed, because its process ended, goes with the others.
    """
    found = sorted(_files(folder), reverse=True)
    files = total = 0
    latest = time.time() - DAY
    for when, size, path in found:
        files += 1
        total += size
        if when < latest and (files > most_files or total > most_bytes or Path(path).name.startswith(".")):
            try:
                os.unlink(path)
            except OSError:
                continue  # another process was faster


def _files(folder: Path) -> Iterator[tuple[float, int, str]]:
    """When each file of the folder was used last, its size and its path."""
    for room in _entries(folder):
        if room.is_dir(follow_symlinks=False) and len(room.name) == 2:
            for entry in _entries(Path(room.path)):
                try:
                    known = entry.stat(follow_symlinks=False)
                except OSError:
                    continue
                if entry.is_file(follow_symlinks=False):
                    yield known.st_mtime, known.st_size, entry.path


def _entries(folder: Path) -> list[os.DirEntry[str]]:
    try:
        with os.scandir(folder) as entries:
            return list(entries)
    except OSError:
        return []
