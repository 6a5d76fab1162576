"""Transform the lines between the two `---` into keys and values with their places.

A strict reading of YAML: every value stays the text that was typed (`no`, `1:30` and `012` mean
nothing but themselves here), and what could surprise an author is refused: keys that stand twice,
names for values and references to them, tags, comments that cut a value short, deep nesting.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import yaml

from presscloth.frozen import dataclass
from presscloth.problems import Label, Problem, Problems
from presscloth.recipe.front_yaml_problems import (
    FrontMatterKeyTwice,
    FrontMatterMissing,
    FrontMatterNotClosed,
    FrontMatterNotRead,
    FrontMatterTooDeep,
    SignNeedsQuotes,
    ValueCutOff,
)
from presscloth.source import Passage, Source, Span

MOST_LINES = 200
DEEPEST = 5
_REST_OF_LINE = re.compile(r"[ \t]+#[^\n]*")


@dataclass(frozen=True, slots=True)
class Scalar:
    """A value as typed, without the quotes around it; the span has them."""

    text: str
    span: Span

    @property
    def passage(self) -> Passage:
        """The text with a place for each character; where YAML joined lines, all have the first place."""
        at = self.span.text.find(self.text)
        if at >= 0:
            start = self.span.start + at
            return Passage.of(Span(self.span.source, start, start + len(self.text)))
        places = (*(self.span.start for _ in self.text), self.span.end)
        return Passage(self.span.source, self.text, places)


@dataclass(frozen=True, slots=True)
class Items:
    """A list of values."""

    of: tuple[Node, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Pairs:
    """Keys with their values, in the order written; no key stands twice."""

    of: tuple[tuple[Scalar, Node], ...]
    span: Span


Node = Scalar | Items | Pairs


@dataclass(frozen=True, slots=True)
class FrontLines:
    """What the front matter holds; not `whole` where a part could not be read, which is reported."""

    pairs: tuple[tuple[Scalar, Node], ...]
    span: Span
    whole: bool


def front_lines(source: Source, problems: Problems) -> tuple[FrontLines, int]:
    """The keys and values of the front matter, and the offset at which the body begins.

    Reports a front matter that is missing, never closed within 200 lines, or not plain YAML; what
    stands before the first fault is read all the same.
    """
    begin = 1 if source.text.startswith("\ufeff") else 0
    start, opened = _line(source, begin)
    if opened.rstrip() != "---":
        problems.add(FrontMatterMissing(span=source.span(begin, begin + len(opened.rstrip()))))
        return FrontLines((), source.span(begin, begin), whole=False), begin
    first = source.span(begin, begin + 3)
    end, body = _closing(source, start)
    if body is None:
        problems.add(FrontMatterNotClosed(span=first))
        guessed = tuple(_Reading(source, start, end, Problems()).top())
        return FrontLines(guessed, first, whole=False), end
    reading = _Reading(source, start, end, problems)
    pairs = tuple(reading.top())
    return FrontLines(pairs, first, reading.whole), body


def _line(source: Source, at: int) -> tuple[int, str]:
    """Where the next line begins, and the text of the line that begins at `at`."""
    end = source.text.find("\n", at)
    return (len(source.text), source.text[at:]) if end < 0 else (end + 1, source.text[at:end])


def _closing(source: Source, at: int) -> tuple[int, int | None]:
    """Where the keys end and where the body begins; unclosed, they end at the first blank line."""
    blank: int | None = None
    for _ in range(MOST_LINES + 1):
        if at >= len(source.text):
            break
        after, line = _line(source, at)
        if line.rstrip() == "---":
            return at, after
        if blank is None and (not line.strip() or line.startswith("#")):
            blank = at
        at = after
    return (at if blank is None else blank), None


class _Reading:
    """Reading the lines of the front matter, event by event."""

    def __init__(self, source: Source, start: int, end: int, problems: Problems) -> None:
        self.source, self.start, self.problems = source, start, problems
        self.text = source.text[start:end]
        self.whole = True
        self.stopped = False

    def span(self, start: int, end: int) -> Span:
        """A place in the lines, less blank characters at its end; at least one character if there is one."""
        found = self.text[start:end]
        end = max(start + len(found.rstrip()), min(start + 1, len(self.text)))
        return self.source.span(self.start + start, self.start + end)

    def report(self, problem: Problem) -> None:
        self.problems.add(problem)
        self.whole = False

    def top(self) -> Iterator[tuple[Scalar, Node]]:
        """The outermost pairs, as far as the lines can be read."""
        try:
            events = yaml.parse(self.text, Loader=yaml.SafeLoader)
            for event in events:
                match event:
                    case yaml.MappingStartEvent():
                        self.hold_sign(event)
                        yield from self.pairs(events, 1)
                    case yaml.NodeEvent() if self.place(event).text:
                        first, _, _ = self.place(event).text.partition("\n")
                        at = self.place(event).start
                        span = self.source.span(at, at + len(first))
                        self.report(FrontMatterNotRead(span=span, what="this is no `key: value`"))
                        return
                if self.stopped:
                    return
        except yaml.YAMLError as error:
            self.report(_unreadable(error, self))

    def place(self, event: yaml.Event) -> Span:
        assert event.start_mark is not None and event.end_mark is not None
        return self.span(event.start_mark.index, event.end_mark.index)

    def pairs(self, events: Iterator[yaml.Event], depth: int) -> Iterator[tuple[Scalar, Node]]:
        known: dict[str, Scalar] = {}
        for event in events:
            if isinstance(event, yaml.MappingEndEvent):
                return
            key = self.node(event, events, depth)
            value = self.node(next(events), events, depth) if not self.stopped else None
            if self.stopped:
                return
            if not isinstance(key, Scalar):
                if key is not None:
                    self.report(FrontMatterNotRead(span=key.span, what="a list cannot be a key"))
                    self.stopped = True
                    return
            elif (earlier := known.get(key.text)) is not None:
                label = Label(earlier.span, "here first")
                self.report(FrontMatterKeyTwice(span=key.span, key=key.text, labels=(label,)))
            elif value is not None:
                known[key.text] = key
                yield key, value

    def items(self, events: Iterator[yaml.Event], depth: int) -> Iterator[Node]:
        for event in events:
            if isinstance(event, yaml.SequenceEndEvent):
                return
            item = self.node(event, events, depth)
            if self.stopped:
                return
            if item is not None:
                yield item

    def node(self, event: yaml.Event, events: Iterator[yaml.Event], depth: int) -> Node | None:
        """A value with all that stands in it; None where it has been reported."""
        place = self.place(event)
        self.hold_sign(event)
        if depth >= DEEPEST and isinstance(event, yaml.CollectionStartEvent):
            self.report(FrontMatterTooDeep(span=place, deepest=DEEPEST))
            self.stopped = True
            return None
        match event:
            case yaml.ScalarEvent():
                self.cut_off(event)
                return Scalar(" ".join(event.value.split()), place)
            case yaml.SequenceStartEvent():
                items = tuple(self.items(events, depth + 1))
                return Items(items, place.to(items[-1].span) if items else place)
            case yaml.MappingStartEvent():
                pairs = tuple(self.pairs(events, depth + 1))
                return Pairs(pairs, place.to(pairs[-1][1].span) if pairs else place)
            case _:
                return None

    def hold_sign(self, event: yaml.Event) -> None:
        """Report a value that begins with one of YAML's own signs."""
        if isinstance(event, yaml.AliasEvent):
            self.report(SignNeedsQuotes(span=self.place(event), sign="*"))
        elif isinstance(event, yaml.NodeEvent) and event.anchor is not None:
            self.report(SignNeedsQuotes(span=self.place(event), sign="&"))
        elif isinstance(event, yaml.ScalarEvent | yaml.CollectionStartEvent) and event.tag is not None:
            self.report(SignNeedsQuotes(span=self.place(event), sign="!"))

    def cut_off(self, event: yaml.ScalarEvent) -> None:
        """Report a value without quotes that ends at a ` #`."""
        rest = _REST_OF_LINE.match(self.text, self.place(event).end - self.start)
        if rest and event.style is None and event.value:
            span = self.span(rest.start(), rest.end())
            self.report(ValueCutOff(span=span, value=event.value, rest=rest[0].strip()))


_SIGNS = tuple("*&!@%`")
_SECOND_COLON = re.compile(r"\s*(?:- )?[^:\n]*:\s+\S[^\n]*:")

_CANNOT_SEE = ("a sign stands here that cannot be seen", "delete it")
_TAB = ("a tab stands here", "put spaces in its place")
_TWO_COLONS = ("a second colon stands in this line", 'put the value in quotes: `title: "Bag: a small one"`')
_DOES_NOT_FIT = (
    "this line does not fit to the line above",
    "begin both in the first column, each with a key, a colon and a space",
)
_NO_COLON = ("this line has no colon", "write a key, a colon, a space and the value")
_QUOTE = ("the quote that begins here is never closed", "close it in the same line")
_BRACKET = ("the bracket that begins here is never closed", "close it in the same line")
_ANYTHING = ("this cannot be read", "write each line as `key: value`, and put the value in double quotes")


def _unreadable(error: yaml.YAMLError, reading: _Reading) -> Problem:
    """What a fault of the YAML means to somebody who has never heard of YAML."""
    text = reading.text
    match error:
        case yaml.reader.ReaderError(position=at):
            return _not_read(reading.span(at, at + 1), _CANNOT_SEE)
        case yaml.MarkedYAMLError(problem=str(problem), problem_mark=yaml.Mark(index=at)):
            place = reading.span(at, at + 1)
            if at >= len(text):
                place = reading.span(text.rstrip().rfind("\n") + 1, at)
            opened = place
            if error.context_mark is not None:
                opened = reading.span(error.context_mark.index, at)
        case _:
            return _not_read(reading.span(0, len(text)), _ANYTHING)
    if opened.text.startswith(_SIGNS):
        return SignNeedsQuotes(span=opened, sign=opened.text[0])
    if "cannot start any token" in problem and place.text == "\t":
        return _not_read(place, _TAB)
    if "mapping values" in problem and _SECOND_COLON.match(text, text.rfind("\n", 0, at) + 1, at + 1):
        return _not_read(place, _TWO_COLONS)
    if "expected ':'" in problem:
        return _not_read(opened, _NO_COLON)
    if "mapping values" in problem or "block mapping start" in problem:
        return _not_read(place, _DOES_NOT_FIT)
    if "end of stream" in problem and "quoted" in (error.context or ""):
        return _not_read(opened, _QUOTE)
    if "expected ','" in problem:
        return _not_read(opened, _BRACKET)
    return _not_read(place, _ANYTHING)


def _not_read(span: Span, fault: tuple[str, str]) -> Problem:
    what, advice = fault
    return FrontMatterNotRead(span=span, what=what, advice=advice)
