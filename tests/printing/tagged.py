"""The tag tree of a PDF, walked in reading order."""

from __future__ import annotations

from collections.abc import Iterator

import pikepdf


def elements(
    document: pikepdf.Pdf, kind: str | None = None
) -> list[tuple[pikepdf.Dictionary, tuple[str, ...]]]:
    """The elements of the tag tree in reading order, each with those above it."""

    def below(
        element: pikepdf.Dictionary, above: tuple[str, ...]
    ) -> Iterator[tuple[pikepdf.Dictionary, tuple[str, ...]]]:
        kids = element.get("/K", [])
        for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
            if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
                yield kid, above
                yield from below(kid, (*above, str(kid.S)))

    found = below(document.Root.StructTreeRoot, ())
    return [(kid, above) for kid, above in found if kind is None or kind == kid.S]
