"""The command that writes a presenter's cue sheet."""

from __future__ import annotations

from running import Run, Write

SIZES = """\
---
video: https://video.example/cloth
---

## Sizes

| Size  | side          |
|-------|---------------|
| Small | 30 cm (12 in) |
| Large | 40 cm (16 in) |

## Steps

1. At 4:15: Turn {side / 4} under.

   ```sew
   hem all of cloth by 1.2 cm (1/2 in) twice
   finish cloth
   ```
"""


def test_one_size_is_said_in_words(run: Run, write: Write):
    write("cloth", SIZES)
    answer = run("cues", "recipes/cloth", "--size", "large")
    assert answer.code == 0
    assert answer.out.startswith("Plain Cloth, Large: cue sheet\n")
    assert "  4:15  1   Turn ten centimetres or four inches under." in answer.out


def test_a_size_must_be_named_where_there_are_several(run: Run, write: Write):
    write("cloth", SIZES)
    answer = run("cues", "recipes/cloth")
    assert (answer.code, answer.out) == (2, "")
    assert answer.err == "presscloth: say which size with --size; cloth comes in Small, Large\n"


def test_a_pdf_wants_a_file(run: Run, write: Write, folder):
    write("cloth", SIZES)
    answer = run("cues", "recipes/cloth", "--size", "Small", "--format", "pdf")
    assert (answer.code, answer.err) == (2, "presscloth: a PDF is written into a file; name it with --out\n")
    done = run("cues", "recipes/cloth", "--size", "Small", "--format", "pdf", "--out", "cues.pdf")
    assert (done.code, done.out, done.err) == (0, "", "written: cues.pdf\n")
    assert (folder / "cues.pdf").read_bytes().startswith(b"%PDF")


def test_none_is_made_of_a_recipe_that_has_errors(run: Run, write: Write):
    write("cloth", SIZES.replace("{side / 4}", "{sid / 4}"))
    answer = run("cues", "recipes/cloth", "--size", "Small")
    assert answer.code == 1
    assert "no cue sheet is made of a recipe that has errors" in answer.err


GERMAN = """\
---
language: de
---

## Names

| Recipe      | Translation   |
|-------------|---------------|
| Small       | Klein         |
| Large       | Groß          |
| cloth       | Tuch          |

## Paragraphs

> Plain Cloth

Einfaches Tuch

> Turn {side / 4} under.

{side / 4} nach links einschlagen.
"""


def test_a_translation_is_spoken_where_it_is_asked_for(run: Run, write: Write, folder):
    write("cloth", SIZES)
    (folder / "recipes/cloth/recipe.de.md").write_text(GERMAN, encoding="utf-8")
    answer = run("cues", "recipes/cloth", "--size", "groß", "--language", "de")
    assert answer.code == 0
    assert answer.out.startswith("Einfaches Tuch, Groß: Sprechzettel\n")
    assert "  4:15  1   Zehn Zentimeter oder vier Zoll nach links einschlagen." in answer.out
    own = run("cues", "recipes/cloth", "--size", "Large", "--language", "en")
    assert own.out == run("cues", "recipes/cloth", "--size", "Large").out
    kits = run("kits", "recipes/cloth", "--size", "Klein", "--count", "3", "--language", "de")
    assert "Einfaches Tuch, Klein" in kits.out.splitlines()[0]
    assert "für alle 3" in kits.out


def test_a_language_without_a_translation_is_told(run: Run, write: Write, folder):
    write("cloth", SIZES)
    for command in (("cues",), ("kits", "--count", "3")):
        answer = run(*command, "recipes/cloth", "--size", "Small", "--language", "fr")
        assert (answer.code, answer.out) == (2, "")
        assert answer.err == (
            "presscloth: cloth is written in en and translated into no language;"
            " `presscloth translate recipes/cloth --to fr` begins a translation\n"
        )
