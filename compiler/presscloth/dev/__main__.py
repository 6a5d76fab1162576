"""`python -m presscloth.dev`: commands for those who work on Presscloth itself."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Sequence
from importlib import import_module

from presscloth.printing.shipped import CHECKOUT

USAGE = """\
python -m presscloth.dev COMMAND

  check             linter, types and tests, each named
  bench             speed, as ratios measured in one run
  bench cutting     cutting layouts against known optima; a folder of published instances may follow
  choices [TIMES]   hold the page's reckoning against the compiler's, ten times as often as the tests do
  slips             make the slips that authors make in every recipe, and count what is caught
  reference         write the generated pages of the reference
  words             bring the catalogues of words up to date with the code and the templates"""

CHECKS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("ruff", ("ruff", "check", "compiler", "tests")),
    ("mypy", ("mypy",)),
    ("tests", ("pytest", "-q")),
)


def main(arguments: Sequence[str]) -> int:
    match arguments:
        case ["check"]:
            return check()
        case ["bench", "cutting", *rest]:
            return _of("presscloth.dev.bench_cutting", rest)
        case ["bench", *rest]:
            return _of("presscloth.dev.bench", rest)
        case ["choices", *rest]:
            return choices(rest[0] if rest else "10")
        case ["slips", *rest]:
            return _of("presscloth.dev.slips", rest)
        case ["reference"]:
            return _of("presscloth.dev.reference", [])
        case ["words"]:
            return _of("presscloth.dev.words", [])
        case _:
            print(USAGE, file=sys.stderr)
            return 2


def check(checks: Sequence[tuple[str, tuple[str, ...]]] = CHECKS) -> int:
    """Run every check in the checkout, also those after one that fails, and name those that failed."""
    failed = []
    for name, (module, *rest) in checks:
        print(f"== {name}", flush=True)
        done = subprocess.run([sys.executable, "-m", module, *rest], cwd=CHECKOUT, check=False)
        if done.returncode != 0:
            failed.append(name)
    print(f"failed: {', '.join(failed)}" if failed else f"all well: {', '.join(name for name, _ in checks)}")
    return 1 if failed else 0


def choices(times: str) -> int:
    """Try so many times the choices that the tests try, in whole recipes, against sizes worked out anew."""
    wanted = ("tests/choices/test_agreement.py", "-q", "-k", "thousands")
    environment = {**os.environ, "PRESSCLOTH_CHOICES": times}
    done = subprocess.run(
        [sys.executable, "-m", "pytest", *wanted], cwd=CHECKOUT, env=environment, check=False
    )
    return done.returncode


def _of(module: str, arguments: Sequence[str]) -> int:
    """Hand over to the `main` of a module, imported only now."""
    code = import_module(module).main(arguments)
    assert isinstance(code, int)
    return code


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
