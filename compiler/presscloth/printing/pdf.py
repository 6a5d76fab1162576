"""One size of a recipe as a tagged PDF for each paper. The only importer of WeasyPrint.

The page is laid out once; nothing is fetched but the fonts of the theme and the pictures of the
handout; the same handout gives the same bytes in any folder, on any day.
"""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from functools import partial
from typing import TYPE_CHECKING

from presscloth.handout.tree import Handout, Publisher
from presscloth.printing.code import page_code
from presscloth.printing.finish import mend, papers
from presscloth.printing.fonts import font_faces, paper_font
from presscloth.printing.look import ThemeError
from presscloth.printing.markup import Marker
from presscloth.printing.photographs import paper_file
from presscloth.printing.pictures import pictures_of
from presscloth.printing.refused import PrintingRefused as PrintingRefused
from presscloth.printing.theme import Theme, environment
from presscloth.tongue import speaking, tongue_of

if TYPE_CHECKING:
    from weasyprint.urls import URLFetcher

OURS = "presscloth:"
FONT, PICTURE = f"{OURS}font/", f"{OURS}picture/"


def pango_missing() -> str | None:
    """What to tell someone whose machine lacks Pango (or WeasyPrint); None where PDFs can be made."""
    try:
        import weasyprint  # noqa: F401
    except OSError as error:
        return (
            "PDFs need the text library Pango, which this machine does not have "
            f"({str(error).splitlines()[0]}). Install it: Debian and Ubuntu `apt install libpango-1.0-0 "
            "libpangoft2-1.0-0 libharfbuzz-subset0`, Fedora `dnf install pango`, macOS `brew install pango`. "
            "Web pages, plain text and JSON are written without it."
        )
    except ImportError as error:
        return f"PDFs need the package weasyprint, which cannot be imported ({error})."
    return None


def pdf(handout: Handout, theme: Theme, publisher: Publisher, on: tuple[str, ...]) -> tuple[bytes, ...]:
    """Write one size as one PDF for each paper in `on` (`A4`, `Letter`), in that order.

    Raises `PrintingRefused`, also where a font of the theme is missing.
    """
    with _without_collector():
        return papers(_layout(handout, theme, publisher), on)


def paper_html(handout: Handout, theme: Theme, publisher: Publisher) -> str:
    """The page of one size as WeasyPrint is given it."""
    template = environment(theme).get_template("handout.html")
    marker = Marker(theme.look, web=False, ids="", pictures=PICTURE)
    with speaking(tongue_of(handout.language)):
        return template.render(
            h=handout,
            mark=marker,
            publisher=publisher,
            code=page_code(publisher, handout.slug),
            chapters="",
            cue_sheets=(),
        )


def print_page(
    page: str, theme: Theme, sheet: str, pictures: Mapping[str, Callable[[], bytes]], on: tuple[str, ...]
) -> tuple[bytes, ...]:
    """Write a whole page as one PDF for each paper, by a style sheet of the theme.

    `pictures` are those that it may fetch, by their addresses.
    """
    with _without_collector():
        return papers(_laid_out(page, theme, sheet, pictures), on)


def _layout(handout: Handout, theme: Theme, publisher: Publisher) -> bytes:
    widest = theme.look.drawings.in_text
    pictures = {
        f"{PICTURE}{picture.name}": partial(paper_file, picture, widest) for picture in pictures_of(handout)
    }
    return _laid_out(paper_html(handout, theme, publisher), theme, "print.css", pictures)


def _laid_out(
    page_text: str, theme: Theme, sheet_name: str, pictures: Mapping[str, Callable[[], bytes]]
) -> bytes:
    import weasyprint
    from weasyprint.text.fonts import FontConfiguration
    from weasyprint.urls import FatalURLFetchingError

    held: dict[str, Callable[[], bytes]] = {
        f"{FONT}{number}": partial(paper_font, cut) for number, cut in enumerate(theme.look.fonts)
    }
    held |= pictures

    fetcher = _fetcher(held)
    configuration = FontConfiguration()
    sheet = font_faces(theme.look, lambda number, _: f"{FONT}{number}") + theme.text(sheet_name)
    try:
        style = weasyprint.CSS(string=sheet, url_fetcher=fetcher, font_config=configuration)
        page = weasyprint.HTML(string=page_text, url_fetcher=fetcher)
        document = page.render(font_config=configuration, stylesheets=[style], presentational_hints=True)
        written = document.write_pdf(finisher=mend, pdf_variant="pdf/ua-1")
    except FatalURLFetchingError as error:
        raise PrintingRefused(str(error)) from error
    assert isinstance(written, bytes)
    return written


def _fetcher(held: Mapping[str, Callable[[], bytes]]) -> URLFetcher:
    """A fetcher that knows the fonts and pictures of one handout and refuses everything else."""
    from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

    class OurFetcher(URLFetcher):  # type: ignore[misc]
        def fetch(self, url: str, headers: object = None) -> URLFetcherResponse:
            if url not in held:
                raise FatalURLFetchingError(f"a handout may not fetch {url}")
            try:
                return URLFetcherResponse(url, held[url]())
            except (PrintingRefused, ThemeError) as error:  # any other exception is only logged
                raise FatalURLFetchingError(str(error)) from error

    return OurFetcher()


@contextmanager
def _without_collector() -> Iterator[None]:
    """Layout makes many objects that all live until it ends: collect once, afterwards.

    What lived before is put out of the collector's sight meanwhile, or it would be searched in vain.
    """
    was_on = gc.isenabled()
    gc.disable()
    gc.freeze()
    try:
        yield
    finally:
        gc.collect()
        gc.unfreeze()
        if was_on:
            gc.enable()
