"""The translations that lie beside a recipe: `recipe.de.md` beside `recipe.md`."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from presscloth.problems import Problems
from presscloth.recipe.load import load
from presscloth.recipe.tree import Recipe
from presscloth.source import Source
from presscloth.tongue import has_words, languages
from presscloth.translation.holding import hold_translation
from presscloth.translation.problems import LanguageWithoutWords
from presscloth.translation.reading import read_translation
from presscloth.translation.tree import Translation
from presscloth.translation.updating import updated

LANGUAGE = re.compile(r"[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*")


def file_of(recipe: Path, language: str) -> Path:
    """Where the translation of a recipe lies."""
    return recipe.with_name(f"{recipe.stem}.{language}.md")


def bring_up_to_date(recipe: Recipe, path: Path, language: str, problems: Problems) -> Path | None:
    """Write the translation's file, begun or brought up to date; None where the old one cannot be read.

    Reports what the new file lacks. Until it is whole the old file stays as it is.
    """
    file = file_of(path, language)
    text = None
    if file.exists():
        source = load(file, problems)
        if source is None:
            return None
        text = read_translation(source, language, Problems())
    written = Source(file.as_posix(), updated(recipe, language, text))
    beside = file.with_name(f".{file.name}.new")
    beside.write_text(written.text, encoding="utf-8")
    beside.replace(file)
    hold_translation(recipe, read_translation(written, language, problems), problems)
    return file


def translations_beside(recipe: Recipe, path: Path, problems: Problems) -> tuple[Translation, ...]:
    """Read and hold every translation beside a recipe, by language."""
    return tuple(_translations(recipe, path, problems))


def _translations(recipe: Recipe, path: Path, problems: Problems) -> Iterator[Translation]:
    for file in sorted(path.parent.glob(f"{path.stem}.*.md")):
        language = file.name.removeprefix(f"{path.stem}.").removesuffix(".md")
        source = load(file, problems) if LANGUAGE.fullmatch(language) else None
        if source is None:
            continue
        if not has_words(language):
            place = source.span(0, 0)
            problems.add(LanguageWithoutWords(span=place, language=language, known=languages()))
        yield hold_translation(recipe, read_translation(source, language, problems), problems)
