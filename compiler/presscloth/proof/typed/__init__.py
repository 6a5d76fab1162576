"""Typed by hand: measures and numbers of things that stand in running text.

`find` and `find_counts` read a text and say what is typed in it, and where; `suggestion` words a
typed measure as the language writes it. Nothing here knows a recipe: whoever calls decides what a
typed measure means.
"""

from presscloth.proof.typed.counts import find_counts
from presscloth.proof.typed.measures import find
from presscloth.proof.typed.tree import Nearness, Typed, TypedCount, Value
from presscloth.proof.typed.wording import suggestion

__all__ = ["Nearness", "Typed", "TypedCount", "Value", "find", "find_counts", "suggestion"]
