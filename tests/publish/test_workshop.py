"""How a publisher's workshop cuts, from its file to the site; layouts that are kept change no page."""

from __future__ import annotations

from pathlib import Path

import pytest

from presscloth import pipeline
from presscloth.cutting import laid
from presscloth.cutting.workshop import PLAIN, Workshop
from presscloth.dev import scaffold
from presscloth.problems import Problem, Problems
from presscloth.publish.publisher import read_publisher
from presscloth.source import Source

RECIPE = """\
## Pieces

| Piece | From | Cut | Width         | Height        |
|-------|------|-----|---------------|---------------|
| cloth | A    | 1   | 60 cm (24 in) | 50 cm (20 in) |
"""


def workshop(text: str) -> tuple[Workshop, tuple[Problem, ...]]:
    problems = Problems()
    return read_publisher(Source("publisher.yaml", text), problems).workshop, problems.found()


def test_what_the_file_says() -> None:
    assert workshop("name: Tidewrack\n") == (PLAIN, ())
    assert workshop("cut in strips: yes\n") == (Workshop(strips=True), ())
    assert workshop("cut in strips: no\nstraightened: Yes\n") == (Workshop(straightened=True), ())


@pytest.mark.parametrize("value", ["perhaps", "[yes, no]", "true"])
def test_what_is_neither_yes_nor_no(value: str) -> None:
    found, (problem,) = workshop(f"straightened: {value}\n")
    assert found == PLAIN
    assert problem.slug() == "publisher-value-wrong" and problem.hint() == "write yes or no"


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    assert pipeline.workshop_of(tmp_path, tmp_path / "kept") == Workshop(kept_in=tmp_path / "kept")
    (tmp_path / "publisher.yaml").write_text("cut in strips: yes\n")
    assert pipeline.workshop_of(tmp_path, None) == Workshop(strips=True)


def site(recipe: Path, out: Path, kept_in: Path | None) -> dict[str, bytes]:
    """Every file of the site, by its name."""
    laid.on_roll.cache_clear()
    laid.on_sheets.cache_clear()
    done = pipeline.compile_site([recipe], out=out, pdf=False, site=out.parent / "nowhere", kept_in=kept_in)
    assert not done.failed and done.written
    return {str(file.relative_to(out)): file.read_bytes() for file in out.rglob("*") if file.is_file()}


def test_the_site_is_the_same_with_kept_layouts_and_without(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    folder = tmp_path / "recipes" / "cloth"
    folder.mkdir(parents=True)
    recipe = scaffold.write(RECIPE, folder)
    without = site(recipe, tmp_path / "one", None)
    first = site(recipe, tmp_path / "two", tmp_path / "kept")
    assert any((tmp_path / "kept").rglob("*"))
    again = site(recipe, tmp_path / "three", tmp_path / "kept")
    assert without == first == again
    assert any(b"Cutting layout for A" in page for page in without.values())
