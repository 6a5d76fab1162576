"""How quantities are worded; the one place where that is decided.

`19 cm (7 1/2 in)`: the leading system first, the other in brackets; one alone where only one is
published or asked for.
"""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.handout.tree import Amount
from presscloth.measure import Kind, Quantity, System, number_text, printed
from presscloth.recipe.prose import How
from presscloth.recipe.tree import Audience, Form, NoteKind, Recipe, Shape
from presscloth.tongue import counted_number, measured, say, say_as


def systems_of(recipe: Recipe, publisher: Sequence[System] = ()) -> tuple[System, ...]:
    """The systems in which a recipe is printed, the leading one first.

    The author's own system leads unless the publisher says otherwise; a system in which the recipe
    is not written is never printed.
    """
    leading = recipe.front.written_in
    wanted = tuple(publisher) or (leading, leading.other)
    found = tuple(system for system in wanted if system in recipe.front.systems)
    return found or recipe.front.systems


def amount(
    quantity: Quantity,
    systems: Sequence[System],
    hows: Sequence[How] = (),
    *,
    cut: bool = False,
    bought: bool = False,
) -> Amount:
    """Word a quantity. `cut` and `bought` choose how it is rounded."""
    before = say("about") if How.ABOUT in hows or quantity.about else ""
    asked = {How.METRIC: System.METRIC, How.IMPERIAL: System.IMPERIAL}
    only = tuple(asked[how] for how in hows if how in asked)
    if quantity.kind is Kind.NUMBER:
        number = counted_number(number_text(quantity[(only or systems)[0]]))
        return Amount(((number, None),), before)
    bought = bought or How.BOUGHT in hows
    texts = tuple((measured(printed(quantity, s, cut=cut, bought=bought).text), s) for s in only or systems)
    return Amount(texts, before)


def system_word(system: System) -> str:
    """The word for a measuring system."""
    match system:
        case System.METRIC:
            return say("metric")
        case System.IMPERIAL:
            return say("imperial")


def form_word(form: Form) -> str:
    """The word for a form of material."""
    match form:
        case Form.FABRIC:
            return say("fabric")
        case Form.WADDING:
            return say("wadding")
        case Form.INTERFACING:
            return say("interfacing")
        case Form.STABILISER:
            return say("stabiliser")
        case Form.SHEET:
            return say("sheet")
        case Form.FAT_QUARTER:
            return say("fat quarter")
        case Form.TAPE:
            return say("tape")
        case Form.ELASTIC:
            return say("elastic")
        case Form.ZIP:
            return say("zip")
        case Form.NOTION:
            return say("notion")
        case Form.FILLING:
            return say("filling")
        case Form.THREAD:
            return say("thread")


def shape_word(shape: Shape) -> str:
    """The word for a piece's shape; a rectangle needs none."""
    match shape:
        case Shape.RECTANGLE:
            return ""
        case Shape.CIRCLE:
            return say("circle")
        case Shape.HALF_SQUARE:
            return say("half-square triangle")
        case Shape.QUARTER_SQUARE:
            return say("quarter-square triangle")
        case Shape.OUTLINE:
            return say("cut by the template")


def note_word(kind: NoteKind) -> str:
    """The words for a note that the compiler knows; its amount stands after them."""
    match kind:
        case NoteKind.ONE_WAY:
            return say("one way")
        case NoteKind.SHRINKS:
            return say("shrinks")
        case NoteKind.REPEAT:
            return say("repeat")
        case NoteKind.JOINS_ALLOWED:
            return say("joins allowed")
        case NoteKind.CUT_IN_STRIPS:
            return say("cut in strips")
        case NoteKind.STRAIGHTENED:
            return say("straightened")
        case NoteKind.MEASURE_FIRST:
            return say("measure first")
        case NoteKind.ANY_GRAIN:
            return say("any grain")
        case NoteKind.ON_THE_FOLD:
            return say("on the fold")
        case NoteKind.IN_PAIRS:
            return say("in pairs")
        case NoteKind.SPARE:
            return say("spare")


def audience_word(audience: Audience) -> str:
    """For whom an article is made."""
    match audience:
        case Audience.ADULT:
            return say("adult")
        case Audience.CHILD:
            return say("child")
        case Audience.BABY:
            return say("baby")


def side_word(part: str) -> str:
    """The word for a side of a thing, as it stands with a measure."""
    words = {
        "width": say("width"),
        "height": say("height"),
        "depth": say("depth"),
        "length": say("length"),
        "top": say_as("side", "top"),
        "bottom": say_as("side", "bottom"),
        "diameter": say("diameter"),
        "square": say_as("side", "square"),
        "around": say_as("side", "around"),
    }
    return words.get(part, part)


def clock(seconds: int) -> str:
    """`4:15`, `1:04:15`: a time in a video."""
    minutes, second = divmod(seconds, 60)
    hours, minute = divmod(minutes, 60)
    return f"{hours}:{minute:02}:{second:02}" if hours else f"{minute}:{second:02}"
