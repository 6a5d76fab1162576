"""Matching a statement's tokens against a pattern, in every way that the names allow."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from presscloth.frozen import dataclass
from presscloth.problems import Problems
from presscloth.recipe.expression import Broken, Expression, Name, PartOf, within
from presscloth.recipe.lexer import Token, TokenKind
from presscloth.recipe.patterns import Element, Literal, Maybe, OneOf, Place
from presscloth.recipe.reckoning import ExpressionReader
from presscloth.recipe.statement import Amount, Caught, Choice, Counted, EdgesOf, Sides, Slot, Things
from presscloth.recipe.words import EDGES, PARTS, SMALL_WORDS, look_up, nearest
from presscloth.source import Passage, Span

MOST_WORDS = 6
MOST_READINGS = 400

Slots = Mapping[str, Slot]


@dataclass(frozen=True, slots=True)
class Known:
    """The names that a recipe knows: measures, things (pieces and what is sewn), material keys.

    `lost` are the places where more would have been named, had they been readable; `edges` the names
    that outlines give to edges.
    """

    measures: Mapping[str, Span]
    things: Mapping[str, Span]
    keys: frozenset[str]
    lost: tuple[Span, ...] = ()
    edges: tuple[str, ...] = ()

    def is_thing(self, name: str) -> bool:
        return look_up(name, self.things) is not None

    def is_called_thing(self, name: str) -> bool:
        """Whether a name, perhaps with a material's letter before it (`A pocket`), names a thing."""
        key, _, rest = name.partition(" ")
        return self.is_thing(name) or (key in self.keys and self.is_thing(rest))

    def is_measure(self, name: str) -> bool:
        return look_up(name, self.measures) is not None

    def is_part(self, part: PartOf) -> bool:
        """Whether things have such a part: a side, or an edge that an outline names."""
        return part.part in PARTS or part.part in self.edges

    def nearest_part(self, part: PartOf) -> str | None:
        """The part that somebody who typed another one probably meant."""
        return nearest(part.part, (*sorted(PARTS), *self.edges))

    def nearest(self, name: str) -> str | None:
        return nearest(name, (*self.things, *self.measures))


class Matcher:
    """Tries patterns on the tokens of one statement.

    With `free`, a place takes words that are no known name, so that a statement with a misspelt
    name still shows what it was meant to be.
    """

    def __init__(self, passage: Passage, tokens: tuple[Token, ...], known: Known, *, free: bool) -> None:
        self.passage = passage
        self.tokens = tokens
        self.known = known
        self.free = free
        self._tried = 0

    def match(self, pattern: tuple[Element, ...], at: int, slots: Slots) -> Iterator[tuple[int, Slots]]:
        """Every way in which a pattern fits from `at` on: where it ends, and what stood in its places."""
        if not pattern:
            yield at, slots
            return
        self._tried += 1
        if self._tried > MOST_READINGS * 50:
            return
        first, others = pattern[0], pattern[1:]
        for end, more in self._element(first, at, slots):
            yield from self.match(others, end, more)

    def _element(self, element: Element, at: int, slots: Slots) -> Iterator[tuple[int, Slots]]:
        match element:
            case Literal(word=word):
                if self._says(at, word):
                    yield at + 1, slots
            case OneOf(name=name, ways=ways):
                for way in ways:
                    if all(self._says(at + i, word) for i, word in enumerate(way)):
                        choice = Choice(" ".join(way), self._span(at, at + len(way)))
                        yield at + len(way), {**slots, name: choice}
            case Maybe(of=inner, flag=flag):
                for end, more in self.match(inner, at, slots):
                    if flag is None:
                        yield end, more
                    else:
                        yield end, {**more, flag: Choice(flag, self._span(at, end))}
                yield at, slots
            case Place(name=name, kind=kind):
                for end, slot in self._place(kind, at):
                    yield end, {**slots, name: slot}

    def _says(self, at: int, word: str) -> bool:
        return at < len(self.tokens) and self.tokens[at].text.casefold() == word

    def _span(self, start: int, end: int) -> Span:
        return self.tokens[start].span.to(self.tokens[end - 1].span)

    def _place(self, kind: str, at: int) -> Iterator[tuple[int, Slot]]:
        match kind:
            case "thing":
                yield from self._counted(at)
            case "things":
                for end, things in self._list_of_things(at):
                    yield end, Things(things, self._span(at, end))
            case "edge":
                yield from self._edges_of(at, most=1)
            case "edges":
                yield from self._edges_of(at, most=4)
            case "sides":
                for end, edges in self._edge_words(at, most=4):
                    yield end, Sides(edges, self._span(at, end))
            case "caught":
                for end, caught in self._list_of_edges(at):
                    yield end, Caught(caught, self._span(at, end))
            case _:
                yield from self._amount(at)

    def _counted(self, at: int) -> Iterator[tuple[int, Counted]]:
        for start, count in self._count(at):
            for end, key, name in self._name(start):
                yield end, Counted(name, count, key, self._span(at, end))

    def _count(self, at: int) -> Iterator[tuple[int, Expression | None]]:
        yield at, None
        if at >= len(self.tokens):
            return
        token = self.tokens[at]
        if token.kind is TokenKind.NUMBER:
            found = self._expression(at, at + 1)
            if found is not None:
                yield at + 1, found
        elif token.says("("):
            end = self._closing(at)
            found = self._expression(at, end) if end else None
            if end and found is not None:
                yield end, found

    def _closing(self, at: int) -> int | None:
        depth = 0
        for i in range(at, len(self.tokens)):
            if self.tokens[i].says("("):
                depth += 1
            elif self.tokens[i].says(")"):
                depth -= 1
                if depth == 0:
                    return i + 1
        return None

    def _name(self, at: int) -> Iterator[tuple[int, str | None, Name]]:
        for end in range(at + 1, min(at + MOST_WORDS, len(self.tokens)) + 1):
            if self.tokens[end - 1].kind is not TokenKind.WORD or self.tokens[end - 1].text in SMALL_WORDS:
                return
            words = " ".join(token.text for token in self.tokens[at:end])
            if self.free or self.known.is_thing(words):
                yield end, None, Name(words, self._span(at, end))
            key, _, rest = words.partition(" ")
            if rest and key in self.known.keys and self.known.is_thing(rest):
                yield end, key, Name(rest, self._span(at + 1, end))

    def _list_of_things(self, at: int) -> Iterator[tuple[int, tuple[Counted, ...]]]:
        for end, first in self._counted(at):
            yield end, (first,)
            if self._says(end, ","):
                for last, others in self._list_of_things(end + 1):
                    yield last, (first, *others)

    def _edges_of(self, at: int, most: int) -> Iterator[tuple[int, EdgesOf]]:
        for end, edges in self._edge_words(at, most):
            if self._says(end, "of"):
                for last, counted in self._counted(end + 1):
                    yield last, EdgesOf(edges, counted, self._span(at, last))

    def _edge_words(self, at: int, most: int) -> Iterator[tuple[int, tuple[str, ...]]]:
        """`left, right and bottom`, `long side`, `all` (all four edges)."""
        if most > 1 and self._says(at, "all"):
            yield at + 1, EDGES
            return
        if self._says(at, "long") and self._says(at + 1, "side"):
            yield at + 2, ("long side",)
            return
        for end, edge in self._edge_word(at):
            yield end, (edge,)
            if most > 1 and (self._says(end, ",") or self._says(end, "and")):
                for last, others in self._edge_words(end + 1, most - 1):
                    yield last, (edge, *others)

    def _edge_word(self, at: int) -> Iterator[tuple[int, str]]:
        """One of the four edges, or one that an outline names."""
        if at < len(self.tokens) and self.tokens[at].text in EDGES:
            yield at + 1, self.tokens[at].text
        for edge in self.known.edges:
            words = edge.casefold().split(" ")
            if edge not in EDGES and all(self._says(at + i, word) for i, word in enumerate(words)):
                yield at + len(words), edge

    def _list_of_edges(self, at: int) -> Iterator[tuple[int, tuple[EdgesOf, ...]]]:
        for end, first in self._edges_of(at, most=1):
            yield end, (first,)
            if self._says(end, ","):
                for last, others in self._list_of_edges(end + 1):
                    yield last, (first, *others)

    def _amount(self, at: int) -> Iterator[tuple[int, Amount]]:
        for end in range(len(self.tokens), at, -1):
            found = self._expression(at, end)
            if found is not None and (self.free or self._names_known(found)):
                yield end, Amount(found, self._span(at, end))

    def _expression(self, start: int, end: int) -> Expression | None:
        """The expression that these tokens spell, all of them; None when they spell none."""
        quiet = Problems()
        reader = ExpressionReader(self.passage, quiet, self.tokens[start:end])
        found = reader.expression()
        if isinstance(found, Broken) or reader.next is not None:
            return None
        return found if all(self.known.is_part(part) for part in parts_in(found)) else None

    def _names_known(self, expression: Expression) -> bool:
        return all(
            self.known.is_measure(name.text) if measure else self.known.is_called_thing(name.text)
            for name, measure in names_in(expression)
        )

    def unknown_in(self, slots: Slots) -> tuple[Name, ...]:
        """The names of a reading that nobody knows, in the order in which they stand."""
        found: dict[Name, None] = {}
        for slot in slots.values():
            for name, measure in names_of(slot):
                known = self.known.is_measure(name.text) if measure else self.known.is_called_thing(name.text)
                if not known:
                    found[name] = None
        return tuple(found)


def counted_in(slot: Slot) -> Iterator[Counted]:
    """The things of which a statement's place speaks, with the numbers before them."""
    match slot:
        case Counted():
            yield slot
        case EdgesOf(of=of):
            yield of
        case Things(of=things):
            yield from things
        case Caught(of=caught):
            yield from (edges.of for edges in caught)
        case Sides() | Choice() | Amount():
            return


def names_of(slot: Slot) -> Iterator[tuple[Name, bool]]:
    """The names in a statement's place; each with True for a measure, False for a thing."""
    match slot:
        case Counted(name=name, count=count):
            yield name, False
            if count is not None:
                yield from names_in(count)
        case EdgesOf(of=of):
            yield from names_of(of)
        case Things(of=things):
            for thing in things:
                yield from names_of(thing)
        case Caught(of=caught):
            for edges in caught:
                yield from names_of(edges)
        case Amount(of=expression):
            yield from names_in(expression)
        case Sides() | Choice():
            return


def part_words(part: PartOf) -> Span:
    """The place of what stands before `of`."""
    before = part.span.text[: part.of.span.start - part.span.start].rstrip()
    return part.span.source.span(part.span.start, part.span.start + len(before.removesuffix("of").rstrip()))


def parts_in(expression: Expression) -> Iterator[PartOf]:
    """The measures of things in an expression: `width of panel`."""
    return (each for each in within(expression) if isinstance(each, PartOf))


def names_in(expression: Expression) -> Iterator[tuple[Name, bool]]:
    """The names in an expression; each with True for a measure, False for a thing (`width of …`)."""
    for each in within(expression):
        if isinstance(each, Name):
            yield each, True
        elif isinstance(each, PartOf):
            yield each.of, False
