"""Transform a fragment into a whole recipe, so that an example need only show what it is about.

A fragment is a piece of a recipe: front matter, sections, or both. What it leaves out comes from the
smallest recipe there is, a square of cotton that is hemmed all round.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

FRONT = ("title: Plain Cloth", "release: 2027-01")

SEAM = "- seam = 1 cm (3/8 in)"

SECTIONS = {
    "Measures": SEAM,
    "Materials": """\
| Key | Material      | Form   | Width          | Sold by        |
|-----|---------------|--------|----------------|----------------|
| A   | Cotton fabric | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |""",
    "Pieces": """\
| Piece | From | Cut | Width         | Height        |
|-------|------|-----|---------------|---------------|
| cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |""",
    "Steps": """\
1. Press all four sides under, once and once again, and stitch.

   ```sew
   hem all of cloth by 1.2 cm (1/2 in) twice
   finish cloth
   ```""",
}

PICTURE = "cloth.png"
"""A picture that lies beside every completed recipe."""

_FRONT = re.compile(r"\A---\n(.*?)^---[ \t]*\n?", re.DOTALL | re.MULTILINE)
_HEADING = re.compile(r"^## +(.*?)[ \t]*$", re.MULTILINE)
_KEY = re.compile(r"^([A-Za-z][\w ]*):", re.MULTILINE)
_SEAM = re.compile(r"^\s*[-*+]\s+seam\s*=|^\|.*\|\s*seam\s*\|", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class _Fragment:
    """A fragment taken apart: lines of front matter, what stands before the sections, the sections."""

    front: str
    intro: str
    sections: tuple[tuple[str, str], ...]


def complete(fragment: str) -> str:
    """The whole recipe, its sections in the usual order, those of other names last."""
    given = _taken_apart(fragment)
    parts = ["---\n" + _front(given.front) + "---\n"]
    if given.intro:
        parts.append(given.intro + "\n")
    first = [(name, text) for name, text in given.sections if name == "Sizes"]
    usual = [part for name in SECTIONS for part in _section(name, given)]
    last = [(name, text) for name, text in given.sections if name not in ("Sizes", *SECTIONS)]
    parts += [f"## {name}\n\n{text}\n" for name, text in (*first, *usual, *last)]
    return "\n".join(parts)


def _taken_apart(fragment: str) -> _Fragment:
    text = fragment.strip("\n") + "\n"
    front = _FRONT.match(text)
    body = text[front.end() :] if front else text
    intro, *rest = _HEADING.split(body)
    sections = zip(rest[::2], rest[1::2], strict=True)
    return _Fragment(
        front=front[1] if front else "",
        intro=intro.strip("\n"),
        sections=tuple((name, text.strip("\n")) for name, text in sections),
    )


def _front(given: str) -> str:
    """The fragment's lines as they are, after those keys that it does not have."""
    keys = set(_KEY.findall(given))
    missing = [line for line in FRONT if line.partition(":")[0] not in keys]
    return "".join(f"{line}\n" for line in missing) + given


def _section(name: str, given: _Fragment) -> list[tuple[str, str]]:
    found = [(other, text) for other, text in given.sections if other == name]
    if not found:
        return [] if name == "Measures" and _defines_seam(given) else [(name, SECTIONS[name])]
    if name == "Measures" and not _defines_seam(given):
        _, text = found[0]
        found[0] = (name, f"{SEAM}\n{text}")
    return found


def _defines_seam(given: _Fragment) -> bool:
    """Whether a measure or a column of Sizes is called `seam`."""
    return any(name in ("Measures", "Sizes") and _SEAM.search(text) for name, text in given.sections)


def write(fragment: str, folder: Path) -> Path:
    """Write the completed recipe into a folder, and its picture beside it."""
    path = folder / "recipe.md"
    path.write_text(complete(fragment), "utf-8")
    (folder / PICTURE).write_bytes(_PNG)
    return path


_PNG = bytes.fromhex(
    "89504e470d0a1a0a0000000d49484452000000010000000108000000003a7e9b55"
    "0000000a4944415478da63f80f00010101001cb08c990000000049454e44ae426082"
)
"""One white point."""
