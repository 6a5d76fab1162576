"""Stitching out, trimming to a size, and cutting what is sewn into segments."""

from __future__ import annotations

from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.verbs.verb import Verb

STITCH_OUT = Verb(
    "stitch out",
    (
        "stitch out {thing:thing}, {width:measure} by {height:measure},"
        " in {field_width:measure} by {field_height:measure}",
    ),
)
TRIM = Verb("trim", ("trim {thing:thing} to {width:measure} by {height:measure}",), ResultRule.CHANGES_FIRST)
CUT = Verb(
    "cut", ("cut {width:measure} wide from {from:thing}", "cut {height:measure} high from {from:thing}")
)
