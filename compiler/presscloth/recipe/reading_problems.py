"""What can be wrong with names, statements and checks as they are written."""

from __future__ import annotations

from presscloth.problems import Problem


class PartUnknown(Problem):
    """What stands before `of` is not a part of a thing.

    A thing has a width, a height, a depth, a length, it is so much around, it has edges (left,
    right, top, bottom, and those that its outline names), and there are so many of it. Anything else
    cannot be measured.

    Fails:

        ## Measures
        - strip = hight of cloth

    Passes:

        ## Measures
        - strip = height of cloth
    """

    part: str
    meant: str | None

    def message(self) -> str:
        return f"`{self.part}` is not a part of a thing that can be measured"

    def hint(self) -> str:
        if self.meant:
            return f"write `{self.meant} of …`"
        return "use width, height, depth, around, length, count or an edge: left, right, top, bottom"


class ComparisonMissing(Problem):
    """A check compares nothing.

    A check holds one measure against another; without the sign there is nothing to hold.

    Fails:

        ## Measures
        - gap = 10 cm (4 in)

        ## Checks
        - gap: it must be wide enough

    Passes:

        ## Measures
        - gap = 10 cm (4 in)

        ## Checks
        - gap >= 5 cm (2 in): it must be wide enough
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` compares nothing"

    def hint(self) -> str:
        return "write two measures with = < <= > >= between, or `A within M of B`"


class VerbUnknown(Problem):
    """A statement begins with a word that is none of the verbs.

    What cannot be read cannot be carried out, and nothing after it can be proved.

    Fails:

        ## Steps
        1. Hem the cloth.

           ```sew
           turn up all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem the cloth.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    verb: str
    meant: str | None

    def message(self) -> str:
        return f"`{self.verb}` is not a verb of the sewing statements"

    def hint(self) -> str:
        if self.meant:
            return f"write `{self.meant}`"
        return "begin with what is done: join, fold, hem, trim, line, attach, finish …"


class NameUnknown(Problem):
    """A name is used that nothing in the recipe bears.

    It may be misspelt, or what it names is missing from Measures, Pieces or the statements before.

    Fails:

        ## Steps
        1. Done.

           ```sew
           finish clohts
           ```

    Passes:

        ## Steps
        1. Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    name: str
    meant: str | None

    def message(self) -> str:
        return f"nothing in this recipe is called `{self.name}`"

    def hint(self) -> str:
        if self.meant:
            return f"write `{self.meant}` if that is meant"
        return "define it in Measures, Sizes or Pieces, or correct the name"


class StatementNotRead(Problem):
    """A statement begins like one of the verbs, but the rest does not fit.

    What cannot be read cannot be carried out, and nothing after it can be proved.

    Fails:

        ## Steps
        1. Hem the cloth.

           ```sew
           hem cloth
           finish cloth
           ```

    Passes:

        ## Steps
        1. Hem the cloth.

           ```sew
           hem all of cloth by 1 cm (3/8 in)
           finish cloth
           ```
    """

    patterns: tuple[str, ...]

    def message(self) -> str:
        return f"`{self.span.quoted}` cannot be read as a sewing statement"

    def hint(self) -> str:
        if not self.patterns:
            return "write one short statement on a line, for example `front = join A, B side by side`"
        shown = "; or ".join(f"`{pattern}`" for pattern in self.patterns[:3])
        return f"write it like this: {shown}"


class StatementInTwoWays(Problem):
    """A statement can be read in two ways.

    The names allow both, and they would be sewn differently. Rename one of the things.

    Fails:

        ## Pieces
        | Piece         | From | Cut | Width        | Height       |
        |---------------|------|-----|--------------|--------------|
        | cloth         | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | pocket        | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | A pocket      | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |

        ## Steps
        1. Join them.

           ```sew
           front = join A pocket, cloth side by side
           finish front
           ```

    Passes:

        ## Steps
        1. Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    ways: tuple[str, ...]

    def message(self) -> str:
        return f"`{self.span.quoted}` can be read in {len(self.ways)} ways"

    def hint(self) -> str:
        return f"rename one of the things: it reads as {', or as '.join(self.ways[:2])}"


class ResultMissing(Problem):
    """A statement makes something new and does not name it.

    Without a name nothing can be done with it afterwards.

    Fails:

        ## Steps
        1. Fold the cloth.

           ```sew
           fold cloth top to bottom
           ```

    Passes:

        ## Steps
        1. Fold the cloth.

           ```sew
           strip = fold cloth top to bottom
           hem left, right, bottom of strip by 1.2 cm (1/2 in) twice
           finish strip
           ```
    """

    verb: str

    def message(self) -> str:
        return f"`{self.verb}` makes something new, and it has no name"

    def hint(self) -> str:
        return "put a name and `=` before it: `front = …`"


class ResultNotMade(Problem):
    """What stands before the `=` cannot be the name of a thing.

    Fails:

        ## Steps
        1. Done.

           ```sew
           bag = finish cloth
           ```

    Passes:

        ## Steps
        1. Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    why: str

    def message(self) -> str:
        return self.why

    def hint(self) -> str:
        return "write a name that begins with a letter before the `=`, or leave both out"
