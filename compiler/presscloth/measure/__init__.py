"""Measures: exact numbers, lengths, areas and weights in two systems at once.

Values are `Fraction`s of mm and in, mm² and in², g and oz. This room reckons with them, takes stated
values, and knows how they are printed; it is the only one that knows units.
"""

from presscloth.measure.arithmetic import (
    BeyondReach,
    DividedByNothing,
    Fault,
    NoSuchProduct,
    NoSuchQuotient,
    RootOfLess,
    RootOfWrongKind,
    StepOfNothing,
    StepWanted,
    Unlike,
    add,
    add_up,
    divide,
    greatest,
    multiply,
    negate,
    pi,
    root,
    rounded,
    smallest,
    subtract,
    take_away,
)
from presscloth.measure.counts import NotACount, WhyNot, as_count
from presscloth.measure.exact import exact_text
from presscloth.measure.numerals import decimal_text, fraction_text, measure_text, number_text
from presscloth.measure.printing import Printed, printed
from presscloth.measure.quantity import Kind, Quantity, Stated, System, length, number
from presscloth.measure.rounding import Direction, compare, same_length
from presscloth.measure.stating import (
    Disagreement,
    Vanishes,
    agreement,
    apart,
    carried_over,
    stated_pair,
    stated_step,
)
from presscloth.measure.units import SPELLINGS, UNITS, Unit, convert, nearest_unit

__all__ = [
    "SPELLINGS",
    "UNITS",
    "BeyondReach",
    "Direction",
    "Disagreement",
    "DividedByNothing",
    "Fault",
    "Kind",
    "NoSuchProduct",
    "NoSuchQuotient",
    "NotACount",
    "Printed",
    "Quantity",
    "RootOfLess",
    "RootOfWrongKind",
    "Stated",
    "StepOfNothing",
    "StepWanted",
    "System",
    "Unit",
    "Unlike",
    "Vanishes",
    "WhyNot",
    "add",
    "add_up",
    "agreement",
    "apart",
    "as_count",
    "carried_over",
    "compare",
    "convert",
    "decimal_text",
    "divide",
    "exact_text",
    "fraction_text",
    "greatest",
    "length",
    "measure_text",
    "multiply",
    "nearest_unit",
    "negate",
    "number",
    "number_text",
    "pi",
    "printed",
    "root",
    "rounded",
    "same_length",
    "smallest",
    "stated_pair",
    "stated_step",
    "subtract",
    "take_away",
]
