"""Transform the problems of a run into what is reported: each once, by its place, under its cause.

The same problem is found again in every size, in both systems and in every way through the optional
steps. An author mends it once, and is told once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from presscloth.frozen import dataclass
from presscloth.problems.base import Label, Problem, Severity
from presscloth.source import Span


@dataclass(frozen=True, slots=True)
class Variant:
    """A problem as it stands in some sizes and systems (none named: in all)."""

    problem: Problem
    sizes: tuple[str, ...]
    systems: tuple[str, ...]

    def meets(self, sizes: tuple[str, ...], systems: tuple[str, ...]) -> bool:
        """Whether there is a size and a system in which both hold."""
        return _share(self.sizes, sizes) and _share(self.systems, systems)


@dataclass(frozen=True, slots=True)
class Reported:
    """One problem as it is shown.

    `sizes` and `systems` say where `problem` holds as it stands (none named: everywhere); `variants`
    are the same problem with other values in other sizes or systems; `under` is what follows from it.
    """

    problem: Problem
    sizes: tuple[str, ...] = ()
    systems: tuple[str, ...] = ()
    variants: tuple[Variant, ...] = ()
    under: tuple[Reported, ...] = ()

    @property
    def severity(self) -> Severity:
        return self.problem.severity

    @property
    def all_variants(self) -> tuple[Variant, ...]:
        """The problem itself and its variants."""
        return (Variant(self.problem, self.sizes, self.systems), *self.variants)


def report(
    problems: Iterable[Problem], *, sizes: Sequence[str] = (), systems: Sequence[str] = ()
) -> tuple[Reported, ...]:
    """Merge the problems of one recipe, hang what follows under its cause, and sort all by place.

    `sizes` and `systems` are all that the recipe has: what holds in all of them holds everywhere.
    """
    merged: list[Reported] = []
    for group in _groups(problems):
        merged += _one_per_difference(_one_per_message(group, sizes, systems))
    causes = [_cause_of(at, merged) for at in range(len(merged))]

    def hung_under(cause: int | None) -> tuple[Reported, ...]:
        here = [at for at, found in enumerate(causes) if found == cause]
        here.sort(key=lambda at: (merged[at].problem.span.start, merged[at].problem.span.end))
        return tuple(replace(merged[at], under=hung_under(at)) for at in here)

    return hung_under(None)


def one_by_one(reported: Iterable[Reported]) -> Iterator[Reported]:
    """All that is reported, what follows from another right after it."""
    for one in reported:
        yield one
        yield from one_by_one(one.under)


def in_one_row(reported: Iterable[Reported], causes: tuple[Label, ...] = ()) -> Iterator[Variant]:
    """All variants of all that is reported, for readers of a flat list.

    What follows from another has that one's place as a label.
    """
    for one in reported:
        for variant in one.all_variants:
            labels = (*variant.problem.labels, *causes)
            yield replace(variant, problem=replace(variant.problem, labels=labels))
        cause = Label(one.problem.span, f"follows from `{one.problem.title()}` here")
        yield from in_one_row(one.under, (cause,))


def _groups(problems: Iterable[Problem]) -> Iterator[list[Problem]]:
    """Problems of one kind at one place, in the order in which the first of each was found."""
    groups: dict[tuple[type[Problem], Span], list[Problem]] = {}
    for problem in problems:
        groups.setdefault((type(problem), problem.span), []).append(problem)
    yield from groups.values()


def _one_per_message(group: Sequence[Problem], sizes: Sequence[str], systems: Sequence[str]) -> list[Variant]:
    """Merge what says the same: first the systems of one size, then the sizes that agree in these."""
    by_size: dict[tuple[str, str, tuple[str, ...]], Variant] = {}
    for one in group:
        said = (one.message(), one.hint())
        known = by_size.get((*said, one.sizes))
        found = _joined(known, Variant(one, one.sizes, one.systems), systems=systems)
        by_size[(*said, one.sizes)] = found
    merged: dict[tuple[str, str, tuple[str, ...]], Variant] = {}
    for (message, hint, _), variant in by_size.items():
        key = (message, hint, variant.systems)
        merged[key] = _joined(merged.get(key), variant, sizes=sizes)
    return list(merged.values())


def _joined(
    known: Variant | None, other: Variant, *, sizes: Sequence[str] = (), systems: Sequence[str] = ()
) -> Variant:
    first = known or other
    labels = dict.fromkeys((*first.problem.labels, *other.problem.labels))
    return Variant(
        replace(first.problem, labels=tuple(labels)),
        _union(first.sizes, other.sizes, sizes),
        _union(first.systems, other.systems, systems),
    )


def _union(some: tuple[str, ...], others: tuple[str, ...], every: Sequence[str]) -> tuple[str, ...]:
    """The names of both in the order of `every`; none where one of them holds everywhere, or both do."""
    if not some or not others:
        return ()
    found = tuple(dict.fromkeys((*(one for one in every if one in (*some, *others)), *some, *others)))
    return () if every and set(every) <= set(found) else found


def _one_per_difference(variants: Sequence[Variant]) -> list[Reported]:
    """Put variants together that exclude each other; two that hold in one size are two problems."""
    reported: list[Reported] = []
    for variant in variants:
        for at, one in enumerate(reported):
            if not any(other.meets(variant.sizes, variant.systems) for other in one.all_variants):
                reported[at] = replace(one, variants=(*one.variants, variant))
                break
        else:
            reported.append(Reported(variant.problem, variant.sizes, variant.systems))
    return reported


def _share(some: tuple[str, ...], others: tuple[str, ...]) -> bool:
    return not some or not others or not set(some).isdisjoint(others)


def _cause_of(at: int, merged: Sequence[Reported]) -> int | None:
    """Which of the problems found earlier this one follows from."""
    problem = merged[at].problem
    if problem.cause is None:
        return None
    for earlier in range(at):
        other = merged[earlier]
        if other.severity is Severity.WARNING and problem.severity is Severity.ERROR:
            continue  # a warning can be accepted, and would take the error along
        if _same_place(problem.cause, other.problem.span) and _same_time(merged[at], other):
            return earlier
    return None


def _same_time(one: Reported, other: Reported) -> bool:
    return any(a.meets(b.sizes, b.systems) for a in one.all_variants for b in other.all_variants)


def _same_place(cause: Span, place: Span) -> bool:
    """Whether one of two stretches lies in the other."""
    if cause.source is not place.source:
        return False
    inside = cause.start <= place.start and place.end <= cause.end
    return inside or (place.start <= cause.start and cause.end <= place.end)
