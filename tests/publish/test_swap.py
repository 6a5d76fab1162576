"""The swap: at any moment the site is the old one or the new one, whole."""

import fcntl
import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from presscloth.publish import swap
from presscloth.publish.swap import MARK, PublishRefused, put_in_place, staged

ROOT = Path(__file__).resolve().parents[2]
FILES = 60


def write(site: Path, words: str, files: int = FILES) -> None:
    with staged(site) as folder:
        for number in range(files):
            (folder / f"{number}.txt").write_text(words, encoding="utf-8")


def held(site: Path) -> set[str]:
    return {file.read_text(encoding="utf-8") for file in site.glob("*.txt")}


def leftovers(site: Path) -> list[str]:
    return [each.name for each in site.parent.iterdir() if each != site and each.is_dir()]


def test_a_first_site_and_the_next(tmp_path):
    site = tmp_path / "deep" / "site"
    write(site, "one")
    assert held(site) == {"one"}
    write(site, "two")
    assert held(site) == {"two"}
    assert leftovers(site) == []


def test_a_block_that_fails_changes_nothing(tmp_path):
    site = tmp_path / "site"
    write(site, "one")
    with pytest.raises(ZeroDivisionError), staged(site) as folder:
        (folder / "half.txt").write_text("half")
        raise ZeroDivisionError
    assert held(site) == {"one"}
    assert leftovers(site) == []


def test_what_is_not_ours_is_not_replaced(tmp_path):
    site = tmp_path / "photographs"
    site.mkdir()
    (site / "summer.jpg").write_bytes(b"dear")
    with pytest.raises(PublishRefused, match="photographs holds files that presscloth did not write"):
        write(site, "one")
    assert [each.name for each in site.iterdir()] == ["summer.jpg"]


def test_an_empty_folder_may_become_the_site(tmp_path):
    (tmp_path / "site").mkdir()
    write(tmp_path / "site", "one")
    assert held(tmp_path / "site") == {"one"}
    assert (tmp_path / "site" / MARK).is_file()


def test_the_target_of_a_link_is_replaced_and_not_the_link(tmp_path):
    (tmp_path / "real").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "real")
    write(tmp_path / "link", "one")
    assert (tmp_path / "link").is_symlink()
    assert held(tmp_path / "real") == {"one"}


def test_only_one_run_at_a_time(tmp_path):
    site = tmp_path / "site"
    with open(tmp_path / ".staging-site.lock", "w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        with pytest.raises(PublishRefused, match="another run of presscloth"):
            write(site, "one")
    write(site, "two")
    assert held(site) == {"two"}


def test_what_a_killed_run_left_is_cleared_up(tmp_path):
    site = tmp_path / "site"
    write(site, "one")
    for left in (".staging-site-new-99", ".staging-site-old"):
        (tmp_path / left / "deep").mkdir(parents=True)
    (tmp_path / ".staging-other-new-1").mkdir()
    write(site, "two")
    assert held(site) == {"two"}
    assert leftovers(site) == [".staging-other-new-1"], "another site's staging is another's"


def test_a_run_that_died_between_two_renames_is_mended(tmp_path):
    site = tmp_path / "site"
    write(site, "one")
    site.rename(tmp_path / ".staging-site-old")
    with pytest.raises(ZeroDivisionError), staged(site):
        raise ZeroDivisionError
    assert held(site) == {"one"}


def test_without_an_exchange_two_renames_do(tmp_path, monkeypatch):
    monkeypatch.setattr(swap, "_exchange", lambda one, other: False)
    site = tmp_path / "site"
    write(site, "one")
    write(site, "two")
    assert held(site) == {"two"}
    assert leftovers(site) == []


@pytest.mark.skipif(sys.platform != "linux", reason="renameat2 is Linux's")
def test_two_folders_swap_at_once(tmp_path):
    one, other = tmp_path / "one", tmp_path / "other"
    for folder in (one, other):
        folder.mkdir()
        (folder / folder.name).touch()
    assert swap._exchange(one, other) is True
    assert (one / "other").exists() and (other / "one").exists()
    with pytest.raises(OSError, match="No such file"):
        swap._exchange(one, tmp_path / "missing")


def test_the_new_one_becomes_the_old_one(tmp_path):
    new, site = tmp_path / "new", tmp_path / "site"
    for folder in (new, site):
        folder.mkdir()
        (folder / f"{folder.name}.txt").touch()
    put_in_place(new, site)
    assert (site / "new.txt").exists() and (new / "site.txt").exists()


RUN = f"""
import sys
sys.path[:0] = [{str(ROOT / "compiler")!r}, {str(ROOT / "tests")!r}]
from pathlib import Path
from publish.test_swap import write
site, number = Path(sys.argv[1]), 0
print("ready", flush=True)
while True:
    number += 1
    write(site, f"run {{number}} of {{sys.argv[2]}}", 30)
"""


def test_killed_at_any_moment_the_site_is_whole(tmp_path):
    """A child writes one site after another and is killed; every file of the site says the same."""
    site = tmp_path / "site"
    write(site, "first", 30)
    began = time.perf_counter()
    write(site, "first", 30)
    takes = time.perf_counter() - began
    chance = random.Random(7)
    seen = set()
    for turn in range(20):
        child = subprocess.Popen(
            [sys.executable, "-c", RUN, str(site), str(turn)], stdout=subprocess.PIPE, text=True
        )
        assert child.stdout is not None and child.stdout.readline() == "ready\n"
        time.sleep(takes * chance.uniform(0, 4))
        os.kill(child.pid, signal.SIGKILL)
        child.wait()
        child.stdout.close()
        assert len(list(site.glob("*.txt"))) == 30
        assert len(held(site)) == 1
        seen |= held(site)
    assert len(seen) > 5, "the children did write"
    write(site, "last", 30)
    assert held(site) == {"last"}
    assert leftovers(site) == []
