"""What can be wrong with an expression as it is written: signs, brackets, words that are left over."""

from __future__ import annotations

from presscloth.problems import Problem


class CharacterUnknown(Problem):
    """A character stands in an expression that has no meaning there.

    Nothing can be worked out from it. Take it out, or write the name or sign that was meant.

    Fails:

        ## Measures
        - seam = 1 cm & 2 mm

    Passes:

        ## Measures
        - seam = 1 cm + 2 mm
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` has no meaning in an expression"

    def hint(self) -> str:
        return "take it out; the signs are + - × / and round brackets"


class DividedByNothing(Problem):
    """Something is divided by nothing.

    There is no such measure, so nothing that depends on it can be cut. Divide by a number or a
    measure that is not 0.

    Fails:

        ## Measures
        - seam = 1/0 cm

    Passes:

        ## Measures
        - seam = 1/2 cm
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` divides by nothing"

    def hint(self) -> str:
        return "put something other than 0 below the line"


class SignMissing(Problem):
    """A number stands right before a name, with no sign between.

    `4 band` might be four times the band or a slip for `4 + band`; the strip would come out wrong.
    Write the sign.

    Fails:

        ## Measures
        - band = 5 cm
        - strip = 4 band

    Passes:

        ## Measures
        - band = 5 cm
        - strip = 4 × band
    """

    number: str
    name: str

    def message(self) -> str:
        return f"there is no sign between `{self.number}` and `{self.name}`"

    def hint(self) -> str:
        return f"write `{self.number} × {self.name}` if that is meant"


class SignWithoutSpaces(Problem):
    """A sign stands without spaces around it.

    `1/2` is a fraction and a hyphen can belong to a name, so only a sign with a space on either
    side is a sign of reckoning.

    Fails:

        ## Measures
        - band = 5 cm
        - strip = band+ 1 cm

    Passes:

        ## Measures
        - band = 5 cm
        - strip = band + 1 cm
    """

    sign: str

    def message(self) -> str:
        return f"the sign `{self.sign}` wants a space on either side"

    def hint(self) -> str:
        return f"write ` {self.sign} ` with spaces"


class FractionAfterSign(Problem):
    """A fraction stands right after a division sign.

    `band / 1/2` can be read in two ways, four times apart. Brackets say which is meant.

    Fails:

        ## Measures
        - band = 5 cm
        - strip = band / 1/2

    Passes:

        ## Measures
        - band = 5 cm
        - strip = band / (1/2)
    """

    def message(self) -> str:
        return f"the fraction `{self.span.quoted}` stands right after a division sign"

    def hint(self) -> str:
        return f"put it in brackets: `({self.span.text})`"


class ExpressionUnfinished(Problem):
    """An expression stops where a number or a name should follow, or a place is empty.

    What is not written cannot be worked out. Finish the expression.

    Fails:

        ## Measures
        - band = 5 cm
        - strip = band +

    Passes:

        ## Measures
        - band = 5 cm
        - strip = band + 1 cm
    """

    after: str
    instead: str = ""

    def message(self) -> str:
        if self.instead:
            place = f"after `{self.after}`" if self.after else "here"
            return f"`{self.instead}` stands {place}, where a number or a name should stand"
        if not self.after:
            return "a measure is missing here"
        return f"a number or a name should follow `{self.after}`"

    def hint(self) -> str:
        return "write the measure that belongs here, for example `5 cm (2 in)`"


class WordsLeftOver(Problem):
    """An expression is complete, and more words or signs follow it.

    What follows would be left out of the reckoning. Join it with a sign, or take it away.

    Fails:

        ## Measures
        - band = 5 cm (2 in) 3 cm

    Passes:

        ## Measures
        - band = 5 cm (2 in) + 3 cm
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` follows a complete measure and cannot be read"

    def hint(self) -> str:
        return "put a sign before it, or take it out; a remark goes after a colon"


class BracketNotClosed(Problem):
    """A bracket is opened and not closed, or closed and not opened.

    Where the bracket ends decides what is multiplied, so it is not guessed.

    Fails:

        ## Measures
        - band = 2 × (5 cm + 1 cm

    Passes:

        ## Measures
        - band = 2 × (5 cm + 1 cm)
    """

    def message(self) -> str:
        if self.span.text == ")":
            return "this bracket closes nothing"
        return "this bracket is not closed"

    def hint(self) -> str:
        return "take the bracket out" if self.span.text == ")" else "add the `)` where it belongs"


class ExpressionTooDeep(Problem):
    """An expression is too long or has too many brackets within brackets.

    Nobody can check such a measure. Give a part of it a name in Measures, and use the name.

    Fails:

        ## Measures
        - band = ((((((((((((((((((((((((((((((((((((((((((5 cm))))))))))))))))))))))))))))))))))))))))))

    Passes:

        ## Measures
        - band = 5 cm
    """

    def message(self) -> str:
        return "this expression is too long or too deeply nested to be checked by anybody"

    def hint(self) -> str:
        return "give a part of it a name in Measures and use the name"
