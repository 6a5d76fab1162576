"""What can be wrong with outlines as they are written."""

from __future__ import annotations

from presscloth.problems import Problem
from presscloth.recipe.words import nearest


class RunUnclear(Problem):
    """An item under Outlines does not say how the outline goes on.

    A run says where it goes and what the edge is called; after commas may stand how it is bent, where
    it is notched, and an allowance of its own. A run that is not read would leave the outline open.

    Fails:

        ## Outlines

        ### patch
        - right 10 cm (4 in) as top
        - down 10 cm (4 in)
        - left 10 cm (4 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | patch | A    | 1   | outline |

        ## Steps
        1. Done.

           ```sew
           hem all of patch by 1 cm (3/8 in)
           finish patch
           ```

    Passes:

        ## Outlines

        ### patch
        - right 10 cm (4 in) as top
        - down 10 cm (4 in) as right
        - left 10 cm (4 in) as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | patch | A    | 1   | outline |

        ## Steps
        1. Done.

           ```sew
           hem all of patch by 1 cm (3/8 in)
           finish patch
           ```
    """

    why: str

    def message(self) -> str:
        return f"`{self.span.quoted}` {self.why}"

    def hint(self) -> str:
        return (
            "write for example `right 12 cm (4 3/4 in) as top`, `right 4 cm (1 1/2 in) and down 9 cm"
            " (3 1/2 in) as side, hollowed by 1 cm (3/8 in)`, `back to the start as left`, `on the fold`"
        )


class OutlineUnknown(Problem):
    """A piece is cut by an outline that is not drawn under Outlines.

    Nobody can cut it, and no template of it can be printed.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Shape        |
        |-------|------|-----|---------------|---------------|--------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |              |
        | patch | A    | 1   |               |               | outline leaf |

        ## Steps
        1. Done.

           ```sew
           attach patch to cloth
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Outlines

        ### leaf
        - right 9 cm (3 1/2 in) as upper edge, arched by 2 cm (3/4 in)
        - left 9 cm (3 1/2 in) as lower edge, arched by 2 cm (3/4 in)

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Shape        |
        |-------|------|-----|---------------|---------------|--------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |              |
        | patch | A    | 1   |               |               | outline leaf |

        ## Steps
        1. Done.

           ```sew
           attach patch to cloth
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    outline: str
    known: tuple[str, ...]

    def message(self) -> str:
        return f"there is no outline `{self.outline}`"

    def hint(self) -> str:
        meant = nearest(self.outline, self.known)
        if meant:
            return f"write `outline {meant}`"
        return f"draw it under `## Outlines`, with the heading `### {self.outline}`"


class OutlineNotUsed(Problem):
    """An outline is drawn, and no piece is cut by it.

    Its template would not be printed; perhaps the piece that should have it is cut as a rectangle.

    Fails:

        ## Outlines

        ### leaf
        - right 9 cm (3 1/2 in) as upper edge, arched by 2 cm (3/4 in)
        - left 9 cm (3 1/2 in) as lower edge, arched by 2 cm (3/4 in)

    Passes:

        ## Outlines

        ### leaf
        - right 9 cm (3 1/2 in) as upper edge, arched by 2 cm (3/4 in)
        - left 9 cm (3 1/2 in) as lower edge, arched by 2 cm (3/4 in)

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Shape        |
        |-------|------|-----|---------------|---------------|--------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |              |
        | patch | A    | 1   |               |               | outline leaf |

        ## Steps
        1. Done.

           ```sew
           attach patch to cloth
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    outline: str

    def message(self) -> str:
        return f"no piece is cut by the outline `{self.outline}`"

    def hint(self) -> str:
        return f"write `outline {self.outline}` as the Shape of a piece, or take the outline out"


class OutlineTwice(Problem):
    """Two outlines have one name.

    Fails:

        ## Outlines

        ### leaf
        - right 9 cm (3 1/2 in) as upper edge, arched by 2 cm (3/4 in)
        - left 9 cm (3 1/2 in) as lower edge, arched by 2 cm (3/4 in)

        ### leaf
        - right 8 cm (3 1/8 in) as upper edge, arched by 2 cm (3/4 in)
        - left 8 cm (3 1/8 in) as lower edge, arched by 2 cm (3/4 in)

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Shape        |
        |-------|------|-----|---------------|---------------|--------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |              |
        | patch | A    | 1   |               |               | outline leaf |

        ## Steps
        1. Done.

           ```sew
           attach patch to cloth
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Outlines

        ### leaf
        - right 9 cm (3 1/2 in) as upper edge, arched by 2 cm (3/4 in)
        - left 9 cm (3 1/2 in) as lower edge, arched by 2 cm (3/4 in)

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Shape        |
        |-------|------|-----|---------------|---------------|--------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |              |
        | patch | A    | 1   |               |               | outline leaf |

        ## Steps
        1. Done.

           ```sew
           attach patch to cloth
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    outline: str

    def message(self) -> str:
        return f"the outline `{self.outline}` is drawn twice"

    def hint(self) -> str:
        return "give one of the two another name, or take it out"


class OutlineChosen(Problem):
    """An outline depends on a measure that is the reader's to choose.

    A template is printed once, for the measure as it is stated; a reader who chooses another would cut
    by a template that no longer fits what the page says.

    Fails:

        ## Measures
        - side = 30 cm (12 in), yours to choose from 20 cm (8 in) to 40 cm (16 in)

        ## Outlines

        ### cloth
        - right side as top
        - down side as right
        - left side as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |

    Passes:

        ## Measures
        - side = 30 cm (12 in)

        ## Outlines

        ### cloth
        - right side as top
        - down side as right
        - left side as bottom
        - back to the start as left

        ## Pieces
        | Piece | From | Cut | Shape   |
        |-------|------|-----|---------|
        | cloth | A    | 1   | outline |
    """

    outline: str
    measure: str

    def message(self) -> str:
        return f"the outline `{self.outline}` depends on `{self.measure}`, which is the reader's to choose"

    def hint(self) -> str:
        return "make it a size of its own under Sizes, or take the choice from the measure"
