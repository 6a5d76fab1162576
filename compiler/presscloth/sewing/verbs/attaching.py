"""What is sewn on, caught, inserted, tacked or filled in; and what is finished."""

from __future__ import annotations

from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.verbs.verb import Verb

TACK = Verb("tack", ("tack {part:edge} to {edge:edge}",))
ZIP = Verb("zip", ("zip {zip:thing} between {first:edge} and {second:edge}, showing {showing:measure}",))
ATTACH = Verb("attach", ("attach {part:thing} to {ground:thing}",), ResultRule.CHANGES_FIRST)
INSERT = Verb("insert", ("insert {part:thing} in {edge:edge}",), ResultRule.CHANGES_FIRST)
FILL = Verb(
    "fill", ("fill {thing:thing} with {weight:measure} of {filling:thing}",), ResultRule.CHANGES_FIRST
)
FINISH = Verb("finish", ("finish {things:things}",), ResultRule.NONE)
