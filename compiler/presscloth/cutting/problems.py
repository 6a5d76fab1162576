"""What can be wrong with laying pieces out."""

from __future__ import annotations

from dataclasses import dataclass

from presscloth.problems import Problem


@dataclass(frozen=True, kw_only=True)
class WiderThanCloth(Problem):
    """A piece is wider than the cloth from which it is cut.

    No length of that cloth holds it. The trade joins two lengths, turns the grain where the cloth
    allows it, or takes wider cloth.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width           | Height        |
        |-------|------|-----|-----------------|---------------|
        | cloth | A    | 1   | 150 cm (59 in)  | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width           | Height         |
        |-------|------|-----|-----------------|----------------|
        | cloth | A    | 1   | 30 cm (12 in)   | 150 cm (59 in) |
    """

    piece: str
    across: str
    material: str
    width: str
    turns: bool

    def message(self) -> str:
        return f"`{self.piece}` lies {self.across} across, and {self.material} is {self.width} wide"

    def hint(self) -> str:
        if self.turns:
            return "note `any grain` or give the grain as `across`, join two lengths, or take wider cloth"
        return "join two lengths with a seam, or take wider cloth"
