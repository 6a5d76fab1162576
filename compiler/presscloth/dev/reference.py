"""Transform the specification, the verbs and the problems into the pages of the reference.

The pages are shipped with the compiler; nobody writes in them by hand.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from presscloth.every_problem import every
from presscloth.printing.shipped import CHECKOUT, PACKAGE
from presscloth.problems import Severity
from presscloth.problems.pages import Example, Page, page
from presscloth.recipe.patterns import spoken
from presscloth.sewing.verbs import VERBS, Verb

FOLDER = PACKAGE / "reference"
SPECIFICATION = CHECKOUT / "tests" / "spec"

WRITTEN = "<!-- Written by `python -m presscloth.dev reference`. -->"

SEVERITIES = {
    Severity.ERROR: ("Errors", "A handout with an error would be wrong, and is not written."),
    Severity.WARNING: ("Warnings", "What a warning questions is right, but perhaps not meant."),
}


def pages() -> Mapping[str, str]:
    """The text of every page by its file's name; of the language where its specification lies at hand."""
    found = {
        "verbs.md": _text(_verbs(VERBS)),
        "problems.md": _text(_problems([page(kind) for kind in every()])),
    }
    chapters = sorted(SPECIFICATION.glob("*.md"))
    return {"language.md": language(chapters), **found} if chapters else found


def language(chapters: Sequence[Path]) -> str:
    """The specification's chapters in the order of their files, each a level lower."""
    parts = ["# The recipe language", WRITTEN]
    parts += [_lower(chapter.read_text("utf-8").strip()) for chapter in chapters]
    return _text(parts)


def _lower(chapter: str) -> str:
    """Headings one level lower; a `#` inside a fence is none."""
    lines, fence = [], ""
    for line in chapter.splitlines():
        mark = re.match(r" {0,3}(`{3,}|~{3,})", line)
        if mark and not fence:
            fence = mark[1]
        elif mark and mark[1].startswith(fence) and line.strip() == mark[1]:
            fence = ""
        elif not fence and re.match(r"#{1,5} ", line):
            line = f"#{line}"
        lines.append(line)
    return "\n".join(lines)


def _verbs(verbs: Sequence[Verb]) -> Iterator[str]:
    yield "# Verbs"
    yield WRITTEN
    for verb in verbs:
        yield f"## {verb.name}"
        for told, patterns in _by_meaning(verb).items():
            yield "\n".join(f"- `{spoken(pattern)}`" for pattern in patterns)
            yield told


def _by_meaning(verb: Verb) -> Mapping[str, Sequence[str]]:
    """The patterns of a verb that say the same, under what they say."""
    meanings: dict[str, list[str]] = {}
    for pattern, told in verb.reference.items():
        meanings.setdefault(told, []).append(pattern)
    return meanings


def _problems(found: Sequence[Page]) -> Iterator[str]:
    yield "# Problems"
    yield WRITTEN
    for severity, (heading, about) in SEVERITIES.items():
        yield f"## {heading}"
        yield about
        for one in found:
            if one.severity is severity:
                yield from _problem(one)


def _problem(of: Page) -> Iterator[str]:
    yield f"### {of.name}"
    yield of.what
    yield from of.why
    yield from _example("Fails:", of.fails)
    yield from _example("Passes:", of.passes)


def _example(heading: str, example: Example | None) -> Iterator[str]:
    if example is None:
        return
    if example.runs:
        yield heading
        yield f"~~~~markdown\n{example.text}~~~~"
    else:
        yield f"{heading} {example.text}"


def _text(parts: Sequence[str] | Iterator[str]) -> str:
    return "\n\n".join(parts) + "\n"


def main(arguments: Sequence[str]) -> int:
    """Write the pages, and say which of them changed."""
    FOLDER.mkdir(exist_ok=True)
    for name, text in pages().items():
        file = FOLDER / name
        if not file.is_file() or file.read_text("utf-8") != text:
            file.write_text(text, "utf-8")
            print(f"wrote {file.relative_to(CHECKOUT).as_posix()}")
    return 0
