"""Edition to Construction: what an edition's `sew` blocks make, carried out in both systems.

`prove_sewing` carries out every way through the steps, exactly and as it is printed; `forms` are the
patterns of the verbs, for whoever reads statements.
"""

from presscloth.sewing.construction import (
    Construction,
    Event,
    Filled,
    Finished,
    NotMeasured,
    Seam,
    Stood,
    Taken,
)
from presscloth.sewing.proving import Sewn, prove_sewing
from presscloth.sewing.ways import Way

__all__ = [
    "Construction",
    "Event",
    "Filled",
    "Finished",
    "NotMeasured",
    "Seam",
    "Sewn",
    "Stood",
    "Taken",
    "Way",
    "prove_sewing",
]
