"""What can be wrong with the publisher's file."""

from __future__ import annotations

from presscloth.problems import Problem
from presscloth.recipe.words import nearest

KEYS = (
    "name",
    "address",
    "about",
    "language",
    "papers",
    "systems",
    "theme",
    "cut in strips",
    "straightened",
)


class PublisherFileUnreadable(Problem):
    """The publisher's file cannot be read as a list of keys and values.

    The whole site would be printed under a name that is not yours. Write one `key: value` on each
    line, each key once.

    Fails:

        # site/publisher.yaml
        name: [Tidewrack

    Passes:

        # site/publisher.yaml
        name: Tidewrack sewing room
    """

    why: str

    def message(self) -> str:
        return f"the publisher's file cannot be read: {self.why}"

    def hint(self) -> str:
        return "write one `key: value` on each line, each key once"


class PublisherKeyUnknown(Problem):
    """The publisher's file has a key that means nothing.

    What it says would be left out of every page without a word. The keys are name, address, about,
    language, papers, systems, theme, cut in strips and straightened.

    Fails:

        # site/publisher.yaml
        adress: https://tidewrack.example

    Passes:

        # site/publisher.yaml
        address: https://tidewrack.example
    """

    key: str
    meant: str | None

    def message(self) -> str:
        return f"`{self.key}` is not a key of the publisher's file"

    def hint(self) -> str:
        return f"write `{self.meant}`" if self.meant else f"the keys are {', '.join(KEYS)}"


class PublisherValueWrong(Problem):
    """A value in the publisher's file is not of the sort that its key wants.

    The default would be printed in its place, on every handout. Papers are A4 and Letter; systems
    are metric and imperial, the leading one first; an address begins with https:// or http://; the language
    is one in which handouts have words; whether fabric is cut in strips, and whether its cut end is
    straightened first, is yes or no.

    Fails:

        # site/publisher.yaml
        papers: [A4, Legal]

    Passes:

        # site/publisher.yaml
        papers: [A4, Letter]
    """

    key: str
    value: str
    wanted: str

    def message(self) -> str:
        return f"`{self.value}` cannot be the publisher's {self.key}"

    def hint(self) -> str:
        return f"write {self.wanted}"


class ThemeUnknown(Problem):
    """The publisher's file names a theme that does not exist.

    The handouts would come out in another dress than the one chosen. Write the name of a folder of
    themes, such as plain-seam or large-print.

    Fails:

        # site/publisher.yaml
        theme: plain-seem

    Passes:

        # site/publisher.yaml
        theme: plain-seam
    """

    theme: str
    known: tuple[str, ...]

    def message(self) -> str:
        return f"there is no theme `{self.theme}`"

    def hint(self) -> str:
        meant = nearest(self.theme, self.known)
        return f"write `{meant}`" if meant else f"the themes are {', '.join(self.known)}"
