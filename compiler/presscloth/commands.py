"""What each command does once its line has been understood."""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import redirect_stdout
from pathlib import Path
from typing import TYPE_CHECKING

from presscloth import console, pipeline
from presscloth.cli import FAILED, FINE, MISTYPED, PROBLEMS
from presscloth.cutting.keeping import own_folder
from presscloth.frozen import dataclass
from presscloth.pipeline import Proved
from presscloth.problems import Problem, Problems, Severity
from presscloth.problems.report import Reported, report
from presscloth.problems.show import Format, show
from presscloth.proof.size import WorkedSize
from presscloth.recipe.statement import SewBlock
from presscloth.recipe.tree import Recipe

if TYPE_CHECKING:
    from presscloth.translation.tree import Translation

NO_RECIPES = """\
presscloth: there is no recipe here. A recipe is a text file `recipe.md` in a folder of its own:

    recipes/kit-bag/recipe.md

Go to the folder that holds `recipes`, or name a recipe: presscloth {command} path/to/kit-bag"""


def run(options: argparse.Namespace) -> int:
    """Carry out the command that was typed, and return its exit code."""
    return COMMANDS[options.command](options)


def check(options: argparse.Namespace) -> int:
    """Prove recipes and show what was found."""
    paths = _recipes(options)
    if paths is None:
        return MISTYPED
    proved = _prove(paths)
    reported = _reported(proved)
    _show(reported, Format(options.format))
    for each in proved:
        if each.recipe is not None and not _says_how_it_is_sewn(each):
            console.talk(f"{each.slug}: nothing is proved of its construction; no step has a sew block")
    console.talk(f"checked {_number(len(proved), 'recipe')}: {_counted(reported)}")
    return _outcome(reported, strict=options.strict)


def compile_site(options: argparse.Namespace) -> int:
    """Prove recipes and write the handouts of the sound ones."""
    paths = _recipes(options)
    if paths is None:
        return MISTYPED
    missing = None if options.no_pdf else _what_pdfs_lack()
    if missing is not None:
        console.talk(f"presscloth: {missing} Or compile with --no-pdf.")
        return FAILED
    bar = console.ProgressBar()
    try:
        compiled = pipeline.compile_site(
            paths,
            out=Path(options.out),
            held=options.held,
            workers=options.workers or _processors(),
            pdf=not options.no_pdf,
            progress=bar,
            kept_in=own_folder(os.environ),
        )
    finally:
        bar.clear()
    reported = (*_reported(compiled.proved), *report(compiled.problems))
    _show(reported, Format(options.format))
    for slug in compiled.held:
        console.talk(f"{slug}: held, and left out; --held compiles it as a draft")
    for failed in compiled.failed:
        console.talk(f"{failed.slug}: not written, for it has errors; pages that it had stay as they were")
    console.talk(f"compiled {_number(len(compiled.proved), 'recipe')}: {_counted(reported)}")
    console.talk(f"{_number(len(compiled.written), 'file')} written in {options.out}")
    return _outcome(reported, strict=options.strict)


def measures(options: argparse.Namespace) -> int:
    """Print every measure; what is wrong is told besides."""
    from presscloth.printing import measures as tables

    paths = _recipes(options)
    if paths is None:
        return MISTYPED
    proved = _prove(paths)
    whole, texts = [], []
    for each in proved:
        if each.recipe is not None:
            systems = each.recipe.front.systems
            whole.append(tables.whole(each.slug, pipeline.measures(each), systems))
            texts.append(tables.as_text(each.slug, pipeline.measures(each), systems))
    if options.format == "json":
        found = whole[0] if len(whole) == 1 else whole  # a list only where several were asked for
        console.data(json.dumps(found, ensure_ascii=False, indent=1) + "\n", machine=True)
    else:
        console.data("\n".join(texts))
    reported = _reported(proved)
    if reported:
        console.talk(show(reported, Format.SHORT, colour=console.coloured(sys.stderr)).rstrip("\n"))
    return _outcome(reported, strict=False)


def kits(options: argparse.Namespace) -> int:
    """Lay many kits of one size out together, and write the shop's sheet."""
    meant = _one_size(options, "kits are cut of one recipe", "no kits are cut of a recipe that has errors")
    if isinstance(meant, int):
        return meant
    _write(_kit_sheet(meant, options), options)
    return FINE


def cues(options: argparse.Namespace) -> int:
    """Write the presenter's cue sheet of one size."""
    if options.format == "pdf" and options.out is None:
        console.talk("presscloth: a PDF is written into a file; name it with --out")
        return MISTYPED
    missing = _what_pdfs_lack() if options.format == "pdf" else None
    if missing is not None:
        console.talk(f"presscloth: {missing}")
        return FAILED
    meant = _one_size(
        options, "a cue sheet is of one recipe", "no cue sheet is made of a recipe that has errors"
    )
    if isinstance(meant, int):
        return meant
    written = _cue_sheet(meant, options)
    if isinstance(written, bytes):
        Path(options.out).write_bytes(written)
        console.talk(f"written: {options.out}")
    else:
        _write(written, options)
    return FINE


def _cue_sheet(meant: _Meant, options: argparse.Namespace) -> str | bytes:
    from presscloth.handout.cues import cue_sheet
    from presscloth.printing.cues import cues_pdf, cues_text
    from presscloth.printing.theme import open_theme
    from presscloth.publish.publisher import publisher_of

    publisher = publisher_of(Path("site"), Problems())
    handout = pipeline.handout_of(meant.size, publisher, meant.translation)
    if options.format == "text":
        return cues_text(cue_sheet(handout))
    own = Path("themes")
    theme = open_theme(publisher.theme, own if own.is_dir() else None)
    (written,) = cues_pdf(handout, theme, publisher, (options.paper,))
    return written


@dataclass(frozen=True, slots=True)
class _Meant:
    """One size of a sound recipe; `translation` is None in the recipe's own language."""

    recipe: Recipe
    size: WorkedSize
    translation: Translation | None


def _one_size(options: argparse.Namespace, only_one: str, no_errors: str) -> _Meant | int:
    """The size and the language that are meant; the exit code after telling why there is none."""
    paths = _recipes(options)
    if paths is None:
        return MISTYPED
    if len(paths) > 1:
        console.talk(f"presscloth: {only_one}; name its own folder")
        return MISTYPED
    (proved,) = _prove(paths)
    if proved.recipe is None or not proved.sound:
        _show(_reported([proved]), Format.TEXT)
        console.talk(f"{proved.slug}: {no_errors}")
        return PROBLEMS
    own, wanted = proved.recipe.front.language, options.language
    translation = _translation(proved, wanted) if wanted else None
    if wanted and translation is None and not _speaks(own, wanted):
        into = ", ".join(each.language for each in proved.translations)
        console.talk(
            f"presscloth: {proved.slug} is written in {own} and translated into {into or 'no language'};"
            f" `presscloth translate {paths[0].parent.as_posix()} --to {wanted}` begins a translation"
        )
        return MISTYPED
    size = _size(proved, options.size, translation)
    if size is None:
        names = ", ".join(each.edition.size.name for each in proved.sizes)
        console.talk(f"presscloth: say which size with --size; {proved.slug} comes in {names}")
        return MISTYPED
    return _Meant(proved.recipe, size, translation)


def _size(proved: Proved, name: str | None, translation: Translation | None) -> WorkedSize | None:
    """The size that was named, in the recipe's language or in that of the translation; or the only one."""
    called = translation.names if translation else {}
    names = {size.edition.size.name: size for size in proved.sizes}
    named = [
        size
        for own, size in names.items()
        if name is None or name.casefold() in (own.casefold(), called.get(own, own).casefold())
    ]
    return named[0] if len(named) == 1 else None


def _translation(proved: Proved, language: str) -> Translation | None:
    """The translation into a language, else into one of its kind: `de` is served by `de-CH`."""
    exact = (each for each in proved.translations if each.language.casefold() == language.casefold())
    alike = (each for each in proved.translations if _speaks(each.language, language))
    return next((each for each in (*exact, *alike)), None)


def _speaks(language: str, wanted: str) -> bool:
    """Whether a tag is the language that is wanted, or a kind of it."""
    return f"{language}-".casefold().startswith(f"{wanted}-".casefold())


def _kit_sheet(meant: _Meant, options: argparse.Namespace) -> str:
    from presscloth.printing import kits as sheets

    sheet, worked = pipeline.kits_of(
        meant.recipe, meant.size, options.count, meant.translation, optional=options.with_optional
    )
    match options.format:
        case "json":
            return sheets.as_json(sheet, worked)
        case "html":
            from presscloth.printing.theme import open_theme
            from presscloth.publish.publisher import publisher_of

            return sheets.as_page(sheet, open_theme(), publisher_of(Path("site"), Problems()))
        case _:
            return sheets.as_text(sheet)


def _write(text: str, options: argparse.Namespace) -> None:
    if options.out is None:
        console.data(text, machine=options.format != "text")
    else:
        Path(options.out).write_text(text, encoding="utf-8", newline="\n")
        console.talk(f"written: {options.out}")


def _recipes(options: argparse.Namespace) -> tuple[Path, ...] | None:
    """The files that are meant; None after telling why there are none."""
    found = pipeline.find([Path(recipe) for recipe in options.recipes])
    if isinstance(found, Problem):
        console.talk(f"presscloth: {found.message()}\n  hint: {found.hint()}")
        return None
    if not found:
        console.talk(NO_RECIPES.format(command=options.command))
        return None
    return found


def _prove(paths: Sequence[Path]) -> tuple[Proved, ...]:
    bar = console.ProgressBar()
    workshop = pipeline.workshop_of(Path("site"), own_folder(os.environ))
    proved = []
    try:
        for done, path in enumerate(paths):
            bar(done, len(paths), path.as_posix())
            proved.append(pipeline.prove(path, workshop))
    finally:
        bar.clear()
    return tuple(proved)


def _reported(proved: Iterable[Proved]) -> tuple[Reported, ...]:
    return tuple(one for each in proved for one in _reported_of(each))


def _reported_of(proved: Proved) -> tuple[Reported, ...]:
    if proved.recipe is None:
        return report(proved.problems)
    sizes = [size.name for size in proved.recipe.sizes]
    return report(proved.problems, sizes=sizes, systems=[s.value for s in proved.recipe.front.systems])


def _show(reported: Sequence[Reported], form: Format) -> None:
    out = sys.stdout
    text = show(reported, form, width=console.width(out), colour=console.coloured(out))
    console.data(text, machine=form in (Format.JSON, Format.SARIF))


def _counted(reported: Iterable[Reported]) -> str:
    """`2 errors, 1 warning`; what follows from another problem is not counted."""
    found = [one.severity for one in reported]
    counts = [(found.count(severity), severity.value) for severity in Severity]
    return ", ".join(_number(count, what) for count, what in counts if count) or "no problems"


def _number(count: int, what: str) -> str:
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def _outcome(reported: Sequence[Reported], *, strict: bool) -> int:
    stops = reported if strict else [one for one in reported if one.severity is Severity.ERROR]
    return PROBLEMS if stops else FINE


def _says_how_it_is_sewn(proved: Proved) -> bool:
    return any(isinstance(block, SewBlock) for block in _blocks(proved))


def _blocks(proved: Proved) -> Iterator[object]:
    for step in proved.recipe.steps if proved.recipe else ():
        for part in step.parts:
            yield from part.content


def _what_pdfs_lack() -> str | None:
    """What this machine lacks for PDFs; the banner of the library that misses it is left out."""
    from presscloth.printing.pdf import pango_missing

    with open(os.devnull, "w") as nowhere, redirect_stdout(nowhere):
        return pango_missing()


def _processors() -> int:
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def why(options: argparse.Namespace) -> int:
    """Explain a problem, or list them all."""
    from presscloth import explaining

    return explaining.why(options)


def translate(options: argparse.Namespace) -> int:
    """Begin the translation of one recipe, or bring it up to date, and say what it lacks."""
    from presscloth.translation.beside import LANGUAGE, bring_up_to_date

    if not LANGUAGE.fullmatch(options.to):
        console.talk(f"presscloth: `{options.to}` is no language; write a tag such as de or pt-BR")
        return MISTYPED
    paths = _recipes(options)
    if paths is None:
        return MISTYPED
    if len(paths) > 1:
        console.talk("presscloth: one recipe is translated at a time; name its own folder")
        return MISTYPED
    (proved,) = _prove(paths)
    if proved.recipe is None:
        _show(_reported([proved]), Format.TEXT)
        return PROBLEMS
    problems = Problems()
    file = bring_up_to_date(proved.recipe, proved.path, options.to, problems)
    _show(report(problems.found()), Format.TEXT)
    if file is None:
        console.talk(f"{proved.slug}: nothing was written")
        return PROBLEMS
    console.talk(f"written: {file.as_posix()}")
    return FINE


COMMANDS: Mapping[str, Callable[[argparse.Namespace], int]] = {
    "check": check,
    "compile": compile_site,
    "measures": measures,
    "kits": kits,
    "cues": cues,
    "translate": translate,
    "why": why,
}
