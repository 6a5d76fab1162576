"""A translation held against its recipe: complete, stale, with the same measures, and nothing lost."""

from __future__ import annotations

from pathlib import Path

import pytest

from presscloth.dev import scaffold
from presscloth.handout.tree import Publisher
from presscloth.measure import System
from presscloth.pipeline import Proved, booklets_of, prove
from presscloth.printing.html import html
from presscloth.printing.text import text
from presscloth.printing.theme import open_theme
from presscloth.problems import Problems
from presscloth.source import Source
from presscloth.translation.reading import read_translation
from presscloth.translation.updating import updated
from presscloth.translation.wanted import names, paragraphs

PUBLISHER = Publisher("Tidewrack sewing room", "", (), (), "plain-seam")

RECIPE = """\
---
title: Beach Cloth
release: 2027-05
craft: household linen
---

A cloth of {width of cloth} for the beach.

## Steps

1. Take care: Press **all** four sides under by {seam}, twice.

   ```sew
   hem all of cloth by 1.2 cm (1/2 in) twice
   ```

2. Fold {cloth} in 3 and [read on](https://tidewrack.example).

   ```sew
   finish cloth
   ```
"""

GERMAN = """\
---
language: de
written in: imperial
---

## Names

| Recipe          | Translation    |
|-----------------|----------------|
| household linen | Haushaltswäsche |
| Cotton fabric   | Baumwollstoff  |
| cloth           | Tuch           |

## Paragraphs

> Beach Cloth

Strandtuch

> A cloth of {width of cloth} for the beach.

Für den Strand: ein Tuch
von {width of cloth}.

> Press **all** four sides under by {seam}, twice.

**Alle** vier Seiten zweimal {seam} einschlagen.

> Fold {cloth} in 3 and [read on](https://tidewrack.example).

[Weiterlesen](https://tidewrack.example) und {cloth} in 3 falten.
"""


def written(folder: Path, german: str, recipe: str = RECIPE) -> Path:
    folder = folder / "beach-cloth"
    folder.mkdir(exist_ok=True)
    path = scaffold.write(recipe, folder)
    (folder / "recipe.de.md").write_text(german, encoding="utf-8")
    return path


def proved(folder: Path, german: str, recipe: str = RECIPE) -> Proved:
    return prove(written(folder, german, recipe))


def said(proof: Proved) -> list[str]:
    return [f"{each.slug()}: {each.message()}" for each in proof.problems]


def german_text(proof: Proved) -> str:
    return " ".join(text(booklets_of(proof, PUBLISHER)[1].handouts[0]).split())


def test_a_whole_translation(tmp_path: Path):
    proof = proved(tmp_path, GERMAN)
    assert said(proof) == []
    english, german = booklets_of(proof, PUBLISHER)
    handout = german.handouts[0]
    assert (english.first.slug, handout.slug, handout.language) == ("beach-cloth", "beach-cloth-de", "de")
    assert handout.languages == english.first.languages == (("en", "beach-cloth"), ("de", "beach-cloth-de"))
    assert handout.systems == (System.IMPERIAL, System.METRIC)
    assert english.first.systems == (System.METRIC, System.IMPERIAL)
    whole = german_text(proof)
    assert whole.startswith("Strandtuch ==========")
    assert "Für den Strand: ein Tuch von 10 Zoll (25,2 cm)." in whole
    assert "1. Achtung. Alle vier Seiten zweimal 3/8 Zoll (1 cm) einschlagen." in whole
    assert "2. Weiterlesen (https://tidewrack.example) und Tuch in 3 falten." in whole
    assert "1 × Tuch, aus A (Baumwollstoff); Breite 12 Zoll (30 cm), Höhe 12 Zoll (30 cm)" in whole
    assert "Handwerk: Haushaltswäsche" in whole


def test_without_a_word_on_systems_the_recipe_leads(tmp_path: Path):
    german = booklets_of(proved(tmp_path, GERMAN.replace("written in: imperial\n", "")), PUBLISHER)[1]
    assert german.first.systems == (System.METRIC, System.IMPERIAL)
    publisher = Publisher("x", "", (), (System.IMPERIAL,), "plain-seam")
    assert booklets_of(proved(tmp_path, GERMAN), publisher)[1].first.systems == (System.IMPERIAL,)


def test_a_paragraph_that_has_changed_is_told_and_printed_as_it_is(tmp_path: Path):
    changed = RECIPE.replace("twice.", "twice, and stitch.")
    proof = proved(tmp_path, GERMAN, changed)
    assert said(proof) == [
        "translation-stale: this has changed since it was translated; "
        "it was `Press **all** four sides under by {seam}, twice.`"
    ]
    (problem,) = proof.problems
    assert problem.span.source.name.endswith("recipe.de.md")
    assert problem.span.text == "**Alle** vier Seiten zweimal {seam} einschlagen."
    assert problem.hint().startswith("let `presscloth translate`")
    assert problem.labels[0].span.text == "Press **all** four sides under by {seam}, twice, and stitch."
    assert "Press all four sides under by 3/8 Zoll (1 cm), twice, and stitch." in german_text(proof)
    page = html(booklets_of(proof, PUBLISHER)[1], open_theme("plain-seam"), PUBLISHER)
    assert '<p><span lang="en">Press <strong>all</strong> four sides' in page
    assert '<html lang="de">' in page


def test_what_is_missing_is_counted(tmp_path: Path):
    german = GERMAN.replace("\nStrandtuch\n", "").replace("| cloth           | Tuch           |\n", "")
    proof = proved(tmp_path, german)
    assert said(proof) == ["translation-missing: 2 of 7 texts have no translation into `de`: `Beach Cloth`"]
    assert proof.problems[0].labels[0].span.text == "Beach Cloth"
    assert german_text(proof).startswith("Beach Cloth =====")


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("{seam} einschlagen", "einschlagen", "translation-braces: this translation lacks `{seam}`"),
        (
            "{seam} einschlagen",
            "{2 × seam} einschlagen",
            "translation-braces: this translation lacks `{seam}` and has `{2 × seam}` besides",
        ),
        (
            "(https://tidewrack.example) und",
            "(https://other.example) und",
            "translation-braces: this translation lacks `https://tidewrack.example` and has "
            "`https://other.example` besides",
        ),
        (
            "in 3 falten",
            "in 4 falten",
            "translation-figures: this translation lacks the figure `3` and has the figure `4` besides",
        ),
        (
            "zweimal {seam}",
            "zweimal 1,5 cm {seam}",
            "translation-figures: this translation has the figure `1.5` besides",
        ),
    ],
)
def test_what_is_not_the_same_is_an_error(tmp_path: Path, old: str, new: str, told: str):
    proof = proved(tmp_path, GERMAN.replace(old, new))
    assert said(proof) == [told]
    assert not proof.sound


def test_figures_in_the_ways_of_both_languages_are_the_same(tmp_path: Path):
    recipe = RECIPE.replace("in 3 and", "2.5 and ½ times at 4:15 and")
    german = GERMAN.replace("in 3 and", "2.5 and ½ times at 4:15 and").replace(
        "in 3 f", "2,5 und 1/2 (4:15) f"
    )
    assert "translation-figures" not in " ".join(said(proved(tmp_path, german, recipe)))


def test_what_the_recipe_never_said_is_told(tmp_path: Path):
    proof = proved(tmp_path, GERMAN + "\n> Quite another thing, with no likeness at all.\n\nAnderes.\n")
    assert said(proof) == [
        "translation-unused: the recipe does not say `> Quite another thing, with no likeness at all.`"
    ]
    proof = proved(tmp_path, GERMAN.replace("| cloth  ", "| clowns "))
    assert [each.slug() for each in proof.problems] == ["translation-unused", "translation-missing"]


def test_what_means_nothing_is_told(tmp_path: Path):
    for wrong, spelt in (
        (GERMAN.replace("language: de", "language: fr"), "language: fr"),
        (GERMAN.replace("written in: imperial", "written in: cubits"), "written in: cubits"),
        (GERMAN.replace("Strandtuch\n", "Strandtuch\n\nNoch etwas\n"), "Noch etwas"),
        (GERMAN + "\n## Odds\n\nEnds\n", "Ends"),
    ):
        (problem,) = proved(tmp_path, wrong).problems
        assert (problem.slug(), problem.span.text.strip()) == ("translation-unread", spelt)


def test_a_language_without_words_is_told(tmp_path: Path):
    path = written(tmp_path, GERMAN)
    path.with_name("recipe.eo.md").write_text(GERMAN.replace(": de", ": eo"), encoding="utf-8")
    assert said(prove(path)) == [
        "language-without-words: handouts have no words in `eo`; their own words stay English"
    ]
    path.with_name("recipe.notes about this.md").write_text("Mine.", encoding="utf-8")
    assert len(prove(path).translations) == 2


def test_what_the_reader_may_choose_has_a_name_and_a_note(tmp_path: Path):
    measures = (
        "## Measures\n\n- seam = 1 cm (3/8 in)\n"
        "- drop = 20 cm (8 in), yours to choose from 10 cm (4 in) to 30 cm (12 in): how far it hangs\n"
        "- hang = 3 × drop: for the author\n\n## Steps"
    )
    recipe = RECIPE.replace("## Steps", measures).replace("twice.", "twice; hang it by {drop}.")
    proof = proved(tmp_path, GERMAN, recipe)
    assert proof.recipe is not None
    wanted = {each.text for each in (*paragraphs(proof.recipe), *names(proof.recipe))}
    assert {"drop", "how far it hangs"} <= wanted
    assert not {"hang", "for the author", "seam"} & wanted


# -- beginning and bringing up to date -----------------------------------------------------------


def brought_up_to_date(german: str | None, recipe: str, folder: Path) -> str:
    of = prove(scaffold.write(recipe, folder)).recipe
    assert of is not None
    held = read_translation(Source("recipe.de.md", german), "de", Problems()) if german else None
    return updated(of, "de", held)


def test_a_file_that_is_begun_wants_every_text(tmp_path: Path):
    begun = brought_up_to_date(None, RECIPE, tmp_path)
    assert begun.startswith("---\nlanguage: de\n---\n\n## Names\n")
    assert "| household linen |             |" in begun
    assert "> Press **all** four sides under by {seam}, twice.\n\n> Fold {cloth}" in begun
    assert said(proved(tmp_path, begun)) == [
        "translation-missing: 7 of 7 texts have no translation into `de`: `Beach Cloth`"
    ]


def test_a_whole_file_stays_as_it_is(tmp_path: Path):
    once = brought_up_to_date(GERMAN, RECIPE, tmp_path)
    assert "Für den Strand: ein Tuch\nvon {width of cloth}." in once
    assert "written in: imperial" in once
    assert brought_up_to_date(once, RECIPE, tmp_path) == once
    assert said(proved(tmp_path, once)) == []


def test_a_changed_paragraph_keeps_its_translation_and_what_it_was(tmp_path: Path):
    changed = RECIPE.replace("twice.", "twice, and stitch.")
    once = brought_up_to_date(GERMAN, changed, tmp_path)
    wanted = (
        "> Press **all** four sides under by {seam}, twice, and stitch.\n\n"
        "> > Before: Press **all** four sides under by {seam}, twice.\n\n"
        "**Alle** vier Seiten zweimal {seam} einschlagen.\n"
    )
    assert wanted in once
    assert brought_up_to_date(once, changed, tmp_path) == once
    (problem,) = proved(tmp_path, once, changed).problems
    assert problem.slug() == "translation-stale"
    assert "take the line `> > Before: …` away" in problem.hint()
    mended = once.replace("> > Before: Press **all** four sides under by {seam}, twice.\n\n", "")
    assert said(proved(tmp_path, mended, changed)) == []


def test_nothing_is_lost(tmp_path: Path):
    odd = GERMAN + "\n> Gone.\n\nWeg ist weg.\n\nUnd dies.\n\n## Odds\n\nEnds\n"
    odd = odd.replace("| cloth           | Tuch           |", "| cloth | Tuch |\n| sail | Segel |")
    once = brought_up_to_date(odd, RECIPE, tmp_path)
    tail = once[once.index("## No longer in the recipe") :]
    assert all(words in tail for words in ("> sail\n\nSegel", "> Gone.\n\nWeg ist weg.", "Und dies.", "Ends"))
    assert brought_up_to_date(once, RECIPE, tmp_path) == once
    assert said(proved(tmp_path, once)) == []


def test_a_paragraph_may_begin_with_any_word(tmp_path: Path):
    recipe = RECIPE.replace("A cloth of {width of cloth} for the beach.", "Before: a {width of cloth} cloth.")
    german = GERMAN.replace(
        "> A cloth of {width of cloth} for the beach.", "> Before: a {width of cloth} cloth."
    )
    assert said(proved(tmp_path, german, recipe)) == []
    untranslated = german.replace("\nStrandtuch\n", "")
    assert said(proved(tmp_path, untranslated, recipe)) == [
        "translation-missing: 1 of 7 texts have no translation into `de`: `Beach Cloth`"
    ]


@pytest.mark.parametrize(
    ("english", "german", "told"),
    [
        ("Cut three strips.", "Zwei Streifen schneiden.", "says `zwei` where the recipe says `three`"),
        ("Cut two, then four.", "Zwei schneiden, dann drei.", "says `drei` where the recipe says `four`"),
        ("Cut two strips.", "Drei Streifen schneiden.", "says `drei` where the recipe says `two`"),
        ("Cut three strips.", "Drei Streifen schneiden.", ""),
        ("Cut all three strips.", "Alle Streifen schneiden.", ""),
        ("Sew both to the four corners.", "Die zwei an die vier Ecken nähen.", ""),
        ("Fold the pair in four.", "Die zwei je einmal falten.", ""),
        ("Sew the four-patch.", "Den Block aus zwei Paaren nähen.", ""),
    ],
)  # fmt: skip
def test_numbers_in_words_are_held_where_both_say_as_many(
    tmp_path: Path, english: str, german: str, told: str
):
    recipe = RECIPE.replace("A cloth of {width of cloth} for the beach.", english)
    translated = GERMAN.replace("A cloth of {width of cloth} for the beach.", english).replace(
        "Für den Strand: ein Tuch\nvon {width of cloth}.", german
    )
    assert said(proved(tmp_path, translated, recipe)) == (
        [f"translation-counts: this translation {told}"] if told else []
    )
