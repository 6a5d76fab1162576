"""Followed numbers and texts: they behave as their values, and remember how they came about.

A followed number that leaves by a door that is not watched (turned into a plain one, hashed) is held
to its value by a guard, so that nothing is ever followed wrongly; it is only not followed far.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from math import floor

from presscloth.measure.following import (
    Argument,
    Chosen,
    Form,
    Function,
    Node,
    Place,
    Relation,
    Value,
    is_following,
    now,
    stands,
)

FIRST_MARK = 0x100000
END_MARK = chr(0x10FFFF)
MARKED = re.compile(f"([{chr(FIRST_MARK)}-\U0010fffe])([^{END_MARK}]*){END_MARK}")
"""A followed text: the mark of its node, and the words, which another choice replaces."""


class Followed(Fraction):
    """A number with the form of its reckoning. It keeps a guard whenever it is asked how it stands."""

    __slots__ = ("form", "plain")
    form: Form
    plain: Fraction

    # Sums, differences and multiples are one form; what else is reckoned is a node.

    def __add__(self, other: object) -> Fraction:  # type: ignore[override]
        return _sum(self, other, 1) if isinstance(other, int | Fraction) else NotImplemented

    def __radd__(self, other: object) -> Fraction:  # type: ignore[override]
        return self.__add__(other)

    def __sub__(self, other: object) -> Fraction:  # type: ignore[override]
        return _sum(self, other, -1) if isinstance(other, int | Fraction) else NotImplemented

    def __rsub__(self, other: object) -> Fraction:  # type: ignore[override]
        return _sum(-self, other, 1) if isinstance(other, int | Fraction) else NotImplemented

    def __neg__(self) -> Fraction:
        return _times(self, Fraction(-1))

    def __abs__(self) -> Fraction:
        return by(magnitude, self)

    def __mul__(self, other: object) -> Fraction:  # type: ignore[override]
        if isinstance(other, Followed):
            return by(product, self, other)
        return _times(self, Fraction(other)) if isinstance(other, int | Fraction) else NotImplemented

    def __rmul__(self, other: object) -> Fraction:  # type: ignore[override]
        return self.__mul__(other)

    def __truediv__(self, other: object) -> Fraction:  # type: ignore[override]
        if isinstance(other, Followed):
            return by(quotient, self, other) if other else self.plain / 0
        return _times(self, 1 / Fraction(other)) if isinstance(other, int | Fraction) else NotImplemented

    def __rtruediv__(self, other: object) -> Fraction:  # type: ignore[override]
        if not isinstance(other, int | Fraction):
            return NotImplemented
        return by(quotient, Fraction(other), self) if self else Fraction(other) / 0

    def __floor__(self) -> int:
        return by(whole_part, self)  # type: ignore[return-value]

    def __ceil__(self) -> int:
        return -floor(-self)

    # Whoever asks how the number stands has a guard kept.

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, int | Fraction):
            return False
        return _stands(self - other, Relation.NOTHING, Relation.SOMETHING)

    def __hash__(self) -> int:  # type: ignore[override]
        # What is remembered by a number is remembered by its reckoning: at worst it is worked out twice.
        return hash(self.form)

    def __lt__(self, other: int | Fraction) -> bool:  # type: ignore[override]
        return _stands(other - self, Relation.MORE, Relation.NOT_LESS)

    def __gt__(self, other: int | Fraction) -> bool:  # type: ignore[override]
        return _stands(self - other, Relation.MORE, Relation.NOT_LESS)

    def __le__(self, other: int | Fraction) -> bool:  # type: ignore[override]
        return _stands(other - self, Relation.NOT_LESS, Relation.MORE)

    def __ge__(self, other: int | Fraction) -> bool:  # type: ignore[override]
        return _stands(self - other, Relation.NOT_LESS, Relation.MORE)

    def __bool__(self) -> bool:
        return self != 0

    # Whoever takes the number out has it held to its value: all that a fraction does not do here asks these.

    @property
    def _numerator(self) -> int:
        return held(self).numerator

    @property
    def _denominator(self) -> int:
        return held(self).denominator

    def __index__(self) -> int:
        return int(held(self))

    def __repr__(self) -> str:
        return f"Followed({self.plain})"


class FollowedText(str):
    """A text that depends on followed numbers, between marks by which it is found again."""

    __slots__ = ("node", "plain")
    node: int
    plain: str

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, str) or not is_following():
            return str.__eq__(self, other)
        same_node = isinstance(other, FollowedText) and other.node == self.node
        return same_node or bool(by(same_text, self, other))

    def __ne__(self, other: object) -> bool:
        return not self == other

    def __hash__(self) -> int:
        return str.__hash__(self)


def chosen(choice: int, system: str, value: Fraction) -> Fraction:
    """A number that the reader chooses, from now on followed."""
    return _followed(value, Form(Fraction(0), ((now().node(Chosen(choice, system)), Fraction(1)),)))


def by(function: Function, *arguments: Fraction | int | str) -> Fraction:
    """What a function gives for followed numbers, as a followed number."""
    value = function(*map(plainly, arguments))
    assert isinstance(value, Fraction)
    node = now().node(Node(function, tuple(map(_argument, arguments))))
    return _followed(value, Form(Fraction(0), ((node, Fraction(1)),)))


def worded(function: Function, *arguments: Fraction | int | str) -> str:
    """What a function writes of followed numbers, as a followed text."""
    text = function(*map(plainly, arguments))
    assert isinstance(text, str)
    return marked(now().node(Node(function, tuple(map(_argument, arguments)))), text)


def marked(node: int, text: str) -> str:
    """A text of a node between its marks."""
    words = FollowedText(f"{chr(FIRST_MARK + node)}{text}{END_MARK}")
    words.node, words.plain = node, text
    return words


def node_of(mark: str) -> int:
    """The node whose mark it is."""
    return ord(mark) - FIRST_MARK


def unmarked(text: str) -> str:
    """A text as it stands on the page."""
    return MARKED.sub(r"\2", text)


def held(number: Fraction) -> Fraction:
    """A number as a plain one; a followed one is held to its value."""
    if not isinstance(number, Followed):
        return number
    _stands(number - number.plain, Relation.NOTHING, Relation.SOMETHING)
    return number.plain


def order(difference: Fraction, least: Fraction) -> int:
    """-1, 0 or 1 as a followed difference is below nothing, within `least` of it, or above."""
    if _stands(difference - least, Relation.NOT_LESS, Relation.MORE):
        return 1
    return -1 if _stands(-difference - least, Relation.NOT_LESS, Relation.MORE) else 0


def most_of(values: Sequence[Fraction]) -> Fraction:
    """The greatest of some numbers, whichever it is for another choice."""
    return by(greatest_value, *each) if len(each := _distinct(values)) > 1 else max(values)


def least_of(values: Sequence[Fraction]) -> Fraction:
    """The least of some numbers, whichever it is for another choice."""
    return by(least_value, *each) if len(each := _distinct(values)) > 1 else min(values)


def _distinct(values: Sequence[Fraction]) -> tuple[Fraction, ...]:
    """Numbers of which some are followed, each reckoning once; nothing where none is."""
    if not any(value.__class__ is Followed for value in values):
        return ()
    return tuple(dict.fromkeys(values))


def plainly(argument: Value) -> Value:
    """The value alone."""
    return argument.plain if isinstance(argument, Followed | FollowedText) else argument


def _argument(argument: Fraction | int | str) -> Argument:
    match argument:
        case Followed():
            return argument.form
        case FollowedText():
            return Place(argument.node)
        case int() | Fraction():
            return Form(Fraction(argument))
        case _:
            return argument


def _followed(value: Fraction, form: Form) -> Fraction:
    if not form.terms:
        return form.constant
    made = object.__new__(Followed)
    made.form, made.plain = form, value
    return made


def _sum(one: Fraction, other: int | Fraction, times: int) -> Fraction:
    assert isinstance(one, Followed)
    form = other.form if isinstance(other, Followed) else Form(Fraction(other))
    value = one.plain + times * (other.plain if isinstance(other, Followed) else other)
    return _followed(value, added((one.form, form), (1, times)))


def added(forms: Sequence[Form], times: Sequence[int]) -> Form:
    """So many times each of some forms, as one."""
    constant = sum((n * form.constant for form, n in zip(forms, times, strict=True)), Fraction(0))
    terms: dict[int, Fraction] = {}
    for form, n in zip(forms, times, strict=True):
        for node, factor in form.terms:
            terms[node] = terms.get(node, Fraction(0)) + n * factor
    return Form(constant, tuple(sorted((node, factor) for node, factor in terms.items() if factor)))


def _times(number: Followed, factor: Fraction) -> Fraction:
    if not factor:
        return factor
    form = number.form
    terms = tuple((node, factor * each) for node, each in form.terms)
    return _followed(number.plain * factor, Form(form.constant * factor, terms))


def _stands(difference: int | Fraction, so: Relation, otherwise: Relation) -> bool:
    if isinstance(difference, Followed):
        return stands(difference.plain, difference.form, so, otherwise)
    return so.holds(difference)


# What is reckoned of followed numbers, besides the rounding and the writing of `measure`.


def magnitude(number: Fraction) -> Fraction:
    return abs(number)


def greatest_value(*values: Fraction) -> Fraction:
    return max(values)


def least_value(*values: Fraction) -> Fraction:
    return min(values)


def product(one: Fraction, other: Fraction) -> Fraction:
    return one * other


def quotient(one: Fraction, other: Fraction) -> Fraction:
    return one / other


def whole_part(number: Fraction) -> Fraction:
    return Fraction(floor(number))


def same_text(one: str, other: str) -> Fraction:
    return Fraction(one == other)
