"""Hold a translation against its recipe: what is there, what has changed, whether it says the same."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches
from functools import partial

from presscloth.frozen import dataclass
from presscloth.problems import Label, Problems
from presscloth.recipe import markdown
from presscloth.recipe.braces import in_braces
from presscloth.recipe.prose import Emphasis, Inline, Link, Measure, Picture, Words
from presscloth.recipe.tree import Recipe
from presscloth.recipe.walking import inlines
from presscloth.translation.number_words import in_other_numbers
from presscloth.translation.numbers import figures
from presscloth.translation.problems import (
    TranslationBraces,
    TranslationCounts,
    TranslationFigures,
    TranslationMissing,
    TranslationStale,
    TranslationUnused,
)
from presscloth.translation.tree import Entry, Place, Translation, TranslationText, place_of
from presscloth.translation.wanted import Wanted, every_run, folded, names, paragraphs

LIKENESS = 0.5
"""From here on a changed paragraph counts as the one that was translated (difflib's ratio)."""


@dataclass(frozen=True, slots=True)
class Matched:
    """What a recipe wants, in its order, each with the entry for it; and entries for which there is nothing.

    A `changed` entry is of an earlier wording of the paragraph.
    """

    wanted: tuple[tuple[Wanted, Entry | None, bool], ...]
    unused: tuple[Entry, ...]


def match(wanted: Sequence[Wanted], entries: Sequence[Entry]) -> Matched:
    """Find the entry for each paragraph: by its own words, else the likest that is left."""
    by_text = {entry.original: entry for entry in reversed(entries)}
    known = {each.text for each in wanted}
    left = {entry.original: entry for entry in entries if entry.original not in known}
    found: list[tuple[Wanted, Entry | None, bool]] = []
    for each in wanted:
        entry = by_text.get(each.text)
        changed = entry is not None and entry.before != ""
        if entry is None and left:
            close = get_close_matches(each.text, list(left), n=1, cutoff=LIKENESS)
            entry = left.pop(close[0]) if close else None
            changed = entry is not None
        found.append((each, entry, changed))
    return Matched(tuple(found), tuple(left.values()))


def hold_translation(recipe: Recipe, text: TranslationText, problems: Problems) -> Translation:
    """What of a translation can be printed. Reports what is missing, stale, unused or not the same."""
    matched = match(paragraphs(recipe), text.entries)
    runs: dict[str, tuple[Inline, ...]] = {}
    called: dict[str, str] = {}
    missing: list[Wanted] = []
    for wanted, entry, changed in matched.wanted:
        if entry is None or entry.text is None:
            missing.append(wanted)
        elif changed:
            was = entry.before or entry.original
            label = Label(wanted.span, "as it is now")
            stale = TranslationStale(
                span=entry.text.span(), was=_short(was), marked=entry.before != "", labels=(label,)
            )
            problems.add(stale)
        else:
            run = _read(entry, wanted, (recipe.front.language, text.language), problems)
            if run is not None and not wanted.of:
                called[wanted.text] = folded(entry.text.text)
            elif run is not None:
                runs[wanted.text] = run
    for entry in matched.unused:
        problems.add(TranslationUnused(span=entry.span))
    called |= _names(recipe, text, missing, problems)
    if missing:
        problems.add(_missing(recipe, text, missing))
    return Translation(text.language, text.leading, called, dict(_by_place(recipe, runs)))


def _names(
    recipe: Recipe, text: TranslationText, missing: list[Wanted], problems: Problems
) -> Mapping[str, str]:
    """The names that have another in this language; those that have none yet join `missing`."""
    wanted = names(recipe)
    given = {entry.name: entry for entry in text.names}
    known = {each.text for each in wanted}
    missing += [each for each in wanted if each.text not in given or not given[each.text].called]
    for entry in text.names:
        if entry.name not in known:
            problems.add(TranslationUnused(span=entry.span))
    return {name: entry.called for name, entry in given.items() if entry.called and name in known}


def _missing(recipe: Recipe, text: TranslationText, missing: Sequence[Wanted]) -> TranslationMissing:
    laid_out = {entry.original for entry in text.entries} | {entry.name for entry in text.names}
    return TranslationMissing(
        span=text.source.span(0, 0),
        labels=(Label(missing[0].span, "the first of them"),),
        language=text.language,
        missing=len(missing),
        of=len(paragraphs(recipe)) + len(names(recipe)),
        first=_short(missing[0].text),
        laid_out={each.text for each in missing} <= laid_out,
    )


def _read(
    entry: Entry, wanted: Wanted, languages: tuple[str, str], problems: Problems
) -> tuple[Inline, ...] | None:
    """The words of a translation with the recipe's own measures; None where it says something else.

    `languages` are the recipe's and that of the translation.
    """
    assert entry.text is not None
    found = markdown.inlines(entry.text, partial(in_braces, problems=Problems()), problems)
    label = Label(wanted.span, "the recipe")
    kept, said = Counter(_things(wanted.of)), Counter(_things(found))
    if kept != said:
        lacks, more = tuple((kept - said).elements()), tuple((said - kept).elements())
        problems.add(TranslationBraces(span=entry.text.span(), missing=lacks, added=more, labels=(label,)))
        return None
    original = wanted.of or (Words(wanted.text, wanted.span),)
    typed, again = figures(original), figures(found)
    if typed != again:
        lacks, more = tuple((typed - again).elements()), tuple((again - typed).elements())
        problems.add(TranslationFigures(span=entry.text.span(), missing=lacks, added=more, labels=(label,)))
    own, into = languages
    lacks, more = in_other_numbers(original, own, found, into)
    if lacks:
        problems.add(TranslationCounts(span=entry.text.span(), missing=lacks, added=more, labels=(label,)))
    measures = {folded(each.span.text): each for each in inlines(wanted.of) if isinstance(each, Measure)}
    return tuple(_with_measures(each, measures) for each in found)


def _things(of: tuple[Inline, ...]) -> Iterator[str]:
    """What both must have: braces as they are typed, and where links and pictures lead."""
    for each in inlines(of):
        match each:
            case Measure(span=span):
                yield folded(span.text)
            case Link(to=to):
                yield to
            case Picture(file=file):
                yield file
            case _:
                pass


def _with_measures(inline: Inline, measures: Mapping[str, Measure]) -> Inline:
    match inline:
        case Measure(span=span):
            return measures[folded(span.text)]
        case Emphasis(of=of) | Link(of=of):
            return replace(inline, of=tuple(_with_measures(each, measures) for each in of))
        case Picture(alt=alt):
            return replace(inline, alt=tuple(_with_measures(each, measures) for each in alt))
        case _:
            return inline


def _by_place(
    recipe: Recipe, runs: Mapping[str, tuple[Inline, ...]]
) -> Iterator[tuple[Place, tuple[Inline, ...]]]:
    """Every place at which a translated paragraph stands; the same words may stand in several."""
    for of in every_run(recipe):
        run = runs.get(folded(of[0].span.to(of[-1].span).text))
        if run is not None:
            yield place_of(of), run


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:60].rstrip()}…"
