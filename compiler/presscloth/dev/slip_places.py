"""Which values of a recipe something else depends on meeting: decided from the recipe, before any slip.

A value (a stated one, or the size in one cell of Pieces) is followed through the whole proof: every
sum, every seam, every way. It is held where two things are compared and the outcome depends on it: edges
that meet, a strip and what it must reach round, a patch and its ground, the two sides of a Check. Where
both sides grow alike nothing is held by it, and that a length must be more than nothing holds nothing
either. A value that is held nowhere is a free choice: nothing else has to meet it.
"""

from __future__ import annotations

import traceback
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from presscloth.measure import Quantity, System
from presscloth.measure.followed import Followed, chosen
from presscloth.measure.following import Following, following
from presscloth.pipeline import Proved
from presscloth.problems import Problems
from presscloth.proof import checks
from presscloth.proof.size import WorkedSize, work_out, work_out_chosen
from presscloth.recipe.expression import Broken, Measured, Name
from presscloth.recipe.read import read
from presscloth.recipe.reckoning import expression
from presscloth.recipe.tree import Recipe, Size
from presscloth.sewing.verbs import forms
from presscloth.source import Passage, Source, Span

OWN = "slipping value"
"""The name of a measure that stands in the value's place while it is followed."""

ON_PAPER = "sew_on_paper"
"""What is carried out again from printed numbers: each is rounded by itself, and always hangs on it."""

RULES = ("sewing", "verbs", "proof")
"""The rooms whose rules compare."""


@dataclass(frozen=True, slots=True)
class Held:
    """One comparison whose outcome depends on a value: which rule compares, and how far apart the two are."""

    rule: str
    apart: Fraction


class _Heard(list[tuple[Fraction, Fraction]]):
    """What is compared while a value is followed, and by whom."""

    def __init__(self) -> None:
        super().__init__()
        self.held: dict[Held, None] = {}

    def append(self, pair: tuple[Fraction, Fraction]) -> None:
        one, other = pair
        difference = one - other
        if not isinstance(difference, Followed) or _is_nothing(one) or _is_nothing(other):
            return
        rule = _rule(traceback.extract_stack(limit=40))
        if rule is not None:
            self.held[Held(rule, abs(difference.plain))] = None


def _is_nothing(number: Fraction) -> bool:
    return not isinstance(number, Followed) and number == 0


def _rule(stack: Sequence[traceback.FrameSummary]) -> str | None:
    """The innermost function of a rule; None where the page is held and not the recipe."""
    if any(frame.name == ON_PAPER for frame in stack):
        return None
    rules = (Path(frame.filename) for frame in reversed(stack))
    found = next((path for path in rules if path.parent.name in RULES and path.stem != "work"), None)
    return None if found is None else found.stem.replace("_", " ")


def held(place: Span, proved: Proved) -> tuple[Held, ...]:
    """Every comparison that depends on the value at a place; none: it is a free choice."""
    recipe = _with_name(place, place.text, proved)
    if not isinstance(_value(place, recipe, recipe.sizes[0]), Quantity):
        # The halves of a step need not agree, and those of a measure must: one half stands for both.
        recipe = _with_name(place, _first_half(place), proved)
    found: dict[Held, None] = {}
    for each in recipe.sizes:
        size = work_out(recipe, each, Problems())
        value = size.value(Name(OWN, place), None)
        if isinstance(value, Quantity):
            found |= _in_size(size, value)
    return tuple(found)


def _value(place: Span, recipe: Recipe, size: Size) -> Quantity | Broken:
    return work_out(recipe, size, Problems()).value(Name(OWN, place), None)


def _first_half(place: Span) -> str:
    found = expression(Passage.of(place), Problems())
    return found.first.typed if isinstance(found, Measured) else place.text


def _with_name(place: Span, stated: str, proved: Proved) -> Recipe:
    """The recipe with the value as a measure of its own, and that in its place."""
    assert proved.recipe is not None
    text = proved.recipe.source.text
    named = f"{text[: place.start]}{OWN}{text[place.end :]}"
    head = "## Measures\n"
    named = named.replace(head, f"{head}\n- {OWN} = {stated}\n", 1)
    source = Source(proved.path.as_posix(), named)
    return read(source, slug=proved.slug, folder=proved.path.parent, verbs=forms(), problems=Problems())


def _in_size(size: WorkedSize, value: Quantity) -> dict[Held, None]:
    """Follow a value through one size: everything is sewn in every way, and the Checks are held.

    It is followed in metric, in mm; what holds it in one system holds it in the other.
    """
    now, heard = Following(), _Heard()
    now.compared = heard
    with following(now):
        followed = replace(value, metric=chosen(0, System.METRIC.value, value.metric), stated=None)
        worked = work_out_chosen(size, {OWN: followed}, Problems())
        for _ in checks.hold(worked.edition, worked.value):
            pass
        meetings = [meeting for way in worked.sewn.constructions for meeting in way.meetings]
        apart = [meeting.one.metric - meeting.other.metric for meeting in meetings]
    met = {Held("edges that meet", abs(each.plain)): None for each in apart if isinstance(each, Followed)}
    return {**met, **heard.held}
