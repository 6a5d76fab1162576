"""The look of a theme's drawings and its fonts, read from `look.yaml`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from presscloth.drawing.tree import Ink


class ThemeError(Exception):
    """A theme that cannot be used; the words say which file of it and why."""


@dataclass(frozen=True, slots=True)
class Face:
    """A family: the package that carries it, its files, and what a browser may use instead."""

    family: str
    package: str
    upright: str
    italic: str | None
    instead: str


@dataclass(frozen=True, slots=True)
class InkLook:
    """How one ink is drawn: a line in mm (0: none) with its dashes, a filling, or a hatch.

    `hatch` is the distance between hatch lines in mm (0: not hatched).
    """

    colour: str
    line: float
    dash: tuple[float, ...]
    fill: str
    hatch: float


@dataclass(frozen=True, slots=True)
class Look:
    text: Face
    label: Face
    lettering: str
    inks: Mapping[Ink, InkLook]

    @property
    def faces(self) -> tuple[Face, Face]:
        return self.text, self.label


_INK_KEYS = {"colour", "line", "dash", "fill", "hatch"}
_FACE_KEYS = {"family", "package", "upright", "italic", "instead"}


def read_look(file: Path) -> Look:
    """Read `look.yaml`; every ink must have a look, and nothing may stand there that is not read."""
    import yaml

    try:
        read = yaml.safe_load(file.read_text(encoding="utf-8"))
    except (OSError, yaml.YAMLError) as error:
        raise ThemeError(f"{file.name} cannot be read: {error}") from error
    top = _mapping(file, "the file", read, {"text", "label", "lettering", "inks"})
    inks = _mapping(file, "inks", top.get("inks"), {ink.value for ink in Ink})
    missing = [ink.value for ink in Ink if ink.value not in inks]
    if missing:
        raise ThemeError(f"{file.name} does not say how these inks look: {', '.join(missing)}")
    return Look(
        text=_face(file, "text", top.get("text")),
        label=_face(file, "label", top.get("label")),
        lettering=_text(file, "lettering", top.get("lettering")),
        inks={ink: _ink(file, ink.value, inks[ink.value]) for ink in Ink},
    )


def _face(file: Path, name: str, read: object) -> Face:
    values = _mapping(file, name, read, _FACE_KEYS)
    italic = values.get("italic")
    return Face(
        family=_text(file, f"{name}: family", values.get("family")),
        package=_text(file, f"{name}: package", values.get("package")),
        upright=_text(file, f"{name}: upright", values.get("upright")),
        italic=None if italic is None else _text(file, f"{name}: italic", italic),
        instead=_text(file, f"{name}: instead", values.get("instead")),
    )


def _ink(file: Path, name: str, read: object) -> InkLook:
    values = _mapping(file, name, read, _INK_KEYS)
    dash = values.get("dash", [])
    if not isinstance(dash, list):
        raise ThemeError(f"{file.name}, {name}: dash is a list of lengths in mm")
    return InkLook(
        colour=_text(file, f"{name}: colour", values.get("colour")),
        line=_number(file, f"{name}: line", values.get("line", 0)),
        dash=tuple(_number(file, f"{name}: dash", length) for length in dash),
        fill=_text(file, f"{name}: fill", values.get("fill", "none")),
        hatch=_number(file, f"{name}: hatch", values.get("hatch", 0)),
    )


def _mapping(file: Path, name: str, read: object, keys: set[str]) -> dict[str, object]:
    if not isinstance(read, dict):
        raise ThemeError(f"{file.name}: {name} is missing or has no entries")
    values = {str(key): value for key, value in read.items()}
    for key in values:
        if key not in keys:
            raise ThemeError(
                f"{file.name}: {name} has no entry `{key}`; it may have {', '.join(sorted(keys))}"
            )
    return values


def _text(file: Path, name: str, read: object) -> str:
    if not isinstance(read, str):
        raise ThemeError(f"{file.name}: {name} must be a text")
    return read


def _number(file: Path, name: str, read: object) -> float:
    if isinstance(read, bool) or not isinstance(read, int | float) or read < 0:
        raise ThemeError(f"{file.name}: {name} must be a length in mm")
    return float(read)
