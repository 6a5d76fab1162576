"""Merging: one message for one cause, whatever the number of sizes, systems and ways."""

from kinds import SOURCE, EdgeOff, LookAgain, PairOff, at

from presscloth.problems import Label
from presscloth.problems.report import in_one_row, one_by_one, report
from presscloth.source import Source

BASE, STRIP, GAP = at("7.5 cm (2 in)"), at("2 × base"), at("strip - base")
SIZES, SYSTEMS = ("Small", "Tall", "Large"), ("metric", "imperial")


def test_the_same_in_two_sizes_is_reported_once_in_the_order_of_the_recipe():
    found = [PairOff(span=BASE).in_size("Large"), PairOff(span=BASE).in_size("Small")]
    (one,) = report(found, sizes=SIZES)
    assert one.sizes == ("Small", "Large")
    assert one.variants == ()


def test_the_same_in_all_sizes_holds_everywhere():
    (one,) = report([PairOff(span=BASE).in_size(size) for size in SIZES], sizes=SIZES)
    assert one.sizes == ()


def test_the_same_without_a_size_holds_everywhere():
    (one,) = report([PairOff(span=BASE).in_size("Small"), PairOff(span=BASE)], sizes=SIZES)
    assert one.sizes == ()


def test_the_same_found_in_two_ways_is_reported_once():
    (one,) = report([PairOff(span=BASE).in_size("Small")] * 3, sizes=SIZES)
    assert one.sizes == ("Small",)


def test_both_systems_are_everywhere_and_one_is_named():
    metric, imperial = PairOff(span=BASE).in_systems("metric"), PairOff(span=BASE).in_systems("imperial")
    assert report([metric], systems=SYSTEMS)[0].systems == ("metric",)
    assert report([metric, imperial], systems=SYSTEMS)[0].systems == ()


def test_sizes_and_systems_are_not_multiplied():
    small = PairOff(span=BASE).in_size("Small").in_systems("metric")
    large = PairOff(span=BASE).in_size("Large").in_systems("imperial")
    (one,) = report([small, large], sizes=SIZES, systems=SYSTEMS)
    assert [(v.sizes, v.systems) for v in one.all_variants] == [
        (("Small",), ("metric",)),
        (("Large",), ("imperial",)),
    ]


def test_other_values_in_other_sizes_are_variants_of_one_problem():
    found = [PairOff(span=BASE, said=f"off by {n} mm").in_size(size) for n, size in enumerate(SIZES, 1)]
    (one,) = report(found, sizes=SIZES)
    assert one.problem.message() == "off by 1 mm"
    assert [(v.problem.message(), v.sizes) for v in one.variants] == [
        ("off by 2 mm", ("Tall",)),
        ("off by 3 mm", ("Large",)),
    ]


def test_two_messages_in_one_size_are_two_problems():
    found = [
        PairOff(span=BASE, said=said).in_size(size)
        for size in SIZES[:2]
        for said in ("a strap is left", f"a tab for {size} is left")
    ]
    one, other = report(found, sizes=SIZES)
    assert [v.problem.message() for v in one.all_variants] == ["a strap is left"]
    assert one.sizes == ("Small", "Tall")
    assert [v.problem.message() for v in other.all_variants] == [
        "a tab for Small is left",
        "a tab for Tall is left",
    ]


def test_labels_of_what_is_merged_are_all_kept_once():
    first, second = Label(STRIP, "here"), Label(GAP, "there")
    found = [PairOff(span=BASE, labels=labels) for labels in ((first,), (first, second))]
    (one,) = report(found)
    assert one.problem.labels == (first, second)


def test_kinds_and_places_are_kept_apart_and_sorted_by_place():
    found = [PairOff(span=GAP), EdgeOff(span=BASE), LookAgain(span=STRIP), PairOff(span=BASE)]
    shown = [(type(one.problem), one.problem.span) for one in report(found)]
    assert shown == [(EdgeOff, BASE), (PairOff, BASE), (LookAgain, STRIP), (PairOff, GAP)]


def test_what_follows_hangs_under_its_cause_to_any_depth():
    found = [PairOff(span=BASE), EdgeOff(span=STRIP, cause=BASE), EdgeOff(span=GAP, cause=STRIP)]
    (one,) = report(found)
    assert [other.problem.span for other in one_by_one([one])] == [BASE, STRIP, GAP]
    assert one.under[0].under[0].problem.span == GAP


def test_a_cause_may_be_a_stretch_around_the_place_or_within_it():
    line = at("base = 7.5 cm (2 in)")
    assert len(report([PairOff(span=BASE), EdgeOff(span=STRIP, cause=line)])) == 1
    assert len(report([PairOff(span=line), EdgeOff(span=STRIP, cause=BASE)])) == 1
    assert len(report([PairOff(span=BASE), EdgeOff(span=STRIP, cause=at("title"))])) == 2


def test_a_cause_in_another_file_is_another_cause():
    other = Source("other.md", SOURCE.text)
    found = [PairOff(span=other.span(BASE.start, BASE.end)), EdgeOff(span=STRIP, cause=BASE)]
    assert len(report(found)) == 2


def test_a_cause_in_another_size_is_no_cause():
    found = [PairOff(span=BASE).in_size("Small"), EdgeOff(span=STRIP, cause=BASE).in_size("Large")]
    assert len(report(found, sizes=SIZES)) == 2


def test_an_error_does_not_hang_under_a_warning_but_a_warning_under_an_error():
    assert len(report([LookAgain(span=BASE), EdgeOff(span=STRIP, cause=BASE)])) == 2
    assert len(report([EdgeOff(span=BASE), LookAgain(span=STRIP, cause=BASE)])) == 1


def test_nothing_hangs_under_itself_or_in_a_circle():
    found = [PairOff(span=BASE, cause=BASE), EdgeOff(span=STRIP, cause=STRIP)]
    assert len(report(found)) == 2
    circle = [PairOff(span=BASE, cause=STRIP), EdgeOff(span=STRIP, cause=BASE)]
    (one,) = report(circle)
    assert [other.problem.span for other in one.under] == [STRIP]


def test_a_flat_list_names_the_cause_of_what_follows():
    found = [PairOff(span=BASE), EdgeOff(span=STRIP, cause=BASE)]
    first, second = in_one_row(report(found))
    assert first.problem.labels == ()
    assert [(label.span, label.text) for label in second.problem.labels] == [
        (BASE, "follows from `pair off` here")
    ]
