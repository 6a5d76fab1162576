"""A text cut into figures, words and signs, in time that grows with its length and no faster."""

from __future__ import annotations

import re
from collections.abc import Iterator
from enum import Enum, auto

from presscloth.frozen import dataclass


class Kind(Enum):
    DIGITS = auto()
    VULGAR = auto()
    WORD = auto()
    SIGN = auto()
    CLOSING = auto()
    NOTHING = auto()


@dataclass(frozen=True, slots=True)
class Token:
    """Figures, a word, a fraction such as ½, or a single sign. CLOSING is a mark that ends a quotation.

    `lower` is the text in small letters. `tight` says that nothing stands between it and the token
    before, `near` that no more than a little space or one line's end does.
    """

    kind: Kind
    text: str
    lower: str
    start: int
    end: int
    tight: bool
    near: bool


VULGAR = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅕": (1, 5), "⅖": (2, 5),
    "⅗": (3, 5), "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8),
    "⅞": (7, 8), "⅒": (1, 10),
}  # fmt: skip

# Every branch is a run of one class of characters: nothing is ever tried twice.
_TOKEN = re.compile(
    r"(?P<DIGITS>[0-9]+)"
    rf"|(?P<VULGAR>[{''.join(VULGAR)}])"
    r"|(?P<WORD>(?<=[0-9])(?:mm|cm|m|in|ft)(?=x[0-9])|[^\W\d_]+)"  # 20cmx30cm
    r"|(?P<SIGN>''|′′|\S)"
)

_WIDEST_SPACE = 3
# How far anyone looks beyond the end, and (by Python's negative indices) before the beginning.
_BEYOND = 16
_NOTHING = Token(Kind.NOTHING, "", "", -1, -1, False, False)
_DOUBLE = {'"', "“", "”"}
_SINGLE = {"'", "‘", "’"}


def words(text: str) -> frozenset[str]:
    """A list of words, for looking them up."""
    return frozenset(text.split())


class Text:
    """The tokens of a text; beyond either end stands nothing."""

    def __init__(self, text: str) -> None:
        tokens = list(_cut(text))
        for marks in (_DOUBLE, _SINGLE):
            for index in _closing(tokens, marks):
                tokens[index] = _closed(tokens[index])
        self._length = len(tokens)
        self._tokens = tokens + [_NOTHING] * _BEYOND

    def __len__(self) -> int:
        return self._length

    def __getitem__(self, index: int) -> Token:
        return self._tokens[index]

    def word(self, index: int) -> str:
        """The word here in small letters, if it stands near the one before."""
        token = self[index]
        return token.lower if token.near and token.kind is Kind.WORD else ""

    def word_before(self, index: int) -> str:
        """The word before the token here, in small letters, if it stands near."""
        before = self[index - 1]
        return before.lower if self[index].near and before.kind is Kind.WORD else ""

    def sign(self, index: int) -> str:
        """The sign here, if it stands near the token before."""
        token = self[index]
        return token.text if token.near and token.kind is Kind.SIGN else ""

    def tight_sign(self, index: int) -> str:
        """The sign here, if nothing stands before it."""
        return self.sign(index) if self[index].tight else ""


def _cut(text: str) -> Iterator[Token]:
    end = 0
    for match in _TOKEN.finditer(text):
        kind = Kind[match.lastgroup or "SIGN"]
        start, word = match.start(), match.group()
        near = start - end <= _WIDEST_SPACE and text.count("\n", end, start) < 2
        yield Token(kind, word, word.lower(), start, match.end(), start == end, near)
        end = match.end()


def _closed(token: Token) -> Token:
    return Token(Kind.CLOSING, token.text, token.lower, token.start, token.end, token.tight, token.near)


def _closing(tokens: list[Token], marks: set[str]) -> Iterator[int]:
    """Which of these marks end a quotation.

    A mark after a figure may stand for inches or feet: it ends the quotation only if no other mark
    does (`the "2" key`, but `a "12" hoop" he said`).
    """
    open_mark, after_figure = False, -1
    for index, token in enumerate(tokens):
        if token.kind is not Kind.SIGN or token.text not in marks:
            continue
        if _opens(tokens, index):
            if after_figure >= 0:
                yield after_figure
            open_mark, after_figure = True, -1
        elif open_mark and not _between_letters(tokens, index):
            if tokens[index - 1].kind not in (Kind.DIGITS, Kind.VULGAR):
                yield index
                open_mark, after_figure = False, -1
            elif after_figure < 0:
                after_figure = index
    if after_figure >= 0:
        yield after_figure


def _opens(tokens: list[Token], index: int) -> bool:
    free = index == 0 or not tokens[index].tight or tokens[index - 1].text in "([—–"
    return free and index + 1 < len(tokens) and tokens[index + 1].tight


def _between_letters(tokens: list[Token], index: int) -> bool:
    return index + 1 < len(tokens) and tokens[index + 1].tight and tokens[index + 1].kind is Kind.WORD
