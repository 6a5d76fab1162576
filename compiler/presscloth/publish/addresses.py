"""The address of a recipe's pages, which is the name of its folder."""

from __future__ import annotations

import re
import unicodedata

from presscloth.problems import Problem
from presscloth.publish.lists import KINDS
from presscloth.source import Source

ADDRESS = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]*")
TAKEN = ("theme", "standing", "index", *KINDS)
"""Where the site keeps its own pages."""


class NoAddress(Problem):
    """A recipe's folder has a name that cannot be an address on the web.

    Its pages stand in a folder of the same name; signs and spaces would be spelt otherwise there, and
    some names belong to the site's own pages.

    Fails: the folder is called `Kit Bag & Strap`, or `standing`.

    Passes: the folder is called `kit-bag-and-strap`.
    """

    name: str

    def message(self) -> str:
        return why_no_address(self.name)

    def hint(self) -> str:
        return f"call its folder `{_nearest(self.name)}`"


def is_address(name: str) -> bool:
    """Whether pages can stand under this name: letters a to z, digits, `-` and `_`, and not taken."""
    return ADDRESS.fullmatch(name) is not None and name.casefold() not in TAKEN


def why_no_address(name: str) -> str:
    """Why no pages can stand under a name that is no address."""
    if name.casefold() in TAKEN:
        return f"a recipe cannot be called `{name}`: the site keeps its own pages under that name"
    return f"a recipe cannot be called `{name}`: its pages would have no address"


def without_address(name: str, source: Source) -> NoAddress | None:
    """What is wrong with a recipe's name as an address."""
    return None if is_address(name) else NoAddress(span=source.span(0, 0), name=name)


def _nearest(name: str) -> str:
    """A name much like it that can be an address: `Kit Bag & Strap` becomes `kit-bag-and-strap`."""
    plain = unicodedata.normalize("NFKD", name.replace("&", " and ")).encode("ascii", "ignore").decode()
    words = "-".join(re.findall(r"[a-z0-9]+", plain.casefold()))
    return words if is_address(words) else f"{words}-recipe".lstrip("-")
