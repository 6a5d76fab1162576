"""What can open when everything is cut and sewn as it is printed."""

from __future__ import annotations

from typing import ClassVar

from presscloth.frozen import dataclass
from presscloth.problems import Problem, Severity


@dataclass(frozen=True, slots=True)
class Rounding:
    """Two edges that open on paper, and the side of a piece that is rounded by most when it is printed."""

    left: str
    right: str
    apart: str
    piece: str | None
    printed: str
    exact: str

    def message(self) -> str:
        return f"{self.left} and {self.right} open by {self.apart} once sizes are rounded as they are printed"

    def hint(self) -> str:
        if self.piece is None:
            return "state a length as a pair that a ruler shows, or let the seam ease"
        return (
            f"{self.piece} is printed as {self.printed} and is {self.exact}: "
            "state a pair there that closes it"
        )


class PaperOpens(Problem):
    """Two edges meet exactly, and open by a little when everything is cut and sewn as it is printed.

    The page shows sizes as a ruler can show them, to the millimetre or to the eighth of an inch. A
    size that lies between is rounded, and several of them side by side add up. More than 2 mm
    (1/16 in) shows at the end of a seam. State the length that is rounded as a pair.

    Fails:

        ## Measures
        - seam = 1/4 in (6 mm)
        - quilt = 50 cm (20 in)

        ## Pieces
        | Piece | From | Cut | Width                | Height       |
        |-------|------|-----|----------------------|--------------|
        | strip | A    | 3   | quilt / 3 + 2 × seam | 10 cm (4 in) |
        | head  | A    | 1   | quilt + 2 × seam     | 10 cm (4 in) |

        ## Steps
        1. Join and hem.

           ```sew
           row = join 3 strip side by side
           mat = join head, row top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Measures
        - seam = 1/4 in (6 mm)
        - strip width = 8.5 cm (3 3/8 in)

        ## Pieces
        | Piece | From | Cut | Width                      | Height       |
        |-------|------|-----|----------------------------|--------------|
        | strip | A    | 3   | strip width + 2 × seam     | 10 cm (4 in) |
        | head  | A    | 1   | 3 × strip width + 2 × seam | 10 cm (4 in) |

        ## Steps
        1. Join and hem.

           ```sew
           row = join 3 strip side by side
           mat = join head, row top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING

    rounding: Rounding

    def message(self) -> str:
        return self.rounding.message()

    def hint(self) -> str:
        return self.rounding.hint()


class PaperMisses(Problem):
    """Two edges meet exactly, and miss by far when everything is cut and sewn as it is printed.

    From 6 mm (1/4 in) on the parts cannot be sewn together. State the length that is rounded as a
    pair that a ruler shows, and compute the others from it.

    Fails:

        ## Measures
        - seam = 1/4 in (6 mm)
        - quilt = 120 cm (48 in)

        ## Pieces
        | Piece | From | Cut | Width                 | Height       |
        |-------|------|-----|-----------------------|--------------|
        | strip | A    | 14  | quilt / 14 + 2 × seam | 10 cm (4 in) |
        | head  | A    | 1   | quilt + 2 × seam      | 10 cm (4 in) |

        ## Materials
        | Key | Material      | Form   | Width          | Sold by        |
        |-----|---------------|--------|----------------|----------------|
        | A   | Cotton fabric | fabric | 140 cm (55 in) | 10 cm (1/8 yd) |

        ## Steps
        1. Join and hem.

           ```sew
           row = join 14 strip side by side
           mat = join head, row top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Measures
        - seam = 1/4 in (6 mm)
        - strip width = 8.5 cm (3 3/8 in)

        ## Pieces
        | Piece | From | Cut | Width                       | Height       |
        |-------|------|-----|-----------------------------|--------------|
        | strip | A    | 14  | strip width + 2 × seam      | 10 cm (4 in) |
        | head  | A    | 1   | 14 × strip width + 2 × seam | 10 cm (4 in) |

        ## Materials
        | Key | Material      | Form   | Width          | Sold by        |
        |-----|---------------|--------|----------------|----------------|
        | A   | Cotton fabric | fabric | 140 cm (55 in) | 10 cm (1/8 yd) |

        ## Steps
        1. Join and hem.

           ```sew
           row = join 14 strip side by side
           mat = join head, row top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    rounding: Rounding

    def message(self) -> str:
        return self.rounding.message()

    def hint(self) -> str:
        return self.rounding.hint()
