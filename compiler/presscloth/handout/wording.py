"""How quantities are worded; the one place where that is decided.

`19 cm (7 1/2 in)`: the leading system first, the other in brackets; one alone where only one is
published or asked for.
"""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.handout.tree import Amount
from presscloth.measure import Kind, Quantity, System, number_text, printed
from presscloth.recipe.prose import How
from presscloth.recipe.tree import Recipe


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
    before = "about" if How.ABOUT in hows or quantity.about else ""
    asked = {How.METRIC: System.METRIC, How.IMPERIAL: System.IMPERIAL}
    only = tuple(asked[how] for how in hows if how in asked)
    if quantity.kind is Kind.NUMBER:
        return Amount(((number_text(quantity[(only or systems)[0]]), None),), before)
    bought = bought or How.BOUGHT in hows
    texts = tuple((printed(quantity, s, cut=cut, bought=bought).text, s) for s in only or systems)
    return Amount(texts, before)


def counted(count: int, name: str) -> str:
    """`4 rows`, `1 row`: a number of things by their name."""
    return f"{count} {name if count == 1 else plural(name)}"


def plural(name: str) -> str:
    """The plural of an English name, by the last word."""
    if name.endswith(("s", "x", "ch", "sh")):
        return name + "es"
    if name.endswith("y") and name[-2:-1] not in "aeiou":
        return name[:-1] + "ies"
    return name + "s"


def clock(seconds: int) -> str:
    """`4:15`, `1:04:15`: a time in a video."""
    minutes, second = divmod(seconds, 60)
    hours, minute = divmod(minutes, 60)
    return f"{hours}:{minute:02}:{second:02}" if hours else f"{minute}:{second:02}"
