"""Reading a recipe's file, however it was saved, as long as it is a text of sensible size."""

from __future__ import annotations

import os
from pathlib import Path

from presscloth.problems import Problem, Problems
from presscloth.source import Source

LARGEST = 1_000_000
"""Bytes. The longest recipe that anybody sews from is a tenth of it."""


class RecipeNotFound(Problem):
    """There is no recipe where one was asked for.

    A recipe is a file `recipe.md` in a folder of its own, whose name is its short name.

    Fails: a folder is named that does not exist, or holds no `recipe.md`.

    Passes: the folder of a recipe is named, or the file itself.
    """

    path: str
    why: str

    def message(self) -> str:
        return f"`{self.path}` {self.why}"

    def hint(self) -> str:
        return "name a folder that holds a `recipe.md`, or that file itself"


class NotText(Problem):
    """A recipe's file is not plain text in UTF-8.

    It may be a document of a word processor, or saved in an old encoding, in which a fraction or an
    accent would come out as another sign.

    Fails: the file holds a picture, a zipped document, or text that was not saved as UTF-8.

    Passes: the file was saved as plain text, in UTF-8.
    """

    why: str

    def message(self) -> str:
        return f"this file is not plain text: {self.why}"

    def hint(self) -> str:
        return "save it as plain text in UTF-8"


class FileTooLarge(Problem):
    """A recipe's file is far larger than any recipe.

    Fails: the file is larger than one megabyte.

    Passes: the file holds one recipe, and pictures lie beside it as files of their own.
    """

    size: int

    def message(self) -> str:
        return f"this file is {self.size:,} bytes long; a recipe is at most {LARGEST:,}"

    def hint(self) -> str:
        return "keep one recipe in the file, and its pictures as files beside it"


class EmptyRecipe(Problem):
    """A recipe's file is empty.

    Fails: there is nothing in the file.

    Passes: the file begins with its front matter, the title first.
    """

    def message(self) -> str:
        return "this file is empty"

    def hint(self) -> str:
        return "begin with `---`, a line `title: …`, and `---`"


def load(path: Path, problems: Problems) -> Source | None:
    """The text of a file; a mark at its beginning and the ends of its lines are evened out."""
    name = path.as_posix()
    empty = Source(name, "")
    place = empty.span(0, 0)
    try:
        with path.open("rb") as file:
            size = os.fstat(file.fileno()).st_size
            content = file.read(LARGEST + 1)
    except OSError as error:
        why = "is not there" if isinstance(error, FileNotFoundError) else f"cannot be read ({error.strerror})"
        problems.add(RecipeNotFound(span=place, path=name, why=why))
        return None
    if len(content) > LARGEST:
        problems.add(FileTooLarge(span=place, size=max(size, len(content))))
        return None
    if b"\x00" in content:
        problems.add(NotText(span=place, why="it holds bytes that no text has"))
        return None
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        problems.add(NotText(span=place, why=f"line {line} is not UTF-8"))
        return None
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if not text.strip():
        problems.add(EmptyRecipe(span=place))
        return None
    return Source(name, text)
