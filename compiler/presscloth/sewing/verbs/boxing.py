"""Boxing the corners of a pouch."""

from __future__ import annotations

from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.verbs.verb import Verb

BOX = Verb(
    "box",
    (
        "box corners of {thing:thing} to {depth:measure}",
        "box corners of {thing:thing} by cutting {square:measure} from the {start=raw edges|stitch lines}",
    ),
    ResultRule.CHANGES_FIRST,
)
