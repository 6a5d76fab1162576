"""A theme: templates, style sheets, fonts and the look of drawings, found by its name."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from presscloth.frozen import dataclass
from presscloth.printing.look import Look, ThemeError, read_look
from presscloth.printing.shipped import themes_folder
from presscloth.printing.words import WORDS

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


@cache
def environment(theme: Theme) -> Environment:
    """The templates of a theme. Everything is escaped, and a missing name is an error."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    made = Environment(
        loader=FileSystemLoader([folder / "templates" for folder in theme.folders]),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    made.globals |= WORDS
    return made
