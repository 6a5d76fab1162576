"""Bring the catalogues of words up to date with the code and the templates.

Messages are the literals in calls of `say`, `say_as` and `many`. Those in Python are read from the syntax
tree, so that they are found within f-strings too; those in templates by Jinja's own extractor for Babel.
Translations that are there stay; what is no longer said is dropped.
"""

from __future__ import annotations

import ast
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po
from jinja2.ext import babel_extract

from presscloth.printing.shipped import themes_folder
from presscloth.tongue.tongue import WORDS

PACKAGE = Path(__file__).parents[1]
SPEAKERS = ("say", "say_as", "many")
PASSING_ON = ("tongue/speech.py", "tongue/tongue.py", "printing/words.py")
"""Files that hand messages on and say none themselves, apart from those they have as literals."""


@dataclass(frozen=True, slots=True)
class Message:
    """A message with its context, its plural where it has one, and the file that says it."""

    text: str
    context: str
    plural: str
    file: str

    @property
    def id(self) -> str | tuple[str, str]:
        return (self.text, self.plural) if self.plural else self.text


class NotALiteral(Exception):
    """A message is put together where it is said, so that no catalogue can know it."""


def messages() -> tuple[Message, ...]:
    """Every message that is said, by file, in the order of the files. Raises `NotALiteral`."""
    return (*_in_python(), *_in_templates())


def _in_python() -> Iterator[Message]:
    for file in sorted(PACKAGE.rglob("*.py")):
        name = file.relative_to(PACKAGE).as_posix()
        if name.startswith("dev/"):
            continue
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and _called(node.func) in SPEAKERS:
                yield from _said(node, name)


def _called(func: ast.expr) -> str:
    match func:
        case ast.Name(id=name) | ast.Attribute(attr=name):
            return name
        case _:
            return ""


def _said(call: ast.Call, file: str) -> Iterator[Message]:
    literals = [arg.value if isinstance(arg, ast.Constant) else None for arg in call.args]
    texts = [text for text in literals if isinstance(text, str)]
    wanted = {"say": 1, "say_as": 2, "many": 2}[_called(call.func)]
    if len(texts) < wanted:
        if file not in PASSING_ON:
            raise NotALiteral(f"{file}, line {call.lineno}")
        return
    match _called(call.func):
        case "say":
            yield Message(texts[0], "", "", file)
        case "say_as":
            yield Message(texts[1], texts[0], "", file)
        case _:
            yield Message(texts[0], "", texts[1], file)


def _in_templates() -> Iterator[Message]:
    root = themes_folder()
    for file in sorted(root.glob("*/templates/*.html")):
        found = babel_extract(
            io.BytesIO(file.read_bytes()), SPEAKERS, (), {"trim_blocks": "true", "lstrip_blocks": "true"}
        )
        name = f"themes/{file.relative_to(root).as_posix()}"
        for line, speaker, said, _ in found:
            texts = [
                text for text in ((said,) if isinstance(said, str) else said or ()) if isinstance(text, str)
            ]
            if len(texts) < {"say": 1, "say_as": 2, "many": 2}[speaker]:
                raise NotALiteral(f"{name}, line {line}")
            match speaker:
                case "say":
                    yield Message(texts[0], "", "", name)
                case "say_as":
                    yield Message(texts[1], texts[0], "", name)
                case _:
                    yield Message(texts[0], "", texts[1], name)


def template() -> Catalog:
    """All messages without a translation."""
    catalog = Catalog(project="presscloth", header_comment="")
    for message in messages():
        catalog.add(message.id, locations=[(message.file, 0)], context=message.context or None)
    return catalog


def catalogue_files() -> tuple[Path, ...]:
    return tuple(sorted(WORDS.glob("*.po")))


def read(file: Path) -> Catalog:
    with file.open("rb") as held:
        return read_po(held, locale=file.stem.replace("-", "_"))


def update() -> tuple[str, ...]:
    """Write every catalogue with all messages; returns what each still lacks, in words."""
    told = []
    for file in catalogue_files():
        catalog = read(file)
        catalog.update(template(), no_fuzzy_matching=True)
        written = io.BytesIO()
        write_po(written, catalog, width=100, ignore_obsolete=True, include_lineno=False, omit_header=False)
        file.write_bytes(_steady(written.getvalue()))
        lacking = [message.id for message in catalog if message.id and not _whole(message.string)]
        told.append(f"{file.name}: {len(catalog)} messages, {len(lacking)} without a translation")
    return tuple(told)


def main(_: Sequence[str]) -> int:
    for line in update():
        print(line)
    return 0


def _whole(said: object) -> bool:
    return all(said) if isinstance(said, tuple | list) else bool(said)


MOVING = (
    b'"POT-Creation-Date:',
    b'"PO-Revision-Date:',
    b'"Last-Translator:',
    b'"Generated-By:',
    b'"Report-Msgid-Bugs-To:',
    b'"Language-Team:',
)
"""Lines of a catalogue's head that name a day or a program."""


def _steady(content: bytes) -> bytes:
    """Without those lines, so that a file changes with its words alone."""
    return b"\n".join(line for line in content.split(b"\n") if not line.startswith(MOVING))
