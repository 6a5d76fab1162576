"""Layouts that are kept change nothing, survive damage, and are found by all that they depend on."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from cutting.shopping import only

from presscloth.cutting import keeping, laid
from presscloth.cutting.buying import Purchase
from presscloth.cutting.keeping import Rows, kept, own_folder
from presscloth.cutting.workshop import Workshop

MATERIALS = """\
A | Cotton | fabric | 110 cm (43 in) |  | 10 cm (1/8 yd) |
B | Prints | fat quarter | 55 cm (22 in) | 46 cm (18 in) |  |
C | Felt | fabric | 90 cm (36 in) |  | 10 cm (1/8 yd) | straightened"""
PIECES = """\
cloth | A | 3 | 40 cm (16 in) | 50 cm (20 in)
patch | B | 20 | 11 cm (4 3/8 in) | 11 cm (4 3/8 in)
disc | C | 5 | 30 cm (12 in) |  | circle"""


def forget() -> None:
    laid.on_roll.cache_clear()
    laid.on_sheets.cache_clear()


def purchases(folder: Path | None) -> dict[str, Purchase]:
    forget()
    return dict(only(MATERIALS, PIECES, workshop=Workshop(kept_in=folder)).buying.purchases)


def told(found: dict[str, Purchase]) -> list[object]:
    return [
        (bought.need, bought.buy, bought.bound, bought.proved, bought.cloths)
        for purchase in found.values()
        for bought in purchase.by_system.values()
    ]


def files(folder: Path) -> list[Path]:
    return sorted(path for path in folder.rglob("*") if path.is_file())


def test_the_same_with_and_without(tmp_path: Path) -> None:
    without = told(purchases(None))
    assert told(purchases(tmp_path)) == without
    assert files(tmp_path)
    assert told(purchases(tmp_path)) == without


def test_what_is_kept_is_not_worked_out_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = told(purchases(tmp_path))
    for engine in ("lay_out", "lay_out_sheets", "lay_out_outlines"):
        monkeypatch.setattr(laid, engine, None)  # calling it would fail
    assert told(purchases(tmp_path)) == before


def test_damaged_files_are_worked_out_anew(tmp_path: Path) -> None:
    before = told(purchases(tmp_path))
    damages = [b"", b"\xff\xfe", b"{}", b"0" * 64 + b"\n[[1]]"]
    for number, file in enumerate(files(tmp_path)):
        whole = file.read_bytes()
        file.write_bytes([*damages, whole[:-3], whole.replace(b"0", b"1")][number % 6])
    assert told(purchases(tmp_path)) == before
    forget()
    assert told(purchases(tmp_path)) == before


def test_another_question_has_another_answer(tmp_path: Path) -> None:
    assert kept(tmp_path, ("roll", 1), lambda: [[1]]) == [[1]]
    assert kept(tmp_path, ("roll", 2), lambda: [[2]]) == [[2]]
    assert kept(tmp_path, ("roll", 1), lambda: [[3]]) == [[1]]


def test_another_engine_asks_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    kept(tmp_path, "question", lambda: [[1]])
    monkeypatch.setattr(keeping, "engine", lambda: "another")
    assert kept(tmp_path, "question", lambda: [[2]]) == [[2]]


def test_what_does_not_fit_is_not_kept(tmp_path: Path) -> None:
    assert kept(tmp_path, "question", lambda: None) is None
    assert files(tmp_path) == []


def test_many_write_at_once(tmp_path: Path) -> None:
    rows: Rows = [[number, number] for number in range(20_000)]

    def ask(_: int) -> Rows | None:
        return kept(tmp_path, "question", lambda: rows)

    with ThreadPoolExecutor(8) as pool:
        answers = list(pool.map(ask, range(40)))
    assert all(answer == rows for answer in answers)
    assert len(files(tmp_path)) == 1


def test_a_folder_that_cannot_be_written_is_let_be(tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("not a folder")
    assert kept(blocked / "layouts", "question", lambda: [[1]]) == [[1]]


def test_where_layouts_are_kept() -> None:
    """XDG Base Directory Specification: $XDG_CACHE_HOME if absolute, else $HOME/.cache."""
    assert own_folder({"XDG_CACHE_HOME": "/x", "HOME": "/h"}) == Path("/x/presscloth/layouts")
    assert own_folder({"XDG_CACHE_HOME": "x", "HOME": "/h"}) == Path("/h/.cache/presscloth/layouts")
    assert own_folder({"PRESSCLOTH_CACHE": "here", "HOME": "/h"}) == Path("here")
    assert own_folder({"PRESSCLOTH_CACHE": "", "HOME": "/h"}) is None
    assert own_folder({}) is None
