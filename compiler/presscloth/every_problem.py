"""Every kind of problem that there is, whichever room reports it."""

from __future__ import annotations

import pkgutil
from collections.abc import Iterator
from difflib import get_close_matches
from functools import cache
from importlib import import_module

from presscloth.problems import Problem, subclasses

ROOMS = ("recipe", "translation", "edition", "sewing", "cutting", "proof", "handout", "printing", "publish")


@cache
def every() -> tuple[type[Problem], ...]:
    """All kinds of problem by name. Imports every room, and no library that a room imports late."""
    for room in ROOMS:
        for module in _modules(f"presscloth.{room}"):
            import_module(module)
    ours = (kind for kind in subclasses() if kind.__module__.startswith("presscloth."))
    return tuple(sorted(ours, key=lambda kind: kind.slug()))


def named(name: str) -> type[Problem] | None:
    """The kind that is called so, typed with hyphens, spaces or as its class is."""
    slug = "-".join(name.casefold().replace("-", " ").split())
    for kind in every():
        if slug in (kind.slug(), kind.__name__.casefold()):
            return kind
    return None


def meant(name: str) -> str | None:
    """The name that somebody who typed `name` probably meant."""
    slugs = [kind.slug() for kind in every()]
    typed = "-".join(name.casefold().split())
    close = get_close_matches(typed, slugs, n=1)
    return close[0] if close else next((slug for slug in slugs if typed and typed in slug), None)


def _modules(package: str) -> Iterator[str]:
    yield package
    for found in pkgutil.walk_packages(import_module(package).__path__, package + "."):
        yield found.name
