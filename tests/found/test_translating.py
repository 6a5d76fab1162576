"""What somebody met who began a translation as the README says."""

from __future__ import annotations

from pathlib import Path

from presscloth.cli import FINE, main
from presscloth.dev import scaffold
from presscloth.pipeline import prove


def hints(recipe: Path) -> list[str]:
    return [problem.hint() for problem in prove(recipe).problems]


def test_who_had_all_quotations_before_him_was_told_to_have_them_written_down(tmp_path: Path) -> None:
    recipe = scaffold.write("## Notes\n\nIt is a cloth.\n", tmp_path)
    beside = recipe.with_name("recipe.de.md")
    beside.write_text("---\nlanguage: de\n---\n", encoding="utf-8")
    assert hints(recipe) == ["`presscloth translate RECIPE --to de` writes down what is missing"]
    assert main(["translate", str(recipe), "--to", "de"]) == FINE
    assert hints(recipe) == ["write each below the quotation that it translates, and names into the table"]
