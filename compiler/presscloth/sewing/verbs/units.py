"""Patchwork units that are made of triangles, and squares set on point."""

from __future__ import annotations

from presscloth.sewing.verbs.verb import Verb

PAIR = Verb("pair", ("pair {first:thing} with {second:thing} into {units:number}",))
SET_ON_POINT = Verb(
    "set on point", ("set {squares:things} on point in {rows:number} rows with {triangles:things}",)
)
