"""Hems, bands folded over an edge, and what is drawn through them."""

from __future__ import annotations

from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.verbs.verb import Verb

HEM = Verb(
    "hem",
    ("hem {edges:edges} by {by:measure} [twice]", "hem {edges:edges} by {by:measure}, then {then:measure}"),
    ResultRule.CHANGES_FIRST,
)
BAND = Verb("band", ("band {edge:edge} [, gathered,] with {band:thing}",), ResultRule.CHANGES_FIRST)
DRAW = Verb(
    "draw",
    ("draw {drawn:thing} through {through:thing}", "draw {drawn:thing} through {edge:edge}"),
    ResultRule.CHANGES_FIRST,
)
