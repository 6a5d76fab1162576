"""What can be wrong where two edges meet."""

from __future__ import annotations

from presscloth.problems import Problem


class EdgesDoNotMeet(Problem):
    """Two edges that are sewn together are not equally long.

    One of them would stand over at the end of the seam, or be eased in and pucker. Edges are compared
    between the ends of their stitching; where all neighbouring edges are raw, that is the same as
    comparing the cut edges. Look at the cut sizes of both, and count the seams that lie between them.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | head  | A    | 1   | 29 cm (11 3/8 in) | 10 cm (4 in)  |
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join head, cloth top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width          | Height        |
        |-------|------|-----|----------------|---------------|
        | head  | A    | 1   | width of cloth | 10 cm (4 in)  |
        | cloth | A    | 1   | 30 cm (12 in)  | 30 cm (12 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join head, cloth top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    one: str
    other: str
    apart: str
    stitched: bool

    def message(self) -> str:
        where = " between the ends of the stitching" if self.stitched else ""
        return f"edges do not meet: {self.one}, {self.other}{where}; {self.apart} apart"

    def hint(self) -> str:
        return f"one of the two is cut {self.apart} too long or too short; compute both from the same measure"


class MeetsInOneSystem(Problem):
    """Two edges meet in one measuring system and miss each other in the other.

    A length that was typed a second time, in one system only, is carried over by itself: it is
    rounded to what a ruler of the other system shows, and no longer agrees with the lengths from
    which the other edge is computed. Makers in that system would find one part too long. State each
    length once, give it a name, and compute all that meets it from that name.

    Fails:

        ## Measures
        - seam = 1/4 in (6 mm)
        - block = 6 in

        ## Pieces
        | Piece | From | Cut | Width            | Height           |
        |-------|------|-----|------------------|------------------|
        | patch | A    | 4   | block + 2 × seam | block + 2 × seam |
        | edge  | A    | 1   | 24 1/2 in        | 3 in (7.6 cm)    |

        ## Steps
        1. Join and hem.

           ```sew
           row = join 4 patch side by side
           mat = join row, edge top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Measures
        - seam = 1/4 in (6 mm)
        - block = 6 in

        ## Pieces
        | Piece | From | Cut | Width                | Height           |
        |-------|------|-----|----------------------|------------------|
        | patch | A    | 4   | block + 2 × seam     | block + 2 × seam |
        | edge  | A    | 1   | 4 × block + 2 × seam | 3 in (7.6 cm)    |

        ## Steps
        1. Join and hem.

           ```sew
           row = join 4 patch side by side
           mat = join row, edge top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    left: str
    right: str
    meets: str
    misses: str
    apart: str
    behind: tuple[str, str]
    single: tuple[str, ...]
    pair: str | None

    def message(self) -> str:
        left, right = self.behind
        return (
            f"{self.left} and {self.right} meet in {self.meets} and miss in {self.misses} by {self.apart}: "
            f"{left}; {right}"
        )

    def hint(self) -> str:
        if not self.single:
            return "compute both edges from the same stated values"
        once = f"state each length once and compute from it, instead of typing `{self.single[-1]}` by itself"
        return f"{once}; or write `{self.pair}`" if self.pair else once


class AboutEdgeMeets(Problem):
    """An edge whose length is only about right is to meet another one.

    What is `about` need not be exact, and each maker may cut it a little longer or shorter; but two
    edges of a seam must be equally long. Take the `about` away where the measure is stated, or trim
    the thing to an exact size before it is joined.

    Fails:

        ## Measures
        - flap = 10 cm (4 in), about

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | head  | A    | 2   | flap          | 10 cm (4 in)  |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join 2 head top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Measures
        - flap = 10 cm (4 in)

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | head  | A    | 2   | flap          | 10 cm (4 in)  |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join 2 head top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    edge: str

    def message(self) -> str:
        return f"{self.edge} is only about so long, and is to meet another edge exactly"

    def hint(self) -> str:
        return "take `about` away from the measure, or trim the thing before it is joined"
