"""`presscloth translate` begins a file, keeps what stands in it, and says what it lacks."""

from __future__ import annotations

from pathlib import Path

from running import SOUND, Run, Write


def test_translate_begins_and_brings_up_to_date(run: Run, write: Write, folder: Path):
    recipe = write("plain", SOUND)
    answer = run("translate", "recipes/plain", "--to", "de")
    assert answer.code == 0
    assert "translation missing" in answer.out
    assert "written: recipes/plain/recipe.de.md" in answer.err
    file = recipe.with_name("recipe.de.md")
    begun = file.read_text(encoding="utf-8")
    file.write_text(begun.replace("> Plain Cloth\n", "> Plain Cloth\n\nEinfaches Tuch\n"), encoding="utf-8")
    recipe.write_text(recipe.read_text(encoding="utf-8").replace("Plain Cloth", "Plain Cloths"), "utf-8")
    answer = run("translate", "recipes/plain", "--to", "de")
    assert answer.code == 0
    assert "> Plain Cloths\n\n> > Before: Plain Cloth\n\nEinfaches Tuch\n" in file.read_text(encoding="utf-8")
    assert "translation stale" in answer.out
    assert sorted(path.name for path in file.parent.iterdir()) == ["cloth.png", "recipe.de.md", "recipe.md"]
    answer = run("check", "recipes/plain")
    assert answer.code == 0
    assert "recipes/plain/recipe.de.md" in answer.out
    assert "2 warnings" in answer.err


def test_a_file_that_cannot_be_read_is_left_alone(run: Run, write: Write, folder: Path):
    file = write("plain", SOUND).with_name("recipe.de.md")
    file.write_bytes(b"\xff\xfe\x00 not text")
    answer = run("translate", "recipes/plain", "--to", "de")
    assert answer.code == 1
    assert "plain: nothing was written" in answer.err
    assert file.read_bytes() == b"\xff\xfe\x00 not text"


def test_what_is_no_language_is_mistyped(run: Run, write: Write, folder: Path):
    write("plain", SOUND)
    answer = run("translate", "recipes/plain", "--to", "../de")
    assert (answer.code, answer.out) == (2, "")
    assert "`../de` is no language" in answer.err


def test_compile_publishes_every_language(run: Run, write: Write, folder: Path):
    write("plain", SOUND)
    run("translate", "recipes/plain", "--to", "de")
    assert run("compile", "--no-pdf").code == 0
    german = (folder / "site" / "published" / "plain-de" / "index.html").read_text(encoding="utf-8")
    assert '<html lang="de">' in german
    assert '<a href="../plain/index.html" lang="en" hreflang="en">English</a>' in german
    assert "Zuschnitt" in german
    recipe = folder / "recipes" / "plain" / "recipe.md"
    recipe.write_text(recipe.read_text(encoding="utf-8").replace("1 cm (3/8 in)", "1 cm (9 in)"), "utf-8")
    assert run("compile", "--no-pdf").code == 1
    kept = (folder / "site" / "published" / "plain-de" / "index.html").read_text(encoding="utf-8")
    assert kept == german
