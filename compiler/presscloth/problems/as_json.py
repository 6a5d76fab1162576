"""Problems as JSON: a list with one object for each, to be read by programs."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import TypedDict

from presscloth.problems.places import place
from presscloth.problems.report import Reported, Variant, in_one_row
from presscloth.source import Span


class PlaceJson(TypedDict):
    """Lines and columns count from 1, columns in characters; the end is exclusive."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int


class LabelJson(PlaceJson):
    message: str


class ProblemJson(PlaceJson):
    """`sizes` and `systems` are empty where a problem holds everywhere."""

    problem: str
    severity: str
    message: str
    hint: str
    sizes: list[str]
    systems: list[str]
    labels: list[LabelJson]


def as_json(reported: Sequence[Reported]) -> str:
    """The problems as a JSON list.

    What holds elsewhere with other values is an object of its own; so is what follows from another,
    which comes right after it and has its place as a label.
    """
    objects = [_object(variant) for variant in in_one_row(reported)]
    return json.dumps(objects, ensure_ascii=False, indent=2) + "\n"


def _object(variant: Variant) -> ProblemJson:
    problem = variant.problem
    return {
        "problem": problem.slug(),
        "severity": problem.severity.value,
        "message": problem.message(),
        "hint": problem.hint(),
        **_place(problem.span),
        "sizes": list(variant.sizes),
        "systems": list(variant.systems),
        "labels": [{"message": label.text, **_place(label.span)} for label in problem.labels],
    }


def _place(span: Span) -> PlaceJson:
    where = place(span)
    return {
        "file": where.file,
        "line": where.line,
        "column": where.column,
        "end_line": where.end_line,
        "end_column": where.end_column,
    }
