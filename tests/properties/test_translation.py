"""However a recipe changes, bringing its translation up to date loses no word and settles at once."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from presscloth.dev import scaffold
from presscloth.pipeline import prove_source
from presscloth.problems import Problems
from presscloth.recipe.tree import Recipe
from presscloth.source import Source
from presscloth.translation.holding import hold_translation
from presscloth.translation.reading import read_translation
from presscloth.translation.updating import updated

WORDS = st.lists(
    st.sampled_from(
        ("Wash", "the", "{cloth}", "by", "{seam}", "twice,", "*slowly*", "and", "again", "3", "> a", "| b |")
    ),
    min_size=1,
    max_size=7,
).map(lambda words: "Then " + " ".join(words) + ".")
NOTES = st.lists(WORDS, min_size=1, max_size=5)


def recipe_of(notes: list[str]) -> Recipe:
    text = scaffold.complete("## Notes\n\n" + "\n\n".join(notes) + "\n")
    recipe = prove_source(Source("recipe.md", text), Path("recipe.md"), Problems()).recipe
    assert recipe is not None
    return recipe


def again(recipe: Recipe, file: str) -> str:
    return updated(recipe, "de", read_translation(Source("recipe.de.md", file), "de", Problems()))


@given(before=NOTES, after=NOTES)
def test_nothing_is_lost_and_nothing_moves_twice(before: list[str], after: list[str]):
    begun = updated(recipe_of(before), "de", None)
    said = {note: f"Übersetzt {number}: {note}" for number, note in enumerate(dict.fromkeys(before))}
    file = begun
    for note, german in said.items():
        file = file.replace(f"\n> {note}\n", f"\n> {note}\n\n{german}\n", 1)
    changed = recipe_of(after)
    once = again(changed, file)
    for note, german in said.items():
        assert german in once
        assert note in once
    assert again(changed, once) == once


@given(NOTES)
def test_a_whole_translation_is_held_without_a_problem(notes: list[str]):
    recipe = recipe_of(notes)
    lines = updated(recipe, "de", None).split("\n")
    file = []
    for line in lines:
        file.append(line.replace("| Cotton fabric |             |", "| Cotton fabric | Baumwolle |"))
        if line.startswith("> "):
            file += ["", f"Deutsch: {line.removeprefix('> ')}"]
    whole = "\n".join(file).replace("| cloth         |             |", "| cloth | Tuch |")
    problems = Problems()
    translation = hold_translation(
        recipe, read_translation(Source("recipe.de.md", whole), "de", problems), problems
    )
    assert [problem.message() for problem in problems.found()] == []
    assert len(translation.runs) >= len(set(notes))
