"""What the command line writes, and where: data to standard output, talk to standard error."""

from __future__ import annotations

import os
import sys
from typing import TextIO

BAR = 24
"""Columns of the progress bar."""


def prepare() -> None:
    """Let no character stop a message: what a terminal cannot show is written as its number."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="backslashreplace")


def data(text: str, *, machine: bool = False) -> None:
    """Write to standard output; for a machine always in UTF-8. A reader who has left is no fault."""
    try:
        if machine and hasattr(sys.stdout, "buffer"):
            sys.stdout.buffer.write(text.encode("utf-8", "backslashreplace"))
        else:
            sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        _close(sys.stdout)


def talk(text: str) -> None:
    """Write a line to standard error."""
    try:
        print(text, file=sys.stderr, flush=True)
    except BrokenPipeError:
        _close(sys.stderr)


def _close(stream: TextIO) -> None:
    """Point a stream whose reader has left to nowhere, so that closing it is quiet as well."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def coloured(stream: TextIO) -> bool:
    """Colour is for a terminal whose owner has not asked for none (no-color.org)."""
    if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        return False
    return stream.isatty()


def width(stream: TextIO) -> int:
    """The columns of a terminal; 100 of anything else."""
    if not stream.isatty():
        return 100
    try:
        return os.get_terminal_size(stream.fileno()).columns or 100
    except OSError:
        return 100


class ProgressBar:
    """A bar on one line of a terminal; nothing anywhere else."""

    def __init__(self) -> None:
        self._shown = sys.stderr.isatty()

    def __call__(self, done: int, total: int, what: str) -> None:
        """Show that `done` of `total` are done, and what is being worked at."""
        if self._shown and total > 0:
            full = BAR * done // total
            room = max(0, width(sys.stderr) - BAR - 20)
            line = f"[{'#' * full}{'.' * (BAR - full)}] {done}/{total} {what[:room]}"
            sys.stderr.write(f"\r\x1b[K{line}")
            sys.stderr.flush()

    def clear(self) -> None:
        if self._shown:
            sys.stderr.write("\r\x1b[K")
            sys.stderr.flush()
