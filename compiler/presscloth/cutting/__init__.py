"""How much cloth to buy, and how the pieces lie on it.

The engine works in whole numbers of one unit (see `parts`), free or in strips, on rolls (`laying`)
and on sheets (`sheets`), rectangles and outlines (`outlining`); the checkers share no code with it.
Nothing of it is loaded before it is named: whoever only asks how wide a piece lies waits for no engine.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
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

_FROM = {
    "check": "checker",
    "BUDGET": "laying",
    "lay_out": "laying",
    "check_outlines": "outline_checker",
    "Outline": "outlines",
    "OutlineCut": "outlines",
    "OutlineLayout": "outlines",
    "PlacedOutline": "outlines",
    "around_circle": "outlines",
    "lay_out_outlines": "outlining",
    "Cut": "parts",
    "CutSheets": "parts",
    "DoesNotFit": "parts",
    "Layout": "parts",
    "Part": "parts",
    "Placed": "parts",
    "Roll": "parts",
    "Sheet": "parts",
    "Way": "parts",
    "lay_out_sheets": "sheets",
}


def __getattr__(name: str) -> object:
    if name not in _FROM:
        raise AttributeError(f"{__name__} has no {name}")
    return getattr(import_module(f"{__name__}.{_FROM[name]}"), name)
