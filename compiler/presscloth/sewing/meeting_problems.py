"""What can be wrong where two edges meet."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from presscloth.problems import Problem, Severity


@dataclass(frozen=True, kw_only=True)
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
           hem all of mat by 1 cm (3/8 in) twice
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
           hem all of mat by 1 cm (3/8 in) twice
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


@dataclass(frozen=True, kw_only=True)
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
           hem all of mat by 1 cm (3/8 in) twice
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
           hem all of mat by 1 cm (3/8 in) twice
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


@dataclass(frozen=True, kw_only=True)
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
           hem all of mat by 1 cm (3/8 in) twice
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
           hem all of mat by 1 cm (3/8 in) twice
           finish mat
           ```
    """

    edge: str

    def message(self) -> str:
        return f"{self.edge} is only about so long, and is to meet another edge exactly"

    def hint(self) -> str:
        return "take `about` away from the measure, or trim the thing before it is joined"


@dataclass(frozen=True, kw_only=True)
class AllowancesDiffer(Problem):
    """Two edges that are sewn together have different seam allowances.

    The seam cannot take both. Say how much it takes, with `, taking …` at the end of the statement.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Allowance     |
        |-------|------|-----|---------------|---------------|---------------|
        | head  | A    | 1   | 30 cm (12 in) | 10 cm (4 in)  | 6 mm (1/4 in) |
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) | 1 cm (3/8 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join bottom of head to top of cloth
           hem all of mat by 1 cm (3/8 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Allowance     |
        |-------|------|-----|---------------|---------------|---------------|
        | head  | A    | 1   | 30 cm (12 in) | 10 cm (4 in)  | 1 cm (3/8 in) |
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) | 1 cm (3/8 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join bottom of head to top of cloth
           hem all of mat by 1 cm (3/8 in) twice
           finish mat
           ```
    """

    one: str
    other: str

    def message(self) -> str:
        return f"the seam allowances differ: {self.one}, {self.other}"

    def hint(self) -> str:
        return "say what the seam takes, for example `, taking 1 cm (3/8 in)` at the end of the statement"


@dataclass(frozen=True, kw_only=True)
class AllowanceUnknown(Problem):
    """Nothing says how wide a seam is.

    A seam takes the allowance of the edges that it joins. A piece has the measure `seam` as its
    allowance unless its row says otherwise; here there is neither.

    Fails:

        ## Sizes
        | Size  | seam          |
        |-------|---------------|
        | Small | 1 cm (3/8 in) |
        | Large | –             |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join 2 cloth side by side
           hem all of mat by 1 cm (3/8 in) twice
           finish mat
           ```

    Passes:

        ## Sizes
        | Size  | seam          |
        |-------|---------------|
        | Small | 1 cm (3/8 in) |
        | Large | 2 cm (3/4 in) |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join 2 cloth side by side
           hem all of mat by 1 cm (3/8 in) twice
           finish mat
           ```
    """

    edge: str

    def message(self) -> str:
        return f"nothing says how wide the seam at the {self.edge} is"

    def hint(self) -> str:
        return "state `seam` under Measures, or end the statement with `, taking 1 cm (3/8 in)`"


@dataclass(frozen=True, kw_only=True)
class EdgeNotRaw(Problem):
    """A statement sews an edge that is no longer raw.

    A hemmed, bound, folded or sewn edge has no allowance left to sew with. It can be lapped over
    another one, and other things can be attached to it; or it is to be joined before it is hemmed.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Hem and join.

           ```sew
           hem right of cloth by 1 cm (3/8 in) twice
           mat = join right of cloth to right of cloth
           hem all of mat by 1 cm (3/8 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join right of cloth to right of cloth
           hem all of mat by 1 cm (3/8 in) twice
           finish mat
           ```
    """

    edge: str
    state: str
    doing: str

    def message(self) -> str:
        return f"the {self.edge} is {self.state} and cannot be {self.doing}"

    def hint(self) -> str:
        return "sew it before it is finished, or lap or attach it"


@dataclass(frozen=True, kw_only=True)
class NoSuchEdge(Problem):
    """A statement speaks of an edge that the thing does not have, or has no longer.

    A pouch has only those edges that are open; a round thing and a tape have none.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Fold, sew and hem.

           ```sew
           bag = fold cloth in half, join sides
           hem bottom of bag by 1 cm (3/8 in) twice
           finish bag
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Fold, sew and hem.

           ```sew
           bag = fold cloth in half, join sides
           hem top of bag by 1 cm (3/8 in) twice
           finish bag
           ```
    """

    edge: str
    name: str
    found: str

    def message(self) -> str:
        return f"`{self.name}` is {self.found} and has no {self.edge} to sew"

    def hint(self) -> str:
        return "look at what was made of it before, and name an edge that is open"


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


@dataclass(frozen=True, kw_only=True)
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
           hem all of mat by 1 cm (3/8 in) twice
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
           hem all of mat by 1 cm (3/8 in) twice
           finish mat
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING

    rounding: Rounding

    def message(self) -> str:
        return self.rounding.message()

    def hint(self) -> str:
        return self.rounding.hint()


@dataclass(frozen=True, kw_only=True)
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
           hem all of mat by 1 cm (3/8 in) twice
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
           hem all of mat by 1 cm (3/8 in) twice
           finish mat
           ```
    """

    rounding: Rounding

    def message(self) -> str:
        return self.rounding.message()

    def hint(self) -> str:
        return self.rounding.hint()
