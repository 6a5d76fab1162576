"""Problems as programs read them.

SARIF is held against the model of `sarif-pydantic`, a general-purpose library that follows the OASIS
standard Static Analysis Results Interchange Format 2.1.0.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from kinds import SOURCE, EdgeOff, LookAgain, PairOff, at
from sarif_pydantic import Level, Sarif

from presscloth.problems import Label
from presscloth.problems.report import Reported, report
from presscloth.problems.sarif import file_uri
from presscloth.problems.show import Format, show
from presscloth.source import Source

BASE, STRIP, GAP = at("7.5 cm (2 in)"), at("2 × base"), at("strip - base")


def reported() -> tuple[Reported, ...]:
    found = [
        PairOff(span=BASE, said="off by 1 mm", labels=(Label(GAP, "used here"),)).in_size("Small"),
        PairOff(span=BASE, said="off by 2 mm").in_size("Large").in_systems("metric"),
        LookAgain(span=STRIP, cause=BASE),
        EdgeOff(span=GAP),
    ]
    return report(found, sizes=("Small", "Tall", "Large"), systems=("metric", "imperial"))


def test_json_says_everything_of_a_problem():
    whole = json.loads(show(reported(), Format.JSON))
    assert whole[0] == {
        "problem": "pair-off",
        "severity": "error",
        "message": "off by 1 mm",
        "hint": "write another pair",
        "file": "recipes/plain/recipe.md",
        "line": 5,
        "column": 10,
        "end_line": 5,
        "end_column": 23,
        "sizes": ["Small"],
        "systems": [],
        "labels": [
            {
                "message": "used here",
                "file": "recipes/plain/recipe.md",
                "line": 7,
                "column": 9,
                "end_line": 7,
                "end_column": 21,
            }
        ],
    }
    assert [(each["problem"], each["message"], each["sizes"], each["systems"]) for each in whole] == [
        ("pair-off", "off by 1 mm", ["Small"], []),
        ("pair-off", "off by 2 mm", ["Large"], ["metric"]),
        ("look-again", "the pair is off", [], []),
        ("edge-off", "the pair is off", [], []),
    ]
    assert whole[2]["labels"][0]["message"] == "follows from `pair off` here"


def test_json_of_nothing_is_an_empty_list():
    assert json.loads(show((), Format.JSON)) == []


def test_places_find_the_words_in_the_file_again():
    lines = SOURCE.text.split("\n")
    for each in json.loads(show(reported(), Format.JSON)):
        words = lines[each["line"] - 1][each["column"] - 1 : each["end_column"] - 1]
        assert words in ("7.5 cm (2 in)", "2 × base", "strip - base")


def test_columns_count_characters_not_bytes_or_units():
    source = Source("a.md", "帯 👗 = x")
    (each,) = json.loads(show(report([PairOff(span=source.span(6, 7))]), Format.JSON))
    assert (each["column"], each["end_column"]) == (7, 8)


@pytest.mark.parametrize("reports", [(), reported()], ids=["nothing", "problems"])
def test_sarif_is_valid_and_says_everything(reports: tuple[Reported, ...]):
    text = show(reports, Format.SARIF)
    sarif = Sarif.model_validate_json(text)
    raw: Any = json.loads(text)
    assert sarif.version == "2.1.0"
    assert raw["$schema"].endswith("sarif-schema-2.1.0.json")
    (run,) = raw["runs"]
    assert run["columnKind"] == "unicodeCodePoints"
    assert run["tool"]["driver"]["name"] == "presscloth"
    assert len(run["results"]) == (4 if reports else 0)
    assert set(sarif.runs[0].__pydantic_extra__ or ()) <= {"columnKind"}


def test_sarif_has_a_rule_with_its_page_for_each_kind():
    sarif = Sarif.model_validate_json(show(reported(), Format.SARIF))
    rules = sarif.runs[0].tool.driver.rules or []
    assert [rule.id for rule in rules] == ["edge-off", "look-again", "pair-off"]
    for result in sarif.runs[0].results or []:
        assert result.rule_index is not None
        assert rules[result.rule_index].id == result.rule_id
    assert rules[2].full_description is not None
    assert rules[2].full_description.text == "A pair is off. Somebody would cut it wrongly."
    raw = json.loads(show(reported(), Format.SARIF))["runs"][0]["tool"]["driver"]["rules"]
    assert raw[0]["help"]["text"] == (
        "An edge is off.\n\nFails:\n\n    ## Measures\n    - seam = 1 cm (3 in)"
        "\n\nPasses:\n\n    ## Measures\n    - seam = 1 cm (3/8 in)"
    )
    assert "~~~~markdown\n## Measures\n- seam = 1 cm (3 in)\n~~~~" in raw[0]["help"]["markdown"]
    assert raw[1]["defaultConfiguration"] == {"level": "warning"}


def test_sarif_results_have_level_place_and_related_places():
    results = Sarif.model_validate_json(show(reported(), Format.SARIF)).runs[0].results or []
    assert [result.level for result in results] == [Level.ERROR, Level.ERROR, Level.WARNING, Level.ERROR]
    assert results[0].message.text == "off by 1 mm. Hint: write another pair."
    place = (results[0].locations or [])[0].physical_location
    assert place is not None
    assert place.region is not None
    assert place.artifact_location is not None
    assert place.artifact_location.uri == "recipes/plain/recipe.md"
    region = place.region
    assert (region.start_line, region.start_column, region.end_line, region.end_column) == (5, 10, 5, 23)
    related = (results[0].related_locations or [])[0]
    assert related.message is not None
    assert related.message.text == "used here"


def test_addresses_are_relative_and_keep_the_machine_to_itself(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    here = tmp_path / "room"
    (here / "recipes").mkdir(parents=True)
    monkeypatch.chdir(here)
    assert file_uri("recipes/kit bag/recipe.md") == "recipes/kit%20bag/recipe.md"
    assert file_uri("./recipes/a/recipe.md") == "recipes/a/recipe.md"
    assert file_uri(str(here / "recipes/ä/recipe.md")) == "recipes/%C3%A4/recipe.md"
    assert file_uri("recipes/../recipes/a.md") == "recipes/a.md"
    assert file_uri(str(tmp_path / "elsewhere/kit/recipe.md")) == "kit/recipe.md"
    assert file_uri("../elsewhere/kit/recipe.md") == "kit/recipe.md"
