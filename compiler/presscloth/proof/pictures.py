"""Pictures: each is there, lies in the recipe's folder, and is said in words too."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from presscloth.problems import Problem
from presscloth.proof.subject import Subject
from presscloth.recipe.prose import plain

KINDS = (".png", ".jpg", ".jpeg", ".webp", ".gif")
LARGEST = 20_000_000
LONGEST = 200
"""Characters in the name of a picture; some file systems take no more than 255 bytes."""


class PictureMissing(Problem):
    """A picture is not where the recipe says.

    Every reader would find a hole in the page.

    Fails:

        ## Steps
        1. Look: ![the corner](corner.png)

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Look at the corner.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    file: str
    why: str

    def message(self) -> str:
        return f"the picture `{self.file}` {self.why}"

    def hint(self) -> str:
        return "put the picture into the recipe's own folder and write its name as it is spelt there"


class PictureWithoutWords(Problem):
    """A picture has no words that stand for it.

    Who cannot see it is left without what it shows, and a printed table of pictures has no names.

    Fails:

        ## Steps
        1. Look: ![](cloth.png)

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Look at the corner.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    file: str

    def message(self) -> str:
        return f"the picture `{self.file}` has no words that say what it shows"

    def hint(self) -> str:
        return f"say it between the square brackets: `![the corner, sewn and turned]({self.file})`"


def check(subject: Subject) -> Iterator[Problem]:
    """Every picture is a file of a kind that is printed, in the recipe's folder and not too large."""
    for picture in subject.pictures:
        if not plain(picture.alt).strip():
            yield PictureWithoutWords(span=picture.span, file=picture.file)
        why = _why_missing(picture.file, subject.recipe.folder)
        if why is not None:
            yield PictureMissing(span=picture.span, file=picture.file, why=why)


def _why_missing(file: str, folder: Path | None) -> str | None:
    """Why a picture cannot be taken; None when it can."""
    name = PurePosixPath(file)
    if "://" in file or name.is_absolute() or ".." in name.parts or "\\" in file:
        return "does not lie in the recipe's folder"
    if name.suffix.casefold() not in KINDS:
        return f"is of a kind that is not printed (use {', '.join(KINDS)})"
    if folder is None or len(file) > LONGEST or not (folder / name).is_file():
        return "is not there"
    if not (folder / name).resolve().is_relative_to(folder.resolve()):
        return "does not lie in the recipe's folder"
    if (folder / name).stat().st_size > LARGEST:
        return f"is larger than {LARGEST // 1_000_000} MB"
    return None
