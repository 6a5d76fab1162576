"""The files of one recipe, beside its PDFs: a small function for each kind, and all in one list."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import PurePosixPath

from presscloth.frozen import dataclass
from presscloth.handout.tree import Booklet, Image, Publisher
from presscloth.printing.html import StandingLink, html
from presscloth.printing.pdf import PrintingRefused
from presscloth.printing.pictures import pictures_of, read_picture
from presscloth.printing.theme import Theme
from presscloth.publish.catalogue import ENTRY_FILE, entry_of, write_entry

File = tuple[str, str | bytes]
"""A file's name within its folder, and what stands in it."""


@dataclass(frozen=True, slots=True)
class RecipeToWrite:
    """A recipe in all its sizes, and what its pages need besides."""

    booklet: Booklet
    theme: Theme
    publisher: Publisher
    standing: tuple[StandingLink, ...]


def page(recipe: RecipeToWrite) -> Iterator[File]:
    publisher = recipe.publisher
    yield "index.html", html(recipe.booklet, recipe.theme, publisher, publisher.papers, recipe.standing)


def entry(recipe: RecipeToWrite) -> Iterator[File]:
    """What the catalogue keeps of a recipe until the next run."""
    yield ENTRY_FILE, write_entry(entry_of(recipe.booklet))


def pictures(recipe: RecipeToWrite) -> Iterator[File]:
    """The author's pictures, each once."""
    handouts = recipe.booklet.handouts
    for picture in dict.fromkeys(picture for handout in handouts for picture in pictures_of(handout)):
        yield _within(picture), _content(picture)


RECIPE_FILES: tuple[Callable[[RecipeToWrite], Iterator[File]], ...] = (page, entry, pictures)


def _within(picture: Image) -> str:
    """A picture's place below its recipe's folder."""
    place = PurePosixPath(picture.name)
    if (
        place.is_absolute()
        or ".." in place.parts
        or "\\" in picture.name
        or picture.name in ("", "index.html")
    ):
        raise PrintingRefused(f"the picture {picture.name} does not lie in its recipe's folder")
    return place.as_posix()


def _content(picture: Image) -> bytes:
    content, refused = read_picture(picture.file)
    if refused:
        raise PrintingRefused(f"the picture {picture.name} {refused}")
    return content
