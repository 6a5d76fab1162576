"""The ways through a recipe's steps: with what is optional or without, and one of each alternative."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from presscloth.edition import Edition
from presscloth.frozen import dataclass
from presscloth.recipe.tree import Lead, Part, Step
from presscloth.source import Span

MOST_WAYS = 48
"""Beyond so many combinations, each alternative is proved by itself and not with all others."""


@dataclass(frozen=True, slots=True)
class Way:
    """Which steps and parts are left out, by their places, and a few words that say so.

    `parting` is where the way parts from the fullest one.
    """

    left_out: frozenset[Span] = frozenset()
    words: str = ""
    parting: tuple[Span, ...] = ()

    def takes(self, of: Step | Part) -> bool:
        return of.span not in self.left_out


@dataclass(frozen=True, slots=True)
class Choice:
    """A place where ways part: steps or parts of which one is done, or none where it is optional."""

    among: tuple[Step | Part, ...]
    optional: bool
    named: str


def choices(edition: Edition) -> tuple[Choice, ...]:
    """All choices of an edition, in order."""
    found = list(_grouped(edition.steps, tuple(step.lead for step in edition.steps), "step {}"))
    for step in edition.steps:
        # The first part's lead words are the step's own, and are not said twice.
        leads = (Lead(), *(part.lead for part in step.parts[1:]))
        found += _grouped(step.parts, leads, f"a part of step {step.number}")
    return tuple(found)


def _grouped(units: Sequence[Step | Part], leads: Sequence[Lead], words: str) -> Iterator[Choice]:
    """Group what stands by itself with the alternatives that follow it."""
    group: list[tuple[Step | Part, Lead]] = []
    for unit, lead in zip(units, leads, strict=False):
        if not (lead.instead and group):
            yield from _choice(group, words)
            group = []
        group.append((unit, lead))
    yield from _choice(group, words)


def _choice(group: Sequence[tuple[Step | Part, Lead]], words: str) -> Iterator[Choice]:
    optional = any(lead.optional for _, lead in group)
    if optional or len(group) > 1:
        first, _ = group[0]
        number = first.number if isinstance(first, Step) else ""
        yield Choice(tuple(unit for unit, _ in group), optional, words.format(number))


def ways(edition: Edition) -> tuple[Way, ...]:
    """Every way that is proved: the first is the fullest, with each first alternative.

    All that is optional, none of it, and all without each one alone; each with every combination
    of alternatives, or, where these are very many, with each alternative by itself.
    """
    all_choices = choices(edition)
    optional = [choice for choice in all_choices if choice.optional]
    without: list[tuple[Choice, ...]] = [()]
    without += [(choice,) for choice in optional]
    if len(optional) > 1:
        without.append(tuple(optional))
    forks = [choice for choice in all_choices if len(choice.among) > 1]
    found = [_way(all_choices, left, taken) for left in without for taken in _taken(forks, len(without))]
    return tuple(dict.fromkeys(found))


Picks = tuple[tuple[Choice, int], ...]


def _taken(forks: Sequence[Choice], times: int) -> Iterator[Picks]:
    """Which alternative of each fork is taken."""
    combinations = 1
    for fork in forks:
        combinations *= len(fork.among)
    if combinations * times <= MOST_WAYS:
        for picks in product(*(range(len(fork.among)) for fork in forks)):
            yield tuple(zip(forks, picks, strict=True))
        return
    yield tuple((fork, 0) for fork in forks)
    for fork in forks:
        for pick in range(1, len(fork.among)):
            yield tuple((other, pick if other is fork else 0) for other in forks)


def _way(all_choices: Sequence[Choice], without: tuple[Choice, ...], picks: Picks) -> Way:
    left_out: set[Span] = set()
    words: list[str] = []
    parting: list[Span] = []
    for choice in without:
        left_out |= {unit.span for unit in choice.among}
        words.append(f"without {choice.named}")
        parting.append(choice.among[0].span)
    for choice, pick in picks:
        if choice not in without:
            left_out |= {unit.span for i, unit in enumerate(choice.among) if i != pick}
            if pick:
                words.append(f"with the other way of {choice.named}")
                parting.append(choice.among[pick].span)
    return Way(frozenset(left_out), " and ".join(words), tuple(parting))
