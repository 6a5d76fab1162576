"""Problems as SARIF 2.1.0, the open format in which checkers report to code hosts and editors.

Source: OASIS, Static Analysis Results Interchange Format (SARIF) Version 2.1.0.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from pathlib import Path
from urllib.parse import quote

from presscloth import __version__
from presscloth.problems.base import Label, Problem
from presscloth.problems.pages import Example, Page, page
from presscloth.problems.places import place
from presscloth.problems.report import Reported, Variant, in_one_row
from presscloth.source import Span

Json = str | int | Sequence["Json"] | dict[str, "Json"]

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"


def sarif(reported: Sequence[Reported]) -> str:
    """One run with a rule for each kind of problem that occurs. No path of the machine is in it."""
    variants = tuple(in_one_row(reported))
    kinds = tuple(sorted({type(variant.problem) for variant in variants}, key=lambda kind: kind.slug()))
    run: Json = {
        "tool": {
            "driver": {
                "name": "presscloth",
                "semanticVersion": __version__,
                "rules": [_rule(page(kind)) for kind in kinds],
            }
        },
        "columnKind": "unicodeCodePoints",
        "results": [_result(variant, kinds) for variant in variants],
    }
    log: Json = {"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}
    return json.dumps(log, ensure_ascii=False, indent=2) + "\n"


def _rule(of: Page) -> Json:
    return {
        "id": of.name,
        "shortDescription": {"text": of.what},
        "fullDescription": {"text": " ".join((of.what, *of.why))},
        "help": {"text": _help(of, fence=False), "markdown": _help(of, fence=True)},
        "defaultConfiguration": {"level": of.severity.value},
    }


def _help(of: Page, *, fence: bool) -> str:
    parts = [of.what, *of.why]
    for word, example in (("Fails", of.fails), ("Passes", of.passes)):
        if example is not None:
            parts.append(_example(word, example, fence))
    return "\n\n".join(parts)


def _example(word: str, example: Example, fence: bool) -> str:
    if not example.runs:
        return f"{word}: {example.text}"
    if fence:
        return f"{word}:\n\n~~~~markdown\n{example.text}~~~~"
    return f"{word}:\n\n" + "\n".join(f"    {line}".rstrip() for line in example.text.splitlines())


def _result(variant: Variant, kinds: Sequence[type[Problem]]) -> Json:
    problem = variant.problem
    return {
        "ruleId": problem.slug(),
        "ruleIndex": kinds.index(type(problem)),
        "level": problem.severity.value,
        "message": {"text": f"{problem.message()}. Hint: {problem.hint()}."},
        "locations": [{"physicalLocation": _location(problem.span)}],
        "relatedLocations": _related(problem.labels),
        "properties": {
            "hint": problem.hint(),
            "sizes": variant.sizes,
            "systems": variant.systems,
        },
    }


def _related(labels: Iterable[Label]) -> Json:
    return [
        {"id": number, "physicalLocation": _location(label.span), "message": {"text": label.text}}
        for number, label in enumerate(labels, start=1)
    ]


def _location(span: Span) -> Json:
    where = place(span)
    return {
        "artifactLocation": {"uri": file_uri(where.file)},
        "region": {
            "startLine": where.line,
            "startColumn": where.column,
            "endLine": where.end_line,
            "endColumn": where.end_column,
        },
    }


def file_uri(name: str) -> str:
    """A file's address relative to the current folder; of a file elsewhere, its folder and its name."""
    path = Path(name)
    if path.is_absolute() or ".." in path.parts:
        whole = path.resolve()
        here = Path.cwd().resolve()
        path = whole.relative_to(here) if whole.is_relative_to(here) else Path(*whole.parts[-2:])
    return quote(path.as_posix())
