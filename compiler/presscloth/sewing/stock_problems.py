"""What can be wrong with how many there are: too few cut, too few made, something left over."""

from __future__ import annotations

from presscloth.frozen import dataclass
from presscloth.problems import Problem
from presscloth.sewing.wording import several
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Marked:
    """A block that uses a thing and is left out: its step, and the words of the mark that take it along."""

    step: int
    mark: str
    span: Span

    @property
    def words(self) -> str:
        return f"what uses it in step {self.step} belongs to `{self.mark}`"

    @property
    def way_out(self) -> str:
        return f"put its block below a paragraph of step {self.step} that does not begin with `{self.mark}`"


class TooFewCut(Problem):
    """A statement uses more of a piece than there are.

    A piece can be sewn in once. Cut more of it, or look whether it was used before.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Join and hem.

           ```sew
           mat = join 2 cloth side by side
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
    wanted: int
    cut: int
    left: int

    def message(self) -> str:
        used = self.cut - self.left
        before = f", and {used} used before" if used else ""
        return f"{several(self.wanted, self.name)} wanted, {self.cut} cut{before}"

    def hint(self) -> str:
        return f"cut {self.cut + self.wanted - self.left} `{self.name}`, or use fewer"


class TooFewMade(Problem):
    """A statement uses more of a sewn thing than were made.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | patch | A    | 4   | 10 cm (4 in)  | 10 cm (4 in)  |

        ## Steps
        1. Join and hem.

           ```sew
           row = join 4 patch side by side
           mat = join 2 row top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | patch | A    | 4   | 10 cm (4 in)  | 10 cm (4 in)  |

        ## Steps
        1. Join and hem.

           ```sew
           2 row = join 2 patch side by side
           mat = join 2 row top to bottom
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    name: str
    wanted: int
    made: int
    left: int

    def message(self) -> str:
        used = self.made - self.left
        before = f", and {used} used before" if used else ""
        return f"{several(self.wanted, self.name)} wanted, {self.made} made{before}"

    def hint(self) -> str:
        return f"make more `{self.name}` (the number stands before the name), or use fewer"


class UsedBeforeMade(Problem):
    """A statement uses a thing that does not exist yet.

    Fails:

        ## Steps
        1. Hem and fold.

           ```sew
           hem all of napkin by 1.2 cm (1/2 in) twice
           napkin = fold cloth side to side
           finish napkin
           ```

    Passes:

        ## Steps
        1. Hem and fold.

           ```sew
           napkin = hem all of cloth by 1.2 cm (1/2 in) twice
           finish napkin
           ```
    """

    name: str

    def message(self) -> str:
        return f"there is no `{self.name}` yet"

    def hint(self) -> str:
        return "make it in an earlier statement, or change the order of the steps"


class PieceLeftOver(Problem):
    """A piece was cut and never sewn in.

    Either a step is missing, or fewer are to be cut. Pieces that are cut besides are marked
    `spare 1` in the notes of their row. A block right below a paragraph that begins with `Child only:` or
    `Optional:` is left out with it.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 2   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Hem it.

           ```sew
           napkin = hem all of cloth by 1.2 cm (1/2 in) twice
           finish napkin
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Hem it.

           ```sew
           napkin = hem all of cloth by 1.2 cm (1/2 in) twice
           finish napkin
           ```
    """

    name: str
    left: int
    cut: int
    under: Marked | None = None
    row: str = ""

    def message(self) -> str:
        verb = "is" if self.left == 1 else "are"
        sewn = self.cut - self.left
        why = f"; {self.under.words}" if self.under else ""
        return f"{several(self.left, self.name)} {verb} left over: {self.cut} cut, {sewn} sewn in{why}"

    def hint(self) -> str:
        if self.under is not None:
            return self.under.way_out
        if self.row:
            join = f"join {self.cut} {self.name} {self.row}"
            return f"to sew {self.cut} `{self.name}` to one another, write `{join}`"
        if self.left == self.cut:
            return f"sew it in, take its row away, or note `spare {self.left}`"
        return f"cut {self.cut - self.left}, sew the rest in, or note `spare {self.left}`"


class ThingLeftOver(Problem):
    """Something was sewn, and is neither used nor finished in the end.

    A block right below a paragraph that begins with `Child only:` or `Optional:` is left out with it; then
    the message names the step and the mark.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | tab   | A    | 1   | 5 cm (2 in)   | 10 cm (4 in)  |

        ## Steps
        1. Hem it and fold the tab.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           loop = fold tab lengthways in four
           finish cloth
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | tab   | A    | 1   | 5 cm (2 in)   | 10 cm (4 in)  |

        ## Steps
        1. Hem it and fold the tab.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           loop = fold tab lengthways in four
           attach loop to cloth
           finish cloth
           ```
    """

    name: str
    left: int
    under: Marked | None = None

    def message(self) -> str:
        verb = "is" if self.left == 1 else "are"
        why = f": {self.under.words}" if self.under else ""
        return f"{several(self.left, self.name)} {verb} left over after the last step{why}"

    def hint(self) -> str:
        if self.under is not None:
            return self.under.way_out
        return f"sew it in, or say `finish {self.name}` if it is an article by itself"


class NotCutHere(Problem):
    """A statement uses a piece that this size does not cut.

    Fails:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Large | 40 cm (16 in) |

        ## Pieces
        | Piece | From | Cut | Width        | Height        | Sizes |
        |-------|------|-----|--------------|---------------|-------|
        | cloth | A    | 1   | side         | side          |       |
        | tab   | A    | 1   | 5 cm (2 in)  | 10 cm (4 in)  | Large |

        ## Steps
        1. Hem it and attach the tab.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach tab to cloth
           finish cloth
           ```

    Passes:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 30 cm (12 in) |
        | Large | 40 cm (16 in) |

        ## Pieces
        | Piece | From | Cut | Width        | Height        |
        |-------|------|-----|--------------|---------------|
        | cloth | A    | 1   | side         | side          |
        | tab   | A    | 1   | 5 cm (2 in)  | 10 cm (4 in)  |

        ## Steps
        1. Hem it and attach the tab.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach tab to cloth
           finish cloth
           ```
    """

    name: str

    def message(self) -> str:
        return f"`{self.name}` is not cut in this size"

    def hint(self) -> str:
        return "let the row of Pieces name this size too, or begin the step with the sizes that have it"
