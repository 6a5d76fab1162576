"""A theme: templates, style sheets, fonts and the look of drawings, found by its name."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

from presscloth.printing.look import Face, Look, ThemeError, read_look
from presscloth.printing.shipped import themes_folder

if TYPE_CHECKING:
    from jinja2 import Environment

DEFAULT = "plain-seam"


@dataclass(frozen=True, slots=True, eq=False)
class Theme:
    """A theme by name. A file that it does not have is taken from the default theme."""

    name: str
    folders: tuple[Path, ...]
    look: Look

    def file(self, name: str) -> Path:
        for folder in self.folders:
            if (folder / name).is_file():
                return folder / name
        raise ThemeError(f"the theme {self.name} has no file {name}")

    def text(self, name: str) -> str:
        return self.file(name).read_text(encoding="utf-8")


def theme_names(own: Path | None = None) -> tuple[str, ...]:
    """The themes that there are: a folder with a `look.yaml`, in `own` or among those shipped."""
    roots = [themes_folder()] if own is None else [own, themes_folder()]
    names = {entry.parent.name for root in roots for entry in root.glob("*/look.yaml")}
    return tuple(sorted(names))


@cache
def open_theme(name: str = DEFAULT, own: Path | None = None) -> Theme:
    """Find a theme, first in `own`, then among those shipped. Raises `ThemeError`."""
    if name not in theme_names(own):
        raise ThemeError(f"there is no theme {name}; there are {', '.join(theme_names(own))}")
    roots = [themes_folder()] if own is None else [own, themes_folder()]
    folders = [root / called for called in (name, DEFAULT) for root in roots]
    held = tuple(dict.fromkeys(folder for folder in folders if folder.is_dir()))
    look_file = next(folder / "look.yaml" for folder in held if (folder / "look.yaml").is_file())
    return Theme(name, held, read_look(look_file))


def font_file(face: Face, italic: bool = False) -> Path:
    """The file of a face, in the package that carries it."""
    name = face.italic if italic else face.upright
    if name is None:
        raise ThemeError(f"{face.family} has no italic")
    try:
        found = Path(str(files(face.package) / "files" / name))
    except ModuleNotFoundError as error:
        raise ThemeError(
            f"the package {face.package} with the font {face.family} is not installed"
        ) from error
    if not found.is_file():
        raise ThemeError(f"the package {face.package} has no file {name}")
    return found


def font_faces(look: Look, addresses: Mapping[tuple[str, bool], str], more: str = "") -> str:
    """`@font-face` rules for both families; `addresses` by family and whether it is the italic.

    `more` is put into each rule (what a browser may be told and WeasyPrint does not know).
    """
    rules = []
    for face in look.faces:
        for italic in (False, True) if face.italic else (False,):
            style = "italic" if italic else "normal"
            source = f'src:url("{addresses[face.family, italic]}")'
            rules.append(f'@font-face{{font-family:"{face.family}";font-style:{style};{more}{source}}}\n')
    return "".join(rules)


@cache
def environment(theme: Theme) -> Environment:
    """The templates of a theme. Everything is escaped, and a missing name is an error."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    return Environment(
        loader=FileSystemLoader([folder / "templates" for folder in theme.folders]),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
