"""Times in the video: they go forward from step to step."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from presscloth.frozen import dataclass
from presscloth.problems import Label, Problem, Severity
from presscloth.proof.subject import Subject
from presscloth.recipe.tree import Recipe
from presscloth.source import Span


class TimesOutOfOrder(Problem):
    """A step's time in the video is not later than the time before it.

    Whoever follows the video by the steps would be sent back, and two chapters cannot begin at once.
    Chapters are written in the order of their times all the same.

    Fails:

        ---
        video: https://video.example/cloth
        ---

        ## Steps
        1. At 4:15: Press the cloth.

        2. At 2:05: Hem it.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ---
        video: https://video.example/cloth
        ---

        ## Steps
        1. At 2:05: Press the cloth.

        2. At 4:15: Hem it.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    severity = Severity.WARNING

    time: str
    before: str

    def message(self) -> str:
        if self.time == self.before:
            return f"two steps of one size are both at {self.time} in the video"
        return f"{self.time} in the video stands after {self.before}"

    def hint(self) -> str:
        return "write the time at which the video comes to this step"


class TimeBeyondSense(Problem):
    """A time in the video is none that a video has.

    Seconds end at 59, and minutes do where hours stand before them: `1:04:15`. Twelve hours are the most.

    Fails:

        ---
        video: https://video.example/cloth
        ---

        ## Steps
        1. At 14:15:00: Hem the cloth.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```

    Passes:

        ---
        video: https://video.example/cloth
        ---

        ## Steps
        1. At 14:15: Hem the cloth.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    severity = Severity.WARNING

    time: str

    def message(self) -> str:
        if any(int(part) > 59 for part in self.time.split(":")[1:]):
            return f"{self.time} is no time: after the first colon, numbers end at 59"
        return f"{self.time} is longer than a video lasts"

    def hint(self) -> str:
        return "write minutes and seconds, `14:15`; hours stand before them only in a long video, `1:14:15`"


LONGEST = 12 * 60 * 60
"""Seconds: no video of a sew-along is longer (common practice, no source)."""


_TYPED = re.compile(r"\bAt\s+(\d{1,3}(?::\d\d){1,2})\s*:", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Time:
    """A time in the video: in seconds, as it is typed, and where."""

    seconds: int
    text: str
    span: Span


def check(subject: Subject) -> Iterator[Problem]:
    """Every time is later than the one before it, in every size that has both, and one of a video's."""
    told: set[tuple[Span, Span]] = set()
    for size in subject.recipe.sizes:
        times = tuple(_times(subject.recipe, size.name))
        for before, time in pairwise(times):
            if time.seconds <= before.seconds and (before.span, time.span) not in told:
                told.add((before.span, time.span))
                label = Label(before.span, "the time before it")
                yield TimesOutOfOrder(span=time.span, time=time.text, before=before.text, labels=(label,))
    for time in _times(subject.recipe, None):
        if time.seconds > LONGEST or any(int(part) > 59 for part in time.text.split(":")[1:]):
            yield TimeBeyondSense(span=time.span, time=time.text)


def _times(recipe: Recipe, size: str | None) -> Iterator[Time]:
    """The times of one size, or of all, in the order of the steps."""
    for step in recipe.steps:
        if size is not None and not step.lead.holds_in(size):
            continue
        for lead, span in ((step.lead, step.span), *((part.lead, part.span) for part in step.parts[1:])):
            if lead.at is not None and (size is None or lead.holds_in(size)):
                yield _time(lead.at, span)


def _time(seconds: int, span: Span) -> Time:
    """A time with the place of its own words among the lead words of a step or a paragraph."""
    found = _TYPED.search(span.text)
    assert found is not None, "the lead words were read from here"
    return Time(seconds, found[1], Span(span.source, span.start + found.start(), span.start + found.end()))
