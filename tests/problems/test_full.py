"""Problems as a person reads them on a terminal."""

import pytest
from kinds import SOURCE, TEXT, EdgeOff, LookAgain, PairOff, at

from presscloth.problems import Label
from presscloth.problems.full import full
from presscloth.problems.report import report
from presscloth.problems.short import short
from presscloth.problems.terminal import lay, printable, underlined
from presscloth.source import Source

BASE, STRIP = at("7.5 cm (2 in)"), at("2 × base")

FULL = """\
recipes/plain/recipe.md:5:10: error: pair off
  off by 1 mm (Small and Tall, in metric)
    5 | - base = 7.5 cm (2 in)
      |          ^^^^^^^^^^^^^
  off by 2 mm (Large)
  line 7: used here
    7 | - gap = strip - base
      |                 ^^^^
  hint: write another pair
  What follows from it:
  - recipes/plain/recipe.md:6:11: warning: look again
    the pair is off

`presscloth why NAME` explains a problem: presscloth why pair-off

"""


def test_a_whole_report_with_everything_in_it():
    label = Label(SOURCE.span(TEXT.rindex("base"), TEXT.rindex("base") + 4), "used here")
    off = PairOff(span=BASE, said="off by 1 mm", labels=(label,))
    found = [
        off.in_size("Small").in_systems("metric"),
        off.in_size("Tall").in_systems("metric"),
        PairOff(span=BASE, said="off by 2 mm").in_size("Large"),
        LookAgain(span=STRIP, cause=BASE),
    ]
    assert full(report(found, sizes=("Small", "Tall", "Large"))) == FULL


def test_nothing_is_shown_of_nothing():
    assert full(()) == ""
    assert short(()) == ""


def test_the_pointer_to_the_pages_stands_once_at_the_end():
    shown = full(report([PairOff(span=BASE), EdgeOff(span=STRIP)]))
    assert shown.count("presscloth why") == 2
    assert shown.endswith("presscloth why pair-off\n\n")


def test_a_problem_of_a_file_that_is_not_there_shows_no_line():
    nowhere = Source("recipes/gone/recipe.md", "")
    shown = full(report([PairOff(span=nowhere.span(0, 0))]))
    assert shown.startswith("recipes/gone/recipe.md:1:1: error: pair off\n  the pair is off\n  hint:")


def test_a_place_over_several_lines_is_marked_on_the_first():
    shown = full(report([PairOff(span=SOURCE.span(TEXT.index("7.5"), TEXT.index("× base")))]))
    assert "    5 | - base = 7.5 cm (2 in)\n      |          ^^^^^^^^^^^^^ to line 6\n" in shown


def test_a_label_in_another_file_names_it():
    other = Source("recipes/other/recipe.md", "one\ntwo\n")
    shown = full(report([PairOff(span=BASE, labels=(Label(other.span(4, 7), "as there"),))]))
    assert "  recipes/other/recipe.md, line 2: as there\n    2 | two\n      | ^^^\n" in shown


def test_colour_is_only_there_when_it_is_asked_for():
    reported = report([PairOff(span=BASE)])
    coloured = full(reported, colour=True)
    assert "\x1b[1;31merror\x1b[0m" in coloured
    assert "\x1b" not in full(reported)
    plain = coloured
    for code in ("1;31", "1", "2", "36", "0"):
        plain = plain.replace(f"\x1b[{code}m", "")
    assert plain == full(reported)


def test_short_gives_one_line_for_each():
    found = [
        PairOff(span=BASE, said="off by 1 mm").in_size("Small"),
        PairOff(span=BASE, said="off by\n2 mm").in_size("Tall"),
        LookAgain(span=STRIP, cause=BASE),
    ]
    assert short(report(found, sizes=("Small", "Tall"))) == (
        "recipes/plain/recipe.md:5:10: error: off by 1 mm (Small) [pair-off]\n"
        "recipes/plain/recipe.md:5:10: error: off by 2 mm (Tall) [pair-off]\n"
        "recipes/plain/recipe.md:6:11: warning: the pair is off [look-again]\n"
    )


@pytest.mark.parametrize(
    ("line", "word", "marks"),
    [
        ("- base = 2 in", "2 in", "         ^^^^"),
        ("\tbase\t= 2 in", "2 in", " " * 14 + "^^^^"),  # tab stops at 4, 8 and 12
        ("- 帯 = 2 in", "2 in", "       ^^^^"),  # wide: two columns
        ("- 帯 = 2 in", "帯", "  ^^"),
        ("- ba\u0301nd = 2 in", "2 in", "         ^^^^"),  # the accent joins the letter before it
        ("- ba\u200bnd = 2 in", "2 in", "         ^^^^"),  # of no width
        ("- é = 2 in", "é", "  ^"),
    ],
)
def test_the_marks_stand_under_the_characters(line: str, word: str, marks: str):
    start = line.index(word)
    assert underlined(line, start, start + len(word), 100)[1] == marks


def test_a_tab_is_shown_as_spaces_up_to_the_next_stop():
    assert underlined("a\tb", 2, 3, 100) == ("a   b", "    ^")


def test_an_empty_place_gets_one_mark_even_behind_the_end():
    assert underlined("abc", 1, 1, 100) == ("abc", " ^")
    assert underlined("abc", 3, 3, 100) == ("abc", "   ^")


LONG = " ".join(f"word{number}" for number in range(100))


@pytest.mark.parametrize("word", ["word0 ", "word3 ", "word50 ", "word97 ", "word99"])
def test_a_long_line_is_cut_around_the_place(word: str):
    start = LONG.index(word)
    text, marks = underlined(LONG, start, start + len(word), 60)
    assert len(text) <= 62
    assert len(text) >= 59
    assert text.startswith("…") == (word not in ("word0 ", "word3 "))
    assert text.endswith("…") == (word not in ("word97 ", "word99"))
    assert text[marks.index("^") : len(marks)].strip() == word.strip()


def test_a_long_line_of_wide_characters_is_cut_to_columns():
    line = "帯" * 200
    text, marks = underlined(line, 100, 101, 60)
    assert len(text) == 32  # 30 characters of two columns, and two dots
    assert marks.endswith("^^")
    assert (len(marks) - 2 - 1) % 2 == 0


def test_a_place_longer_than_the_line_that_is_shown_is_marked_to_its_end():
    text, marks = underlined(LONG, 10, len(LONG), 60)
    assert len(marks) <= 62
    assert set(marks[marks.index("^") :]) == {"^"}
    assert len(text) <= 62


def test_what_would_steer_a_terminal_is_made_visible():
    assert printable("a\x1b[31mb\x07") == "a␛[31mb␇"
    assert printable("seam \u202e) ni 2(") == "seam \ufffd) ni 2("
    assert printable("\x85\x9b\x7f") == "\ufffd\ufffd\ufffd"
    assert printable("é 帯 ½ × ″\t\n") == "é 帯 ½ × ″\t\n"
    hostile = Source("recipes/\x1b]0;x\x07/recipe.md", "- a\x1b[2J = 1\n")
    found = PairOff(span=hostile.span(2, 5), said="\x1b[2J", labels=(Label(hostile.span(0, 1), "\x1b[H"),))
    for text in (full(report([found])), short(report([found]))):
        assert "\x1b" not in text
        assert "\x07" not in text


def test_laid_out_columns_begin_where_the_character_before_ends():
    laid = lay("a帯\té")
    assert laid.at == (0, 1, 3, 4, 5)
