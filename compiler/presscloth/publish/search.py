"""The words by which the catalogue is searched, as a script that lies beside it.

A page that is opened from a folder may not fetch files, but it may load a script; so the words are one.
"""

from __future__ import annotations

import json

from presscloth.publish.entry import CatalogueEntry
from presscloth.publish.lists import others_of
from presscloth.publish.words import ALIKE, words_of

WORDS_FILE = "catalogue-words.js"

TITLE, KIND, SUMMARY, LIST, STEP = 8, 5, 3, 2, 1
"""What a word weighs by where it stands; one that stands in several places weighs as much as all together."""

SHORTEST_STEP_WORD = 3  # what is shorter says nothing in a step


def weights(entry: CatalogueEntry) -> dict[str, int]:
    """What each word weighs in a recipe."""
    places = (
        (TITLE, (entry.title, entry.part_of)),
        (KIND, (*entry.crafts, *entry.skills)),
        (SUMMARY, (entry.summary,)),
        (LIST, (*entry.materials, *entry.tools)),
    )
    found: dict[str, int] = {}
    for weight, texts in places:
        for word in {word for text in texts for word in words_of(text)}:
            found[word] = found.get(word, 0) + weight
    for word in entry.words:
        if len(word) >= SHORTEST_STEP_WORD and not word.isdecimal():
            found[word] = found.get(word, 0) + STEP
    return found


def words_script(shown: tuple[CatalogueEntry, ...], entries: tuple[CatalogueEntry, ...]) -> str:
    """The script: each word with the recipes that have it, by number, each followed by its weight.

    Numbers are those of the recipes that are shown, in the order of the catalogue, which is that of
    its page. A recipe is found by the words of its other languages too, which stand in `entries`.
    """
    held: dict[str, list[int]] = {}
    for number, entry in enumerate(shown):
        found = weights(entry)
        for other in others_of(entry, entries):
            found = {**weights(other), **found}
        for word, weight in found.items():
            held.setdefault(word, []).extend((number, weight))
    index = {"alike": ALIKE, "words": dict(sorted(held.items()))}
    written = json.dumps(index, ensure_ascii=False, separators=(",", ":"))
    return f"globalThis.catalogueWords = {written};\n"
