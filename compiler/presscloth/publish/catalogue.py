"""The pages of the catalogue: all recipes by month, and those of each craft, skill and longer project."""

from __future__ import annotations

from presscloth.frozen import dataclass
from presscloth.handout.tree import Publisher
from presscloth.printing.html import StandingLink
from presscloth.printing.theme import Theme, environment
from presscloth.publish.entry import CatalogueEntry
from presscloth.publish.lists import (
    CatalogueList,
    by_craft,
    by_month,
    by_project,
    by_skill,
    one_of_each,
    others_of,
)
from presscloth.publish.search import WORDS_FILE
from presscloth.tongue import language_name, speaking, tongue_of


@dataclass(frozen=True, slots=True)
class Catalogue:
    """All recipes in their order, in every language, and what their lists are made with."""

    entries: tuple[CatalogueEntry, ...]
    theme: Theme
    publisher: Publisher
    standing: tuple[StandingLink, ...]

    @property
    def shown(self) -> tuple[CatalogueEntry, ...]:
        """Each recipe once, in the publisher's language where there is such a version."""
        return one_of_each(self.entries, self.publisher.language)

    @property
    def lists(self) -> tuple[CatalogueList, ...]:
        return (*by_craft(self.shown), *by_skill(self.shown), *by_project(self.shown))

    def others(self, entry: CatalogueEntry) -> tuple[tuple[str, CatalogueEntry], ...]:
        """A recipe's other versions, each with the name of its language in that language."""
        return tuple((language_name(each.language), each) for each in others_of(entry, self.entries))


def catalogue_html(catalogue: Catalogue) -> str:
    """The first page: recipes by month in their order, the search, and the ways to the lists."""
    shown = catalogue.shown
    with speaking(tongue_of(catalogue.publisher.language)):
        return environment(catalogue.theme).get_template("catalogue.html").render(
            months=by_month(shown),
            crafts=by_craft(shown),
            skills=by_skill(shown),
            projects=by_project(shown),
            others=catalogue.others,
            words_file=WORDS_FILE,
            publisher=catalogue.publisher,
            standing=catalogue.standing,
            language=catalogue.publisher.language,
            here="index",
            up="",
        )  # fmt: skip


def list_html(listed: CatalogueList, catalogue: Catalogue) -> str:
    """The page of one craft, skill or project, one folder below the first page."""
    with speaking(tongue_of(catalogue.publisher.language)):
        return environment(catalogue.theme).get_template("list.html").render(
            list=listed,
            kind=listed.file.split("/")[0],
            others=catalogue.others,
            publisher=catalogue.publisher,
            standing=catalogue.standing,
            language=catalogue.publisher.language,
            here=listed.file,
            up="../",
        )  # fmt: skip
