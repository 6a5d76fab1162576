"""Inline marks with their places: markdown-it's own rules, each followed by a look at what it pushed.

Inline tokens carry no position at all, but a rule begins at `state.pos` and ends there; what it
pushed in between stood between. Positions are those in the passage that is being read.
"""

from __future__ import annotations

import re

from markdown_it import MarkdownIt, rules_inline
from markdown_it.parser_inline import ParserInline, RuleFuncInlineType
from markdown_it.rules_inline import StateInline
from markdown_it.token import Token
from markdown_it.utils import EnvType

LONGEST_BRACES = 400
_BRACES = re.compile(rf"\{{([^{{}}]{{0,{LONGEST_BRACES}}})\}}")

TOO_DEEP = "too deep"
"""Under this name markdown-it hears of brackets that it left alone because they stand too deep."""


class Marks(StateInline):
    """Markdown-it's view of a passage, whose plain text remembers where it began."""

    began = 0

    def append_pending(self, text: str) -> None:
        if not self.pending:
            self.began = self.pos
        super().append_pending(text)

    def pushPending(self) -> Token:
        token = super().pushPending()
        token.meta["at"] = (self.began, self.began + len(token.content))
        return token


def _placed(rule: RuleFuncInlineType) -> RuleFuncInlineType:
    """A rule whose tokens say from where to where the thing stands that it found."""

    def placed(state: StateInline, silent: bool) -> bool:
        start, known = state.pos, len(state.tokens)
        found = rule(state, silent)
        if found and not silent:
            for token in state.tokens[known:]:
                token.meta.setdefault("at", (start, state.pos))
        return found

    return placed


def _emphasis(state: StateInline, silent: bool) -> bool:
    """Stars and underscores: each is a token of its own until its partner is found."""
    start, known = state.pos, len(state.tokens)
    found = rules_inline.emphasis.tokenize(state, silent)
    if found:
        marks = [token for token in state.tokens[known:] if "at" not in token.meta]
        for place, token in enumerate(marks, start):
            token.meta["at"] = (place, place + 1)
    return found


def _braces(state: StateInline, silent: bool) -> bool:
    """`{…}`; braces do not nest, and each is looked at once."""
    if state.src[state.pos] != "{":
        return False
    match = _BRACES.match(state.src, state.pos, state.posMax)
    if match is None:
        return False
    if not silent:
        token = state.push("braces", "", 0)
        token.content = match[1]
    state.pos = match.end()
    return True


class Inlines(ParserInline):
    """Markdown-it's inline parser with `{…}`, and with rules that say where they found what."""

    def __init__(self) -> None:
        super().__init__()
        rules: tuple[tuple[str, RuleFuncInlineType], ...] = (
            ("newline", rules_inline.newline),
            ("escape", rules_inline.escape),
            ("backticks", rules_inline.backtick),
            ("link", rules_inline.link),
            ("image", rules_inline.image),
            ("autolink", rules_inline.autolink),
            ("entity", rules_inline.entity),
        )
        for name, rule in rules:
            self.ruler.at(name, _placed(rule))
        self.ruler.at("emphasis", _emphasis)
        self.ruler.before("newline", "braces", _placed(_braces))

    def parse(self, src: str, md: MarkdownIt, env: EnvType, tokens: list[Token]) -> list[Token]:
        state = Marks(src, md, env, tokens)
        self.tokenize(state)
        for pair in self.ruler2.getRules(""):
            pair(state)
        return state.tokens

    def skipToken(self, state: StateInline) -> None:
        if state.level >= state.md.options.maxNesting and state.pos not in state.cache:
            state.env[TOO_DEEP] = True
        super().skipToken(state)
