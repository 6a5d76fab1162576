"""What can be wrong with numbers and names in a statement."""

from __future__ import annotations

from presscloth.problems import Problem
from presscloth.sewing.wording import several


class NameStillTaken(Problem):
    """A new thing takes a name while others of that name are left.

    Two different things would bear one name. Say how many are made, so that all of them are used,
    or choose another name.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Hem them.

           ```sew
           cloth = hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Hem them.

           ```sew
           2 cloth = hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    name: str
    left: int
    made: int

    def message(self) -> str:
        verb = "is" if self.left == 1 else "are"
        return f"{several(self.left, self.name)} {verb} still there, and the new one would bear the same name"

    def hint(self) -> str:
        return f"write `{self.made + self.left} {self.name} = …` to use them all, or choose another name"


class DoesNotComeOut(Problem):
    """A number of things cannot be made in whole goes.

    Two squares give two units at a time, or four, or eight; a number between would leave some over.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | light | A    | 1   | 12 cm (4 3/4 in)  | 12 cm (4 3/4 in)  |
        | dark  | A    | 1   | 12 cm (4 3/4 in)  | 12 cm (4 3/4 in)  |

        ## Steps
        1. Pair, join and hem.

           ```sew
           3 unit = pair light with dark into 2
           mat = join 3 unit side by side
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | light | A    | 1   | 12 cm (4 3/4 in)  | 12 cm (4 3/4 in)  |
        | dark  | A    | 1   | 12 cm (4 3/4 in)  | 12 cm (4 3/4 in)  |

        ## Steps
        1. Pair, join and hem.

           ```sew
           2 unit = pair light with dark into 2
           mat = join 2 unit side by side
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```
    """

    wanted: int
    name: str
    at_once: int

    def message(self) -> str:
        return f"{several(self.wanted, self.name)} cannot be made {self.at_once} at a time"

    def hint(self) -> str:
        more = -(-self.wanted // self.at_once) * self.at_once
        return f"make {more}, or another number that {self.at_once} divides"


class NumberOutOfPlace(Problem):
    """A number stands before a thing of which there can be only one.

    The number before the name that is made says how often the statement is carried out. Numbers
    inside are for one result, and a thing that is changed gives one result.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Hem them.

           ```sew
           hem all of 2 cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Hem them.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    name: str
    count: int

    def message(self) -> str:
        return f"`{self.count} {self.name}`: the numbers inside a statement are for one result"

    def hint(self) -> str:
        return f"leave the number out here; `{self.count} … =` before the verb says how many are made"


class TooManyAtOnce(Problem):
    """A statement names more things at once than anybody sews.

    A unit is missing, or a measure stands where a number was meant.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width        | Height       |
        |-------|------|-----|--------------|--------------|
        | patch | A    | 4   | 10 cm (4 in) | 10 cm (4 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join 40000 patch side by side
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width        | Height       |
        |-------|------|-----|--------------|--------------|
        | patch | A    | 4   | 10 cm (4 in) | 10 cm (4 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join 4 patch side by side
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    name: str
    count: int
    most: int

    def message(self) -> str:
        return (
            f"{self.count} `{self.name}` in one statement are more than the {self.most} that are carried out"
        )

    def hint(self) -> str:
        return "look at the number, or sew smaller parts first"
