"""What can be wrong with an edge that is to be sewn, and with its allowance."""

from __future__ import annotations

from presscloth.problems import Problem


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
           hem all of mat by 1.2 cm (1/2 in) twice
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
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    one: str
    other: str

    def message(self) -> str:
        return f"the seam allowances differ: {self.one}, {self.other}"

    def hint(self) -> str:
        return "say what the seam takes, for example `, taking 1 cm (3/8 in)` at the end of the statement"


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
           hem all of mat by 1.2 cm (1/2 in) twice
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
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    edge: str

    def message(self) -> str:
        return f"nothing says how wide the seam at the {self.edge} is"

    def hint(self) -> str:
        return "state `seam` under Measures, or end the statement with `, taking 1 cm (3/8 in)`"


class EdgeNotRaw(Problem):
    """A statement sews an edge that is no longer raw.

    A hemmed, bound, folded or sewn edge has no allowance left to sew with. It can be lapped over
    another one, and other things can be attached to it; or it is to be joined before it is hemmed. Where
    two things are sewn right sides together, the second lies face down on the first: its right edge comes
    to lie on the left one.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Hem and join.

           ```sew
           hem right of cloth by 1.2 cm (1/2 in) twice
           mat = join right of cloth to right of cloth
           hem all of mat by 1.2 cm (1/2 in) twice
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
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    edge: str
    state: str
    doing: str
    lies_on: str = ""

    def message(self) -> str:
        where = f"; face down it lies on the {self.lies_on}" if self.lies_on else ""
        return f"the {self.edge} is {self.state} and cannot be {self.doing}{where}"

    def hint(self) -> str:
        if self.lies_on:
            return "the second lies face down: what is its right lies on the left of the first"
        return "sew it before it is finished, or lap or attach it"


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
           hem bottom of bag by 1.2 cm (1/2 in) twice
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
           hem top of bag by 1.2 cm (1/2 in) twice
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
