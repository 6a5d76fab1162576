"""The README's own recipe and claims hold."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from presscloth.cli import FINE, main
from presscloth.pipeline import Proved, prove_source
from presscloth.problems import Problems
from presscloth.source import Source

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def recipe() -> str:
    found = re.search(r"```markdown\n(---\n.*?)\n```\n\nFrom this", README, re.DOTALL)
    assert found is not None
    return found[1] + "\n"


def proved(text: str) -> Proved:
    return prove_source(Source("pebble-pouch/recipe.md", text), Path("pebble-pouch/recipe.md"), Problems())


def names(text: str) -> list[str]:
    return [problem.slug() for problem in proved(text).problems]


def test_the_recipe_compiles_without_a_problem_in_two_sizes() -> None:
    found = proved(recipe())
    assert [problem.message() for problem in found.problems] == []
    assert [size.edition.size.name for size in found.sizes] == ["Small", "Large"]


def test_what_it_says_would_be_refused_is_refused() -> None:
    assert "pair-disagrees" in names(recipe().replace("1 cm (3/8 in)", "1 cm (1/2 in)"))
    height = "side + 2 × seam"
    assert f"typed as `{height}`" in README
    (short,) = proved(recipe().replace("side + 3 × seam", height)).problems[:1]
    assert short.slug() == "check-fails"
    assert "14 cm" in short.message() and "15 cm" in short.message()


def test_it_begins_with_the_job_in_one_paragraph() -> None:
    title, job = README.split("\n\n")[:2]
    assert title == "# Presscloth"
    assert "publishes a sew-along every month" in job and "refuses to print" in " ".join(job.split())


@pytest.mark.parametrize("name", re.findall(r"\]\(([^)#]+)\)", README))
def test_what_it_points_to_is_there(name: str) -> None:
    assert (ROOT / name).is_file()


def test_its_two_commands_are_there() -> None:
    commands = re.findall(r"^    (sh \.ci/here .*)$", README, re.MULTILINE)
    assert commands == ["sh .ci/here presscloth compile", "sh .ci/here tests"]
    assert (ROOT / ".ci" / "here").is_file()


FIVE_MINUTES = re.findall(r"^\d\. `presscloth ([^`]+)`", README, re.MULTILINE)


@pytest.mark.parametrize("command", FIVE_MINUTES)
def test_each_command_of_the_five_minutes_works_as_it_stands(
    command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "recipes" / "pebble-pouch"
    folder.mkdir(parents=True)
    (folder / "recipe.md").write_text(recipe(), encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert main(command.split()) == FINE
    said = capsys.readouterr()
    assert said.out or said.err
    assert len(FIVE_MINUTES) == 6
