"""Stated values: pairs that must agree, single values that are carried over."""

from fractions import Fraction

import pytest

from presscloth.measure import (
    Disagreement,
    Kind,
    Quantity,
    Stated,
    System,
    Vanishes,
    agreement,
    apart,
    carried_over,
    convert,
    stated_pair,
    stated_step,
)
from presscloth.source import Source

SPAN = Source("recipe.md", "- base = 7.5 cm (3 in)").span(9, 22)


def pair(metric: str, imperial: str, *, about: bool = False) -> Quantity | Disagreement:
    metric_value, metric_unit = metric.rsplit(" ", 1)
    imperial_value, imperial_unit = imperial.rsplit(" ", 1)
    whole = sum((Fraction(part) for part in imperial_value.split()), Fraction(0))
    return stated_pair(Fraction(metric_value), metric_unit, whole, imperial_unit, about=about, span=SPAN)


def carry(value: str, unit: str, *, exactly: bool = False) -> Quantity:
    q = carried_over(Fraction(value), unit, exactly=exactly, span=SPAN)
    assert isinstance(q, Quantity)
    return q


def test_a_pair_gives_one_value_to_each_system():
    assert pair("7.5 cm", "3 in") == Quantity(
        Kind.LENGTH, Fraction(75), Fraction(3), stated=Stated("7.5 cm", "3 in"), origins=(SPAN,)
    )


def test_a_pair_may_be_of_weights():
    assert pair("250 g", "9 oz") == Quantity(
        Kind.WEIGHT, Fraction(250), Fraction(9), stated=Stated("250 g", "9 oz"), origins=(SPAN,)
    )


def test_other_units_of_a_system_are_taken_at_their_size():
    q = pair("1.83 m", "2 yd")
    assert isinstance(q, Quantity)
    assert (q.metric, q.imperial, q.stated) == (1830, 72, Stated("1.83 m", "2 yd"))


def test_a_pair_is_of_one_kind_and_of_both_systems():
    with pytest.raises(ValueError, match="cm and oz"):
        stated_pair(Fraction(1), "cm", Fraction(1), "oz", span=SPAN)
    with pytest.raises(ValueError, match="in and cm"):
        stated_pair(Fraction(1), "in", Fraction(1), "cm", span=SPAN)


@pytest.mark.parametrize(
    ("metric", "imperial"),
    [
        # 1 mm below 2.5 cm (1 in)
        ("12 mm", "1/2 in"), ("15 mm", "5/8 in"), ("20 mm", "3/4 in"), ("1.25 cm", "1/2 in"),
        # 1.6 mm from there on, as soon as one of the two reaches it
        ("27 mm", "1 in"), ("24 mm", "1 in"), ("51 mm", "2 in"), ("103 mm", "4 in"),
        # 2.5 % where the metric value is a whole or half centimetre
        ("5 cm", "2 in"), ("65 cm", "25 3/4 in"), ("18 cm", "7 in"), ("48.5 cm", "19 in"), ("1 m", "40 in"),
        ("0 cm", "0 in"),
        # weights within 5 %
        ("100 g", "3 1/2 oz"), ("450 g", "1 lb"), ("268 g", "9 oz"),
    ],
)  # fmt: skip
def test_pairs_that_agree(metric: str, imperial: str):
    assert isinstance(pair(metric, imperial), Quantity)


@pytest.mark.parametrize(
    ("metric", "imperial", "apart", "share"),
    [
        ("11.6 mm", "1/2 in", "1.1 mm", "8.7 %"),
        ("23.7 mm", "1 in", "1.7 mm", "6.7 %"),
        ("4.9 cm", "2 in", "1.8 mm", "3.5 %"),
        ("64.9 cm", "25 3/4 in", "5.1 mm", "0.8 %"),
        ("7.5 cm", "2 in", "24.2 mm", "32 %"),
        ("8 cm", "3 in", "3.8 mm", "4.8 %"),
        ("8 cm", "3 1/4 in", "2.6 mm", "3.1 %"),
        ("1 m", "41 in", "41.4 mm", "4 %"),
        ("1 m", "40.4 in", "26.2 mm", "2.5 %"),
        ("200 g", "8 oz", "26.8 g", "12 %"),
        ("269 g", "9 oz", "13.9 g", "5.2 %"),
        ("0 cm", "1/32 in", "0.8 mm", "100 %"),
    ],
)
def test_pairs_that_disagree(metric: str, imperial: str, apart: str, share: str):
    found = pair(metric, imperial)
    assert isinstance(found, Disagreement)
    assert (found.apart_text, found.share_text) == (apart, share)


def test_what_is_about_may_be_six_percent_off():
    assert isinstance(pair("8 cm", "3 1/4 in", about=True), Quantity)
    assert isinstance(pair("9.5 cm", "4 in", about=True), Disagreement)
    q = pair("9.6 cm", "4 in", about=True)
    assert isinstance(q, Quantity)
    assert q.about


@pytest.mark.parametrize(
    ("metric", "imperial", "suggestions"),
    [
        ("7.5 cm", "2 in", ("7.5 cm (3 in)", "5.1 cm (2 in)")),
        ("10 cm", "3 in", ("10 cm (4 in)", "7.6 cm (3 in)")),
        ("1 cm", "1/2 in", ("1 cm (3/8 in)", "1.3 cm (1/2 in)")),
        ("8 cm", "3 in", ("8 cm (3 1/8 in)", "7.6 cm (3 in)")),
        ("64.8 cm", "25 3/4 in", ("64.8 cm (25 1/2 in)", "65.4 cm (25 3/4 in)")),
        ("22 cm", "2 in", ("22 cm (8 1/2 in)", "5.1 cm (2 in)")),
        ("32 cm", "2 in", ("32 cm (12 1/2 in)", "5.1 cm (2 in)")),
        ("4.5 cm", "2 in", ("4.5 cm (1 3/4 in)", "5.1 cm (2 in)")),
        ("11 cm", "2 in", ("11 cm (4 1/4 in)", "5.1 cm (2 in)")),
        ("5 cm", "2/5 in", ("5 cm (2 in)", "1 cm (0.4 in)")),
        ("5 mm", "1/2 in", ("5 mm (3/16 in)", "13 mm (1/2 in)")),
        ("75 mm", "2 in", ("75 mm (3 in)", "51 mm (2 in)")),
        ("0.5 mm", "1/8 in", ("3 mm (1/8 in)",)),
        ("5 cm", "1/64 in", ("5 cm (2 in)",)),
        ("1 m", "2 yd", ("1 m (39 in)", "182.9 cm (2 yd)")),
        ("300 g", "5 oz", ("300 g (11 oz)", "140 g (5 oz)")),
        ("300 g", "1/4 oz", ("300 g (11 oz)", "7 g (1/4 oz)")),
    ],
)
def test_a_disagreement_knows_the_pairs_that_would_agree(metric: str, imperial: str, suggestions: tuple[str]):
    found = pair(metric, imperial)
    assert isinstance(found, Disagreement)
    assert found.suggestions == suggestions


def test_what_is_about_has_coarser_suggestions():
    found = pair("11 cm", "2 in", about=True)
    assert isinstance(found, Disagreement)
    assert found.suggestions == ("11 cm (4 1/2 in)", "5.1 cm (2 in)")


def test_a_disagreement_keeps_the_values_and_how_they_were_stated():
    found = pair("75 mm", "2 in")
    assert isinstance(found, Disagreement)
    assert (found.metric, found.imperial) == (75, 2)
    assert (found.apart, found.share) == (Fraction("24.2"), Fraction(242, 750))
    assert found.stated == Stated("75 mm", "2 in")


def test_agreement_of_bare_values_words_them_itself():
    assert agreement(Fraction(75), Fraction(3), Kind.LENGTH, about=False) is None
    found = agreement(Fraction(75), Fraction(2), Kind.LENGTH, about=False)
    assert found is not None
    assert found.stated == Stated("7.5 cm", "2 in")
    small = agreement(Fraction(5), Fraction(2), Kind.LENGTH, about=False)
    assert small is not None
    assert small.stated.metric == "5 mm"
    centimetre = agreement(Fraction(10), Fraction(2), Kind.LENGTH, about=False)
    assert centimetre is not None
    assert centimetre.stated.metric == "1 cm"


def test_apart_is_in_the_metric_unit_and_a_part_of_the_larger():
    assert apart(Fraction(100), Fraction(4), Kind.LENGTH) == (Fraction("1.6"), Fraction(16, 1016))
    assert apart(Fraction(0), Fraction(0), Kind.LENGTH) == (0, 0)


def test_the_two_values_of_a_step_need_not_agree():
    step = stated_step(Fraction(10), "cm", Fraction(1, 8), "yd", span=SPAN)
    assert (step.metric, step.imperial) == (100, Fraction(9, 2))
    assert step.stated == Stated("10 cm", "1/8 yd")


@pytest.mark.parametrize(
    ("value", "unit", "imperial"),
    [("7.5", "cm", "3"), ("1", "cm", "3/8"), ("6", "mm", "1/4"), ("2", "mm", "1/16"), ("24", "mm", "15/16"),
     ("26", "mm", "1"), ("27", "mm", "1 1/8"), ("1", "m", "39 3/8"), ("64.8", "cm", "25 1/2")],
)  # fmt: skip
def test_a_metric_value_is_carried_over_to_the_eighth_and_below_an_inch_to_the_sixteenth(
    value: str, unit: str, imperial: str
):
    expected = sum((Fraction(part) for part in imperial.split()), Fraction(0))
    assert carry(value, unit).imperial == expected


@pytest.mark.parametrize(
    ("value", "unit", "metric"),
    [("1", "in", 25), ("1/2", "in", 13), ("5/8", "in", 16), ("1/4", "in", 6), ("12", "in", 305),
     ("1", "yd", 914), ("1", "ft", 305)],
)  # fmt: skip
def test_an_imperial_value_is_carried_over_to_the_millimetre(value: str, unit: str, metric: int):
    assert carry(value, unit).metric == metric


def test_carrying_over_rounds_half_up():
    # 63.5 mm lies midway between 63 and 64; 1/32 in below 1 in lies midway between two sixteenths.
    assert carry("5/2", "in").metric == 64
    assert carry("0.79375", "mm").imperial == Fraction(1, 16)


def test_weights_are_carried_over_to_five_grams_and_quarter_ounces():
    assert carry("250", "g").imperial == Fraction("8.75")
    assert carry("1/2", "lb").metric == 225
    assert carry("9", "oz").metric == 255


def test_a_carried_value_is_stated_on_one_side_only():
    assert carry("7.5", "cm").stated == Stated("7.5 cm", None)
    assert carry("3", "in").stated == Stated(None, "3 in")
    assert carry("3", "in").origins == (SPAN,)
    assert not carry("3", "in").physical


def test_exactly_is_converted_and_never_rounded():
    field = carry("100", "mm", exactly=True)
    assert (field.metric, field.imperial) == (100, Fraction(500, 127))
    assert field.physical
    assert field.stated == Stated("100 mm", None)
    assert carry("1/64", "in", exactly=True).metric == Fraction(127, 320)


@pytest.mark.parametrize(
    ("value", "unit", "vanishes"),
    [
        ("0.5", "mm", Vanishes("0.5 mm", System.IMPERIAL, "1/16 in")),
        ("1/64", "in", Vanishes("1/64 in", System.METRIC, "1 mm")),
        ("3", "g", Vanishes("3 g", System.IMPERIAL, "1/4 oz")),
        ("1/16", "oz", Vanishes("1/16 oz", System.METRIC, "5 g")),
    ],
)
def test_a_value_of_which_nothing_would_be_left_is_refused(value: str, unit: str, vanishes: Vanishes):
    assert carried_over(Fraction(value), unit, span=SPAN) == vanishes


def test_a_carried_value_may_be_about():
    q = carried_over(Fraction(4), "cm", about=True, span=SPAN)
    assert isinstance(q, Quantity)
    assert q.about
    assert not carry("4", "cm").about


def test_nothing_itself_is_carried_over_as_nothing():
    assert carry("0", "cm").imperial == 0


def test_a_carried_value_agrees_with_what_it_was_carried_from():
    for millimetres in range(1, 400):
        q = carry(str(millimetres), "mm")
        assert agreement(q.metric, q.imperial, Kind.LENGTH, about=False) is None
        assert abs(convert(q.imperial, Kind.LENGTH, System.METRIC) - q.metric) <= Fraction("1.5875")
