"""The chapters of a recipe's video: one for each step that has a time, in the order of the times."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import groupby
from operator import attrgetter

from presscloth.frozen import dataclass
from presscloth.handout.prose import said
from presscloth.handout.tree import Booklet
from presscloth.tongue import listed, many, say, speaking, tongue_of


@dataclass(frozen=True, slots=True)
class Chapter:
    """A chapter: when it begins, in seconds, and its name."""

    start: int
    name: str


@dataclass(frozen=True, slots=True)
class _Timed:
    """A step with a time in the video, the title of its stage, and the sizes that have it."""

    start: int
    number: int
    stage: str
    sizes: tuple[str, ...]


def chapters(booklet: Booklet) -> tuple[Chapter, ...]:
    """The chapters for all sizes together, named by stage and step; none where there is no video.

    What comes before the first step is a chapter too, by the name of the recipe. Steps at the same time
    share a chapter, and a step that some sizes do not have says for which it is.
    """
    first = booklet.first
    if not first.video:
        return ()
    with speaking(tongue_of(first.language)):
        timed = sorted(_timed(booklet), key=attrgetter("start", "number"))
        of_all = len(booklet.handouts)
        found = tuple(
            Chapter(start, _name(tuple(steps), of_all))
            for start, steps in groupby(timed, attrgetter("start"))
        )
    if found and found[0].start > 0:
        return (Chapter(0, first.title), *found)
    return found


def _timed(booklet: Booklet) -> tuple[_Timed, ...]:
    """Every step that has a time, once, whichever sizes have it."""
    sizes: dict[tuple[int, int, str], list[str]] = {}
    for handout in booklet.handouts:
        for stage in handout.stages:
            for step in stage.steps:
                if step.marks.at and not step.elsewhere:
                    key = (seconds(step.marks.at), step.number, said(stage.title))
                    sizes.setdefault(key, []).append(handout.size)
    return tuple(_Timed(*key, tuple(dict.fromkeys(held))) for key, held in sizes.items())


def _name(steps: tuple[_Timed, ...], of_all: int) -> str:
    """`The outer bag, step 3`; `Neck, step 12 (Child)` where other sizes have no such step."""
    by_stage: Mapping[str, list[_Timed]] = {
        stage: [step for step in steps if step.stage == stage]
        for stage in dict.fromkeys(s.stage for s in steps)
    }
    return listed([_of_stage(stage, held, of_all) for stage, held in by_stage.items()])


def _of_stage(stage: str, steps: list[_Timed], of_all: int) -> str:
    numbers = listed([_number(step, of_all) for step in steps])
    words = many("step {numbers}", "steps {numbers}", len(steps), numbers=numbers)
    return say("{stage}, {steps}", stage=stage, steps=words) if stage else words


def _number(step: _Timed, of_all: int) -> str:
    if len(step.sizes) == of_all:
        return str(step.number)
    return f"{step.number} ({listed(step.sizes)})"


def seconds(clock: str) -> int:
    """`4:15` as 255, `1:04:15` as 3855."""
    total = 0
    for part in clock.split(":"):
        total = 60 * total + int(part)
    return total
