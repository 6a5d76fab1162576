"""What can be wrong with measures once they are worked out."""

from __future__ import annotations

from presscloth.measure import Disagreement
from presscloth.problems import Problem


def a(word: str) -> str:
    """`a length`, `an area`"""
    return f"an {word}" if word[:1] in "aeiou" else f"a {word}"


class PairDisagrees(Problem):
    """The two halves of a pair are not the same measure.

    One of them is a slip. Whoever follows the wrong half cuts pieces that do not fit the pattern,
    and every measure that is computed from it is wrong as well. A pair agrees within 1 mm below
    2.5 cm (1 in), within 1.6 mm from there on, and within 2.5 % where the metric value is a whole or
    half centimetre; 6 % when it is `about`, and 5 % for weights.

    Fails:

        ## Measures
        - base = 7.5 cm (2 in)

    Passes:

        ## Measures
        - base = 7.5 cm (3 in)
    """

    disagreement: Disagreement

    def message(self) -> str:
        found = self.disagreement
        return (
            f"{found.stated.metric} and {found.stated.imperial} are {found.apart_text} apart, "
            f"{found.share_text} of the larger"
        )

    def hint(self) -> str:
        return f"write {' or '.join(f'`{pair}`' for pair in self.disagreement.suggestions)}"


class BecomesNothing(Problem):
    """A value is so small that nothing of it is left in the other system.

    It would be printed as 0 there. `exactly` keeps the conversion as it is.

    Fails:

        ## Measures
        - thickness = 0.1 mm

    Passes:

        ## Measures
        - thickness = exactly 0.1 mm
    """

    stated: str
    system: str
    grid: str

    def message(self) -> str:
        return f"{self.stated} carried over to {self.system} and rounded to {self.grid} is nothing"

    def hint(self) -> str:
        return f"write `exactly {self.stated}`, or state both values"


class UnlikeMeasures(Problem):
    """A length, an area, a weight or a plain number is added to or compared with another kind.

    Five centimetres and three have no sum. Give the number its unit, or multiply instead.

    Fails:

        ## Measures
        - band = 5 cm (2 in)
        - strip = band + 2

    Passes:

        ## Measures
        - band = 5 cm (2 in)
        - strip = band × 2
    """

    left: str
    right: str

    def message(self) -> str:
        return f"{a(self.left)} and {a(self.right)} cannot be added or compared"

    def hint(self) -> str:
        if "number" in (self.left, self.right):
            return "give the plain number a unit, or multiply by it"
        return f"use {a(self.left)} on both sides"


class MeasuresNothing(Problem):
    """A product, a quotient or a root measures nothing that there is.

    Fails:

        ## Measures
        - band = 5 cm (2 in)
        - strip = 2 / band

    Passes:

        ## Measures
        - band = 5 cm (2 in)
        - strip = band / 2
    """

    what: str

    def message(self) -> str:
        return f"{self.what} measures nothing that there is"

    def hint(self) -> str:
        if self.what.startswith("the root"):
            return "take the root of an area, which is a length, or of a plain number"
        return "look which of the two should be a plain number"


class DividesByNothing(Problem):
    """A measure is divided by one that is nothing.

    Fails:

        ## Measures
        - band = 5 cm (2 in)
        - share = band / (band - band)

    Passes:

        ## Measures
        - band = 5 cm (2 in)
        - share = band / 2
    """

    divisor: str

    def message(self) -> str:
        return f"`{self.divisor}` is nothing, and nothing can be divided by it"

    def hint(self) -> str:
        return f"look at what makes `{self.divisor}` nothing"


class RootOfNegative(Problem):
    """A root is taken of something below nothing.

    Fails:

        ## Measures
        - band = 5 cm (2 in)
        - slant = sqrt(band × band - 2 × band × band)

    Passes:

        ## Measures
        - band = 5 cm (2 in)
        - slant = sqrt(band × band + band × band)
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` is a root of something below nothing"

    def hint(self) -> str:
        return "look at the signs inside the brackets"


class StepUnclear(Problem):
    """Something is rounded to a step that is missing, of another kind, or not greater than nothing.

    Nobody can say to what it should be rounded. A length is rounded to a length, a plain number to a
    plain number.

    Fails:

        ## Measures
        - band = round up(5 cm (2 in))

    Passes:

        ## Measures
        - band = round up(5 cm (2 in) to 1 cm (1/2 in))
    """

    kinds: tuple[str, str] | None = None

    def message(self) -> str:
        if self.kinds is not None:
            of, step = self.kinds
            return f"`{self.span.quoted}` rounds {a(of)} to a step that is {a(step)}"
        return f"`{self.span.quoted}` does not say to what step it is rounded"

    def hint(self) -> str:
        return "write the step after `to`: `round up(… to 1 cm (1/2 in))`"


class BeyondReckoning(Problem):
    """A number has grown beyond anything that is sewn, or a measure hangs on too many others.

    Fails:

        ## Measures
        - a = 99999999999 × 99999999999 × 99999999999 × 99999999999 × 99999999999
        - b = a × a × a × a × a × a × a × a
        - c = b × b × b × b × b × b × b × b

    Passes:

        ## Measures
        - a = 99 × 99
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` grows beyond anything that is sewn"

    def hint(self) -> str:
        return "look for a number that was typed twice, or a name that was meant to be another"


class NotInThisSize(Problem):
    """A measure is used in a size in which it does not exist.

    Sizes has a dash for it there. Nothing can be cut by it in that size.

    Fails:

        ## Sizes
        | Size  | tab          |
        |-------|--------------|
        | Small | –            |
        | Large | 5 cm (2 in)  |

        ## Measures
        - strip = 2 × tab

        ## Steps
        1. Hem it by {strip}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Sizes
        | Size  | tab          |
        |-------|--------------|
        | Small | 4 cm (1 5/8 in) |
        | Large | 5 cm (2 in)  |

        ## Measures
        - strip = 2 × tab

        ## Steps
        1. Hem it by {strip}.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    name: str
    size: str

    def message(self) -> str:
        return f"`{self.name}` does not exist in {self.size}, and is used there"

    def hint(self) -> str:
        return f"give `{self.name}` a value in {self.size}, or mark what uses it as `Not {self.size}:`"


class NotPositive(Problem):
    """A piece would be cut to nothing, or to less than nothing.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width                        | Height        |
        |-------|------|-----|------------------------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) - 31 cm (12 in) | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    piece: str
    side: str
    value: str

    def message(self) -> str:
        return f"the {self.side} of `{self.piece}` comes out as {self.value}"

    def hint(self) -> str:
        return "look at the signs, and at the measures that it is computed from"


class WrongKind(Problem):
    """A measure is of another kind than the place wants.

    A width is a length; an area or a plain number cannot be cut.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width | Height        |
        |-------|------|-----|-------|---------------|
        | cloth | A    | 1   | 30    | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    what: str
    found: str
    wanted: str

    def message(self) -> str:
        return f"{self.what} is {a(self.found)}, and should be {a(self.wanted)}"

    def hint(self) -> str:
        if self.found == "number" and self.wanted == "length":
            return "give it a unit, for example `5 cm (2 in)`"
        if self.found == "area":
            return "divide by a length, or use one of the two sides"
        return f"write {a(self.wanted)}"


class CountNotWhole(Problem):
    """A number of things is not whole, is less than nothing, or differs between the systems.

    Nobody can cut two and a half pieces, and both makers, the one with the metric and the one with
    the imperial handout, cut the same number. `round up` makes it whole and the same for both.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 3/2 | 30 cm (12 in) | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    what: str
    why: str

    def message(self) -> str:
        return f"{self.what} {self.why}"

    def hint(self) -> str:
        return "write a whole number, or put `round up( )` around it"
