"""Joining edge to edge: rows, columns, one edge to another, pouches, and lapping."""

from __future__ import annotations

from presscloth.sewing.verbs.verb import Verb

JOIN = Verb(
    "join",
    (
        "join {parts:things} {way=side by side|top to bottom}",
        "join {parts:things} with {between:thing} {where=between|between and at the ends}"
        " {way=side by side|top to bottom}",
        "join {first:edge} to {second:edge}",
        "join {first:thing} to {second:thing} all round",
        "join {first:thing} to {second:thing} on {sides:sides}",
    ),
)
LAP = Verb("lap", ("lap {over:edge} over {under:edge} by {by:measure}",))
