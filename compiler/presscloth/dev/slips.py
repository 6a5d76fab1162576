"""Make the slips that authors make in every shipped recipe, one at a time, and count what is caught.

A slip counts when it changes any printed number, or when it is caught. A slip of a value that nothing
else has to meet is a slip of a free choice, whether it is caught or not; `slip_places` decides that from
the recipe alone, before any slip is made.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from functools import cache, partial
from pathlib import Path

from presscloth.dev.slip_makers import MAKERS, Slip
from presscloth.dev.slip_places import Held
from presscloth.dev.slip_places import held as held_by
from presscloth.handout.tree import Publisher
from presscloth.pipeline import Proved, booklet, find, prove, prove_source
from presscloth.printing.text import text
from presscloth.problems import Problem, Problems, Severity
from presscloth.source import Source, Span

PUBLISHER = Publisher("Tidewrack sewing room", "", ("A4",), (), "plain-seam")


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of one slip: `error`, `warning`, `survived` or `nothing` (no printed number changed)."""

    recipe: str
    slip: Slip
    became: str
    by: str
    held: tuple[Held, ...] = ()

    @property
    def is_free(self) -> bool:
        """Whether nothing else has to meet any of the values that slipped."""
        return bool(self.slip.values) and not self.held

    @property
    def why(self) -> str:
        """Of a survivor: what the value is held by, and how much room that leaves."""
        if self.is_free:
            return "a free choice: no comparison of two things depends on it"
        if not self.slip.values:
            return "no rule speaks of it"
        nearest = min(self.held, key=lambda each: each.apart)
        rules = ", ".join(dict.fromkeys(each.rule for each in self.held))
        apart = float(nearest.apart)
        return f"held {len(self.held)} times ({rules}); the nearest, {nearest.rule}, leaves {apart:.1f} mm"


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
            values = list(dict.fromkeys(span for slip in slips for span in slip.values))
            ask = partial(_held, path=path)
            holding = dict(zip(values, pool.map(ask, values, chunksize=4), strict=True))
            one = partial(_one, path=path, source=source, before=before)
            for slip, outcome in zip(slips, pool.map(one, slips, chunksize=8), strict=True):
                held = dict.fromkeys(each for span in slip.values for each in holding[span])
                yield replace(outcome, slip=slip, held=tuple(held))


def _held(place: Span, path: Path) -> tuple[Held, ...]:
    return held_by(place, _proved(path))


@cache
def _proved(path: Path) -> Proved:
    """A recipe is proved once in each worker."""
    return prove(path)


def _one(slip: Slip, path: Path, source: str, before: tuple[str, ...]) -> Outcome:
    return try_slip(slip, path, source, before)


def report(found: Sequence[Outcome]) -> str:
    """The counts by kind, the survivors one by one, and the share that is caught."""
    counted = [outcome for outcome in found if outcome.became != "nothing"]
    free = [outcome for outcome in counted if outcome.is_free]
    by_kind: dict[str, Counter[str]] = {}
    for outcome in counted:
        by_kind.setdefault(outcome.slip.kind, Counter())["free" if outcome.is_free else outcome.became] += 1
    lines = [f"{'slip':<22}{'error':>8}{'warning':>9}{'survived':>10}{'free':>7}"]
    for kind, became in by_kind.items():
        columns = (became["error"], became["warning"], became["survived"], became["free"])
        lines.append(f"{kind:<22}{columns[0]:>8}{columns[1]:>9}{columns[2]:>10}{columns[3]:>7}")
    demanded = [outcome for outcome in counted if not outcome.is_free]
    caught = [outcome for outcome in demanded if outcome.became != "survived"]
    caught_free = sum(outcome.became != "survived" for outcome in free)
    unchanged = len(found) - len(counted)
    lines += ["", f"{len(counted)} slips that count; {unchanged} more change no printed number"]
    lines.append(
        f"caught: {len(caught)} of {len(demanded)} that are no free choice"
        f" ({_share(len(caught), len(demanded))})"
    )
    lines.append(
        f"of free choices: {len(free)} of all {len(counted)} ({_share(len(free), len(counted))}),"
        f" {caught_free} of them caught all the same"
    )
    for outcome in counted:
        if outcome.became == "survived":
            lines.append(f"  {outcome.recipe}:{outcome.slip.told}  {outcome.slip.kind}: {outcome.why}")
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
