"""`presscloth why`: the page of a problem, or the list of all."""

from __future__ import annotations

import argparse
import re
import sys
import textwrap
from collections.abc import Iterator

from presscloth import console
from presscloth.cli import FINE, MISTYPED
from presscloth.every_problem import every, meant, named
from presscloth.problems import Severity
from presscloth.problems.full import INKS
from presscloth.problems.pages import Example, Page, page
from presscloth.problems.terminal import Ink, Pen

WIDEST = 88

HEADINGS = {
    Severity.ERROR: "Errors: no handout is written",
    Severity.WARNING: "Warnings: right, but perhaps not meant",
}


def why(options: argparse.Namespace) -> int:
    """Print the page of a problem, or all names where none is given; of an unknown one the nearest."""
    name = " ".join(options.name)
    pen = Pen(console.coloured(sys.stdout))
    width = min(WIDEST, console.width(sys.stdout))
    if not name:
        console.data("\n".join(_list(pen, width)) + "\n")
        return FINE
    kind = named(name)
    if kind is None:
        nearest = meant(name)
        hint = f"perhaps {nearest}" if nearest else "`presscloth why` lists them all"
        console.talk(f"presscloth: there is no problem called `{name}`; {hint}")
        return MISTYPED
    console.data("\n".join(_page(page(kind), pen, width)) + "\n")
    return FINE


def _list(pen: Pen, width: int) -> Iterator[str]:
    pages = [page(kind) for kind in every()]
    for severity in Severity:
        yield pen(HEADINGS[severity], Ink.PLACE)
        yield ""
        for one in pages:
            if one.severity is severity:
                yield pen(f"  {one.name}", INKS[severity])
                yield _wrapped(first_sentence(one.what), width, "      ")
        yield ""
    yield "presscloth why NAME explains one of them."


def first_sentence(text: str) -> str:
    return re.split(r"(?<=[.!?])\s", text, maxsplit=1)[0]


def _page(of: Page, pen: Pen, width: int) -> Iterator[str]:
    yield f"{pen(of.title, Ink.PLACE)}, {pen(of.severity.value, INKS[of.severity])} ({of.name})"
    for paragraph in (of.what, *of.why):
        yield ""
        yield _wrapped(paragraph, width)
    yield from _example("Fails:", of.fails, pen, width)
    yield from _example("Passes:", of.passes, pen, width)


def _example(heading: str, example: Example | None, pen: Pen, width: int) -> Iterator[str]:
    if example is None:
        return
    yield ""
    if example.runs:
        yield pen(heading, Ink.PLACE)
        yield ""
        yield textwrap.indent(example.text.rstrip("\n"), "    ")
    else:
        yield _wrapped(f"{heading} {example.text}", width)


def _wrapped(text: str, width: int, indent: str = "") -> str:
    return textwrap.fill(
        text,
        width,
        initial_indent=indent,
        subsequent_indent=indent,
        break_long_words=False,
        break_on_hyphens=False,
    )
