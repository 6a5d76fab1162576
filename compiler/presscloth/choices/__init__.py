"""What the reader may choose, and how every number and drawing follows from it.

A size is worked out again with followed numbers (`measure.followed`), as often as the range needs until
some way of reckoning holds for every choice that a reader would type. A page carries those ways; it
reckons along the one whose guards hold, and says so where none does.
"""

from presscloth.choices.exploring import follow
from presscloth.choices.offers import offers, take

__all__ = ["follow", "offers", "take"]
