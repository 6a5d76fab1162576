"""The translations that lie beside a recipe: `recipe.de.md` beside `recipe.md`."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from presscloth.problems import Problems
from presscloth.recipe.load import load
from presscloth.recipe.tree import Recipe
from presscloth.tongue import has_words, languages
from presscloth.translation.holding import hold_translation
from presscloth.translation.problems import LanguageWithoutWords
from presscloth.translation.reading import read_translation
from presscloth.translation.tree import Translation

LANGUAGE = re.compile(r"[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*")


def file_of(recipe: Path, language: str) -> Path:
    """Where the translation of a recipe lies."""
    return recipe.with_name(f"{recipe.stem}.{language}.md")


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
