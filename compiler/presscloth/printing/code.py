"""The address of a recipe's page as a QR code (ISO/IEC 18004), drawn in lines on paper.

Level M: read also with a thread's width of it missing. Around it lie four modules of white, as the standard
asks (ISO/IEC 18004, 5.3.8 "Quiet zone").
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from markupsafe import Markup

from presscloth.frozen import dataclass
from presscloth.handout.tree import Publisher
from presscloth.tongue import say

SIDE = 28.0
"""Millimetres with the white around: 0.7 mm for each module of a usual address, read at arm's length."""
QUIET = 4
LEVEL = "M"


@dataclass(frozen=True, slots=True)
class Code:
    """A QR code as SVG, and the address in it."""

    picture: Markup
    address: str


def page_code(publisher: Publisher, slug: str) -> Code | None:
    """The code of a recipe's page; None where the publisher has no address."""
    if not publisher.address:
        return None
    address = f"{publisher.address.rstrip('/')}/{slug}/"
    return Code(_svg(_modules(address), say("QR code: {address}", address=address)), address)


def _modules(address: str) -> Sequence[Sequence[int]]:
    """The modules row by row, 1 where dark, without the white around."""
    import segno

    code = segno.make_qr(address, error=LEVEL, boost_error=False)
    return [[module & 1 for module in row] for row in code.matrix]


def _svg(rows: Sequence[Sequence[int]], alt: str) -> Markup:
    """One path, a stroke for each run of dark modules; the path's unit is a module."""
    whole = len(rows) + 2 * QUIET
    path = "".join(
        f"M{QUIET + start} {QUIET + down}h{end - start}v1h-{end - start}z"
        for down, row in enumerate(rows)
        for start, end in _runs(row)
    )
    return Markup(
        '<svg xmlns="http://www.w3.org/2000/svg" width="{0}mm" height="{0}mm" viewBox="0 0 {1} {1}">'
        '<title>{2}</title><rect width="{1}" height="{1}" fill="#ffffff"/>'
        '<path d="{3}" fill="#000000"/></svg>'
    ).format(f"{SIDE:g}", whole, alt, path)


def _runs(row: Sequence[int]) -> list[tuple[int, int]]:
    """Where dark modules begin and end, run by run."""
    runs, at = [], 0
    for dark, group in groupby(row):
        length = sum(1 for _ in group)
        if dark:
            runs.append((at, at + length))
        at += length
    return runs
