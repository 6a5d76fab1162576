"""The folder of kept layouts does not grow without end, and loses nothing that was just used."""

from __future__ import annotations

import os
import time
from pathlib import Path

from presscloth.cutting.keeping import kept
from presscloth.cutting.tidying import DAY, tidy, used


def put(folder: Path, name: str, days: float, size: int = 10) -> Path:
    file = folder / name[:2] / name[2:]
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(b"x" * size)
    when = time.time() - days * DAY
    os.utime(file, (when, when))
    return file


def names(folder: Path) -> set[str]:
    return {path.parent.name + path.name for path in folder.rglob("*") if path.is_file()}


def test_what_was_used_longest_ago_goes_first(tmp_path: Path) -> None:
    for n in range(6):
        put(tmp_path, f"a{n}rest", days=2 + n)
    tidy(tmp_path, most_files=4)
    assert names(tmp_path) == {f"a{n}rest" for n in range(4)}


def test_large_files_count_by_their_size(tmp_path: Path) -> None:
    for n in range(4):
        put(tmp_path, f"b{n}rest", days=2 + n, size=100)
    tidy(tmp_path, most_bytes=250)
    assert names(tmp_path) == {"b0rest", "b1rest"}


def test_what_was_used_within_a_day_stays(tmp_path: Path) -> None:
    for n in range(5):
        put(tmp_path, f"c{n}rest", days=0.1 * n)
    old = put(tmp_path, "dead", days=3)
    tidy(tmp_path, most_files=2)
    assert len(names(tmp_path)) == 5 and not old.exists()


def test_using_a_file_keeps_it(tmp_path: Path) -> None:
    one, other = put(tmp_path, "e1rest", days=9), put(tmp_path, "e2rest", days=8)
    used(one)
    tidy(tmp_path, most_files=1)
    assert one.exists() and not other.exists()


def test_halves_that_a_dead_process_left_are_swept_up(tmp_path: Path) -> None:
    stale, fresh = put(tmp_path, "ab.new-1", days=2), put(tmp_path, "ab.new-2", days=0)
    other = put(tmp_path, "abrest", days=2)
    tidy(tmp_path)
    assert not stale.exists() and fresh.exists() and other.exists()


def test_other_peoples_files_are_let_be(tmp_path: Path) -> None:
    own = put(tmp_path, "some/notes", days=99)
    tidy(tmp_path, most_files=0)
    assert own.exists()
    tidy(tmp_path / "nowhere")


def test_an_answer_that_is_asked_for_again_counts_as_used(tmp_path: Path) -> None:
    assert kept(tmp_path, "question", lambda: [[1]]) == [[1]]
    (file,) = (path for path in tmp_path.rglob("*") if path.is_file())
    when = time.time() - 5 * DAY
    os.utime(file, (when, when))
    assert kept(tmp_path, "question", lambda: None) == [[1]]
    assert time.time() - file.stat().st_mtime < DAY
