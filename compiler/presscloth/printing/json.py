"""One size of a recipe as JSON: the whole tree, each node named, in the order of the page.

A node is an object whose `is` names its kind (`Amount`, `StepText`), followed by its fields in the
order of the tree; what may be one of several kinds is told apart by it. A picture's place on the
machine is left out, its address in the site stays.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass
from enum import Enum
from pathlib import Path

from presscloth.handout.tree import Handout

Json = str | int | float | bool | None | Sequence["Json"] | Mapping[str, "Json"]


def as_json(handout: Handout) -> str:
    """Write a handout as JSON text that ends in a newline."""
    return json.dumps(_tree(handout), ensure_ascii=False, indent=2) + "\n"


def _tree(value: object) -> Json:
    if isinstance(value, Enum):
        return str(value.value)
    if value is None or isinstance(value, str | int | float):
        return value
    if isinstance(value, tuple):
        return [_tree(each) for each in value]
    if is_dataclass(value):
        held = {field.name: getattr(value, field.name) for field in fields(value)}
        kept = {name: _tree(each) for name, each in held.items() if not isinstance(each, Path)}
        return {"is": type(value).__name__, **kept}
    raise TypeError(f"a handout holds no {type(value).__name__}")
