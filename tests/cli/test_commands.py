"""What each command answers with, and its exit code."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from running import PACKAGE, QUESTIONED, SOUND, WRONG, Run, Write
from sarif_pydantic import Sarif


def test_help_names_the_commands_and_the_exit_codes(run: Run):
    answer = run("--help")
    assert answer.code == 0
    for word in ("check", "compile", "measures", "why", "exit code: 0 no errors", "130 interrupted"):
        assert word in answer.out


@pytest.mark.parametrize(
    "typed",
    [
        (),
        ("chek",),
        ("check", "--fromat", "json"),
        ("check", "--format", "yaml"),
        ("check", "--str"),
        ("compile", "--workers", "0"),
        ("compile", "--workers", "two"),
        ("measures", "--format", "sarif"),
    ],
)
def test_what_is_mistyped_gets_a_two_and_the_usage(run: Run, typed: tuple[str, ...]):
    answer = run(*typed)
    assert answer.code == 2
    assert answer.out == ""
    assert answer.err.startswith("usage: presscloth")


def test_a_sound_recipe_leaves_the_data_empty(run: Run, write: Write):
    write("plain", SOUND)
    answer = run("check")
    assert (answer.code, answer.out) == (0, "")
    assert answer.err == "checked 1 recipe: no problems\n"


def test_an_error_is_shown_in_full_and_gives_a_one(run: Run, write: Write):
    write("plain", SOUND)
    write("wrong", WRONG)
    answer = run("check")
    assert answer.code == 1
    assert answer.out.startswith("recipes/wrong/recipe.md:9:10: error: pair disagrees\n")
    assert "    9 | - base = 7.5 cm (2 in)\n      |          ^^^^^^^^^^^^^\n" in answer.out
    assert answer.out.endswith("presscloth why pair-disagrees\n\n")
    assert answer.err == "checked 2 recipes: 1 error\n"


@pytest.mark.parametrize("named", ["recipes/wrong", "recipes/wrong/recipe.md", "./recipes/wrong/"])
def test_a_recipe_is_named_by_its_folder_or_its_file(run: Run, write: Write, named: str):
    write("wrong", WRONG)
    write("plain", SOUND)
    answer = run("check", named, "--format", "short")
    assert answer.code == 1
    assert answer.out.startswith("recipes/wrong/recipe.md:9:10: error: 7.5 cm and 2 in are 24.2 mm apart")
    assert answer.out.count("\n") == 1
    assert answer.err == "checked 1 recipe: 1 error\n"


def test_a_warning_gives_a_one_only_when_strict(run: Run, write: Write):
    write("questioned", QUESTIONED)
    plain, strict = run("check", "--format", "short"), run("check", "--format", "short", "--strict")
    assert (plain.code, strict.code) == (0, 1)
    assert plain.out == strict.out
    assert ": warning: " in plain.out
    assert plain.out.endswith("[carried-over-elsewhere]\n")


def test_json_is_all_that_stands_on_standard_output(run: Run, write: Write):
    write("wrong", WRONG)
    answer = run("check", "--format", "json")
    (problem,) = json.loads(answer.out)
    assert problem["problem"] == "pair-disagrees"
    assert problem["file"] == "recipes/wrong/recipe.md"
    assert answer.code == 1
    write("plain", SOUND)
    assert json.loads(run("check", "recipes/plain", "--format", "json").out) == []


def test_sarif_is_valid_and_without_a_path_of_the_machine(run: Run, write: Write, folder: Path):
    path = write("wrong", WRONG)
    answer = run("check", str(path), "--format", "sarif")
    sarif = Sarif.model_validate_json(answer.out)
    (result,) = sarif.runs[0].results or []
    assert result.rule_id == "pair-disagrees"
    assert str(folder) not in answer.out
    assert '"uri": "recipes/wrong/recipe.md"' in answer.out


@pytest.mark.parametrize("command", ["check", "compile", "measures"])
def test_an_empty_folder_is_told_what_to_do(run: Run, folder: Path, command: str):
    answer = run(command)
    assert (answer.code, answer.out) == (2, "")
    assert "there is no recipe here" in answer.err
    assert "recipes/kit-bag/recipe.md" in answer.err
    assert f"presscloth {command} path/to/kit-bag" in answer.err
    assert list(folder.iterdir()) == []


@pytest.mark.parametrize("named", ["recipes/gone", "recipes/gone/recipe.md"])
def test_a_recipe_that_is_not_there_is_named(run: Run, named: str):
    answer = run("check", named)
    assert (answer.code, answer.out) == (2, "")
    assert f"`{named}` is not there" in answer.err
    assert "hint: name a folder that holds a `recipe.md`" in answer.err


def test_a_file_that_is_no_text_is_a_problem_like_any_other(run: Run, folder: Path):
    (folder / "picture.md").write_bytes(b"\x89PNG\x00\xff")
    answer = run("check", "picture.md", "--format", "short")
    assert answer.code == 1
    assert answer.out.startswith("picture.md:1:1: error: this file is not plain text")


def test_a_recipe_without_sew_blocks_is_told_that_nothing_was_proved(run: Run, write: Write):
    write("told", "## Steps\n1. Hem the cloth all round.\n")
    assert "told: nothing is proved of its construction; no step has a sew block" in run("check").err


def test_measures_are_a_table_with_a_column_for_each_size(run: Run, write: Write):
    sizes = "## Sizes\n| Size | side |\n|---|---|\n| Small | 30 cm (12 in) |\n| Tall | 40 cm (16 in) |\n"
    write("sized", sizes + "## Measures\n- gap = side / 2\n")
    answer = run("measures")
    lines = [line.split() for line in answer.out.splitlines()]
    assert answer.code == 0
    assert ["Small", "Tall"] in lines
    assert "gap 15 cm (6 in) 20 cm (8 in)".split() in lines


def test_measures_as_json_are_exact_in_both_systems(run: Run, write: Write):
    write("plain", "## Measures\n- third = 10 cm (4 in) / 3\n")
    recipe = json.loads(run("measures", "--format", "json").out)
    (size,) = recipe["sizes"]
    assert recipe["recipe"] == "plain"
    assert size["measures"]["third"]["metric"] == "100/3"
    assert size["measures"]["third"]["imperial"] == "4/3"
    write("other", SOUND)
    both = json.loads(run("measures", "--format", "json").out)
    assert [each["recipe"] for each in both] == ["other", "plain"]


def test_measures_tell_what_is_wrong_besides(run: Run, write: Write):
    write("wrong", WRONG)
    answer = run("measures")
    assert answer.code == 1
    assert "seam" in answer.out
    assert "[pair-disagrees]" in answer.err
    assert "error" not in answer.out


def test_why_prints_a_page_with_both_examples(run: Run):
    answer = run("why", "pair-disagrees")
    assert answer.code == 0
    assert answer.out.startswith("pair disagrees, error (pair-disagrees)\n\nThe two halves of a pair")
    assert "Fails:\n\n    ## Measures\n    - base = 7.5 cm (2 in)\n" in answer.out
    assert "Passes:\n\n    ## Measures\n    - base = 7.5 cm (3 in)\n" in answer.out
    assert run("why", "pair", "disagrees").out == answer.out


def test_why_suggests_the_nearest_name(run: Run):
    answer = run("why", "pair-disagree")
    assert (answer.code, answer.out) == (2, "")
    assert "there is no problem called `pair-disagree`; perhaps pair-disagrees" in answer.err


def test_why_alone_lists_all_by_severity_with_their_first_sentences(run: Run):
    answer = run("why")
    errors, warnings = answer.out.split("Warnings: right, but perhaps not meant")
    assert "  pair-disagrees\n      The two halves of a pair are not the same measure.\n" in errors
    assert "  carried-over-elsewhere\n" in warnings
    assert "  carried-over-elsewhere\n" not in errors


def test_compile_writes_the_sound_recipes_and_names_the_others(run: Run, write: Write, folder: Path):
    write("plain", SOUND)
    write("wrong", WRONG)
    write("later", "---\nheld: yes\n---\n")
    answer = run("compile", "--no-pdf")
    assert answer.code == 1
    assert "wrong: not written, for it has errors" in answer.err
    assert "later: held, and left out" in answer.err
    assert "compiled 3 recipes: 1 error" in answer.err
    assert "pair disagrees" in answer.out
    published = folder / "site" / "published"
    assert (published / "plain" / "index.html").is_file()
    assert not (published / "wrong").exists()
    assert not (published / "later").exists()


def test_compile_takes_a_folder_and_what_is_held(run: Run, write: Write, folder: Path):
    write("later", "---\nheld: yes\n---\n")
    answer = run("compile", "--no-pdf", "--held", "--out", "there")
    assert (answer.code, answer.out) == (0, "")
    assert (folder / "there" / "later" / "index.html").is_file()
    assert not (folder / "site").exists()


def test_compile_prints_pdfs_with_the_workers_that_it_is_given(run: Run, write: Write, folder: Path):
    write("plain", SOUND)
    answer = run("compile", "--workers", "1")
    assert answer.code == 0, answer.err
    assert [path.suffix for path in (folder / "site/published/plain").glob("*.pdf")]


def test_without_pango_compile_says_what_to_install(run: Run, write: Write, folder: Path):
    write("plain", SOUND)
    broken = folder / "elsewhere" / "weasyprint"
    broken.mkdir(parents=True)
    (broken / "__init__.py").write_text(
        "print('a banner')\nraise OSError(\"cannot load library 'libpango-1.0-0'\")\n"
    )
    path = f"{folder / 'elsewhere'}:{PACKAGE}"
    answer = run("compile", PYTHONPATH=path)
    assert (answer.code, answer.out) == (3, "")
    assert "Pango" in answer.err
    assert "apt install libpango-1.0-0" in answer.err
    assert "--no-pdf" in answer.err
    assert "Traceback" not in answer.err
    assert run("compile", "--no-pdf", PYTHONPATH=path).code == 0
