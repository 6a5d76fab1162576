"""How quantities to buy are worded: by length, by weight, in sheets, zips one by one."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction
from functools import partial
from itertools import zip_longest

from presscloth.cutting.buying import Purchase
from presscloth.cutting.chosen import Reach
from presscloth.drawing.layouts import draw_layouts
from presscloth.drawing.tree import Drawing
from presscloth.handout.tree import Amount, Figure, Inline, LayoutRow, Text
from presscloth.handout.wording import amount
from presscloth.measure import Kind, Quantity, System, decimal_text, number_text, printed
from presscloth.recipe.tree import Form
from presscloth.tongue import counted_number, many, measured, named, say


def quantities(purchases: Mapping[str, Purchase], systems: Sequence[System]) -> Mapping[str, Amount]:
    """What to buy of each material, by its key."""
    return {key: worded(purchase, systems) for key, purchase in purchases.items()}


def worded(purchase: Purchase, systems: Sequence[System]) -> Amount:
    """What to buy of one material: `60 cm (3/4 yd)`, `2 fat quarters`, `1 of 35 cm (1 of 14 in)`."""
    if purchase.material.form is Form.ZIP:
        return Amount(tuple((_zips(purchase, system), system) for system in systems))
    quantity = purchase.quantity()
    if purchase.kind is not Kind.NUMBER:
        return amount(quantity, systems, bought=True)
    if quantity.metric == quantity.imperial:
        return Amount(((_number(purchase, systems[0]), None),))
    return Amount(tuple((_number(purchase, system), system) for system in systems))


def with_optional(purchase: Purchase | None, systems: Sequence[System]) -> tuple[str, Amount] | None:
    """What to buy where all that is optional is made too, if that is more, and the words before it."""
    if purchase is None or not purchase.with_optional:
        return None
    return optional_words(purchase), worded(purchase.full(), systems)


def optional_words(purchase: Purchase) -> str:
    """`with the optional pocket`: for what more is bought."""
    if len(purchase.optional) == 1:
        return say("with the optional {piece}", piece=named(purchase.optional[0]))
    return say("with everything that is optional")


def _number(purchase: Purchase, system: System) -> str:
    """`2 fat quarters`, `3 lengths`, `3`: what is bought one by one."""
    bought = purchase.by_system[system].buy
    match purchase.material.form:
        case Form.SHEET:
            return many("{n} sheet", "{n} sheets", int(bought))
        case Form.FAT_QUARTER:
            return many("{n} fat quarter", "{n} fat quarters", int(bought))
        case Form.TAPE | Form.ELASTIC:
            return many("{n} length", "{n} lengths", int(bought))
        case _:
            return counted_number(number_text(bought))


def _zips(purchase: Purchase, system: System) -> str:
    """`1 of 35 cm`, `2 of 20 cm`: every zip in the next length that is sold."""
    lengths = Counter(purchase.by_system[system].lengths)
    return ", ".join(
        say(
            "{count} of {length}",
            count=count,
            length=measured(printed(Quantity(Kind.LENGTH, length, length), system).text),
        )
        for length, count in lengths.items()
    )


def layout_rows(purchases: Mapping[str, Purchase], systems: Sequence[System]) -> tuple[LayoutRow, ...]:
    """The cutting layouts of everything that is cut from cloth; each system has its own.

    What is optional is laid out with the rest where no more is bought for it, and else by itself.
    """
    rows: list[LayoutRow] = []
    for purchase in purchases.values():
        with_it = partial(draw_layouts, what_for=optional_words(purchase))
        rows += layouts_of(purchase.to_cut(), systems, with_it if purchase.with_room else draw_layouts)
        if purchase.with_optional:
            rows += layouts_of(purchase.full(), systems, with_it)
    return tuple(rows)


def layouts_of(
    purchase: Purchase,
    systems: Sequence[System],
    draw: Callable[[Purchase, System], Sequence[Drawing]],
) -> Iterator[LayoutRow]:
    """The layouts of one purchase, drawn in every system."""
    drawn = ([(system, Figure(each)) for each in draw(purchase, system)] for system in systems)
    for row in zip_longest(*drawn):
        yield tuple(each for each in row if each is not None)


def verdict(purchase: Purchase | None) -> str:
    """Whether less could do: said of what is laid out on cloth, in the worse of both systems."""
    if purchase is None or not any(bought.cloths for bought in purchase.by_system.values()):
        return ""
    if all(bought.proved for bought in purchase.by_system.values()):
        return say("least that can be bought")
    over = max(bought.buy / bought.bound - 1 for bought in purchase.by_system.values() if bought.bound)
    return say("within {percent} % of the bound", percent=decimal_text(max(over * 100, Fraction(1)), 0))


def longest_words(reaches: Mapping[str, Reach], systems: Sequence[System]) -> tuple[tuple[Inline, ...], ...]:
    """`Quantities to buy are for the longest handle length, 80 cm (32 in).`: one line for each choice.

    Where cloth must suffice at both ends, both are told.
    """
    return tuple(_longest(named(name), reach, systems) for name, reach in reaches.items())


def _longest(name: str, reach: Reach, systems: Sequence[System]) -> tuple[Inline, ...]:
    if reach.grows:
        words = say(
            "Quantities to buy are enough for any {name} from {least} to {amount}.",
            name=name,
            least=_LEAST,
            amount=_HERE,
        )
    elif reach.most.kind is Kind.LENGTH:
        words = say("Quantities to buy are for the longest {name}, {amount}.", name=name, amount=_HERE)
    else:
        words = say("Quantities to buy are for the most {name}, {amount}.", name=name, amount=_HERE)
    ends = {_HERE: amount(reach.most, systems), _LEAST: amount(reach.least, systems)}
    parts = re.split(f"([{_HERE}{_LEAST}])", words)
    return tuple(ends.get(part) or Text(part) for part in parts if part)


_HERE, _LEAST = "\0", "\1"
"""Where in a sentence amounts stand."""
