"""A recipe whose folder cannot be an address is named, and holds no other back."""

from __future__ import annotations

from pathlib import Path

import pytest

from presscloth.dev import scaffold
from presscloth.pipeline import compile_site
from presscloth.publish.addresses import NoAddress, is_address, without_address
from presscloth.source import Source

HEMMED = """\
## Steps

1. Hem it.

   ```sew
   hem all of cloth by 1.2 cm (1/2 in) twice
   finish cloth
   ```
"""


def hint(name: str) -> str:
    problem = without_address(name, Source("recipe.md", ""))
    assert problem is not None
    return problem.hint()


@pytest.mark.parametrize(
    ("name", "better"),
    [
        ("Kit Bag & Strap", "kit-bag-and-strap"),
        ("Küstentasche", "kustentasche"),
        ("standing", "standing-recipe"),
        ("Skills", "skills-recipe"),
        ("..", "recipe"),
        ("口金", "recipe"),
    ],
)
def test_a_name_that_is_no_address_leads_to_one(name: str, better: str) -> None:
    assert hint(name) == f"call its folder `{better}`"
    assert is_address(better)


@pytest.mark.parametrize("name", ["kit-bag", "kit_bag_2", "KitBag", "7-days"])
def test_plain_names_are_addresses(name: str) -> None:
    assert without_address(name, Source("recipe.md", "")) is None


def test_one_without_an_address_does_not_hold_the_others_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    folders = [tmp_path / "recipes" / name for name in ("kit-bag", "Kit Bag & Strap")]
    for folder in folders:
        folder.mkdir(parents=True)
    paths = [scaffold.write(HEMMED, folder) for folder in folders]
    compiled = compile_site(paths, out=tmp_path / "out", pdf=False)
    (failed,) = compiled.failed
    (problem,) = failed.problems
    assert isinstance(problem, NoAddress) and failed.slug == "Kit Bag & Strap"
    assert problem.message() == "a recipe cannot be called `Kit Bag & Strap`: its pages would have no address"
    assert "kit-bag/index.html" in compiled.written
    assert not any("Strap" in name for name in compiled.written)
