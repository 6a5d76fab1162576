"""How much cloth to buy, and how the pieces lie on it.

The engine works in whole numbers of one unit (see `parts`), free or in strips, on rolls (`laying`)
and on sheets (`sheets`); the checker shares no code with it.
"""

from presscloth.cutting.checker import check
from presscloth.cutting.laying import BUDGET, lay_out
from presscloth.cutting.parts import (
    Cut,
    CutSheets,
    DoesNotFit,
    Layout,
    Part,
    Placed,
    Roll,
    Sheet,
    Way,
)
from presscloth.cutting.sheets import lay_out_sheets

__all__ = [
    "BUDGET",
    "Cut",
    "CutSheets",
    "DoesNotFit",
    "Layout",
    "Part",
    "Placed",
    "Roll",
    "Sheet",
    "Way",
    "check",
    "lay_out",
    "lay_out_sheets",
]
