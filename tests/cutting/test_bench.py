"""The benchmark reads its format and prints what was reached."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from presscloth.cutting import Part, Way
from presscloth.dev.bench_cutting import Instance, main, measured, outlines, table

SET = Instance("sewing", "pinwheel", 5, 2, None, (Part("a", 3, 2, 4, True), Part("b", 1, 1, 1, True)))


def test_a_set_is_measured_free_and_in_strips():
    free, strips = measured(SET, Way.FREE), measured(SET, Way.STRIPS)
    assert (free.length, free.floor, free.bought, free.bought_proved) == (5, 5, 6, True)
    assert free.gap == 0 and free.peer is not None and free.peer >= 5
    assert free.by_seed == (5,) * 5 and strips.by_seed == (6,)
    assert (strips.length, strips.bought, strips.peer) == (6, 6, None)


def test_the_table_sums_up_each_group():
    lines = table([measured(SET, Way.FREE), measured(SET, Way.STRIPS)]).splitlines()
    assert lines[1].split()[:5] == ["pinwheel", "free", "5", "5", "5"]
    assert lines[4].startswith("sewing free: mean gap 0.00 %, worst 0.00 %, length proved 1 of 1")
    assert lines[5].startswith("sewing strips: mean gap 0.00 %") and "peer" not in lines[5]


def test_how_much_is_owed_to_random_numbers_is_told():
    row = replace(measured(SET, Way.FREE), by_seed=(5, 6, 5, 5, 7), work=123)
    line = table([row]).splitlines()[1]
    assert "  123  3 of 5, 7  " in line
    assert "proved 1 of 1 (100 %)" in table([row])


def test_outlines_are_read_with_x_along_the_cloth(tmp_path: Path):
    item = {"shape": [[0, 0], [30, 0], [30, 10], [0, 10]], "q": 2, "rots": [0], "n": "band"}
    entry = {"name": "bands", "W": 10, "inc": 5, "items": [item]}
    (tmp_path / "outlines.json").write_text(json.dumps([entry]), encoding="utf-8")
    (line,) = outlines(tmp_path)
    assert line.startswith("bands: length 60.00, area 60.00, bought 60, bound 60, ")


def test_without_a_folder_it_says_how_it_is_called(capsys: pytest.CaptureFixture[str]):
    assert main([]) == 2
    assert "FOLDER" in capsys.readouterr().err
