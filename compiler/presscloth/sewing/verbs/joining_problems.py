"""What can be wrong where things are joined or lapped."""

from __future__ import annotations

from presscloth.problems import Problem


class NothingToJoin(Problem):
    """A row, a column or a sandwich is made of one thing alone, or of none.

    Fails:

        ## Steps
        1. Join and hem.

           ```sew
           mat = join cloth side by side
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
           mat = join 2 cloth side by side
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    name: str

    def message(self) -> str:
        return f"there is nothing to sew `{self.name}` to"

    def hint(self) -> str:
        return f"say how many, for example `2 {self.name}`, or name the others"


class BetweenMiscounted(Problem):
    """The number of things between others is not the number of places between them.

    Between four blocks are three places, and five when the two ends count.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width        | Height        |
        |-------|------|-----|--------------|---------------|
        | patch | A    | 3   | 10 cm (4 in) | 10 cm (4 in)  |
        | strip | A    | 3   | 7 cm (2 3/4 in) | 10 cm (4 in)  |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join 3 patch with 3 strip between side by side
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width        | Height        |
        |-------|------|-----|--------------|---------------|
        | patch | A    | 3   | 10 cm (4 in) | 10 cm (4 in)  |
        | strip | A    | 2   | 7 cm (2 3/4 in) | 10 cm (4 in)  |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join 3 patch with 2 strip between side by side
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    name: str
    given: int
    places: int

    def message(self) -> str:
        return f"{self.given} `{self.name}` are named, and there are {self.places} places for them"

    def hint(self) -> str:
        return f"write `{self.places} {self.name}`"


class SidesMakeNoPouch(Problem):
    """Two flat things are sewn together on sides that leave no pouch and no tube.

    A pouch is closed on three sides or on all, a tube on two opposite ones.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | front | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | back  | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Sew and hem.

           ```sew
           bag = join front to back on left, bottom
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | front | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | back  | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Sew and hem.

           ```sew
           bag = join front to back on left, right, bottom
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```
    """

    sides: tuple[str, ...]

    def message(self) -> str:
        return f"sewn on {', '.join(self.sides)} alone, the two make neither a pouch nor a tube"

    def hint(self) -> str:
        return "name three sides for a pouch, two opposite ones for a tube, or join one edge to another"


class LapTooWide(Problem):
    """A lap is not narrower than the things that it laps.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | flap  | A    | 2   | 12 cm (4 3/4 in)  | 30 cm (12 in) |

        ## Steps
        1. Hem and lap.

           ```sew
           hem all of flap by 1 cm (3/8 in)
           back = lap right of flap over right of flap by 15 cm (6 in)
           finish back
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | flap  | A    | 2   | 12 cm (4 3/4 in)  | 30 cm (12 in) |

        ## Steps
        1. Hem and lap.

           ```sew
           hem all of flap by 1 cm (3/8 in)
           back = lap right of flap over right of flap by 5 cm (2 in)
           finish back
           ```
    """

    lap: str
    name: str
    width: str

    def message(self) -> str:
        return f"a lap of {self.lap} is not narrower than `{self.name}`, which is {self.width}"

    def hint(self) -> str:
        return "lap less, or cut the two wider"


class RawEdgeLapped(Problem):
    """An edge that is lapped is still raw.

    Lapped edges lie open on the article. Hem or fold them first, or join them with a seam.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | flap  | A    | 2   | 20 cm (8 in)  | 30 cm (12 in) |

        ## Steps
        1. Lap and hem.

           ```sew
           back = lap right of flap over right of flap by 5 cm (2 in)
           hem all of back by 1 cm (3/8 in)
           finish back
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | flap  | A    | 2   | 20 cm (8 in)  | 30 cm (12 in) |

        ## Steps
        1. Hem and lap.

           ```sew
           hem right of flap by 1.2 cm (1/2 in) twice
           back = lap right of flap over right of flap by 5 cm (2 in)
           hem all of back by 1 cm (3/8 in)
           finish back
           ```
    """

    edge: str

    def message(self) -> str:
        return f"the {self.edge} is raw, and a lapped edge lies open"

    def hint(self) -> str:
        return "hem it before it is lapped, or join the two with a seam"
