"""A handout as plain text and as JSON."""

import json
from dataclasses import replace
from itertools import pairwise

from printing.making import with_picture
from printing.samples import MUG_MAT, SMALL, TALL

from presscloth.printing.json import as_json
from presscloth.printing.text import WIDTH, text

LINES = text(TALL).split("\n")


def test_lines_fit_a_terminal():
    assert max(map(len, LINES)) <= WIDTH
    assert max(map(len, LINES)) > WIDTH - 8


def test_no_measure_is_broken():
    for line in LINES:
        assert not line.rstrip().endswith(("1/2", "3/8", "1/4", "3/4", "5/8"))
        assert not line.lstrip().startswith(("cm", "in)", "yd)", "1/2"))


def test_sections_follow_the_work():
    heads = [above for above, line in pairwise(LINES) if line and set(line) == {"-"}]
    assert heads == [
        "Before you start",
        "Materials",
        "Tools",
        "Cutting list",
        "The pieces",
        "Steps",
        "When you sell what you sew",
    ]


def test_marks_and_numbers():
    assert "  3. In the video at 4:15." in LINES
    assert "  5. Take care. In the video at 9:02." in LINES
    assert "  8. Or:" in LINES
    assert "[ ] 2 × side strip, from A (linen); width 7 cm (2 3/4 in), height 18 cm (7 in)" in LINES


def test_whether_it_has_been_sewn_and_proved():
    assert "not yet sewn; the edges that meet were proved" in text(SMALL).replace("\n           ", " ")
    assert "This size: sewn and checked\n" in text(MUG_MAT)


def test_json_holds_every_word_and_no_place_of_the_machine(tmp_path):
    handout = with_picture(TALL, tmp_path)
    written = as_json(handout)
    read = json.loads(written)
    assert read["is"] == "Handout"
    assert list(read)[1:4] == ["slug", "title", "size"]
    assert read["systems"] == ["metric", "imperial"]
    assert read["intro"][-1]["of"] == {
        "is": "Image",
        "name": "corner.png",
        "alt": "A boxed corner, seen from inside the bag",
    }
    assert str(tmp_path) not in written
    assert read["stages"][1]["steps"][0]["marks"]["at"] == "4:15"


def test_two_handouts_that_differ_differ_in_json():
    assert as_json(TALL) == as_json(replace(TALL))
    assert as_json(TALL) != as_json(replace(TALL, version="3"))
