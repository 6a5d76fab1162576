"""Transform list items and cells into definitions and checks."""

from __future__ import annotations

from collections.abc import Callable

from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Broken, Expression, Name
from presscloth.recipe.leads import read_lead
from presscloth.recipe.lexer import tokens
from presscloth.recipe.prose import Inline
from presscloth.recipe.reckoning import ExpressionReader
from presscloth.recipe.tree import Check, Definition
from presscloth.recipe.words import nearest, why_no_name
from presscloth.source import Passage, Span

ReadInlines = Callable[[Passage], tuple[Inline, ...]]

OPTIONS = ("about", "yours to choose from")


class DefinitionUnclear(Problem):
    """An item under Measures does not say what a name stands for.

    Fails:

        ## Measures
        - seam 1 cm (3/8 in)

    Passes:

        ## Measures
        - seam = 1 cm (3/8 in)
    """

    def message(self) -> str:
        return f"`{self.span.quoted}` does not say what a name stands for"

    def hint(self) -> str:
        return "write a name, ` = ` and the measure, for example `- seam = 1 cm (3/8 in)`"


class NameNotAllowed(Problem):
    """A name holds a word or a sign that means something else.

    `strip of cloth` would be read as the strip of a thing called cloth. Choose another name.

    Fails:

        ## Measures
        - width of strip = 5 cm (2 in)

    Passes:

        ## Measures
        - strip width = 5 cm (2 in)
    """

    name: str
    why: str

    def message(self) -> str:
        return f"`{self.name}` cannot be a name: {self.why}"

    def hint(self) -> str:
        return "choose another name of one or several words, for example `strip width`"


class OptionUnknown(Problem):
    """What follows a measure after a comma has no meaning.

    Fails:

        ## Measures
        - gap = 10 cm (4 in), roughly

    Passes:

        ## Measures
        - gap = 10 cm (4 in), about
    """

    meant: str | None

    def message(self) -> str:
        return f"`{self.span.quoted}` after the comma has no meaning"

    def hint(self) -> str:
        if self.meant == OPTIONS[1]:
            return "name both ends of the range: `yours to choose from 40 cm (16 in) to 80 cm (32 in)`"
        if self.meant:
            return f"write `{self.meant}`"
        return "after a comma may stand `about` or `yours to choose from A to B`; a remark goes after a colon"


def split_at_colon(passage: Passage) -> tuple[Passage, Passage | None]:
    """What stands before the first colon, and what stands after it."""
    at = passage.text.find(":")
    if at < 0:
        return passage, None
    return passage[:at].strip(), passage[at + 1 :].strip()


def definition(passage: Passage, inlines: ReadInlines, problems: Problems) -> Definition | None:
    """Read `name = expression, about: a note`; None where there is not even a name."""
    head, note = split_at_colon(passage)
    at = head.text.find("=")
    if at < 0:
        problems.add(DefinitionUnclear(span=(head if head.text else passage).span()))
        return None
    left = head[:at].strip()
    name = Name(" ".join(left.text.split()), left.span())
    if not name.text:
        problems.add(DefinitionUnclear(span=head.span()))
        return None
    why = why_no_name(name.text) or _odd_sign(left)
    if why is not None:
        problems.add(NameNotAllowed(span=name.span, name=name.text, why=why))
        return None
    right = head[at + 1 :].strip()
    return measured(name, right, () if note is None else inlines(note), passage.span(), problems)


def _odd_sign(name: Passage) -> str | None:
    for token in tokens(name):
        if token.kind.value != "word":
            return f"`{token.text}` cannot stand in a name"
    return None


def measured(
    name: Name, passage: Passage, note: tuple[Inline, ...], span: Span, problems: Problems
) -> Definition:
    """Read `expression, about` or `expression, yours to choose from A to B`."""
    reader = ExpressionReader(passage, problems)
    expression = reader.expression()
    about = False
    choice: tuple[Expression, Expression] | None = None
    while not isinstance(expression, Broken) and (comma := reader.takes(",")):
        option = passage[passage.places.index(comma.span.end) :].strip()
        if reader.takes("about"):
            about = True
            continue
        choice = _choice(reader) if reader.takes("yours") else None
        if choice is None:
            expression = _unknown_option(reader, passage, option, problems)
    if not isinstance(expression, Broken):
        expression = reader.finish(expression)
    return Definition(name, expression, about, choice, note, span)


def _choice(reader: ExpressionReader) -> tuple[Expression, Expression] | None:
    if not (reader.takes("to") and reader.takes("choose") and reader.takes("from")):
        return None
    least = reader.expression()
    if isinstance(least, Broken):
        return least, least
    if not reader.takes("to"):
        return None
    return least, reader.expression()


def _unknown_option(
    reader: ExpressionReader, passage: Passage, option: Passage, problems: Problems
) -> Broken:
    place = option if option.text else passage
    meant = OPTIONS[1] if option.text.startswith("yours") else nearest(option.text, OPTIONS)
    problems.add(OptionUnknown(span=place.span(), meant=meant))
    reader.at = len(reader.tokens)
    return Broken(passage.span())


def check(passage: Passage, inlines: ReadInlines, problems: Problems) -> Check:
    """Read `Large only: turning gap <= front height - base: why`."""
    lead, rest = read_lead(passage, problems)
    head, reason = split_at_colon(rest)
    reader = ExpressionReader(head, problems)
    compared = reader.comparison()
    if not isinstance(compared, Broken) and reader.next is not None:
        reader.finish(compared.right)
        compared = Broken(head.span())
    return Check(lead, compared, () if reason is None else inlines(reason), passage.span())
