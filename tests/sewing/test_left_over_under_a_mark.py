"""What is left over because a marked paragraph took its block along says so."""

from __future__ import annotations

from pathlib import Path

from presscloth.dev import scaffold
from presscloth.pipeline import prove
from presscloth.problems import Problem

RECIPE = """\
## Sizes

| Size  | side          |
|-------|---------------|
| Child | 30 cm (12 in) |
| Adult | 40 cm (16 in) |

## Pieces

| Piece  | From | Cut | Width        | Height       |
|--------|------|-----|--------------|--------------|
| cloth  | A    | 1   | side         | side         |
| pocket | A    | 1   | 20 cm (8 in) | 20 cm (8 in) |

## Steps

1. Hem both.

   ```sew
   hem all of cloth by 1.2 cm (1/2 in) twice
   hem all of pocket by 1 cm (3/8 in)
   ```

2. Sew the pocket on.

   {mark}: Let the child show you where.

   ```sew
   attach pocket to cloth
   ```

3. Wear it.

   ```sew
   finish cloth
   ```
"""


def left_over(mark: str, folder: Path) -> list[Problem]:
    found = prove(scaffold.write(RECIPE.replace("{mark}", mark), folder)).problems
    return [problem for problem in found if problem.slug() == "thing-left-over"]


def test_for_one_size_only(tmp_path: Path) -> None:
    (problem,) = left_over("Child only", tmp_path)
    assert problem.sizes == ("Adult",)
    assert problem.message() == (
        "1 `pocket` is left over after the last step: what uses it in step 2 belongs to `Child only:`"
    )
    assert (
        problem.hint() == "put its block below a paragraph of step 2 that does not begin with `Child only:`"
    )
    (label,) = problem.labels
    assert label.span.text == "attach pocket to cloth"


def test_where_it_is_optional(tmp_path: Path) -> None:
    found = left_over("Optional", tmp_path)
    assert found
    assert all("what uses it in step 2 belongs to `Optional:`" in problem.message() for problem in found)


def test_without_a_mark_nothing_is_left(tmp_path: Path) -> None:
    text = RECIPE.replace("   {mark}: Let the child show you where.\n\n", "")
    assert [p.slug() for p in prove(scaffold.write(text, tmp_path)).problems] == []


def test_a_cause_that_is_none_is_not_named(tmp_path: Path) -> None:
    text = RECIPE.replace("   {mark}: Let the child show you where.\n\n", "").replace(
        "   attach pocket to cloth\n", "   hem all of cloth by 1 cm (3/8 in), taking 1 cm (3/8 in)\n"
    )
    found = [p.message() for p in prove(scaffold.write(text, tmp_path)).problems]
    assert any("`pocket` is left over after the last step" in m and "belongs to" not in m for m in found)
