"""A followed number is reckoned for another choice as a plain one is, whenever its guards hold."""

from __future__ import annotations

import inspect
import re
import sys
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from presscloth.choices.reckoned import Reach, Reckoned
from presscloth.drawing.reals import Real, greater, lesser, letters, on_page
from presscloth.every_problem import every
from presscloth.measure import Kind, Quantity, System, compare, printed
from presscloth.measure.arithmetic import square_root
from presscloth.measure.followed import Followed, chosen, held, least_of, most_of, plainly, unmarked
from presscloth.measure.following import Chosen, Following, Form, Relation, following
from presscloth.measure.remembering import remembered
from presscloth.measure.rounding import down, half_up, up

X = Chosen(0, "metric")
NUMBERS = st.fractions(min_value=-50, max_value=400, max_denominator=64)
PLAIN = st.fractions(min_value=-20, max_value=20, max_denominator=16)


def reckon(x, steps):
    """A long reckoning with every sign, that turns on its way; the same for plain and followed numbers."""
    value = x
    for kind, number in steps:
        match kind:
            case "add":
                value = value + number
            case "from":
                value = number - value
            case "times":
                value = value * number
            case "by itself":
                value = value * x
            case "over":
                value = value / number if number else value
            case "part":
                value = number / value if value != 0 else number
            case "half up":
                value = half_up(value, abs(number) + 1)
            case "up":
                value = up(value, abs(number) + 1, Fraction(1, 1000))
            case "down":
                value = down(value, abs(number) + 1)
            case "most":
                value = most_of((value, x, Fraction(number)))
            case "least":
                value = least_of((value, x / 2, Fraction(number)))
            case "size":
                value = abs(value)
            case "turn":
                value = value + 1 if value > number else value - x
            case "meets":
                value = value + 10 * compare(value, x, System.METRIC)
            case "root":
                value = square_root(value)[0] if value >= 0 else -value
            case "even":
                value = value / 2 if value % 2 == 0 else value + number
    return value


KINDS = "add,from,times,by itself,over,part,half up,up,down,most,least,size,turn,meets,root,even".split(",")
STEPS = st.lists(st.tuples(st.sampled_from(KINDS), PLAIN), max_size=7)


@settings(max_examples=800, deadline=None)
@given(NUMBERS, NUMBERS, STEPS)
def test_where_the_guards_hold_another_choice_is_reckoned_the_same_way(here, there, steps):
    now = Following()
    with following(now):
        found = reckon(chosen(0, "metric", here), steps)
        guards = tuple(now.guards)
        assert plainly(found) == reckon(here, steps)
        form = found.form if isinstance(found, Followed) else Form(found)
    elsewhere = Reckoned(now, {X: there})
    if elsewhere.holds(guards):
        assert elsewhere.form(form) == reckon(there, steps)


@settings(max_examples=200, deadline=None)
@given(NUMBERS, NUMBERS, STEPS)
def test_what_is_said_to_hold_always_holds(one, other, steps):
    now = Following()
    with following(now):
        reckon(chosen(0, "metric", one), steps)
    least, most = sorted((one, other))
    reach = Reach(now, {X: (least, most)})
    always = [guard for guard in now.guards if reach.always(guard)]
    for part in (Fraction(0), Fraction(1, 3), Fraction(1, 2), Fraction(1)):
        assert Reckoned(now, {X: least + part * (most - least)}).holds(always)


@settings(max_examples=150, deadline=None)
@given(NUMBERS, NUMBERS)
def test_a_printed_text_is_followed(here, there):
    now = Following()
    with following(now):
        text = in_metric(3 * chosen(0, "metric", here) + Fraction(1, 3))
    assert unmarked(text) == in_metric(3 * here + Fraction(1, 3))
    assert Reckoned(now, {X: there}).value(text.node) == in_metric(3 * there + Fraction(1, 3))
    assert not now.guards


def in_metric(value: Fraction) -> str:
    return printed(Quantity(Kind.LENGTH, value, Fraction(0)), System.METRIC).text


@pytest.mark.parametrize(
    "leave", [int, float, str, round, lambda x: x.numerator, lambda x: x**2, lambda x: range(7)[x]]
)
def test_a_number_that_leaves_is_held_to_its_value(leave):
    now = Following()
    with following(now):
        x = chosen(0, "metric", Fraction(5))
        assert leave(x) == leave(5) if leave is not str else leave(x) == "5"
    (guard,) = now.guards
    assert guard.relation is Relation.NOTHING
    assert Reckoned(now, {X: Fraction(5)}).holds(now.guards)
    assert not Reckoned(now, {X: Fraction(6)}).holds(now.guards)


def test_the_value_alone_can_be_held():
    now = Following()
    with following(now):
        assert held(chosen(0, "metric", Fraction(5)) * 2) == 10
        assert held(Fraction(3)) == 3
    assert len(now.guards) == 1


@settings(max_examples=200, deadline=None)
@given(
    st.fractions(min_value=1, max_value=400, max_denominator=16),
    st.fractions(min_value=1, max_value=400, max_denominator=16),
)
def test_a_drawing_follows(here, there):
    def drawn(x):
        wide, high = on_page(x), on_page(x / 3 + 20)
        scale = lesser(90.0 / wide, 60.0 / high)
        left = greater(1.5, 12.0 - wide * scale / 2)
        return left + (wide * scale if wide > 2 * high else -high / 2)

    now = Following()
    with following(now):
        found = drawn(chosen(0, "metric", here))
    assert isinstance(found, Real)
    assert found.plain == pytest.approx(drawn(here))
    elsewhere = Reckoned(now, {X: there})
    if elsewhere.holds(now.guards):
        assert elsewhere.sum(found.form) == pytest.approx(drawn(there))


def test_letters_are_counted_as_they_will_stand():
    now = Following()
    with following(now):
        count = letters(f"high {in_metric(chosen(0, 'metric', Fraction(500)))}")
    assert count.plain == len("high 50 cm")
    assert Reckoned(now, {X: Fraction(4725, 10)}).sum(count.form) == len("high 47.25 cm")


@pytest.mark.parametrize(
    "apart", ["0", "1/2000", "999/1000000", "1/1000", "3/2000", "-1/2000", "-1/1000", "-5"]
)
def test_lengths_are_compared_as_plain_ones_are_and_only_so_far(apart):
    """Two lengths that differ by less than 1/1000 mm are the same length."""
    now = Following()
    with following(now):
        found = compare(chosen(0, "metric", 20 + Fraction(apart)), Fraction(20), System.METRIC)
    assert found == compare(20 + Fraction(apart), Fraction(20), System.METRIC)
    for other in ("0", "1/2000", "999/1000000", "1/1000", "3/2000", "-1/1000", "7"):
        if Reckoned(now, {X: 20 + Fraction(other)}).holds(now.guards):
            assert compare(20 + Fraction(other), Fraction(20), System.METRIC) == found


def test_nothing_that_takes_a_number_is_remembered_while_it_is_followed():
    """A followed number means something in its own following alone; `remembered` knows that, a cache not."""
    every()
    remembering = {
        f"{module}.{name}": str(inspect.signature(found))
        for module, loaded in list(sys.modules.items())
        if module.startswith("presscloth.")
        for name, found in vars(loaded).items()
        if hasattr(found, "cache_info")
    }
    assert len(remembering) > 5
    numbers = re.compile(r"\b(?:Fraction|Quantity|Contour|CutPiece|Amount|Followed)\b")
    assert {name for name, asked in remembering.items() if numbers.search(asked.partition("->")[0])} == set()


def test_what_is_remembered_is_worked_out_anew_while_numbers_are_followed():
    asked = []

    @remembered(8)
    def doubled(q: Quantity) -> Fraction:
        asked.append(q)
        return 2 * q.metric

    def of(number: Fraction) -> Quantity:
        return Quantity(Kind.NUMBER, number, number)

    assert [doubled(of(Fraction(3))), doubled(of(Fraction(3)))] == [6, 6]
    assert len(asked) == 1
    with following(Following()):
        assert plainly(doubled(of(chosen(0, "metric", Fraction(3))))) == 6
        assert plainly(doubled(of(chosen(0, "metric", Fraction(5))))) == 10
        assert doubled(of(Fraction(3))) == 6
    assert len(asked) == 3
