"""Make the slips that authors make in every shipped recipe, one at a time, and count what is caught.

A slip counts when it changes any printed number, or when it is caught. A survivor is a free choice
when the slip gave a stated value that nothing else has to meet another amount in both systems, and
everything that depends on it followed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from presscloth.dev.slip_makers import MAKERS, Slip
from presscloth.handout.tree import Publisher
from presscloth.pipeline import Proved, booklet, find, prove, prove_source
from presscloth.printing.text import text
from presscloth.problems import Problem, Problems, Severity
from presscloth.source import Source

MEETS_NOTHING = "this side of the piece meets nothing: it is trimmed, hemmed free, or sewn onto the ground"

WHY = {
    "allowance lost": MEETS_NOTHING,
    "allowance doubled": MEETS_NOTHING,
    "inch for centimetre": "a larger thing does here too, and nothing says how large it may be",
    "rows swapped": "both rows are of pieces that are sewn onto something and meet nothing",
    "wrong edge": "both edges are alike, and nothing later tells them apart",
    "step dropped": "what the step does to the thing is needed by nothing after it",
    "pair disagrees": "the pair is a step of rounding, whose halves need not agree",
}
"""What a slip that survives has in common with others of its kind."""

FREE = "a free choice: nothing else has to meet it, and all that depends on it followed"

PUBLISHER = Publisher("Tidewrack sewing room", "", ("A4",), (), "plain-seam")


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of one slip: `error`, `warning`, `survived` or `nothing` (no printed number changed)."""

    recipe: str
    slip: Slip
    became: str
    by: str


def slips_in(proved: Proved) -> Iterator[Slip]:
    assert proved.recipe is not None
    seen: set[str] = set()
    source = proved.recipe.source.text
    for make in MAKERS:
        for slip in make(proved.recipe):
            changed = slip.made_in(source)
            if changed != source and changed not in seen:
                seen.add(changed)
                yield slip


def printed(proved: Proved) -> tuple[str, ...]:
    """The handouts of all sizes as text."""
    return tuple(text(handout) for handout in booklet(proved, PUBLISHER).handouts)


def try_slip(slip: Slip, path: Path, source: str, before: tuple[str, ...]) -> Outcome:
    problems = Problems()
    changed = prove_source(Source(path.as_posix(), slip.made_in(source)), path, problems)
    worst = _worst(changed.problems)
    if worst is not None:
        return Outcome(changed.slug, slip, worst.severity.value, worst.slug())
    became = "nothing" if printed(changed) == before else "survived"
    return Outcome(changed.slug, slip, became, "")


def _worst(problems: Sequence[Problem]) -> Problem | None:
    errors = [problem for problem in problems if problem.severity is Severity.ERROR]
    return next(iter(errors or problems), None)


def outcomes(paths: Sequence[Path], workers: int = 2) -> Iterator[Outcome]:
    """Make every slip in every recipe; the recipes themselves must be sound."""
    with ProcessPoolExecutor(workers) as pool:
        for path in paths:
            proved = prove(path)
            if proved.problems or proved.recipe is None:
                raise SystemExit(f"{path} is not sound; slips are made in sound recipes only")
            slips = list(slips_in(proved))
            source, before = proved.recipe.source.text, printed(proved)
            one = partial(_one, path=path, source=source, before=before)
            yield from pool.map(one, slips, chunksize=8)


def _one(slip: Slip, path: Path, source: str, before: tuple[str, ...]) -> Outcome:
    return try_slip(slip, path, source, before)


def report(found: Sequence[Outcome]) -> str:
    """The counts by kind, the survivors one by one, and the share that is caught."""
    counted = [outcome for outcome in found if outcome.became != "nothing"]
    by_kind: dict[str, Counter[str]] = {}
    for outcome in counted:
        by_kind.setdefault(outcome.slip.kind, Counter())[outcome.became] += 1
    lines = [f"{'slip':<22}{'error':>8}{'warning':>9}{'survived':>10}"]
    for kind, became in by_kind.items():
        lines.append(f"{kind:<22}{became['error']:>8}{became['warning']:>9}{became['survived']:>10}")
    survivors = [outcome for outcome in counted if outcome.became == "survived"]
    chosen = [outcome for outcome in survivors if outcome.slip.choice]
    caught = len(counted) - len(survivors)
    demanded = len(counted) - len(chosen)
    unchanged = len(found) - len(counted)
    lines += ["", f"{len(counted)} slips that count; {unchanged} more change no printed number"]
    lines.append(f"caught: {caught} of {demanded} that are no free choice ({_share(caught, demanded)})")
    lines.append(f"free choices: {len(chosen)} of {len(counted)} ({_share(len(chosen), len(counted))})")
    for outcome in survivors:
        why = FREE if outcome.slip.choice else WHY.get(outcome.slip.kind, "nothing depends on it")
        lines.append(f"  {outcome.recipe}:{outcome.slip.told}  {outcome.slip.kind}: {why}")
    return "\n".join(lines)


def _share(part: int, whole: int) -> str:
    return f"{100 * part / whole:.1f} %" if whole else "–"


def main(arguments: Sequence[str] = ()) -> int:
    paths = find([Path(argument) for argument in arguments])
    if isinstance(paths, Problem):
        print(paths.message())
        return 2
    print(report(list(outcomes(paths))))
    return 0
