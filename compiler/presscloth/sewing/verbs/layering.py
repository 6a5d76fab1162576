"""Cloth upon cloth: lining, sandwiches, bagging out, laying a part on another, fusing."""

from __future__ import annotations

from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.verbs.verb import Verb

LINE = Verb("line", ("line {outer:thing} with {lining:thing}",))
LAYER = Verb(
    "layer", ("layer {layers:things} [, overhanging {overhang:measure}] [, taking up {share:measure}]",)
)
BAG_OUT = Verb("bag out", ("bag out {first:thing} with {second:thing} [, {open:sides} open]",))
LAY = Verb("lay", ("lay {part:thing} on {ground:thing}, {sides:sides} level",))
FUSE = Verb("fuse", ("fuse {part:thing} to {ground:thing}",), ResultRule.CHANGES_FIRST)
