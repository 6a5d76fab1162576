"""What can be wrong with a number, its unit, or a pair of measures, as it is written."""

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
