"""Transform tokens into expressions.

`expression()` reads a whole passage; `ExpressionReader` reads from a point on and stops where the
expression ends, so that definitions, checks and statements can go on behind it. Whatever cannot be
read becomes `Broken`, with one problem for one cause.
"""

from __future__ import annotations

from dataclasses import replace

from presscloth.measure import SPELLINGS, UNITS, Direction, nearest_unit
from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import (
    Bought,
    Broken,
    Compared,
    Comparison,
    Expression,
    Extreme,
    Measured,
    Name,
    Negative,
    Number,
    PartOf,
    Pi,
    Reckoned,
    Root,
    Rounded,
    Sign,
    Value,
)
from presscloth.recipe.expression_problems import (
    BracketNotClosed,
    ExpressionTooDeep,
    ExpressionUnfinished,
    FractionAfterSign,
    SignMissing,
    SignWithoutSpaces,
    WordsLeftOver,
)
from presscloth.recipe.lexer import Token, TokenKind, tokens
from presscloth.recipe.measured_problems import PairExactly, PairInOneSystem, PairOfUnlike, UnitUnknown
from presscloth.recipe.reading_problems import ComparisonMissing
from presscloth.recipe.words import FUNCTIONS, PARTS, SMALL_WORDS
from presscloth.source import Passage, Span

DEEPEST = 30
MOST_TOKENS = 150

_SIGNS = {"+": Sign.PLUS, "−": Sign.MINUS, "×": Sign.TIMES, "/": Sign.OVER}
_COMPARISONS = {
    "=": Comparison.EQUAL,
    "<": Comparison.LESS,
    "<=": Comparison.AT_MOST,
    ">": Comparison.MORE,
    ">=": Comparison.AT_LEAST,
}


class _Stuck(Exception):
    """Reading cannot go on; caught at the entrance of this module, never seen outside."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem


def expression(passage: Passage, problems: Problems) -> Expression:
    """Read a whole passage as one expression."""
    reader = ExpressionReader(passage, problems)
    found = reader.expression()
    return found if isinstance(found, Broken) else reader.finish(found)


class ExpressionReader:
    """Reads expressions from a passage, one after another."""

    def __init__(self, passage: Passage, problems: Problems, known: tuple[Token, ...] | None = None) -> None:
        self.passage = passage
        self.tokens = tokens(passage) if known is None else known
        self.at = 0
        self._problems = problems
        self._depth = 0

    @property
    def next(self) -> Token | None:
        return self.tokens[self.at] if self.at < len(self.tokens) else None

    def takes(self, *texts: str) -> Token | None:
        """Step over the next token if it is one of these."""
        token = self.next
        if token is not None and token.says(*texts):
            self.at += 1
            return token
        return None

    def rest(self) -> Passage:
        """What has not been read."""
        token = self.next
        start = len(self.passage.text) if token is None else self._index(token.span.start)
        return self.passage[start:]

    def _index(self, place: int) -> int:
        return self.passage.places.index(place)

    def finish(self, found: Expression) -> Expression:
        """Demand that nothing follows."""
        token = self.next
        if token is None:
            return found
        if token.problem is not None:
            self._problems.add(token.problem)
        elif token.says(")") or (token.says("(") and not any(t.says(")") for t in self.tokens[self.at :])):
            self._problems.add(BracketNotClosed(span=token.span))
        else:
            self._problems.add(WordsLeftOver(span=token.span.to(self.tokens[-1].span)))
        return Broken(self.passage.span())

    def expression(self) -> Expression:
        """Read one expression; on a problem, `Broken`, and the rest of the passage is not read."""
        try:
            if len(self.tokens) > MOST_TOKENS:
                raise _Stuck(ExpressionTooDeep(span=self.passage.span()))
            return self._sum()
        except _Stuck as stuck:
            self._problems.add(stuck.problem)
            self.at = len(self.tokens)
            return Broken(self.passage.span())

    def comparison(self) -> Compared | Broken:
        """Read `left <= right` or `left within M of right`."""
        first = self.at
        left = self.expression()
        if isinstance(left, Broken):
            return left
        margin: Expression | None = None
        token = self.takes("within", *_COMPARISONS)
        if token is None:
            self._problems.add(ComparisonMissing(span=self.passage.span()))
            self.at = len(self.tokens)
            return Broken(self.passage.span())
        if token.text == "within":
            margin = self.expression()
            if not isinstance(margin, Broken) and not self.takes("of"):
                self._problems.add(ComparisonMissing(span=self.passage.span()))
                margin = Broken(self.passage.span())
            if isinstance(margin, Broken):
                self.at = len(self.tokens)
                return margin
        right = self.expression()
        if isinstance(right, Broken):
            return right
        kind = Comparison.WITHIN if margin is not None else _COMPARISONS[token.text]
        return Compared(kind, left, right, margin, self._since(first))

    def _sum(self) -> Expression:
        self._depth += 1
        if self._depth > DEEPEST:
            raise _Stuck(ExpressionTooDeep(span=self.passage.span()))
        first = self.at
        left = self._product()
        while sign := self._sign("+", "−"):
            right = self._product()
            left = Reckoned(_SIGNS[sign.text], left, right, self._since(first))
        self._depth -= 1
        return left

    def _since(self, first: int) -> Span:
        """The stretch from a token to the last one that was read, brackets included."""
        return self.tokens[first].span.to(self.tokens[self.at - 1].span)

    def _product(self) -> Expression:
        first = self.at
        left = self._signed()
        while sign := self._sign("×", "/"):
            token = self.next
            if sign.text == "/" and token is not None and token.value is not None and "/" in token.text:
                raise _Stuck(FractionAfterSign(span=token.span))
            right = self._signed()
            left = Reckoned(_SIGNS[sign.text], left, right, self._since(first))
        return left

    def _sign(self, *texts: str) -> Token | None:
        token = self.takes(*texts)
        if token is not None and not (token.before and token.after):
            raise _Stuck(SignWithoutSpaces(span=token.span, sign=token.span.text))
        return token

    def _signed(self) -> Expression:
        minus = self.takes("−")
        if minus is None:
            return self._primary()
        first = self.at - 1
        return Negative(self._primary(), self._since(first))

    def _primary(self) -> Expression:
        token = self.next
        if token is None:
            raise self._unfinished()
        if token.problem is not None:
            raise _Stuck(token.problem)
        if token.kind is TokenKind.NUMBER:
            return self._measured()
        if token.says("("):
            return self._bracketed(token)
        if token.says("exactly"):
            return self._exactly(token)
        if token.kind is TokenKind.WORD and token.text not in SMALL_WORDS:
            return self._function(token) or self._name(token)
        raise self._unfinished()

    def _unfinished(self) -> _Stuck:
        before = self.tokens[self.at - 1] if self.at else None
        token = self.next
        if token is not None and token.says(")") and before is None:
            return _Stuck(BracketNotClosed(span=token.span))
        after = before.span.text if before else ""
        if token is not None:
            return _Stuck(ExpressionUnfinished(span=token.span, after=after, instead=token.span.text))
        place = before.span if before is not None else self.passage.span()
        return _Stuck(ExpressionUnfinished(span=place, after=after))

    def _bracketed(self, opening: Token) -> Expression:
        """What stands in brackets; only a reckoning takes the brackets into its place."""
        self.at += 1
        found = self._sum()
        closing = self._closing(opening)
        if isinstance(found, Reckoned):
            return replace(found, span=opening.span.to(closing.span))
        return found

    def _closing(self, opening: Token) -> Token:
        closing = self.takes(")")
        if closing is not None:
            return closing
        token = self.next
        if token is not None and token.problem is not None:
            raise _Stuck(token.problem)
        if token is not None and not token.says(","):
            raise _Stuck(WordsLeftOver(span=token.span))
        raise _Stuck(BracketNotClosed(span=opening.span))

    def _measured(self) -> Expression:
        number = self.tokens[self.at]
        assert number.value is not None
        self.at += 1
        if percent := self.takes("%"):
            return Number(number.value / 100, number.span.to(percent.span), percent=True)
        first = self._unit_of(number)
        if first is None:
            return Number(number.value, number.span)
        second = self._other_half()
        if second is None:
            return Measured(first, None, first.span)
        span = first.span.to(self.tokens[self.at - 1].span)
        self._hold_halves(first, second, span)
        return Measured(first, second, span)

    def _unit_of(self, number: Token) -> Value | None:
        """The unit right after a number, if there is one."""
        token = self.next
        if token is None or token.kind is TokenKind.NUMBER or token.text in ("(", ")", ","):
            return None
        assert number.value is not None
        if token.text in SPELLINGS:
            self.at += 1
            return Value(number.value, SPELLINGS[token.text], number.span.to(token.span))
        if token.kind is not TokenKind.WORD or token.text in SMALL_WORDS or token.text == "within":
            return None
        meant = nearest_unit(token.text)
        if meant is not None:
            raise _Stuck(UnitUnknown(span=token.span, unit=token.text, meant=meant))
        raise _Stuck(SignMissing(span=number.span.to(token.span), number=number.text, name=token.text))

    def _other_half(self) -> Value | None:
        """The bracket of a pair: `(1/2 in)`. Any other bracket is left where it is."""
        ahead = self.tokens[self.at : self.at + 4]
        if len(ahead) < 3 or not ahead[0].says("(") or ahead[1].kind is TokenKind.WORD:
            return None
        if ahead[1].problem is not None:
            raise _Stuck(ahead[1].problem)
        if ahead[1].value is None:
            return None
        self.at += 2
        value = self._unit_of(ahead[1])
        if value is None:
            raise _Stuck(UnitUnknown(span=ahead[1].span, unit=ahead[1].text, meant=None))
        self._closing(ahead[0])
        return value

    def _hold_halves(self, first: Value, second: Value, span: Span) -> None:
        one, other = UNITS[first.unit], UNITS[second.unit]
        if one.kind is not other.kind:
            raise _Stuck(PairOfUnlike(span=span, first=one.kind.value, second=other.kind.value))
        if one.system is other.system:
            raise _Stuck(PairInOneSystem(span=span, system=one.system.value))

    def _exactly(self, word: Token) -> Expression:
        self.at += 1
        token = self.next
        if token is None or (token.value is None and token.problem is None):
            raise self._unfinished()
        if token.problem is not None:
            raise _Stuck(token.problem)
        found = self._measured()
        if not isinstance(found, Measured):
            return found
        span = word.span.to(found.span)
        if found.second is not None:
            raise _Stuck(PairExactly(span=span))
        return Measured(found.first, None, span, exactly=True)

    def _function(self, word: Token) -> Expression | None:
        after = self.tokens[self.at + 1] if self.at + 1 < len(self.tokens) else None
        if word.text == "pi":
            self.at += 1
            return Pi(word.span)
        if word.text == "round" and after is not None and after.says("up", "down", "("):
            return self._rounded(word, after)
        if after is None or not after.says("("):
            return None
        match word.text:
            case "sqrt":
                self.at += 1
                of = self._bracketed(after)
                return Root(of, word.span.to(self.tokens[self.at - 1].span))
            case "min" | "max":
                self.at += 2
                among = [self._sum()]
                while self.takes(","):
                    among.append(self._sum())
                span = word.span.to(self._closing(after).span)
                return Extreme(word.text == "max", tuple(among), span)
            case _:
                return None

    def _rounded(self, word: Token, after: Token) -> Expression:
        direction = {"up": Direction.UP, "down": Direction.DOWN}.get(after.text, Direction.NEAREST)
        self.at += 1 if direction is Direction.NEAREST else 2
        opening = self.takes("(")
        if opening is None:
            raise self._unfinished()
        of = self._sum()
        step = self._sum() if self.takes("to") else None
        return Rounded(direction, of, step, word.span.to(self._closing(opening).span))

    def _name(self, first: Token) -> Expression:
        words: list[Token] = []
        while (token := self.next) is not None and token.kind is TokenKind.WORD:
            if token.text in SMALL_WORDS or token.text in FUNCTIONS:
                break
            words.append(token)
            self.at += 1
        if not words:
            raise self._unfinished()
        text = " ".join(word.text for word in words)
        span = first.span.to(words[-1].span)
        if text.startswith("buy ") and len(words) == 2:
            return Bought(Name(words[1].text, words[1].span), span)
        following = self.tokens[self.at : self.at + 1]
        if following and following[0].says("of") and not self._margin_ends_here(text):
            return self._part(text, span)
        return Name(text, span)

    def _margin_ends_here(self, text: str) -> bool:
        """In `a within ease of b` the word `of` ends the margin, unless a part of a thing comes before it."""
        within = any(token.says("within") for token in self.tokens[: self.at])
        return within and text.casefold().removeprefix("finished ") not in PARTS

    def _part(self, text: str, span: Span) -> Expression:
        self.at += 1
        thing = self._name_after_of()
        part = text.casefold()
        finished = part.startswith("finished ")
        part = part.removeprefix("finished ")
        whole = span.to(thing.span)
        return PartOf(part, finished, thing, whole)

    def _name_after_of(self) -> Name:
        token = self.next
        if token is None or token.kind is not TokenKind.WORD or token.text in SMALL_WORDS:
            raise self._unfinished()
        found = self._name(token)
        if not isinstance(found, Name):
            raise _Stuck(WordsLeftOver(span=found.span))
        return found
