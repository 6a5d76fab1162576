"""Setting a round, a rectangle or a tube into an open end, and gathering."""

from __future__ import annotations

from presscloth.sewing.verbs.verb import Verb

SET_IN = Verb("set in", ("set {part:thing} into {edge:edge}",))
GATHER = Verb("gather", ("gather {gathered:edge} to {edge:edge}",))
