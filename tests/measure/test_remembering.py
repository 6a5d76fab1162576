"""Answers are remembered from recipe to recipe, but none of numbers that are followed."""

from __future__ import annotations

from fractions import Fraction

from presscloth.frozen import dataclass
from presscloth.measure.followed import chosen
from presscloth.measure.following import Following, following
from presscloth.measure.remembering import remembered


@dataclass(frozen=True)
class Held:
    sides: tuple[Fraction, ...]


def counted():
    asked = []

    @remembered(4)
    def doubled(held: Held) -> Fraction:
        asked.append(held)
        return 2 * held.sides[0]

    return doubled, asked


def test_the_same_is_asked_once():
    doubled, asked = counted()
    assert [doubled(Held((Fraction(n),))) for n in (3, 3, 4)] == [6, 6, 8]
    assert len(asked) == 2


def test_what_stands_still_is_remembered_while_other_numbers_are_followed():
    doubled, asked = counted()
    doubled(Held((Fraction(3),)))
    with following(Following()):
        assert doubled(Held((Fraction(3),))) == 6
    assert len(asked) == 1


def test_an_answer_of_a_followed_number_is_never_remembered():
    doubled, asked = counted()
    for value in (3, 5):
        now = Following()
        with following(now):
            number = chosen(0, "metric", Fraction(value))
            twice = doubled(Held((Fraction(1), number)[::-1]))
            assert twice.plain == 2 * value
    assert len(asked) == 2
