"""The house stands as it was laid out: one direction of imports, a fixed top level, short files."""

from __future__ import annotations

import ast
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "compiler" / "presscloth"

# In the order in which a recipe passes through them; each may import those before it.
ROOMS = (
    "frozen",
    "tongue",
    "source",
    "problems",
    "measure",
    "outline",
    "recipe",
    "translation",
    "edition",
    "sewing",
    "cutting",
    "proof",
    "drawing",
    "handout",
    "choices",
    "printing",
    "publish",
    "pipeline",
)
# What stands at the door and may look into every room.
DOOR = (
    "__init__",
    "__main__",
    "cli",
    "commands",
    "console",
    "explaining",
    "every_problem",
    "dev",
    "reference",
)


def room_of(file: Path) -> str:
    return file.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imports(file: Path) -> Iterator[str]:
    """The rooms that a file imports, at its head or inside a function."""
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        names: list[str] = []
        if isinstance(node, ast.ImportFrom) and node.level == 0 and node.module:
            inside = node.module == "presscloth"
            names = [f"presscloth.{alias.name}" for alias in node.names] if inside else [node.module]
        elif isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        for name in names:
            if name.startswith("presscloth.") and name != "presscloth.__version__":
                yield name.split(".")[1]


FILES = sorted(PACKAGE.rglob("*.py"))


def test_every_file_belongs_to_a_room() -> None:
    assert {room_of(file) for file in FILES} <= {*ROOMS, *DOOR}


@pytest.mark.parametrize("file", FILES, ids=lambda file: str(file.relative_to(PACKAGE)))
def test_imports_go_one_way(file: Path) -> None:
    room = room_of(file)
    if room in DOOR:
        return
    later = {other for other in imports(file) if other not in ROOMS[: ROOMS.index(room) + 1]}
    assert not later, f"{room} imports {sorted(later)}"


def test_a_wrong_import_would_be_seen(tmp_path: Path) -> None:
    file = tmp_path / "wrong.py"
    file.write_text("def f():\n    from presscloth.printing import html\n    from presscloth import cli\n")
    assert sorted(imports(file)) == ["cli", "printing"]


def test_files_are_short() -> None:
    long = {
        f.relative_to(PACKAGE).as_posix(): n for f in FILES if (n := len(f.read_text().splitlines())) > 400
    }
    # A list of problem classes is read page by page, not as a whole.
    assert {name for name in long if not name.endswith("problems.py")} == set()


def test_one_importer_of_each_heavy_library() -> None:
    importers: dict[str, set[str]] = {}
    for file in FILES:
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module:
                importers.setdefault(node.module.split(".")[0], set()).add(
                    file.relative_to(PACKAGE).as_posix()
                )
            elif isinstance(node, ast.Import):
                for alias in node.names:
                    importers.setdefault(alias.name.split(".")[0], set()).add(
                        file.relative_to(PACKAGE).as_posix()
                    )
    library = {name for name in importers.get("weasyprint", set()) if not name.startswith("dev/")}
    # The finisher works on the library's own PDF objects, handed to it by the one that renders.
    assert library == {"printing/pdf.py", "printing/finish.py"}
    assert importers.get("pint", set()) == {"measure/units.py"}


def test_top_level_is_fixed() -> None:
    listed = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False
    ).stdout.splitlines()
    if not listed:
        pytest.skip("not a git checkout")
    top = {name.split("/")[0] for name in listed}
    fixed = {"README.md", "DEVELOPERS.md", "pyproject.toml", "compiler", "recipes", "themes", "tests", "site"}
    assert {name for name in top if not name.startswith(".")} <= fixed
    inside = {name.split("/")[1] for name in listed if name.startswith("compiler/")}
    assert inside == {"presscloth"}
