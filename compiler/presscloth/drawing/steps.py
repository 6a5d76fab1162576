"""Draw what a step does: one drawing for each thing that it makes or changes, with all that is done to it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from presscloth.drawing.between import draw_lap, draw_zip
from presscloth.drawing.boxed import draw_box, draw_finished
from presscloth.drawing.cut_up import draw_cut, draw_pair, draw_trim
from presscloth.drawing.deeds import Deed
from presscloth.drawing.grounds import GROUND, draw_ground
from presscloth.drawing.reshaping import (
    draw_bag_out,
    draw_flat,
    draw_fold,
    draw_gather,
    draw_hollow,
    draw_line,
)
from presscloth.drawing.slanting import draw_continuous_bias, draw_cut_bias
from presscloth.drawing.things import draw_event
from presscloth.drawing.tree import Drawing
from presscloth.measure import Quantity, System
from presscloth.sewing.construction import Event
from presscloth.sewing.things import Hollow, Shape
from presscloth.source import Span

OWN_WAYS: Mapping[str, Callable[[Deed], Drawing | None]] = {
    "lap": draw_lap,
    "zip": draw_zip,
    "gather": draw_gather,
    "fold": draw_fold,
    "box": draw_box,
    "line": draw_line,
    "bag out": draw_bag_out,
    "trim": draw_trim,
    "cut": draw_cut,
    "cut bias": draw_cut_bias,
    "cut continuous bias": draw_continuous_bias,
    "pair": draw_pair,
    "finish": draw_finished,
}
"""Verbs that are drawn each in a way of its own; the others are drawn by what they make."""


def draw_step(
    events: Sequence[Event],
    amounts: Mapping[Span, Quantity],
    systems: Sequence[System],
    draw: Callable[[Sequence[Deed]], Drawing | None] | None = None,
) -> tuple[Drawing, ...]:
    """The drawings of a step's statements, in order.

    A thing that several statements change one after the other is drawn once, as it is in the end;
    what finishes is drawn where the step shows nothing else of it. `amounts` are those that the
    statements' expressions came to, by their places; `draw` draws what is done to one thing.
    """
    deeds = [Deed(event, amounts, tuple(systems)) for event in events]
    found: list[Drawing] = []
    shown: set[str] = set()
    for group in _by_thing(deeds):
        if group[-1].verb == "finish" and shown & {taken.name for taken in group[-1].event.used}:
            continue
        drawing = (draw or draw_together)(group)
        if drawing is not None:
            found.append(drawing)
            shown.add(group[-1].event.made.name if group[-1].event.made else "")
    return tuple(found)


def _by_thing(deeds: Sequence[Deed]) -> list[list[Deed]]:
    """Statements that make or change the thing of one name stand together, at the place of the last.

    What is drawn in a way of its own stands alone: no later picture of the thing shows it.
    """
    groups: list[list[Deed]] = []
    for deed in deeds:
        before = next((each for each in groups if _goes_on(each[-1], deed)), [])
        if before:
            groups.remove(before)
        groups.append([*before, deed])
    return groups


def _goes_on(before: Deed, deed: Deed) -> bool:
    """Whether a statement goes on with the thing of another, so that one picture shows both."""
    if before.event.made is None or deed.event.made is None or before.verb in OWN_WAYS:
        return False
    return before.event.made.name == deed.event.made.name


def draw_together(deeds: Sequence[Deed]) -> Drawing | None:
    """One drawing of all that is done to a thing: what is put onto it at last, or how it was made."""
    last = len(deeds)
    while last and deeds[last - 1].verb in GROUND:
        last -= 1
    put_on = deeds[last:]
    if put_on:
        drawing = draw_ground(put_on)
        if drawing is not None or not deeds[:last]:
            return drawing
        deeds = deeds[:last]
    deed = deeds[-1]
    own = OWN_WAYS.get(deed.verb)
    if own is not None:
        return own(deed)
    if deed.result is not None and _is_flat_hollow(deed.result.shape):
        return draw_hollow(deed)
    return draw_event(deed.event, deed.systems) or draw_flat(deed)


def _is_flat_hollow(shape: Shape) -> bool:
    """A tube or a pouch without a depth: it lies flat."""
    return isinstance(shape, Hollow) and shape.depth is None
