"""Whether handouts have words in the language of the recipe."""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.problems import Problem
from presscloth.proof.subject import Subject
from presscloth.tongue import has_words, languages


def check(subject: Subject) -> Iterator[Problem]:
    front = subject.recipe.front
    if not has_words(front.language):
        from presscloth.translation.problems import LanguageWithoutWords

        span = front.spans.get("language", subject.recipe.source.span(0, 0))
        yield LanguageWithoutWords(span=span, language=front.language, known=languages())
