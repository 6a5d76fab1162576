"""What can be wrong where cloth lies upon cloth."""

from __future__ import annotations

from presscloth.problems import Problem


class NoTurningGap(Problem):
    """A lined thing cannot be turned, because no gap was left open.

    The lining is sewn in with right sides together, all round the top; the whole is then turned
    through a gap in one seam of the lining. Leave one: `…, leaving turning gap open`.

    Fails:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 1   | 30 cm (12 in) | 60 cm (24 in) |
        | lining | A    | 1   | 30 cm (12 in) | 60 cm (24 in) |

        ## Steps
        1. Sew and line.

           ```sew
           outer = fold cloth in half, join sides
           inner = fold lining in half, join sides
           bag = line outer with inner
           finish bag
           ```

    Passes:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 1   | 30 cm (12 in) | 60 cm (24 in) |
        | lining | A    | 1   | 30 cm (12 in) | 60 cm (24 in) |

        ## Steps
        1. Sew and line.

           ```sew
           outer = fold cloth in half, join sides
           inner = fold lining in half, join sides, leaving 10 cm (4 in) open
           bag = line outer with inner
           finish bag
           ```
    """

    name: str

    def message(self) -> str:
        return f"`{self.name}` cannot be turned: no gap was left open"

    def hint(self) -> str:
        return "end the statement of one seam with `, leaving 10 cm (4 in) open`"


class GapTwice(Problem):
    """A lined thing has more than one turning gap.

    One is enough, and each has to be closed by hand.

    Fails:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 1   | 30 cm (12 in) | 60 cm (24 in) |
        | lining | A    | 1   | 30 cm (12 in) | 60 cm (24 in) |

        ## Steps
        1. Sew and line.

           ```sew
           outer = fold cloth in half, join sides, leaving 10 cm (4 in) open
           inner = fold lining in half, join sides, leaving 10 cm (4 in) open
           bag = line outer with inner
           finish bag
           ```

    Passes:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 1   | 30 cm (12 in) | 60 cm (24 in) |
        | lining | A    | 1   | 30 cm (12 in) | 60 cm (24 in) |

        ## Steps
        1. Sew and line.

           ```sew
           outer = fold cloth in half, join sides
           inner = fold lining in half, join sides, leaving 10 cm (4 in) open
           bag = line outer with inner
           finish bag
           ```
    """

    name: str
    gaps: int

    def message(self) -> str:
        return f"`{self.name}` has {self.gaps} turning gaps, and needs one"

    def hint(self) -> str:
        return "leave one gap, in the lining"


class LayerTooSmall(Problem):
    """A layer of a sandwich does not reach far enough beyond the first one.

    The lower layers draw in while they are quilted. Each must overhang the first by what the
    statement says, and must not be smaller than the one above it.

    Fails:

        ## Pieces
        | Piece   | From | Cut | Width         | Height        |
        |---------|------|-----|---------------|---------------|
        | cloth   | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | backing | A    | 1   | 32 cm (12 1/2 in) | 32 cm (12 1/2 in) |

        ## Steps
        1. Layer, trim and hem.

           ```sew
           mat = layer cloth, backing, overhanging 5 cm (2 in)
           trim mat to 30 cm (12 in) by 30 cm (12 in)
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece   | From | Cut | Width         | Height        |
        |---------|------|-----|---------------|---------------|
        | cloth   | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | backing | A    | 1   | 40 cm (16 in) | 40 cm (16 in) |

        ## Steps
        1. Layer, trim and hem.

           ```sew
           mat = layer cloth, backing, overhanging 5 cm (2 in)
           trim mat to 30 cm (12 in) by 30 cm (12 in)
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    name: str
    side: str
    has: str
    wants: str
    above: str

    def message(self) -> str:
        return f"`{self.name}` is {self.has} {self.side}, and over `{self.above}` it should be {self.wants}"

    def hint(self) -> str:
        return "cut it larger, or let it overhang less"


class DoesNotFit(Problem):
    """A thing that is fused or attached is larger than what it is put onto.

    It would hang over the edge. It fits when it lies inside, upright or turned by a quarter.

    Fails:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | patch  | A    | 1   | 32 cm (12 1/2 in) | 10 cm (4 in)  |

        ## Steps
        1. Fuse and hem.

           ```sew
           fuse patch to cloth
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | patch  | A    | 1   | 20 cm (8 in)  | 10 cm (4 in)  |

        ## Steps
        1. Fuse and hem.

           ```sew
           fuse patch to cloth
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    name: str
    size: str
    ground: str
    ground_size: str

    def message(self) -> str:
        return f"`{self.name}` ({self.size}) does not fit on `{self.ground}` ({self.ground_size})"

    def hint(self) -> str:
        return f"cut `{self.name}` smaller, or put it onto something larger"


class CannotBeTurned(Problem):
    """Two things are sewn together all round, and nothing was left open to turn them through.

    Name the side that stays open, or leave a gap.

    Fails:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Sew.

           ```sew
           mat = bag out cloth with cloth
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Sew.

           ```sew
           mat = bag out cloth with cloth, leaving 10 cm (4 in) open
           finish mat
           ```
    """

    name: str

    def message(self) -> str:
        return f"`{self.name}` is sewn all round, and nothing is left open to turn it through"

    def hint(self) -> str:
        return "leave a side open (`, top open`) or a gap (`, leaving 10 cm (4 in) open`)"
