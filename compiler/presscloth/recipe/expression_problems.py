"""What can be wrong with the spelling of an expression."""

from __future__ import annotations

from presscloth.problems import Problem


class NumberTooLong(Problem):
    """A number has more digits than any measure needs.

    Nobody can cut to the thousandth of a hair; a number this long is a slip of the keys. Leave
    twelve digits or fewer before and after the point.

    Fails:

        ## Measures
        - seam = 1.00000000000000001 cm

    Passes:

        ## Measures
        - seam = 1 cm
    """

    def message(self) -> str:
        return f"this number has more than twelve digits in a row ({len(self.span.text)} characters)"

    def hint(self) -> str:
        return "shorten the number to what a tape measure can show"


class FractionWithHyphen(Problem):
    """A mixed fraction is written with a hyphen, which could also be a minus sign.

    `1-1/2` may mean one and a half or one less a half, and the two would be cut an inch apart.
    Write one and a half with a space, and a subtraction with spaces around the sign.

    Fails:

        ## Measures
        - seam = 1-1/2 in

    Passes:

        ## Measures
        - seam = 1 1/2 in
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` can be read as a mixed fraction or as a subtraction"

    def hint(self) -> str:
        whole, fraction = self.span.text.replace("‑", "-").split("-")
        return f"write `{whole} {fraction}`, or `{whole} - {fraction}` with spaces to subtract"


class CommaInNumber(Problem):
    """A number is written with a decimal comma.

    A comma separates things in this language, so `1,5` could be two numbers. Write the point.

    Fails:

        ## Measures
        - seam = 1,5 cm

    Passes:

        ## Measures
        - seam = 1.5 cm
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` is written with a comma"

    def hint(self) -> str:
        return f"write `{self.span.text.replace(',', '.')}`, or put a space after the comma for two numbers"


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


class UnitUnknown(Problem):
    """A number is followed by a unit that the language does not have.

    A measure in an unknown unit cannot be carried over to the other system. The units are mm, cm,
    m, in, ft, yd for lengths, g, kg, oz, lb for weights, in small letters.

    Fails:

        ## Measures
        - seam = 1 centimetre

    Passes:

        ## Measures
        - seam = 1 cm
    """

    unit: str
    meant: str | None

    def message(self) -> str:
        return f"`{self.unit}` is not a unit here"

    def hint(self) -> str:
        if self.meant:
            return f"write `{self.meant}`"
        return "use mm, cm, m, in, ft or yd for a length, g, kg, oz or lb for a weight"


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


class PairInOneSystem(Problem):
    """Both halves of a pair are in the same system.

    A pair gives one value to each system. With two metric values the imperial handout would have
    none. Write the value of the other system in the brackets.

    Fails:

        ## Measures
        - band = 5 cm (50 mm)

    Passes:

        ## Measures
        - band = 5 cm (2 in)
    """

    system: str

    def message(self) -> str:
        return f"both halves of `{self.span.quoted}` are {self.system}"

    def hint(self) -> str:
        other = "inches" if self.system == "metric" else "centimetres"
        return f"write the value in {other} in the brackets"


class PairOfUnlike(Problem):
    """A pair holds a length and a weight.

    Both halves of a pair say the same thing in two systems.

    Fails:

        ## Measures
        - band = 5 cm (2 oz)

    Passes:

        ## Measures
        - band = 5 cm (2 in)
    """

    first: str
    second: str

    def message(self) -> str:
        return f"`{self.span.quoted}` pairs a {self.first} with a {self.second}"

    def hint(self) -> str:
        return f"write a {self.first} in both halves"


class PairExactly(Problem):
    """A value stated as `exactly` is given in both systems.

    A physical thing has one size; its other value is a conversion and is worked out. Two stated
    values could differ.

    Fails:

        ## Measures
        - field = exactly 100 mm (4 in)

    Passes:

        ## Measures
        - field = exactly 100 mm
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` is exact and still gives two values"

    def hint(self) -> str:
        return "keep the one that is the thing's own size; the other is worked out"
