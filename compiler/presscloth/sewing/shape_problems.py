"""What can be wrong with a thing that a statement uses or makes, and with measures of things."""

from __future__ import annotations

from typing import assert_never

from presscloth.problems import Problem
from presscloth.recipe.tree import Form
from presscloth.sewing.things import Circle, Flat, Hollow, Long, Odd, Shape, Shaped, Triangle, Whole


def what_it_is(shape: Shape) -> str:
    """A shape in words: `a pouch`, `a tube`."""
    match shape:
        case Flat():
            return "a flat thing"
        case Hollow(ends=ends):
            return "a tube" if len(ends) > 1 else "a pouch"
        case Circle():
            return "a round thing"
        case Triangle():
            return "a triangle"
        case Shaped():
            return "a thing cut by an outline"
        case Long(form=form):
            return "a zip" if form is Form.ZIP else "an elastic" if form is Form.ELASTIC else "a tape"
        case Whole():
            return "a thing without sides"
        case Odd():
            return "a thing whose outline is not worked out"
    assert_never(shape)


class WrongShape(Problem):
    """A statement asks of a thing what its shape cannot do.

    A pouch cannot be trimmed, a button cannot be folded, and only what is open can be lined.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Box and hem.

           ```sew
           box corners of cloth to 5 cm (2 in)
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Sew, box and hem.

           ```sew
           bag = fold cloth in half, join sides
           box corners of bag to 5 cm (2 in)
           hem top of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```
    """

    name: str
    found: str
    wanted: str
    way_out: str = ""

    def message(self) -> str:
        return f"`{self.name}` is {self.found}; this needs {self.wanted}"

    def hint(self) -> str:
        return self.way_out or "look at what was made of it before, or use another verb"


class NothingLeft(Problem):
    """Nothing is left of a thing: its seams, hems or corners take more than there is.

    Fails:

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by 8 cm (3 1/8 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by 2.5 cm (1 in) twice
           finish cloth
           ```
    """

    name: str
    side: str
    value: str

    def message(self) -> str:
        return f"nothing is left of `{self.name}`: its {self.side} comes out as {self.value}"

    def hint(self) -> str:
        return "cut it larger, or take less off"


class NeighbouringEdges(Problem):
    """Two neighbouring edges of one thing are sewn together.

    Opposite edges make a tube; the same edge named twice takes two things of that name, and so do
    neighbouring edges where there are two. Of one thing they would make a cone, whose size is not
    worked out.

    Fails:

        ## Steps
        1. Sew and finish.

           ```sew
           bag = join left of cloth to top of cloth
           finish bag
           ```

    Passes:

        ## Steps
        1. Sew, hem and finish.

           ```sew
           bag = join left of cloth to right of cloth
           hem top, bottom of bag by 1.2 cm (1/2 in) twice
           finish bag
           ```
    """

    name: str
    edges: tuple[str, str]

    def message(self) -> str:
        one, other = self.edges
        return f"{one} and {other} of one `{self.name}` are neighbours and cannot be joined to each other"

    def hint(self) -> str:
        return "name opposite edges for a tube, or give the second thing a name of its own"


class NoSuchMeasure(Problem):
    """A thing is asked for a measure that it has not got.

    Only a boxed pouch has a depth, a tape has a length but no width, and a button has neither.

    Fails:

        ## Steps
        1. Press a fold of 1 cm.

           ```sew
           hem all of cloth by depth of cloth twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Press a fold.

           ```sew
           hem all of cloth by width of cloth / 20 twice
           finish cloth
           ```
    """

    name: str
    part: str
    found: str

    def message(self) -> str:
        return f"`{self.name}` is {self.found} and has no {self.part}"

    def hint(self) -> str:
        return "ask for another measure of it: width, height, length, around"


class NotYetThere(Problem):
    """A measure speaks of a thing that does not exist yet when the measure is needed.

    A measure is settled when it is first needed. What it speaks of must have been cut or sewn by
    then, in an earlier statement.

    Fails:

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by width of bag / 20 twice
           bag = fold cloth side to side
           finish bag
           ```

    Passes:

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by width of cloth / 20 twice
           bag = fold cloth side to side
           finish bag
           ```
    """

    name: str

    def message(self) -> str:
        return f"there is no `{self.name}` yet when this measure is needed"

    def hint(self) -> str:
        return "make it in an earlier statement, or compute from what there is"


class MeasureChangedLater(Problem):
    """A measure speaks of a thing that is changed later under the same name.

    The measure was settled when it was first needed. Somebody who reads it afterwards would find the
    thing at another size than the measure says. Give the later state of the thing a name of its own.

    Fails:

        ## Measures
        - turn = width of cloth / 20

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by turn twice
           finish cloth
           ```

    Passes:

        ## Measures
        - turn = width of cloth / 20

        ## Steps
        1. Hem it.

           ```sew
           napkin = hem all of cloth by turn twice
           finish napkin
           ```
    """

    part: str
    name: str
    earlier: str
    later: str

    def message(self) -> str:
        return (
            f"the {self.part} of `{self.name}` was {self.earlier} when this was needed, "
            f"and becomes {self.later} under the same name"
        )

    def hint(self) -> str:
        return f"give the later `{self.name}` a name of its own"


class NotBoughtYet(Problem):
    """A measure that sewing needs speaks of a quantity to buy.

    How much is bought is worked out from the pieces, when all of them are known; what is sewn cannot
    depend on it.

    Fails:

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by buy A / 20 twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem it.

           ```sew
           hem all of cloth by width of cloth / 20 twice
           finish cloth
           ```
    """

    key: str

    def message(self) -> str:
        return f"how much of {self.key} to buy is not known while sewing"

    def hint(self) -> str:
        return "compute from the pieces instead"
