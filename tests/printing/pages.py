"""A page of HTML taken apart with the standard library: elements in order, their ids, their words."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser

VOID = {"meta", "link", "input", "img", "br", "hr"}


@dataclass
class Element:
    tag: str
    attributes: dict[str, str]
    above: tuple[str, ...]
    text: str = ""
    inside: list[Element] = field(default_factory=list)


class Page(HTMLParser):
    """Reads a page; asserts that every element is closed in its order (SVG's own ones too)."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.elements: list[Element] = []
        self.open: list[Element] = []
        self.feed(text)
        self.close()
        assert not self.open, f"left open: {[element.tag for element in self.open]}"

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        assert len(names) == len(set(names)), f"an attribute twice in {tag}"
        held = {name: value or "" for name, value in attrs}
        element = Element(tag, held, tuple(each.tag for each in self.open))
        self.elements.append(element)
        for above in self.open:
            above.inside.append(element)
        if tag not in VOID:
            self.open.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.handle_endtag(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open and self.open[-1].tag == tag, f"{tag} closes {[e.tag for e in self.open]}"
        self.open.pop()

    def handle_data(self, data: str) -> None:
        for above in self.open:
            above.text += data

    def all(self, tag: str, kind: str = "") -> list[Element]:
        found = [element for element in self.elements if element.tag == tag]
        return [each for each in found if not kind or kind in each.attributes.get("class", "").split()]

    @property
    def ids(self) -> list[str]:
        return [each.attributes["id"] for each in self.elements if "id" in each.attributes]

    @property
    def heading_ranks(self) -> list[int]:
        return [
            int(each.tag[1]) for each in self.elements if each.tag in ("h1", "h2", "h3", "h4", "h5", "h6")
        ]


def words(text: str) -> str:
    return " ".join(text.split())
