"""How much cloth to buy, and how the pieces lie on it.

The engine works in whole numbers of one unit (see `parts`), free or in strips, on rolls (`laying`)
and on sheets (`sheets`), rectangles and outlines (`outlining`); the checkers share no code with it.
"""

from presscloth.cutting.checker import check
from presscloth.cutting.laying import BUDGET, lay_out
from presscloth.cutting.outline_checker import check_outlines
from presscloth.cutting.outlines import (
    Outline,
    OutlineCut,
    OutlineLayout,
    PlacedOutline,
    around_circle,
)
from presscloth.cutting.outlining import lay_out_outlines
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
    "Outline",
    "OutlineCut",
    "OutlineLayout",
    "Part",
    "Placed",
    "PlacedOutline",
    "Roll",
    "Sheet",
    "Way",
    "around_circle",
    "check",
    "check_outlines",
    "lay_out",
    "lay_out_outlines",
    "lay_out_sheets",
]
