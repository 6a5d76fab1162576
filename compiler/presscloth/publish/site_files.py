"""The files that belong to the site as a whole: a small function for each kind, and all in one list."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from presscloth.frozen import dataclass
from presscloth.handout.tree import Publisher
from presscloth.printing.theme import Theme
from presscloth.publish.catalogue import Catalogue, catalogue_html, list_html
from presscloth.publish.entry import CatalogueEntry
from presscloth.publish.feed import FEED_FILE, feed_xml
from presscloth.publish.recipe_files import File
from presscloth.publish.search import WORDS_FILE, words_script
from presscloth.publish.sitemap import SITEMAP_FILE, robots_txt, sitemap_xml
from presscloth.publish.standing import StandingPage, standing_html, standing_links


@dataclass(frozen=True, slots=True)
class SiteToWrite:
    """All recipes in the order of the catalogue, those kept from an earlier run too."""

    entries: tuple[CatalogueEntry, ...]
    theme: Theme
    publisher: Publisher
    standing: tuple[StandingPage, ...]

    @property
    def catalogue(self) -> Catalogue:
        links = standing_links(self.standing, self.publisher.language)
        return Catalogue(self.entries, self.theme, self.publisher, links)


def catalogue_pages(site: SiteToWrite) -> Iterator[File]:
    catalogue = site.catalogue
    yield "index.html", catalogue_html(catalogue)
    for each in catalogue.lists:
        yield each.file, list_html(each, catalogue)


def search_words(site: SiteToWrite) -> Iterator[File]:
    yield WORDS_FILE, words_script(site.catalogue.shown, site.entries)


def standing_pages(site: SiteToWrite) -> Iterator[File]:
    for page in site.standing:
        yield _place(page), standing_html(page, site.standing, site.theme, site.publisher)


def for_other_programs(site: SiteToWrite) -> Iterator[File]:
    """Feed and sitemap name whole addresses, so that a publisher without one has none of them."""
    if not site.publisher.address:
        return
    yield FEED_FILE, feed_xml(site.catalogue.shown, site.entries, site.publisher)
    standing = tuple(map(_place, site.standing))
    yield SITEMAP_FILE, sitemap_xml(site.entries, site.catalogue.lists, standing, site.publisher)
    robots = robots_txt(site.publisher)
    if robots:
        yield "robots.txt", robots


SITE_FILES: tuple[Callable[[SiteToWrite], Iterator[File]], ...] = (
    catalogue_pages,
    search_words,
    standing_pages,
    for_other_programs,
)


def _place(page: StandingPage) -> str:
    return f"standing/{page.name}.html"
