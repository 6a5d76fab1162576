"""What can be wrong where things are folded."""

from __future__ import annotations

from presscloth.problems import Problem


class FoldUnclear(Problem):
    """Lengthways or across is said of a thing of which no side is the longer one.

    Lengthways halves the shorter side and across the longer one. Where both are equal, or where one
    is longer in metric and the other in imperial or in another size, nobody knows which is meant.

    Fails:

        ## Steps
        1. Hem and fold.

           ```sew
           napkin = hem all of cloth by 1.2 cm (1/2 in) twice
           folded = fold napkin lengthways
           finish folded
           ```

    Passes:

        ## Steps
        1. Hem and fold.

           ```sew
           napkin = hem all of cloth by 1.2 cm (1/2 in) twice
           folded = fold napkin side to side
           finish folded
           ```
    """

    name: str
    width: str
    height: str
    way: str

    def message(self) -> str:
        return f"`{self.name}` is {self.width} wide and {self.height} high: which side is folded {self.way}?"

    def hint(self) -> str:
        return "say `side to side` (halves the width) or `top to bottom` (halves the height)"


class SeamNotInTheMiddle(Problem):
    """A thing is folded at its last seam, and the seam does not lie in the middle.

    One half would stand out beyond the other. Both halves must be equally high.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | front | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | back  | A    | 1   | 30 cm (12 in) | 35 cm (14 in) |

        ## Steps
        1. Join, fold and hem.

           ```sew
           long = join bottom of front to top of back
           bag = fold long in half at the seam, join sides
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
        1. Join, fold and hem.

           ```sew
           long = join bottom of front to top of back
           bag = fold long in half at the seam, join sides
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```
    """

    name: str
    seam: str | None
    middle: str

    def message(self) -> str:
        if self.seam is None:
            return f"`{self.name}` has no seam from side to side to fold it at"
        return f"the seam of `{self.name}` lies {self.seam} from its top, the middle {self.middle}"

    def hint(self) -> str:
        return "make the parts above and below the seam equally high, or leave out `at the seam`"


class OpeningUneven(Problem):
    """The two sides of an opening are not alike: one is raw and the other finished, or one is longer.

    They could be neither hemmed nor lined as one. Finish both alike before they are brought together.

    Fails:

        ## Steps
        1. Hem, fold and sew.

           ```sew
           hem top of cloth by 1.2 cm (1/2 in) twice
           bag = fold cloth in half, join sides
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```

    Passes:

        ## Steps
        1. Hem, fold and sew.

           ```sew
           hem top, bottom of cloth by 1.2 cm (1/2 in) twice
           bag = fold cloth in half, join sides
           finish bag
           ```
    """

    name: str
    one: str
    other: str

    def message(self) -> str:
        return f"the two sides of the opening of `{self.name}` are not alike: {self.one}, {self.other}"

    def hint(self) -> str:
        return "finish both alike, or leave both raw, before they come together"


class FoldDiffers(Problem):
    """Lengthways or across halves the width in one size and the height in another.

    The steps are the same for all sizes, and so is the picture of the fold. Say which side is meant.

    Fails:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 25 cm (10 in) |
        | Large | 40 cm (16 in) |

        ## Pieces
        | Piece | From | Cut | Width | Height        |
        |-------|------|-----|-------|---------------|
        | cloth | A    | 1   | side  | 30 cm (12 in) |

        ## Steps
        1. Hem and fold.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           pad = fold cloth lengthways
           finish pad
           ```

    Passes:

        ## Sizes
        | Size  | side          |
        |-------|---------------|
        | Small | 25 cm (10 in) |
        | Large | 40 cm (16 in) |

        ## Pieces
        | Piece | From | Cut | Width | Height        |
        |-------|------|-----|-------|---------------|
        | cloth | A    | 1   | side  | 30 cm (12 in) |

        ## Steps
        1. Hem and fold.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           pad = fold cloth side to side
           finish pad
           ```
    """

    halves: tuple[tuple[str, str], ...]

    def message(self) -> str:
        each = " and ".join(f"the {side} in {size}" for size, side in self.halves)
        return f"this fold halves {each}"

    def hint(self) -> str:
        return "say `side to side` (halves the width) or `top to bottom` (halves the height)"
