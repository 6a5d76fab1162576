"""What can be wrong with the runs of an outline, once their lengths are known."""

from __future__ import annotations

from presscloth.problems import Problem


class OutlineDoesNotClose(Problem):
    """The last run of an outline does not end where the first began.

    What is cut along such a line is not the piece that was meant, and nobody can say which run is
    wrong. Where the last run simply goes back, let the compiler work it out.

    Fails:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top
        - down 30 cm (12 in) as right
        - left 29 cm (11 1/2 in) as bottom
        - up 30 cm (12 in) as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |

    Passes:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top
        - down 30 cm (12 in) as right
        - left 30 cm (12 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |
    """

    outline: str
    gap: str

    def message(self) -> str:
        return f"the outline `{self.outline}` does not close: it ends {self.gap} from where it began"

    def hint(self) -> str:
        return "correct a run, or let the last one go `back to the start as` its edge"


class FoldNotStraight(Problem):
    """The fold of an outline would be slanted, or there is none.

    What is cut on the fold, or mirrored, is drawn as a half; the line from the end of its last run to
    its start is the fold, and must run straight up and down or level.

    Fails:

        ## Outlines

        ### cloth
        - right 15 cm (6 in) as top
        - down 30 cm (12 in) as right
        - left 14 cm (5 1/2 in) as bottom
        - on the fold

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |

    Passes:

        ## Outlines

        ### cloth
        - right 15 cm (6 in) as top
        - down 30 cm (12 in) as right
        - left 15 cm (6 in) as bottom
        - on the fold

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |
    """

    outline: str
    gap: str

    def message(self) -> str:
        return (
            f"the fold of `{self.outline}` is neither upright nor level: the half ends {self.gap}"
            " from where it began"
        )

    def hint(self) -> str:
        return "let the last run end right below, above or beside the start"


class ArcImpossible(Problem):
    """There is no such arc between the two ends of a run.

    An arc rises by half the distance between its ends at the most (then it is half a circle), and its
    radius is no less than that half.

    Fails:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top, arched by 20 cm (8 in)
        - down 30 cm (12 in) as right
        - left 30 cm (12 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |

    Passes:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top, arched by 6 cm (2 3/8 in)
        - down 30 cm (12 in) as right
        - left 30 cm (12 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |
    """

    edge: str
    chord: str
    by_radius: bool

    def message(self) -> str:
        least = (
            "with a radius of at least half of that" if self.by_radius else "rising by half of that at most"
        )
        return f"the ends of `{self.edge}` are {self.chord} apart: an arc goes between them {least}"

    def hint(self) -> str:
        return "make the radius larger" if self.by_radius else "let it rise by less, or draw a `curve`"


class RunGoesNowhere(Problem):
    """A run ends where it begins, or a curve has two points in one place.

    Fails:

        ## Measures
        - step = 0 cm (0 in)

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top
        - down step as corner
        - down 30 cm (12 in) as right
        - left 30 cm (12 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |

    Passes:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top
        - down 30 cm (12 in) as right
        - left 30 cm (12 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |
    """

    edge: str

    def message(self) -> str:
        return f"the run `{self.edge}` goes nowhere"

    def hint(self) -> str:
        return "take the run out, or look at the measures in it"


class EdgeInPieces(Problem):
    """Two runs that do not follow each other have one name.

    Runs of one name that follow each other are one edge. Apart, nobody could say which of them a seam
    means. In a mirrored outline, `side` is there as `left side` and `right side`.

    Fails:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as rim
        - down 30 cm (12 in) as right
        - left 30 cm (12 in) as rim
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |

    Passes:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top
        - down 30 cm (12 in) as right
        - left 30 cm (12 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |
    """

    outline: str
    edge: str

    def message(self) -> str:
        return f"`{self.outline}` has two edges called `{self.edge}`"

    def hint(self) -> str:
        return "give one of the two another name"
