"""What can be wrong where things are stitched out, trimmed or cut into segments."""

from __future__ import annotations

from typing import ClassVar

from presscloth.problems import Problem, Severity


class StitchingOutsideField(Problem):
    """What is stitched out is larger than the field of the machine.

    Fields are compared in millimetres, never by the names of hoops: a field that is called 4 in is
    100 mm, which is less than 4 in. The stitching may lie either way round in the field.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Stitch out and hem.

           ```sew
           panel = stitch out cloth, 10 cm (4 in) by 9 cm (3 1/2 in), in exactly 100 mm by exactly 100 mm
           hem all of panel by 1.2 cm (1/2 in) twice
           finish panel
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Stitch out and hem.

           ```sew
           panel = stitch out cloth, 9 cm (3 1/2 in) by 9 cm (3 1/2 in), in exactly 100 mm by exactly 100 mm
           hem all of panel by 1.2 cm (1/2 in) twice
           finish panel
           ```
    """

    size: str
    field: str

    def message(self) -> str:
        return f"the stitching, {self.size}, does not fit into the field of {self.field}"

    def hint(self) -> str:
        return "make the design smaller, or name a larger field"


class FieldUnusual(Problem):
    """A stitch field is not in whole centimetres.

    Machines have fields of 100 × 100 mm, 130 × 180 mm, 200 × 300 mm and the like. A field of 101 mm is
    a slip of the pen, or the name of a hoop that was converted: measure the field in millimetres.

    Fails:

        ## Steps
        1. Stitch out and hem.

           ```sew
           panel = stitch out cloth, 9 cm (3 1/2 in) by 9 cm (3 1/2 in), in exactly 102 mm by exactly 102 mm
           hem all of panel by 1.2 cm (1/2 in) twice
           finish panel
           ```

    Passes:

        ## Steps
        1. Stitch out and hem.

           ```sew
           panel = stitch out cloth, 9 cm (3 1/2 in) by 9 cm (3 1/2 in), in exactly 100 mm by exactly 100 mm
           hem all of panel by 1.2 cm (1/2 in) twice
           finish panel
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING

    field: str

    def message(self) -> str:
        return f"a stitch field of {self.field} is not in whole centimetres"

    def hint(self) -> str:
        return "look the field up in the machine's manual, in millimetres"


class ClothSmallerThanField(Problem):
    """The cloth is smaller than the field in which it is to be stitched out.

    It could not be hooped. Cut it as large as the field and some centimetres more.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width        | Height       |
        |-------|------|-----|--------------|--------------|
        | cloth | A    | 1   | 9 cm (3 1/2 in) | 30 cm (12 in) |

        ## Steps
        1. Stitch out and hem.

           ```sew
           panel = stitch out cloth, 5 cm (2 in) by 5 cm (2 in), in exactly 100 mm by exactly 100 mm
           hem all of panel by 1.2 cm (1/2 in) twice
           finish panel
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 15 cm (6 in)  | 30 cm (12 in) |

        ## Steps
        1. Stitch out and hem.

           ```sew
           panel = stitch out cloth, 5 cm (2 in) by 5 cm (2 in), in exactly 100 mm by exactly 100 mm
           hem all of panel by 1.2 cm (1/2 in) twice
           finish panel
           ```
    """

    name: str
    size: str
    field: str

    def message(self) -> str:
        return f"`{self.name}` is {self.size}, smaller than the field of {self.field}"

    def hint(self) -> str:
        return "cut it as large as the field and enough to hoop it by"


class TrimmedLarger(Problem):
    """A thing is trimmed to a size that is larger than it is.

    Scissors take away, they do not add. Of a sandwich, the smallest layer counts.

    Fails:

        ## Steps
        1. Trim and hem.

           ```sew
           trim cloth to 32 cm (12 1/2 in) by 30 cm (12 in)
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Trim and hem.

           ```sew
           trim cloth to 28 cm (11 in) by 28 cm (11 in)
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    name: str
    side: str
    has: str
    wants: str

    def message(self) -> str:
        return f"`{self.name}` is {self.has} {self.side} and cannot be trimmed to {self.wants}"

    def hint(self) -> str:
        return "cut it larger, or trim it to less"


class TooFewSegments(Problem):
    """Fewer segments can be cut from what is there than are wanted.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | strip | A    | 2   | 40 cm (16 in) | 6 cm (2 3/8 in) |

        ## Steps
        1. Join, cut and hem.

           ```sew
           band = join 2 strip top to bottom
           8 segment = cut 6 cm (2 3/8 in) wide from band
           mat = join 8 segment side by side
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | strip | A    | 2   | 40 cm (16 in) | 6 cm (2 3/8 in) |

        ## Steps
        1. Join, cut and hem.

           ```sew
           band = join 2 strip top to bottom
           6 segment = cut 6 cm (2 3/8 in) wide from band
           mat = join 6 segment side by side
           hem all of mat by 1.2 cm (1/2 in) twice
           finish mat
           ```
    """

    wanted: int
    name: str
    each: int
    given: int

    def message(self) -> str:
        return (
            f"{self.wanted} segments are wanted; {self.given} `{self.name}` give {self.given * self.each}, "
            f"{self.each} each"
        )

    def hint(self) -> str:
        return "use more, make them longer, or cut narrower segments"


class FewerWouldDo(Problem):
    """Segments are cut from more than is needed for them.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | strip | A    | 2   | 40 cm (16 in) | 6 cm (2 3/8 in) |

        ## Steps
        1. Cut, join and hem.

           ```sew
           6 segment = cut 6 cm (2 3/8 in) wide from 2 strip
           mat = join 6 segment side by side
           hem all of mat by 1.2 cm (1/2 in)
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | strip | A    | 1   | 40 cm (16 in) | 6 cm (2 3/8 in) |

        ## Steps
        1. Cut, join and hem.

           ```sew
           6 segment = cut 6 cm (2 3/8 in) wide from strip
           mat = join 6 segment side by side
           hem all of mat by 1.2 cm (1/2 in)
           finish mat
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING

    wanted: int
    name: str
    given: int
    enough: int

    def message(self) -> str:
        return f"{self.wanted} segments are cut from {self.given} `{self.name}`; {self.enough} would do"

    def hint(self) -> str:
        return f"use {self.enough}, or cut more segments"
