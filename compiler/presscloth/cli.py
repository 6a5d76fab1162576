"""The command line: what may be typed, and what each command answers with.

Data goes to standard output, talk to standard error. The exit code is 0 without errors, 1 with
problems, 2 when the command was mistyped, 3 when the program failed or met a limit, 130 when it was
interrupted. Nothing heavy is imported before a command needs it.
"""

from __future__ import annotations

import argparse
import gc
import os
from collections.abc import Sequence

from presscloth import __version__

FINE, PROBLEMS, MISTYPED, FAILED, INTERRUPTED = 0, 1, 2, 3, 130

COLLECTED = (100_000, 10, 10)
"""How often garbage is looked for: nearly all that a command makes lives as long as it."""

ABOUT = """\
Compiles sew-along recipes into proved handouts for every size, in metric and imperial.

Every command takes recipe folders or files, and without any, all of recipes/ below the current folder."""

CODES = """\
exit code: 0 no errors, 1 problems, 2 mistyped, 3 the program failed or met a limit, 130 interrupted"""


def main(arguments: Sequence[str] | None = None) -> int:
    """Carry out one command and return its exit code."""
    options = parser().parse_args(arguments)
    gc.set_threshold(*COLLECTED)
    from presscloth import console

    console.prepare()
    try:
        from presscloth import commands

        return commands.run(options)
    except KeyboardInterrupt:
        console.talk("presscloth: interrupted")
        return INTERRUPTED
    except BrokenPipeError:
        return FINE
    except Exception as fault:
        if os.environ.get("PRESSCLOTH_DEBUG"):
            raise
        console.talk(_of_the_machine(fault) or _fault_text(fault))
        return FAILED


def _of_the_machine(fault: Exception) -> str:
    """What a file or a disk refused, which is no fault of the program; else nothing."""
    if not isinstance(fault, OSError) or fault.strerror is None:
        return ""
    where = f"`{fault.filename}` cannot be read or written: " if fault.filename else ""
    why = f"presscloth: {where}{fault.strerror.lower()}"
    return f"{why}\n  hint: look whether its folder is there, may be written to, and has room"


def parser() -> argparse.ArgumentParser:
    """Everything that may be typed."""
    whole = argparse.ArgumentParser(
        prog="presscloth",
        description=ABOUT,
        epilog=CODES,
        formatter_class=_help,
        allow_abbrev=False,
    )
    whole.add_argument("--version", action="version", version=f"presscloth {__version__}")
    commands = whole.add_subparsers(dest="command", metavar="COMMAND", required=True)

    check = _command(commands, "check", "prove recipes and show the problems")
    _takes_recipes(check, ("text", "short", "json", "sarif"))
    _strict(check)

    compile_ = _command(commands, "compile", "prove recipes and write the site")
    _takes_recipes(compile_, ("text", "short", "json", "sarif"))
    _strict(compile_)
    compile_.add_argument("--held", action="store_true", help="compile recipes that are held, as drafts")
    compile_.add_argument(
        "--out", metavar="FOLDER", default="site/published", help="where the site is written (%(default)s)"
    )
    compile_.add_argument(
        "--workers", metavar="N", type=_at_least_one, help="processes that print (one for each processor)"
    )
    compile_.add_argument("--no-pdf", action="store_true", help="write web pages only")

    measures = _command(commands, "measures", "every measure, in all sizes and both systems")
    _takes_recipes(measures, ("text", "json"))

    kits = _command(commands, "kits", "the shop's sheet: what many kits of one size take, cut together")
    kits.add_argument("recipes", metavar="RECIPE", nargs=1, help="a recipe's folder or file")
    kits.add_argument("--size", metavar="SIZE", help="the size; may be left out where there is only one")
    _in_language(kits)
    kits.add_argument("--count", metavar="N", type=_at_least_one, required=True, help="how many kits")
    kits.add_argument("--with-optional", action="store_true", help="with the pieces that are optional")
    kits.add_argument(
        "--format", choices=("text", "json", "html"), default="text", help="what is written (%(default)s)"
    )
    kits.add_argument("--out", metavar="FILE", help="where it is written (standard output)")

    cues = _command(commands, "cues", "the presenter's cue sheet: times, steps, measures as they are spoken")
    cues.add_argument("recipes", metavar="RECIPE", nargs=1, help="a recipe's folder or file")
    cues.add_argument("--size", metavar="SIZE", help="the size; may be left out where there is only one")
    _in_language(cues)
    cues.add_argument(
        "--format", choices=("text", "pdf"), default="text", help="what is written (%(default)s)"
    )
    cues.add_argument("--paper", choices=("A4", "Letter"), default="A4", help="of a PDF (%(default)s)")
    cues.add_argument("--out", metavar="FILE", help="where it is written (standard output)")

    translate = _command(commands, "translate", "begin a recipe's translation, or bring it up to date")
    translate.add_argument("recipes", metavar="RECIPE", nargs=1, help="a recipe's folder or file")
    translate.add_argument("--to", metavar="LANGUAGE", required=True, help="a language's tag, such as de")

    why = _command(commands, "why", "explain a problem, with an example; without a name, list them all")
    why.add_argument("name", metavar="PROBLEM", nargs="*", help="a name, such as pair-disagrees")
    return whole


def _command(
    commands: argparse._SubParsersAction[argparse.ArgumentParser], name: str, does: str
) -> argparse.ArgumentParser:
    description = f"{does[0].upper()}{does[1:]}."
    return commands.add_parser(
        name, help=does, description=description, allow_abbrev=False, formatter_class=_help
    )


def _help(prog: str) -> argparse.HelpFormatter:
    """Help as wide as the terminal. Told the width, argparse need not import what looks it up."""
    try:
        columns = os.get_terminal_size().columns
    except (OSError, ValueError):
        columns = 0
    return argparse.RawDescriptionHelpFormatter(prog, width=min(columns or 100, 100) - 2)


def _takes_recipes(command: argparse.ArgumentParser, formats: Sequence[str]) -> None:
    command.add_argument(
        "recipes", metavar="RECIPE", nargs="*", help="a recipe's folder or file (all of recipes/)"
    )
    command.add_argument("--format", choices=formats, default="text", help="what is written (%(default)s)")


def _strict(command: argparse.ArgumentParser) -> None:
    command.add_argument("--strict", action="store_true", help="exit with 1 for warnings too")


def _in_language(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--language", metavar="LANGUAGE", help="a language into which the recipe is translated, such as de"
    )


def _at_least_one(typed: str) -> int:
    if not typed.isdecimal() or not 1 <= int(typed) <= 999:
        raise argparse.ArgumentTypeError(f"`{typed}` is not a number from 1 to 999")
    return int(typed)


def _fault_text(fault: Exception) -> str:
    """What to say of a fault: its kind, and in which line of which room it arose."""
    if isinstance(fault, (MemoryError, RecursionError)):
        return "presscloth: a recipe went beyond what this machine can hold; nothing was written"
    place = ""
    trace = fault.__traceback__
    while trace is not None:
        module = trace.tb_frame.f_globals.get("__name__", "")
        if module.startswith("presscloth."):
            place = f" in {module}, line {trace.tb_lineno}"
        trace = trace.tb_next
    return (
        f"presscloth: the program failed ({type(fault).__name__}{place}). That is a fault of the program, "
        "not of a recipe.\nPRESSCLOTH_DEBUG=1 shows where; please report it with the recipe."
    )
