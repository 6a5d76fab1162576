"""Judging whether two edges meet, in each system, and saying why they do not."""

from __future__ import annotations

from presscloth.measure import UNITS, Kind, Quantity, System, agreement, carried_over, compare, printed
from presscloth.problems import Label, Problem, Problems
from presscloth.recipe.expression import Measured
from presscloth.recipe.reckoning import expression
from presscloth.sewing.construction import Meeting
from presscloth.sewing.meeting_problems import AboutEdgeMeets, EdgesDoNotMeet, MeetsInOneSystem
from presscloth.sewing.wording import difference, listed, said
from presscloth.source import Passage, Span

MOST_ROWS = 4
"""As many rows of Pieces are shown as places; a quilt may come from very many."""


def opens(meeting: Meeting, system: System) -> bool:
    """Whether two edges differ by more than they may."""
    one, other = meeting.one[system], meeting.other[system]
    if one is other:
        return False
    return compare(abs(one - other), meeting.allowed[system], system) > 0


def judge(meeting: Meeting, systems: tuple[System, ...], *, cut: bool) -> Problem | None:
    """What is wrong with a meeting in the systems that are proved, the author's first; None: nothing."""
    if meeting.one.about or meeting.other.about:
        about = meeting.left if meeting.one.about else meeting.right
        return AboutEdgeMeets(span=meeting.span, edge=about, labels=_stated(meeting))
    missing = tuple(system for system in systems if opens(meeting, system))
    if not missing:
        return None
    if len(missing) < len(systems):
        return _in_one_system(meeting, missing[0])
    return EdgesDoNotMeet(
        span=meeting.span,
        one=f"{meeting.left} is {said(meeting.one, missing)}",
        other=f"{meeting.right} is {said(meeting.other, missing)}",
        apart=difference(meeting.one, meeting.other, missing),
        stitched=not cut,
        labels=tuple(Label(row, "cut here") for row in meeting.rows[:MOST_ROWS]),
    )


def _in_one_system(meeting: Meeting, missing: System) -> Problem:
    alone = [place for place in _places(meeting) if _carried(place) is not None]
    return MeetsInOneSystem(
        span=meeting.span,
        left=meeting.left,
        right=meeting.right,
        meets=missing.other.value,
        misses=missing.value,
        apart=difference(meeting.one, meeting.other, (missing,)),
        behind=(_behind(meeting.left, meeting.one, missing), _behind(meeting.right, meeting.other, missing)),
        single=tuple(place.text for place in alone),
        pair=_closing_pair(meeting, missing),
        labels=_stated(meeting),
        systems=(missing.value,),
    )


def _places(meeting: Meeting) -> tuple[Span, ...]:
    return tuple(dict.fromkeys((*meeting.one.origins, *meeting.other.origins)))


def _stated(meeting: Meeting) -> tuple[Label, ...]:
    """The stated values on both sides, each with what is to be known about it."""
    labels: list[Label] = []
    for place in _places(meeting):
        carried = _carried(place)
        sides = [
            name
            for name, length in ((meeting.left, meeting.one), (meeting.right, meeting.other))
            if place in length.origins
        ]
        by_itself = f", carried over by itself to {carried}" if carried else ""
        labels.append(Label(place, f"stated for {listed(sides)}{by_itself}"))
    return tuple(labels)


def _measured(place: Span) -> Measured | None:
    found = expression(Passage.of(place), Problems())
    return found if isinstance(found, Measured) else None


def _carried(place: Span) -> str | None:
    """What a value that was stated in one system became in the other; None for a pair."""
    stated = _measured(place)
    carried = None if stated is None else _carried_quantity(stated)
    if stated is None or carried is None:
        return None
    other = UNITS[stated.first.unit].system.other
    return printed(carried.computed(), other).text


def _carried_quantity(stated: Measured) -> Quantity | None:
    if stated.second is not None:
        return None
    first = stated.first
    carried = carried_over(first.value, first.unit, exactly=stated.exactly, about=False, span=stated.span)
    return carried if isinstance(carried, Quantity) else None


def _behind(name: str, length: Quantity, missing: System) -> str:
    """What an edge comes from: `top of x comes from 24 1/2 in (carried over by itself to 62.2 cm)`."""
    values: list[str] = []
    for place in length.origins:
        carried = _carried(place)
        values.append(f"`{place.text}`" + (f" (carried over by itself to {carried})" if carried else ""))
    return f"{name} is {printed(length.computed(), missing).text}, from {listed(values)}"


def _closing_pair(meeting: Meeting, missing: System) -> str | None:
    """The pair that would make the edges meet, where one edge is a single stated value and nothing else."""
    for edge, other in ((meeting.one, meeting.other), (meeting.other, meeting.one)):
        stated = _measured(edge.origins[0]) if len(edge.origins) == 1 else None
        carried = None if stated is None else _carried_quantity(stated)
        if stated is None or carried is None or carried[missing] != edge[missing]:
            continue
        # The half that was stated is kept only where it is in the system that meets.
        if UNITS[stated.first.unit].system is missing:
            continue
        metric, imperial = (
            (other.metric, edge.imperial) if missing is System.METRIC else (edge.metric, other.imperial)
        )
        if agreement(metric, imperial, Kind.LENGTH, about=False) is None:
            return f"{stated.span.text} ({printed(other.computed(), missing).text})"
    return None
