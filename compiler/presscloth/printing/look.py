"""The look of a theme's drawings and its fonts, read from `look.yaml`."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from presscloth.drawing.tree import Ink
from presscloth.frozen import dataclass


class ThemeError(Exception):
    """A theme that cannot be used; the words say which file of it and why."""


@dataclass(frozen=True, slots=True)
class Cut:
    """One cut of a family, taken from a variable font of a package: its file and a place on its axes.

    `axes` pairs an axis (`wght`, `opsz`) with the place on it.
    """

    family: str
    weight: int
    italic: bool
    package: str
    file: str
    axes: tuple[tuple[str, float], ...]


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
class LetteringLook:
    """The words in drawings: their family, what stands in where it is missing, and their colour.

    `least` is the size in mm that none may be smaller than on paper (0: as small as the drawing makes it).
    """

    family: str
    instead: str
    colour: str
    least: float


@dataclass(frozen=True, slots=True)
class DrawingLook:
    """How much drawings are enlarged, and how wide, in mm, one may become: beside text, by itself.

    `tall` is how high one may become in mm (0: as high as it is). `beside` is how wide, in mm, the
    drawings of a step may be to stand beside its words on paper (0: they stand below them).
    """

    scale: float
    in_text: float
    alone: float
    tall: float
    beside: float = 0.0


@dataclass(frozen=True, slots=True)
class CardLook:
    """A recipe's preview picture: its colours, and the families of its title and its other words."""

    ground: str
    paper: str
    ink: str
    soft: str
    accent: str
    title: str
    text: str


@dataclass(frozen=True, slots=True)
class Look:
    fonts: tuple[Cut, ...]
    drawings: DrawingLook
    lettering: LetteringLook
    card: CardLook
    inks: Mapping[Ink, InkLook]


def read_look(file: Path) -> Look:
    """Read `look.yaml`; every ink must have a look, and nothing may stand there that is not read."""
    import yaml

    try:
        read = yaml.safe_load(file.read_text(encoding="utf-8"))
    except (OSError, yaml.YAMLError) as error:
        raise ThemeError(f"{file.name} cannot be read: {error}") from error
    top = _Part(file.name, "the file", read, ("fonts", "drawings", "lettering", "card", "inks"))
    inks = _Part(file.name, "inks", top.value("inks"), tuple(ink.value for ink in Ink))
    fonts = top.value("fonts")
    if not isinstance(fonts, list) or not fonts:
        raise ThemeError(f"{file.name}: fonts must be a list")
    cuts = tuple(_cut(file.name, font) for font in fonts)
    lettering = _lettering(file.name, top.value("lettering"))
    return Look(
        fonts=cuts,
        drawings=_drawings(file.name, top.value("drawings")),
        lettering=lettering,
        card=_card(file.name, top.value("card", {}), cuts[0].family, lettering),
        inks={ink: _ink(file.name, ink, inks.value(ink.value)) for ink in Ink},
    )


def _cut(file: str, read: object) -> Cut:
    part = _Part(file, "a font", read, ("family", "weight", "italic", "package", "file", "axes"))
    axes = part.value("axes")
    if not isinstance(axes, dict):
        raise ThemeError(f"{file}: the axes of a font are pairs such as wght: 400")
    return Cut(
        family=part.text("family"),
        weight=int(part.number("weight")),
        italic=part.value("italic", False) is True,
        package=part.text("package"),
        file=part.text("file"),
        axes=tuple((str(axis), float(place)) for axis, place in axes.items()),
    )


def _drawings(file: str, read: object) -> DrawingLook:
    part = _Part(file, "drawings", read, ("scale", "in text", "alone", "tall", "beside"))
    return DrawingLook(
        scale=part.number("scale"),
        in_text=part.number("in text"),
        alone=part.number("alone"),
        tall=part.number("tall", 0),
        beside=part.number("beside", 0),
    )


def _lettering(file: str, read: object) -> LetteringLook:
    part = _Part(file, "lettering", read, ("family", "instead", "colour", "least"))
    least = part.number("least", 0)
    return LetteringLook(part.text("family"), part.text("instead"), part.text("colour"), least)


def _card(file: str, read: object, title: str, lettering: LetteringLook) -> CardLook:
    """The colours of the preview; a theme that names none has the letters' colour on white."""
    part = _Part(file, "card", read, ("ground", "paper", "ink", "soft", "accent", "title", "text"))
    return CardLook(
        ground=part.text("ground", "#ffffff"),
        paper=part.text("paper", "#ffffff"),
        ink=part.text("ink", lettering.colour),
        soft=part.text("soft", lettering.colour),
        accent=part.text("accent", lettering.colour),
        title=part.text("title", title),
        text=part.text("text", lettering.family),
    )


def _ink(file: str, ink: Ink, read: object) -> InkLook:
    part = _Part(file, ink.value, read, ("colour", "line", "dash", "fill", "hatch"))
    dash = part.value("dash", [])
    if not isinstance(dash, list) or not all(isinstance(length, int | float) for length in dash):
        raise ThemeError(f"{file}: {ink.value}: dash is a list of lengths in mm")
    return InkLook(
        colour=part.text("colour"),
        line=part.number("line", 0),
        dash=tuple(float(length) for length in dash),
        fill=part.text("fill", "none"),
        hatch=part.number("hatch", 0),
    )


class _Part:
    """A mapping in the file, read key by key; a key that nobody reads is an error."""

    def __init__(self, file: str, name: str, read: object, keys: tuple[str, ...]) -> None:
        if not isinstance(read, dict):
            raise ThemeError(f"{file}: {name} must have entries: {', '.join(keys)}")
        self.file, self.name = file, name
        self.read = {str(key): value for key, value in read.items()}
        for key in self.read:
            if key not in keys:
                raise ThemeError(f"{file}: {name} has no entry `{key}`; it may have {', '.join(keys)}")

    def value(self, key: str, absent: object = None) -> object:
        found = self.read.get(key, absent)
        if found is None:
            raise ThemeError(f"{self.file}: {self.name} lacks {key}")
        return found

    def text(self, key: str, absent: str | None = None) -> str:
        found = self.value(key, absent)
        if not isinstance(found, str):
            raise ThemeError(f"{self.file}: {self.name}: {key} must be a text")
        return found

    def number(self, key: str, absent: float | None = None) -> float:
        found = self.value(key, absent)
        if isinstance(found, bool) or not isinstance(found, int | float) or found < 0:
            raise ThemeError(f"{self.file}: {self.name}: {key} must be a number, not below nothing")
        return float(found)
