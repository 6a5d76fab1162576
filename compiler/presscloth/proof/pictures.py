"""Pictures: each is there, lies in the recipe's folder, and is said in words too."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from presscloth.problems import Problem, Severity
from presscloth.proof.picture_files import KINDS, Unfit, look_at
from presscloth.proof.subject import Subject
from presscloth.recipe.prose import plain

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


class PictureUnfit(Problem):
    """A picture is there and cannot be printed.

    It is told from the first and the last bytes of the file: what kind of picture it is, how many points
    it has (60 million at the most; a small file may unpack to gigabytes), whether it moves, and whether its
    end is there. A file may have 20 MB. Pictures made as SVG are not taken.

    A hole in the middle of a PNG, GIF or WebP is told when the picture is unpacked, by `compile`. A JPEG
    whose data has a hole and goes on behind it is unpacked without a word, and only the page shows it.

    Fails: `corner.jpg` holds a PNG, or the first half of a photograph.

    Passes: the file holds a whole picture of the kind that its name says.
    """

    file: str
    why: str
    way: str

    def message(self) -> str:
        return f"the picture `{self.file}` {self.why}"

    def hint(self) -> str:
        return self.way


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


class PictureTitle(Problem):
    """A picture has a title in quotes, which no page and no paper shows.

    What is to be read with a picture is its caption, and stands on the line below it.

    Fails:

        ## Steps
        1. Look:

           ![the corner, sewn and turned](cloth.png "Before it is pressed")

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ## Steps
        1. Look:

           ![the corner, sewn and turned](cloth.png)
           Before it is pressed

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    severity = Severity.WARNING

    file: str
    said: str

    def message(self) -> str:
        return f"the title of the picture `{self.file}`, “{self.said}”, is shown nowhere"

    def hint(self) -> str:
        return "write it on the line below the picture, as its caption"


def check(subject: Subject) -> Iterator[Problem]:
    """Every picture lies in the recipe's folder, can be printed, and has words that stand for it."""
    for picture in subject.pictures:
        if not plain(picture.alt).strip():
            yield PictureWithoutWords(span=picture.span, file=picture.file)
        if picture.title:
            yield PictureTitle(span=picture.span, file=picture.file, said=picture.title)
        why = _why_missing(picture.file, subject.recipe.folder)
        if why is not None:
            yield PictureMissing(span=picture.span, file=picture.file, why=why)
            continue
        assert subject.recipe.folder is not None
        seen = look_at(subject.recipe.folder / picture.file)
        if isinstance(seen, Unfit):
            yield PictureUnfit(span=picture.span, file=picture.file, why=seen.why, way=seen.way)


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
    return None
