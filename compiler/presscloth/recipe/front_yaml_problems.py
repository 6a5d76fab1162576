"""What can be wrong with the lines of the front matter, whatever they say."""

from __future__ import annotations

from presscloth.problems import Problem


class FrontMatterMissing(Problem):
    """A recipe does not begin with its front matter.

    The front matter says what the article is called and when the recipe is released; without it
    there is nothing to put on a cover or into the catalogue. It stands between two lines of `---`.

    Fails: a file whose first line is `# Plain Cloth`.

    Passes: a file that begins with `---`, a title, a release and `---`.
    """

    def message(self) -> str:
        return "the recipe does not begin with a line `---` and its front matter"

    def hint(self) -> str:
        return "begin with `---`, then `title: …` and `release: YYYY-MM` on lines of their own, then `---`"


class FrontMatterNotClosed(Problem):
    """The front matter has no second line `---` within 200 lines.

    Where the facts about the publication end and the recipe begins can only be guessed.

    Fails: a file with one line `---`, or with more than 200 lines between the first and the second.

    Passes: a file that begins with `---`, a title, a release and `---`.
    """

    def message(self) -> str:
        return "the front matter that begins here is not closed within 200 lines"

    def hint(self) -> str:
        return "put a line `---` below its last key"


class FrontMatterNotRead(Problem):
    """A line of the front matter cannot be read.

    Each line is a key, a colon, a space and a value. A value that holds a colon and a space, or
    begins with a bracket or a quote, stands in double quotes. Nothing that follows the line is read.

    Fails:

        ---
        summary: A cloth: small and plain
        ---

    Passes:

        ---
        summary: "A cloth: small and plain"
        ---
    """

    what: str
    advice: str = "write each line as `key: value`, and put the value in double quotes"

    def message(self) -> str:
        return f"the front matter cannot be read here: {self.what}"

    def hint(self) -> str:
        return self.advice


class SignNeedsQuotes(Problem):
    """A value in the front matter begins with a sign that has a meaning of its own there.

    A star, `&`, `!`, `@`, `%` or a backtick at the beginning of a value would change what it says.
    In quotes it is only a sign.

    Fails:

        ---
        summary: *Plain* and quickly sewn
        ---

    Passes:

        ---
        summary: "*Plain* and quickly sewn"
        ---
    """

    sign: str

    def message(self) -> str:
        return f"a value begins with `{self.sign}`, which has a meaning of its own in the front matter"

    def hint(self) -> str:
        return "put the whole value in double quotes"


class FrontMatterTooDeep(Problem):
    """Lists in the front matter stand too deep inside one another.

    No key has more than a list of pairs, so something else was meant. What follows is not read.

    Fails:

        ---
        credits: [[[[[Tidewrack sewing room]]]]]
        ---

    Passes:

        ---
        credits: Tidewrack sewing room
        ---
    """

    deepest: int

    def message(self) -> str:
        return f"this stands more than {self.deepest} levels deep in the front matter"

    def hint(self) -> str:
        return "take brackets away, or put the value in double quotes"


class FrontMatterKeyTwice(Problem):
    """A key stands twice in the front matter.

    Only one of the two values could be printed, and nobody can say which was meant.

    Fails:

        ---
        summary: A cloth
        summary: A towel
        ---

    Passes:

        ---
        summary: A cloth
        ---
    """

    key: str

    def message(self) -> str:
        return f"the key `{self.key}` stands twice in the front matter"

    def hint(self) -> str:
        return "take one of the two out"


class ValueCutOff(Problem):
    """A value in the front matter is cut off at a `#`.

    What follows a space and a `#` is a remark to oneself there, and is printed nowhere. In quotes
    it belongs to the value; a remark may stand on a line of its own.

    Fails:

        ---
        summary: Cloth #3 of the year
        ---

    Passes:

        ---
        summary: "Cloth #3 of the year"
        ---
    """

    value: str
    rest: str

    def message(self) -> str:
        return f"`{self.rest}` is left out: the value ends at `{self.value}`"

    def hint(self) -> str:
        return "put the whole value in double quotes, or the remark on a line of its own"
