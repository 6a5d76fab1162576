"""Transform the text of a `sew` block into statements.

A statement is read in every way that its names allow: each pattern of each verb is tried, and in
each place every stretch of words that is a known name. Exactly one whole reading must remain.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from presscloth.frozen import dataclass
from presscloth.problems import Problems
from presscloth.recipe.expression import Broken, Name
from presscloth.recipe.lexer import Token, TokenKind, tokens
from presscloth.recipe.lost import cause
from presscloth.recipe.matching import Known, Matcher, Slots, counted_in
from presscloth.recipe.patterns import TAILS, ResultRule, VerbForm, elements, spoken
from presscloth.recipe.reading_problems import (
    NameUnknown,
    ResultMissing,
    ResultNotMade,
    StatementInTwoWays,
    StatementNotRead,
    VerbUnknown,
)
from presscloth.recipe.reckoning import ExpressionReader
from presscloth.recipe.statement import Result, SewBlock, Statement
from presscloth.recipe.words import nearest, why_no_name
from presscloth.source import Passage

MOST_TOKENS = 120


@dataclass(frozen=True, slots=True)
class Reading:
    verb: VerbForm
    pattern: str
    slots: Slots
    unknown: tuple[Name, ...]


def statement_passages(block: Passage) -> Iterator[Passage]:
    """Cut a block into statements: one on a line, a deeper indent continues it."""
    start: int | None = None
    base = end = at = 0
    for line in block.lines():
        length = len(line.text)
        if line.text.strip():
            indent = length - len(line.text.lstrip())
            if start is not None and indent <= base:
                yield block[start:end].strip()
                start = None
            if start is None:
                start, base = at, indent
            end = at + length
        at += length + 1
    if start is not None:
        yield block[start:end].strip()


def result_name(statement: Passage) -> Name | None:
    """The name that a statement makes, without reading the rest of it."""
    left = _left_side(tokens(statement)) or ()
    words = [token for token in left if token.kind is TokenKind.WORD]
    while left and left[-1].kind is TokenKind.WORD:
        left = left[:-1]
    closing = max((i for i, w in enumerate(words) if left and w.span.start < left[-1].span.start), default=-1)
    words = words[closing + 1 :]
    if not words:
        return None
    return Name(" ".join(word.text for word in words), words[0].span.to(words[-1].span))


def _left_side(found: Sequence[Token]) -> tuple[Token, ...] | None:
    """What stands before the `=`; None where there is none."""
    for i, token in enumerate(found):
        if token.says("="):
            return tuple(found[:i])
    return None


def sew_block(block: Passage, verbs: Sequence[VerbForm], known: Known, problems: Problems) -> SewBlock:
    """Read a block; a statement that cannot be read is reported and `Broken` in its place."""
    found = tuple(_statement(passage, verbs, known, problems) for passage in statement_passages(block))
    return SewBlock(found, block.span())


def _statement(
    passage: Passage, verbs: Sequence[VerbForm], known: Known, problems: Problems
) -> Statement | Broken:
    every = tokens(passage)
    broken = Broken(passage.span())
    for token in every:
        if token.problem is not None:
            problems.add(token.problem)
            return broken
    left = _left_side(every)
    result: Result | None = None
    if left is not None:
        read = _result(passage, left, problems)
        if isinstance(read, Broken):
            return broken
        result = read
    body = every if left is None else every[len(left) + 1 :]
    if not body or len(body) > MOST_TOKENS:
        problems.add(StatementNotRead(span=passage.span(), patterns=()))
        return broken
    reading = _read(passage, body, verbs, known, problems)
    if reading is None or not _result_fits(reading, result, passage, problems):
        return broken
    return Statement(reading.verb.verb, reading.pattern, result, reading.slots, passage.span())


def _result(passage: Passage, left: tuple[Token, ...], problems: Problems) -> Result | Broken:
    """`row`, `4 row` or `(4 × across) row`."""
    span = left[0].span.to(left[-1].span) if left else passage.span(0, 1)
    name = result_name(passage)
    if name is None or why_no_name(name.text) is not None:
        reason = "there is no name before the `=`" if name is None else f"`{name.text}` cannot be a name"
        why = why_no_name(name.text) if name else None
        problems.add(ResultNotMade(span=span, why=f"{reason}: {why}" if why else reason))
        return Broken(span)
    before = tuple(token for token in left if token.span.end <= name.span.start)
    if not before:
        return Result(name, None, span)
    reader = ExpressionReader(passage, problems, before)
    count = reader.expression()
    if isinstance(count, Broken):
        return count
    if reader.next is not None:
        problems.add(ResultNotMade(span=span, why=f"`{span.quoted}` is not a number and a name"))
        return Broken(span)
    return Result(name, count, span)


def _read(
    passage: Passage, body: tuple[Token, ...], verbs: Sequence[VerbForm], known: Known, problems: Problems
) -> Reading | None:
    first = body[0]
    by_first = [(verb, pattern) for verb in verbs for pattern in verb.patterns if _begins(pattern, first)]
    if not by_first:
        starts = {pattern.split()[0] for verb in verbs for pattern in verb.patterns}
        problems.add(VerbUnknown(span=first.span, verb=first.text, meant=nearest(first.text, starts)))
        return None
    strict = list(_readings(passage, body, by_first, known, free=False))
    if len(strict) == 1:
        return strict[0]
    if len(strict) > 1:
        problems.add(StatementInTwoWays(span=passage.span(), ways=_told_apart(strict)))
        return None
    loose = sorted(_readings(passage, body, by_first, known, free=True), key=_strangeness)
    if loose:
        for name in loose[0].unknown:
            meant = known.nearest(name.text)
            because = cause(name.text, known.lost)
            problems.add(NameUnknown(span=name.span, name=name.text, meant=meant, cause=because))
    else:
        shown = tuple(dict.fromkeys(spoken(pattern) for _, pattern in by_first))
        problems.add(StatementNotRead(span=passage.span(), patterns=shown))
    return None


def _told_apart(readings: Sequence[Reading]) -> tuple[str, ...]:
    """The readings in words that differ: by the things of which they speak, or by their patterns."""
    things = tuple(", ".join(_things(reading)) for reading in readings)
    if len(set(things)) == len(things):
        return things
    return tuple(f"`{spoken(reading.pattern)}`" for reading in readings)


def _things(reading: Reading) -> Iterator[str]:
    """`A pocket`, or `pocket` cut from `A`"""
    for slot in reading.slots.values():
        for counted in counted_in(slot):
            yield f"`{counted.name.text}`" + (f" cut from `{counted.key}`" if counted.key else "")


def _begins(pattern: str, token: Token) -> bool:
    return pattern.split()[0] == token.text.casefold()


def _strangeness(reading: Reading) -> tuple[int, int]:
    """How far a reading with unknown names is from one that the author may have meant."""
    return len(reading.unknown), sum(len(name.text) for name in reading.unknown)


def _readings(
    passage: Passage,
    body: tuple[Token, ...],
    among: Sequence[tuple[VerbForm, str]],
    known: Known,
    *,
    free: bool,
) -> Iterator[Reading]:
    matcher = Matcher(passage, body, known, free=free)
    tails = {name: elements(tail) for name, tail in TAILS.items()}
    for verb, pattern in among:
        for end, slots in matcher.match(elements(pattern), 0, {}):
            for whole in _with_tails(matcher, tails, end, slots):
                yield Reading(verb, pattern, whole, matcher.unknown_in(whole))


def _with_tails(
    matcher: Matcher, tails: Mapping[str, tuple[object, ...]], at: int, slots: Slots
) -> Iterator[Slots]:
    if at == len(matcher.tokens):
        yield slots
        return
    for name in tails:
        if name not in slots:
            for end, more in matcher.match(elements(TAILS[name]), at, slots):
                yield from _with_tails(matcher, tails, end, more)


def _result_fits(reading: Reading, result: Result | None, passage: Passage, problems: Problems) -> bool:
    match reading.verb.result:
        case ResultRule.NEEDED if result is None:
            problems.add(ResultMissing(span=passage.span(), verb=reading.verb.verb))
            return False
        case ResultRule.NONE if result is not None:
            why = f"`{reading.verb.verb}` makes nothing new"
            problems.add(ResultNotMade(span=result.span, why=why))
            return False
        case _:
            return True
