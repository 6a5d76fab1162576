"""Clocks that run while something is at work."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from time import process_time


class Clock:
    """Adds up this process's time between starts and stops; one within another does not count twice."""

    def __init__(self) -> None:
        self.total = 0.0
        self._depth = 0
        self._started = 0.0

    def __enter__(self) -> None:
        if self._depth == 0:
            self._started = process_time()
        self._depth += 1

    def __exit__(self, *_: object) -> None:
        self._depth -= 1
        if self._depth == 0:
            self.total += process_time() - self._started


@contextmanager
def clocked(owner: object, name: str, clock: Clock) -> Iterator[None]:
    """For a while, let a clock run whenever a function is at work."""
    function: Callable[..., object] = getattr(owner, name)

    def timed(*arguments: object, **named: object) -> object:
        with clock:
            return function(*arguments, **named)

    setattr(owner, name, timed)
    try:
        yield
    finally:
        setattr(owner, name, function)
