"""How the command line behaves towards terminals, pipes, faults and whoever waits for it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from running import WRONG, Run, Write, surroundings

from presscloth import cli, commands


def on_a_terminal(folder: Path, *arguments: str, **more: str) -> tuple[str, str]:
    """What standard output and standard error get when both are terminals."""
    pty = pytest.importorskip("pty")
    texts = []
    ends = [pty.openpty(), pty.openpty()]
    process = subprocess.Popen(
        [sys.executable, "-m", "presscloth", *arguments],
        cwd=folder,
        env=surroundings(**{"TERM": "xterm", **more}),
        stdout=ends[0][1],
        stderr=ends[1][1],
    )
    for _, theirs in ends:
        os.close(theirs)
    for ours, _ in ends:
        texts.append(_read(ours).decode("utf-8"))
        os.close(ours)
    process.wait(60)
    return texts[0], texts[1]


def _read(ours: int) -> bytes:
    read = b""
    while True:
        try:
            part = os.read(ours, 65536)
        except OSError:  # how a terminal says that nobody writes to it any more
            return read
        if not part:
            return read
        read += part


def test_a_terminal_gets_colour_and_a_progress_bar(folder: Path, write: Write):
    write("wrong", WRONG)
    out, err = on_a_terminal(folder, "check")
    assert "\x1b[1;31merror\x1b[0m" in out
    assert "[" + "." * 24 + "] 0/1 recipes/wrong/recipe.md" in err
    assert err.endswith("\r\x1b[Kchecked 1 recipe: 1 error\r\n")


@pytest.mark.parametrize("more", [{"NO_COLOR": "1"}, {"TERM": "dumb"}])
def test_colour_can_be_refused(folder: Path, write: Write, more: dict[str, str]):
    write("wrong", WRONG)
    out, _ = on_a_terminal(folder, "check", **more)
    assert "error: pair disagrees" in out
    assert "\x1b" not in out


def test_a_pipe_gets_neither_colour_nor_a_bar(run: Run, write: Write):
    write("wrong", WRONG)
    answer = run("check")
    assert "\x1b" not in answer.out + answer.err
    assert "0/1" not in answer.err


@pytest.mark.parametrize("arguments", [("check",), ("why",), ("measures",)])
def test_a_reader_who_leaves_is_no_fault(folder: Path, write: Write, arguments: tuple[str, ...]):
    write("wrong", WRONG)
    ours, theirs = os.pipe()
    os.close(ours)
    done = subprocess.run(
        [sys.executable, "-m", "presscloth", *arguments],
        cwd=folder,
        env=surroundings(),
        stdout=theirs,
        stderr=subprocess.PIPE,
        check=False,
        timeout=60,
    )
    os.close(theirs)
    assert b"Traceback" not in done.stderr
    assert b"BrokenPipe" not in done.stderr
    assert done.returncode == (0 if arguments == ("why",) else 1)


def test_a_terminal_without_the_letters_stops_nothing(run: Run, write: Write):
    write("wrong", "## Measures\n- größe = 7.5 cm (2 in)\n- 帯 = 4 größe\n")
    assert "gr\\xf6\\xdfe" in run("check", PYTHONIOENCODING="ascii", PYTHONUTF8="0").out
    answer = run("check", "--format", "json", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert "größe" in json.loads(answer.out)[1]["message"]


def fails(monkeypatch: pytest.MonkeyPatch, fault: BaseException) -> None:
    def run(options: object) -> int:
        raise fault

    monkeypatch.setattr(commands, "run", run)


def test_a_fault_is_told_in_short(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]):
    monkeypatch.delenv("PRESSCLOTH_DEBUG", raising=False)
    fails(monkeypatch, ValueError("/home/somebody/recipes"))
    assert cli.main(["check"]) == 3
    said = capsys.readouterr().err
    assert "the program failed (ValueError in presscloth.cli, line " in said
    assert "PRESSCLOTH_DEBUG=1" in said
    assert "Traceback" not in said
    assert "/home/somebody" not in said


def test_a_fault_is_told_whole_when_asked(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv("PRESSCLOTH_DEBUG", "1")
    fails(monkeypatch, ValueError("seam"))
    with pytest.raises(ValueError, match="seam"):
        cli.main(["check"])


@pytest.mark.parametrize("limit", [RecursionError(), MemoryError()])
def test_a_limit_is_told_as_one(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], limit: Exception
):
    monkeypatch.delenv("PRESSCLOTH_DEBUG", raising=False)
    fails(monkeypatch, limit)
    assert cli.main(["check"]) == 3
    assert "went beyond what this machine can hold" in capsys.readouterr().err


def test_an_interrupt_gives_130(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]):
    fails(monkeypatch, KeyboardInterrupt())
    assert cli.main(["compile"]) == 130
    assert capsys.readouterr().err == "presscloth: interrupted\n"


LOADED = """\
import sys
from presscloth.cli import main
try:
    main({arguments})
except SystemExit:
    pass
print("loaded:", *sys.modules, file=sys.stderr)
"""


def loaded(folder: Path, *arguments: str) -> set[str]:
    """The modules that are there once a command has been carried out."""
    done = subprocess.run(
        [sys.executable, "-c", LOADED.format(arguments=list(arguments))],
        cwd=folder,
        env=surroundings(),
        capture_output=True,
        text=True,
        check=True,
    )
    return set(done.stderr.rpartition("loaded:")[2].split())


def test_help_imports_nothing_but_what_reads_the_line(folder: Path):
    modules = loaded(folder, "--help")
    ours = {name for name in modules if name.startswith("presscloth")}
    assert ours == {"presscloth", "presscloth.cli"}
    heavy = {"dataclasses", "inspect", "typing", "pathlib", "shutil", "json", "pint", "yaml", "weasyprint"}
    assert not modules & heavy


def test_check_imports_nothing_that_only_printing_needs(folder: Path, write: Write):
    write("wrong", WRONG)
    modules = loaded(folder, "check")
    assert "presscloth.pipeline" in modules
    assert not modules & {"weasyprint", "pikepdf", "pydyf", "fontTools", "jinja2", "PIL"}


def test_why_imports_every_room_and_no_library_that_draws_text(folder: Path):
    assert not loaded(folder, "why") & {"weasyprint"}
