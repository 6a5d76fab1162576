"""A German recipe calls for the same cautions as an English one, and says them in German."""

from __future__ import annotations

from pathlib import Path

import pytest

from presscloth.dev import scaffold
from presscloth.handout.caution_words import BY_LANGUAGE, ENGLISH, pattern
from presscloth.handout.cautions import cautions as called_for
from presscloth.pipeline import prove
from presscloth.tongue import speaking, tongue_of

TOOLS = {
    "rotary cutter": "Rollschneider",
    "embroidery scissors": "Stickschere",
    "seam ripper": "Nahttrenner",
    "iron": "Bügeleisen",
    "sewing machine": "Nähmaschine",
    "walking foot": "Obertransportfuß",
    "basting spray": "Sprühzeitkleber",
    "pins": "Stecknadeln",
    "hand needle": "Handnähnadel",
    "long ruler": "langes Lineal",
    "chalk": "Schneiderkreide",
}


def cautions(
    language: str, tool: str, folder: Path, *, material: str = "", audience: str = "adult"
) -> list[str]:
    row = f"| B | {material} | notion | | | |\n" if material else ""
    text = (
        f"---\ntitle: T\nrelease: 2027-01\nlanguage: {language}\naudience: {audience}\n---\n\n"
        f"## Tools\n\n- {tool}\n\n## Materials\n\n| Key | Material | Form | Width | Sold by | Notes |\n"
        f"|--|--|--|--|--|--|\n| A | Leinen | fabric | 110 cm (43 in) | 10 cm (1/8 yd) | |\n{row}"
    )
    folder.mkdir(exist_ok=True)
    recipe = prove(scaffold.write(text, folder)).recipe
    assert recipe is not None
    with speaking(tongue_of(language)):
        return [
            caution.about for caution in called_for(recipe, recipe.materials, recipe.front.audience[None])
        ]


@pytest.mark.parametrize(("english", "german"), TOOLS.items())
def test_the_same_tool_calls_for_the_same_cautions(english: str, german: str, tmp_path: Path):
    said = cautions("en", english, tmp_path / "en"), cautions("de", german, tmp_path / "de")
    assert len(said[0]) == len(said[1])
    assert bool(said[0]) is (english not in ("long ruler", "chalk"))
    assert not set(said[0]) & set(said[1]) or not said[0]
    kinds = [
        {kind for kind in ENGLISH if pattern(kind, tag).search(word)}
        for tag, word in (("en", english), ("de", german))
    ]
    assert kinds[0] == kinds[1]


def test_an_english_tool_is_known_in_a_german_recipe(tmp_path: Path):
    assert cautions("de", "rotary cutter", tmp_path) == ["Regeln vor Ort", "Klingen"]


def test_small_parts_for_a_baby(tmp_path: Path):
    for number, part in enumerate(("Druckknöpfe", "Holzring", "Sicherheitsaugen", "Perlen")):
        said = cautions("de", "Kreide", tmp_path / str(number), material=part, audience="baby")
        assert said == ["Regeln vor Ort", "Kleinteile", "Schlaf"]
    assert "Kleinteile" not in cautions("de", "Kreide", tmp_path / "x", material="Etikett", audience="baby")


def test_every_language_has_every_kind():
    assert {language: set(words) for language, words in BY_LANGUAGE.items()} == {"de": set(ENGLISH)}
