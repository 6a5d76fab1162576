"""What the command line was given that ended in a fault of the program."""

from __future__ import annotations

import errno
from pathlib import Path

import pytest

from presscloth import commands
from presscloth.cli import FAILED, main
from presscloth.dev import scaffold


def test_a_folder_that_is_not_there_was_called_a_fault_of_the_program(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    recipe = scaffold.write("## Steps\n1. Hem it.\n", tmp_path)
    nowhere = tmp_path / "nowhere" / "sheet.txt"
    assert main(["cues", str(recipe), "--out", str(nowhere)]) == FAILED
    said = capsys.readouterr().err
    assert f"`{nowhere}` cannot be read or written: no such file or directory" in said
    assert "hint: look whether its folder is there" in said and "fault" not in said


def test_a_full_disk_was_called_one_too(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def full(_: object) -> int:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(commands, "run", full)
    assert main(["check"]) == FAILED
    assert capsys.readouterr().err.startswith("presscloth: no space left on device\n  hint: look whether")
