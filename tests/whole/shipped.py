"""The site of the shipped recipes, built once for all workers of a test run."""

from __future__ import annotations

import fcntl
import os
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from presscloth.handout.tree import Publisher
from presscloth.pipeline import compile_site, kits_of, prove
from presscloth.printing.kits import as_page
from presscloth.printing.theme import open_theme
from presscloth.problems import Problems
from presscloth.publish.publisher import publisher_of

ROOT = Path(__file__).parents[2]
RECIPES = tuple(sorted((ROOT / "recipes").glob("*/recipe.md")))
SLUGS = tuple(path.parent.name for path in RECIPES)
IN_LARGE_PRINT = ("shingle-placemats", "harbour-kit-bag")
KITS = "kits.html"


@dataclass(frozen=True)
class Shipped:
    """Two sites with all recipes: `plain` with every PDF, `large` with those of IN_LARGE_PRINT."""

    plain: Path
    large: Path

    @property
    def publisher(self) -> Path:
        """The folder with the publisher's file that `plain` was written with."""
        return self.plain.parent / "publisher-plain-seam"

    def of(self, theme: str) -> Path:
        return {"plain-seam": self.plain, "large-print": self.large}[theme]


THEMES = ("plain-seam", "large-print")


def shipped_site(temporary: Path) -> Shipped:
    """Build both sites below the run's own folder, or wait until another worker has."""
    shared = temporary.parent if os.environ.get("PYTEST_XDIST_WORKER") else temporary
    return Shipped(*(_once(shared / f"shipped-{theme}", theme, shared / "layouts") for theme in THEMES))


def _once(folder: Path, theme: str, layouts: Path) -> Path:
    with (folder.parent / "shipped.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not (folder / KITS).exists():
            _build(folder, theme, layouts)
    return folder


def _build(folder: Path, theme: str, layouts: Path) -> None:
    for begun in (folder, folder.parent / f"publisher-{theme}"):
        shutil.rmtree(begun, ignore_errors=True)
    said = (ROOT / "site" / "publisher.yaml").read_text(encoding="utf-8")
    publisher_folder = folder.parent / f"publisher-{theme}"
    publisher_folder.mkdir()
    (publisher_folder / "publisher.yaml").write_text(said.replace("plain-seam", theme), encoding="utf-8")
    (publisher_folder / "standing").symlink_to(ROOT / "site" / "standing")

    def compile_some(paths: tuple[Path, ...], pdf: bool) -> None:
        done = compile_site(paths, out=folder, pdf=pdf, site=publisher_folder, kept_in=layouts)
        assert done.written and not done.failed and not done.problems, done.problems

    compile_some(RECIPES, pdf=theme == "plain-seam")
    if theme == "large-print":
        _large_print_pdfs(folder, compile_some)
    publisher = publisher_of(publisher_folder, Problems())
    (folder / KITS).write_text(_kits_page(theme, publisher), encoding="utf-8")


def _large_print_pdfs(folder: Path, compile_some: Callable[[tuple[Path, ...], bool], None]) -> None:
    """The PDFs of a few recipes; compiled again, the pages of the others stay."""
    compile_some(tuple(path for path in RECIPES if path.parent.name in IN_LARGE_PRINT), True)
    assert {page.parent.name for page in folder.glob("*/index.html")} >= set(SLUGS)


def _kits_page(theme: str, publisher: Publisher) -> str:
    proved = prove(next(path for path in RECIPES if path.parent.name == "slipway-apron"))
    assert proved.recipe is not None
    sheet, _ = kits_of(proved.recipe, proved.sizes[-1], 40, optional=True)
    return as_page(sheet, open_theme(theme), publisher)


def pages_of(folder: Path) -> tuple[str, ...]:
    """Every page of a site, the first page first."""
    return tuple(sorted((page.relative_to(folder).as_posix() for page in folder.rglob("*.html")), key=_depth))


def one_of_each_kind(folder: Path) -> tuple[str, ...]:
    """Of every kind of page the largest: recipe pages, their other pages by name, and each folder's."""
    largest: dict[str, str] = {}
    for page in sorted(pages_of(folder), key=lambda page: (folder / page).stat().st_size):
        largest[_kind(page)] = page
    return tuple(sorted(largest.values(), key=_depth))


def recipe_pages(folder: Path) -> tuple[str, ...]:
    return tuple(f"{slug}/index.html" for slug in SLUGS if (folder / slug).is_dir())


def _kind(page: str) -> str:
    place, _, name = page.rpartition("/")
    return f"recipe {name}" if place in SLUGS else place or name


def _depth(page: str) -> tuple[int, str]:
    return page.count("/"), page
