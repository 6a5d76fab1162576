"""YAML as far as the publisher's file wants it: keys with a text or a list of texts."""

from __future__ import annotations

from collections.abc import Iterator

import yaml

from presscloth.frozen import dataclass
from presscloth.problems import Problems
from presscloth.publish.publisher_problems import PublisherFileUnreadable
from presscloth.source import Source, Span

LARGEST = 20_000  # characters
DEEPEST = 3
REFUSED = (yaml.AnchorToken, yaml.AliasToken, yaml.TagToken)
OPENS = (
    yaml.BlockSequenceStartToken,
    yaml.BlockMappingStartToken,
    yaml.FlowSequenceStartToken,
    yaml.FlowMappingStartToken,
)
CLOSES = (yaml.BlockEndToken, yaml.FlowSequenceEndToken, yaml.FlowMappingEndToken)


@dataclass(frozen=True, slots=True)
class Entry:
    """A key and its values, each with its place; `single` where it is a text and not a list."""

    key: str
    key_span: Span
    span: Span
    values: tuple[tuple[str, Span], ...]
    single: bool


class _Unreadable(Exception):
    """Why, and the characters from and to."""

    def __init__(self, why: str, start: int, end: int) -> None:
        super().__init__(why)
        self.why, self.start, self.end = why, start, end


def entries(source: Source, problems: Problems) -> Iterator[Entry]:
    """The entries of a file in its order.

    Nothing is given a type: `012` and `no` stay the texts that they are. Anchors, aliases and tags
    are refused, since a few lines of them can stand for gigabytes.
    """
    try:
        for key, value in _root(source.text):
            yield _entry(source, key, value)
    except _Unreadable as error:
        last = len(source.text)
        span = source.span(min(error.start, last), min(error.end, last))
        problems.add(PublisherFileUnreadable(span=span, why=error.why))


def _root(text: str) -> list[tuple[yaml.Node, yaml.Node]]:
    if len(text) > LARGEST:
        raise _Unreadable(f"it is longer than {LARGEST} characters", LARGEST, LARGEST)
    try:
        depth = 0
        for token in yaml.scan(text, Loader=yaml.SafeLoader):
            depth += isinstance(token, OPENS) - isinstance(token, CLOSES)
            if depth > DEEPEST:  # read on, and a line of brackets takes minutes
                raise _unreadable("only texts and lists of texts can stand in it", token)
            if isinstance(token, REFUSED):
                raise _unreadable("anchors, aliases and tags mean nothing in it", token)
        root = yaml.compose(text, Loader=yaml.SafeLoader)
    except yaml.MarkedYAMLError as error:
        place = error.problem_mark.index if error.problem_mark else 0
        raise _Unreadable(error.problem or "it is not YAML", place, place) from error
    except yaml.YAMLError as error:
        raise _Unreadable("it is not YAML", 0, 0) from error
    if root is None:
        return []
    if not isinstance(root, yaml.MappingNode):
        raise _unreadable("it has no keys", root)
    return [(key, value) for key, value in root.value]


def _entry(source: Source, key: yaml.Node, value: yaml.Node) -> Entry:
    held = value.value if isinstance(value, yaml.SequenceNode) else [value]
    values = tuple((_text(each), _span(source, each)) for each in held)
    return Entry(
        _text(key), _span(source, key), _span(source, value), values, isinstance(value, yaml.ScalarNode)
    )


def _text(node: yaml.Node) -> str:
    if not isinstance(node, yaml.ScalarNode):
        raise _unreadable("only texts and lists of texts can stand in it", node)
    return str(node.value)


def _span(source: Source, node: yaml.Node) -> Span:
    return source.span(node.start_mark.index, node.end_mark.index)


def _unreadable(why: str, at: yaml.Node | yaml.Token) -> _Unreadable:
    return _Unreadable(why, at.start_mark.index, at.end_mark.index)
