"""Borders, butted or mitred."""

from __future__ import annotations

from presscloth.sewing.verbs.verb import Verb

BORDER = Verb(
    "border",
    (
        "border {thing:thing} with {sides:thing}, {ends:thing} [, mitred]",
        "border {thing:thing} with {sides:thing}, mitred",
    ),
)
