"""Edition to Construction: what an edition's `sew` blocks make, carried out in both systems.

`prove_sewing` carries out every way through the steps, exactly and as it is printed; `hold_sizes` holds
the sizes against each other. `presscloth.sewing.verbs` lists the verbs.
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
from presscloth.sewing.proving import Sewn, hold_sizes, prove_sewing
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
    "hold_sizes",
    "prove_sewing",
]
