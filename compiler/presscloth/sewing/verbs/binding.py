"""Binding and facing raw edges with strips."""

from __future__ import annotations

from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.verbs.verb import Verb

BIND = Verb(
    "bind",
    (
        "bind {thing:thing} with {strips:thing} [, with {ends:measure} for the ends]",
        "bind {edges:edges} with {strips:thing} [, with {ends:measure} for the ends]",
    ),
    ResultRule.CHANGES_FIRST,
)
FACE = Verb(
    "face",
    (
        "face {thing:thing} with {strips:thing} [, with {ends:measure} for the ends]",
        "face {edges:edges} with {strips:thing} [, with {ends:measure} for the ends]",
    ),
)
