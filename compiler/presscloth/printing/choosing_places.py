"""The places of a page at which its words follow the reader's choice, found by laying ways side by side."""

from __future__ import annotations

import re
from collections.abc import Sequence
from html import unescape

from presscloth.frozen import dataclass
from presscloth.measure.followed import MARKED

PLACE = "data-f"
"""Marks an element whose words follow the reader's choice; the value is its place in the size."""

_BUILT = re.compile(r'<span class="fraction">(\d+/\d+)</span>')
_FRACTION = re.compile("\uf8f0([^\uf8f1]*)\uf8f1")
"""A built fraction, which is a word here and no tag: another choice may have none there."""

_TAG = re.compile(r"(<[^>]*>)")
_MARK = re.compile("[\U00100000-\U0010fffe]")


@dataclass(frozen=True)
class Section:
    """A size of a page: what stands between its tags, the tags, and the words that marks stand for.

    In `texts` a mark alone stands for its words; `words` are those of all marks, in order.
    """

    texts: tuple[str, ...]
    marked_tags: tuple[str, ...]
    words: tuple[str, ...]

    @property
    def tags(self) -> tuple[str, ...]:
        return tuple(_MARK.sub("", tag) for tag in self.marked_tags)

    def template(self, place: int) -> str:
        """The plain words of a place, marks for those that follow."""
        return _FRACTION.sub(r"\1", unescape(self.texts[place]))

    def shown(self, place: int) -> str:
        """The words of a place as they are written, marks for those that follow."""
        return _FRACTION.sub(r'<span class="fraction">\1</span>', self.texts[place])


def place_of_size(page: str, name: str) -> tuple[int, int]:
    """Where a size stands in a page: from its element to the next size, or to the end of the sizes."""
    start = page.index(f'id="size-{name}"')
    after = re.compile(r'<(?:section|div) class="size"|</main>').search(page, start)
    assert after is not None
    return start, after.start()


def section_of(page: str, name: str) -> Section:
    start, end = place_of_size(page, name)
    section = page[start:end]
    parts = _TAG.split(_BUILT.sub("\uf8f0\\1\uf8f1", MARKED.sub(r"\1", section)))
    words = tuple(found[2] for found in MARKED.finditer(section))
    return Section(tuple(parts[::2]), tuple(parts[1::2]), words)


def places_of(sections: Sequence[Section]) -> tuple[int, ...]:
    """Between which tags words follow: those that have a mark, and those that differ from way to way."""
    columns = zip(*(section.texts for section in sections), strict=True)
    return tuple(
        place for place, texts in enumerate(columns) if len(set(texts)) > 1 or _MARK.search(texts[0])
    )


def with_places(page: str, name: str, places: Sequence[int]) -> str:
    """A page in which each place of a size is an element that bears its number."""
    section = section_of(page, name)
    start, end = place_of_size(page, name)
    words = iter(section.words)
    numbers = {place: number for number, place in enumerate(places)}
    written: list[str] = []
    for place, tag in enumerate((*section.marked_tags, "")):
        plain = _MARK.sub(lambda _: next(words), section.shown(place))
        number = numbers.get(place)
        written.append(plain if number is None else f'<span {PLACE}="{number}">{plain}</span>')
        written.append(_MARK.sub(lambda _: next(words), tag))
    return page[:start] + "".join(written) + page[end:]
