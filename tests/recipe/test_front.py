"""Front matter: what it says, where it says it, and what is wrong with it."""

from __future__ import annotations

import pytest

from presscloth.measure import System
from presscloth.problems import Problem, Problems
from presscloth.recipe.front import KEYS, front_matter
from presscloth.recipe.front_problems import (
    AcceptanceWithoutReason,
    FrontMatterKeyMissing,
    FrontMatterKeyUnknown,
    LanguageUnclear,
    ShapeUnexpected,
    SystemNotPublished,
    ValueUnknown,
    VideoUnclear,
)
from presscloth.recipe.front_yaml_problems import (
    FrontMatterKeyTwice,
    FrontMatterMissing,
    FrontMatterNotClosed,
    FrontMatterNotRead,
    FrontMatterTooDeep,
    SignNeedsQuotes,
    ValueCutOff,
)
from presscloth.recipe.release_problems import (
    PartWithoutWeek,
    ReleaseUnclear,
    RevisedBeforeRelease,
    RevisionUnclear,
    VersionUnclear,
    WeekUnclear,
    WeekWithoutProject,
)
from presscloth.recipe.tree import Audience, FrontMatter
from presscloth.source import Source

LEAST = "title: Plain Cloth\nrelease: 2027-05\n"


def whole(text: str) -> tuple[FrontMatter, int, tuple[Problem, ...]]:
    problems = Problems()
    front, body = front_matter(Source("recipe.md", text), problems)
    return front, body, problems.found()


def read(lines: str) -> FrontMatter:
    front, _, problems = whole(f"---\n{lines}---\n")
    assert problems == ()
    return front


def problem(lines: str) -> Problem:
    (found,) = whole(f"---\n{lines}---\n# Plain Cloth\n")[2]
    return found


class TestValues:
    def test_what_is_left_out(self):
        front = read(LEAST)
        assert (front.title, front.release, front.version) == ("Plain Cloth", "2027-05", "1")
        assert front.written_in is System.METRIC
        assert front.systems == (System.METRIC, System.IMPERIAL)
        assert (front.language, front.video, front.held) == ("en", None, False)
        assert (front.skills, front.accept, front.sewn) == ((), (), ())
        assert (front.summary, front.craft, front.time, front.credits) == ("", "", "", "")
        assert front.audience == {None: Audience.ADULT}

    def test_everything_that_can_be_said(self):
        front = read(
            "title: Kit Bag\nrelease: 2027-12\nversion: 2.1\nsummary: A bag\nwritten in: imperial\n"
            "systems: both\nlanguage: en-GB\nskills: boxed corners, patchwork ,\ncraft: bags\ntime: 5 hours\n"
            "audience: child\nsewn: Small, Tall and Wide\nvideo: https://video.example/1?a=b\n"
            "credits: Tidewrack\naccept:\n  - raw-edge: it frays on purpose\n  - Typed Measure: a name\n"
            "held: yes\n"
        )
        assert (front.title, front.release, front.version) == ("Kit Bag", "2027-12", "2.1")
        assert (front.summary, front.language, front.craft) == ("A bag", "en-GB", "bags")
        assert (front.time, front.credits) == ("5 hours", "Tidewrack")
        assert front.written_in is System.IMPERIAL
        assert front.skills == ("boxed corners", "patchwork")
        assert front.audience == {None: Audience.CHILD}
        assert front.sewn == ("Small", "Tall", "Wide")
        assert front.video == "https://video.example/1?a=b"
        assert front.held
        assert [(each.name, each.reason, each.span.text) for each in front.accept] == [
            ("raw-edge", "it frays on purpose", "raw-edge: it frays on purpose"),
            ("typed-measure", "a name", "Typed Measure: a name"),
        ]

    def test_values_have_their_places(self):
        front = read(LEAST + 'summary: "Small: and plain"\nsewn: Tall\naudience: {Child size: baby}\n')
        assert front.spans["title"].text == "Plain Cloth"
        assert front.spans["title"].where == (2, 8)
        assert front.spans["summary"].text == '"Small: and plain"'
        assert front.summary == "Small: and plain"
        assert front.spans["size Tall"].where == (5, 7)
        assert front.spans["size Child size"].text == "Child size"

    def test_each_of_several_values_has_its_place(self):
        front = read(LEAST + "sewn: Small, 'Tall' and Wide\ntime: |\n  3 hours\ncraft: bags\n")
        assert front.sewn == ("Small", "'Tall'", "Wide")
        assert front.spans["size Wide"].text == "Wide"
        assert front.spans["size 'Tall'"].where == (4, 14)
        assert front.spans["time"].text == "|\n  3 hours"
        joined = read(LEAST + "sewn: Small, Tall and\n  Wide\n")
        assert joined.sewn == ("Small", "Tall", "Wide")
        assert joined.spans["size Wide"].where == (4, 7)

    def test_values_stay_what_was_typed(self):
        front = read("title: no\nrelease: 2027-05\ntime: 1:30\ncraft: 012\nsummary: 1e3\ncredits: ~\n")
        values = (front.title, front.time, front.craft, front.summary, front.credits)
        assert values == ("no", "1:30", "012", "1e3", "~")

    def test_values_over_several_lines(self):
        front = read(
            LEAST + "summary: >-\n  A cloth\n  of cotton\ncredits: one\n  two\ntime: |\n  3\n  hours\n"
        )
        assert (front.summary, front.credits, front.time) == ("A cloth of cotton", "one two", "3 hours")

    def test_one_system_is_the_one_it_is_written_in(self):
        front = read(LEAST + "systems: imperial\n")
        assert front.systems == (System.IMPERIAL,)
        assert front.written_in is System.IMPERIAL

    @pytest.mark.parametrize(
        ("typed", "sizes"),
        [
            ("yes", None),
            ("no", ()),
            ("", ()),
            ("Tall", ("Tall",)),
            ('"Tall and Wide"', ("Tall", "Wide")),
            ("[Tall, Head and Shoulders]", ("Tall", "Head and Shoulders")),
            ("\n  - Tall\n  - 2 to 3 years", ("Tall", "2 to 3 years")),
        ],
    )
    def test_sizes_that_somebody_has_sewn(self, typed: str, sizes: tuple[str, ...] | None):
        assert read(LEAST + f"sewn: {typed}\n").sewn == sizes

    def test_an_audience_for_each_size(self):
        front = read(LEAST + "audience:\n  Child: child\n  Newborn: baby\n")
        assert front.audience == {None: Audience.ADULT, "Child": Audience.CHILD, "Newborn": Audience.BABY}

    def test_skills_as_a_list(self):
        assert read(LEAST + "skills: [a, 'b, c']\n").skills == ("a", "b, c")

    def test_acceptances_without_a_list(self):
        (accepted,) = read(LEAST + "accept: {raw edge: it frays}\n").accept
        assert (accepted.name, accepted.reason) == ("raw-edge", "it frays")

    def test_a_key_without_a_value_is_left_out(self):
        front = read(LEAST + "video:\nlanguage:\nsummary:\nversion:\nsystems:\naccept:\n")
        assert (front.video, front.language, front.version, front.accept) == (None, "en", "1", ())


class TestWhereItStands:
    def test_the_body_begins_after_the_second_line(self):
        text = f"---\n{LEAST}---\n# Plain Cloth\n\n---\n"
        assert text[whole(text)[1] :] == "# Plain Cloth\n\n---\n"

    def test_spaces_after_the_lines_and_other_line_ends(self):
        front, body, problems = whole("\ufeff---  \r\ntitle: A\r\nrelease: 2027-05\r\n--- \r\nx")
        assert problems == ()
        assert (front.title, front.release, body) == ("A", "2027-05", 42)
        assert front.spans["release"].text == "2027-05"

    def test_none_at_all(self):
        for text in ("# Plain Cloth\n", "", "\n---\ntitle: A\n---\n", "----\n"):
            front, body, (found,) = whole(text)
            assert isinstance(found, FrontMatterMissing)
            assert (front.title, body) == ("", 0)

    def test_never_closed(self):
        text = f"---\n{LEAST}\n# Plain Cloth\n\nseam: wide\n"
        front, body, (found,) = whole(text)
        assert isinstance(found, FrontMatterNotClosed)
        assert found.span.where == (1, 1)
        assert front.title == "Plain Cloth"
        assert text[body:].lstrip().startswith("# Plain")

    @pytest.mark.parametrize("after", ["# Plain Cloth\n", "\n# Plain Cloth\n"])
    def test_never_closed_nothing_is_said_of_lines_that_may_not_belong_to_it(self, after: str):
        text = f"---\n{LEAST}summary: a: b\n{after}"
        front, body, (found,) = whole(text)
        assert isinstance(found, FrontMatterNotClosed)
        assert (front.release, text[body:]) == ("2027-05", after)

    def test_200_lines_are_enough(self):
        lines = LEAST + "# a remark\n" * 198
        assert whole(f"---\n{lines}---\n")[2] == ()
        (found,) = whole(f"---\n{lines}# one more\n---\n")[2]
        assert isinstance(found, FrontMatterNotClosed)


class TestFaults:
    @pytest.mark.parametrize(
        ("lines", "where", "word"),
        [
            ("title: Bag: a small one\nrelease: 2027-05\n", (2, 11), "second colon"),
            ("title: Bag:\n", (2, 11), "second colon"),
            ("title: A\n\trelease: 2027-05\n", (3, 1), "tab"),
            ("title: A\nrelease\nversion: 1\n", (3, 1), "no colon"),
            ("  title: A\nrelease: 2027-05\n", (3, 1), "line above"),
            ("title: A\n release: 2027-05\n", (3, 9), "line above"),
            ('title: "A\nrelease: 2027-05\n', (2, 8), "quote"),
            ("title: A\nskills: [a, b\n", (3, 9), "bracket"),
            ("title: A\naudience: {B: child\nrelease: 2027-05\n", (3, 11), "bracket"),
            ("title: A\x07B\n", (2, 9), "cannot be seen"),
            ("title:A\nrelease:2027-05\n", (2, 1), "key: value"),
            ("- title\n", (2, 1), "key: value"),
            ("? [a]: b\n", (2, 3), "cannot be a key"),
            ("title: 'it's'\n", (2, 12), "cannot be read"),
        ],
    )
    def test_what_cannot_be_read(self, lines: str, where: tuple[int, int], word: str):
        found = problem(lines)
        assert isinstance(found, FrontMatterNotRead)
        assert found.span.where == where
        assert word in found.message()

    def test_what_stands_before_a_fault_is_read(self):
        front, _, (found,) = whole("---\ntitle: A\nrelease: 2027-05\nsummary: b: c\n---\n")
        assert isinstance(found, FrontMatterNotRead)
        assert (front.title, front.release) == ("A", "2027-05")

    @pytest.mark.parametrize("value", ["*a", "*A* cloth", "&a b", "!b", "!!str b", "@a", "`a`", "%a"])
    def test_signs_of_its_own(self, value: str):
        found = problem(f"{LEAST}summary: {value}\n")
        assert isinstance(found, SignNeedsQuotes)
        assert found.sign == value[0]
        assert found.span.where == (4, 10)
        assert read(f'{LEAST}summary: "{value}"\n').summary == value

    def test_a_bomb_of_references_does_not_go_off(self):
        lines = "a: &a [x, x]\n" + "".join(
            f"{name}: &{name} [*{before}, *{before}]\n"
            for before, name in zip("abcdefghi", "bcdefghij", strict=True)
        )
        found = whole(f"---\n{LEAST}{lines}---\n")[2]
        signs = [each.sign for each in found if isinstance(each, SignNeedsQuotes)]
        assert (signs.count("&"), signs.count("*")) == (10, 18)

    def test_depth(self):
        assert isinstance(problem(LEAST + "credits: [[[[a]]]]\n"), ShapeUnexpected)
        found = problem(LEAST + "credits: [[[[[a]]]]]\n")
        assert isinstance(found, FrontMatterTooDeep)
        assert found.span.where == (4, 14)
        assert isinstance(problem(LEAST + "credits: " + "[" * 100_000 + "\n"), FrontMatterTooDeep)

    def test_a_key_twice(self):
        found = problem(LEAST + "title: Another\n")
        assert isinstance(found, FrontMatterKeyTwice)
        assert found.span.where == (4, 1)
        assert found.labels[0].span.where == (2, 1)

    def test_a_value_cut_off(self):
        found = problem("title: Cloth #3\nrelease: 2027-05\n")
        assert isinstance(found, ValueCutOff)
        assert (found.rest, found.value, found.span.where) == ("#3", "Cloth", (2, 13))
        assert read("title: Cloth#3\n# a remark\nrelease: '2027-05' # another\n").title == "Cloth#3"

    def test_an_unknown_key_and_what_was_meant(self):
        front, _, (found,) = whole(f"---\n{LEAST}Skils: hemming\n---\n")
        assert isinstance(found, FrontMatterKeyUnknown)
        assert (found.key, found.meant, found.span.where) == ("Skils", "skills", (4, 1))
        assert front.skills == ("hemming",)
        strange = problem(LEAST + "yardage: 3\n")
        assert isinstance(strange, FrontMatterKeyUnknown)
        assert strange.meant is None
        assert all(key in strange.hint() for key in KEYS)

    def test_a_key_that_was_misspelt_does_not_take_the_place_of_the_right_one(self):
        front, _, (found,) = whole(f"---\n{LEAST}titel: Another\n---\n")
        assert isinstance(found, FrontMatterKeyUnknown)
        assert front.title == "Plain Cloth"

    @pytest.mark.parametrize("key", ["title", "release"])
    def test_a_key_that_is_needed(self, key: str):
        others = "".join(line for line in LEAST.splitlines(keepends=True) if not line.startswith(key))
        for lines in (others, f"{others}{key}:\n"):
            found = problem(lines)
            assert isinstance(found, FrontMatterKeyMissing)
            assert found.key == key

    def test_nothing_between_the_lines(self):
        for lines in ("", "# a remark\n"):
            missing = [each.key for each in whole(f"---\n{lines}---\n")[2]]  # type: ignore[attr-defined]
            assert missing == ["title", "release"]

    @pytest.mark.parametrize(
        "typed", ["2027-13", "2027-00", "2027-5", "May 2027", "2027-05-01", "２０２７-05", "27-05"]
    )
    def test_releases_that_are_no_month(self, typed: str):
        found = problem(f"title: A\nrelease: {typed}\n")
        assert isinstance(found, ReleaseUnclear)
        assert found.span.text == found.value == typed

    @pytest.mark.parametrize(
        ("key", "typed", "meant"),
        [
            ("systems", "metrical", "metric"),
            ("systems", "inches", None),
            ("written in", "both", None),
            ("audience", "childs", "child"),
            ("held", "true", None),
            ("held", "Yes", "yes"),
            ("held", "", None),
        ],
    )
    def test_words_that_are_none_of_the_few(self, key: str, typed: str, meant: str | None):
        found = problem(f"{LEAST}{key}: {typed}\n")
        assert isinstance(found, ValueUnknown)
        assert (found.key, found.value, found.meant) == (key, typed, meant)
        assert found.span.text == (typed or key)

    def test_a_word_for_one_size(self):
        found = problem(LEAST + "audience: {Small: child, Large: grown-up}\n")
        assert isinstance(found, ValueUnknown)
        assert found.span.text == "grown-up"

    @pytest.mark.parametrize("written", ["metric", "imperial"])
    def test_written_in_one_system_and_published_in_the_other(self, written: str):
        other = "imperial" if written == "metric" else "metric"
        found = problem(f"{LEAST}systems: {other}\nwritten in: {written}\n")
        assert isinstance(found, SystemNotPublished)
        assert found.span.where == (5, 13)

    @pytest.mark.parametrize("typed", ["English", "en_GB", "e", "en-", "de-DE-x", "1", "en GB"])
    def test_languages_that_are_no_code(self, typed: str):
        found = problem(f"{LEAST}language: {typed}\n")
        assert isinstance(found, LanguageUnclear)
        assert found.value == typed

    @pytest.mark.parametrize(
        "typed", ["de", "en-GB", "zh-Hans", "sr-Latn-RS", "es-419", "sl-nedis", "de-CH-1901"]
    )
    def test_languages_from_the_standard(self, typed: str):
        """Source: RFC 5646, appendix A."""
        assert read(f"{LEAST}language: {typed}\n").language == typed

    @pytest.mark.parametrize(
        "typed", ["x.mp4", "ftp://a.example/x", "https://", "https://a b", "javascript:x", "//a.example"]
    )
    def test_videos_that_are_no_address(self, typed: str):
        assert isinstance(problem(f"{LEAST}video: {typed}\n"), VideoUnclear)

    @pytest.mark.parametrize("typed", ["second", "0", "-1", "1.", "1:30", "2 b"])
    def test_versions_that_are_no_number(self, typed: str):
        assert isinstance(problem(f"{LEAST}version: {typed}\n"), VersionUnclear)

    @pytest.mark.parametrize("typed", ["raw-edge", "[raw-edge]", "[raw-edge: ]", "{raw-edge: ''}"])
    def test_acceptances_without_a_reason(self, typed: str):
        found = problem(f"{LEAST}accept: {typed}\n")
        assert isinstance(found, AcceptanceWithoutReason)
        assert (found.name, found.span.text) == ("raw-edge", "raw-edge")

    @pytest.mark.parametrize(
        "line",
        [
            "summary: [a]",
            "summary: {a: b}",
            "skills: {a: b}",
            "skills: [[a]]",
            "sewn: {a: b}",
            "sewn: [[a]]",
            "held: [yes]",
            "video: [a]",
            "audience: [a]",
            "audience: {a: [b]}",
            "accept: [[a]]",
            "accept: {a: [b]}",
        ],
    )
    def test_lists_where_none_belong(self, line: str):
        found = problem(f"{LEAST}{line}\n")
        assert isinstance(found, ShapeUnexpected)
        assert found.key == line.partition(":")[0]

    def test_a_list_where_none_belongs_has_its_place(self):
        assert problem(LEAST + "summary:\n  - a\n  - b\n").span.text == "- a\n  - b"
        assert problem(LEAST + "sewn:\n  a: b\n  c: d\n").span.text == "a: b\n  c: d"


class TestRevisionsAndParts:
    def test_a_day_and_a_part(self):
        front = read(LEAST + "version: 2\nrevised: 2028-02-29\npart of: A Table for the Quay\nweek: 12\n")
        assert (front.revised, front.part_of, front.week) == ("2028-02-29", "A Table for the Quay", 12)

    def test_without_them(self):
        front = read(LEAST)
        assert (front.revised, front.part_of, front.week) == ("", "", 0)

    @pytest.mark.parametrize(
        "day", ["2027-02-29", "2027-13-01", "20270614", "2027-6-14", "2027-05", "2027-W24-1"]
    )
    def test_no_day_of_the_calendar(self, day):
        found = problem(LEAST + f"revised: {day}\n")
        assert isinstance(found, RevisionUnclear)
        assert (found.value, found.span.text) == (day, day)

    @pytest.mark.parametrize(
        ("day", "early"), [("2027-04-30", True), ("2027-05-01", False), ("2028-01-01", False)]
    )
    def test_not_before_the_month_of_release(self, day, early):
        found = whole(f"---\n{LEAST}revised: {day}\n---\n")[2]
        assert [type(each) for each in found] == ([RevisedBeforeRelease] if early else [])

    @pytest.mark.parametrize("week", ["0", "-1", "1.5", "second", "1000", "٣"])
    def test_no_week(self, week):
        found = problem(LEAST + f"part of: Table\nweek: {week}\n")
        assert isinstance(found, WeekUnclear)
        assert found.value == week

    def test_one_without_the_other(self):
        assert isinstance(problem(LEAST + "part of: Table\n"), PartWithoutWeek)
        assert isinstance(problem(LEAST + "part of: Table\nweek:\n"), PartWithoutWeek)
        alone = problem(LEAST + "week: 3\n")
        assert isinstance(alone, WeekWithoutProject)
        assert alone.span.text == "3"
