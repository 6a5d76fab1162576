"""The files of one recipe, beside its PDFs: a small function for each kind, and all in one list."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from presscloth.drawing.tree import Drawing
from presscloth.frozen import dataclass
from presscloth.handout.chapters import chapters
from presscloth.handout.tree import Booklet, Publisher
from presscloth.printing.carried import letters_in
from presscloth.printing.chapters import CHAPTERS_FILE, vtt
from presscloth.printing.choosing import DATA_FILE, choosable_html
from presscloth.printing.html import StandingLink, html
from presscloth.printing.likeness import likeness
from presscloth.printing.markup import file_beside, names_beside
from presscloth.printing.names import slugs
from presscloth.printing.photographs import for_page, page_file
from presscloth.printing.pictures import pictures_of
from presscloth.printing.preview import PREVIEW_FILE, preview
from presscloth.printing.svg import svg
from presscloth.printing.theme import Theme
from presscloth.publish.entry import ENTRY_FILE, entry_of, write_entry

File = tuple[str, str | bytes]
"""A file's name within its folder, and what stands in it."""


LIKENESS_FILE = "likeness.svg"


@dataclass(frozen=True, slots=True)
class RecipeToWrite:
    """A recipe in all its sizes, and what its pages need besides."""

    booklet: Booklet
    theme: Theme
    publisher: Publisher
    standing: tuple[StandingLink, ...]


def page(recipe: RecipeToWrite) -> Iterator[File]:
    """The page; beside one on which the reader may choose, what follows from that."""
    booklet, publisher = recipe.booklet, recipe.publisher
    if any(booklet.choices):
        written, data = choosable_html(booklet, recipe.theme, publisher, publisher.papers, recipe.standing)
        yield "index.html", written
        yield DATA_FILE, data
    else:
        yield "index.html", html(booklet, recipe.theme, publisher, publisher.papers, recipe.standing)


def entry(recipe: RecipeToWrite) -> Iterator[File]:
    """What the catalogue keeps of a recipe until the next run."""
    yield ENTRY_FILE, write_entry(entry_of(recipe.booklet))


def drawing(recipe: RecipeToWrite) -> Iterator[File]:
    """The drawing that stands for a recipe in the catalogue."""
    drawn = likeness(recipe.booklet)
    if drawn is not None:
        yield LIKENESS_FILE, svg(drawn, recipe.theme.look, "likeness", drawn.width)


def drawings_beside(recipe: RecipeToWrite) -> Iterator[File]:
    """Pieces and cutting layouts of every size: beside the page, so that only those looked at are read."""
    look, handouts = recipe.theme.look, recipe.booklet.handouts
    for handout, name in zip(handouts, slugs(tuple(each.size for each in handouts)), strict=True):
        for called, figure in names_beside(handout):
            if isinstance(figure.of, Drawing):
                letters = letters_in(figure.of, look)
                drawn = svg(figure.of, look, called, look.drawings.alone, head=letters)
                yield file_beside(f"{name}-", called), drawn


def link_preview(recipe: RecipeToWrite) -> Iterator[File]:
    """The picture that goes with a link; only whole addresses lead to it."""
    if recipe.publisher.address:
        yield PREVIEW_FILE, preview(recipe.booklet, recipe.theme, recipe.publisher)


def video_chapters(recipe: RecipeToWrite) -> Iterator[File]:
    """The chapters of the video, where its steps have times."""
    found = chapters(recipe.booklet)
    if found:
        yield CHAPTERS_FILE, vtt(found)


def pictures(recipe: RecipeToWrite) -> Iterator[File]:
    """The author's pictures, each once, made for a page."""
    handouts = recipe.booklet.handouts
    for picture in dict.fromkeys(picture for handout in handouts for picture in pictures_of(handout)):
        for variant in for_page(picture):
            yield variant.name, page_file(picture, variant)


RECIPE_FILES: tuple[Callable[[RecipeToWrite], Iterator[File]], ...] = (
    page,
    entry,
    drawing,
    drawings_beside,
    link_preview,
    video_chapters,
    pictures,
)
