"""The pages of the catalogue: all recipes by month, and those of each craft, skill and longer project."""

from __future__ import annotations

from presscloth.handout.tree import Publisher
from presscloth.printing.html import StandingLink
from presscloth.printing.theme import Theme, environment
from presscloth.publish.entry import CatalogueEntry
from presscloth.publish.lists import CatalogueList, by_craft, by_month, by_project, by_skill
from presscloth.publish.search import WORDS_FILE
from presscloth.tongue import speaking, tongue_of


def catalogue_html(
    entries: tuple[CatalogueEntry, ...],
    theme: Theme,
    publisher: Publisher,
    standing: tuple[StandingLink, ...],
) -> str:
    """The first page: recipes by month in their order, the search, and the ways to the lists."""
    with speaking(tongue_of(publisher.language)):
        return environment(theme).get_template("catalogue.html").render(
            months=by_month(entries),
            crafts=by_craft(entries),
            skills=by_skill(entries),
            projects=by_project(entries),
            words_file=WORDS_FILE,
            publisher=publisher,
            standing=standing,
            language=publisher.language,
            here="index",
            up="",
        )  # fmt: skip


def list_html(
    listed: CatalogueList,
    theme: Theme,
    publisher: Publisher,
    standing: tuple[StandingLink, ...],
) -> str:
    """The page of one craft, skill or project, one folder below the first page."""
    with speaking(tongue_of(publisher.language)):
        return environment(theme).get_template("list.html").render(
            list=listed,
            kind=listed.file.split("/")[0],
            publisher=publisher,
            standing=standing,
            language=publisher.language,
            here=listed.file,
            up="../",
        )  # fmt: skip
