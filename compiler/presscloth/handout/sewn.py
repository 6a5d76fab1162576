"""What a construction gives to a handout: finished sizes, what is optional, drawings in the steps."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from presscloth.drawing.deeds import Deed
from presscloth.drawing.steps import draw_step, draw_together
from presscloth.drawing.tree import Drawing
from presscloth.handout.tree import Amount, Figure, Finished
from presscloth.handout.wording import amount, side_word
from presscloth.measure import Quantity, System
from presscloth.sewing import Construction, Event, Sewn
from presscloth.sewing.measuring import measured
from presscloth.sewing.things import Circle, Flat, Hollow, Long, Shape
from presscloth.tongue import named, say

MOST_FIGURES = 3
"""In one step; the last things that it makes are those that a maker holds in the hand."""


def finished(construction: Construction, systems: Sequence[System]) -> tuple[Finished, ...]:
    """The finished articles with their sides: width, depth and height where they make sense."""
    articles = construction.finished
    return tuple(
        Finished(
            count=article.count,
            name="" if len(articles) == 1 else named(article.name),
            sides=tuple(_sides(article.thing.shape, systems)),
        )
        for article in articles
    )


def _sides(shape: Shape, systems: Sequence[System]) -> Iterator[tuple[str, Amount]]:
    """The sides in the order in which the trade gives them; opposite edges where they differ."""

    def worded(part: str) -> Amount | None:
        value = measured(shape, part, finished=True)
        return amount(value, systems) if isinstance(value, Quantity) else None

    parts: tuple[str, ...]
    match shape:
        case Flat(top=top, bottom=bottom) if not _alike(top.length, bottom.length):
            parts = ("top", "bottom", "height")
        case Flat():
            parts = ("width", "height")
        case Hollow(depth=None):
            parts = ("width", "height")
        case Hollow():
            parts = ("width", "depth", "height")
        case Circle():
            parts = ("width",)
        case Long():
            parts = ("length",)
        case _:
            parts = ()
    for part in parts:
        said = worded(part)
        if said is not None:
            yield side_word("diameter" if isinstance(shape, Circle) else part), said


def _alike(one: Quantity, other: Quantity) -> bool:
    return (one.metric, one.imperial) == (other.metric, other.imperial)


def belongs(sewn: Sewn) -> Mapping[str, str]:
    """What the cutting list says of pieces that not every way uses, by their names."""
    found: dict[str, str] = {}
    for (name, _), count in sewn.optional.items():
        most = max(
            each.used.get(key, 0) for each in sewn.constructions for key in each.used if key[0] == name
        )
        left_out = [each for each in sewn.constructions if _uses(each, name) < _uses(sewn.fullest, name)]
        optional = not left_out or any("without" in each.way.words for each in left_out)
        found[name] = _belongs(optional, count if count < most else 0)
    return found


def _belongs(optional: bool, some: int) -> str:
    """`optional`, `2 of them one way only`; `some` is 0 where it holds for all."""
    if some:
        return (
            say("{count} of them optional", count=some)
            if optional
            else say("{count} of them one way only", count=some)
        )
    return say("optional") if optional else say("one way only")


def _uses(construction: Construction, name: str) -> int:
    return sum(count for (piece, _), count in construction.used.items() if piece == name)


def optional_keys(sewn: Sewn) -> frozenset[str]:
    """The materials of which only optional steps use anything."""
    every = {key for each in sewn.constructions for (_, key), n in each.used.items() if n}
    always = {
        key
        for key in every
        if all(any(n and k == key for (_, k), n in each.used.items()) for each in sewn.constructions)
    }
    return frozenset(every - always)


def step_figures(
    construction: Construction,
    systems: Sequence[System],
    draw: Callable[[Sequence[Deed]], Drawing | None] = draw_together,
) -> Mapping[int, tuple[Figure, ...]]:
    """The drawings of what each step makes and changes; `draw` draws what is done to one thing."""
    by_step: dict[int, list[Event]] = {}
    for event in construction.events:
        by_step.setdefault(event.step, []).append(event)
    amounts = construction.reckoned.amounts
    drawn = {step: draw_step(events, amounts, systems, draw) for step, events in by_step.items()}
    return {step: tuple(map(Figure, found[-MOST_FIGURES:])) for step, found in drawn.items() if found}
