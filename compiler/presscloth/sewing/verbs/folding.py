"""Folding, alone or with the seams that close what was folded."""

from __future__ import annotations

from presscloth.sewing.verbs.verb import Verb

FOLD = Verb(
    "fold",
    (
        "fold {thing:thing} {way=lengthways|across|side to side|top to bottom} [in four]",
        "fold {thing:thing} in half [at the seam], join sides",
        "fold {thing:thing} lengthways, join the long edges",
    ),
)
