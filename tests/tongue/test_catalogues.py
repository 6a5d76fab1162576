"""Every word of a handout stands in every catalogue, whole, and with the same places for values."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest
from babel.messages.catalog import Message

from presscloth.dev import words

FILES = words.catalogue_files()
PLACE = re.compile(r"\{(\w+)\}")
SAID = {(message.context, message.text) for message in words.messages()}


def own(file: Path) -> list[Message]:
    return [message for message in words.read(file) if message.id]


def texts(of: object) -> tuple[str, ...]:
    return (of,) if isinstance(of, str) else tuple(of)  # type: ignore[arg-type]


def key(message: Message) -> tuple[str, str]:
    return message.context or "", texts(message.id)[0]


def test_there_is_german():
    assert [file.stem for file in FILES] == ["de"]


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_no_message_is_missing_and_none_is_left_over(file: Path):
    held = {key(message) for message in own(file) if all(texts(message.string))}
    assert SAID - held == set(), "run `python -m presscloth.dev words`, and translate what is empty"
    assert {key(message) for message in own(file)} - SAID == set()
    assert len(SAID) > 250


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_nothing_is_fuzzy(file: Path):
    assert [key(message) for message in own(file) if message.fuzzy] == []


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_places_for_values_are_the_same(file: Path):
    for message in own(file):
        wanted = set(PLACE.findall(" ".join(texts(message.id))))
        for said in texts(message.string):
            found = PLACE.findall(said)
            assert set(found) == wanted, said
            assert len(found) == len(set(found)) or len(found) == len(PLACE.findall(texts(message.id)[0])), (
                said
            )


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_sentence_stays_a_sentence(file: Path):
    """Both end alike, and begin alike where the English begins small: labels are put together with others."""
    for message in own(file):
        for english, said in zip(texts(message.id), texts(message.string), strict=True):
            assert said == said.strip()
            assert (english[-1] in ".:?!") == (said[-1] in ".:?!"), (english, said)


def test_a_message_that_is_put_together_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    (tmp_path / "wrong.py").write_text('def f(x):\n    return say("a" + x)\n')
    monkeypatch.setattr(words, "PACKAGE", tmp_path)
    with pytest.raises(words.NotALiteral, match=r"wrong\.py, line 2"):
        words.messages()


def test_messages_in_formatted_texts_and_with_a_context_are_found(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    text = """x = f"{say('Inside')} {many('{n} a', '{n} b', 2)}"\ny = say_as("column", "Cut")\n"""
    (tmp_path / "right.py").write_text(text)
    monkeypatch.setattr(words, "PACKAGE", tmp_path)
    found = [(m.context, m.text, m.plural) for m in words.messages() if m.file == "right.py"]
    assert sorted(found) == [("", "Inside", ""), ("", "{n} a", "{n} b"), ("column", "Cut", "")]


def test_english_and_a_check_load_no_babel():
    code = (
        "import sys; from presscloth.cli import main; main(['check', 'recipes/slipway-apron']); "
        "assert not [m for m in sys.modules if m.split('.')[0] in ('babel', 'jinja2')]; "
        "assert not [m for m in sys.modules if m.startswith('presscloth.translation')]"
    )
    root = Path(__file__).parents[2]
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=root, env={"PYTHONPATH": "compiler"}, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stderr
