"""The shop's sheet, as the command writes it."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest

from presscloth.cli import FINE, MISTYPED, main
from presscloth.printing.text import UNBROKEN

RECIPES = Path(__file__).parents[2] / "recipes"
APRON = str(RECIPES / "slipway-apron")
MATS = str(RECIPES / "shingle-placemats")


def written(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    assert main(["kits", *arguments]) == FINE
    return capsys.readouterr().out


def test_forty_kits_are_laid_out_together(capsys: pytest.CaptureFixture[str]) -> None:
    """One skirt needs 59 cm of the 150 cm cloth and is 89 cm wide; bibs of 50 × 28 cm lie beside it."""
    found = json.loads(written(capsys, APRON, "--size", "Medium", "--count", "40", "--format", "json"))
    assert (found["kits"], found["size"]) == (40, "Medium")
    drill = found["materials"]["A"]["metric"]
    assert Fraction(drill["single"]) == 600
    assert Fraction(drill["need"]) == 40 * 590
    assert Fraction(drill["buy"]) == 23_600 and drill["proved"]
    assert Fraction(drill["saved"]) == 40 * 600 - 23_600
    assert Fraction(drill["left"]) == 0
    assert {"material": "A", "piece": "skirt", "number": 40} in found["cuts"]
    assert {"material": "B", "piece": "tie strip", "number": 80} in found["cuts"]


def test_together_is_never_more_than_alone_and_never_less_than_the_bound(
    capsys: pytest.CaptureFixture[str],
) -> None:
    found = json.loads(written(capsys, APRON, "--size", "Small", "--count", "7", "--format", "json"))
    for material in found["materials"].values():
        for bought in material.values():
            assert Fraction(bought["saved"]) >= 0
            assert Fraction(bought["bound"]) <= Fraction(bought["need"]) <= Fraction(bought["buy"])
            assert Fraction(bought["saved"]) == 7 * Fraction(bought["single"]) - Fraction(bought["buy"])


def test_the_sheet_in_words(capsys: pytest.CaptureFixture[str]) -> None:
    text = written(capsys, MATS, "--count", "40")
    assert text.startswith("40 kits: Shingle Placemats\n")
    # Two strips of 3 in from each cloth and kit: 80 strips, 240 in, 6 3/4 yd.
    assert "    for all 40:    6 3/4 yd (6.2 m)\n" in text
    assert "    [ ] Cut 80 strips 3 in (7.7 cm) wide; from each, cut 1 strip.\n" in text
    assert "    saved:         3 1/4 yd (180 cm)\n" in text


def test_what_is_left_over_is_told_in_the_systems_in_which_something_is(
    capsys: pytest.CaptureFixture[str],
) -> None:
    text = written(capsys, APRON, "--size", "Medium", "--count", "5")
    assert "    left over:     5 cm (3/4 in)\n" in text
    assert "    left over:     2 cm (metric)\n" in text
    page = written(capsys, APRON, "--size", "Medium", "--count", "5", "--format", "html").replace(
        UNBROKEN, " "
    )
    assert '<dt>Left over</dt><dd><span class="measure">2 cm</span> (metric)</dd>' in page
    assert page.startswith("<!doctype html>")
    assert "(0" not in text + page


def test_what_is_optional_is_cut_when_it_is_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    without = written(capsys, MATS, "--count", "3")
    with_all = written(capsys, MATS, "--count", "3", "--with-optional")
    assert "coaster patch" not in without
    assert "12 × coaster patch" in with_all
    assert with_all.startswith("3 kits: Shingle Placemats, with all that is optional\n")


def test_the_page_stands_by_itself(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    page = tmp_path / "kits.html"
    assert main(["kits", MATS, "--count", "2", "--format", "html", "--out", str(page)]) == FINE
    html = page.read_text(encoding="utf-8")
    assert "<h1>2 kits: Shingle Placemats</h1>" in html
    assert "<script" not in html and "href=" not in html and "src=" not in html
    assert capsys.readouterr().out == ""


def test_a_size_must_be_named_where_there_are_several(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["kits", APRON, "--count", "2"]) == MISTYPED
    told = capsys.readouterr().err
    assert "say which size with --size" in told and "Child, Small, Medium, Large" in told
    assert main(["kits", APRON, "--count", "2", "--size", "Huge"]) == MISTYPED


def test_a_number_is_wanted(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(["kits", MATS, "--count", "0"])
    assert stopped.value.code == MISTYPED


def test_kits_are_cut_of_one_recipe(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["kits", str(RECIPES), "--count", "2"]) == MISTYPED
    assert "one recipe" in capsys.readouterr().err


def test_the_page_shows_how_the_cloth_is_cut(capsys: pytest.CaptureFixture[str]) -> None:
    """One picture for all that is alike: eighty strips of 7.7 cm as ten, eight times."""
    page = written(capsys, MATS, "--count", "40", "--format", "html")
    assert "Quilting cotton, chalk, cut 8 like this" in page
    assert "on 77 cm of cloth, 110 cm wide, lie 10 strip, 110 cm × 7.7 cm." in page
    assert page.count("<svg") >= 2 * 7
