"""What can be wrong with the lines of a drawn outline: its seam line, its cutting line, its notches."""

from __future__ import annotations

from presscloth.problems import Problem


class NotchOutsideEdge(Problem):
    """A notch lies beyond the end of its run.

    Fails:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top, notched at 32 cm (12 1/2 in)
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
        - right 30 cm (12 in) as top, notched in the middle
        - down 30 cm (12 in) as right
        - left 30 cm (12 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |
    """

    edge: str
    length: str

    def message(self) -> str:
        return f"a notch lies beyond the run `{self.edge}`, which is {self.length} long"

    def hint(self) -> str:
        return "measure the notch from the beginning of its run, along the seam line"


class OutlineCrossesItself(Problem):
    """Two edges of an outline cross or touch.

    Fails:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top
        - left 30 cm (12 in) and down 30 cm (12 in) as right
        - right 30 cm (12 in) as bottom
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
    edges: tuple[str, str]

    def message(self) -> str:
        one, other = self.edges
        if one == other:
            return f"the edge `{one}` of `{self.outline}` crosses itself"
        return f"in the outline `{self.outline}`, `{one}` crosses `{other}`"

    def hint(self) -> str:
        return "look at the directions and measures of the two runs, and at how far they are bent"


class AllowanceCrosses(Problem):
    """The cutting line crosses itself, though the seam line does not.

    The seam allowance is wider than a hollow curve is round, or than a gap is wide: at the cutting
    table the two lines would run through each other.

    Fails:

        ## Outlines

        ### cloth
        - right 12 cm (4 3/4 in) as top
        - down 10 cm (4 in) as near
        - right 6 mm (1/4 in) as floor
        - up 10 cm (4 in) as far
        - right 12 cm (4 3/4 in) as upper
        - down 30 cm (12 in) as right
        - left 24 cm (9 1/2 in) + 6 mm (1/4 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |

        ## Steps
        1. Fray the edges.

           ```sew
           finish cloth
           ```

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

    piece: str

    def message(self) -> str:
        return (
            f"the cutting line of `{self.piece}` crosses itself: an allowance is wider than the hollow"
            " that it lies in"
        )

    def hint(self) -> str:
        return "give the hollow edge a narrower `allowance`, or draw it wider"


class OutlineWithoutAllowance(Problem):
    """An outline is a seam line, and nothing says how much is added for the seams.

    Fails:

        ## Outlines

        ### cloth
        - right 30 cm (12 in) as top
        - down 30 cm (12 in) as right
        - left 30 cm (12 in) as bottom
        - back to the start as left, allowance seam - 2 cm (3/4 in)

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

    piece: str
    edge: str

    def message(self) -> str:
        return f"the edge `{self.edge}` of `{self.piece}` has no seam allowance that can be added to it"

    def hint(self) -> str:
        return "give it `allowance 1 cm (3/8 in)` or `no allowance`, or define the measure `seam`"
